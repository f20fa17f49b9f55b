-- +goose Up
PRAGMA application_id = 1147893620;
PRAGMA user_version = 1;

-- One row is one state of one thing; the highest number of a thing is the thing. Rows are only added; but a save of the
-- same field from the same page within a minute takes the place of the newest row.
CREATE TABLE revision (
    seq      INTEGER PRIMARY KEY AUTOINCREMENT,                          -- order of all changes; never a clock
    kind     TEXT    NOT NULL CHECK (kind IN ('project', 'variant')),
    thing    INTEGER NOT NULL CHECK (thing > 0),
    number   INTEGER NOT NULL CHECK (number > 0),
    project  INTEGER NOT NULL CHECK (project > 0),                       -- the project it belongs to
    name     TEXT    NOT NULL,
    position REAL    NOT NULL,                                           -- order among the variants of a project
    deleted  INTEGER NOT NULL CHECK (deleted IN (0, 1)),                 -- a tombstone keeps the last body
    edition  INTEGER NOT NULL CHECK (edition > 0),                       -- of the body
    series   TEXT    REFERENCES series (hash),                           -- the weather year, kept once
    at       TEXT    NOT NULL,                                           -- RFC 3339, UTC
    said     TEXT    NOT NULL,                                           -- what changed, in words
    undo_of  INTEGER REFERENCES revision (seq),                          -- the change that this one takes back
    deed     TEXT    NOT NULL CHECK (deed IN ('changed', 'undone', 'redone', 'aside')), -- aside: no step of undo
    page     TEXT    NOT NULL,                                           -- where it was typed, for joining saves
    field    TEXT    NOT NULL,
    began    TEXT    NOT NULL,                                           -- at of the first of the joined saves
    body     TEXT    NOT NULL CHECK (json_valid(body)),                  -- last, so that lists need not read past it
    UNIQUE (kind, thing, number)
) STRICT;

CREATE INDEX revision_project ON revision (project, seq);
CREATE INDEX revision_newest ON revision (project, kind, thing, number);

-- A weather year is hundreds of kilobytes and hardly ever changes: revisions point to it by the hash of its text.
CREATE TABLE series (
    hash TEXT PRIMARY KEY,
    body TEXT NOT NULL CHECK (json_valid(body))
) STRICT;

-- Text that was refused, as typed.
CREATE TABLE draft (
    kind  TEXT    NOT NULL,
    thing INTEGER NOT NULL,
    field TEXT    NOT NULL,
    text  TEXT    NOT NULL,
    at    TEXT    NOT NULL,
    PRIMARY KEY (kind, thing, field)
) STRICT;

CREATE TABLE setting (
    name  TEXT PRIMARY KEY,
    value TEXT NOT NULL
) STRICT;

-- +goose Down
DROP TABLE setting;
DROP TABLE draft;
DROP TABLE revision;
DROP TABLE series;
PRAGMA user_version = 0;
