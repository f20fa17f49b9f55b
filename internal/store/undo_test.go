package store

import (
	"errors"
	"fmt"
	"reflect"
	"testing"
	"time"

	"duskweight/internal/model"
)

func offered(t *testing.T, s *Store, project int64) (undo, redo *Change) {
	t.Helper()
	undo, redo, err := s.Steps(t.Context(), project)
	if err != nil {
		t.Fatal(err)
	}
	return undo, redo
}

// TestUndoHundredSteps undoes and redoes 120 changes of a project and two variants, with a restart after every twenty.
func TestUndoHundredSteps(t *testing.T) {
	s := fresh(t)
	ctx := t.Context()
	p, v := sampled(t, s)
	w := must[Saved[model.Variant]](t)(s.CreateVariant(ctx, p.ID, v.Value, "second", noon))
	states := []model.Document{must[model.Document](t)(s.Export(ctx, p.ID))}
	const steps = 120
	for i := range steps {
		e := Edit{Said: fmt.Sprint("step ", i)}
		switch i % 3 {
		case 0:
			e.Revision, p.Value.Name = p.Revision, fmt.Sprint("name ", i)
			p = must[Saved[model.Project]](t)(s.SaveProject(ctx, p.ID, p.Value, e, later(i)))
		case 1:
			e.Revision = v.Revision
			v = must[Saved[model.Variant]](t)(s.SaveVariant(ctx, v.ID, lifting(v.Value, float64(i)), e, later(i)))
		case 2:
			e.Revision = w.Revision
			w = must[Saved[model.Variant]](t)(s.SaveVariant(ctx, w.ID, lifting(w.Value, float64(i)), e, later(i)))
		}
		states = append(states, must[model.Document](t)(s.Export(ctx, p.ID)))
	}
	walk := func(way string, from, to int, take func(seq int64) (Change, error), offer func() *Change) {
		for i := from; i != to; {
			c := offer()
			if c == nil {
				t.Fatalf("no %s at %d", way, i)
			}
			if i%20 == 0 {
				s = reopened(t, s)
			}
			got, err := take(c.Seq)
			if err != nil {
				t.Fatal(err)
			}
			if i < to {
				i++
			} else {
				i--
			}
			if want := fmt.Sprint("step ", min(i, steps-1)); way == "undo" && got.Said != want {
				t.Fatalf("%s said %q, want %q", way, got.Said, want)
			}
			if now := must[model.Document](t)(s.Export(ctx, p.ID)); !reflect.DeepEqual(now, states[i]) {
				t.Fatalf("%s: another state at %d", way, i)
			}
		}
	}
	undo := func(seq int64) (Change, error) { return s.Undo(ctx, p.ID, seq, later(1000)) }
	redo := func(seq int64) (Change, error) { return s.Redo(ctx, p.ID, seq, later(1000)) }
	nextUndo := func() *Change { u, _ := offered(t, s, p.ID); return u }
	nextRedo := func() *Change { _, r := offered(t, s, p.ID); return r }
	walk("undo", steps, 0, undo, nextUndo)
	walk("redo", 0, steps, redo, nextRedo)
	walk("undo", steps, 50, undo, nextUndo)
	walk("redo", 50, 90, redo, nextRedo)
	walk("undo", 90, 10, undo, nextUndo)
}

// TestUndoEnds leaves what the project came with, and forgets what could be redone after a new change.
func TestUndoEnds(t *testing.T) {
	s := fresh(t)
	ctx := t.Context()
	p, v := sampled(t, s)
	if _, err := s.Undo(ctx, p.ID, 0, noon); !errors.Is(err, ErrNothing) {
		t.Errorf("undid the making of the project: %v", err)
	}
	v = must[Saved[model.Variant]](t)(s.SaveVariant(ctx, v.ID, lifting(v.Value, 3), Edit{Revision: v.Revision}, noon))
	must[Change](t)(s.Undo(ctx, p.ID, 0, noon))
	v = must[Saved[model.Variant]](t)(s.Variant(ctx, v.ID))
	must[Saved[model.Variant]](t)(s.SaveVariant(ctx, v.ID, lifting(v.Value, 4), Edit{Revision: v.Revision}, noon))
	if _, err := s.Redo(ctx, p.ID, 0, noon); !errors.Is(err, ErrNothing) {
		t.Errorf("redid over a new change: %v", err)
	}
}

// TestUndoOfAnotherStep refuses an undo that the page did not mean.
func TestUndoOfAnotherStep(t *testing.T) {
	s := fresh(t)
	ctx := t.Context()
	p, v := sampled(t, s)
	v = must[Saved[model.Variant]](t)(s.SaveVariant(ctx, v.ID, lifting(v.Value, 3), Edit{Revision: v.Revision}, noon))
	undo, _ := offered(t, s, p.ID)
	v = must[Saved[model.Variant]](t)(s.SaveVariant(ctx, v.ID, lifting(v.Value, 4), Edit{Revision: v.Revision}, noon))
	if _, err := s.Undo(ctx, p.ID, undo.Seq, noon); !errors.Is(err, ErrStale) {
		t.Errorf("undid another step: %v", err)
	}
	if got := must[Saved[model.Variant]](t)(s.Variant(ctx, v.ID)); travel(got.Value) != 4 {
		t.Error("changed all the same")
	}
}

// TestUndoOfMakingAndDeleting takes a variant away and brings it back, with its id.
func TestUndoOfMakingAndDeleting(t *testing.T) {
	s := fresh(t)
	ctx := t.Context()
	p, v := sampled(t, s)
	count := func() int { return len(must[[]Saved[model.Variant]](t)(s.Variants(ctx, p.ID))) }
	made := must[Saved[model.Variant]](t)(s.CreateVariant(ctx, p.ID, v.Value, "made", noon))
	must[Change](t)(s.Undo(ctx, p.ID, 0, noon))
	if count() != 1 {
		t.Error("undo did not take the new variant away")
	}
	must[Change](t)(s.Redo(ctx, p.ID, 0, noon))
	back := must[Saved[model.Variant]](t)(s.Variant(ctx, made.ID))
	if !reflect.DeepEqual(back.Value, made.Value) {
		t.Error("redo brought another one back")
	}
	if err := s.DeleteVariant(ctx, back.ID, back.Revision, "deleted", noon); err != nil {
		t.Fatal(err)
	}
	must[Change](t)(s.Undo(ctx, p.ID, 0, noon))
	if count() != 2 {
		t.Error("undo did not bring the deleted variant back")
	}
	another := must[Saved[model.Variant]](t)(s.CreateVariant(ctx, p.ID, v.Value, "another", noon))
	if another.ID == made.ID {
		t.Error("an id was used twice")
	}
	for _, c := range must[[]FullChange](t)(s.FullChanges(ctx, p.ID, 0, 2)) {
		if !c.Created {
			t.Errorf("not said to be made: %+v", c)
		}
	}
}

// TestDeletedProjectIsNoStep: bringing a project back is done in the list of projects, and undo goes on where it was.
func TestDeletedProjectIsNoStep(t *testing.T) {
	s := fresh(t)
	ctx := t.Context()
	p, v := sampled(t, s)
	must[Saved[model.Variant]](t)(s.SaveVariant(ctx, v.ID, lifting(v.Value, 3), Edit{Revision: v.Revision, Said: "three"}, noon))
	if err := s.DeleteProject(ctx, p.ID, p.Revision, "", noon); err != nil {
		t.Fatal(err)
	}
	must[Saved[model.Project]](t)(s.RestoreProject(ctx, p.ID, "", noon))
	if got := must[Change](t)(s.Undo(ctx, p.ID, 0, noon)); got.Said != "three" {
		t.Errorf("undid %+v", got)
	}
}

// TestJoin: saves of one field from one page within a minute are one step; anything else is a step of its own.
func TestJoin(t *testing.T) {
	type save struct {
		after       time.Duration // since noon
		page, field string
	}
	for name, c := range map[string]struct {
		saves []save
		steps int
	}{
		"same field":           {[]save{{0, "p", "f"}, {time.Second, "p", "f"}, {59 * time.Second, "p", "f"}}, 1},
		"other field":          {[]save{{0, "p", "f"}, {time.Second, "p", "g"}, {2 * time.Second, "p", "f"}}, 3},
		"other page":           {[]save{{0, "p", "f"}, {time.Second, "q", "f"}}, 2},
		"no field":             {[]save{{0, "p", ""}, {time.Second, "p", ""}}, 2},
		"no page":              {[]save{{0, "", "f"}, {time.Second, "", "f"}}, 2},
		"a minute later":       {[]save{{0, "p", "f"}, {time.Minute, "p", "f"}}, 2},
		"a minute in all":      {[]save{{0, "p", "f"}, {40 * time.Second, "p", "f"}, {80 * time.Second, "p", "f"}}, 2},
		"the clock went back":  {[]save{{0, "p", "f"}, {-time.Hour, "p", "f"}}, 2},
		"again after a minute": {[]save{{0, "p", "f"}, {61 * time.Second, "p", "f"}, {62 * time.Second, "p", "f"}}, 2},
	} {
		t.Run(name, func(t *testing.T) {
			s := fresh(t)
			ctx := t.Context()
			p, v := sampled(t, s)
			first, old := v, v
			for i, at := range c.saves {
				old = v
				e := Edit{Revision: v.Revision, Page: at.page, Field: at.field}
				v = must[Saved[model.Variant]](t)(s.SaveVariant(ctx, v.ID, lifting(v.Value, float64(10+i)), e, noon.Add(at.after)))
			}
			if _, err := s.SaveVariant(ctx, v.ID, v.Value, Edit{Revision: old.Revision}, noon); !errors.Is(err, ErrStale) {
				t.Errorf("a page that shows a replaced revision saved over it: %v", err)
			}
			n := 0
			for undo, _ := offered(t, s, p.ID); undo != nil; undo, _ = offered(t, s, p.ID) {
				must[Change](t)(s.Undo(ctx, p.ID, undo.Seq, noon))
				n++
			}
			if n != c.steps {
				t.Errorf("%d steps, want %d", n, c.steps)
			}
			if got := must[Saved[model.Variant]](t)(s.Variant(ctx, v.ID)); !reflect.DeepEqual(got.Value, first.Value) {
				t.Error("undo did not lead back to the beginning")
			}
		})
	}
}

// TestJoinNeverEatsAStep: a save after an undo, after a save elsewhere, or onto what the project came with, joins
// nothing.
func TestJoinNeverEatsAStep(t *testing.T) {
	s := fresh(t)
	ctx := t.Context()
	p, v := sampled(t, s)
	save := func(travel float64) {
		t.Helper()
		v = must[Saved[model.Variant]](t)(s.Variant(ctx, v.ID))
		v = must[Saved[model.Variant]](t)(s.SaveVariant(ctx, v.ID, lifting(v.Value, travel), Edit{Revision: v.Revision, Page: "p", Field: "f"}, noon))
	}
	save(3)
	must[Saved[model.Project]](t)(s.SaveProject(ctx, p.ID, model.Project{Name: "else"}, Edit{Revision: p.Revision, Page: "p", Field: "f"}, noon))
	save(4)
	must[Change](t)(s.Undo(ctx, p.ID, 0, noon))
	save(5)
	must[Change](t)(s.Undo(ctx, p.ID, 0, noon))
	must[Change](t)(s.Redo(ctx, p.ID, 0, noon))
	save(6)
	var back []float64
	for undo, _ := offered(t, s, p.ID); undo != nil; undo, _ = offered(t, s, p.ID) {
		must[Change](t)(s.Undo(ctx, p.ID, undo.Seq, noon))
		back = append(back, travel(must[Saved[model.Variant]](t)(s.Variant(ctx, v.ID)).Value))
	}
	if want := []float64{5, 3, 3, 2.4}; !reflect.DeepEqual(back, want) {
		t.Errorf("undo led back over %v, want %v", back, want)
	}
}

// What was saved together is one step: undo takes both back, redo brings both, with a restart between, and again. A step of its own
// before and after is taken alone. Where one of the two is stale, neither is saved.
func TestSavedTogetherIsOneStep(t *testing.T) {
	s := fresh(t)
	ctx := t.Context()
	p, v := sampled(t, s)
	state := func() model.Document { return must[model.Document](t)(s.Export(ctx, p.ID)) }
	first := state()
	p.Value.Name = "alone"
	p = must[Saved[model.Project]](t)(s.SaveProject(ctx, p.ID, p.Value, Edit{Revision: p.Revision, Said: "alone"}, noon))
	before := state()
	p.Value.Name = "together"
	both := func(variant, project int64) error {
		return s.SaveTogether(ctx, v.ID, lifting(v.Value, 77), Edit{Revision: variant, Said: "of the variant"}, p.ID, p.Value, Edit{Revision: project, Said: "of both"}, later(1))
	}
	if err := both(v.Revision, p.Revision-1); !errors.Is(err, ErrStale) || !reflect.DeepEqual(state(), before) {
		t.Fatalf("a stale project: %v, or the variant was saved alone", err)
	}
	if err := both(v.Revision, p.Revision); err != nil {
		t.Fatal(err)
	}
	after := state()
	if after.Project.Name != "together" || reflect.DeepEqual(after.Variants, before.Variants) {
		t.Fatal("both are not saved")
	}
	for n := range 3 {
		u, _ := offered(t, s, p.ID)
		if got := must[Change](t)(s.Undo(ctx, p.ID, u.Seq, later(2+n))); got.Said != "of both" || !reflect.DeepEqual(state(), before) {
			t.Fatalf("undo %d of %q: another state", n, got.Said)
		}
		s = reopened(t, s)
		_, r := offered(t, s, p.ID)
		if r == nil {
			t.Fatalf("%d: nothing to redo", n)
		}
		must[Change](t)(s.Redo(ctx, p.ID, r.Seq, later(2+n)))
		if !reflect.DeepEqual(state(), after) {
			t.Fatalf("redo %d: another state", n)
		}
	}
	must[Change](t)(s.Undo(ctx, p.ID, 0, later(9)))
	if got := must[Change](t)(s.Undo(ctx, p.ID, 0, later(9))); got.Said != "alone" || !reflect.DeepEqual(state(), first) {
		t.Errorf("the step before is %q, or not taken alone", got.Said)
	}
}
