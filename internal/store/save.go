package store

import (
	"context"
	"crypto/rand"
	"database/sql"
	"errors"
	"fmt"
	"time"

	"duskweight/internal/model"
)

// load reads a thing that is not deleted, in a project that is not deleted.
func load[T any](ctx context.Context, s *Store, c content[T], id int64) (Saved[T], error) {
	var saved Saved[T]
	err := s.read(ctx, func(tx *sql.Tx) error {
		r, err := living(ctx, tx, Thing{c.kind, id})
		if err != nil {
			return err
		}
		saved, err = c.unpack(ctx, tx, r)
		return err
	})
	return saved, err
}

// living reads the current row of a thing; a deleted one, and one in a deleted project, is ErrNotFound.
func living(ctx context.Context, tx *sql.Tx, t Thing) (row, error) {
	r, err := newest(ctx, tx, t)
	if err != nil {
		return r, err
	}
	if r.deleted {
		return r, notFound(t)
	}
	if t.Kind != ProjectKind {
		_, err = living(ctx, tx, Thing{ProjectKind, r.project})
	}
	return r, err
}

// there says whether a project is there, without reading it.
func there(ctx context.Context, tx *sql.Tx, project int64) error {
	var deleted bool
	err := tx.QueryRowContext(ctx, `SELECT deleted FROM revision WHERE kind = ? AND thing = ? ORDER BY number DESC LIMIT 1`, ProjectKind, project).Scan(&deleted)
	switch {
	case errors.Is(err, sql.ErrNoRows), err == nil && deleted:
		return notFound(Thing{ProjectKind, project})
	case err != nil:
		return fmt.Errorf("store: %w", err)
	}
	return nil
}

// save saves a value on top of the revision that the edit names.
func save[T any](ctx context.Context, s *Store, c content[T], id int64, v T, e Edit, now time.Time) (Saved[T], error) {
	var saved Saved[T]
	err := s.inTx(ctx, func(ctx context.Context, tx *sql.Tx) (err error) {
		saved, err = saveIn(ctx, tx, c, id, v, e, now)
		return err
	})
	return saved, err
}

// saveIn is save inside a transaction.
func saveIn[T any](ctx context.Context, tx *sql.Tx, c content[T], id int64, v T, e Edit, now time.Time) (saved Saved[T], err error) {
	current, err := c.expect(ctx, tx, id, v, e.Revision)
	if err != nil {
		return saved, err
	}
	r := current.next(e.Said, now)
	r.page, r.field = e.Page, e.Field
	if err := c.pack(ctx, tx, &r, v); err != nil {
		return saved, err
	}
	c.packed(r, v)
	if r, err = follow(ctx, tx, current, r); err != nil {
		return saved, err
	}
	saved, err = savedAs(r, v)
	return saved, errors.Join(err, clearDrafts(ctx, tx, r.thing, e.Settles))
}

// asOne is the field of two rows that were saved together.
const asOne = "together"

// SaveTogether saves a variant and its project, both or neither, as one step of undo: what the edit of the project says is told of
// the step. A *Stale where one of them is no longer the newest.
func (s *Store) SaveTogether(ctx context.Context, variant int64, v model.Variant, ve Edit, project int64, p model.Project, pe Edit, now time.Time) error {
	ve.Page, ve.Field = rand.Text(), asOne
	pe.Page, pe.Field = ve.Page, ve.Field
	return s.inTx(ctx, func(ctx context.Context, tx *sql.Tx) error {
		if _, err := saveIn(ctx, tx, s.variants(), variant, v, ve, now); err != nil {
			return err
		}
		_, err := saveIn(ctx, tx, s.projects(), project, p, pe, now)
		return err
	})
}

// expect reads the current row of a thing and refuses with a *Stale where it is not the expected revision.
func (c content[T]) expect(ctx context.Context, tx *sql.Tx, id int64, yours T, revision int64) (row, error) {
	r, err := newest(ctx, tx, Thing{c.kind, id})
	if err != nil {
		return r, err
	}
	if c.kind != ProjectKind {
		if _, err := living(ctx, tx, Thing{ProjectKind, r.project}); err != nil {
			return r, err
		}
	}
	if r.number == revision && !r.deleted {
		return r, nil
	}
	current, err := c.unpack(ctx, tx, r)
	if err != nil {
		return r, err
	}
	return r, &Stale[T]{current, yours}
}

// create adds a new thing and returns it. Project 0 is a project of its own.
func create[T any](ctx context.Context, tx *sql.Tx, c content[T], project int64, place float64, v T, deed Action, said string, now time.Time) (Saved[T], error) {
	id, err := newID(ctx, tx, c.kind)
	if err != nil {
		return Saved[T]{}, err
	}
	if project == 0 {
		project = id
	}
	r := row{thing: Thing{c.kind, id}, project: project, place: place}.next(said, now)
	r.deed = deed
	if err := c.pack(ctx, tx, &r, v); err != nil {
		return Saved[T]{}, err
	}
	if err := r.insert(ctx, tx); err != nil {
		return Saved[T]{}, err
	}
	return c.unpack(ctx, tx, r)
}

// remove puts a tombstone on the expected revision.
func remove[T any](ctx context.Context, s *Store, c content[T], id, revision int64, said string, now time.Time) error {
	return s.inTx(ctx, func(ctx context.Context, tx *sql.Tx) error {
		var none T
		current, err := c.expect(ctx, tx, id, none, revision)
		if err != nil {
			return err
		}
		r := current.next(said, now)
		r.deleted, r.deed = true, c.ends()
		return r.insert(ctx, tx)
	})
}

// restore takes the tombstone off. A thing that is not deleted stays as it is.
func restore[T any](ctx context.Context, s *Store, c content[T], id int64, said string, now time.Time) (Saved[T], error) {
	var saved Saved[T]
	err := s.inTx(ctx, func(ctx context.Context, tx *sql.Tx) error {
		r, err := newest(ctx, tx, Thing{c.kind, id})
		if err != nil {
			return err
		}
		if r.deleted {
			r = r.next(said, now)
			r.deleted, r.deed = false, c.ends()
			if err := r.insert(ctx, tx); err != nil {
				return err
			}
		}
		saved, err = c.unpack(ctx, tx, r)
		return err
	})
	return saved, err
}

// ends is what taking a thing away and bringing it back is to undo: a project comes back in the list of projects.
func (c content[T]) ends() Action {
	if c.kind == ProjectKind {
		return Aside
	}
	return Changed
}

// standing are the newest rows of a project's things of a kind that are not deleted, in their order: of project and kind.
const standing = ` FROM
		(SELECT kind, thing, max(number) AS number FROM revision WHERE project = ? AND kind = ? GROUP BY thing)
		CROSS JOIN revision USING (kind, thing, number)
	WHERE NOT deleted ORDER BY position, thing`

// list reads the current rows of a kind in a project, deleted ones left out, in their order.
func list[T any](ctx context.Context, tx *sql.Tx, c content[T], project int64) (saved []Saved[T], err error) {
	rows, err := tx.QueryContext(ctx, `SELECT `+rowColumns+standing, project, c.kind)
	if err != nil {
		return nil, fmt.Errorf("store: %w", err)
	}
	defer func() { err = errors.Join(err, rows.Close()) }()
	for rows.Next() {
		var r row
		if err := r.scan(rows); err != nil {
			return nil, fmt.Errorf("store: %w", err)
		}
		one, err := c.unpack(ctx, tx, r)
		if err != nil {
			return nil, err
		}
		saved = append(saved, one)
	}
	return saved, rows.Err()
}
