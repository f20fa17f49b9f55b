package path

import (
	"math"
	"strings"
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// What holds the mass is said in words, one and more as one writes them.
func TestHoldsInWords(t *testing.T) {
	for n, want := range map[int]string{0: "Nothing is named that holds the mass.", 1: "Only one thing is named that holds the mass.", 2: "Two things are named that hold the mass.", 3: "3 things are named that hold the mass."} {
		if got := holdsSay(n).String(); got != want {
			t.Errorf("%d: %s", n, got)
		}
	}
}

// The ballast: all of it where it is fixed or nothing is loose, without what is loose, never below nothing; a mass that is not
// known counts as nothing and is named; where nobody says how much is loose, all of it stands in and that is named.
func TestBallast(t *testing.T) {
	for name, c := range map[string]struct {
		base lift.Base
		want float64
		is   bool
		miss string
	}{
		"not known":          {lift.Base{WeightsFixed: "yes"}, 0, false, "base.mass_kg"},
		"fixed":              {lift.Base{Mass: of[unit.Mass](300), WeightsFixed: "yes"}, 300, true, ""},
		"fixed, some loose":  {lift.Base{Mass: of[unit.Mass](300), WeightsFixed: "yes", LoosePart: of[unit.Mass](50)}, 300, true, ""},
		"some loose":         {lift.Base{Mass: of[unit.Mass](300), WeightsFixed: "no", LoosePart: of[unit.Mass](50)}, 250, true, ""},
		"more than all":      {lift.Base{Mass: of[unit.Mass](300), WeightsFixed: "no", LoosePart: of[unit.Mass](400)}, 0, true, ""},
		"loose, not told":    {lift.Base{Mass: of[unit.Mass](300), WeightsFixed: "no"}, 300, true, "base.loose_mass_kg"},
		"nothing told of it": {lift.Base{Mass: of[unit.Mass](300)}, 300, true, "base.weights_fixed base.loose_mass_kg"},
	} {
		h := whole()
		h.Base = c.base
		if mass, is, miss := newLoads(h, drive(h)).ballast(); mass != c.want || is != c.is || strings.Join(miss, " ") != c.miss {
			t.Errorf("%s: %g, %v, %v", name, mass, is, miss)
		}
	}
}

// What a test of a part is measured against, by hand: 100 kg hang on one rope over one pulley of 0.9; the rope before it pulls
// 980.665/0.9 = 1089.6 N raising, so the hook of the pulley carries both sides, 2070.3 N, and the container the weight alone.
// The torque is that pull times (100 + 12)/2 mm.
func TestStillOfThePlainHoist(t *testing.T) {
	h := whole()
	for id, want := range map[string]float64{"container": 980.665, "head_sheave": 2070.3, "hanger": 2070.3, "redirect_sheave": 2070.3, "rope": 1089.63} {
		s, ok := StillOf(id, h, drive(h))
		if !ok || math.Abs(float64(s.Force)/want-1) > 1e-4 {
			t.Errorf("%s: %v N, %v, want %v", id, s.Force, ok, want)
		}
		if math.Abs(float64(s.Torque)/(1089.63*0.056)-1) > 1e-4 || math.Abs(float64(s.Weight)-980.665) > 1e-9 || s.Jerks < 1 {
			t.Errorf("%s: %+v", id, s)
		}
	}
	for name, change := range map[string]func(*lift.Hoist){
		"no mass": func(h *lift.Hoist) { h.Mass[0].Mass = unit.Known[unit.Mass]{} }, "no ropes": func(h *lift.Hoist) { h.Reeving.RopeParts = unit.Known[unit.Count]{} },
	} {
		h := whole()
		change(&h)
		if s, ok := StillOf("rope", h, drive(h)); ok {
			t.Errorf("%s: %+v", name, s)
		}
	}
}

// The rope leaves the base as the user says, else as it stands at the top pulley where it runs straight there, else upright,
// which is not known.
func TestRopeAngleAtTheBase(t *testing.T) {
	h := whole()
	at := func(change func(*lift.Hoist)) (float64, bool) {
		h := h
		h.Reeving.Sheaves = append([]lift.Sheave(nil), h.Reeving.Sheaves...)
		change(&h)
		return newLoads(h, drive(h)).ropeAngle()
	}
	none := unit.Known[unit.Angle]{}
	for name, c := range map[string]struct {
		change func(*lift.Hoist)
		want   float64
		known  bool
	}{
		"told":               {func(h *lift.Hoist) {}, 0.05, true},
		"that at the pulley": {func(h *lift.Hoist) { h.Base.RopeAngle, h.Reeving.Sheaves[0].Angle = none, of[unit.Angle](0.2) }, 0.2, true},
		"that of the lead": {func(h *lift.Hoist) {
			h.Base.RopeAngle, h.Reeving.Sheaves[0].Angle, h.Structure.LeadAngle = none, none, of[unit.Angle](0.3)
		}, 0.3, true},
		"nowhere told": {func(h *lift.Hoist) {
			h.Base.RopeAngle, h.Reeving.Sheaves[0].Angle, h.Structure.LeadAngle = none, none, none
		}, 0, false},
		"over two pulleys": {func(h *lift.Hoist) {
			h.Base.RopeAngle, h.Reeving.LeadSheaves = none, of[unit.Count](2)
			h.Reeving.Sheaves = append(h.Reeving.Sheaves, h.Reeving.Sheaves[0])
		}, 0, false},
	} {
		if a, known := at(c.change); a != c.want || known != c.known {
			t.Errorf("%s: %g, %v", name, a, known)
		}
	}
}
