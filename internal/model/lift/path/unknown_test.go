package path

import (
	"math"
	"strings"
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// part finds a check of a changed hoist by its part.
func part(t *testing.T, id, part string, change func(*lift.Hoist)) Check {
	t.Helper()
	h := whole()
	change(&h)
	return find(t, Checks(h, drive(h)), id, part)
}

func wants(t *testing.T, c Check, w Word, missing, words string) {
	t.Helper()
	if c.Word != w || missing != "" && !inList(c.Missing, missing) || !strings.Contains(plainly(c.Say), words) {
		t.Errorf("%s, %s: %s, want %s. %v %q", c.ID, c.Part, c.Word, w, c.Missing, c.Say)
	}
}

// What nobody told does not pass: each of these once held in silence.
func TestWhatIsNotToldDoesNotPass(t *testing.T) {
	wants(t, part(t, "ground", "the floor under the base", func(h *lift.Hoist) { h.Base.Ground = "" }), NotKnown, "base.ground", "what is under the base")
	wants(t, part(t, "ground", "the floor under the base", func(h *lift.Hoist) { h.Base.Ground = "not_seen" }), NotKnown, "base.ground", "")
	sideways := func(h *lift.Hoist) {
		h.Base.RopeAngle, h.Structure.LeadAngle = unit.Known[unit.Angle]{}, unit.Known[unit.Angle]{}
		h.Reeving.Sheaves[0].Angle = unit.Known[unit.Angle]{}
	}
	wants(t, part(t, "base_sliding", "", sideways), NotKnown, "base.rope_angle_rad", "")
	wants(t, part(t, "post", "the frame, pulled sideways by the rope", sideways), NotKnown, "structure.lead_line_angle_rad", "")
	wants(t, part(t, "post", "post 1", func(h *lift.Hoist) { h.Structure.Beam.Support = "cantilever" }), NotKnown, "", "bends its post")
	eye := func(fixing string) func(*lift.Hoist) {
		return func(h *lift.Hoist) {
			h.Structure.HangerKind, h.Structure.HangerFixing = "shoulder_eyebolt", lift.HangerFixing(fixing)
		}
	}
	wants(t, part(t, "hanger", "", eye("")), NotKnown, "structure.hanger_fixing", "")
	wants(t, part(t, "hanger", "", eye("screwed_into_wood")), NotKnown, "", "carries in wood is not known")
	wants(t, part(t, "hanger", "", eye("bolted_through_wood")), NotKnown, "structure.hanger_washer_m", "")
	wants(t, part(t, "hanger", "", func(h *lift.Hoist) { eye("anchor_in_masonry")(h); h.Structure.RestsOnOK = "" }), NotKnown, "structure.rests_on_confirmed", "qualified person")
	wants(t, part(t, "beam", "the beam", func(h *lift.Hoist) { h.Structure.Beam.Kind = "none" }), NotKnown, "structure.beam.kind", "three posts")
}

// Where the pulley hangs on the beam is not known: shear and pressure on the support are those of a load right beside
// it, the whole force and not half of it.
func TestUnknownPlaceOnTheBeam(t *testing.T) {
	middle := part(t, "beam", "the beam", func(*lift.Hoist) {})
	open := part(t, "beam", "the beam", func(h *lift.Hoist) { h.Structure.Beam.From = unit.Known[unit.Length]{} })
	const name = "at rest, crushed at the support"
	// 1.35·(m·g + m·g/.9) = 2795 N of the hoist; 1.35·20·g/2 = 132.4 N of the beam; on 100 × 100 mm
	force, own := 1.35*100*unit.G*(1+1/.9), 1.35*20*unit.G/2
	near(t, "in the middle", caseOf(t, middle, name).Demand.Val, (force/2+own)/.01, 1e-9)
	near(t, "not known", caseOf(t, open, name).Demand.Val, (force+own)/.01, 1e-9)
}

// The line to a drum that stands aside pulls the frame sideways: 100 kg, e = .9, 30°: 1.25·1089.6·sin 30° = 681 N.
func TestFramePulledSideways(t *testing.T) {
	aside := func(n float64) Check {
		return part(t, "post", "the frame, pulled sideways by the rope", func(h *lift.Hoist) {
			h.Structure.LeadAngle, h.Reeving.Sheaves[0].Angle = unit.Of(30*unit.Degree), unit.Of(30*unit.Degree)
			if n > 0 {
				h.Structure.SidePull = of[unit.Force](n)
			}
		})
	}
	wants(t, aside(0), NotKnown, "structure.side_pull_n", "sideways with 69.5 kg")
	wants(t, aside(600), GivesWay, "", "Brace the frame")
	wants(t, aside(700), Tight, "", "")
	wants(t, aside(1000), Holds, "", "")
	near(t, "H", float64(aside(700).Demand.Val), 1.25*100*unit.G/.9/2, 1e-12)
}

// The rope leaves the base at the angle of the top pulley where it runs straight there and nobody said otherwise.
func TestRopeAngleFromTheTop(t *testing.T) {
	c := part(t, "base_sliding", "", func(h *lift.Hoist) {
		h.Base.RopeAngle = unit.Known[unit.Angle]{}
		h.Structure.LeadAngle, h.Reeving.Sheaves[0].Angle = unit.Of(30*unit.Degree), unit.Known[unit.Angle]{}
	})
	near(t, "level", caseOf(t, c, "at rest").Demand.Val, 100*unit.G/.9/2, 1e-12)
}

// An extra pulley off the base hangs on something: it is asked for, and set against both sides of the rope. With e = .9
// and two pulleys the drum's side pulls m·g/.81, the far side m·g/.9; side by side on the ground the sum.
func TestWhatHoldsAnExtraPulley(t *testing.T) {
	foot := func(n float64, onBase string) func(*lift.Hoist) {
		return func(h *lift.Hoist) {
			h.Reeving.LeadSheaves = of[unit.Count](2)
			top := h.Reeving.Sheaves[0]
			h.Reeving.Sheaves = []lift.Sheave{{Name: "foot pulley", Efficiency: of[unit.Ratio](.9), Diameter: top.Diameter, Rating: of[unit.Force](9000), RatingOf: "hook_load",
				Angle: of[unit.Angle](0), OnBase: unit.Answer(onBase)}, top}
			if n > 0 {
				h.Reeving.Sheaves[0].Fixing = of[unit.Force](n)
			}
		}
	}
	const id, name = "redirect_sheave", "what holds foot pulley"
	wants(t, part(t, id, name, foot(0, "no")), NotKnown, "reeving.sheaves[0].fixing_working_load_n", "It must carry 294 kg")
	wants(t, part(t, id, name, foot(2000, "")), GivesWay, "", "")
	wants(t, part(t, id, name, foot(4000, "")), Holds, "", "")
	near(t, "both sides", float64(part(t, id, name, foot(4000, "no")).Demand.Val), 1.25*100*unit.G*(1/.81+1/.9), 1e-12)
	h := whole()
	foot(0, "yes")(&h)
	for _, c := range Checks(h, drive(h)) {
		if c.Part == name {
			t.Error("a pulley on the base is asked what holds it")
		}
	}
}

// A 30 mm washer under 18 mm of hole on C24: π/4·(30² − 16²) = 505.8 mm² at 3·2.5 MPa·.6/1.3 = 3.46 MPa bears 1751 N,
// the eye bolt pulls 1.35·(m·g + m·g/.9) = 2795 N.
func TestWasherInTheWood(t *testing.T) {
	bolted := func(mm float64) Check {
		return part(t, "hanger", "", func(h *lift.Hoist) {
			h.Structure.HangerKind, h.Structure.HangerFixing, h.Structure.Washer = "shoulder_eyebolt", "bolted_through_wood", of[unit.Length](mm/1000)
		})
	}
	wants(t, bolted(30), GivesWay, "", "use a larger washer")
	wants(t, bolted(60), Holds, "", "")
	k := caseOf(t, bolted(30), "at rest, washer on the wood")
	near(t, "demand", k.Demand.Val, 1.35*100*unit.G*(1+1/.9), 1e-12)
	near(t, "capacity", k.Capacity.Val, math.Pi/4*(900-256)*1e-6*3*2.5e6*.6/1.3, 1e-12)
}

// Three tubes that lean 25° together carry a mass with no beam: each takes a third over cos 25°; tan 25° = .466 is more
// than .4/1.5, so free feet slide out, and feet that are tied do not.
func TestTripod(t *testing.T) {
	legs := func(tied string) func(*lift.Hoist) {
		return func(h *lift.Hoist) {
			h.Structure.Beam = lift.Beam{Kind: "none"}
			leg := lift.Post{Kind: "steel_round_tube", Width: of[unit.Length](.0483), Wall: of[unit.Length](.0032), Yield: of[unit.Stress](235e6), Height: of[unit.Length](3),
				Fixing: "pinned_both", Share: of[unit.Ratio](1. / 3), Lean: unit.Of(25 * unit.Degree), Tied: unit.Answer(tied), FootArea: of[unit.Area](.02), Soil: "sand"}
			h.Structure.Posts = []lift.Post{leg, leg, leg}
		}
	}
	const foot = "post 2, its foot sliding out"
	wants(t, part(t, "post", foot, legs("no")), GivesWay, "", "Tie all feet together")
	wants(t, part(t, "post", foot, legs("")), NotKnown, "structure.posts[1].foot_tied", "")
	wants(t, part(t, "post", foot, legs("yes")), Holds, "", "tied to the others")
	c := part(t, "post", "post 1", legs("yes"))
	near(t, "leg", caseOf(t, c, "working, buckling").Demand.Val, 1.25*100*unit.G*(1+1/.9)/3/math.Cos(25*math.Pi/180), 1e-12)
	h := whole()
	legs("yes")(&h)
	for _, c := range Checks(h, drive(h)) {
		if c.ID == "beam" {
			t.Errorf("a tripod has a beam: %s", c.Say)
		}
	}
}

// Wires joined while it races jerk the rope too: 12 times its pull at the drum lowering, .9² less at the far end.
func TestRopeInABurst(t *testing.T) {
	h := whole()
	d := drive(h)
	d.Lowering.Shunt = false
	d.LetGo.BurstForce = of[unit.Force](12000)
	c := find(t, Checks(h, d), "rope", "")
	wants(t, c, GivesWay, "", "Wire a resistor or clamp to the motor for good")
	near(t, "far end", float64(c.Demand.Val), 12000/.9, 1e-12)
	d.Lowering.Shunt = true
	if c := find(t, Checks(h, d), "rope", ""); c.Word == GivesWay {
		t.Errorf("with what is wired for good: %s", c.Say)
	}
}

// A rope or a site of which one says indoors and nobody says outdoors is indoors; where neither says anything it counts as
// outdoors, and a yes of either is outdoors whatever the other says.
func TestOutdoorsIsTheWorseAnswer(t *testing.T) {
	for _, c := range []struct {
		a, b unit.Answer
		out  bool
	}{{unit.No, unit.No, false}, {unit.No, "", false}, {"", "", true}, {unit.Yes, "", true}, {unit.Yes, unit.No, true}, {unit.Yes, unit.Yes, true}} {
		if worseYes(c.a, c.b) != c.out || worseYes(c.b, c.a) != c.out {
			t.Errorf("%q and %q: outdoors %v", c.a, c.b, !c.out)
		}
	}
}
