package model_test

import (
	"math"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
)

// Peukert: a battery is rated at the mean current that the very year draws from it, not at the first guess. The year is run
// again with what it drew, two times at most, so a little of the difference is left: under 2 % here, 20 % with the first guess.
func TestBatteryIsRatedAtItsOwnYear(t *testing.T) {
	doc := catalog.Sample()
	g := model.Prepare(doc.Project)
	seen := 0
	for _, v := range doc.Variants {
		if v.Stores[0].Cells == nil {
			continue
		}
		b := *v.Stores[0].Cells
		b.Capacity, b.Peukert, b.RatedHours = unit.Of(b.Capacity.Val/40), unit.Of[unit.Ratio](1.2), unit.Of[unit.Duration](20*unit.Hour) // drawn hard
		v.Stores = []model.Store{{Cells: &b}}
		c := g.Evaluate(v).Stores[0].Part.(*model.CellsResult)
		if share := c.Resolved.Rated(c.Current * 1.1); math.Abs(float64(share/c.Rated-1)) < 1e-3 {
			continue // this one gives as much whatever the current
		}
		seen++
		if again := c.Resolved.Rated(c.Current); math.Abs(float64(again/c.Rated-1)) > 0.02 {
			t.Errorf("rated %v; at the year's mean current of %v A it is %v", c.Rated, c.Current, again)
		}
	}
	if seen == 0 {
		t.Fatal("no battery sees its current")
	}
}
