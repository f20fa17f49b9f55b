package store

import (
	"errors"
	"strings"
	"testing"

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
