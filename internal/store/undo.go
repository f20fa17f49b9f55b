package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"time"
)

// Steps returns the change that Undo would take back and the undo that Redo would take back, nil where there is none.
func (s *Store) Steps(ctx context.Context, project int64) (undo, redo *Change, err error) {
	err = s.read(ctx, func(tx *sql.Tx) error {
		undo, redo, err = steps(ctx, tx, project)
		return err
	})
	return undo, redo, err
}

func steps(ctx context.Context, tx *sql.Tx, project int64) (undo, redo *Change, err error) {
	if err := there(ctx, tx, project); err != nil {
		return nil, nil, err
	}
	rows, err := tx.QueryContext(ctx, `SELECT `+changeColumns+`, NOT deleted AND coalesce((SELECT deleted FROM revision AS b
			WHERE b.kind = r.kind AND b.thing = r.thing AND b.number < r.number ORDER BY b.number DESC LIMIT 1), 1)
		FROM revision AS r WHERE project = ? AND deed <> 'aside' ORDER BY seq DESC`, project)
	if err != nil {
		return nil, nil, fmt.Errorf("store: %w", err)
	}
	defer func() { err = errors.Join(err, rows.Close()) }()
	var w walk
	for !w.done && rows.Next() {
		c := new(Change)
		if err := c.scan(rows, &c.Created); err != nil {
			return nil, nil, err
		}
		w.back(c)
	}
	return w.undo, w.redo, rows.Err()
}

// walk goes back through a history, the newest change first, and finds the step that undo would take back and the one
// that redo would. Both are the newest of their kind that no later change has taken back; but a plain change, met first,
// ends what could be redone.
type walk struct {
	undo, redo *Change
	taken      map[int64]bool
	noRedo     bool
	done       bool
}

func (w *walk) back(c *Change) {
	if w.taken == nil {
		w.taken = map[int64]bool{}
	}
	w.taken[c.undoOf] = true
	switch {
	case w.taken[c.Seq]:
	case c.Action == Undone && w.redo == nil && !w.noRedo:
		w.redo = c
	case c.Action != Undone && w.undo == nil:
		w.undo = c
	}
	w.noRedo = w.noRedo || c.Action == Changed
	w.done = w.undo != nil && (w.redo != nil || w.noRedo)
}

// Undo takes back the last change of a project that is not yet taken back, as one more revision, and returns what it
// took back. Seq is that of the change that the page offered to undo (see Steps); where another one is the last by now,
// nothing is done and the error is ErrStale. Seq 0 takes whatever is the last. ErrNothing where there is nothing left.
func (s *Store) Undo(ctx context.Context, project, seq int64, now time.Time) (Change, error) {
	return s.takeBack(ctx, project, seq, now, func(undo, _ *Change) *Change { return undo })
}

// Redo takes back the last undo of a project; otherwise like Undo. After a new change there is nothing to redo.
func (s *Store) Redo(ctx context.Context, project, seq int64, now time.Time) (Change, error) {
	return s.takeBack(ctx, project, seq, now, func(_, redo *Change) *Change { return redo })
}

func (s *Store) takeBack(ctx context.Context, project, seq int64, now time.Time, which func(undo, redo *Change) *Change) (Change, error) {
	var taken Change
	err := s.inTx(ctx, func(ctx context.Context, tx *sql.Tx) error {
		undo, redo, err := steps(ctx, tx, project)
		c := which(undo, redo)
		switch {
		case err != nil:
			return err
		case c == nil:
			return ErrNothing
		case seq != 0 && seq != c.Seq:
			return ErrStale
		}
		taken = *c
		other, err := partner(ctx, tx, project, *c)
		if err != nil {
			return err
		}
		if err := takeBack(ctx, tx, *c, now); err != nil || other == nil {
			return err
		}
		return takeBack(ctx, tx, *other, now)
	})
	return taken, err
}

// partner is the row before a change that was saved together with it, or taken back together with it; nil where there is none.
// A step of undo writes both again one after the other, so the newer one always finds the older.
func partner(ctx context.Context, tx *sql.Tx, project int64, c Change) (other *Change, err error) {
	rows, err := tx.QueryContext(ctx, `SELECT `+changeColumns+` FROM revision AS r
		WHERE project = ? AND seq = ? - 1 AND field = ? AND deed = ? AND (kind, thing) <> (?, ?)
			AND page = (SELECT page FROM revision AS n WHERE n.seq = ? AND n.field = r.field)`,
		project, c.Seq, asOne, c.Action, c.Thing.Kind, c.Thing.ID, c.Seq)
	if err != nil {
		return nil, fmt.Errorf("store: %w", err)
	}
	defer func() { err = errors.Join(err, rows.Close()) }()
	if rows.Next() {
		other = new(Change)
		if err := other.scan(rows); err != nil {
			return nil, err
		}
	}
	return other, rows.Err()
}

// takeBack gives a thing the state that it had before a change.
func takeBack(ctx context.Context, tx *sql.Tx, c Change, now time.Time) error {
	current, err := newest(ctx, tx, c.Thing)
	if err != nil {
		return err
	}
	old, err := before(ctx, tx, row{thing: c.Thing, number: c.Number})
	if errors.Is(err, ErrNotFound) { // it was made by the change: before it, there was none
		old, err = current, nil
		old.deleted = true
	}
	if err != nil {
		return err
	}
	r := old.next(c.Said, now)
	r.number = current.number + 1
	r.undoOf, r.deed = sql.NullInt64{Int64: c.Seq, Valid: true}, Undone
	if c.Action == Undone {
		r.deed = Redone
	}
	if r.page, r.field, err = togetherWith(ctx, tx, c.Seq); err != nil {
		return err
	}
	return r.insert(ctx, tx)
}

// togetherWith is where a row was saved from, if it was saved together with another; else nothing.
func togetherWith(ctx context.Context, tx *sql.Tx, seq int64) (page, field string, err error) {
	err = tx.QueryRowContext(ctx, `SELECT page, field FROM revision WHERE seq = ? AND field = ?`, seq, asOne).Scan(&page, &field)
	if errors.Is(err, sql.ErrNoRows) {
		return "", "", nil
	}
	return page, field, err
}
