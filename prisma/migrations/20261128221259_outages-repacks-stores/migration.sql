-- CreateTable
CREATE TABLE "outage" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "site_id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "earliest_on" TEXT NOT NULL,
    "likely_on" TEXT NOT NULL,
    "latest_on" TEXT NOT NULL,
    "days" INTEGER NOT NULL,
    "fitting_hours" REAL NOT NULL,
    "scaffolding_hours" REAL NOT NULL,
    "isolating_hours" REAL NOT NULL,
    "area_codes" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "started_on" TEXT,
    "ended_on" TEXT,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "created_at" DATETIME NOT NULL,
    CONSTRAINT "outage_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "repack_plan" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "site_id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "made_at" DATETIME NOT NULL,
    "made_by_id" TEXT NOT NULL,
    "starts_on" TEXT NOT NULL,
    "weeks" INTEGER NOT NULL,
    "objective" TEXT NOT NULL,
    "taken_at" DATETIME,
    "taken_by_id" TEXT,
    "summary" TEXT NOT NULL,
    CONSTRAINT "repack_plan_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "repack_plan_made_by_id_fkey" FOREIGN KEY ("made_by_id") REFERENCES "person" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "repack_plan_taken_by_id_fkey" FOREIGN KEY ("taken_by_id") REFERENCES "person" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "planned_repack" (
    "plan_id" TEXT NOT NULL,
    "valve_id" TEXT NOT NULL,
    "area_id" TEXT NOT NULL,
    "boundary" TEXT NOT NULL,
    "slot_id" TEXT,
    "reason" TEXT NOT NULL,
    "blocked_by" TEXT,
    "runner_up" TEXT,
    "chance_out" REAL NOT NULL,
    "expected_leaks" REAL NOT NULL,
    "cost" REAL NOT NULL,
    "running_cost" REAL NOT NULL,
    "leak_cost" REAL NOT NULL,
    "waste_cost" REAL NOT NULL,
    "if_kept" TEXT,
    "fitting_hours" REAL NOT NULL,
    "scaffolding_hours" REAL NOT NULL,
    "isolating_hours" REAL NOT NULL,
    "needs" TEXT,

    PRIMARY KEY ("plan_id", "valve_id"),
    CONSTRAINT "planned_repack_plan_id_fkey" FOREIGN KEY ("plan_id") REFERENCES "repack_plan" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "planned_repack_valve_id_fkey" FOREIGN KEY ("valve_id") REFERENCES "valve" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "repack_pin" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "site_id" TEXT NOT NULL,
    "valve_id" TEXT NOT NULL,
    "slot_id" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "person_id" TEXT NOT NULL,
    "made_at" DATETIME NOT NULL,
    CONSTRAINT "repack_pin_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "repack_pin_valve_id_fkey" FOREIGN KEY ("valve_id") REFERENCES "valve" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "repack_pin_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "stock_item" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "site_id" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "family" TEXT,
    "section_mm" REAL,
    "box_bore_mm" REAL,
    "stem_diameter_mm" REAL,
    "thread" TEXT,
    "length_mm" REAL,
    "lead_time_days" INTEGER NOT NULL,
    "least_stock" REAL NOT NULL,
    "pack_size" REAL NOT NULL,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "created_at" DATETIME NOT NULL,
    CONSTRAINT "stock_item_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "stock_lot" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "site_id" TEXT NOT NULL,
    "item_id" TEXT NOT NULL,
    "label" TEXT NOT NULL,
    "batch" TEXT NOT NULL,
    "expires_on" TEXT,
    "created_at" DATETIME NOT NULL,
    CONSTRAINT "stock_lot_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "stock_lot_item_id_fkey" FOREIGN KEY ("item_id") REFERENCES "stock_item" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "stock_movement" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "site_id" TEXT NOT NULL,
    "item_id" TEXT NOT NULL,
    "lot_id" TEXT,
    "kind" TEXT NOT NULL,
    "amount" REAL NOT NULL,
    "taken_at" DATETIME NOT NULL,
    "received_at" DATETIME NOT NULL,
    "person_id" TEXT NOT NULL,
    "valve_id" TEXT,
    "outage_id" TEXT,
    "event_id" TEXT,
    "corrects" TEXT,
    "expected_on" TEXT,
    "body" TEXT NOT NULL,
    CONSTRAINT "stock_movement_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "stock_movement_item_id_fkey" FOREIGN KEY ("item_id") REFERENCES "stock_item" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "stock_movement_lot_id_fkey" FOREIGN KEY ("lot_id") REFERENCES "stock_lot" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "stock_movement_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "stock_movement_valve_id_fkey" FOREIGN KEY ("valve_id") REFERENCES "valve" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "stock_movement_outage_id_fkey" FOREIGN KEY ("outage_id") REFERENCES "outage" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "outage_site_id_likely_on_idx" ON "outage"("site_id", "likely_on");

-- CreateIndex
CREATE INDEX "repack_plan_site_id_made_at_idx" ON "repack_plan"("site_id", "made_at");

-- CreateIndex
CREATE INDEX "repack_plan_site_id_taken_at_idx" ON "repack_plan"("site_id", "taken_at");

-- CreateIndex
CREATE INDEX "planned_repack_plan_id_slot_id_cost_idx" ON "planned_repack"("plan_id", "slot_id", "cost");

-- CreateIndex
CREATE INDEX "planned_repack_plan_id_cost_idx" ON "planned_repack"("plan_id", "cost");

-- CreateIndex
CREATE INDEX "planned_repack_valve_id_idx" ON "planned_repack"("valve_id");

-- CreateIndex
CREATE INDEX "repack_pin_valve_id_idx" ON "repack_pin"("valve_id");

-- CreateIndex
CREATE INDEX "repack_pin_person_id_idx" ON "repack_pin"("person_id");

-- CreateIndex
CREATE UNIQUE INDEX "repack_pin_site_id_valve_id_slot_id_key" ON "repack_pin"("site_id", "valve_id", "slot_id");

-- CreateIndex
CREATE UNIQUE INDEX "stock_item_site_id_name_key" ON "stock_item"("site_id", "name");

-- CreateIndex
CREATE INDEX "stock_lot_site_id_item_id_idx" ON "stock_lot"("site_id", "item_id");

-- CreateIndex
CREATE INDEX "stock_lot_item_id_idx" ON "stock_lot"("item_id");

-- CreateIndex
CREATE INDEX "stock_movement_site_id_item_id_taken_at_idx" ON "stock_movement"("site_id", "item_id", "taken_at");

-- CreateIndex
CREATE INDEX "stock_movement_item_id_idx" ON "stock_movement"("item_id");

-- CreateIndex
CREATE INDEX "stock_movement_lot_id_idx" ON "stock_movement"("lot_id");

-- CreateIndex
CREATE INDEX "stock_movement_valve_id_idx" ON "stock_movement"("valve_id");

-- CreateIndex
CREATE INDEX "stock_movement_outage_id_idx" ON "stock_movement"("outage_id");

-- CreateIndex
CREATE INDEX "stock_movement_person_id_idx" ON "stock_movement"("person_id");

-- CreateIndex
CREATE INDEX "stock_movement_event_id_idx" ON "stock_movement"("event_id");
