//go:build cgo

package store

import (
	"errors"
	"fmt"
	"os"
	"strings"
	"syscall"
	"testing"

	sqlite3 "github.com/mattn/go-sqlite3"

	"duskweight/internal/model"
)

// A save that finds no room is told as ErrFull and changes nothing: every save before it is there, and once there is
// room again the next one is taken. SQLite reports a file that may not grow as it reports a full disk (SQLITE_FULL).
func TestFullDisk(t *testing.T) {
	s := opened(t, t.TempDir()+"/duskweight.db")
	defer s.Close()
	sampled(t, s)
	if _, err := s.writer.ExecContext(t.Context(), "PRAGMA max_page_count = 60"); err != nil {
		t.Fatal(err)
	}
	var full error
	acknowledged := ""
	for i := 0; full == nil && i < 500; i++ {
		p := must[Saved[model.Project]](t)(s.Project(t.Context(), 1))
		p.Value.Name = strings.Repeat("n", i%50+1)
		if _, err := s.SaveProject(t.Context(), 1, p.Value, Edit{Revision: p.Revision, Said: "named"}, noon); err != nil {
			full = err
		} else {
			acknowledged = p.Value.Name
		}
	}
	if !errors.Is(full, ErrFull) {
		t.Fatalf("a file that cannot grow: %v", full)
	}
	p := must[Saved[model.Project]](t)(s.Project(t.Context(), 1))
	if p.Value.Name != acknowledged {
		t.Errorf("%q is stored, %q was the last that was taken", p.Value.Name, acknowledged)
	}
	if _, err := s.writer.ExecContext(t.Context(), "PRAGMA max_page_count = 1000000"); err != nil {
		t.Fatal(err)
	}
	p.Value.Name = "room again"
	if _, err := s.SaveProject(t.Context(), 1, p.Value, Edit{Revision: p.Revision}, noon); err != nil {
		t.Errorf("with room again: %v", err)
	}
}

// What the disk refuses is told apart, whether SQLite met it or we did while copying. /dev/full has no room for anything
// (Linux, full(4)).
func TestWhatTheDiskRefuses(t *testing.T) {
	for _, one := range []struct{ is, want error }{
		{fmt.Errorf("store: %w", sqlite3.Error{Code: sqlite3.ErrFull}), ErrFull},
		{fmt.Errorf("store: %w", sqlite3.Error{Code: sqlite3.ErrIoErr}), ErrDisk},
		{fmt.Errorf("store: %w", sqlite3.Error{Code: sqlite3.ErrReadonly}), ErrReadOnly},
		{fmt.Errorf("store: %w", sqlite3.Error{Code: sqlite3.ErrConstraint}), nil},
		{&os.PathError{Op: "open", Path: "a", Err: syscall.EROFS}, ErrReadOnly},
		{&os.PathError{Op: "sync", Path: "a", Err: syscall.EIO}, ErrDisk},
		{errors.New("something else"), nil},
		{nil, nil},
	} {
		if got := DiskError(one.is); got != one.want {
			t.Errorf("%v is %v, want %v", one.is, got, one.want)
		}
	}
	if _, err := os.Stat("/dev/full"); err != nil {
		t.Skip("this system has no /dev/full")
	}
	if err := os.WriteFile("/dev/full", []byte("a"), 0o600); DiskError(err) != ErrFull {
		t.Errorf("no room while copying: %v", err)
	}
}

// What SQLite says of a file that may only be read (SQLITE_READONLY) is told as ErrReadOnly, also in the middle of the work.
func TestWriteProtected(t *testing.T) {
	s := opened(t, t.TempDir()+"/duskweight.db")
	defer s.Close()
	if _, err := s.writer.ExecContext(t.Context(), "PRAGMA query_only = 1"); err != nil {
		t.Fatal(err)
	}
	if err := s.SaveSettings(t.Context(), map[string]string{"units": "metric"}); !errors.Is(err, ErrReadOnly) {
		t.Errorf("%v", err)
	}
}
