-- AlterTable
ALTER TABLE "site" ADD COLUMN "leaks_kept_at" DATETIME;

-- CreateTable
CREATE TABLE "leak" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "site_id" TEXT NOT NULL,
    "valve_id" TEXT NOT NULL,
    "area_id" TEXT NOT NULL,
    "service" TEXT NOT NULL,
    "opened_at" DATETIME NOT NULL,
    "state" TEXT NOT NULL,
    "worst" INTEGER,
    "worst_screening" REAL,
    "attempts" INTEGER NOT NULL,
    "first_attempt_at" DATETIME,
    "verified_at" DATETIME,
    "reopened" INTEGER NOT NULL,
    "deferred_at" DATETIME,
    "deferred_until" TEXT,
    "packed_at" DATETIME,
    "family" TEXT,
    "age_days" REAL,
    CONSTRAINT "leak_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "leak_valve_id_fkey" FOREIGN KEY ("valve_id") REFERENCES "valve" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "leak_study" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "site_id" TEXT NOT NULL,
    "made_at" DATETIME NOT NULL,
    "entries" INTEGER NOT NULL,
    "body" TEXT NOT NULL,
    CONSTRAINT "leak_study_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "leak_rule" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "site_id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "body" TEXT NOT NULL,
    "example_of" TEXT,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "created_at" DATETIME NOT NULL,
    CONSTRAINT "leak_rule_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "valve_monitoring" (
    "valve_id" TEXT NOT NULL PRIMARY KEY,
    "site_id" TEXT NOT NULL,
    "rule_id" TEXT,
    "kind" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    "since" TEXT NOT NULL,
    "judged_from" REAL,
    "person_id" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    CONSTRAINT "valve_monitoring_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "valve_monitoring_valve_id_fkey" FOREIGN KEY ("valve_id") REFERENCES "valve" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "valve_monitoring_rule_id_fkey" FOREIGN KEY ("rule_id") REFERENCES "leak_rule" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "valve_monitoring_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "site_key" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "site_id" TEXT NOT NULL,
    "public_key" TEXT NOT NULL,
    "sealed_key" TEXT NOT NULL,
    "made_at" DATETIME NOT NULL,
    CONSTRAINT "site_key_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "chain_seal" (
    "site_id" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "hash" TEXT NOT NULL,
    "key_id" TEXT NOT NULL,
    "made_at" DATETIME NOT NULL,
    "signature" TEXT NOT NULL,

    PRIMARY KEY ("site_id", "position"),
    CONSTRAINT "chain_seal_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "chain_seal_key_id_fkey" FOREIGN KEY ("key_id") REFERENCES "site_key" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "leak_site_id_opened_at_id_idx" ON "leak"("site_id", "opened_at", "id");

-- CreateIndex
CREATE INDEX "leak_site_id_state_opened_at_id_idx" ON "leak"("site_id", "state", "opened_at", "id");

-- CreateIndex
CREATE INDEX "leak_site_id_service_opened_at_id_idx" ON "leak"("site_id", "service", "opened_at", "id");

-- CreateIndex
CREATE INDEX "leak_site_id_area_id_opened_at_id_idx" ON "leak"("site_id", "area_id", "opened_at", "id");

-- CreateIndex
CREATE INDEX "leak_valve_id_opened_at_idx" ON "leak"("valve_id", "opened_at");

-- CreateIndex
CREATE INDEX "leak_study_site_id_made_at_idx" ON "leak_study"("site_id", "made_at");

-- CreateIndex
CREATE INDEX "leak_rule_site_id_name_idx" ON "leak_rule"("site_id", "name");

-- CreateIndex
CREATE INDEX "valve_monitoring_site_id_rule_id_idx" ON "valve_monitoring"("site_id", "rule_id");

-- CreateIndex
CREATE INDEX "valve_monitoring_rule_id_idx" ON "valve_monitoring"("rule_id");

-- CreateIndex
CREATE INDEX "valve_monitoring_person_id_idx" ON "valve_monitoring"("person_id");

-- CreateIndex
CREATE INDEX "site_key_site_id_made_at_idx" ON "site_key"("site_id", "made_at");

-- CreateIndex
CREATE INDEX "chain_seal_key_id_idx" ON "chain_seal"("key_id");

-- CreateIndex
CREATE INDEX "register_change_site_id_at_id_idx" ON "register_change"("site_id", "at", "id");
