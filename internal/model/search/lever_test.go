package search_test

import (
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/search"
)

// The laws of the year run, on the sample: with one store, a fifth less load or a quarter more sun never takes a night away
// and never leaves more missing; more battery neither. The first lever is the one with most nights.
func TestLevers(t *testing.T) {
	doc := catalog.Sample()
	g := model.Prepare(doc.Project)
	want := [][]string{{"mass", "height", "panels", "load"}, {"battery", "panels", "load"}, {"mass", "height", "battery", "panels", "load"}}
	for i, v := range doc.Variants {
		levers, err := search.Levers(t.Context(), g, v, g.Evaluate(v))
		if err != nil {
			t.Fatal(err)
		}
		has := map[string]bool{}
		for k, l := range levers {
			has[l.What] = true
			if k > 0 && l.Nights > levers[k-1].Nights {
				t.Errorf("%s: %s with %d nights stands under %s with %d", v.Name, l.What, l.Nights, levers[k-1].What, levers[k-1].Nights)
			}
			one := len(v.Stores) == 1
			if (l.What == "load" || l.What == "panels" && one || l.What == "battery" && one) && (l.Nights < 0 || l.Energy < 0) {
				t.Errorf("%s: %s: %d nights, %v J", v.Name, l.What, l.Nights, l.Energy)
			}
		}
		for _, w := range want[i] {
			if w == "battery" && len(v.Stores) > 1 && v.Stores[1].Cells == nil {
				continue
			}
			if !has[w] {
				t.Errorf("%s: %s was not tried (%v)", v.Name, w, levers)
			}
		}
	}
	// the lamps of the third variant are carried in part: less of them leaves less missing
	levers, err := search.Levers(t.Context(), g, doc.Variants[2], g.Evaluate(doc.Variants[2]))
	if err != nil {
		t.Fatal(err)
	}
	for _, l := range levers {
		if l.What == "load" && l.Energy <= 0 {
			t.Errorf("a fifth less load changes nothing: %+v", l)
		}
	}
	if none, err := search.Levers(t.Context(), model.Prepare(model.Project{}), doc.Variants[0], model.VariantResult{}); err != nil || none != nil {
		t.Errorf("without a place: %v, %v", none, err)
	}
}
