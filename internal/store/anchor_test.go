//go:build unix

package store

import (
	"bytes"
	"context"
	"database/sql"
	"errors"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"duskweight/internal/model"
)

// TestFileTakenAway refuses to save where the file, its log or its folder is not at its place any more, lets everything be
// exported that was saved, and saves again once the same file is back.
func TestFileTakenAway(t *testing.T) {
	for name, take := range map[string]func(path string) (back func() error, err error){
		"the folder is moved": func(path string) (func() error, error) {
			dir := filepath.Dir(path)
			return func() error { return os.Rename(dir+".moved", dir) }, os.Rename(dir, dir+".moved")
		},
		"the folder is removed": func(path string) (func() error, error) { return nil, os.RemoveAll(filepath.Dir(path)) },
		"the file is removed":   func(path string) (func() error, error) { return nil, os.Remove(path) },
		"the log is removed":    func(path string) (func() error, error) { return nil, os.Remove(path + "-wal") },
	} {
		t.Run(name, func(t *testing.T) {
			s := opened(t, filepath.Join(t.TempDir(), "data", "duskweight.db"))
			p, v := sampled(t, s)
			saved := must[Saved[model.Variant]](t)(s.SaveVariant(t.Context(), v.ID, lifting(v.Value, 9), Edit{Revision: 1}, noon))
			back, err := take(s.Path())
			if err != nil {
				t.Fatal(err)
			}
			if _, err := s.SaveVariant(t.Context(), v.ID, lifting(v.Value, 11), Edit{Revision: saved.Revision}, later(1)); !errors.Is(err, ErrMoved) {
				t.Errorf("a save: %v", err)
			}
			if _, err := s.Backup(t.Context(), later(1)); !errors.Is(err, ErrMoved) {
				t.Errorf("a copy: %v", err)
			}
			if !strings.Contains(s.ReadOnly(), "Nothing can be saved") {
				t.Errorf("it says %q", s.ReadOnly())
			}
			for range 2 * readers {
				if doc, err := s.Export(t.Context(), p.ID); err != nil || travel(doc.Variants[0]) != 9 {
					t.Fatalf("the export: %v", err)
				}
			}
			if back == nil {
				return
			}
			if err := back(); err != nil {
				t.Fatal(err)
			}
			must[Saved[model.Variant]](t)(s.SaveVariant(t.Context(), v.ID, lifting(v.Value, 11), Edit{Revision: saved.Revision}, later(1)))
		})
	}
}

// TestFileReplaced leaves another file that was put in the place of the open one as it is, whether the program ends or is
// cut off, and the next start opens it.
func TestFileReplaced(t *testing.T) {
	for _, cut := range []bool{false, true} {
		other := fresh(t)
		_, v := sampled(t, other)
		must[Saved[model.Variant]](t)(other.SaveVariant(t.Context(), v.ID, lifting(v.Value, 5), Edit{Revision: 1}, noon))
		put := filepath.Join(t.TempDir(), "put.db")
		if err := vacuumInto(t.Context(), other.Path(), put); err != nil {
			t.Fatal(err)
		}
		want := must[[]byte](t)(os.ReadFile(put))
		s := fresh(t)
		_, v = sampled(t, s)
		for i := range 30 {
			v = must[Saved[model.Variant]](t)(s.SaveVariant(t.Context(), v.ID, lifting(v.Value, float64(i+20)), Edit{Revision: v.Revision}, later(i)))
		}
		if err := os.Rename(put, s.Path()); err != nil {
			t.Fatal(err)
		}
		for range 60 {
			if _, err := s.SaveVariant(t.Context(), v.ID, lifting(v.Value, 11), Edit{Revision: v.Revision}, later(40)); !errors.Is(err, ErrMoved) {
				t.Fatalf("a save: %v", err)
			}
		}
		if cut { // what a cut leaves is what lies there now
			if err := s.lock.release(); err != nil {
				t.Fatal(err)
			}
		} else if err := s.Close(); err != nil {
			t.Error(err)
		}
		if is := must[[]byte](t)(os.ReadFile(s.Path())); !bytes.Equal(is, want) {
			t.Errorf("cut off %v: the other file was changed", cut)
		}
		again := opened(t, s.Path())
		if got := logicalDump(t, s.Path()); got != logicalDump(t, other.Path()) {
			t.Errorf("cut off %v: the next start says\n%s", cut, got)
		}
		if err := sound(t.Context(), again.Path()); err != nil {
			t.Error(err)
		}
	}
}

// TestLogOfAnother leaves the log of the file that was put in the place of ours beside it.
func TestLogOfAnother(t *testing.T) {
	s := fresh(t)
	sampled(t, s)
	for _, path := range []string{s.Path(), s.Path() + "-wal"} {
		if err := os.WriteFile(path+".put", []byte("of another"), 0o600); err != nil {
			t.Fatal(err)
		}
		if err := os.Rename(path+".put", path); err != nil {
			t.Fatal(err)
		}
	}
	if err := s.Close(); err != nil {
		t.Error(err)
	}
	if log := must[[]byte](t)(os.ReadFile(s.Path() + "-wal")); string(log) != "of another" {
		t.Errorf("the log says %q", log)
	}
}

// another writes the file of another project, to be put in the place of an open one, and returns what it holds.
func another(t *testing.T, put string) (dump string, data []byte) {
	t.Helper()
	other := fresh(t)
	_, v := sampled(t, other)
	must[Saved[model.Variant]](t)(other.SaveVariant(t.Context(), v.ID, lifting(v.Value, 5), Edit{Revision: 1}, noon))
	if err := vacuumInto(t.Context(), other.Path(), put); err != nil {
		t.Fatal(err)
	}
	return logicalDump(t, other.Path()), must[[]byte](t)(os.ReadFile(put))
}

// TestReplacedAndCutOff puts another file in the place of the one that a saving process has open, and kills that process at
// once, before it can have looked. The next start serves the other file as it was put there and keeps the log of the first:
// played into the other file, it would leave something of both.
func TestReplacedAndCutOff(t *testing.T) {
	rounds := often(3, 300)
	r := rand.New(rand.NewPCG(3, 3))
	for round := range rounds {
		dir := t.TempDir()
		path, put := filepath.Join(dir, "duskweight.db"), filepath.Join(dir, "put.db")
		want, data := another(t, put)
		s := opened(t, path)
		_, v := sampled(t, s)
		must[Saved[model.Variant]](t)(s.SaveVariant(t.Context(), v.ID, lifting(v.Value, 3), Edit{Revision: 1}, noon))
		if err := s.Close(); err != nil {
			t.Fatal(err)
		}
		cmd, lines := part(t, "save", path)
		for range 1 + r.IntN(30) {
			if !lines.Scan() {
				t.Fatal("it does not save")
			}
		}
		if err := errors.Join(os.Rename(put, path), cmd.Process.Kill()); err != nil {
			t.Fatal(err)
		}
		cmd.Wait()
		seen := must[Seen](t)(Look(t.Context(), path, false))
		if !seen.Replaced || seen.Cut {
			t.Errorf("round %d: a look says %+v", round, seen)
		}
		if is := must[[]byte](t)(os.ReadFile(path)); !bytes.Equal(is, data) {
			t.Errorf("round %d: the other file was changed", round)
		}
		if round%3 == 2 { // a start that was killed before it could look, too
			l := must[*lock](t)(takeLock(t.Context(), path))
			if err := l.file.Close(); err != nil {
				t.Fatal(err)
			}
		}
		again := opened(t, path)
		if got := logicalDump(t, path); got != want {
			t.Fatalf("round %d: the next start says\n%s\nwant\n%s", round, got, want)
		}
		if log, err := os.Stat(path + ".replaced-wal"); err != nil || log.Size() <= logHeader {
			t.Errorf("round %d: the log of the first: %v", round, err)
		}
		if notices := again.Notices(); len(notices) != 1 || !strings.Contains(notices[0], path+".replaced-wal") {
			t.Errorf("round %d: it says %q", round, notices)
		}
		if err := again.Close(); err != nil {
			t.Fatal(err)
		}
		if notices := opened(t, path).Notices(); len(notices) > 0 {
			t.Errorf("round %d: the start after that says %q", round, notices)
		}
	}
}

// TestMovedTogether reads the log of a program that was cut off wherever file and log are moved or copied together.
func TestMovedTogether(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "data")
	path := filepath.Join(dir, "duskweight.db")
	s := opened(t, path)
	_, v := sampled(t, s)
	must[Saved[model.Variant]](t)(s.SaveVariant(t.Context(), v.ID, lifting(v.Value, 9), Edit{Revision: 1}, noon))
	want := logicalDump(t, path)
	copied, moved := dir+".copied", dir+".moved"
	if err := os.CopyFS(copied, os.DirFS(dir)); err != nil { // as a cut leaves it
		t.Fatal(err)
	}
	if err := os.CopyFS(moved, os.DirFS(dir)); err != nil {
		t.Fatal(err)
	}
	for _, side := range []string{"", "-wal"} { // as if the program had run there, and a tool had written both anew
		at := filepath.Join(moved, "duskweight.db") + side
		if err := errors.Join(copyFile(at, at+".new"), os.Rename(at+".new", at)); err != nil {
			t.Fatal(err)
		}
	}
	for _, dir := range []string{copied, moved} {
		again := opened(t, filepath.Join(dir, "duskweight.db"))
		if got := logicalDump(t, again.Path()); got != want || len(again.Notices()) > 0 {
			t.Errorf("%s: %q and\n%s\nwant\n%s", dir, again.Notices(), got, want)
		}
	}
}

// TestReplacedInAChange takes a change back where another file was put in the place of ours in the middle of it: nothing is
// acknowledged, and nothing more goes into the log of the file that is gone.
func TestReplacedInAChange(t *testing.T) {
	put := filepath.Join(t.TempDir(), "put.db")
	_, data := another(t, put)
	s := fresh(t)
	sampled(t, s)
	was := must[[]byte](t)(os.ReadFile(s.Path() + "-wal"))
	err := s.inTx(t.Context(), func(ctx context.Context, tx *sql.Tx) error {
		if err := os.Rename(put, s.Path()); err != nil {
			return err
		}
		_, err := tx.ExecContext(ctx, `INSERT INTO setting (name, value) VALUES ('units', 'imperial')`)
		return err
	})
	if !errors.Is(err, ErrMoved) {
		t.Errorf("the change: %v", err)
	}
	if is := must[[]byte](t)(os.ReadFile(s.Path() + ".replaced-wal")); !bytes.Equal(is, was) {
		t.Errorf("the log had %d bytes and has %d", len(was), len(is))
	}
	if got := must[map[string]string](t)(s.Settings(t.Context())); got["units"] == "imperial" {
		t.Error("the change is read")
	}
	if err := s.Close(); err != nil {
		t.Error(err)
	}
	if is := must[[]byte](t)(os.ReadFile(s.Path())); !bytes.Equal(is, data) {
		t.Error("the other file was changed")
	}
}

// TestReplacedWhileOpening refuses to go on where another file lies at the place by the time that ours is open, and leaves
// that one and its log alone.
func TestReplacedWhileOpening(t *testing.T) {
	put := filepath.Join(t.TempDir(), "put.db")
	another(t, put)
	path := filepath.Join(t.TempDir(), "duskweight.db")
	s := newStore(path)
	s.lock = must[*lock](t)(takeLock(t.Context(), path))
	if err := errors.Join(s.openWriter(t.Context()), os.Rename(put, path), os.WriteFile(put, []byte("of another"), 0o600), os.Rename(put, path+"-wal")); err != nil {
		t.Fatal(err)
	}
	if err := s.hold(); !errors.Is(err, ErrMoved) {
		t.Errorf("%v", err)
	}
	if err := s.abandon(); err != nil {
		t.Error(err)
	}
	if log := must[[]byte](t)(os.ReadFile(path + "-wal")); string(log) != "of another" {
		t.Errorf("its log says %q", log)
	}
}
