//go:build unix

package store

import (
	"bytes"
	"errors"
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
