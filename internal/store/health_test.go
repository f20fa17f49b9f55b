package store

import (
	"errors"
	"os"
	"testing"
)

// TestHealth writes to the log beside the file and leaves the content as it was; it fails where a save would fail.
func TestHealth(t *testing.T) {
	ctx := t.Context()
	s := opened(t, t.TempDir()+"/duskweight.db")
	sampled(t, s)
	before := must[string](t)(fingerprint(ctx, s.Path()))
	was := must[os.FileInfo](t)(os.Stat(s.Path() + "-wal")).Size()
	if err := s.Health(ctx); err != nil {
		t.Fatal(err)
	}
	if is := must[os.FileInfo](t)(os.Stat(s.Path() + "-wal")).Size(); is <= was {
		t.Errorf("nothing was written: the log had %d bytes and has %d", was, is)
	}
	if after := must[string](t)(fingerprint(ctx, s.Path())); after != before {
		t.Error("the content is another")
	}
	if _, err := s.writer.ExecContext(ctx, "PRAGMA query_only = 1"); err != nil {
		t.Fatal(err)
	}
	if err := s.Health(ctx); !errors.Is(err, ErrReadOnly) {
		t.Errorf("a file that cannot be written to: %v", err)
	}
	if err := os.Remove(s.Path()); err != nil {
		t.Fatal(err)
	}
	if err := s.Health(ctx); err == nil {
		t.Error("a file that is gone is well")
	}
}
