-- What is known of a tester, its calibrations and repeatability studies, and what corrects a
-- reading. The new columns begin with what held before: nothing known of accuracy, no calibration to
-- correct by, no correction for temperature. The checksums of the widened rows are renewed by the
-- program.

ALTER TABLE tester ADD COLUMN unit TEXT CHECK (unit IN ('lbf', 'N'));

ALTER TABLE tester ADD COLUMN accuracy TEXT CHECK (accuracy <> '');

ALTER TABLE tester ADD COLUMN zero_offset TEXT CHECK (zero_offset <> '');

ALTER TABLE tester ADD COLUMN corrects INTEGER NOT NULL DEFAULT 1 CHECK (corrects IN (0, 1));

ALTER TABLE spring ADD COLUMN softening_ppm INTEGER CHECK (softening_ppm BETWEEN 0 AND 10000);

ALTER TABLE engine ADD COLUMN corrects_temperature INTEGER NOT NULL DEFAULT 0
    CHECK (corrects_temperature IN (0, 1));

CREATE TABLE calibration (
    id TEXT NOT NULL PRIMARY KEY CHECK (length(id) = 36),
    tester_id TEXT NOT NULL REFERENCES tester (id),
    calibrated_on TEXT NOT NULL CHECK (length(calibrated_on) = 10),
    done_by TEXT NOT NULL,
    certificate TEXT NOT NULL,
    due_on TEXT CHECK (length(due_on) = 10),
    degree INTEGER NOT NULL CHECK (degree IN (1, 2)),
    unit TEXT NOT NULL CHECK (unit IN ('lbf', 'N')),
    points TEXT NOT NULL CHECK (points <> ''),
    withdrawn INTEGER NOT NULL CHECK (withdrawn IN (0, 1)),
    checksum INTEGER NOT NULL,
    seal INTEGER
) STRICT;

CREATE TABLE study (
    id TEXT NOT NULL PRIMARY KEY CHECK (length(id) = 36),
    tester_id TEXT NOT NULL REFERENCES tester (id),
    studied_on TEXT NOT NULL CHECK (length(studied_on) = 10),
    springs TEXT NOT NULL CHECK (springs <> ''),
    persons TEXT NOT NULL CHECK (persons <> ''),
    hits INTEGER NOT NULL CHECK (hits BETWEEN 2 AND 50),
    unit TEXT NOT NULL CHECK (unit IN ('lbf', 'N')),
    readings TEXT NOT NULL CHECK (readings <> ''),
    note TEXT NOT NULL,
    withdrawn INTEGER NOT NULL CHECK (withdrawn IN (0, 1)),
    checksum INTEGER NOT NULL,
    seal INTEGER
) STRICT;

-- A rule of a column is changed by making the table anew; dropping it runs no trigger.

CREATE TABLE amendment_2 (
    id TEXT NOT NULL PRIMARY KEY CHECK (length(id) = 36),
    subject TEXT NOT NULL CHECK (subject IN
        ('engine', 'race', 'inspection', 'sitting', 'spring', 'tester', 'fitting', 'running',
         'level_change', 'calibration', 'study')),
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

INSERT INTO amendment_2
    (id, subject, record_id, fact, old_value, new_value, who, at_utc, at_offset_min, why, checksum,
     seal)
SELECT id, subject, record_id, fact, old_value, new_value, who, at_utc, at_offset_min, why, checksum,
    seal
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
