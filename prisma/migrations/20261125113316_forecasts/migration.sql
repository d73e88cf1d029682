-- DropIndex
DROP INDEX "valve_state_site_id_retired_area_id_reserve_mm_runs_out_at_idx";

-- AlterTable
ALTER TABLE "site" ADD COLUMN "next_stop_on" TEXT;

-- AlterTable
ALTER TABLE "valve_state" ADD COLUMN "chance_before_stop" REAL;
ALTER TABLE "valve_state" ADD COLUMN "fit_id" TEXT;
ALTER TABLE "valve_state" ADD COLUMN "forecast" TEXT;
ALTER TABLE "valve_state" ADD COLUMN "next_look" TEXT;
ALTER TABLE "valve_state" ADD COLUMN "next_look_at" DATETIME;
ALTER TABLE "valve_state" ADD COLUMN "stop_at" DATETIME;

-- CreateTable
CREATE TABLE "wear_fit" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "site_id" TEXT NOT NULL,
    "fitted_at" DATETIME NOT NULL,
    "cause" TEXT NOT NULL,
    "body" TEXT NOT NULL,
    CONSTRAINT "wear_fit_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "forecast_made" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "site_id" TEXT NOT NULL,
    "valve_id" TEXT NOT NULL,
    "event_id" TEXT NOT NULL,
    "made_at" DATETIME NOT NULL,
    "counted_from" DATETIME NOT NULL,
    "group_name" TEXT NOT NULL,
    "readings_used" INTEGER NOT NULL,
    "reserve_mm" REAL NOT NULL,
    "dates" TEXT NOT NULL,
    "straight_line_at" DATETIME,
    CONSTRAINT "forecast_made_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "wear_fit_site_id_fitted_at_idx" ON "wear_fit"("site_id", "fitted_at");

-- CreateIndex
CREATE INDEX "forecast_made_site_id_valve_id_counted_from_idx" ON "forecast_made"("site_id", "valve_id", "counted_from");

-- CreateIndex
CREATE UNIQUE INDEX "forecast_made_site_id_event_id_key" ON "forecast_made"("site_id", "event_id");

-- CreateIndex
CREATE INDEX "valve_state_site_id_retired_area_id_reserve_mm_chance_before_stop_idx" ON "valve_state"("site_id", "retired", "area_id", "reserve_mm", "chance_before_stop");

-- CreateIndex
CREATE INDEX "valve_state_site_id_retired_next_look_at_valve_id_idx" ON "valve_state"("site_id", "retired", "next_look_at", "valve_id");
