package catalog_test

import (
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/load"
	"duskweight/internal/model/unit"
)

// The battery of the worked example has a verdict. With a fridge that is essential and whose hours nobody knows there is no
// verdict, and its first sentence says why; one that is only nice to have withholds nothing.
func TestUncountedWithholdsTheVerdict(t *testing.T) {
	doc := catalog.Sample()
	doc.Variants = doc.Variants[1:2]
	first := func(fridges ...load.Appliance) (verdict, says string) {
		d := doc
		d.Project.Load.Appliances = append(doc.Project.Load.Appliances[:len(doc.Project.Load.Appliances):len(doc.Project.Load.Appliances)], fridges...)
		r := model.Evaluate(d, "2026-11-28").Variants[0]
		return r.Verdict, r.Headline[0].String()
	}
	fridge := load.Appliance{Name: "Fridge", Power: unit.Of[unit.Power](80), Count: unit.Of[unit.Count](1), Supply: load.SupplyDc, Priority: load.PriorityEssential}
	nice := fridge
	nice.Priority = load.PriorityNice
	if v, says := first(); v == "" {
		t.Fatalf("without a fridge: %q, %q", v, says)
	}
	if v, says := first(fridge); v != "" || says != "When “Fridge” runs is not known, so it is not counted." {
		t.Errorf("with a fridge: %q, %q", v, says)
	}
	if v, says := first(fridge, fridge, fridge); v != "" || !strings.HasSuffix(says, "it is not counted. 2 more essential devices are not counted either.") {
		t.Errorf("with three: %q, %q", v, says)
	}
	if v, says := first(nice); v == "" {
		t.Errorf("with one that is nice to have: %q, %q", v, says)
	}
}
