package compare_test

import (
	"slices"
	"strings"
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

// A mass that was typed as 140 kg is read in pounds with three digits: 140/0.45359237 = 308.647, so 309 lb. Two masses that would
// read the same, 140 and 140.1 kg (308.868 lb, 309 too), keep the digits that tell them apart.
func TestCompareTellsTypedInputs(t *testing.T) {
	label := func(kg ...float64) (cells []string) {
		var vs []store.Saved[model.Variant]
		for _, m := range kg {
			v := catalog.Sample().Variants[0]
			v.Stores = v.Stores[:1]
			h := *v.Stores[0].Hoist
			h.Structure.HangerRating = unit.Of(unit.Mass(m).Weight())
			v.Stores = []model.Store{{Hoist: &h}}
			vs = append(vs, store.Saved[model.Variant]{Value: v})
		}
		for _, g := range compare.InputGroups(web.AllTables(), vs, true, unit.Imperial) {
			for _, row := range g.Rows {
				if row.Name == "Hook or eye: working load" {
					for _, c := range row.Cells {
						cells = append(cells, strings.ReplaceAll(c.Text, unit.Space, " "))
					}
				}
			}
		}
		return cells
	}
	if got := label(140, 300); !slices.Equal(got, []string{"309 lb", "661 lb"}) {
		t.Errorf("140 and 300 kg: %q", got)
	}
	if got := label(140, 140.1); !slices.Equal(got, []string{"308.647 lb", "308.868 lb"}) {
		t.Errorf("140 and 140.1 kg: %q", got)
	}
}
