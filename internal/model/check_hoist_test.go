package model_test

import (
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
)

// What cannot be built or cannot belong together is refused at its field, with the reason; a document and a page refuse
// alike, for both ask CheckVariant.
func TestRefusedHoists(t *testing.T) {
	ratio := func(x float64) unit.Known[unit.Ratio] { return unit.Of(unit.Ratio(x)) }
	for _, tc := range []struct {
		path, say string
		change    func(*lift.Hoist)
	}{
		{"train.stages[0].ratio", "at least 1", func(h *lift.Hoist) {
			h.Train.Stages[0] = lift.Stage{Kind: "spur", Ratio: ratio(0.5), Efficiency: ratio(.9)}
		}},
		{"train.stages[0].efficiency", "more than 0", func(h *lift.Hoist) { h.Train.Stages[0].Efficiency = ratio(0) }},
		{"train.stages[0].efficiency", "at most 1", func(h *lift.Hoist) { h.Train.Stages[0].Efficiency = ratio(1.02) }},
		{"reeving.sheave_efficiency", "at most 1", func(h *lift.Hoist) { h.Reeving.Efficiency = ratio(1.1) }},
		{"drum.diameter_m", "thicker than its rope", func(h *lift.Hoist) { h.Drum.Diameter = unit.Of(10 * unit.Millimetre) }},
		{"rope.length_m", "too short", func(h *lift.Hoist) { h.Rope.Length = unit.Of[unit.Length](4) }},
		{"train.stages[0].planets", "spaced evenly", func(h *lift.Hoist) {
			h.Train.Stages[0].RingTeeth, h.Train.Stages[0].Planets = unit.Known[unit.Count]{}, unit.Of[unit.Count](7) // the ring of 48 follows; 60/7 is not whole
		}},
		{"train.stages[0].planets", "touch each other", func(h *lift.Hoist) {
			h.Train.Stages[0].RingTeeth, h.Train.Stages[0].Planets = unit.Known[unit.Count]{}, unit.Of[unit.Count](5) // (12+18)·sin 36° = 17.6 < 20
		}},
		{"machine.i0_a", "smaller than the current with the shaft held", func(h *lift.Hoist) {
			h.Machine.SheetStall, h.Machine.I0 = unit.Of[unit.Current](5), unit.Of[unit.Current](6)
		}},
		{"machine.continuous_current_a", "smaller than the current with the shaft held", func(h *lift.Hoist) { h.Machine.SheetStall = unit.Of[unit.Current](3) }},
		{"machine.i0_a", "smaller than the current it withstands all day", func(h *lift.Hoist) { h.Machine.I0 = unit.Of[unit.Current](4.5) }},
		{"machine.r_ohm", "nothing is left to turn it", func(h *lift.Hoist) {
			h.Machine.SheetVolts, h.Machine.R = unit.Of[unit.Voltage](12), unit.Of[unit.Resistance](50)
		}},
		{"machine.brush_drop_v", "smaller than the label", func(h *lift.Hoist) {
			h.Machine.SheetVolts, h.Machine.BrushDrop = unit.Of[unit.Voltage](1), unit.Of[unit.Voltage](2)
		}},
		{"reeving.lead_sheaves", "count that one too", func(h *lift.Hoist) { h.Reeving.LeadSheaves, h.Reeving.Sheaves = unit.Of[unit.Count](0), nil }},
		{"reeving.dead_end", "count the ropes again", func(h *lift.Hoist) { h.Reeving.RopeParts = unit.Of[unit.Count](2) }},
		{"structure.posts[0].load_share", "must make 100 % or more", func(h *lift.Hoist) { h.Structure.Posts[0].Share = ratio(.2) }},
	} {
		v := catalog.Sample().Variants[2]
		tc.change(v.Stores[0].Hoist)
		found := false
		for _, p := range model.CheckVariant(v) {
			found = found || p.Path == "stores[0].hoist."+tc.path && strings.Contains(p.Say.String(), tc.say)
		}
		if !found {
			t.Errorf("%s is not refused with %q: %v", tc.path, tc.say, model.CheckVariant(v))
		}
	}
}

// Two sources at once, or numbers of a motor that do not belong together, are flagged at their field and never ready.
func TestClashesAreNotReady(t *testing.T) {
	direct := func(v *model.Variant) { v.Controller.Kind = "direct" }
	for _, tc := range []struct {
		name, path, say string
		ready           reason.Word
		bad             bool
		change          func(v *model.Variant, h *lift.Hoist)
	}{
		{"a controller and the motor on the panels", "raise.feed", "there is a controller between panels and motor", "no", true, func(_ *model.Variant, h *lift.Hoist) { h.Raise.Feed = "panel" }},
		{"a drive without a controller", "raise.feed", "nothing reaches the line", "no", true, func(v *model.Variant, _ *lift.Hoist) { direct(v) }},
		{"panels of which the sheet is not known", "raise.feed", "the curve of the panel needs", "not_known", false, func(v *model.Variant, h *lift.Hoist) {
			direct(v)
			h.Raise.Feed = "panel"
			v.Panels[0].Sheet = nil
		}},
		{"a motor of two resistances", "machine.r_ohm", "by your own number and", "not_known", false, func(_ *model.Variant, h *lift.Hoist) {
			h.Machine.SheetVolts, h.Machine.SheetStall = unit.Of[unit.Voltage](24), unit.Of[unit.Current](60)
		}},
	} {
		v := catalog.Sample().Variants[2]
		tc.change(&v, v.Stores[0].Hoist)
		if ps := model.CheckVariant(v); len(ps) > 0 {
			t.Fatal(ps)
		}
		r := model.Ground{}.Evaluate(v)
		found := false
		for _, f := range model.HoistOf(r.Stores[0]).Drive.Flags {
			found = found || f.Path == tc.path && f.Bad == tc.bad && strings.Contains(f.Say.String(), tc.say)
		}
		if !found || r.Ready != tc.ready {
			t.Errorf("%s: ready %q, want %q; flags %+v", tc.name, r.Ready, tc.ready, model.HoistOf(r.Stores[0]).Drive.Flags)
		}
	}
	v := catalog.Sample().Variants[2]
	direct(&v)
	v.Stores[0].Hoist.Raise.Feed = "panel"
	again := *v.Stores[0].Hoist
	v.Stores = append(v.Stores, model.Store{Hoist: &again})
	two := model.Ground{}.Evaluate(v)
	if s := model.HoistOf(two.Stores[len(two.Stores)-1]); s.Ready != "no" || !strings.Contains(strings.Join(reasonsSaid(s.Because), " "), "another hoist hangs on the panels already") {
		t.Errorf("a second motor on the same panels: %q %q", s.Ready, strings.Join(reasonsSaid(s.Because), " "))
	}
}
