-- AlterTable
ALTER TABLE "area" ADD COLUMN     "crew_id" TEXT,
ADD COLUMN     "set_up_minutes" DOUBLE PRECISION,
ADD COLUMN     "skill" TEXT,
ADD COLUMN     "walk_plan" TEXT;

-- AlterTable
ALTER TABLE "person" ADD COLUMN     "crew_id" TEXT;

-- AlterTable
ALTER TABLE "valve" ADD COLUMN     "east_m" DOUBLE PRECISION,
ADD COLUMN     "north_m" DOUBLE PRECISION;

-- AlterTable
ALTER TABLE "round" ADD COLUMN     "area_id" TEXT,
ADD COLUMN     "closed_by_id" TEXT,
ADD COLUMN     "crew_id" TEXT,
ADD COLUMN     "levels" INTEGER,
ADD COLUMN     "metres" DOUBLE PRECISION,
ADD COLUMN     "minutes" DOUBLE PRECISION,
ADD COLUMN     "week_of" TEXT;

-- AlterTable
ALTER TABLE "round_stop" ADD COLUMN     "added_by_id" TEXT,
ADD COLUMN     "minutes" DOUBLE PRECISION;

-- CreateTable
CREATE TABLE "crew" (
    "id" TEXT NOT NULL,
    "site_id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "hours_per_week" DOUBLE PRECISION NOT NULL,
    "skills" TEXT NOT NULL,
    "created_at" TIMESTAMP(3) NOT NULL,
    "retired_at" TIMESTAMP(3),

    CONSTRAINT "crew_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "days_off" (
    "id" TEXT NOT NULL,
    "site_id" TEXT NOT NULL,
    "crew_id" TEXT,
    "area_id" TEXT,
    "reason" TEXT NOT NULL,
    "starts_on" TEXT NOT NULL,
    "ends_on" TEXT NOT NULL,
    "repeats" TEXT,
    "share" DOUBLE PRECISION NOT NULL DEFAULT 1,

    CONSTRAINT "days_off_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "round_plan" (
    "id" TEXT NOT NULL,
    "site_id" TEXT NOT NULL,
    "made_at" TIMESTAMP(3) NOT NULL,
    "made_by_id" TEXT NOT NULL,
    "starts_on" TEXT NOT NULL,
    "weeks" INTEGER NOT NULL,
    "taken_at" TIMESTAMP(3),
    "taken_by_id" TEXT,
    "summary" TEXT NOT NULL,

    CONSTRAINT "round_plan_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "planned_visit" (
    "plan_id" TEXT NOT NULL,
    "valve_id" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "area_id" TEXT NOT NULL,
    "crew_id" TEXT,
    "week" INTEGER,
    "was_week" INTEGER,
    "due_week" INTEGER NOT NULL,
    "earliest" INTEGER NOT NULL,
    "latest" INTEGER NOT NULL,
    "minutes" DOUBLE PRECISION NOT NULL,
    "cause" TEXT NOT NULL,
    "reason" TEXT NOT NULL,

    CONSTRAINT "planned_visit_pkey" PRIMARY KEY ("plan_id","valve_id","number")
);

-- CreateTable
CREATE TABLE "visit_pin" (
    "id" TEXT NOT NULL,
    "site_id" TEXT NOT NULL,
    "valve_id" TEXT NOT NULL,
    "week_of" TEXT NOT NULL,
    "crew_id" TEXT,
    "person_id" TEXT NOT NULL,
    "made_at" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "visit_pin_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "calendar_address" (
    "id" TEXT NOT NULL,
    "site_id" TEXT NOT NULL,
    "crew_id" TEXT,
    "token_hash" TEXT NOT NULL,
    "made_by_id" TEXT NOT NULL,
    "made_at" TIMESTAMP(3) NOT NULL,
    "retired_at" TIMESTAMP(3),

    CONSTRAINT "calendar_address_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "crew_site_id_name_idx" ON "crew"("site_id", "name");

-- CreateIndex
CREATE INDEX "days_off_site_id_starts_on_idx" ON "days_off"("site_id", "starts_on");

-- CreateIndex
CREATE INDEX "days_off_crew_id_idx" ON "days_off"("crew_id");

-- CreateIndex
CREATE INDEX "days_off_area_id_idx" ON "days_off"("area_id");

-- CreateIndex
CREATE INDEX "round_plan_site_id_taken_at_idx" ON "round_plan"("site_id", "taken_at");

-- CreateIndex
CREATE INDEX "planned_visit_plan_id_week_idx" ON "planned_visit"("plan_id", "week");

-- CreateIndex
CREATE INDEX "planned_visit_valve_id_idx" ON "planned_visit"("valve_id");

-- CreateIndex
CREATE INDEX "planned_visit_crew_id_idx" ON "planned_visit"("crew_id");

-- CreateIndex
CREATE INDEX "visit_pin_valve_id_idx" ON "visit_pin"("valve_id");

-- CreateIndex
CREATE INDEX "visit_pin_crew_id_idx" ON "visit_pin"("crew_id");

-- CreateIndex
CREATE INDEX "visit_pin_person_id_idx" ON "visit_pin"("person_id");

-- CreateIndex
CREATE UNIQUE INDEX "visit_pin_site_id_valve_id_week_of_key" ON "visit_pin"("site_id", "valve_id", "week_of");

-- CreateIndex
CREATE UNIQUE INDEX "calendar_address_token_hash_key" ON "calendar_address"("token_hash");

-- CreateIndex
CREATE INDEX "calendar_address_site_id_idx" ON "calendar_address"("site_id");

-- CreateIndex
CREATE INDEX "calendar_address_crew_id_idx" ON "calendar_address"("crew_id");

-- CreateIndex
CREATE INDEX "calendar_address_made_by_id_idx" ON "calendar_address"("made_by_id");

-- CreateIndex
CREATE INDEX "area_crew_id_idx" ON "area"("crew_id");

-- CreateIndex
CREATE INDEX "person_crew_id_idx" ON "person"("crew_id");

-- CreateIndex
CREATE INDEX "round_site_id_week_of_idx" ON "round"("site_id", "week_of");

-- CreateIndex
CREATE INDEX "round_area_id_idx" ON "round"("area_id");

-- CreateIndex
CREATE INDEX "round_crew_id_idx" ON "round"("crew_id");

-- CreateIndex
CREATE INDEX "round_stop_added_by_id_idx" ON "round_stop"("added_by_id");

-- AddForeignKey
ALTER TABLE "area" ADD CONSTRAINT "area_crew_id_fkey" FOREIGN KEY ("crew_id") REFERENCES "crew"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "person" ADD CONSTRAINT "person_crew_id_fkey" FOREIGN KEY ("crew_id") REFERENCES "crew"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "round" ADD CONSTRAINT "round_area_id_fkey" FOREIGN KEY ("area_id") REFERENCES "area"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "round" ADD CONSTRAINT "round_crew_id_fkey" FOREIGN KEY ("crew_id") REFERENCES "crew"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "round" ADD CONSTRAINT "round_closed_by_id_fkey" FOREIGN KEY ("closed_by_id") REFERENCES "person"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "round_stop" ADD CONSTRAINT "round_stop_added_by_id_fkey" FOREIGN KEY ("added_by_id") REFERENCES "person"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "crew" ADD CONSTRAINT "crew_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "days_off" ADD CONSTRAINT "days_off_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "days_off" ADD CONSTRAINT "days_off_crew_id_fkey" FOREIGN KEY ("crew_id") REFERENCES "crew"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "days_off" ADD CONSTRAINT "days_off_area_id_fkey" FOREIGN KEY ("area_id") REFERENCES "area"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "round_plan" ADD CONSTRAINT "round_plan_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "round_plan" ADD CONSTRAINT "round_plan_made_by_id_fkey" FOREIGN KEY ("made_by_id") REFERENCES "person"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "round_plan" ADD CONSTRAINT "round_plan_taken_by_id_fkey" FOREIGN KEY ("taken_by_id") REFERENCES "person"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "planned_visit" ADD CONSTRAINT "planned_visit_plan_id_fkey" FOREIGN KEY ("plan_id") REFERENCES "round_plan"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "planned_visit" ADD CONSTRAINT "planned_visit_valve_id_fkey" FOREIGN KEY ("valve_id") REFERENCES "valve"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "planned_visit" ADD CONSTRAINT "planned_visit_crew_id_fkey" FOREIGN KEY ("crew_id") REFERENCES "crew"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "visit_pin" ADD CONSTRAINT "visit_pin_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "visit_pin" ADD CONSTRAINT "visit_pin_valve_id_fkey" FOREIGN KEY ("valve_id") REFERENCES "valve"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "visit_pin" ADD CONSTRAINT "visit_pin_crew_id_fkey" FOREIGN KEY ("crew_id") REFERENCES "crew"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "visit_pin" ADD CONSTRAINT "visit_pin_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "calendar_address" ADD CONSTRAINT "calendar_address_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "calendar_address" ADD CONSTRAINT "calendar_address_crew_id_fkey" FOREIGN KEY ("crew_id") REFERENCES "crew"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "calendar_address" ADD CONSTRAINT "calendar_address_made_by_id_fkey" FOREIGN KEY ("made_by_id") REFERENCES "person"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
