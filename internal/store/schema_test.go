package store

import (
	"database/sql"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"duskweight/migrations"
)

// releasedFile is a data file of a schema as it was released, with projects in it.
func releasedFile(t *testing.T, n int) (path string) {
	text := must[[]byte](t)(os.ReadFile(fmt.Sprintf("../../testdata/schemas/%04d.sql", n)))
	path = filepath.Join(t.TempDir(), "duskweight.db")
	db := must[*sql.DB](t)(sql.Open("sqlite3", dsn(path, nil)))
	if _, err := db.Exec(string(text)); err != nil {
		t.Fatal(err)
	}
	db.Close()
	return path
}

// TestReleasedSchemas brings a file of every schema that was ever released up to date: it says what it said, and a copy
// from before was made first.
func TestReleasedSchemas(t *testing.T) {
	for n := 1; n <= migrations.Newest; n++ {
		path := releasedFile(t, n)
		want := logicalDump(t, path)
		s := opened(t, path)
		if got := logicalDump(t, path); got != want || want == "" {
			t.Errorf("schema %d: it said\n%s\nand says\n%s", n, want, got)
		}
		bs := must[[]Backup](t)(s.Backups())
		if len(bs) != 1 {
			t.Fatalf("schema %d: %d copies", n, len(bs))
		}
		if version := must[int](t)(inspect(t.Context(), bs[0].Path, looking)); version != n {
			t.Errorf("the copy is of schema %d, want %d", version, n)
		}
		if p := must[[]Listed](t)(s.DeletedProjects(t.Context())); len(p) != 1 {
			t.Errorf("schema %d: %d deleted projects", n, len(p))
		}
		if undo, _, err := s.Steps(t.Context(), 1); err != nil || undo == nil {
			t.Errorf("schema %d: nothing to undo: %v", n, err)
		}
		s.Close()
	}
}
