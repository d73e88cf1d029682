-- Facts, their photos, register changes and what was once forecast are never altered or removed. Applied at every start, after the migrations.
CREATE OR REPLACE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION '% is append-only', TG_TABLE_NAME;
END
$$;
CREATE OR REPLACE TRIGGER event_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON event FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
CREATE OR REPLACE TRIGGER register_change_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON register_change FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
CREATE OR REPLACE TRIGGER forecast_made_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON forecast_made FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
CREATE OR REPLACE TRIGGER photo_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON photo FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
CREATE OR REPLACE TRIGGER chain_seal_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON chain_seal FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
CREATE OR REPLACE TRIGGER stock_movement_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON stock_movement FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
