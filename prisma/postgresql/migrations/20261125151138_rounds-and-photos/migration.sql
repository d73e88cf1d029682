-- CreateTable
CREATE TABLE "round" (
    "id" TEXT NOT NULL,
    "site_id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "walk_on" TEXT NOT NULL,
    "fitter_id" TEXT,
    "made_by_id" TEXT NOT NULL,
    "created_at" TIMESTAMP(3) NOT NULL,
    "closed_at" TIMESTAMP(3),

    CONSTRAINT "round_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "round_stop" (
    "round_id" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "valve_id" TEXT NOT NULL,

    CONSTRAINT "round_stop_pkey" PRIMARY KEY ("round_id","position")
);

-- CreateTable
CREATE TABLE "photo" (
    "site_id" TEXT NOT NULL,
    "digest" TEXT NOT NULL,
    "type" TEXT NOT NULL,
    "width" INTEGER NOT NULL,
    "height" INTEGER NOT NULL,
    "content" BYTEA NOT NULL,
    "thumbnail" BYTEA NOT NULL,
    "person_id" TEXT NOT NULL,
    "received_at" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "photo_pkey" PRIMARY KEY ("site_id","digest")
);

-- CreateIndex
CREATE INDEX "round_site_id_closed_at_walk_on_idx" ON "round"("site_id", "closed_at", "walk_on");

-- CreateIndex
CREATE INDEX "round_fitter_id_idx" ON "round"("fitter_id");

-- CreateIndex
CREATE INDEX "round_stop_valve_id_idx" ON "round_stop"("valve_id");

-- CreateIndex
CREATE UNIQUE INDEX "round_stop_round_id_valve_id_key" ON "round_stop"("round_id", "valve_id");

-- CreateIndex
CREATE INDEX "photo_person_id_idx" ON "photo"("person_id");

-- AddForeignKey
ALTER TABLE "round" ADD CONSTRAINT "round_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "round" ADD CONSTRAINT "round_fitter_id_fkey" FOREIGN KEY ("fitter_id") REFERENCES "person"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "round" ADD CONSTRAINT "round_made_by_id_fkey" FOREIGN KEY ("made_by_id") REFERENCES "person"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "round_stop" ADD CONSTRAINT "round_stop_round_id_fkey" FOREIGN KEY ("round_id") REFERENCES "round"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "round_stop" ADD CONSTRAINT "round_stop_valve_id_fkey" FOREIGN KEY ("valve_id") REFERENCES "valve"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "photo" ADD CONSTRAINT "photo_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "photo" ADD CONSTRAINT "photo_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
