package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"time"
)

// Deed is what a change did.
type Deed string

// The deeds.
const (
	Changed Deed = "changed"
	Undone  Deed = "undone"
	Redone  Deed = "redone"
)

// Change is one line of the history of a project.
type Change struct {
	Seq     int64 // its place in the order of all changes
	Thing   Thing
	Number  int64  // the revision of the thing that it made
	Name    string // of the thing, after the change
	At      time.Time
	Said    string // what changed, in words; for an undo and a redo those of the change that it is about
	Deed    Deed
	Created bool // the thing was made, or brought back
	Deleted bool // the thing was taken away

	undoOf int64
	base   bool
}

// History returns the changes of a project, the newest first, at most limit of them (0 for all).
func (s *Store) History(ctx context.Context, project int64, limit int) ([]Change, error) {
	var cs []Change
	err := s.read(ctx, func(tx *sql.Tx) (err error) {
		cs, err = changes(ctx, tx, project)
		return err
	})
	reversed := make([]Change, 0, len(cs))
	for i := len(cs) - 1; i >= 0 && (limit == 0 || len(reversed) < limit); i-- {
		reversed = append(reversed, cs[i])
	}
	return reversed, err
}

// changes reads the history of a project in its order, without the bodies.
func changes(ctx context.Context, tx *sql.Tx, project int64) (cs []Change, err error) {
	rows, err := tx.QueryContext(ctx, `SELECT seq, kind, thing, number, name, at, said, coalesce(undo_of, 0), base, deleted
		FROM revision WHERE project = ? ORDER BY seq`, project)
	if err != nil {
		return nil, fmt.Errorf("store: %w", err)
	}
	defer func() { err = errors.Join(err, rows.Close()) }()
	gone := map[Thing]bool{}
	deeds := map[int64]Deed{}
	for rows.Next() {
		var c Change
		var at string
		if err := rows.Scan(&c.Seq, &c.Thing.Kind, &c.Thing.ID, &c.Number, &c.Name, &at, &c.Said, &c.undoOf, &c.base, &c.Deleted); err != nil {
			return nil, fmt.Errorf("store: %w", err)
		}
		if c.At, err = unstamp(at); err != nil {
			return nil, fmt.Errorf("store: %w", err)
		}
		was, known := gone[c.Thing]
		c.Created = !c.Deleted && (was || !known)
		gone[c.Thing] = c.Deleted
		c.Deed = deed(deeds, c.undoOf)
		deeds[c.Seq] = c.Deed
		cs = append(cs, c)
	}
	return cs, rows.Err()
}

// deed tells what a change is from what it takes back: taking back an undo is a redo.
func deed(deeds map[int64]Deed, undoOf int64) Deed {
	switch {
	case undoOf == 0:
		return Changed
	case deeds[undoOf] == Undone:
		return Redone
	}
	return Undone
}
