package store

import (
	"bytes"
	"database/sql"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/pressly/goose/v3"

	"duskweight/internal/model"
	"duskweight/migrations"
)

// TestPath opens the very file that is named, whatever its name.
func TestPath(t *testing.T) {
	for _, name := range []string{"a?b#c.db", "100%20 &=+.db", "größe ½.db", "file:x.db", "-x'\".db"} {
		path := filepath.Join(t.TempDir(), "new", name)
		s := opened(t, path)
		sampled(t, s)
		s = reopened(t, s)
		if n := len(must[[]Listed](t)(s.Projects(t.Context()))); n != 1 {
			t.Errorf("%s: %d projects", name, n)
		}
		if info, err := os.Stat(path); err != nil || info.Size() == 0 {
			t.Errorf("%s: %v", name, err)
		}
		if bs := must[[]Backup](t)(s.Backups()); len(bs) != 1 {
			t.Errorf("%s: %d copies", name, len(bs))
		}
		entries, _ := os.ReadDir(filepath.Dir(path))
		for _, e := range entries {
			if e.Name() != "backups" && !strings.HasPrefix(e.Name(), name) {
				t.Errorf("%s made a file %s", name, e.Name())
			}
		}
	}
}

func TestPrivate(t *testing.T) {
	s := opened(t, filepath.Join(t.TempDir(), "data", "duskweight.db"))
	sampled(t, s)
	for path, want := range map[string]fs.FileMode{filepath.Dir(s.Path()): 0o700, s.Path(): 0o600, s.Path() + "-wal": 0o600} {
		info, err := os.Stat(path)
		if err != nil || info.Mode().Perm() != want {
			t.Errorf("%s: %v, %v", path, info.Mode(), err)
		}
	}
}

// TestPragmas reads the settings back from each connection, and sees that a wrong one is refused.
func TestPragmas(t *testing.T) {
	s := fresh(t)
	if err := readBack(t.Context(), s.writer, map[string]string{"synchronous": "1"}); err == nil {
		t.Error("FULL passed for NORMAL")
	}
	for range readers {
		c := must[*sql.Conn](t)(s.reader.Conn(t.Context()))
		defer c.Close()
		if _, err := c.ExecContext(t.Context(), `DELETE FROM revision`); err == nil {
			t.Error("a reader can write")
		}
	}
	var version, table int
	err := s.writer.QueryRow(`SELECT (SELECT user_version FROM pragma_user_version), (SELECT max(version_id) FROM goose_db_version)`).Scan(&version, &table)
	entries, _ := migrations.FS.ReadDir(".")
	if err != nil || version != migrations.Newest || table != migrations.Newest || len(entries) != migrations.Newest {
		t.Errorf("user_version %d, goose %d, %d files, newest %d, %v", version, table, len(entries), migrations.Newest, err)
	}
}

// TestForeign leaves what is not ours as it is.
func TestForeign(t *testing.T) {
	dir := t.TempDir()
	other := filepath.Join(dir, "other.db")
	db := must[*sql.DB](t)(sql.Open("sqlite3", dsn(other, nil)))
	if _, err := db.Exec(`CREATE TABLE song (name)`); err != nil {
		t.Fatal(err)
	}
	db.Close()
	junk := filepath.Join(dir, "junk.db")
	if err := os.WriteFile(junk, bytes.Repeat([]byte("not a database. "), 500), 0o600); err != nil {
		t.Fatal(err)
	}
	short := filepath.Join(dir, "short.db")
	if err := os.WriteFile(short, []byte("x"), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, path := range []string{other, junk, short} {
		was := must[[]byte](t)(os.ReadFile(path))
		if _, err := Open(t.Context(), path, noon); !errors.Is(err, ErrForeign) || !strings.Contains(err.Error(), "left as it is") {
			t.Errorf("%s: %v", path, err)
		}
		if is := must[[]byte](t)(os.ReadFile(path)); !bytes.Equal(is, was) {
			t.Errorf("%s was changed", path)
		}
	}
	if _, err := Open(t.Context(), dir, noon); !errors.Is(err, ErrForeign) {
		t.Errorf("a folder: %v", err)
	}
}

// TestNewer opens the file of a newer program to be looked at only.
func TestNewer(t *testing.T) {
	s := fresh(t)
	p, v := sampled(t, s)
	if _, err := s.writer.Exec(`PRAGMA user_version = 99; INSERT INTO goose_db_version (version_id, is_applied) VALUES (99, 1)`); err != nil {
		t.Fatal(err)
	}
	s = reopened(t, s)
	if !strings.Contains(s.ReadOnly(), "newer Duskweight") {
		t.Errorf("read-only: %q", s.ReadOnly())
	}
	must[model.Document](t)(s.Export(t.Context(), p.ID))
	if _, err := s.SaveVariant(t.Context(), v.ID, v.Value, Edit{Revision: 1}, noon); !errors.Is(err, ErrReadOnly) {
		t.Errorf("saved: %v", err)
	}
	if n := len(must[[]Backup](t)(s.Backups())); n != 0 {
		t.Errorf("%d copies of a file that this program does not understand", n)
	}
}

// TestHalfMade goes on with a file whose making was cut short.
func TestHalfMade(t *testing.T) {
	for name, statement := range map[string]string{
		"empty": ``, "header": `PRAGMA journal_mode = WAL`, "goose": `CREATE TABLE goose_db_version (id INTEGER PRIMARY KEY AUTOINCREMENT, version_id INTEGER NOT NULL, is_applied INTEGER NOT NULL, tstamp TIMESTAMP DEFAULT (datetime('now')));
			INSERT INTO goose_db_version (version_id, is_applied) VALUES (0, 1)`,
	} {
		path := filepath.Join(t.TempDir(), "half.db")
		db := must[*sql.DB](t)(sql.Open("sqlite3", dsn(path, nil)))
		if _, err := db.Exec(statement); err != nil {
			t.Fatal(name, err)
		}
		db.Close()
		sampled(t, opened(t, path))
	}
}

// TestUpDownUp takes the schema down and up again.
func TestUpDownUp(t *testing.T) {
	s := fresh(t)
	p := must[*goose.Provider](t)(goose.NewProvider(goose.DialectSQLite3, s.writer, migrations.FS, goose.WithDisableGlobalRegistry(true)))
	if _, err := p.DownTo(t.Context(), 0); err != nil {
		t.Fatal(err)
	}
	if err := migrate(t.Context(), s.writer); err != nil {
		t.Fatal(err)
	}
	sampled(t, s)
}
