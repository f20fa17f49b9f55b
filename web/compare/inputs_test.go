package compare_test

import (
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web"
	"duskweight/web/compare"
)

// Only the inputs that differ among those who have them are shown, and no cell is blank.
func TestCompareInputs(t *testing.T) {
	doc := catalog.Sample()
	var vs []store.Saved[model.Variant]
	for _, v := range doc.Variants {
		vs = append(vs, store.Saved[model.Variant]{Value: v})
	}
	differ, all := 0, 0
	for _, g := range compare.InputGroups(web.AllTables(), vs, false, unit.Metric) {
		for _, row := range g.Rows {
			differ++
			if !row.Differs {
				t.Errorf("%s: %s does not differ", g.Title, row.Name)
			}
		}
	}
	for _, g := range compare.InputGroups(web.AllTables(), vs, true, unit.Metric) {
		for _, row := range g.Rows {
			all++
			for _, c := range row.Cells {
				if c.Text == "" {
					t.Errorf("%s: %s has a blank cell", g.Title, row.Name)
				}
			}
		}
	}
	if differ == 0 || differ >= all/3 {
		t.Errorf("%d of %d inputs differ", differ, all)
	}
}
