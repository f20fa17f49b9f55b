package search_test

import (
	"slices"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/search"
	"duskweight/internal/model/unit"
)

// The laws of the year run, on a battery alone: more panel never takes a night away, nor does more battery. Today's cell is
// the year of the design itself, and no cell that meets the target is cheaper than the best.
func TestSweep(t *testing.T) {
	doc := catalog.Sample()
	g := model.Prepare(doc.Project)
	v := doc.Variants[1]
	if free, err := search.SweepOf(t.Context(), g, v); err != nil || free.Best != nil || free.Cells[0][0].Cost.Is {
		t.Errorf("panels that are not on the list of parts count as free: %+v, %v", free.Best, err)
	}
	v.Parts = append(slices.Clone(v.Parts), cost.Part{Name: "Panel", Of: "panel", Price: unit.Of(unit.Money(80))})
	s, err := search.SweepOf(t.Context(), g, v)
	if err != nil || s.Store != "battery" {
		t.Fatal(s.Store, err)
	}
	now := g.Evaluate(v).Last
	// by hand: 200 for the battery and 8 for its cable, 9 for the fuse; 0.5 × 208 + 9 + 2 × 80
	if c := s.Cells[0][4]; float64(c.Cost.Val) != 273 {
		t.Errorf("half the battery with twice the panel: %v", c.Cost.Val)
	}
	met, below := 0, 0
	for i, row := range s.Cells {
		for j, c := range row {
			if i > 0 && c.Nights < s.Cells[i-1][j].Nights || j > 0 && c.Nights < row[j-1].Nights {
				t.Errorf("panel × %v, battery × %v: %d nights, fewer than with less", c.Panel, c.Size, c.Nights)
			}
			if c.Today && (c.Nights != now.NightsFull || c.Of != now.Nights) {
				t.Errorf("today: %d of %d, want %d of %d", c.Nights, c.Of, now.NightsFull, now.Nights)
			}
			if c.Meets != (float64(c.Nights) >= search.Target*float64(c.Of)) {
				t.Errorf("%+v", c)
			}
			if c.Meets {
				met++
				if !c.Cost.Is || s.Best == nil || c.Cost.Val < s.Best.Cost.Val {
					t.Errorf("%+v is cheaper than the best %+v", c, s.Best)
				}
			} else {
				below++
			}
		}
	}
	if met == 0 || below == 0 {
		t.Errorf("%d cells meet the target and %d do not: the sweep shows no border", met, below)
	}
	if only, err := search.SweepOf(t.Context(), g, doc.Variants[0]); err != nil || only.Store != "mass" || only.Best != nil {
		t.Errorf("a mass with parts that have no price: %q, best %+v, %v", only.Store, only.Best, err)
	}
	if none, err := search.SweepOf(t.Context(), model.Prepare(model.Project{}), v); err != nil || none.Cells != nil {
		t.Errorf("without a place: %+v, %v", none, err)
	}
}
