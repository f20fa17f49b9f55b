package store

import (
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"
	"time"

	"duskweight/internal/document"
	"duskweight/internal/model"
)

// Listed is a project in the list of projects.
type Listed struct {
	ID       int64
	Revision int64
	Name     string
	Place    string    // its name
	Example  bool      // the worked example
	Variants []string  // their names, in no order
	Last     int64     // the number of its last change, of it or of one of its variants: the same number is the same project
	At       time.Time // of that change
}

// Projects lists the projects, the last changed first.
func (s *Store) Projects(ctx context.Context) ([]Listed, error) { return s.listed(ctx, false) }

// DeletedProjects lists the deleted projects, the last deleted first.
func (s *Store) DeletedProjects(ctx context.Context) ([]Listed, error) { return s.listed(ctx, true) }

func (s *Store) listed(ctx context.Context, deleted bool) (ls []Listed, err error) {
	rows, err := s.reader.QueryContext(ctx, `
		SELECT p.thing, p.number, p.name, coalesce(p.body ->> '$.place.name', ''), coalesce(p.body ->> '$.example', '') = 'yes',
			(SELECT json_group_array(v.name) FROM revision AS v WHERE v.kind = 'variant' AND v.project = p.thing AND NOT v.deleted AND
				v.number = (SELECT max(number) FROM revision AS w WHERE w.kind = 'variant' AND w.thing = v.thing)),
			a.last, (SELECT at FROM revision WHERE seq = a.last)
		FROM revision AS p JOIN (SELECT project, max(seq) AS last FROM revision GROUP BY project) AS a ON a.project = p.thing
		WHERE p.kind = 'project' AND p.deleted = ? AND
			p.number = (SELECT max(number) FROM revision AS w WHERE w.kind = 'project' AND w.thing = p.thing)
		ORDER BY a.last DESC`, deleted)
	if err != nil {
		return nil, fmt.Errorf("store: %w", err)
	}
	defer func() { err = errors.Join(err, rows.Close()) }()
	for rows.Next() {
		var l Listed
		var at, names string
		if err := rows.Scan(&l.ID, &l.Revision, &l.Name, &l.Place, &l.Example, &names, &l.Last, &at); err != nil {
			return nil, fmt.Errorf("store: %w", err)
		}
		if l.At, err = unstamp(at); err != nil {
			return nil, fmt.Errorf("store: %w", err)
		}
		if err := json.Unmarshal([]byte(names), &l.Variants); err != nil {
			return nil, fmt.Errorf("store: the names of project %d: %w", l.ID, err)
		}
		ls = append(ls, l)
	}
	return ls, rows.Err()
}

// Project returns a project; ErrNotFound where there is none or it is deleted.
func (s *Store) Project(ctx context.Context, id int64) (Saved[model.Project], error) {
	return load(ctx, s, s.projects(), id)
}

// CreateProject stores a new project with all its variants, and returns the project. What it came with is not undone by
// Undo.
func (s *Store) CreateProject(ctx context.Context, doc model.Document, said string, now time.Time) (Saved[model.Project], error) {
	var saved Saved[model.Project]
	err := s.inTx(ctx, func(ctx context.Context, tx *sql.Tx) (err error) {
		if saved, err = create(ctx, tx, s.projects(), 0, 0, doc.Project, Aside, said, now); err != nil {
			return err
		}
		for i, v := range doc.Variants {
			if _, err := create(ctx, tx, s.variants(), saved.ID, float64(i+1), v, Aside, said, now); err != nil {
				return err
			}
		}
		return nil
	})
	return saved, err
}

// SaveProject saves a project on top of the revision that the edit names; a *Stale[model.Project] where that is no
// longer the newest.
func (s *Store) SaveProject(ctx context.Context, id int64, p model.Project, e Edit, now time.Time) (Saved[model.Project], error) {
	return save(ctx, s, s.projects(), id, p, e, now)
}

// DeleteProject takes a project away, with its variants. Nothing of it is lost: see RestoreProject.
func (s *Store) DeleteProject(ctx context.Context, id, revision int64, said string, now time.Time) error {
	return remove(ctx, s, s.projects(), id, revision, said, now)
}

// RestoreProject brings a deleted project back as it was.
func (s *Store) RestoreProject(ctx context.Context, id int64, said string, now time.Time) (Saved[model.Project], error) {
	return restore(ctx, s, s.projects(), id, said, now)
}

// Export returns a project with its variants as one document, all from one moment.
func (s *Store) Export(ctx context.Context, id int64) (model.Document, error) {
	doc := model.Document{Edition: document.Edition}
	err := s.read(ctx, func(tx *sql.Tx) error {
		r, err := living(ctx, tx, Thing{ProjectKind, id})
		if err != nil {
			return err
		}
		p, err := s.projects().unpack(ctx, tx, r)
		if err != nil {
			return err
		}
		doc.Project = p.Value
		vs, err := s.variantsOf(ctx, tx, id)
		for _, v := range vs {
			doc.Variants = append(doc.Variants, v.Value)
		}
		return err
	})
	return doc, err
}
