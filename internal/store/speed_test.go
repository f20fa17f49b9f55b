package store

import (
	"fmt"
	"testing"

	"duskweight/internal/model"
)

// BenchmarkSave saves one variant over and over, in a project that already has a long history.
func BenchmarkSave(b *testing.B) {
	s, p, v := longHistory(b)
	_ = p
	for i := 0; b.Loop(); i++ {
		var err error
		if v, err = s.SaveVariant(b.Context(), v.ID, lifting(v.Value, float64(i)), Edit{Revision: v.Revision}, noon); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkPage reads what a page of a variant needs, in a project that already has a long history.
func BenchmarkPage(b *testing.B) {
	s, p, v := longHistory(b)
	for name, read := range map[string]func() error{
		"project":  func() error { return second(s.Project(b.Context(), p)) },
		"variant":  func() error { return second(s.Variant(b.Context(), v.ID)) },
		"variants": func() error { return second(s.Variants(b.Context(), p)) },
		"projects": func() error { return second(s.Projects(b.Context())) },
		"steps":    func() error { _, _, err := s.Steps(b.Context(), p); return err },
		"drafts":   func() error { return second(s.Drafts(b.Context(), Thing{VariantKind, v.ID})) },
	} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if err := read(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// longHistory is a project of a weather year and two variants, with two thousand changes.
func longHistory(b *testing.B) (*Store, int64, Saved[model.Variant]) {
	s := opened(b, b.TempDir()+"/duskweight.db")
	doc := sample(b)
	doc.Project.Weather = year()
	p, err := s.CreateProject(b.Context(), doc, "", noon)
	if err != nil {
		b.Fatal(err)
	}
	vs, err := s.Variants(b.Context(), p.ID)
	if err != nil {
		b.Fatal(err)
	}
	v := vs[0]
	for i := range 2000 {
		e := Edit{Revision: v.Revision, Said: fmt.Sprint("Travel: step ", i)}
		if v, err = s.SaveVariant(b.Context(), v.ID, lifting(v.Value, float64(i+10000)), e, noon); err != nil {
			b.Fatal(err)
		}
	}
	return s, p.ID, v
}

// BenchmarkRestore goes back to a copy of a hundred thousand revisions and forth again.
func BenchmarkRestore(b *testing.B) {
	s, _, _ := longHistory(b)
	if _, err := s.writer.ExecContext(b.Context(), `INSERT INTO revision (kind, thing, number, project, name, position, deleted, edition, at, said, undo_of, deed, page, field, began, body)
		WITH RECURSIVE n(i) AS (SELECT 10001 UNION ALL SELECT i + 1 FROM n WHERE i < 110000)
		SELECT kind, thing, i, project, name, position, deleted, edition, at, said, CASE i % 3 WHEN 0 THEN seq END, deed, page, field, began, body
		FROM n, (SELECT * FROM revision WHERE kind = 'variant' ORDER BY seq DESC LIMIT 1)`); err != nil {
		b.Fatal(err)
	}
	copied, err := s.Backup(b.Context(), noon)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if err := second(s.Restore(b.Context(), copied.Path, noon)); err != nil {
			b.Fatal(err)
		}
	}
}
