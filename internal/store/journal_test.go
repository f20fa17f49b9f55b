package store

import (
	"bytes"
	"context"
	"database/sql"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"duskweight/internal/model"
)

func init() { parts["half"] = writeHalf }

// writeHalf leaves a file in the middle of a transaction of a rollback journal, some of it written already, as a stop
// leaves it: a tiny cache spills the pages, and the process ends without closing anything.
func writeHalf(path string) error {
	db, err := sql.Open("sqlite3", dsn(path, map[string][]string{"_journal_mode": {"DELETE"}, "_synchronous": {"FULL"}}))
	if err != nil {
		return err
	}
	db.SetMaxOpenConns(1)
	for _, statement := range []string{
		`PRAGMA cache_size = 5`, `PRAGMA cache_spill = 1`, `BEGIN`,
		`CREATE TABLE IF NOT EXISTS half (said TEXT)`,
		`WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 3000) INSERT INTO half SELECT hex(randomblob(400)) FROM n`,
	} {
		if _, err := db.ExecContext(context.Background(), statement); err != nil {
			return err
		}
	}
	if info, err := os.Stat(path + "-journal"); err != nil || info.Size() == 0 {
		return fmt.Errorf("there is no journal: %w", err)
	}
	os.Exit(9)
	return nil
}

// halved makes a file that a process left half written.
func halved(t *testing.T, path string) {
	t.Helper()
	cmd := partCommand("half", path)
	if err := cmd.Run(); cmd.ProcessState.ExitCode() != 9 {
		t.Fatal(err)
	}
	if _, err := inspect(t.Context(), path, looking); !isReadOnlyFile(err) {
		t.Fatalf("nothing is half written here: %v", err)
	}
}

// TestHalfWritten opens a file that a stop left with a hot rollback journal, and goes back to such a copy, as plain SQLite does:
// what was not finished is taken back, what was saved before is there.
func TestHalfWritten(t *testing.T) {
	s := fresh(t)
	sampled(t, s)
	want := logicalDump(t, s.Path())
	s.Close()
	old := filepath.Join(t.TempDir(), "old.db") // in rollback mode, as a copy is
	if err := vacuumInto(t.Context(), s.Path(), old); err != nil {
		t.Fatal(err)
	}
	halved(t, old)
	other := fresh(t)
	must[Backup](t)(other.Restore(t.Context(), old, noon)) // before Open heals it
	if got := logicalDump(t, other.Path()); got != want {
		t.Errorf("the copy said\n%s\nand says\n%s", want, got)
	}
	if !hot(old) {
		t.Error("the copy was changed")
	}
	s = opened(t, old)
	if got := logicalDump(t, old); got != want {
		t.Errorf("it said\n%s\nand says\n%s", want, got)
	}
	if entries, _ := os.ReadDir(copyFolder(old)); len(entries) != 1 {
		t.Errorf("beside the one copy lies more: %v", entries)
	}
	must[Saved[model.Project]](t)(s.Project(t.Context(), 1))
	spoilt := filepath.Join(t.TempDir(), "spoilt.db") // the file is damaged, the copy half written
	if err := vacuumInto(t.Context(), old, spoilt); err != nil {
		t.Fatal(err)
	}
	halved(t, spoilt)
	if err := os.WriteFile(s.Path()+"x", bytes.Repeat([]byte("junk"), 1000), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, aside, err := RestoreFile(t.Context(), s.Path()+"x", spoilt, noon); err != nil || aside == "" {
		t.Errorf("set aside as %q: %v", aside, err)
	}
	if got := logicalDump(t, s.Path()+"x"); got != want {
		t.Error("the copy is not in the place of the damaged file")
	}
}

// TestHalfMadeFirstStart opens a file whose very first transaction was cut off.
func TestHalfMadeFirstStart(t *testing.T) {
	path := filepath.Join(t.TempDir(), "first.db")
	halved(t, path)
	s := opened(t, path)
	sampled(t, s)
}

// TestHalfWrittenForeign leaves another program's file as it is, half written or not.
func TestHalfWrittenForeign(t *testing.T) {
	path := filepath.Join(t.TempDir(), "song.db")
	db := must[*sql.DB](t)(sql.Open("sqlite3", dsn(path, nil)))
	if _, err := db.Exec(`CREATE TABLE song (name)`); err != nil {
		t.Fatal(err)
	}
	db.Close()
	halved(t, path)
	was := must[[]byte](t)(os.ReadFile(path))
	log := must[[]byte](t)(os.ReadFile(path + "-journal"))
	if _, err := Open(t.Context(), path, noon); !errors.Is(err, ErrForeign) {
		t.Errorf("it was taken: %v", err)
	}
	if !bytes.Equal(was, must[[]byte](t)(os.ReadFile(path))) || !bytes.Equal(log, must[[]byte](t)(os.ReadFile(path+"-journal"))) {
		t.Error("it was changed")
	}
}
