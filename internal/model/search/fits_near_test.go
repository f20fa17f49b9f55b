package search_test

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/search"
	"duskweight/internal/model/unit"
)

// What holds the top pulley is no part of a shelf: a hook that gives way stands apart and counts against no combination, so a
// hook of ten times the rating leaves the same combinations, and is named no more.
func TestFitsApart(t *testing.T) {
	p, v := boxOfParts()
	h := *v.Stores[0].Hoist
	h.Structure.HangerRating = unit.Of(unit.Mass(20).Weight())
	weak, err := search.FitsOf(t.Context(), model.Prepare(p), p, v.WithHoist(0, h), 0, 2)
	if err != nil {
		t.Fatal(err)
	}
	h.Structure.HangerRating = unit.Of(unit.Mass(5000).Weight())
	strong, err := search.FitsOf(t.Context(), model.Prepare(p), p, v.WithHoist(0, h), 0, 2)
	if err != nil {
		t.Fatal(err)
	}
	hook := func(f search.Fits) bool {
		return slices.ContainsFunc(f.Apart, func(r reason.Reason) bool { return r.ID == "hanger" && r.Word == "no" })
	}
	if !hook(weak) || hook(strong) {
		t.Errorf("the weak hook stands apart: %v, the strong one: %v", hook(weak), hook(strong))
	}
	of := func(f search.Fits) (out []string) {
		for _, one := range f.Found {
			out = append(out, fmt.Sprint(one.Combination))
		}
		return out
	}
	if a, b := of(weak), of(strong); !reflect.DeepEqual(a, b) || len(a) == 0 {
		t.Errorf("with a weak hook %v do, with a strong one %v", a, b)
	}
	addsUp(t, weak)
}

// A rope whose strength nobody knows is never among those that do: what is not known of it is said, with its field.
func TestFitsUnsure(t *testing.T) {
	p, v := boxOfParts()
	for i := range p.Shelf.Ropes {
		p.Shelf.Ropes[i].Rope.BreakingLoad = unit.Known[unit.Force]{}
	}
	f, err := search.FitsOf(t.Context(), model.Prepare(p), p, v, 0, 2)
	if err != nil {
		t.Fatal(err)
	}
	if f.Do != 0 || len(f.Unsure) == 0 {
		t.Fatalf("%d do, unsure %v", f.Do, f.Unsure)
	}
	for i := range p.Shelf.Ropes {
		if at := fmt.Sprintf("shelf.ropes[%d].rope.breaking_load_n", i); !slices.ContainsFunc(f.Unsure, func(u search.Unsure) bool { return u.Path == at }) {
			t.Errorf("%s is not named: %v", at, f.Unsure)
		}
	}
	addsUp(t, f)
}

// A rope with a little less strength than the hoist needs is a near miss, and the cure is to be true: a rope of the strength
// that the cure names, which is at most a quarter more, makes the same combination do.
func TestNearestIsCured(t *testing.T) {
	p, v := boxOfParts()
	p.Shelf.Ropes = p.Shelf.Ropes[:1]
	needs := 0.0
	{ // a rope that gives way by a tenth
		f, err := search.FitsOf(t.Context(), model.Prepare(p), p, v, 0, 2)
		if err != nil || len(f.Found) == 0 {
			t.Fatalf("%v: nothing does", err)
		}
		for _, c := range model.Prepare(p).Hoist(f.Found[0].With(p, v, 0), 0).Checks {
			if at := c.Strength(); at == "rope.breaking_load_n" && c.ID == "rope" {
				needs = max(needs, float64(c.Use.Val)*float64(p.Shelf.Ropes[0].Rope.BreakingLoad.Val))
			}
		}
	}
	p.Shelf.Ropes[0].Rope.BreakingLoad = unit.Of(unit.Force(needs / 1.1))
	g := model.Prepare(p)
	run, err := search.NewFits(t.Context(), g, p, v, 0, 2)
	if err != nil {
		t.Fatal(err)
	}
	if err := run.Until(t.Context(), run.Size(), 2, nil); err != nil {
		t.Fatal(err)
	}
	if f := run.Fits(); f.Do != 0 {
		t.Fatalf("%d do with the weak rope", f.Do)
	}
	misses, err := run.Nearest(t.Context(), 2)
	if err != nil || len(misses) == 0 {
		t.Fatalf("%v: no near miss", err)
	}
	bought := false
	for _, m := range misses {
		for _, c := range m.Cures {
			if by := math.Abs(c.To/c.From - 1); by > search.CureWithin+1e-9 || by == 0 {
				t.Errorf("%s: by %v", c.What, by)
			}
			if c.What != search.WhatRope {
				continue
			}
			bought = true
			if c.To < needs || !c.Buy {
				t.Errorf("a rope of %v N, and %v N are needed", c.To, needs)
			}
			q := p
			q.Shelf.Ropes = slices.Clone(p.Shelf.Ropes)
			q.Shelf.Ropes[0].Rope.BreakingLoad = unit.Of(unit.Force(c.To))
			f, err := search.FitsOf(t.Context(), model.Prepare(q), q, v, 0, 2)
			if err != nil || !slices.ContainsFunc(f.Found, func(o search.Fit) bool { return reflect.DeepEqual(o.Combination, m.Combination) || f.Do > 0 }) {
				t.Errorf("%v: %v does not do with that rope", err, m.Combination)
			}
		}
	}
	if !bought {
		t.Errorf("no cure names the rope: %+v", misses)
	}
}

// A shelf of more combinations than are tried: the first are, and how many there are is said. 40 motors, drums, ropes and
// kinds of pulley, and 40 kinds of stage of which one each lies there: rows of up to four are 40 + 40·39 + 40·39·38 +
// 40·39·38·37.
func TestFitsTooMany(t *testing.T) {
	if testing.Short() {
		t.Skip("five million combinations")
	}
	p, v := boxOfParts()
	s := &p.Shelf
	s.Stages = s.Stages[:1]
	s.Stages[0].Count = unit.Of[unit.Count](1)
	for len(s.Motors) < 40 {
		s.Motors = append(s.Motors, s.Motors[0])
	}
	for len(s.Stages) < 40 {
		s.Stages = append(s.Stages, s.Stages[0])
	}
	for len(s.Drums) < 40 {
		s.Drums = append(s.Drums, s.Drums[0])
	}
	for len(s.Ropes) < 40 {
		s.Ropes = append(s.Ropes, s.Ropes[0])
	}
	for len(s.Pulleys) < 40 {
		s.Pulleys = append(s.Pulleys, s.Pulleys[0])
	}
	run, err := search.NewFits(t.Context(), model.Prepare(p), p, v, 0, 2)
	if err != nil {
		t.Fatal(err)
	}
	f := run.Fits()
	if want := 40 * 40 * 40 * 40 * (40 + 40*39 + 40*39*38 + 40*39*38*37); f.Of != want || f.Tried != 5000000 || f.Longest != 1 {
		t.Errorf("%d of %d tried in rows of %d, want 5 000 000 of %d in rows of 1", f.Tried, f.Of, f.Longest, want)
	}
	addsUp(t, f)
}
