package store

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"duskweight/internal/model"
)

// TestForeignKeysHaveIndexes asks for an index on every column that points to another table: SQLite looks for the rows
// that point to each row that goes, and without one reads the whole table for each (SQLite, foreign keys, section 3).
func TestForeignKeysHaveIndexes(t *testing.T) {
	s := fresh(t)
	rows, err := s.reader.QueryContext(t.Context(), `SELECT m.name, f."from", EXISTS (
			SELECT 1 FROM pragma_index_list(m.name) AS i JOIN pragma_index_info(i.name) AS c ON c.seqno = 0 WHERE c.name = f."from")
		FROM sqlite_schema AS m, pragma_foreign_key_list(m.name) AS f WHERE m.type = 'table'`)
	if err != nil {
		t.Fatal(err)
	}
	defer rows.Close()
	keys := 0
	for rows.Next() {
		var table, column string
		var indexed bool
		if err := rows.Scan(&table, &column, &indexed); err != nil {
			t.Fatal(err)
		}
		keys++
		if !indexed {
			t.Errorf("%s.%s has no index", table, column)
		}
	}
	if rows.Err() != nil || keys != 2 {
		t.Errorf("%d foreign keys, %v", keys, rows.Err())
	}
}

// TestSaveWhileGoingBack answers a save soon while a return to a copy holds the pen, and takes it afterwards.
func TestSaveWhileGoingBack(t *testing.T) {
	s := fresh(t)
	_, v := sampled(t, s)
	p := must[pen](t)(s.takePen(t.Context()))
	s.goingBack.Store(true)
	if _, err := s.SaveVariant(t.Context(), v.ID, lifting(v.Value, 9), Edit{Revision: 1}, noon); !errors.Is(err, ErrWait) {
		t.Errorf("a save: %v", err)
	}
	if _, err := s.Backup(t.Context(), noon); !errors.Is(err, ErrWait) {
		t.Errorf("a copy: %v", err)
	}
	if err := second(s.Variant(t.Context(), v.ID)); err != nil { // reading goes on
		t.Error(err)
	}
	s.goingBack.Store(false)
	saved := make(chan error, 1)
	go func() {
		saved <- second(s.SaveVariant(context.WithoutCancel(t.Context()), v.ID, lifting(v.Value, 9), Edit{Revision: 1}, noon))
	}()
	time.Sleep(2 * patience) // it waits out a copy that is being made
	if err := p.give(); err != nil {
		t.Fatal(err)
	}
	if err := <-saved; err != nil {
		t.Errorf("after it: %v", err)
	}
}

// TestGoingBackStopped leaves everything as it was where whoever asked for the copy is gone before it is done, and
// nothing of its own beside the copies.
func TestGoingBackStopped(t *testing.T) {
	s := fresh(t)
	_, v := sampled(t, s)
	copied := must[Backup](t)(s.Backup(t.Context(), noon))
	must[Saved[model.Variant]](t)(s.SaveVariant(t.Context(), v.ID, lifting(v.Value, 9), Edit{Revision: 1}, later(1)))
	was, stopped, done := logicalDump(t, s.Path()), 0, 0
	for wait := time.Duration(0); done == 0; wait += 500 * time.Microsecond {
		ctx, cancel := context.WithTimeout(t.Context(), wait)
		before, err := s.Restore(ctx, copied.Path, later(2))
		cancel()
		if err != nil {
			stopped++
			if !errors.Is(err, context.DeadlineExceeded) { // the one before left something behind
				t.Fatalf("stopped after %v: %v", wait, err)
			}
			if got := logicalDump(t, s.Path()); got != was {
				t.Fatalf("stopped after %v it says\n%s\nand said\n%s", wait, got, was)
			}
		} else {
			done++
			must[Backup](t)(s.Restore(t.Context(), before.Path, later(3)))
			if got := logicalDump(t, s.Path()); got != was {
				t.Error("the return could not be taken back")
			}
		}
		for _, path := range []string{unfinished(s.Path()), restoring(s.Path())} {
			if _, err := os.Stat(path); err == nil {
				t.Fatalf("stopped after %v it left %s", wait, filepath.Base(path))
			}
		}
	}
	if stopped == 0 {
		t.Error("it was never stopped")
	}
}

// TestSweep removes what a stopped program left of a copy at the next start, and no copy.
func TestSweep(t *testing.T) {
	s := fresh(t)
	sampled(t, s)
	b := must[Backup](t)(s.Backup(t.Context(), noon))
	left := []string{unfinished(s.Path()), unfinished(s.Path()) + "-journal", restoring(s.Path()), restoring(s.Path()) + "-wal"}
	for _, path := range left {
		if err := os.WriteFile(path, []byte(strings.Repeat("half", 100)), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	reopened(t, s)
	for _, path := range left {
		if _, err := os.Stat(path); !errors.Is(err, os.ErrNotExist) {
			t.Errorf("%s is still there: %v", filepath.Base(path), err)
		}
	}
	if _, err := os.Stat(b.Path); err != nil {
		t.Error(err)
	}
}

// TestGoingBackToAnothersCopy takes a copy of another file, whose rows have the numbers of ours and say something else.
func TestGoingBackToAnothersCopy(t *testing.T) {
	s, other := fresh(t), fresh(t)
	for file, travel := range map[*Store]float64{s: 5, other: 9} {
		_, v := sampled(t, file)
		must[Saved[model.Variant]](t)(file.SaveVariant(t.Context(), v.ID, lifting(v.Value, travel), Edit{Revision: 1}, later(1)))
		must[Change](t)(file.Undo(t.Context(), 1, 0, later(2))) // a row that points to another
	}
	copied := must[Backup](t)(other.Backup(t.Context(), later(3)))
	must[Backup](t)(s.Restore(t.Context(), copied.Path, later(4)))
	if got, want := logicalDump(t, s.Path()), logicalDump(t, copied.Path); got != want {
		t.Errorf("it says\n%s\nand the copy\n%s", got, want)
	}
}
