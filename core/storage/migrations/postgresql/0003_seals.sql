-- Seals: in order of arrival, each written row of data gets a number and a SHA-256 over its content
-- and the seal before. A row names the seal that covers its present state; rows from before this
-- step name none, they are covered by the seal that the program sets after a migration.

CREATE TABLE seal (
    number BIGINT NOT NULL PRIMARY KEY CHECK (number >= 1),
    subject TEXT NOT NULL CHECK (subject <> ''),
    record_id TEXT,
    row_count BIGINT NOT NULL CHECK (row_count >= 0),
    content TEXT NOT NULL CHECK (length(content) = 64),
    replaces BIGINT CHECK (replaces >= 1),
    replaced TEXT CHECK (length(replaced) = 64),
    digest TEXT NOT NULL CHECK (length(digest) = 64)
);

CREATE INDEX seal_of_many ON seal (number) WHERE record_id IS NULL;

CREATE TRIGGER seal_is_never_changed BEFORE UPDATE OR DELETE ON seal
FOR EACH ROW EXECUTE FUNCTION refuse_change();

ALTER TABLE engine ADD COLUMN seal BIGINT;

ALTER TABLE tester ADD COLUMN seal BIGINT;

ALTER TABLE spring ADD COLUMN seal BIGINT;

ALTER TABLE race ADD COLUMN seal BIGINT;

ALTER TABLE inspection ADD COLUMN seal BIGINT;

ALTER TABLE sitting ADD COLUMN seal BIGINT;

ALTER TABLE fitting ADD COLUMN seal BIGINT;

ALTER TABLE reading ADD COLUMN seal BIGINT;

ALTER TABLE running ADD COLUMN seal BIGINT;

ALTER TABLE level_change ADD COLUMN seal BIGINT;

ALTER TABLE decision ADD COLUMN seal BIGINT;

ALTER TABLE amendment ADD COLUMN seal BIGINT;
