package model

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"duskweight/internal/model/cell"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/load"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// inRange is a document that has one of each kind of value, all of them good.
func inRange() Document {
	hours := make([]float64, sun.YearHours)
	return Document{
		Edition: 1,
		Project: Project{
			Name:    "p\tof\nlines",
			Place:   sun.Place{Sky: "file", Horizon: []sun.Horizon{{Azimuth: 1, Altitude: 0.1}}, Indoor: &sun.Indoor{Mean: 10, Warmest: 7}},
			Load:    load.Load{Appliances: []load.Appliance{{Supply: "dc", Priority: "nice", Months: []unit.Count{1, 12}}}},
			Weather: &sun.Series{Hours: sun.YearHours, GHI: hours, DHI: hours, TAir: append([]float64{-10}, hours[1:]...)},
			Origins: Origins{"place.albedo": {Kind: "typical"}},
		},
		Variants: []Variant{{
			Controller: panel.Controller{Kind: "tracking"},
			Panels:     []panel.Array{{Shade: new([12]float64)}},
			Stores:     []Store{{Hoist: &lift.Hoist{Travel: unit.Of(unit.Length(3))}}, {Cells: &cell.Bank{Kind: "lfp"}}},
		}},
	}
}

func TestRangesHold(t *testing.T) {
	if ps := CheckRanges(inRange()); len(ps) > 0 {
		t.Error(ps)
	}
}

// TestRangesRefuse spoils one value at a time.
func TestRangesRefuse(t *testing.T) {
	for _, c := range []struct {
		spoil func(*Document)
		want  string
	}{
		{func(d *Document) { d.Variants[0].Stores[0].Hoist.Travel.Val = 0 },
			"variants[0].stores[0].hoist.travel_m: must be more than 0 and at most 1000; it is 0"},
		{func(d *Document) { d.Variants[0].Stores[0].Hoist.Drum.Diameter = unit.Of(unit.Length(-2)) },
			"variants[0].stores[0].hoist.drum.diameter_m: must be more than 0 and at most 5; it is -2"},
		{func(d *Document) { d.Variants[0].Stores[0].Hoist.Reeving.RopeParts = unit.Of(unit.Count(13)) },
			"variants[0].stores[0].hoist.reeving.rope_parts: must be at least 1 and at most 12; it is 13"},
		{func(d *Document) { d.Variants[0].Stores[0].Hoist.Travel.Val = unit.Length(math.NaN()) },
			"variants[0].stores[0].hoist.travel_m: must be a number"},
		{func(d *Document) { d.Project.Place.Latitude = unit.Of(unit.Angle(math.Inf(-1))) },
			"project.place.latitude_rad: must be a number"},
		{func(d *Document) { d.Project.Place.Horizon[0].Altitude = -0.1 },
			"project.place.horizon[0].altitude_rad: must be at least 0 and at most 1.5707963267948966; it is -0.1"},
		{func(d *Document) { d.Project.Place.Indoor.Warmest = 0 },
			"project.place.indoor.warmest_month: must be at least 1 and at most 12; it is 0"},
		{func(d *Document) { d.Project.Load.Appliances[0].Months[1] = 13 },
			"project.load.appliances[0].months[1]: must be at least 1 and at most 12; it is 13"},
		{func(d *Document) { d.Variants[0].Panels[0].Shade[11] = 1.5 },
			"variants[0].panels[0].shade[11]: must be at least 0 and at most 1; it is 1.5"},
		{func(d *Document) { d.Project.Seed = 1 << 53 },
			"project.seed: must be at least 0 and at most 9007199254740991; it is 9007199254740992"},
		{func(d *Document) { d.Project.Place.Sky = "" },
			"project.place.sky: is empty; choose monthly, described, file or files"},
		{func(d *Document) { d.Project.Place.Described = "grey" },
			`project.place.described: must be desert, dry, mixed, cloudy, very_cloudy or nothing; it is "grey"`},
		{func(d *Document) { d.Project.Origins["place.albedo"] = Origin{Kind: "sworn"} },
			`project.origins.place.albedo.kind: must be typical, catalog or measured; it is "sworn"`},
		{func(d *Document) { d.Project.Origins["a\nb"] = Origin{} }, "project.origins: has a key that is too long or cannot be printed"},
		{func(d *Document) { d.Project.Weather.TAir[8759] = 99 },
			"project.weather.t_air_c[8759]: must be at least -95 and at most 65; it is 99"},
		{func(d *Document) { d.Project.Weather.Hours = 24 },
			"project.weather.hours: must be 8760; it is 24"},
		{func(d *Document) { d.Project.Name = strings.Repeat("ü", MaxText+1) },
			"project.name: must be at most 2000 characters; it has 2001"},
		{func(d *Document) { d.Project.Name = "a\x00b" }, "project.name: holds characters that cannot be printed"},
		{func(d *Document) { d.Project.Name = "a\u202egnp.exe" }, "project.name: holds characters that cannot be printed"},
		{func(d *Document) { d.Project.Name = "\u2066a\u2069" }, "project.name: holds characters that cannot be printed"},
		{func(d *Document) { d.Project.Origins["a\u202db"] = Origin{} }, "project.origins: has a key that is too long or cannot be printed"},
		{func(d *Document) { d.Project.Name = "a\xffb" }, "project.name: holds characters that cannot be printed"},
	} {
		d := inRange()
		c.spoil(&d)
		if ps := CheckRanges(d); len(ps) == 0 || ps.Error() != c.want {
			t.Errorf("got %v\nwant %s", ps, c.want)
		}
		if ps := CheckRanges(&d); len(ps) != 1 {
			t.Errorf("by pointer: %v", ps)
		}
	}
}

// TestRangesForgotten: a value that is not known has no range to keep, whatever stands in it.
func TestRangesForgotten(t *testing.T) {
	d := inRange()
	d.Variants[0].Stores[0].Hoist.Travel = unit.Known[unit.Length]{Val: -5}
	if ps := CheckRanges(d); len(ps) > 0 {
		t.Error(ps)
	}
}

// TestRangesReachEverything spoils every known number there can be, one at a time, and finds each.
func TestRangesReachEverything(t *testing.T) {
	h := new(lift.Hoist)
	h.Train.Stages = make([]lift.Stage, 1)
	h.Lower.Loads = make([]lift.DCLoad, 1)
	h.Mass = make([]lift.Piece, 1)
	h.Structure.Posts = make([]lift.Post, 1)
	h.Reeving.Sheaves = make([]lift.Sheave, 1)
	h.Machine.BenchR = make([]lift.Bench, 1)
	n := 0
	var spoil func(v reflect.Value)
	spoil = func(v reflect.Value) {
		switch {
		case IsKnown(v.Type()) && v.FieldByName("Val").Kind() == reflect.Float64:
			v.FieldByName("Is").SetBool(true)
			v.FieldByName("Val").SetFloat(math.NaN())
			n++
		case IsKnown(v.Type()):
			v.FieldByName("Is").SetBool(true)
			v.FieldByName("Val").SetInt(-1)
			n++
		case v.Kind() == reflect.Struct:
			for i := range v.NumField() {
				spoil(v.Field(i))
			}
		case v.Kind() == reflect.Slice:
			for i := range v.Len() {
				spoil(v.Index(i))
			}
		}
	}
	spoil(reflect.ValueOf(h).Elem())
	found := 0
	for _, p := range CheckRanges(h) {
		if strings.HasPrefix(p.Say.String(), "must be") && !strings.Contains(p.Say.String(), `"`) {
			found++
		}
	}
	if found != n || n < 100 {
		t.Errorf("%d of %d spoilt numbers were found", found, n)
	}
}
