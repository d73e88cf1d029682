-- CreateTable
CREATE TABLE "site_setting" (
    "site_id" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "value" DOUBLE PRECISION NOT NULL,
    "person_id" TEXT NOT NULL,
    "confirmed_at" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "site_setting_pkey" PRIMARY KEY ("site_id","key")
);

-- CreateTable
CREATE TABLE "packing_family" (
    "id" TEXT NOT NULL,
    "site_id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "is_own" BOOLEAN NOT NULL,
    "form" TEXT,
    "description" TEXT,
    "cautions" TEXT,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMP(3) NOT NULL,
    "updated_at" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "packing_family_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "packing_figure" (
    "site_id" TEXT NOT NULL,
    "family_id" TEXT NOT NULL,
    "figure" TEXT NOT NULL,
    "value" DOUBLE PRECISION NOT NULL,
    "person_id" TEXT NOT NULL,
    "confirmed_at" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "packing_figure_pkey" PRIMARY KEY ("site_id","family_id","figure")
);

-- CreateIndex
CREATE UNIQUE INDEX "packing_family_site_id_name_key" ON "packing_family"("site_id", "name");

-- AddForeignKey
ALTER TABLE "site_setting" ADD CONSTRAINT "site_setting_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "site_setting" ADD CONSTRAINT "site_setting_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "packing_family" ADD CONSTRAINT "packing_family_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "packing_figure" ADD CONSTRAINT "packing_figure_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "packing_figure" ADD CONSTRAINT "packing_figure_family_id_fkey" FOREIGN KEY ("family_id") REFERENCES "packing_family"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "packing_figure" ADD CONSTRAINT "packing_figure_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
