package hoist

import (
	"fmt"
	"strconv"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/web/page"
)

// tryable are the numbers of a lifted mass that the overview lets its reader try. The ends of the sliders are our own
// judgement of what makers lift.
var tryable = []page.Tryable{
	{
		Name: "mass", Label: "Mass", Quantity: unit.Masses, Least: 5, Most: 500, Low: "a rucksack", High: "a cow",
		Of: func(st model.Store) (float64, bool) { m := st.Hoist.Hangs(); return float64(m.Val), m.Is },
		Set: func(st model.Store, si float64) (model.Store, []string) {
			h := st.Hoist.Hanging(unit.Mass(si))
			var paths []string
			for i := range h.Mass {
				paths = append(paths, "mass["+strconv.Itoa(i)+"].mass_kg")
			}
			return model.Store{Hoist: &h}, paths
		},
		Note: func(st model.Store) string {
			if n := len(st.Hoist.Mass); n > 1 {
				return fmt.Sprintf("%d pieces: all are scaled together.", n)
			}
			return ""
		},
	},
	{
		Name: "height", Label: "How high", Quantity: unit.Heights, Least: 1, Most: 12, Low: "a table", High: "a barn",
		Of: func(st model.Store) (float64, bool) { return float64(st.Hoist.Travel.Val), st.Hoist.Travel.Is },
		Set: func(st model.Store, si float64) (model.Store, []string) {
			h := *st.Hoist
			h.Travel = unit.Of(unit.Length(si))
			return model.Store{Hoist: &h}, []string{"travel_m"}
		},
	},
}
