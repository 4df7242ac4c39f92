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
    checksum INTEGER NOT NULL,
    CHECK ((laps IS NULL) <> (race_thousandths IS NULL))
) STRICT;

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
    checksum INTEGER NOT NULL
) STRICT;

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
    checksum INTEGER NOT NULL
) STRICT;

CREATE INDEX decision_by_inspection ON decision (inspection_id);

CREATE TRIGGER decision_is_never_changed BEFORE UPDATE ON decision
BEGIN
    SELECT RAISE(ABORT, 'a decision is never changed');
END;

CREATE TRIGGER decision_is_never_deleted BEFORE DELETE ON decision
BEGIN
    SELECT RAISE(ABORT, 'a decision is never deleted');
END;

-- A rule of a column is changed by making the table anew; dropping it runs no trigger.

CREATE TABLE amendment_2 (
    id TEXT NOT NULL PRIMARY KEY CHECK (length(id) = 36),
    subject TEXT NOT NULL CHECK (subject IN
        ('engine', 'race', 'inspection', 'sitting', 'spring', 'tester', 'fitting', 'running',
         'level_change')),
    record_id TEXT NOT NULL CHECK (length(record_id) = 36),
    fact TEXT NOT NULL CHECK (fact <> ''),
    old_value TEXT NOT NULL,
    new_value TEXT NOT NULL,
    who TEXT NOT NULL,
    at_utc TEXT NOT NULL CHECK (length(at_utc) IN (0, 24)),
    at_offset_min INTEGER NOT NULL CHECK (at_offset_min BETWEEN -1080 AND 1080),
    why TEXT NOT NULL CHECK (why <> ''),
    checksum INTEGER NOT NULL
) STRICT;

INSERT INTO amendment_2
    (id, subject, record_id, fact, old_value, new_value, who, at_utc, at_offset_min, why, checksum)
SELECT id, subject, record_id, fact, old_value, new_value, who, at_utc, at_offset_min, why, checksum
FROM amendment;

DROP TABLE amendment;

ALTER TABLE amendment_2 RENAME TO amendment;

CREATE INDEX amendment_by_record ON amendment (record_id);

CREATE TRIGGER amendment_is_never_changed BEFORE UPDATE ON amendment
BEGIN
    SELECT RAISE(ABORT, 'an amendment is never changed');
END;

CREATE TRIGGER amendment_is_never_deleted BEFORE DELETE ON amendment
BEGIN
    SELECT RAISE(ABORT, 'an amendment is never deleted');
END;
