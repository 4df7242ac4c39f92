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
    checksum BIGINT NOT NULL,
    seal BIGINT
);

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
    checksum BIGINT NOT NULL,
    seal BIGINT
);

CREATE INDEX shelving_by_engine ON shelving (engine_id);

CREATE INDEX shelving_by_spring ON shelving (spring_id);

-- Which records are amended is the program's to know: no further kind needs a step like this one.

ALTER TABLE amendment DROP CONSTRAINT amendment_subject_check;

ALTER TABLE amendment ADD CONSTRAINT amendment_subject_check CHECK (subject <> '');
