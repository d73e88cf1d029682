-- AlterTable
ALTER TABLE "valve" ADD COLUMN "east_m" REAL;
ALTER TABLE "valve" ADD COLUMN "north_m" REAL;

-- CreateTable
CREATE TABLE "crew" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "site_id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "hours_per_week" REAL NOT NULL,
    "skills" TEXT NOT NULL,
    "created_at" DATETIME NOT NULL,
    "retired_at" DATETIME,
    CONSTRAINT "crew_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "days_off" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "site_id" TEXT NOT NULL,
    "crew_id" TEXT,
    "area_id" TEXT,
    "reason" TEXT NOT NULL,
    "starts_on" TEXT NOT NULL,
    "ends_on" TEXT NOT NULL,
    "repeats" TEXT,
    "share" REAL NOT NULL DEFAULT 1,
    CONSTRAINT "days_off_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "days_off_crew_id_fkey" FOREIGN KEY ("crew_id") REFERENCES "crew" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "days_off_area_id_fkey" FOREIGN KEY ("area_id") REFERENCES "area" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "round_plan" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "site_id" TEXT NOT NULL,
    "made_at" DATETIME NOT NULL,
    "made_by_id" TEXT NOT NULL,
    "starts_on" TEXT NOT NULL,
    "weeks" INTEGER NOT NULL,
    "taken_at" DATETIME,
    "taken_by_id" TEXT,
    "summary" TEXT NOT NULL,
    CONSTRAINT "round_plan_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "round_plan_made_by_id_fkey" FOREIGN KEY ("made_by_id") REFERENCES "person" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "round_plan_taken_by_id_fkey" FOREIGN KEY ("taken_by_id") REFERENCES "person" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
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
    "minutes" REAL NOT NULL,
    "cause" TEXT NOT NULL,
    "reason" TEXT NOT NULL,

    PRIMARY KEY ("plan_id", "valve_id", "number"),
    CONSTRAINT "planned_visit_plan_id_fkey" FOREIGN KEY ("plan_id") REFERENCES "round_plan" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "planned_visit_valve_id_fkey" FOREIGN KEY ("valve_id") REFERENCES "valve" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "planned_visit_crew_id_fkey" FOREIGN KEY ("crew_id") REFERENCES "crew" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "visit_pin" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "site_id" TEXT NOT NULL,
    "valve_id" TEXT NOT NULL,
    "week_of" TEXT NOT NULL,
    "crew_id" TEXT,
    "person_id" TEXT NOT NULL,
    "made_at" DATETIME NOT NULL,
    CONSTRAINT "visit_pin_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "visit_pin_valve_id_fkey" FOREIGN KEY ("valve_id") REFERENCES "valve" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "visit_pin_crew_id_fkey" FOREIGN KEY ("crew_id") REFERENCES "crew" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "visit_pin_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "calendar_address" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "site_id" TEXT NOT NULL,
    "crew_id" TEXT,
    "token_hash" TEXT NOT NULL,
    "made_by_id" TEXT NOT NULL,
    "made_at" DATETIME NOT NULL,
    "retired_at" DATETIME,
    CONSTRAINT "calendar_address_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "calendar_address_crew_id_fkey" FOREIGN KEY ("crew_id") REFERENCES "crew" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "calendar_address_made_by_id_fkey" FOREIGN KEY ("made_by_id") REFERENCES "person" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_area" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "site_id" TEXT NOT NULL,
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "walk_position" INTEGER NOT NULL,
    "level" INTEGER NOT NULL,
    "set_up_minutes" REAL,
    "skill" TEXT,
    "crew_id" TEXT,
    "walk_plan" TEXT,
    CONSTRAINT "area_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "area_crew_id_fkey" FOREIGN KEY ("crew_id") REFERENCES "crew" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_area" ("code", "id", "level", "name", "site_id", "walk_position") SELECT "code", "id", "level", "name", "site_id", "walk_position" FROM "area";
DROP TABLE "area";
ALTER TABLE "new_area" RENAME TO "area";
CREATE INDEX "area_crew_id_idx" ON "area"("crew_id");
CREATE UNIQUE INDEX "area_site_id_code_key" ON "area"("site_id", "code");
CREATE TABLE "new_person" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "site_id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "sign_in_name" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "password_hash" TEXT NOT NULL,
    "created_at" DATETIME NOT NULL,
    "retired_at" DATETIME,
    "crew_id" TEXT,
    CONSTRAINT "person_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "person_crew_id_fkey" FOREIGN KEY ("crew_id") REFERENCES "crew" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_person" ("created_at", "id", "name", "password_hash", "retired_at", "role", "sign_in_name", "site_id") SELECT "created_at", "id", "name", "password_hash", "retired_at", "role", "sign_in_name", "site_id" FROM "person";
DROP TABLE "person";
ALTER TABLE "new_person" RENAME TO "person";
CREATE UNIQUE INDEX "person_sign_in_name_key" ON "person"("sign_in_name");
CREATE INDEX "person_site_id_name_idx" ON "person"("site_id", "name");
CREATE INDEX "person_crew_id_idx" ON "person"("crew_id");
CREATE TABLE "new_round" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "site_id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "walk_on" TEXT NOT NULL,
    "week_of" TEXT,
    "area_id" TEXT,
    "crew_id" TEXT,
    "fitter_id" TEXT,
    "minutes" REAL,
    "metres" REAL,
    "levels" INTEGER,
    "made_by_id" TEXT NOT NULL,
    "created_at" DATETIME NOT NULL,
    "closed_at" DATETIME,
    "closed_by_id" TEXT,
    CONSTRAINT "round_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "round_area_id_fkey" FOREIGN KEY ("area_id") REFERENCES "area" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "round_crew_id_fkey" FOREIGN KEY ("crew_id") REFERENCES "crew" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "round_fitter_id_fkey" FOREIGN KEY ("fitter_id") REFERENCES "person" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "round_made_by_id_fkey" FOREIGN KEY ("made_by_id") REFERENCES "person" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "round_closed_by_id_fkey" FOREIGN KEY ("closed_by_id") REFERENCES "person" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_round" ("closed_at", "created_at", "fitter_id", "id", "made_by_id", "name", "site_id", "walk_on") SELECT "closed_at", "created_at", "fitter_id", "id", "made_by_id", "name", "site_id", "walk_on" FROM "round";
DROP TABLE "round";
ALTER TABLE "new_round" RENAME TO "round";
CREATE INDEX "round_site_id_closed_at_walk_on_idx" ON "round"("site_id", "closed_at", "walk_on");
CREATE INDEX "round_site_id_week_of_idx" ON "round"("site_id", "week_of");
CREATE INDEX "round_fitter_id_idx" ON "round"("fitter_id");
CREATE INDEX "round_area_id_idx" ON "round"("area_id");
CREATE INDEX "round_crew_id_idx" ON "round"("crew_id");
CREATE TABLE "new_round_stop" (
    "round_id" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "valve_id" TEXT NOT NULL,
    "minutes" REAL,
    "added_by_id" TEXT,

    PRIMARY KEY ("round_id", "position"),
    CONSTRAINT "round_stop_round_id_fkey" FOREIGN KEY ("round_id") REFERENCES "round" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "round_stop_valve_id_fkey" FOREIGN KEY ("valve_id") REFERENCES "valve" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "round_stop_added_by_id_fkey" FOREIGN KEY ("added_by_id") REFERENCES "person" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_round_stop" ("position", "round_id", "valve_id") SELECT "position", "round_id", "valve_id" FROM "round_stop";
DROP TABLE "round_stop";
ALTER TABLE "new_round_stop" RENAME TO "round_stop";
CREATE INDEX "round_stop_valve_id_idx" ON "round_stop"("valve_id");
CREATE INDEX "round_stop_added_by_id_idx" ON "round_stop"("added_by_id");
CREATE UNIQUE INDEX "round_stop_round_id_valve_id_key" ON "round_stop"("round_id", "valve_id");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

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
