-- CreateTable
CREATE TABLE "site" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "time_zone" TEXT NOT NULL,
    "is_demo" BOOLEAN NOT NULL DEFAULT false,
    "chain_head" TEXT NOT NULL DEFAULT '',
    "chain_length" INTEGER NOT NULL DEFAULT 0,
    "created_at" DATETIME NOT NULL,
    "ready_at" DATETIME
);

-- CreateTable
CREATE TABLE "area" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "site_id" TEXT NOT NULL,
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "walk_position" INTEGER NOT NULL,
    "level" INTEGER NOT NULL,
    CONSTRAINT "area_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "person" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "site_id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "sign_in_name" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "password_hash" TEXT NOT NULL,
    "created_at" DATETIME NOT NULL,
    "retired_at" DATETIME,
    CONSTRAINT "person_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "session" (
    "token_hash" TEXT NOT NULL PRIMARY KEY,
    "person_id" TEXT NOT NULL,
    "created_at" DATETIME NOT NULL,
    "expires_at" DATETIME NOT NULL,
    CONSTRAINT "session_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "valve" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "site_id" TEXT NOT NULL,
    "area_id" TEXT NOT NULL,
    "tag" TEXT NOT NULL,
    "search_text" TEXT NOT NULL,
    "description" TEXT NOT NULL,
    "walk_position" INTEGER NOT NULL,
    "level" INTEGER NOT NULL,
    "service" TEXT NOT NULL,
    "fluid" TEXT NOT NULL,
    "phase" TEXT NOT NULL,
    "temperature_c" REAL,
    "pressure_bar" REAL,
    "valve_kind" TEXT NOT NULL,
    "stem_movement" TEXT,
    "isolation_boundary" TEXT NOT NULL,
    "isolates_on_line" BOOLEAN NOT NULL,
    "access" TEXT NOT NULL,
    "criticality" TEXT NOT NULL,
    "box_bore_mm" REAL,
    "stem_diameter_mm" REAL,
    "box_depth_mm" REAL,
    "follower_kind" TEXT,
    "nose_length_mm" REAL,
    "least_engagement_mm" REAL NOT NULL,
    "keep_clear_mm" REAL NOT NULL,
    "stud_thread" TEXT,
    "stud_count" INTEGER,
    "stud_grade" TEXT NOT NULL,
    "lubrication" TEXT NOT NULL,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "created_at" DATETIME NOT NULL,
    "updated_at" DATETIME NOT NULL,
    "retired_at" DATETIME,
    CONSTRAINT "valve_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "valve_area_id_fkey" FOREIGN KEY ("area_id") REFERENCES "area" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "event" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "site_id" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "valve_id" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "taken_at" DATETIME NOT NULL,
    "received_at" DATETIME NOT NULL,
    "person_id" TEXT NOT NULL,
    "device" TEXT NOT NULL,
    "body" TEXT NOT NULL,
    "hash" TEXT NOT NULL,
    CONSTRAINT "event_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "event_valve_id_fkey" FOREIGN KEY ("valve_id") REFERENCES "valve" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "event_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "valve_state" (
    "valve_id" TEXT NOT NULL PRIMARY KEY,
    "site_id" TEXT NOT NULL,
    "area_id" TEXT NOT NULL,
    "gap_left_mm" REAL,
    "gap_right_mm" REAL,
    "gap_is_inferred" BOOLEAN NOT NULL,
    "reserve_mm" REAL,
    "reserve_limited_by" TEXT,
    "runs_out_at" DATETIME,
    "urgency" INTEGER NOT NULL,
    "packed_at" DATETIME,
    "packing_family" TEXT,
    "last_seen_at" DATETIME,
    "findings" TEXT NOT NULL,
    "entry_count" INTEGER NOT NULL,
    "retired" BOOLEAN NOT NULL,
    CONSTRAINT "valve_state_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "valve_state_valve_id_fkey" FOREIGN KEY ("valve_id") REFERENCES "valve" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "register_change" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "site_id" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    "person_id" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "subject_id" TEXT NOT NULL,
    "what" TEXT NOT NULL,
    "before" TEXT NOT NULL,
    "after" TEXT NOT NULL,
    CONSTRAINT "register_change_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "register_change_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "import_run" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "site_id" TEXT NOT NULL,
    "person_id" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "file_name" TEXT NOT NULL,
    "content" BLOB NOT NULL,
    "columns" TEXT NOT NULL,
    "step" TEXT NOT NULL,
    "mode" TEXT,
    "cancel_asked" BOOLEAN NOT NULL DEFAULT false,
    "touched_at" DATETIME NOT NULL,
    "row_count" INTEGER NOT NULL DEFAULT 0,
    "good_count" INTEGER NOT NULL DEFAULT 0,
    "bad_count" INTEGER NOT NULL DEFAULT 0,
    "done_count" INTEGER NOT NULL DEFAULT 0,
    "already_count" INTEGER NOT NULL DEFAULT 0,
    "fault_count" INTEGER NOT NULL DEFAULT 0,
    "faults" TEXT NOT NULL DEFAULT '[]',
    "bad_rows" BLOB,
    "detail" TEXT NOT NULL DEFAULT '',
    "started_at" DATETIME NOT NULL,
    "finished_at" DATETIME,
    CONSTRAINT "import_run_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "import_run_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE UNIQUE INDEX "area_site_id_code_key" ON "area"("site_id", "code");

-- CreateIndex
CREATE UNIQUE INDEX "person_sign_in_name_key" ON "person"("sign_in_name");

-- CreateIndex
CREATE INDEX "person_site_id_name_idx" ON "person"("site_id", "name");

-- CreateIndex
CREATE INDEX "session_person_id_idx" ON "session"("person_id");

-- CreateIndex
CREATE INDEX "valve_site_id_retired_at_service_idx" ON "valve"("site_id", "retired_at", "service");

-- CreateIndex
CREATE INDEX "valve_area_id_idx" ON "valve"("area_id");

-- CreateIndex
CREATE UNIQUE INDEX "valve_site_id_tag_key" ON "valve"("site_id", "tag");

-- CreateIndex
CREATE INDEX "event_site_id_valve_id_taken_at_idx" ON "event"("site_id", "valve_id", "taken_at");

-- CreateIndex
CREATE UNIQUE INDEX "event_site_id_position_key" ON "event"("site_id", "position");

-- CreateIndex
CREATE INDEX "valve_state_site_id_retired_urgency_valve_id_idx" ON "valve_state"("site_id", "retired", "urgency", "valve_id");

-- CreateIndex
CREATE INDEX "valve_state_site_id_retired_reserve_mm_valve_id_idx" ON "valve_state"("site_id", "retired", "reserve_mm", "valve_id");

-- CreateIndex
CREATE INDEX "valve_state_site_id_retired_last_seen_at_valve_id_idx" ON "valve_state"("site_id", "retired", "last_seen_at", "valve_id");

-- CreateIndex
CREATE INDEX "valve_state_site_id_retired_area_id_reserve_mm_runs_out_at_idx" ON "valve_state"("site_id", "retired", "area_id", "reserve_mm", "runs_out_at");

-- CreateIndex
CREATE INDEX "register_change_site_id_subject_subject_id_at_idx" ON "register_change"("site_id", "subject", "subject_id", "at");

-- CreateIndex
CREATE INDEX "import_run_site_id_started_at_idx" ON "import_run"("site_id", "started_at");
