package ready

import (
	"math"
	"slices"
	"strings"
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// said is the word of the first reason of an id whose path begins like this; Yes where there is none.
func said(rs []reason.Reason, id, path string) reason.Word {
	for _, r := range rs {
		if r.ID == id && strings.HasPrefix(r.Path, path) {
			return r.Word
		}
	}
	return reason.Yes
}

// Each threshold of the rule book (sections 3 and 5), a little under it and a little over it. The numbers are those that the
// rule book prints, or a hand calculation beside them.
func TestBorders(t *testing.T) {
	yes, open := reason.Yes, reason.NotKnown
	clash := func(id, path string, change func(h *lift.Hoist, x float64)) func(x float64) reason.Word {
		return func(x float64) reason.Word {
			var c Case
			change(&c.Hoist, x)
			c.Plan.Drive.Mass = unit.Of(unit.Mass(x))
			return said(contradictions(c), id, path)
		}
	}
	swift := func(path string, machine func(x float64) lift.Machine) func(x float64) reason.Word { // of 0.1 V·s/rad and 1 Ω
		return func(x float64) reason.Word {
			var c Case
			c.Hoist.Machine = machine(x)
			c.Plan.Drive.Machine = lift.Constants{K: unit.Of[unit.MachineConstant](0.1), R: unit.Of[unit.Resistance](1)}
			return said(contradictions(c), "contradiction", path)
		}
	}
	for _, b := range []struct {
		name        string
		under, over float64
		low, high   reason.Word
		word        func(x float64) reason.Word
	}{
		{"a frame as high as its top pulley", 2.999, 3, open, yes, clash("contradiction", "site.frame_height_m", func(h *lift.Hoist, x float64) {
			h.Structure.HeadHeight, h.Site.FrameHeight = unit.Of[unit.Length](3), unit.Of(unit.Length(x))
		})},
		{"angle at the base, 0.2 rad at the head", 0.2499, 0.2501, yes, open, clash("contradiction", "base.rope_angle_rad", func(h *lift.Hoist, x float64) {
			h.Reeving.LeadSheaves, h.Structure.LeadAngle, h.Base.RopeAngle = unit.Of[unit.Count](1), unit.Of[unit.Angle](0.2), unit.Of(unit.Angle(x))
		})},
		{"angle at the pulley, 0.2 rad at the head", 0.1499, 0.1501, open, yes, clash("contradiction", "reeving.sheaves", func(h *lift.Hoist, x float64) {
			h.Reeving.LeadSheaves, h.Structure.LeadAngle = unit.Of[unit.Count](1), unit.Of[unit.Angle](0.2)
			h.Reeving.Sheaves = []lift.Sheave{{Angle: unit.Of(unit.Angle(x))}}
		})},
		// (0.2 m)²·0.25 m = 0.01 m³: 114 kg of 11,400 kg/m³
		{"nothing is that dense", 113.9, 114.1, yes, open, clash("contradiction", "site.load_width_m", func(h *lift.Hoist, x float64) {
			h.Site.LoadWidth, h.Site.LoadHeight = unit.Of[unit.Length](0.2), unit.Of[unit.Length](0.25)
		})},
		{"class 250 of insulation, °C", 250, 250.1, yes, open, clash("contradiction", "machine.max_winding_c", func(h *lift.Hoist, x float64) {
			h.Machine.MaxWinding = unit.Of(unit.Celsius(x))
		})},
		// 1 kg at most 0.05 m from the axis: 1·0.05² = 0.0025 kg·m²
		{"no rotor of that size has more inertia", 0.00249, 0.00251, yes, open, clash("contradiction", "machine.j_kg_m2", func(h *lift.Hoist, x float64) {
			h.Machine = lift.Machine{J: unit.Of(unit.Inertia(x)), Mass: unit.Of[unit.Mass](1), Diameter: unit.Of[unit.Length](0.1)}
		})},
		// J·R/K² = x·1/0.1² = 0.0002 s at 2e-6 kg·m²
		{"no rotor has so little inertia", 1.99e-6, 2.01e-6, open, yes, swift("machine.j_kg_m2", func(x float64) lift.Machine { return lift.Machine{J: unit.Of(unit.Inertia(x))} })},
		// 0.0008 kg within 0.05 m: 0.0008·0.05² = 2e-6 kg·m²
		{"no motor is so light", 0.00079, 0.00081, open, yes, swift("machine.mass_kg", func(x float64) lift.Machine {
			return lift.Machine{Mass: unit.Of(unit.Mass(x)), Diameter: unit.Of[unit.Length](0.1)}
		})},
		{"jerks of class HC1", 1.0499, 1.05, open, yes, clash("contradiction", "holds.dynamic_factor", func(h *lift.Hoist, x float64) {
			h.Holds.Factor = unit.Of(unit.Ratio(x))
		})},
		// a polyester rope of 10 mm: 300 N/mm² · 100 mm² = 30 kN
		{"no polyester rope of 10 mm is stronger", 29.9e3, 30.1e3, yes, open, clash("contradiction", "rope.breaking_load_n", func(h *lift.Hoist, x float64) {
			h.Rope = lift.Rope{Kind: lift.RopePolyester, Diameter: unit.Of[unit.Length](0.010), BreakingLoad: unit.Of(unit.Force(x))}
		})},
		{"no printed tooth is stronger, Pa", 120e6, 120.1e6, yes, open, clash("contradiction", "train.stages[0].tooth", func(h *lift.Hoist, x float64) {
			h.Train.Stages = []lift.Stage{{Tooth: lift.Tooth{Material: lift.ToothPrinted, Strength: unit.Of(unit.Stress(x))}}}
		})},
		{"no hub of aluminium is stronger, Pa", 750e6, 750.1e6, yes, open, clash("contradiction", "drum.hub_strength_pa", func(h *lift.Hoist, x float64) {
			h.Drum.HubMaterial, h.Drum.HubAllow = lift.HubAluminium, unit.Of(unit.Stress(x))
		})},
		{"two resistances, of 1 Ω", 1.2499, 1.2501, yes, open, func(x float64) reason.Word {
			var c Case
			c.Plan.Drive.Machine.Found = []lift.Found{{What: "resistance", From: lift.FromYours, Value: 1}, {What: "resistance", From: lift.FromBench, Value: x}}
			return said(motorMixed(c), "motor_mixed", "machine.r_ohm")
		}},
		// no drop and no current without load: 12 V over 0.1 V·s/rad is 120 rad/s, a tenth of the label's x away
		{"speed of the label above that of K", 120 / 0.901, 120 / 0.899, yes, open, labelled},
		{"speed of the label below that of K", 120 / 1.101, 120 / 1.099, open, yes, labelled},
		// 8 K/W · 1 A² · R of what may warm up by 100 K; copper grows: p/(1 − 0.00393·p) is 10 K at p = 9.6218 W·K/W, 250 K at 126.10
		{"hardly warm at the current of all day", 9.62 / 8, 9.63 / 8, open, yes, warm},
		{"far too warm at the current of all day", 126.0 / 8, 126.2 / 8, yes, open, warm},
	} {
		t.Run(b.name, func(t *testing.T) {
			if got := b.word(b.under); got != b.low {
				t.Errorf("at %g: %s, want %s", b.under, got, b.low)
			}
			if got := b.word(b.over); got != b.high {
				t.Errorf("at %g: %s, want %s", b.over, got, b.high)
			}
		})
	}
}

// labelled is a motor whose label says x rad/s at 12 V, with numbers of its own that give 120.
func labelled(x float64) reason.Word {
	var c Case
	c.Hoist.Machine = lift.Machine{SheetVolts: unit.Of[unit.Voltage](12), SheetSpeed: unit.Of(unit.AngularSpeed(x)), BrushDrop: unit.Of[unit.Voltage](0)}
	c.Plan.Drive.Machine = lift.Constants{K: unit.Of[unit.MachineConstant](0.1), R: unit.Of[unit.Resistance](1), I0: unit.Of[unit.Current](0),
		Found: []lift.Found{{What: "machine constant", From: lift.FromYours, Value: 0.1}, {What: "machine constant", From: lift.FromBench, Value: 0.2}}}
	return said(motorMixed(c), "motor_mixed", "machine.k_vs_rad")
}

// warm is a motor with a winding of r Ω that withstands 1 A all day and may get 125 °C warm.
func warm(r float64) reason.Word {
	var c Case
	c.Hoist.Machine = lift.Machine{MaxCurrent: unit.Of[unit.Current](1), RthWinding: unit.Of[unit.ThermalResistance](8), MaxWinding: unit.Of[unit.Celsius](125)}
	c.Plan.Drive.Machine.R = unit.Of(unit.Resistance(r))
	return said(motorMixed(c), "motor_mixed", "machine.continuous_current_a")
}

// What hangs may be off by 2 % on a scale, 5 % by a label, 10 % by its volume where it stays dry, and a quarter otherwise.
func TestWeighed(t *testing.T) {
	for _, c := range []struct {
		how      lift.Weighing
		outdoors unit.Answer
		off      float64
	}{{lift.ByScale, "", 2}, {lift.ByLabel, unit.Yes, 5}, {lift.ByVolume, unit.No, 10}, {lift.ByVolume, "", 25}, {lift.ByVolume, unit.Yes, 25}, {lift.ByGuess, unit.No, 25}, {"", unit.No, 25}} {
		h := lift.Hoist{Mass: []lift.Piece{{Mass: unit.Of[unit.Mass](100), Weighed: c.how}}, Site: lift.Site{Outdoors: c.outdoors}}
		for _, side := range []float64{-1, 1} {
			if got, want := float64(weighed(h, side).Mass[0].Mass.Val), 100+side*c.off; math.Abs(got-want) > 1e-9 {
				t.Errorf("by %q, outdoors %q: %g kg, want %g", c.how, c.outdoors, got, want)
			}
		}
	}
}

// The worse of two ends: what forbids both forbids; what forbids one is not known, and the weighing decides it.
func TestEnds(t *testing.T) {
	no, open := []reason.Reason{{ID: "races", Word: reason.No}}, []reason.Reason{{ID: "races", Word: reason.NotKnown}}
	for _, c := range []struct {
		light, heavy []reason.Reason
		want         reason.Word
		guess        bool
	}{{no, no, reason.No, false}, {no, nil, reason.NotKnown, true}, {nil, no, reason.NotKnown, true}, {no, open, reason.NotKnown, false}, {open, no, reason.NotKnown, true}, {open, open, reason.NotKnown, false}, {open, nil, reason.NotKnown, false}} {
		got := ends(c.light, c.heavy)
		if len(got) != 1 || got[0].Word != c.want || guessed(got[0]) != c.guess {
			t.Errorf("%v and %v: %v, want %s", c.light, c.heavy, got, c.want)
		}
	}
	// Only what the weighing mends, and what is not known, is a guess.
	for _, r := range []reason.Reason{{Word: reason.NotKnown, Mend: say.That("Read the label.")}, {Word: reason.No, Mend: weighIt}, {Word: reason.NotKnown}} {
		if guessed(r) {
			t.Errorf("%v waits for a scale", r)
		}
	}
	if got := ends(nil, nil); len(got) != 0 {
		t.Errorf("nothing at both ends: %v", got)
	}
}

// A part that gives way only when all that hangs weighs the most that it may is not said to give way: the reason says what to
// weigh, and at which mass. One that gives way at the lightest too says it plainly. By hand: 120 kg by guess, a quarter more is 150 kg.
func TestGivesWayAtTheHeaviest(t *testing.T) {
	var c Case
	c.Heavy.Drive.Mass = unit.Of[unit.Mass](150)
	c.Heavy.Checks = []path.Check{{ID: "rope", Part: "the rope", Word: path.GivesWay, Say: say.That("It is pulled with %s.", say.Mass(202))}}
	plain := []string{"Gives way: the rope. It is pulled with 202 kg."}
	guess := []string{"All that hangs may weigh 150 kg: weigh it first. At 150 kg this gives way: the rope. It is pulled with 202 kg.",
		"All that hangs together may weigh 150 kg, and then a part is not strong enough, or the mass does not move as it must."}
	for word, want := range map[path.Word][]string{path.GivesWay: plain, path.Holds: guess} {
		c.Light.Checks = []path.Check{{ID: "rope", Part: "the rope", Word: word}}
		var got []string
		for _, r := range checks(c) {
			got = append(got, strings.ReplaceAll(r.Say.String(), unit.Space, " "))
		}
		if !slices.Equal(got, want) {
			t.Errorf("%s at the lightest: %q, want %q", word, got, want)
		}
	}
}

// A line of the load path has a few words of its own, without figures: what is not known, or what gives way. A reason that is
// short has none.
func TestHeads(t *testing.T) {
	var c Case
	c.Heavy.Checks = []path.Check{{ID: "rope", Part: "the rope", Word: path.NotKnown, Missing: []string{"rope.age_factor"}, Say: say.That("Not known. It needs %s.", say.Mass(100))},
		{ID: "hanger", Part: "the hook of the top pulley", Word: path.GivesWay, Say: say.That("It carries %s.", say.Mass(319))}}
	c.Light.Checks = c.Heavy.Checks
	want := [][2]string{{"The rope", "The check of the rope is not known. It needs 100 kg."}, {"Gives way: the hook of the top pulley", "Gives way: the hook of the top pulley. It carries 319 kg."}}
	for i, r := range checks(c) {
		if got := strings.ReplaceAll(r.Say.String(), unit.Space, " "); r.Short().String() != want[i][0] || got != want[i][1] {
			t.Errorf("%q, %q, want %q", r.Short(), got, want[i])
		}
	}
	if r := owner(c)[0]; !r.Short().Is(r.Say) {
		t.Errorf("%q, %q", r.Short(), r.Say)
	}
}
