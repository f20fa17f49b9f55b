package store

import (
	"context"
	"database/sql"
	"fmt"

	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/sun"
)

// content is what a kind of thing needs to be stored: its codec and its name.
type content[T any] struct {
	kind   Kind
	name   func(T) string
	encode func(T) ([]byte, error)
	decode func(int, []byte) (T, error)
	known  *cache[text, T]
	files  func(T) []*sun.Series   // nil where the kind has no weather files
	take   func(*T, []*sun.Series) // gives it these weather files
	years  *cache[string, sun.Series]
}

// text is a body with the edition it is written in.
type text struct {
	edition int
	body    string
}

func (s *Store) projects() content[model.Project] {
	return content[model.Project]{
		ProjectKind, func(p model.Project) string { return p.Name }, document.EncodeProject, document.DecodeProject, &s.knownProjects,
		model.Project.Files, (*model.Project).TakeFiles, &s.years,
	}
}

func (s *Store) variants() content[model.Variant] {
	return content[model.Variant]{
		VariantKind, func(v model.Variant) string { return v.Name }, document.EncodeVariant, document.DecodeVariant, &s.knownVariants, nil, nil, nil,
	}
}

// pack writes a value into a row. A weather file is kept once, under the hash of its text.
func (c content[T]) pack(ctx context.Context, tx *sql.Tx, r *row, v T) error {
	r.name, r.edition, r.series = c.name(v), document.Edition, sql.NullString{}
	if c.files != nil {
		if files := c.files(v); len(files) > 0 {
			hash, err := keepFiles(ctx, tx, files)
			if err != nil {
				return err
			}
			r.series = sql.NullString{String: hash, Valid: true}
			c.take(&v, nil)
		}
	}
	body, err := c.encode(v)
	r.body = string(body)
	return err
}

// unpack reads the value of a row.
func (c content[T]) unpack(ctx context.Context, tx *sql.Tx, r row) (Saved[T], error) {
	v, err := c.read(text{r.edition, r.body})
	if err != nil {
		return Saved[T]{}, fmt.Errorf("store: %s %d: %w", r.thing.Kind, r.thing.ID, err)
	}
	if r.series.Valid {
		files, err := readFiles(ctx, tx, c.years, r.edition, r.series.String)
		if err != nil {
			return Saved[T]{}, err
		}
		c.take(&v, files)
	}
	return savedAs(r, v)
}

// savedAs is a value with what its row says of it.
func savedAs[T any](r row, v T) (Saved[T], error) {
	at, err := unstamp(r.at)
	if err != nil {
		return Saved[T]{}, fmt.Errorf("store: %w", err)
	}
	return Saved[T]{ID: r.thing.ID, Project: r.project, Revision: r.number, Place: r.place, At: at, Said: r.said, Deleted: r.deleted, Value: v}, nil
}

// read reads a text, or copies what the same text was read to before.
func (c content[T]) read(t text) (T, error) {
	if v, ok := c.known.find(t); ok {
		return document.Clone(v), nil
	}
	v, err := c.decode(t.edition, []byte(t.body))
	if err == nil && len(t.body) <= designLimit {
		c.known.keep(t, document.Clone(v), designsKept)
	}
	return v, err
}

// packed keeps what a row was packed from: it is what its text would be read to, so that nobody reads it again.
func (c content[T]) packed(r row, v T) {
	if c.files != nil {
		c.take(&v, nil) // they are not in the text
	}
	if len(r.body) <= designLimit {
		c.known.keep(text{r.edition, r.body}, document.Clone(v), designsKept)
	}
}
