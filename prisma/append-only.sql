-- Facts, their photos, register changes and what was once forecast are never altered or removed. Applied at every start, after the migrations:
-- a migration that rebuilds a table drops its triggers.
CREATE TRIGGER IF NOT EXISTS event_no_update BEFORE UPDATE ON event BEGIN SELECT RAISE(ABORT, 'event is append-only'); END;
CREATE TRIGGER IF NOT EXISTS event_no_delete BEFORE DELETE ON event BEGIN SELECT RAISE(ABORT, 'event is append-only'); END;
CREATE TRIGGER IF NOT EXISTS register_change_no_update BEFORE UPDATE ON register_change BEGIN SELECT RAISE(ABORT, 'register_change is append-only'); END;
CREATE TRIGGER IF NOT EXISTS register_change_no_delete BEFORE DELETE ON register_change BEGIN SELECT RAISE(ABORT, 'register_change is append-only'); END;
CREATE TRIGGER IF NOT EXISTS forecast_made_no_update BEFORE UPDATE ON forecast_made BEGIN SELECT RAISE(ABORT, 'forecast_made is append-only'); END;
CREATE TRIGGER IF NOT EXISTS forecast_made_no_delete BEFORE DELETE ON forecast_made BEGIN SELECT RAISE(ABORT, 'forecast_made is append-only'); END;
CREATE TRIGGER IF NOT EXISTS photo_no_update BEFORE UPDATE ON photo BEGIN SELECT RAISE(ABORT, 'photo is append-only'); END;
CREATE TRIGGER IF NOT EXISTS photo_no_delete BEFORE DELETE ON photo BEGIN SELECT RAISE(ABORT, 'photo is append-only'); END;
CREATE TRIGGER IF NOT EXISTS chain_seal_no_update BEFORE UPDATE ON chain_seal BEGIN SELECT RAISE(ABORT, 'chain_seal is append-only'); END;
CREATE TRIGGER IF NOT EXISTS chain_seal_no_delete BEFORE DELETE ON chain_seal BEGIN SELECT RAISE(ABORT, 'chain_seal is append-only'); END;
CREATE TRIGGER IF NOT EXISTS stock_movement_no_update BEFORE UPDATE ON stock_movement BEGIN SELECT RAISE(ABORT, 'stock_movement is append-only'); END;
CREATE TRIGGER IF NOT EXISTS stock_movement_no_delete BEFORE DELETE ON stock_movement BEGIN SELECT RAISE(ABORT, 'stock_movement is append-only'); END;
