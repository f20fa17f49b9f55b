package store

import (
	"context"
	"database/sql"
	"errors"
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
	if _, err := living(ctx, tx, Thing{ProjectKind, project}); err != nil {
		return nil, nil, err
	}
	cs, err := changes(ctx, tx, project)
	if err != nil {
		return nil, nil, err
	}
	undo, redo = replay(cs)
	return undo, redo, nil
}

// replay goes through a history and returns what undo and redo would take back at its end. A plain change ends what can
// be redone. What a project came with, and its own deletion and return, are no steps.
func replay(cs []Change) (undo, redo *Change) {
	var undos, redos []*Change
	for i := range cs {
		switch c := &cs[i]; {
		case c.base || c.Thing.Kind == ProjectKind && (c.Deleted || c.Created):
		case c.Deed == Changed:
			undos, redos = append(undos, c), nil
		case c.Deed == Undone:
			undos, redos = undos[:len(undos)-1], append(redos, c)
		case c.Deed == Redone:
			undos, redos = append(undos, c), redos[:len(redos)-1]
		}
	}
	return last(undos), last(redos)
}

func last(cs []*Change) *Change {
	if len(cs) == 0 {
		return nil
	}
	return cs[len(cs)-1]
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
	err := s.inTx(ctx, func(tx *sql.Tx) error {
		c := new(Change)
		undo, redo, err := steps(ctx, tx, project)
		switch c = which(undo, redo); {
		case err != nil:
			return err
		case c == nil:
			return ErrNothing
		case seq != 0 && seq != c.Seq:
			return ErrStale
		}
		taken = *c
		return takeBack(ctx, tx, *c, now)
	})
	return taken, err
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
	r.undoOf = sql.NullInt64{Int64: c.Seq, Valid: true}
	return r.insert(ctx, tx)
}
