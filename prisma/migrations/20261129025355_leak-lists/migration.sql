-- CreateIndex
CREATE INDEX "leak_site_id_worst_opened_at_id_idx" ON "leak"("site_id", "worst", "opened_at", "id");

-- CreateIndex
CREATE INDEX "leak_site_id_family_valve_id_idx" ON "leak"("site_id", "family", "valve_id");

-- CreateIndex
CREATE INDEX "leak_site_id_age_days_valve_id_idx" ON "leak"("site_id", "age_days", "valve_id");
