-- +goose Up
PRAGMA user_version = 2;

-- The highest revision that a thing ever had, written down when rows go for good (a purge, a return to a copy). Ids and
-- numbers are never used again, so that a page that is still open cannot meet a stranger under the number that it shows.
CREATE TABLE spent (
    kind   TEXT    NOT NULL CHECK (kind IN ('project', 'variant')),
    thing  INTEGER NOT NULL CHECK (thing > 0),
    number INTEGER NOT NULL CHECK (number > 0),
    seq    INTEGER NOT NULL,                    -- with at: which row it was
    at     TEXT    NOT NULL,
    PRIMARY KEY (kind, thing)
) STRICT;

-- +goose Down
DROP TABLE spent;
PRAGMA user_version = 1;
