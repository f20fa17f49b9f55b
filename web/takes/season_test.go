package takes

import (
	"fmt"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/web/page"
)

// The nights of the months add up to those of the year, and the sentence names the first row of the table.
func TestSeason(t *testing.T) {
	kinds := page.Kinds{{Row: model.CellsKind(), Year: page.YearOf{End: func(s model.StoreResult) string {
		return unit.Rounded(float64(model.CellsOf(s).Life.Years.Val), 2) + " years"
	}}}}
	doc := catalog.Sample()
	g := model.Prepare(doc.Project)
	v := doc.Variants[1]
	v.Stores = append([]model.Store(nil), v.Stores...)
	b := *v.Stores[0].Cells
	b.Capacity.Val *= 0.45 // enough in summer, not in winter
	v.Stores[0].Cells = &b
	r := g.Evaluate(v)
	is, err := find(t.Context(), g, v, r)
	if err != nil {
		t.Fatal(err)
	}
	s := seasonOf(kinds, v, r, is.levers, unit.Metric)
	short := 0
	for _, m := range s.Months {
		var name string
		var n, of int
		if _, err := fmt.Sscanf(strings.Replace(m, ":", "", 1), "%s %d of %d nights are not full", &name, &n, &of); err != nil {
			t.Fatal(m, err)
		}
		short += n
	}
	if short == 0 || short == r.Year.Nights || short != r.Year.Nights-r.Year.NightsServed {
		t.Errorf("%d nights short by month, %d in the year of %d", short, r.Year.Nights-r.Year.NightsServed, r.Year.Nights)
	}
	if len(s.Levers) != 3 || !strings.Contains(strings.ToLower(s.Best), strings.ToLower(s.Levers[0][0])) || s.Look != "" {
		t.Errorf("%q of %q, %q", s.Best, s.Levers, s.Look)
	}
	if len(s.Ends) == 0 || !strings.Contains(s.Ends[0].Value, "years") {
		t.Errorf("%q", s.Ends)
	}

	nowhere := model.Prepare(model.Project{})
	none, err := find(t.Context(), nowhere, doc.Variants[0], nowhere.Evaluate(doc.Variants[0]))
	bare := seasonOf(kinds, doc.Variants[0], nowhere.Evaluate(doc.Variants[0]), none.levers, unit.Metric)
	if err != nil || len(bare.Levers) > 0 || !strings.Contains(bare.Best, "No year") || bare.Look == "" {
		t.Errorf("without a place: %+v, %v", bare, err)
	}
}
