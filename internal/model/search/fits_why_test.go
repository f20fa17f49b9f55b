package search_test

import (
	"strings"
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/search"
	"duskweight/internal/model/unit"
)

// Why combinations do not do has its figures, in the reader's units, and two that differ only in them are one cause: two drums
// of 8 and 9 mm, thinner than both ropes of 10 mm. 8 mm is 0.315 in, 10 mm is 0.394 in.
func TestFitsWhyHasFigures(t *testing.T) {
	p, v := boxOfParts()
	for i := range p.Shelf.Ropes {
		p.Shelf.Ropes[i].Rope.Diameter = unit.Of[unit.Length](0.010)
	}
	drum := p.Shelf.Drums[0]
	p.Shelf.Drums = nil
	for _, d := range []unit.Length{0.008, 0.009} {
		thin := drum
		thin.Drum.Diameter, thin.Drum.HubOuter = unit.Of(d), unit.Known[unit.Length]{}
		p.Shelf.Drums = append(p.Shelf.Drums, thin)
	}
	p.Shelf.Stages = []model.SpareStage{{Stage: lift.Stage{Kind: lift.StageBox, Ratio: unit.Of[unit.Ratio](100), Efficiency: unit.Of[unit.Ratio](0.7)}}}
	fits, err := search.FitsOf(t.Context(), model.Prepare(p), p, v, 0, 1)
	if err != nil || len(fits.Why) != 1 {
		t.Fatalf("%v, %v, %q", err, fits.Why, fits.Lacks)
	}
	why := fits.Why[0]
	if want := len(p.Shelf.Motors) * 2 * len(p.Shelf.Ropes) * len(p.Shelf.Pulleys); why.Count != want || !why.Differ || fits.Tried != want {
		t.Errorf("%d of %d tried, differ %v; want %d", why.Count, fits.Tried, why.Differ, want)
	}
	for sys, want := range map[unit.System]string{unit.Metric: "the drum (8 mm) must be thicker than its rope (10 mm)", unit.Imperial: "the drum (0.315 in) must be thicker than its rope (0.394 in)"} {
		if got := strings.ReplaceAll(why.Say.In(sys), unit.Space, " "); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
