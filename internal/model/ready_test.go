package model_test

import (
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/cell"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
)

// A plan with a battery is ready when the questions of safety about it are answered, not ready while one is open, and not to
// be used where an answer forbids it: no board on lithium, mixed cells, where people sleep or flee, a fuse above its cable.
func TestReadyOfBattery(t *testing.T) {
	doc := catalog.Sample()
	g := model.Prepare(doc.Project)
	for _, c := range []struct {
		name   string
		change func(*cell.Bank)
		ready  reason.Word
		why    string
	}{
		{"all answered", func(*cell.Bank) {}, "yes", ""},
		{"place not known", func(b *cell.Bank) { b.Indoors = "" }, "not_known", "place of the battery"},
		{"board not known", func(b *cell.Bank) { b.Board = "" }, "not_known", "management board"},
		{"origin not known", func(b *cell.Bank) { b.Origin = "" }, "not_known", "new and matched"},
		{"fuse not known", func(b *cell.Bank) { b.Fuse = unit.Known[unit.Current]{} }, "not_known", "Which fuse"},
		{"cable not known", func(b *cell.Bank) { b.CableArea = unit.Known[unit.Area]{} }, "not_known", "thickness of the battery’s cable"},
		{"no board", func(b *cell.Bank) { b.Board = "no" }, "no", "Do not use them"},
		{"bedroom", func(b *cell.Bank) { b.Indoors = "bedroom" }, "no", "may not be in a bedroom"},
		{"way out", func(b *cell.Bank) { b.Indoors = "escape_route" }, "no", "on the way out"},
		{"loft", func(b *cell.Bank) { b.Indoors = "loft" }, "no", "may not be in a loft"},
		{"mixed cells", func(b *cell.Bank) { b.Origin = "mixed" }, "no", "must not be joined"},
		{"fuse above its cable", func(b *cell.Bank) {
			b.Fuse, b.CableArea = unit.Of[unit.Current](200), unit.Of[unit.Area](1.5e-6)
		}, "no", "lets the cable burn"},
		{"not known and forbidden", func(b *cell.Bank) { b.Indoors, b.Board = "", "no" }, "no", "Do not use them"},
	} {
		v := doc.Variants[1]
		bank := *v.Stores[0].Cells
		c.change(&bank)
		v.Stores = []model.Store{{Cells: &bank}}
		r := g.Evaluate(v)
		if r.Ready != c.ready || !strings.Contains(strings.Join(reasonsSaid(r.Because), " "), c.why) || (c.why == "") != (len(reasonsSaid(r.Because)) == 0) {
			t.Errorf("%s: %q, want %q because of %q; it says %q", c.name, r.Ready, c.ready, c.why, reasonsSaid(r.Because))
		}
	}
}

// A hoist whose panels never bring what lifting takes never lifts, and its plan says so; one whose panels bring less than
// its full power lifts more slowly than told, and that is said.
func TestUnderSun(t *testing.T) {
	doc := catalog.Sample()
	g := model.Prepare(doc.Project)
	flag := func(power unit.Power) (*lift.Flag, model.VariantResult) {
		v := doc.Variants[2]
		array := v.Panels[0]
		array.Power, array.Sheet = unit.Of(power), nil
		v.Panels = append(v.Panels[:0:0], array)
		r := g.Evaluate(v)
		for _, s := range r.Stores {
			if model.HoistOf(s) == nil {
				continue
			}
			for _, f := range model.HoistOf(s).Drive.Flags {
				if f.Path == "raise.feed" {
					return &f, r
				}
			}
		}
		return nil, r
	}
	if f, r := flag(1); f == nil || !f.Bad || !strings.Contains(f.Say.String(), "never lifts") || r.Ready != "no" {
		t.Errorf("1 W of panels: %+v, ready %q", f, r.Ready)
	}
	if f, r := flag(1000); f != nil || len(r.Because) != 1 || r.Because[0].ID != "charge_current" { // a battery of 20 Ah, and no limit
		t.Errorf("1 kW of panels: %+v, ready %q, %q", f, r.Ready, reasonsSaid(r.Because))
	}
}

// A hoist that gives more on its way down than all lamps of a night use says so; one that gives less does not.
func TestOverLamps(t *testing.T) {
	doc := catalog.Sample()
	said := func(lamps unit.Power) bool {
		p := doc.Project
		p.Load.Appliances = append(p.Load.Appliances[:0:0], p.Load.Appliances...)
		for i := range p.Load.Appliances {
			p.Load.Appliances[i].Power = unit.Of(lamps)
		}
		for _, f := range model.HoistOf(model.Prepare(p).Evaluate(doc.Variants[0]).Stores[0]).Drive.Flags {
			if strings.Contains(f.Say.String(), "all lamps of a night use") {
				return true
			}
		}
		return false
	}
	if !said(0.5) || said(50) {
		t.Errorf("with lamps of half a watt: %v; with lamps of 50 W: %v", said(0.5), said(50))
	}
}
