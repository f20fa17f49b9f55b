package model_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// mended is the hoist of the sample whose checks all hold, changed by f, with what it comes to.
func mended(t *testing.T, f func(*lift.Hoist)) (model.VariantResult, *model.HoistResult) {
	t.Helper()
	doc := catalog.Sample()
	v := doc.Variants[2]
	f(v.Stores[0].Hoist)
	doc.Variants = []model.Variant{v}
	if ps := model.Check(doc); len(ps) > 0 {
		t.Fatal(ps)
	}
	r := model.Evaluate(doc, "").Variants[0]
	return r, model.HoistOf(r.Stores[0])
}

func said(r model.VariantResult) string {
	h := model.HoistOf(r.Stores[0])
	all := append([]string{h.Drive.Raising.Say.String(), h.Drive.Lowering.Say.String(), h.Drive.WhyNot}, reasonsSaid(r.Because)...)
	for _, f := range h.Drive.Flags {
		all = append(all, f.Say.String())
	}
	return strings.Join(all, "\n")
}

// Each failure that a builder meets by trial and error is foretold in words, and the sheet says do not hang.
func TestFailuresAreForetold(t *testing.T) {
	stage := func(h *lift.Hoist, i int) *lift.Stage { return &h.Train.Stages[i] }
	for _, tc := range []struct {
		name   string
		change func(*lift.Hoist)
		ready  reason.Word
		words  []string
		holds  func(*model.HoistResult) bool
	}{
		{"gears that will not run back", func(h *lift.Hoist) { stage(h, 0).Efficiency = unit.Of[unit.Ratio](0.45) }, "no", []string{"come down"},
			func(h *model.HoistResult) bool { return h.Drive.Lowering.RunsBack == "no" && h.Drive.Reservoir == nil }},
		{"comes down only with a push", func(h *lift.Hoist) {
			stage(h, 0).Efficiency, h.Train.Breakaway = unit.Of[unit.Ratio](0.65), unit.Of[unit.Ratio](2)
		}, "not_known", []string{"push"},
			func(h *model.HoistResult) bool { return h.Drive.Lowering.RunsBack == "nudge" }},
		{"a motor that stalls", func(h *lift.Hoist) { stage(h, 0).Ratio = unit.Of[unit.Ratio](1); clearTeeth(stage(h, 0)) }, "no", []string{"lift"},
			func(h *model.HoistResult) bool { return h.Drive.Raising.Stalls || !h.Drive.Raising.Starts }},
		{"a base that lifts", func(h *lift.Hoist) { h.Base.Mass = unit.Of[unit.Mass](168) }, "no", []string{"ground"},
			func(h *model.HoistResult) bool { return wordOf(h, "base_uplift") == path.GivesWay }},
		{"a head pulley over its rating, because it carries both sides of the rope", func(h *lift.Hoist) { h.Reeving.Sheaves[0].Rating = unit.Of(unit.Mass(240).Weight()) }, "no", []string{"pulley"},
			func(h *model.HoistResult) bool { return wordOf(h, "head_sheave") == path.GivesWay }},
		{"a constant-power load that races", func(h *lift.Hoist) {
			h.Lower.Loads = []lift.DCLoad{{Kind: "constant_power", Name: "Plug-in lamp", Power: unit.Of[unit.Power](8)}}
		}, "no", []string{"never settles"},
			func(h *model.HoistResult) bool {
				return !h.Drive.Lowering.Steady && len(h.Drive.Lowering.Cures) >= 3 && h.Drive.Reservoir == nil
			}},
		{"one hold only", func(h *lift.Hoist) { h.Holds.Holds = h.Holds.Holds[:1] }, "no", []string{"hold"},
			func(h *model.HoistResult) bool { return wordOf(h, "holds") == path.GivesWay }},
		{"a rope whose strength nobody gave", func(h *lift.Hoist) { h.Rope.BreakingLoad = unit.Known[unit.Force]{} }, "not_known", []string{"rope"},
			func(h *model.HoistResult) bool {
				return wordOf(h, "rope") == path.NotKnown && wordOf(h, "knot") == path.NotKnown
			}},
	} {
		t.Run(tc.name, func(t *testing.T) {
			r, h := mended(t, tc.change)
			if !tc.holds(h) {
				t.Errorf("not computed: %+v %+v", h.Drive.Raising, h.Drive.Lowering)
			}
			if r.Ready != tc.ready {
				t.Errorf("ready %q, want %q (%v)", r.Ready, tc.ready, reasonsSaid(r.Because))
			}
			for _, w := range tc.words {
				if !strings.Contains(strings.ToLower(said(r)), w) {
					t.Errorf("nothing about %q in words:\n%s", w, said(r))
				}
			}
		})
	}
}

func clearTeeth(s *lift.Stage) {
	s.SunTeeth, s.PlanetTeeth, s.RingTeeth, s.Planets = unit.Known[unit.Count]{}, unit.Known[unit.Count]{}, unit.Known[unit.Count]{}, unit.Known[unit.Count]{}
}

func wordOf(h *model.HoistResult, id string) path.Word {
	for _, c := range h.Checks {
		if c.ID == id {
			return c.Word
		}
	}
	return ""
}

// The base that looks enough without friction: one sheave of 0.85 and φ = 1.25 pull with 1.25/0.85 = 1.47 m·g, so a
// base of 1.4 m lifts (worked by hand).
func TestBaseOfFourteenTenthsLifts(t *testing.T) {
	r, h := mended(t, func(h *lift.Hoist) {
		h.Reeving.Efficiency = unit.Of[unit.Ratio](0.85)
		h.Reeving.Sheaves[0].Efficiency = unit.Of[unit.Ratio](0.85)
		h.Base.Mass, h.Base.RopeAngle = unit.Of[unit.Mass](1.4*120), unit.Of[unit.Angle](0) // straight up
	})
	for _, c := range h.Checks {
		if c.ID != "base_uplift" {
			continue
		}
		// use = 1.2·1.25·120·g/0.85/(168·g) (model.md section 6)
		if want := 1.2 * 1.25 / 0.85 / 1.4; math.Abs(float64(c.Use.Val)-want) > 1e-9 {
			t.Errorf("use %v, want %v", c.Use.Val, want)
		}
	}
	if r.Ready != "no" {
		t.Errorf("ready %q", r.Ready)
	}
}

// The sample's three variants: one lift is little, and one more full night would let a battery carry the night. The first names the battery of the electronics.
func TestSampleVerdicts(t *testing.T) {
	r := model.Evaluate(catalog.Sample(), "")
	for i, want := range []string{model.LearningPiece, model.CarriesMost, model.CarriesMost} {
		if r.Variants[i].Verdict != want {
			t.Errorf("%s: %q, want %q", r.Variants[i].Name, r.Variants[i].Verdict, want)
		}
	}
	if all := say.Join(r.Variants[0].Headline...).String(); !strings.Contains(all, "battery for your electronics") {
		t.Errorf("the small battery is not named: %s", all)
	}
	for i, want := range []reason.Word{reason.No, reason.Yes, reason.Yes} {
		if r.Variants[i].Ready != want {
			t.Errorf("%s: ready %q, want %q: %v", r.Variants[i].Name, r.Variants[i].Ready, want, reasonsSaid(r.Variants[i].Because))
		}
	}
}

// A first plan from three answers lifts and comes down, and no strength in it has a value.
func TestStartsFromThreeAnswers(t *testing.T) {
	place, ok := catalog.Climate("Denver, Colorado")
	if !ok {
		t.Fatal("no such climate")
	}
	for _, a := range []catalog.Answers{
		{Name: "Hill cabin", Place: place, HeavyName: "Stone", Mass: 40, Height: 3, Lamps: 2, LampPower: 5, Hours: 4 * unit.Hour, Seed: 1},
		{Name: "Barn", Place: place, HeavyName: "Tank", Mass: 5000, Height: 10, Lamps: 30, LampPower: 9, Seed: 2},
		{Name: "Shed", Place: place, HeavyName: "Brick", Mass: 2, Height: 0.5, Lamps: 1, LampPower: 0.2, Hours: 1 * unit.Hour, Seed: 3},
	} {
		doc := catalog.Start(a)
		if ps := model.Check(doc); len(ps) > 0 {
			t.Fatalf("%s: %v", a.Name, ps)
		}
		r := model.Evaluate(doc, "")
		mass, battery := r.Variants[0], r.Variants[1]
		d := model.HoistOf(mass.Stores[0]).Drive
		if !d.Raising.Known || d.Raising.Stalls || !d.Raising.Starts || d.Lowering.RunsBack != "yes" {
			t.Errorf("%s: the typical hoist does not work: %+v %+v", a.Name, d.Raising, d.Lowering.RunsBack)
		}
		if mass.Ready != "no" || !slices.ContainsFunc(mass.Because, func(b reason.Reason) bool { return b.ID == "holds_count" }) {
			t.Errorf("%s: ready %q though nobody named two holds: %v", a.Name, mass.Ready, reasonsSaid(mass.Because))
		}
		if battery.Verdict == "" || mass.Verdict == "" {
			t.Errorf("%s: verdicts %q and %q", a.Name, mass.Verdict, battery.Verdict)
		}
		for _, c := range model.HoistOf(mass.Stores[0]).Checks {
			if strength := map[string]bool{"rope": true, "knot": true, "hanger": true, "head_sheave": true, "base_uplift": true, "gear_tooth": true, "shaft": true}; strength[c.ID] && c.Word != path.NotKnown {
				t.Errorf("%s: %s is %s though nobody gave its strength", a.Name, c.ID, c.Word)
			}
		}
	}
}
