package store

import (
	"database/sql"
	"fmt"
	"time"
)

// Action is what a change did.
type Action string

// The actions.
const (
	Changed Action = "changed"
	Undone  Action = "undone"
	Redone  Action = "redone"
	Aside   Action = "aside" // no step of undo: what a project came with, its deletion and its return
)

// Change is one line of the history of a project.
type Change struct {
	Seq     int64 // its place in the order of all changes
	Thing   Thing
	Number  int64  // the revision of the thing that it made
	Name    string // of the thing, after the change
	At      time.Time
	Said    string // what changed, in words; for an undo and a redo those of the change that it is about
	Action  Action
	Created bool // the thing was made, or brought back
	Deleted bool // the thing was taken away

	undoOf int64
}

const changeColumns = `seq, kind, thing, number, name, at, said, coalesce(undo_of, 0), deed, deleted`

func (c *Change) scan(rows *sql.Rows, more ...any) error {
	var at string
	err := rows.Scan(append([]any{&c.Seq, &c.Thing.Kind, &c.Thing.ID, &c.Number, &c.Name, &at, &c.Said, &c.undoOf, &c.Action, &c.Deleted}, more...)...)
	if err == nil {
		c.At, err = unstamp(at)
	}
	if err != nil {
		return fmt.Errorf("store: %w", err)
	}
	return nil
}
