package model_test

import (
	"math"
	"testing"
	"time"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
)

// A day with a lifted mass: it is down when the sun has set and the way down is over. In Luxembourg (49.6° north, 6.1° east, clocks an
// hour ahead of UTC) the sun sets in the middle of June at 20:37 (almanac: 21:37 summer time). A
// hoist that takes no time up or down, and a plan without a year, have no such day.
func TestLiftDay(t *testing.T) {
	doc := catalog.Sample()
	g := model.Prepare(doc.Project)
	r := g.Evaluate(doc.Variants[0])
	store := r.Stores[0]
	d, ok := g.LiftDay(r, store, time.June)
	h := model.HoistOf(store)
	if !ok || d.Up != h.Drive.Raising.Time || d.Down != h.Drive.Lowering.Time || d.Up <= 0 || d.Down <= 0 {
		t.Fatalf("%+v, %v", d, ok)
	}
	if !d.Sunset.Is || math.Abs(float64(d.Sunset.Val-(20*unit.Hour+37*unit.Minute))) > float64(4*unit.Minute) || d.Done.Val != d.Sunset.Val+d.Down {
		t.Errorf("sunset at %g h, down at %g h", float64(d.Sunset.Val)/3600, float64(d.Done.Val)/3600)
	}
	for name, change := range map[string]func(){
		"no time up":   func() { h.Drive.Raising.Time = 0 },
		"no time down": func() { h.Drive.Lowering.Time = 0 },
		"no year":      func() { r.YearKnown = false },
	} {
		up, down := h.Drive.Raising.Time, h.Drive.Lowering.Time
		change()
		if _, ok := g.LiftDay(r, store, time.June); ok {
			t.Errorf("%s: a day", name)
		}
		h.Drive.Raising.Time, h.Drive.Lowering.Time, r.YearKnown = up, down, true
	}
	if _, ok := g.LiftDay(r, r.Stores[1], time.June); ok {
		t.Error("a battery has a day of lifting")
	}
}
