package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"

	"duskweight/internal/model"
)

// FullChange is one change with what it changed: the thing before and after it. Both are nil for a thing of the other
// kind; Was is nil for a thing that was made. The weather year is left out: OtherYear says whether it changed.
type FullChange struct {
	Change
	ProjectWas, ProjectIs *model.Project
	VariantWas, VariantIs *model.Variant
	OtherYear             bool
}

// FullChanges returns the changes of a project with what they changed, the newest first: at most limit of them, and only those
// before the change numbered before (0 for all).
func (s *Store) FullChanges(ctx context.Context, project, before int64, limit int) (cs []FullChange, err error) {
	rows, err := s.reader.QueryContext(ctx, `SELECT r.seq, r.kind, r.thing, r.number, r.name, r.at, r.said, coalesce(r.undo_of, 0), r.deed, r.deleted,
			NOT r.deleted AND coalesce(b.deleted, 1), r.edition, r.body, b.edition, b.body, coalesce(r.series, '') <> coalesce(b.series, '')
		FROM revision AS r LEFT JOIN revision AS b ON b.kind = r.kind AND b.thing = r.thing AND b.number =
			(SELECT max(number) FROM revision AS o WHERE o.kind = r.kind AND o.thing = r.thing AND o.number < r.number)
		WHERE r.project = ? AND (? = 0 OR r.seq < ?) ORDER BY r.seq DESC LIMIT ?`, project, before, before, limit)
	if err != nil {
		return nil, fmt.Errorf("store: %w", err)
	}
	defer func() { err = errors.Join(err, rows.Close()) }()
	for rows.Next() {
		var c FullChange
		var is, was body
		if err := c.scan(rows, &c.Created, &is.edition, &is.text, &was.edition, &was.text, &c.OtherYear); err != nil {
			return nil, err
		}
		if c.Thing.Kind == ProjectKind {
			c.ProjectIs, err = read(s.projects(), is)
			if err == nil {
				c.ProjectWas, err = read(s.projects(), was)
			}
		} else {
			c.VariantIs, err = read(s.variants(), is)
			if err == nil {
				c.VariantWas, err = read(s.variants(), was)
			}
		}
		if err != nil {
			return nil, err
		}
		cs = append(cs, c)
	}
	return cs, rows.Err()
}

// body is the text of a revision; not valid where there is none.
type body struct {
	edition sql.NullInt64
	text    sql.NullString
}

func read[T any](c content[T], b body) (*T, error) {
	if !b.text.Valid {
		return nil, nil
	}
	v, err := c.read(text{int(b.edition.Int64), b.text.String})
	if err != nil {
		return nil, fmt.Errorf("store: %w", err)
	}
	return &v, nil
}
