package store

import (
	"errors"
	"testing"

	"duskweight/internal/model"
)

// TestPurge keeps a deleted project for 30 days, by the clock of the caller, and not an hour longer than its next start.
func TestPurge(t *testing.T) {
	s := fresh(t)
	ctx := t.Context()
	p, v := sampled(t, s)
	doc := sample(t)
	doc.Project.Weather = year()
	gone := must[Saved[model.Project]](t)(s.CreateProject(ctx, doc, "", noon))
	its := must[[]Saved[model.Variant]](t)(s.Variants(ctx, gone.ID))[0]
	must[Saved[model.Variant]](t)(s.SaveVariant(ctx, its.ID, lifting(its.Value, 9), Edit{Revision: 1}, noon))
	must[Change](t)(s.Undo(ctx, gone.ID, 0, noon)) // a row that points to another
	for _, id := range []int64{its.ID, v.ID} {
		if err := s.SaveDrafts(ctx, Thing{VariantKind, id}, map[string]string{"f": "x"}, noon); err != nil {
			t.Fatal(err)
		}
	}
	if err := s.DeleteProject(ctx, gone.ID, gone.Revision, "", later(10)); err != nil {
		t.Fatal(err)
	}
	for _, hours := range []int{10, 10 + 30*24 - 1, -1000000} { // not yet; nor by a clock that was set back
		if n := must[int](t)(s.Purge(ctx, later(hours))); n != 0 {
			t.Errorf("%d purged after %d hours", n, hours)
		}
	}
	must[Saved[model.Project]](t)(s.RestoreProject(ctx, gone.ID, "", later(20)))
	if n := must[int](t)(s.Purge(ctx, later(10000))); n != 0 {
		t.Errorf("%d purged that are not deleted any more", n)
	}
	if err := s.DeleteProject(ctx, gone.ID, 3, "", later(30)); err != nil {
		t.Fatal(err)
	}
	if n := must[int](t)(s.Purge(ctx, later(30+30*24))); n != 1 {
		t.Errorf("%d purged", n)
	}
	if _, err := s.RestoreProject(ctx, gone.ID, "", noon); !errors.Is(err, ErrNotFound) {
		t.Errorf("it is still there: %v", err)
	}
	var rows, drafts, years int
	err := s.reader.QueryRow(`SELECT (SELECT count(*) FROM revision), (SELECT count(*) FROM draft), (SELECT count(*) FROM series)`).Scan(&rows, &drafts, &years)
	if err != nil || rows != 2 || drafts != 1 || years != 0 {
		t.Errorf("left: %d rows, %d drafts, %d years, %v", rows, drafts, years, err)
	}
	must[Saved[model.Project]](t)(s.Project(ctx, p.ID))
	again := must[Saved[model.Project]](t)(s.CreateProject(ctx, doc, "", noon))
	fresh := must[[]Saved[model.Variant]](t)(s.Variants(ctx, again.ID))[0]
	if again.ID <= gone.ID || fresh.ID <= its.ID {
		t.Errorf("ids were used twice: %d, %d", again.ID, fresh.ID)
	}
}

// TestPurgeAtStart purges at a start and while the program runs, and only what a copy still has.
func TestPurgeAtStart(t *testing.T) {
	for _, how := range []string{"start", "tend"} {
		s := fresh(t)
		ctx := t.Context()
		p, _ := sampled(t, s)
		if err := s.DeleteProject(ctx, p.ID, 1, "", noon); err != nil {
			t.Fatal(err)
		}
		if how == "tend" {
			if err := s.Tend(ctx, later(31*24)); err != nil {
				t.Fatal(err)
			}
		} else {
			s.Close()
			var err error
			if s, err = Open(ctx, s.Path(), later(31*24)); err != nil {
				t.Fatal(err)
			}
			defer s.Close()
		}
		if n := len(must[[]Listed](t)(s.DeletedProjects(ctx))); n != 0 {
			t.Errorf("%s: %d deleted projects are left", how, n)
		}
		bs := must[[]Backup](t)(s.Backups())
		must[Backup](t)(s.Restore(ctx, bs[0].Path, later(31*24)))
		if n := len(must[[]Listed](t)(s.DeletedProjects(ctx))); n != 1 {
			t.Errorf("%s: the copy does not have it: %d", how, n)
		}
	}
}
