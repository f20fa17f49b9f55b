package model_test

import (
	"math"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/load"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// noSkyGives is the worked example with a December that no sky can give: 45 MJ/m² are more than fall outside the air there.
func noSkyGives() model.Project {
	p := catalog.Sample().Project
	m := *p.Place.Monthly
	m.GHI[11] = 45e6
	p.Place.Monthly = &m
	return p
}

// A month that no sky can give is named, with its path, and what does not need the sun is answered all the same: the appliances
// and the nights are those of the place with its own means.
func TestLoadWithoutSun(t *testing.T) {
	want := model.Evaluate(model.Document{Project: catalog.Sample().Project, Variants: catalog.Sample().Variants}, "").Answer()
	got := model.Evaluate(model.Document{Project: noSkyGives(), Variants: catalog.Sample().Variants}, "").Answer()
	if got.Sun.GHI.Is || len(got.Sun.WhyNot) != 1 || got.Sun.WhyNot[0].Path != "place.monthly.ghi_j_m2_day[11]" || !strings.Contains(got.Sun.WhyNot[0].Say, "December") {
		t.Errorf("%+v", got.Sun)
	}
	if got.Load.Appliances != want.Load.Appliances || got.Load.NightMean != want.Load.NightMean || got.Load.NightMax != want.Load.NightMax || !got.Load.NightMax.Is || len(got.Load.WhyNot) != 0 {
		t.Errorf("%+v, want %+v", got.Load, want.Load)
	}
	for _, v := range got.Variants {
		if v.WhyNoYear == nil || !strings.Contains(*v.WhyNoYear, "December") {
			t.Errorf("%s: %v", v.Name, v.WhyNoYear)
		}
	}
	for _, v := range want.Variants {
		if v.WhyNoYear != nil {
			t.Errorf("%s: %v", v.Name, *v.WhyNoYear)
		}
	}
}

// Without a latitude the appliances that keep to the clock are answered, and those that wait for dusk are named. By hand: a lamp
// of 10 W for three hours a day uses 10·3·3600·365 J a year.
func TestLoadWithoutPlace(t *testing.T) {
	lamp := load.Appliance{Name: "Lamp", Power: unit.Of[unit.Power](10), Count: unit.Of[unit.Count](1), From: unit.Of(19 * unit.Hour), To: unit.Of(22 * unit.Hour), Supply: load.SupplyDc, Priority: load.PriorityEssential, Purpose: load.ForLight}
	p := model.Project{Name: "nowhere", Load: load.Load{Appliances: []load.Appliance{lamp}}}
	a := model.Evaluate(model.Document{Project: p}, "").Answer()
	if math.Abs(float64(a.Load.Appliances.Val)-10*3*3600*365) > 1e-6 || a.Load.NightMean.Is || len(a.Load.WhyNot) != 1 || a.Load.WhyNot[0].Path != "place.latitude_rad" || len(a.Sun.WhyNot) == 0 {
		t.Errorf("%+v %+v", a.Load, a.Sun)
	}
	lamp.AfterDusk = unit.Yes
	p.Load.Appliances = append(p.Load.Appliances, lamp)
	a = model.Evaluate(model.Document{Project: p}, "").Answer()
	if a.Load.Appliances.Is || len(a.Load.WhyNot) != 2 || a.Load.WhyNot[0].Path != "load.appliances[1].after_dusk" || !strings.Contains(a.Load.WhyNot[0].Say, "Lamp waits for dusk") {
		t.Errorf("%+v", a.Load)
	}
}

// At 70° north the sun stays down from the end of November to the middle of January: this is said, and so is a shading outline
// that is not known. By hand: the sun's centre, at −δ below the equator, stays below the horizon where 90° − 70° < |δ|, that is
// |δ| > 20°, from 22 November to 20 January.
func TestPolarNightIsSaid(t *testing.T) {
	p := catalog.Sample().Project
	p.Place.Latitude = unit.Of(70 * unit.Degree)
	p.Place.Sky, p.Place.Monthly, p.Place.Described = sun.SkyDescribed, nil, sun.DescribedMixed
	a := model.Evaluate(model.Document{Project: p}, "").Answer()
	if len(a.Sun.Remarks) != 2 || a.Sun.Remarks[0].Path != "place.latitude_rad" || a.Sun.Remarks[1].Path != "place.horizon" {
		t.Fatalf("%+v", a.Sun.Remarks)
	}
	say := strings.ReplaceAll(a.Sun.Remarks[0].Say, unit.Space, " ")
	if !(strings.Contains(say, "from 22 November") || strings.Contains(say, "from 23 November") || strings.Contains(say, "from 21 November")) || !(strings.Contains(say, "to 19 January") || strings.Contains(say, "to 20 January") || strings.Contains(say, "to 21 January")) {
		t.Error(say)
	}
	p.Place.Latitude, p.Place.Horizon = unit.Of(60*unit.Degree), []sun.Horizon{{}}
	if a := model.Evaluate(model.Document{Project: p}, "").Answer(); len(a.Sun.Remarks) != 0 || !a.Sun.GHI.Is {
		t.Errorf("%+v", a.Sun)
	}
}
