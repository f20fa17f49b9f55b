package path

import (
	"math"
	"slices"
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

func labelOf(t *testing.T, h lift.Hoist, path string) Label {
	t.Helper()
	for _, l := range Labels(h, lift.Compute(h)) {
		if l.Path == path {
			return l
		}
	}
	t.Fatalf("no label for %s", path)
	return Label{}
}

// By hand, one rope over one pulley, both sides straight down, no friction, φ given as 1.25, 100 kg: 980.665 N.
func TestLabelsByHand(t *testing.T) {
	h := lift.Hoist{
		Mass:      []lift.Piece{{Mass: unit.Of[unit.Mass](100)}},
		Travel:    unit.Of[unit.Length](4),
		Rope:      lift.Rope{Kind: "polyester", Diameter: unit.Of(10 * unit.Millimetre), Ending: "splice", AgeFactor: unit.Of[unit.Ratio](0.8)},
		Reeving:   lift.Reeving{RopeParts: unit.Of[unit.Count](1), LeadSheaves: unit.Of[unit.Count](1), Efficiency: unit.Of[unit.Ratio](1), Sheaves: []lift.Sheave{{Diameter: unit.Of(100 * unit.Millimetre)}}},
		Drum:      lift.Drum{Diameter: unit.Of(100 * unit.Millimetre), DeadWraps: unit.Of[unit.Count](3)},
		Structure: lift.Structure{HangerKind: "shoulder_eyebolt", HangerFixing: "threaded_into_metal", HangerAngle: unit.Of[unit.Angle](0), LeadAngle: unit.Of[unit.Angle](0)},
		Base:      lift.Base{Where: "on_ground", Width: unit.Of[unit.Length](1), PullOffset: unit.Of[unit.Length](0)},
		Container: lift.Container{Kind: "cage"},
		Holds:     lift.Holds{Factor: unit.Of[unit.Ratio](1.25)},
	}
	const w = 980.665
	for _, c := range []struct {
		path string
		want float64
	}{
		// wanted 7 of the breaking load; over a pulley of 10 rope diameters .86 is left, .8 after wear
		{"rope.breaking_load_n", 7 * 1.25 * w / (0.86 * 0.8)},
		{"reeving.sheaves[0].working_load_n", 1.25 * 2 * w}, // both sides of the rope
		{"structure.hanger_working_load_n", 1.25 * 2 * w},   // straight: the whole rating counts
		{"container.working_load_n", 1.25 * w},
		{"base.mass_kg", 1.5 * 100},                             // 1.5 at rest, 1.2·1.25 = 1.5 working: the same; tipping asks for 1.5 too, the pull over the middle
		{"holds.holds[0].torque_nm", 1.25 * w * (0.05 + 0.005)}, // the drum's radius and half the rope
		{"holds.holds[1].torque_nm", 1.25 * w * (0.05 + 0.005)}, // none is named: two are asked for
	} {
		l := labelOf(t, h, c.path)
		if !settledLabel(l) || math.Abs(float64(l.Least.Val)-c.want) > 1e-6*c.want {
			t.Errorf("%s: %+v, want %.6g", c.path, l, c.want)
		}
	}

	// What the design says stands on it comes along: a pull in the rope of 80 kg is 160 kg on the hook; of 300 kg of base
	// weights 40 kg are loose.
	own := h
	own.Reeving.Sheaves = []lift.Sheave{{Rating: unit.Of(unit.Mass(80).Weight()), RatingOf: "rope_pull", Diameter: unit.Of(100 * unit.Millimetre)}}
	own.Base.Mass, own.Base.LoosePart, own.Base.WeightsFixed = unit.Of[unit.Mass](300), unit.Of[unit.Mass](40), "no"
	if l := labelOf(t, own, "reeving.sheaves[0].working_load_n"); math.Abs(float64(l.Stated.Val)-160*unit.G) > 1e-6 || math.Abs(float64(l.Least.Val)-2.5*w) > 1e-6 {
		t.Errorf("pulley: %+v", l)
	}
	if l := labelOf(t, own, "base.mass_kg"); l.Stated.Val != 260 {
		t.Errorf("base: %+v", l)
	}
	if l := labelOf(t, own, "rope.breaking_load_n"); l.Stated.Is {
		t.Errorf("rope: %+v", l)
	}

	// At 20° a shoulder eye bolt keeps 65 %: its stamp must say 1/.65 of the pull.
	h.Structure.HangerAngle = unit.Of(20 * unit.Degree)
	if l := labelOf(t, h, "structure.hanger_working_load_n"); math.Abs(float64(l.Least.Val)-1.25*2*w/0.65) > 1e-3 {
		t.Errorf("at 20°: %+v", l)
	}
	// Screwed into wood it stays not known, whatever is stamped on it.
	wood := h
	wood.Structure.HangerFixing = "screwed_into_wood"
	if l := labelOf(t, wood, "structure.hanger_working_load_n"); settledLabel(l) || !l.Open {
		t.Errorf("screwed into wood: %+v", l)
	}
	// Beyond 45° no eye bolt will do.
	h.Structure.HangerAngle = unit.Of(60 * unit.Degree)
	if l := labelOf(t, h, "structure.hanger_working_load_n"); !l.None || settledLabel(l) {
		t.Errorf("at 60°: %+v", l)
	}
	// What the ending is, is not known: no number that pretends.
	h.Rope.Ending = ""
	if l := labelOf(t, h, "rope.breaking_load_n"); settledLabel(l) || !l.Least.Is {
		t.Errorf("ending not known: %+v", l)
	}
	// Nothing known at all: no numbers.
	for _, l := range Labels(lift.Hoist{}, lift.Compute(lift.Hoist{})) {
		if settledLabel(l) {
			t.Errorf("of nothing: %+v", l)
		}
	}
}

// The law that labels stand for: with every label as asked for no check of them gives way, and with any one of them a
// thousandth smaller one does.
func TestLabelsAreTheBorder(t *testing.T) {
	h := labelled()
	d := lift.Compute(h)
	set := map[string]func(*lift.Hoist, float64){
		"container.working_load_n":                 func(h *lift.Hoist, x float64) { h.Container.Rating = unit.Of(unit.Force(x)) },
		"rope.breaking_load_n":                     func(h *lift.Hoist, x float64) { h.Rope.BreakingLoad = unit.Of(unit.Force(x)) },
		"reeving.sheaves[0].working_load_n":        func(h *lift.Hoist, x float64) { h.Reeving.Sheaves[0].Rating = unit.Of(unit.Force(x)) },
		"reeving.sheaves[1].working_load_n":        func(h *lift.Hoist, x float64) { h.Reeving.Sheaves[1].Rating = unit.Of(unit.Force(x)) },
		"reeving.sheaves[2].working_load_n":        func(h *lift.Hoist, x float64) { h.Reeving.Sheaves[2].Rating = unit.Of(unit.Force(x)) },
		"reeving.sheaves[0].fixing_working_load_n": func(h *lift.Hoist, x float64) { h.Reeving.Sheaves[0].Fixing = unit.Of(unit.Force(x)) },
		"structure.hanger_working_load_n":          func(h *lift.Hoist, x float64) { h.Structure.HangerRating = unit.Of(unit.Force(x)) },
		"base.mass_kg":                             func(h *lift.Hoist, x float64) { h.Base.Mass = unit.Of(unit.Mass(x)) },
		"drum.coupling_torque_nm":                  func(h *lift.Hoist, x float64) { h.Drum.CouplingRating = unit.Of(unit.Torque(x)) },
		"train.stages[0].rated_torque_nm":          func(h *lift.Hoist, x float64) { h.Train.Stages[0].Rated = unit.Of(unit.Torque(x)) },
		"holds.holds[0].torque_nm":                 func(h *lift.Hoist, x float64) { h.Holds.Holds[0].Torque = unit.Of(unit.Torque(x)) },
		"holds.holds[1].force_n":                   func(h *lift.Hoist, x float64) { h.Holds.Holds[1].Force = unit.Of(unit.Force(x)) },
	}
	labels := Labels(h, d)
	if len(labels) != len(set) {
		t.Fatalf("%d labels, want %d: %+v", len(labels), len(set), labels)
	}
	breaks := func(h lift.Hoist) (n int) {
		for _, c := range Checks(h, d) {
			switch c.ID {
			case "container", "rope", "knot", "head_sheave", "redirect_sheave", "hanger", "base_uplift", "base_sliding", "base_overturning", "coupling", "holds":
			case "gear_tooth":
				if c.Demand.In != unit.NewtonMetres {
					continue
				}
			default:
				continue
			}
			if c.Word == GivesWay {
				n++
			}
		}
		return n
	}
	whole := clone(h)
	for _, l := range labels {
		if !settledLabel(l) || set[l.Path] == nil {
			t.Fatalf("%+v", l)
		}
		set[l.Path](&whole, float64(l.Least.Val)*(1+1e-9))
	}
	if n := breaks(whole); n > 0 {
		t.Errorf("%d checks give way with every label as asked for", n)
	}
	for _, l := range labels {
		short := clone(whole)
		set[l.Path](&short, float64(l.Least.Val)*0.999)
		if breaks(short) == 0 {
			t.Errorf("%s may be a thousandth smaller, and nothing gives way", l.Path)
		}
	}
}

func clone(h lift.Hoist) lift.Hoist {
	h.Reeving.Sheaves = append([]lift.Sheave{}, h.Reeving.Sheaves...)
	h.Train.Stages = append([]lift.Stage{}, h.Train.Stages...)
	h.Holds.Holds = append([]lift.Hold{}, h.Holds.Holds...)
	return h
}

// labelled is a hoist of two ropes and three pulleys with all that bears a label.
func labelled() lift.Hoist {
	return lift.Hoist{
		Mass:   []lift.Piece{{Mass: unit.Of[unit.Mass](180)}},
		Travel: unit.Of[unit.Length](3),
		Rope:   lift.Rope{Kind: "polyester", Diameter: unit.Of(10 * unit.Millimetre), Ending: "bowline", Outdoors: "yes", Stiffness: unit.Of[unit.Force](100e3)},
		Reeving: lift.Reeving{RopeParts: unit.Of[unit.Count](2), LeadSheaves: unit.Of[unit.Count](2), Efficiency: unit.Of[unit.Ratio](0.9), DeadEnd: "beam",
			Sheaves: []lift.Sheave{{Angle: unit.Of(90 * unit.Degree), OnBase: "no"}, {Angle: unit.Of(20 * unit.Degree)}, {Diameter: unit.Of(80 * unit.Millimetre)}}},
		Drum:      lift.Drum{Diameter: unit.Of(80 * unit.Millimetre), Width: unit.Of(200 * unit.Millimetre), DeadWraps: unit.Of[unit.Count](3), Coupling: "yes"},
		Train:     lift.Train{Stages: []lift.Stage{{Kind: "box", Ratio: unit.Of[unit.Ratio](60), Efficiency: unit.Of[unit.Ratio](0.8)}}},
		Structure: lift.Structure{HangerKind: "shackle", HangerAngle: unit.Of(30 * unit.Degree), HeadHeight: unit.Of[unit.Length](4)},
		Base: lift.Base{Where: "on_ground", WeightsFixed: "yes", Width: unit.Of[unit.Length](0.7), PullOffset: unit.Of[unit.Length](0.1), PullHeight: unit.Of[unit.Length](0.3),
			RopeAngle: unit.Of(15 * unit.Degree), Friction: unit.Of[unit.Ratio](0.3)},
		Container: lift.Container{Kind: "crate"},
		Machine:   lift.Machine{K: unit.Of[unit.MachineConstant](0.06), R: unit.Of[unit.Resistance](1), I0: unit.Of[unit.Current](0.3), J: unit.Of[unit.Inertia](1e-4)},
		Raise:     lift.Raise{Feed: "relay", Voltage: unit.Of[unit.Voltage](24)},
		Holds:     lift.Holds{Holds: []lift.Hold{{Kind: "spring_brake", OnDrum: "yes"}, {Kind: "locking_pin", OnDrum: "yes"}}, Factor: unit.Of[unit.Ratio](1.4)},
	}
}

// Clips on fibre rope have no published share: however strong the rope, the ending is not known until the user gives a
// share; it gives way where even the careful one does.
func TestClipsOnFibreAreNotKnown(t *testing.T) {
	clips := func(load unit.Force) func(*lift.Hoist) {
		return func(h *lift.Hoist) {
			h.Rope.Kind, h.Rope.Ending, h.Rope.KnotFactor, h.Rope.BreakingLoad = "polyester", "clips", unit.Known[unit.Ratio]{}, unit.Of(load)
		}
	}
	if c := checkOf(t, "knot", clips(1e6)); c.Word != NotKnown || !slices.Contains(c.Missing, "rope.knot_factor") {
		t.Errorf("%s %v", c.Word, c.Missing)
	}
	if c := checkOf(t, "knot", clips(100)); c.Word != GivesWay {
		t.Errorf("%s", c.Word)
	}
	if c := checkOf(t, "knot", func(h *lift.Hoist) { clips(1e6)(h); h.Rope.KnotFactor = of[unit.Ratio](.45) }); c.Word != Holds {
		t.Errorf("%s %v", c.Word, c.Missing)
	}
}

// settledLabel reports whether the least label is the whole answer.
func settledLabel(l Label) bool { return l.Least.Is && len(l.Missing) == 0 && !l.Open && !l.None }
