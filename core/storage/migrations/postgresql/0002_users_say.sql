-- The user's say: readings kept or set aside, drops confirmed or denied, running that is no race,
-- level changes, and what the wear of an engine goes by. The new columns of the engine begin with
-- what they meant before; the checksums of its rows are renewed by the program.

ALTER TABLE engine ADD COLUMN springs_run_in INTEGER NOT NULL DEFAULT 0
    CHECK (springs_run_in IN (0, 1));

ALTER TABLE engine ADD COLUMN exposure_unit TEXT NOT NULL DEFAULT 'races'
    CHECK (exposure_unit IN ('races', 'laps'));

CREATE TABLE running (
    id TEXT NOT NULL PRIMARY KEY CHECK (length(id) = 36),
    engine_id TEXT NOT NULL REFERENCES engine (id),
    ran_on TEXT NOT NULL CHECK (length(ran_on) = 10),
    engine_races INTEGER NOT NULL CHECK (engine_races BETWEEN 0 AND 1000000),
    laps INTEGER CHECK (laps BETWEEN 1 AND 1000000),
    race_thousandths INTEGER CHECK (race_thousandths BETWEEN 1 AND 10000),
    note TEXT NOT NULL,
    withdrawn INTEGER NOT NULL CHECK (withdrawn IN (0, 1)),
    checksum BIGINT NOT NULL,
    CHECK ((laps IS NULL) <> (race_thousandths IS NULL))
);

CREATE INDEX running_by_engine ON running (engine_id);

CREATE TABLE level_change (
    id TEXT NOT NULL PRIMARY KEY CHECK (length(id) = 36),
    engine_id TEXT NOT NULL REFERENCES engine (id),
    spring_id TEXT NOT NULL REFERENCES spring (id),
    kind TEXT NOT NULL CHECK (kind IN ('shim', 'valve_seat_work', 'retainer', 'move', 'other')),
    changed_on TEXT NOT NULL CHECK (length(changed_on) = 10),
    engine_races INTEGER NOT NULL CHECK (engine_races BETWEEN 0 AND 1000000),
    note TEXT NOT NULL,
    withdrawn INTEGER NOT NULL CHECK (withdrawn IN (0, 1)),
    checksum BIGINT NOT NULL
);

CREATE INDEX level_change_by_engine ON level_change (engine_id);

CREATE TABLE decision (
    id TEXT NOT NULL PRIMARY KEY CHECK (length(id) = 36),
    inspection_id TEXT NOT NULL REFERENCES inspection (id),
    spring_id TEXT NOT NULL REFERENCES spring (id),
    judgement TEXT NOT NULL CHECK (judgement IN
        ('left_to_model', 'kept', 'set_aside', 'drop_confirmed', 'drop_denied')),
    who TEXT NOT NULL,
    at_utc TEXT NOT NULL CHECK (length(at_utc) IN (0, 24)),
    at_offset_min INTEGER NOT NULL CHECK (at_offset_min BETWEEN -1080 AND 1080),
    why TEXT NOT NULL,
    checksum BIGINT NOT NULL
);

CREATE INDEX decision_by_inspection ON decision (inspection_id);

CREATE TRIGGER decision_is_never_changed BEFORE UPDATE OR DELETE ON decision
FOR EACH ROW EXECUTE FUNCTION refuse_change();

ALTER TABLE amendment DROP CONSTRAINT amendment_subject_check;

ALTER TABLE amendment ADD CONSTRAINT amendment_subject_check CHECK (subject IN
    ('engine', 'race', 'inspection', 'sitting', 'spring', 'tester', 'fitting', 'running',
     'level_change'));
