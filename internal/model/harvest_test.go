package model_test

import (
	"reflect"
	"slices"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// What a ground keeps of the sun on some panels is theirs alone: with any field of panels or controller changed in place, the
// ground that saw the variant before gives what a fresh one gives, and after the change is taken back the same again.
func TestHarvestFollowsEveryField(t *testing.T) {
	doc := catalog.Sample()
	v := doc.Variants[0]
	v.Panels[0].Shade = &[12]float64{0.1, 0.2}
	v.Panels[0].Sheet = &panel.Sheet{Isc: unit.Of[unit.Current](6.1), Voc: unit.Of[unit.Voltage](22.5), Imp: unit.Of[unit.Current](5.6), Vmp: unit.Of[unit.Voltage](18),
		Alpha: unit.Of[unit.PerKelvin](0.0005), Beta: unit.Of[unit.PerKelvin](-0.003), Cells: unit.Of[unit.Count](36)}
	v.Controller.Curve = []panel.Efficiency{{Load: 0, Efficiency: 0.8}, {Load: 1, Efficiency: 0.9}}
	g := model.Prepare(doc.Project)
	year := func(g model.Ground) (model.VariantResult, *panel.Bus) {
		r := g.Evaluate(v)
		return r, r.Bus
	}
	before, _ := year(g)
	if !before.YearKnown {
		t.Fatal(before.WhyNoYear)
	}
	differ := 0
	check := func(what string, change func()) {
		change()
		old, a := year(g)
		_, b := year(g.Fresh())
		if old.YearKnown != (b != nil) || !reflect.DeepEqual(a, b) {
			t.Errorf("%s: a kept year is not that of these panels", what)
		}
		if !reflect.DeepEqual(a, before.Bus) {
			differ++
		}
	}
	shade, curve := v.Panels[0].Shade, v.Controller.Curve
	check("shade", func() { shade[0] = 0.5 })
	shade[0] = 0.1
	check("curve", func() { curve[1].Efficiency = 0.7 })
	curve[1].Efficiency = 0.9
	for _, s := range append(spots(reflect.ValueOf(&v.Panels), "panels", ""), spots(reflect.ValueOf(&v.Controller), "controller", "")...) {
		for kind, change := range s.changes(spot{at: reflect.ValueOf(struct{}{})}) {
			old := reflect.New(s.at.Type()).Elem()
			old.Set(s.at)
			check(s.path+" "+kind, change)
			s.at.Set(old)
		}
	}
	if differ < 20 {
		t.Errorf("%d changes moved the sun on the line: the test is blind", differ)
	}
	if after, _ := year(g); !reflect.DeepEqual(after.Bus, before.Bus) {
		t.Error("the plan as it was gives another year than before")
	}
}

// Two variants with the same panels share one year of sun; load and stores leave it as it is.
func TestHarvestIsShared(t *testing.T) {
	doc := catalog.Sample()
	g := model.Prepare(doc.Project)
	a := g.Evaluate(doc.Variants[0])
	other := doc.Variants[0]
	other.Stores = doc.Variants[1].Stores
	if b := g.Evaluate(other); a.Bus != b.Bus {
		t.Error("the same panels are computed twice")
	}
	if b := g.Scaled(2).Evaluate(other); a.Bus != b.Bus {
		t.Error("another load computes the panels again")
	}
	other.Panels = append(other.Panels[:0:0], other.Panels...)
	other.Panels[0].Tilt.Val += 0.1
	if b := g.Evaluate(other); a.Bus == b.Bus {
		t.Error("other panels take the year of the first")
	}
}

// A ground whose load alone changed is that of the whole changed project, under a sky and without one.
func TestLoadedIsPrepared(t *testing.T) {
	doc := catalog.Sample()
	other := doc.Project
	other.Load.Appliances = slices.Clone(other.Load.Appliances)
	other.Load.Appliances[0].Power = unit.Of[unit.Power](321)
	for _, sky := range []sun.SkyKind{doc.Project.Place.Sky, ""} {
		doc.Project.Place.Sky, other.Place.Sky = sky, sky
		g, want := model.Prepare(doc.Project), model.Prepare(other)
		if reflect.DeepEqual(g.Load, want.Load) {
			t.Fatal("the change moves nothing: the test is blind")
		}
		if got := g.Loaded(other); !reflect.DeepEqual(got.Fresh(), want.Fresh()) {
			t.Errorf("%q: another load under the same sky is not the project with that load", sky)
		}
	}
}
