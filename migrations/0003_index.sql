-- +goose Up
PRAGMA user_version = 3;

-- Foreign keys look for their children each time a parent row goes: without an index, rows that go for good (a purge, a
-- return to a copy) read the whole table once each (SQLite, foreign keys, section 3).
CREATE INDEX revision_undo ON revision (undo_of) WHERE undo_of IS NOT NULL;
CREATE INDEX revision_series ON revision (series) WHERE series IS NOT NULL;

-- +goose Down
DROP INDEX revision_series;
DROP INDEX revision_undo;
PRAGMA user_version = 2;
