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
    checksum BIGINT NOT NULL,
    seal BIGINT
);

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
    checksum BIGINT NOT NULL,
    seal BIGINT
);

ALTER TABLE amendment DROP CONSTRAINT amendment_subject_check;

ALTER TABLE amendment ADD CONSTRAINT amendment_subject_check CHECK (subject IN
    ('engine', 'race', 'inspection', 'sitting', 'spring', 'tester', 'fitting', 'running',
     'level_change', 'calibration', 'study'));
