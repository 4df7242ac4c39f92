-- What is to come and what is in reserve: the calendar of planned races, and the springs that stand
-- in no place, with where they were put and what was measured of them.

CREATE TABLE planned_race (
    id TEXT NOT NULL PRIMARY KEY CHECK (length(id) = 36),
    engine_id TEXT NOT NULL REFERENCES engine (id),
    planned_on TEXT NOT NULL CHECK (length(planned_on) = 10),
    venue TEXT NOT NULL,
    laps INTEGER CHECK (laps BETWEEN 1 AND 1000000),
    note TEXT NOT NULL,
    withdrawn INTEGER NOT NULL CHECK (withdrawn IN (0, 1)),
    checksum INTEGER NOT NULL,
    seal INTEGER
) STRICT;

CREATE INDEX planned_race_by_engine ON planned_race (engine_id);

CREATE TABLE shelving (
    id TEXT NOT NULL PRIMARY KEY CHECK (length(id) = 36),
    engine_id TEXT NOT NULL REFERENCES engine (id),
    spring_id TEXT NOT NULL REFERENCES spring (id),
    put_to TEXT NOT NULL CHECK (put_to IN ('shelf', 'scrap')),
    shelved_on TEXT NOT NULL CHECK (length(shelved_on) = 10),
    pressure TEXT,
    height_uin INTEGER CHECK (height_uin BETWEEN 1 AND 100000000),
    races_before INTEGER CHECK (races_before BETWEEN 0 AND 1000000),
    reason TEXT NOT NULL,
    withdrawn INTEGER NOT NULL CHECK (withdrawn IN (0, 1)),
    checksum INTEGER NOT NULL,
    seal INTEGER
) STRICT;

CREATE INDEX shelving_by_engine ON shelving (engine_id);

CREATE INDEX shelving_by_spring ON shelving (spring_id);

-- Which records are amended is the program's to know: no further kind needs a step like this one.
-- A rule of a column is changed by making the table anew; dropping it runs no trigger.

CREATE TABLE amendment_plan (
    id TEXT NOT NULL PRIMARY KEY CHECK (length(id) = 36),
    subject TEXT NOT NULL CHECK (subject <> ''),
    record_id TEXT NOT NULL CHECK (length(record_id) = 36),
    fact TEXT NOT NULL CHECK (fact <> ''),
    old_value TEXT NOT NULL,
    new_value TEXT NOT NULL,
    who TEXT NOT NULL,
    at_utc TEXT NOT NULL CHECK (length(at_utc) IN (0, 24)),
    at_offset_min INTEGER NOT NULL CHECK (at_offset_min BETWEEN -1080 AND 1080),
    why TEXT NOT NULL CHECK (why <> ''),
    checksum INTEGER NOT NULL,
    seal INTEGER
) STRICT;

INSERT INTO amendment_plan
    (id, subject, record_id, fact, old_value, new_value, who, at_utc, at_offset_min, why, checksum,
     seal)
SELECT id, subject, record_id, fact, old_value, new_value, who, at_utc, at_offset_min, why, checksum,
    seal
FROM amendment;

DROP TABLE amendment;

ALTER TABLE amendment_plan RENAME TO amendment;

CREATE INDEX amendment_by_record ON amendment (record_id);

CREATE TRIGGER amendment_is_never_changed BEFORE UPDATE ON amendment
BEGIN
    SELECT RAISE(ABORT, 'an amendment is never changed');
END;

CREATE TRIGGER amendment_is_never_deleted BEFORE DELETE ON amendment
BEGIN
    SELECT RAISE(ABORT, 'an amendment is never deleted');
END;
