-- DropIndex
DROP INDEX "valve_state_site_id_retired_area_id_reserve_mm_runs_out_at_idx";

-- AlterTable
ALTER TABLE "site" ADD COLUMN     "next_stop_on" TEXT;

-- AlterTable
ALTER TABLE "valve_state" ADD COLUMN     "chance_before_stop" DOUBLE PRECISION,
ADD COLUMN     "fit_id" TEXT,
ADD COLUMN     "forecast" TEXT,
ADD COLUMN     "next_look" TEXT,
ADD COLUMN     "next_look_at" TIMESTAMP(3),
ADD COLUMN     "stop_at" TIMESTAMP(3);

-- CreateTable
CREATE TABLE "wear_fit" (
    "id" TEXT NOT NULL,
    "site_id" TEXT NOT NULL,
    "fitted_at" TIMESTAMP(3) NOT NULL,
    "cause" TEXT NOT NULL,
    "body" TEXT NOT NULL,

    CONSTRAINT "wear_fit_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "forecast_made" (
    "id" TEXT NOT NULL,
    "site_id" TEXT NOT NULL,
    "valve_id" TEXT NOT NULL,
    "event_id" TEXT NOT NULL,
    "made_at" TIMESTAMP(3) NOT NULL,
    "counted_from" TIMESTAMP(3) NOT NULL,
    "group_name" TEXT NOT NULL,
    "readings_used" INTEGER NOT NULL,
    "reserve_mm" DOUBLE PRECISION NOT NULL,
    "dates" TEXT NOT NULL,
    "straight_line_at" TIMESTAMP(3),

    CONSTRAINT "forecast_made_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "wear_fit_site_id_fitted_at_idx" ON "wear_fit"("site_id", "fitted_at");

-- CreateIndex
CREATE INDEX "forecast_made_site_id_valve_id_counted_from_idx" ON "forecast_made"("site_id", "valve_id", "counted_from");

-- CreateIndex
CREATE UNIQUE INDEX "forecast_made_site_id_event_id_key" ON "forecast_made"("site_id", "event_id");

-- CreateIndex
CREATE INDEX "valve_state_site_id_retired_area_id_reserve_mm_chance_befor_idx" ON "valve_state"("site_id", "retired", "area_id", "reserve_mm", "chance_before_stop");

-- CreateIndex
CREATE INDEX "valve_state_site_id_retired_next_look_at_valve_id_idx" ON "valve_state"("site_id", "retired", "next_look_at", "valve_id");

-- AddForeignKey
ALTER TABLE "wear_fit" ADD CONSTRAINT "wear_fit_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "forecast_made" ADD CONSTRAINT "forecast_made_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
