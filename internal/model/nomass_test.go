package model_test

import (
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/search"
	"duskweight/internal/model/unit"
)

// Where the large figure says that no mass would do, ten thousand times the mass carries no night either (a million times would
// outlast the twenty years that are run for a settled one); where it names a mass,
// the search for it does not say that the sun cannot fill it.
func TestNoMassIsNone(t *testing.T) {
	seen := map[bool]int{}
	for _, place := range []string{"Denver, Colorado", "Luxembourg"} {
		at, ok := catalog.Climate(place)
		if !ok {
			t.Fatal(place)
		}
		for _, hours := range []unit.Duration{1, 4, 10} {
			for _, watts := range []unit.Power{1, 3, 10, 20} {
				doc := catalog.Start(catalog.Answers{Name: "Cabin", Place: at, HeavyName: "Sand", Mass: 160, Height: 2.3, Lamps: 1, LampPower: watts, Hours: hours * unit.Hour, Seed: 1})
				g := model.Prepare(doc.Project)
				r := g.Evaluate(doc.Variants[0])
				seen[!r.Facts.NoMass.IsZero()]++
				if r.Facts.NoMass.IsZero() {
					continue
				}
				if huge := g.Evaluate(search.Grown(doc.Variants[0], "mass", 1e4)); huge.Verdict == model.CarriesNight {
					t.Errorf("%s, %v h of %v W: %q, and ten thousand times as much carries the night", place, hours, watts, r.Facts.NoMass)
				}
				if !strings.Contains(r.Facts.NoMass.String(), "W") {
					t.Errorf("%q", r.Facts.NoMass)
				}
			}
		}
	}
	// Without anything that uses power all the time, and with sun enough, a thousand times the mass carries the night.
	at, _ := catalog.Climate("Denver, Colorado")
	for _, watts := range []unit.Power{13, 15, 18, 20} {
		doc := catalog.Start(catalog.Answers{Name: "Cabin", Place: at, HeavyName: "Sand", Mass: 160, Height: 2.3, Lamps: 1, LampPower: 25, Hours: 2 * unit.Hour, Seed: 1})
		doc.Project.Load.Appliances[0].Power = unit.Of(watts)
		v := doc.Variants[0]
		v.Controller.Night, v.Panels[0].Power = unit.Of[unit.Power](0), unit.Of[unit.Power](600)
		g := model.Prepare(doc.Project)
		r := g.Evaluate(v)
		seen[!r.Facts.NoMass.IsZero()]++
		if huge := g.Evaluate(search.Grown(v, "mass", 1e3)); !r.Facts.NoMass.IsZero() || huge.Verdict != model.CarriesNight {
			t.Errorf("%v W: %q, and a thousand times as much %s", watts, r.Facts.NoMass, huge.Verdict)
		}
	}
	if t.Logf("%v", seen); seen[true] < 3 || seen[false] < 3 {
		t.Errorf("only %v", seen)
	}
}
