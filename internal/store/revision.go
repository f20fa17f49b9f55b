package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"time"
)

// joinWithin is how long saves of one field from one page are one step.
const joinWithin = time.Minute

// row is one revision as the table has it.
type row struct {
	seq     int64
	thing   Thing
	number  int64
	project int64
	name    string
	place   float64
	deleted bool
	edition int
	body    string
	series  sql.NullString
	at      string
	said    string
	undoOf  sql.NullInt64
	deed    Action
	page    string
	field   string
	began   string
}

const rowColumns = `seq, kind, thing, number, project, name, position, deleted, edition, body, series, at, said, undo_of, deed, page, field, began`

func (r *row) scan(from interface{ Scan(...any) error }) error {
	return from.Scan(&r.seq, &r.thing.Kind, &r.thing.ID, &r.number, &r.project, &r.name, &r.place, &r.deleted, &r.edition,
		&r.body, &r.series, &r.at, &r.said, &r.undoOf, &r.deed, &r.page, &r.field, &r.began)
}

// newest reads the current row of a thing, a tombstone too; ErrNotFound where there never was one.
func newest(ctx context.Context, tx *sql.Tx, t Thing) (row, error) {
	return oneRow(ctx, tx, t, `WHERE kind = ? AND thing = ? ORDER BY number DESC LIMIT 1`, t.Kind, t.ID)
}

// before reads the row that a thing had before one of its rows; ErrNotFound before the first.
func before(ctx context.Context, tx *sql.Tx, r row) (row, error) {
	return oneRow(ctx, tx, r.thing, `WHERE kind = ? AND thing = ? AND number < ? ORDER BY number DESC LIMIT 1`,
		r.thing.Kind, r.thing.ID, r.number)
}

func oneRow(ctx context.Context, tx *sql.Tx, t Thing, where string, args ...any) (row, error) {
	var r row
	err := r.scan(tx.QueryRowContext(ctx, `SELECT `+rowColumns+` FROM revision `+where, args...))
	if errors.Is(err, sql.ErrNoRows) {
		return r, notFound(t)
	}
	if err != nil {
		return r, fmt.Errorf("store: %w", err)
	}
	return r, nil
}

// insert adds a row; its place in the order of all changes is set.
func (r *row) insert(ctx context.Context, tx *sql.Tx) error {
	done, err := tx.ExecContext(ctx, `INSERT INTO revision (kind, thing, number, project, name, position, deleted, edition, body, series, at, said, undo_of, deed, page, field, began)
		VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
		r.thing.Kind, r.thing.ID, r.number, r.project, r.name, r.place, r.deleted, r.edition, r.body, r.series, r.at, r.said,
		r.undoOf, r.deed, r.page, r.field, r.began)
	if err != nil {
		return fmt.Errorf("store: %w", err)
	}
	r.seq, err = done.LastInsertId()
	return err
}

// next is the row that follows r with the same content, said at a time.
func (r row) next(said string, now time.Time) row {
	r.number++
	r.at, r.began, r.said = stamp(now), stamp(now), said
	r.undoOf, r.deed, r.page, r.field = sql.NullInt64{}, Changed, "", ""
	return r
}

// sameContent reports whether two rows of a thing say the same about it.
func (r row) sameContent(o row) bool {
	return r.name == o.name && r.place == o.place && r.deleted == o.deleted && r.edition == o.edition && r.body == o.body && r.series == o.series
}

// follow saves a row on top of the current one. A save that changes nothing adds nothing. A save of the same field from
// the same page within a minute takes the current one's place, under a number of its own, so that a page that still
// shows the replaced number is stale.
func follow(ctx context.Context, tx *sql.Tx, current, r row) (row, error) {
	if r.sameContent(current) {
		return current, nil
	}
	joins, err := joined(ctx, tx, current, r)
	if err != nil {
		return r, err
	}
	if joins {
		r.began = current.began
		if _, err := tx.ExecContext(ctx, `DELETE FROM revision WHERE seq = ?`, current.seq); err != nil {
			return r, fmt.Errorf("store: %w", err)
		}
	}
	return r, r.insert(ctx, tx)
}

// joined reports whether r and the current row are one step: the current one is the newest change of its whole project,
// and was begun less than a minute ago by the same page in the same field. What undo, redo, making and deleting write
// comes from no page, so nothing ever joins it.
func joined(ctx context.Context, tx *sql.Tx, current, r row) (bool, error) {
	if r.page == "" || r.field == "" || r.page != current.page || r.field != current.field {
		return false, nil
	}
	began, err := unstamp(current.began)
	if err != nil {
		return false, fmt.Errorf("store: %w", err)
	}
	now, err := unstamp(r.at)
	if err != nil {
		return false, fmt.Errorf("store: %w", err)
	}
	if since := now.Sub(began); since < 0 || since >= joinWithin {
		return false, nil
	}
	var last int64
	err = tx.QueryRowContext(ctx, `SELECT max(seq) FROM revision WHERE project = ?`, r.project).Scan(&last)
	return last == current.seq, err
}

// newID returns an id that no thing of the kind ever had.
func newID(ctx context.Context, tx *sql.Tx, k Kind) (id int64, err error) {
	err = tx.QueryRowContext(ctx, `SELECT 1 + max(coalesce((SELECT max(thing) FROM revision WHERE kind = ?1), 0),
		coalesce((SELECT max(thing) FROM spent WHERE kind = ?1), 0))`, k).Scan(&id)
	return id, err
}
