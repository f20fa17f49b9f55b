package model

import (
	"slices"
	"testing"

	"duskweight/internal/model/load"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// tiltedPlan is a place without a word of the night, and panels tilted by f.
func tiltedPlan(f func(*panel.Array)) (Ground, Variant) {
	p := Project{Seed: 5}
	p.Place = sun.Place{Latitude: unit.Of(50 * unit.Degree), Sky: sun.SkyDescribed, Described: sun.DescribedMixed}
	a := panel.Array{Name: "Roof", Count: unit.Of[unit.Count](2), Power: unit.Of[unit.Power](100), Azimuth: unit.Of(180 * unit.Degree)}
	f(&a)
	return Prepare(p), Variant{Panels: []panel.Array{a}, Controller: panel.Controller{Kind: panel.ControllerTracking}}
}

// Twelve equal tilts give the same year as one tilt, to the last bit, and need no one tilt beside them. What the panels bring with
// the best tilt of each month is more than with the best one.
func TestTiltedAnewOverTheYear(t *testing.T) {
	year := func(f func(*panel.Array)) []float64 {
		g, v := tiltedPlan(f)
		r := g.Evaluate(v)
		if !r.YearKnown {
			t.Fatal(r.WhyNoYear)
		}
		return r.Bus.Power
	}
	even := [12]unit.Angle{}
	for m := range even {
		even[m] = 0.9
	}
	one := year(func(a *panel.Array) { a.Tilt = unit.Of[unit.Angle](0.9) })
	if !slices.Equal(one, year(func(a *panel.Array) { a.TiltBy = &even })) {
		t.Error("twelve equal tilts differ from one")
	}
	g, _ := tiltedPlan(func(*panel.Array) {})
	s := g.Season()
	best := total(year(func(a *panel.Array) { a.Tilt = unit.Of(s.Fixed) }))
	if own := total(year(func(a *panel.Array) { a.Tilt, a.TiltBy = unit.Of(s.Fixed), &s.ByMonth })); own <= best {
		t.Errorf("tilted anew each month %v, at one tilt %v", own, best)
	}
	if c := (panel.Array{TiltBy: &even}).Copy(); c.TiltBy == &even {
		t.Error("a copy shares the tilts")
	}
}

// The best tilts are tried once for a sky: another load asks nothing of them, another place does.
func TestSeasonFollowsTheSky(t *testing.T) {
	g, _ := tiltedPlan(func(*panel.Array) {})
	first := g.Season()
	if want := sun.SeasonOf(g.Sky.Geometry, g.Project.Place, g.Sky); first != want {
		t.Errorf("%+v, want %+v", first, want)
	}
	lit := g.Project
	lit.Load.Appliances = []load.Appliance{{Name: "Lamp", Power: unit.Of[unit.Power](5), AfterDusk: unit.Yes}}
	if g.Loaded(lit).Season() != first {
		t.Error("another load turns the panels")
	}
	south := g.Project
	south.Place.Latitude = unit.Of(-30 * unit.Degree)
	if got := Prepare(south); got.Season() == first || got.Season() != sun.SeasonOf(got.Sky.Geometry, south.Place, got.Sky) {
		t.Error("another place keeps the tilts")
	}
}
