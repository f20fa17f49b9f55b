package store

import (
	"bytes"
	"context"
	"database/sql"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/migrations"
)

// forFuzz is a store that is kept for all the inputs of a process. It does not wait for the disk: nothing is cut off here.
var forFuzz = sync.OnceValues(func() (*Store, error) {
	dir, err := os.MkdirTemp("", "duskweight-fuzz-")
	if err != nil {
		return nil, err
	}
	s, err := Open(context.Background(), filepath.Join(dir, "duskweight.db"), noon)
	if err != nil {
		return nil, err
	}
	// Open files stay readable after their folder is gone; what would notice that is put to sleep.
	s.anchor = anchor{}
	_, err = s.writer.Exec(`PRAGMA synchronous = OFF`)
	return s, errors.Join(err, os.RemoveAll(dir))
})

// FuzzHistory saves any variant, or any project, that can be read on top of the sample. Undo gives the document back as it was,
// byte for byte, redo as it was saved, and so again after another change and as many steps back.
func FuzzHistory(f *testing.F) {
	doc := sample(f)
	project, err := document.EncodeProject(doc.Project)
	if err != nil {
		f.Fatal(err)
	}
	variant, err := document.EncodeVariant(lifting(doc.Variants[0], 4))
	if err != nil {
		f.Fatal(err)
	}
	f.Add(variant, true)
	f.Add(bytes.Replace(project, []byte("Shed lamp"), []byte("Ship's l\\u00e4mp \\u202e"), 1), false)
	f.Add([]byte(`{}`), true)
	f.Add([]byte(`{"name":" ","stores":[{"cells":{}}],"origins":{"a":{"kind":"typical"}}}`), true)
	f.Fuzz(func(t *testing.T, data []byte, isVariant bool) {
		ctx := t.Context()
		var v model.Variant
		p, err := doc.Project, error(nil)
		if isVariant {
			v, err = document.DecodeVariant(document.Edition, data)
		} else {
			p, err = document.DecodeProject(document.Edition, data)
		}
		if err != nil {
			t.Skip()
		}
		s, err := forFuzz()
		if err != nil {
			t.Fatal(err)
		}
		must := func(err error) {
			t.Helper()
			if err != nil {
				t.Fatal(err)
			}
		}
		made, err := s.CreateProject(ctx, doc, "", noon)
		must(err)
		defer func() { must(second(s.writer.Exec(`DELETE FROM revision; DELETE FROM series`))) }()
		vs, err := s.Variants(ctx, made.ID)
		must(err)
		says := func() string {
			doc, err := s.Export(ctx, made.ID)
			must(err)
			text, err := document.Encode(doc)
			must(err)
			return string(text)
		}
		first, revision := says(), made.Revision
		if isVariant {
			revision = vs[0].Revision
		}
		save := func() string {
			if isVariant {
				is, err := s.SaveVariant(ctx, vs[0].ID, v, Edit{Revision: revision, Said: "changed"}, noon)
				must(err)
				revision, v.Name = is.Revision, v.Name+"x"
			} else {
				is, err := s.SaveProject(ctx, made.ID, p, Edit{Revision: revision, Said: "changed"}, noon)
				must(err)
				revision, p.Name = is.Revision, p.Name+"x"
			}
			return says()
		}
		step := func(what string, take func(context.Context, int64, int64) error, want string) {
			if err := take(ctx, made.ID, 0); err != nil {
				t.Fatalf("%s: %v", what, err)
			}
			if got := says(); got != want {
				t.Fatalf("%s gave\n%s\nwant\n%s", what, got, want)
			}
		}
		undo := func(ctx context.Context, id, seq int64) error { return second(s.Undo(ctx, id, seq, noon)) }
		redo := func(ctx context.Context, id, seq int64) error { return second(s.Redo(ctx, id, seq, noon)) }
		changed := save()
		if changed == first {
			t.Skip() // nothing was changed, and nothing can be undone
		}
		again := save()
		step("undo", undo, changed)
		step("a second undo", undo, first)
		step("redo", redo, changed)
		step("a second redo", redo, again)
		step("undo after redo", undo, changed)
	})
}

// FuzzMigrate brings a file of any released schema up to date, with any rows in it that its own rules let in: it says what it
// said, to the letter, it is sound, and whatever stands in it is read or refused.
func FuzzMigrate(f *testing.F) {
	schemas := make([]string, migrations.Newest)
	for i := range schemas {
		text, err := os.ReadFile(fmt.Sprintf("../../testdata/schemas/%04d.sql", i+1))
		if err != nil {
			f.Fatal(err)
		}
		schemas[i] = string(text)
	}
	f.Add(uint8(0), int64(7), int64(1), "name ", `{"name":"a"}`, `[]`, "said", true, int64(1))
	f.Add(uint8(1), int64(1), int64(99), "\x00'", `{"stores":[{"hoist":{}}],"x":[[1e999]]}`, `{"ghi":[]}`, " ", false, int64(2))
	f.Add(uint8(2), int64(1<<62), int64(1<<62), "", `null`, `["00"]`, "", false, int64(1<<40))
	f.Fuzz(func(t *testing.T, schema uint8, thing, number int64, name, body, series, said string, deleted bool, edition int64) {
		ctx := t.Context()
		db, err := sql.Open("sqlite3", ":memory:?_foreign_keys=on")
		if err != nil {
			t.Fatal(err)
		}
		defer db.Close()
		db.SetMaxOpenConns(1)
		version := int(schema)%migrations.Newest + 1
		if _, err := db.ExecContext(ctx, schemas[version-1]+`; PRAGMA foreign_keys = ON`); err != nil {
			t.Fatal(err)
		}
		if _, err := db.ExecContext(ctx, `INSERT INTO series VALUES (?, ?)`, name+"h", series); err != nil {
			t.Skip()
		}
		for _, kind := range []Kind{ProjectKind, VariantKind} {
			if _, err := db.ExecContext(ctx, `INSERT INTO revision (kind, thing, number, project, name, position, deleted, edition, series, at, said, deed, page, field, began, body)
				VALUES (?, ?, ?, ?, ?, 1, ?, ?, ?, ?, ?, 'changed', ?, ?, ?, ?)`,
				kind, thing, number, thing, name, deleted, edition, name+"h", stamp(noon), said, name, said, said, body); err != nil {
				t.Skip()
			}
		}
		if _, err := db.ExecContext(ctx, `INSERT INTO draft VALUES ('variant', ?, ?, ?, ?)`, thing, said, body, name); err != nil {
			t.Skip()
		}
		was := dumpOf(t, db)
		if err := migrate(ctx, db); err != nil {
			t.Fatal(err)
		}
		if is := dumpOf(t, db); is != was {
			t.Fatalf("schema %d said\n%s\nand says\n%s", version, was, is)
		}
		var integrity string
		var wrong, now int
		if err := db.QueryRowContext(ctx, `SELECT (SELECT group_concat(integrity_check) FROM pragma_integrity_check), (SELECT count(*) FROM pragma_foreign_key_check),
			(SELECT user_version FROM pragma_user_version)`).Scan(&integrity, &wrong, &now); err != nil || integrity != "ok" || wrong > 0 || now != migrations.Newest {
			t.Fatalf("%s, %d wrong keys, schema %d, %v", integrity, wrong, now, err)
		}
		s := newStore("")
		s.reader = db
		if err := s.read(ctx, func(tx *sql.Tx) error { return nil }); err != nil {
			t.Fatal(err)
		}
		_, projects := s.Projects(ctx)
		_, export := s.Export(ctx, thing)
		_, changes := s.FullChanges(ctx, thing, 0, 100)
		_, _, steps := s.Steps(ctx, thing)
		for _, err := range []error{projects, steps} { // they read no design
			if err != nil && !errors.Is(err, ErrNotFound) {
				t.Errorf("it cannot be listed: %v", err)
			}
		}
		for _, err := range []error{export, changes} {
			if err != nil && strings.Contains(err.Error(), "no such") {
				t.Errorf("the file is not as it should be: %v", err)
			}
		}
	})
}
