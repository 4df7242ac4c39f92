-- The logbook, first form. Statements are paragraphs: an empty line ends one.
-- The same tables and columns as the SQLite text beside this one. INTEGER has 32 bits here, so what
-- needs more is BIGINT; text sorts by code points when the database is made with a C collation.
-- Every row of data ends with the first 8 bytes of the SHA-256 of its canonical form.

CREATE TABLE meta (
    key TEXT NOT NULL PRIMARY KEY,
    value TEXT NOT NULL
);

CREATE TABLE engine (
    id TEXT NOT NULL PRIMARY KEY CHECK (length(id) = 36),
    name TEXT NOT NULL UNIQUE CHECK (name <> ''),
    serial TEXT NOT NULL,
    layout TEXT NOT NULL,
    limit_ulbf INTEGER NOT NULL CHECK (limit_ulbf BETWEEN 1 AND 1000000000),
    races_ahead INTEGER NOT NULL CHECK (races_ahead BETWEEN 0 AND 60),
    caution_percent INTEGER NOT NULL CHECK (caution_percent IN (30, 50, 70)),
    rpm_ceiling INTEGER CHECK (rpm_ceiling BETWEEN 1 AND 1000000),
    retired INTEGER NOT NULL CHECK (retired IN (0, 1)),
    checksum BIGINT NOT NULL
);

CREATE TABLE tester (
    id TEXT NOT NULL PRIMARY KEY CHECK (length(id) = 36),
    name TEXT NOT NULL UNIQUE CHECK (name <> ''),
    full_scale TEXT,
    graduation TEXT,
    calibrated_on TEXT CHECK (length(calibrated_on) = 10),
    note TEXT NOT NULL,
    checksum BIGINT NOT NULL
);

CREATE TABLE spring (
    id TEXT NOT NULL PRIMARY KEY CHECK (length(id) = 36),
    label TEXT NOT NULL CHECK (label <> ''),
    part TEXT NOT NULL,
    batch TEXT NOT NULL,
    note TEXT NOT NULL,
    checksum BIGINT NOT NULL
);

CREATE TABLE race (
    id TEXT NOT NULL PRIMARY KEY CHECK (length(id) = 36),
    engine_id TEXT NOT NULL REFERENCES engine (id),
    number INTEGER NOT NULL CHECK (number BETWEEN 1 AND 1000000),
    raced_on TEXT NOT NULL CHECK (length(raced_on) = 10),
    venue TEXT NOT NULL,
    laps INTEGER CHECK (laps BETWEEN 0 AND 1000000),
    peak_rpm INTEGER CHECK (peak_rpm BETWEEN 0 AND 1000000),
    over_rev INTEGER CHECK (over_rev IN (0, 1)),
    note TEXT NOT NULL,
    checksum BIGINT NOT NULL,
    UNIQUE (engine_id, number)
);

CREATE TABLE inspection (
    id TEXT NOT NULL PRIMARY KEY CHECK (length(id) = 36),
    engine_id TEXT NOT NULL REFERENCES engine (id),
    inspected_on TEXT NOT NULL CHECK (length(inspected_on) = 10),
    engine_races INTEGER NOT NULL CHECK (engine_races BETWEEN 0 AND 1000000),
    closed INTEGER NOT NULL CHECK (closed IN (0, 1)),
    checksum BIGINT NOT NULL,
    UNIQUE (engine_id, inspected_on, engine_races)
);

CREATE TABLE sitting (
    id TEXT NOT NULL PRIMARY KEY CHECK (length(id) = 36),
    inspection_id TEXT NOT NULL REFERENCES inspection (id),
    tester_id TEXT REFERENCES tester (id),
    inspector TEXT NOT NULL,
    engine_temp_mc INTEGER CHECK (engine_temp_mc BETWEEN -40000 AND 250000),
    checksum BIGINT NOT NULL
);

CREATE INDEX sitting_by_inspection ON sitting (inspection_id);

CREATE TABLE fitting (
    id TEXT NOT NULL PRIMARY KEY CHECK (length(id) = 36),
    engine_id TEXT NOT NULL REFERENCES engine (id),
    spring_id TEXT NOT NULL REFERENCES spring (id),
    cylinder INTEGER NOT NULL CHECK (cylinder BETWEEN 1 AND 24),
    valve TEXT NOT NULL CHECK (valve IN ('I', 'E')),
    fitted_on TEXT NOT NULL CHECK (length(fitted_on) = 10),
    engine_races INTEGER NOT NULL CHECK (engine_races BETWEEN 0 AND 1000000),
    reason TEXT NOT NULL,
    withdrawn INTEGER NOT NULL CHECK (withdrawn IN (0, 1)),
    checksum BIGINT NOT NULL
);

CREATE INDEX fitting_by_engine ON fitting (engine_id);

-- A correction names a row of its own sitting. The defaults are those of an original without a note.

CREATE TABLE reading (
    sitting_id TEXT NOT NULL REFERENCES sitting (id),
    id TEXT NOT NULL CHECK (length(id) = 36),
    spring_id TEXT NOT NULL REFERENCES spring (id),
    cylinder INTEGER NOT NULL CHECK (cylinder BETWEEN 1 AND 24),
    valve TEXT NOT NULL CHECK (valve IN ('I', 'E')),
    hit INTEGER NOT NULL CHECK (hit BETWEEN 1 AND 1000000),
    retest INTEGER NOT NULL CHECK (retest IN (0, 1)),
    digits BIGINT NOT NULL CHECK (digits BETWEEN 1 AND 4448220000),
    decimals INTEGER NOT NULL CHECK (decimals BETWEEN 0 AND 6),
    unit TEXT NOT NULL CHECK (unit IN ('lbf', 'N')),
    note TEXT NOT NULL DEFAULT '',
    amends TEXT,
    withdraws INTEGER NOT NULL DEFAULT 0 CHECK (withdraws IN (0, 1)),
    who TEXT NOT NULL DEFAULT '',
    at_utc TEXT NOT NULL DEFAULT '' CHECK (length(at_utc) IN (0, 24)),
    at_offset_min INTEGER NOT NULL DEFAULT 0 CHECK (at_offset_min BETWEEN -1080 AND 1080),
    why TEXT NOT NULL DEFAULT '',
    checksum BIGINT NOT NULL,
    PRIMARY KEY (sitting_id, id),
    FOREIGN KEY (sitting_id, amends) REFERENCES reading (sitting_id, id),
    CHECK ((amends IS NULL) = (why = '')),
    CHECK (withdraws = 0 OR amends IS NOT NULL)
);

CREATE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    RAISE EXCEPTION 'rows of % are never changed or deleted', TG_TABLE_NAME
        USING ERRCODE = 'integrity_constraint_violation';
END
$$;

CREATE TRIGGER reading_is_never_changed BEFORE UPDATE OR DELETE ON reading
FOR EACH ROW EXECUTE FUNCTION refuse_change();

CREATE TABLE amendment (
    id TEXT NOT NULL PRIMARY KEY CHECK (length(id) = 36),
    subject TEXT NOT NULL CHECK (subject IN
        ('engine', 'race', 'inspection', 'sitting', 'spring', 'tester', 'fitting')),
    record_id TEXT NOT NULL CHECK (length(record_id) = 36),
    fact TEXT NOT NULL CHECK (fact <> ''),
    old_value TEXT NOT NULL,
    new_value TEXT NOT NULL,
    who TEXT NOT NULL,
    at_utc TEXT NOT NULL CHECK (length(at_utc) IN (0, 24)),
    at_offset_min INTEGER NOT NULL CHECK (at_offset_min BETWEEN -1080 AND 1080),
    why TEXT NOT NULL CHECK (why <> ''),
    checksum BIGINT NOT NULL
);

CREATE INDEX amendment_by_record ON amendment (record_id);

CREATE TRIGGER amendment_is_never_changed BEFORE UPDATE OR DELETE ON amendment
FOR EACH ROW EXECUTE FUNCTION refuse_change();

-- What is half typed at the bench: no data yet, so no checksum and no history.

CREATE TABLE draft (
    engine_id TEXT NOT NULL PRIMARY KEY REFERENCES engine (id),
    inspection_id TEXT NOT NULL CHECK (length(inspection_id) = 36),
    cylinder INTEGER NOT NULL CHECK (cylinder BETWEEN 1 AND 24),
    valve TEXT NOT NULL CHECK (valve IN ('I', 'E')),
    typed TEXT NOT NULL
);
