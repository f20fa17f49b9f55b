package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"time"

	"duskweight/internal/model"
)

// Variants returns the variants of a project, in their order.
func (s *Store) Variants(ctx context.Context, project int64) ([]Saved[model.Variant], error) {
	var vs []Saved[model.Variant]
	err := s.read(ctx, func(tx *sql.Tx) (err error) {
		if _, err := living(ctx, tx, Thing{ProjectKind, project}); err != nil {
			return err
		}
		vs, err = s.variantsOf(ctx, tx, project)
		return err
	})
	return vs, err
}

// Named is a variant by its name alone.
type Named struct {
	ID   int64
	Name string
}

// VariantNames returns the names of the variants of a project, in their order, without reading their designs; none for a
// project that is not there.
func (s *Store) VariantNames(ctx context.Context, project int64) (names []Named, err error) {
	rows, err := s.reader.QueryContext(ctx, `SELECT thing, name`+standing, project, VariantKind)
	if err != nil {
		return nil, fmt.Errorf("store: %w", err)
	}
	defer func() { err = errors.Join(err, rows.Close()) }()
	for rows.Next() {
		var n Named
		if err := rows.Scan(&n.ID, &n.Name); err != nil {
			return nil, fmt.Errorf("store: %w", err)
		}
		names = append(names, n)
	}
	return names, rows.Err()
}

func (s *Store) variantsOf(ctx context.Context, tx *sql.Tx, project int64) ([]Saved[model.Variant], error) {
	return list(ctx, tx, s.variants(), project)
}

// Variant returns a variant; ErrNotFound where there is none, or it or its project is deleted.
func (s *Store) Variant(ctx context.Context, id int64) (Saved[model.Variant], error) {
	return load(ctx, s, s.variants(), id)
}

// Design returns a variant with its project, read in one look at the file; ErrNotFound where either is not there, or the variant
// belongs to another project.
func (s *Store) Design(ctx context.Context, project, variant int64) (p Saved[model.Project], v Saved[model.Variant], err error) {
	err = s.read(ctx, func(tx *sql.Tx) error {
		around, err := living(ctx, tx, Thing{ProjectKind, project})
		if err != nil {
			return err
		}
		r, err := newest(ctx, tx, Thing{VariantKind, variant})
		if err != nil {
			return err
		}
		if r.deleted || r.project != project {
			return notFound(r.thing)
		}
		if p, err = s.projects().unpack(ctx, tx, around); err != nil {
			return err
		}
		v, err = s.variants().unpack(ctx, tx, r)
		return err
	})
	return p, v, err
}

// CreateVariant stores a new variant behind the others of its project. Where the project has as many as it may have, it is
// model.Problems.
func (s *Store) CreateVariant(ctx context.Context, project int64, v model.Variant, said string, now time.Time) (Saved[model.Variant], error) {
	var saved Saved[model.Variant]
	err := s.inTx(ctx, func(ctx context.Context, tx *sql.Tx) error {
		if _, err := living(ctx, tx, Thing{ProjectKind, project}); err != nil {
			return err
		}
		var last float64
		var have int
		err := tx.QueryRowContext(ctx, `SELECT coalesce(max(position), 0), (SELECT count(*) FROM revision AS v WHERE kind = ?1 AND project = ?2 AND NOT deleted
				AND number = (SELECT max(number) FROM revision AS w WHERE w.kind = ?1 AND w.thing = v.thing))
			FROM revision WHERE kind = ?1 AND project = ?2`, VariantKind, project).Scan(&last, &have)
		if err != nil {
			return err
		}
		if have >= model.MaxVariants {
			return model.FullProject(have + 1)
		}
		saved, err = create(ctx, tx, s.variants(), project, last+1, v, Changed, said, now)
		return err
	})
	return saved, err
}

// SaveVariant saves a variant on top of the revision that the edit names; a *Stale[model.Variant] where that is no
// longer the newest.
func (s *Store) SaveVariant(ctx context.Context, id int64, v model.Variant, e Edit, now time.Time) (Saved[model.Variant], error) {
	return save(ctx, s, s.variants(), id, v, e, now)
}

// DeleteVariant takes a variant away. Undo brings it back.
func (s *Store) DeleteVariant(ctx context.Context, id, revision int64, said string, now time.Time) error {
	return remove(ctx, s, s.variants(), id, revision, said, now)
}
