package path

import (
	"math"
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// known1 writes 1 for unit.Of, so that a fixture reads like a list.
func of[T unit.Number](x float64) unit.Known[T] { return unit.Of(T(x)) }

// whole is a hoist with every input known, all checks holding or tight: 100 kg over one pulley of .9, 4 m of lift.
func whole() lift.Hoist {
	const mm, mpa = 1e-3, 1e6
	return lift.Hoist{
		Name: "whole", Units: of[unit.Count](1),
		Mass:   []lift.Piece{{Name: "block", Mass: of[unit.Mass](100), Weighed: "scale"}},
		Travel: of[unit.Length](4),
		Rope: lift.Rope{Kind: "polyester", Diameter: of[unit.Length](12 * mm), BreakingLoad: of[unit.Force](30000), Length: of[unit.Length](14),
			Ending: "splice", KnotFactor: of[unit.Ratio](.9), AgeFactor: of[unit.Ratio](.9), Outdoors: "no", Stiffness: of[unit.Force](60000)},
		Reeving: lift.Reeving{RopeParts: of[unit.Count](1), LeadSheaves: of[unit.Count](1), Efficiency: of[unit.Ratio](.9), DeadEnd: "mass",
			Sheaves: []lift.Sheave{{Name: "top", Efficiency: of[unit.Ratio](.9), Diameter: of[unit.Length](100 * mm), Rating: of[unit.Force](5000),
				RatingOf: "hook_load", Angle: of[unit.Angle](0), OnBase: "no"}}},
		Drum: lift.Drum{Diameter: of[unit.Length](100 * mm), Width: of[unit.Length](250 * mm), Flange: of[unit.Length](160 * mm), DeadWraps: of[unit.Count](3),
			Grooved: "no", FleetAngle: of[unit.Angle](.02), HubMaterial: "steel", HubOuter: of[unit.Length](60 * mm), HubAllow: of[unit.Stress](235 * mpa),
			HubFit: "cross_pin", ShaftDiameter: of[unit.Length](35 * mm), ShaftYield: of[unit.Stress](355 * mpa), ShaftSpan: of[unit.Length](60 * mm),
			BearingSpan: of[unit.Length](300 * mm), PinDiameter: of[unit.Length](8 * mm), PinYield: of[unit.Stress](640 * mpa),
			CouplingRating: of[unit.Torque](200), Coupling: "yes"},
		Train: lift.Train{Stages: []lift.Stage{{Kind: "spur", Ratio: of[unit.Ratio](5), Efficiency: of[unit.Ratio](.95), Tooth: lift.Tooth{Module: of[unit.Length](3 * mm),
			Teeth: of[unit.Count](60), FaceWidth: of[unit.Length](30 * mm), Meshes: of[unit.Count](1), Material: "steel", Strength: of[unit.Stress](355 * mpa)}}},
			CaseScrews: "yes", CaseScrewSize: of[unit.Length](6 * mm), CaseScrewCount: of[unit.Count](8), CaseScrewCircle: of[unit.Length](120 * mm), CaseScrewProof: of[unit.Stress](600 * mpa)},
		Machine: lift.Machine{K: of[unit.MachineConstant](.5), R: of[unit.Resistance](.5), I0: of[unit.Current](.2), J: of[unit.Inertia](1e-4),
			MaxSpeed: of[unit.AngularSpeed](400), MaxWinding: of[unit.Celsius](130), RthWinding: of[unit.ThermalResistance](2), TauWinding: of[unit.Duration](600), I0WithGear: "yes"},
		Raise: lift.Raise{Feed: "drive", Voltage: of[unit.Voltage](24)},
		Structure: lift.Structure{HangerRating: of[unit.Force](6000), HangerAngle: of[unit.Angle](0), HangerKind: "shackle", HeadHeight: of[unit.Length](5),
			LeadAngle: of[unit.Angle](0),
			Beam: lift.Beam{Kind: "timber", Class: "C24", Width: of[unit.Length](100 * mm), Depth: of[unit.Length](200 * mm), Span: of[unit.Length](2), Support: "two_supports",
				From: of[unit.Length](1), Bearing: of[unit.Length](100 * mm), Hole: of[unit.Length](16 * mm), OwnMass: of[unit.Mass](20)},
			Posts: []lift.Post{{Kind: "timber", Class: "C24", Width: of[unit.Length](120 * mm), Depth: of[unit.Length](120 * mm), Height: of[unit.Length](5), Fixing: "braced",
				Share: of[unit.Ratio](.5), FootArea: of[unit.Area](.16), Soil: "sand"}},
			RestsOn: "own_posts_on_ground", RestsOnOK: "yes"},
		Base: lift.Base{Where: "on_ground", Mass: of[unit.Mass](320), WeightsFixed: "yes", LoosePart: of[unit.Mass](0), Width: of[unit.Length](.9), PullHeight: of[unit.Length](.3),
			PullOffset: of[unit.Length](.02), RopeAngle: of[unit.Angle](.05), Friction: of[unit.Ratio](.4), Ground: "concrete_slab",
			Board: lift.Board{Thickness: of[unit.Length](40 * mm), Width: of[unit.Length](.6), Arm: of[unit.Length](.2), Strength: of[unit.Stress](24 * mpa)}},
		Container: lift.Container{Kind: "cage", Rating: of[unit.Force](3000), EyeRating: of[unit.Force](6000)},
		Holds: lift.Holds{Holds: []lift.Hold{{Kind: "spring_brake", OnDrum: "yes", Torque: of[unit.Torque](120)}, {Kind: "ratchet", OnDrum: "yes", Torque: of[unit.Torque](120)}},
			UpperStops:  []lift.Stop{{Kind: "limit_switch", Path: "yes"}, {Kind: "second_limit_switch", Path: "yes"}},
			SlackSwitch: "yes", BrakeDelay: of[unit.Duration](.2), RoomAbove: of[unit.Length](.5)},
		Site: lift.Site{Outdoors: "no", Earthquake: "none", Children: "no", Owner: "own", LivesBelow: "no", Helper: "yes", SelfStart: "no", ComesDown: "hand crank",
			FloorBelow: "solid_ground", PadDepth: of[unit.Length](.1), LoadWidth: of[unit.Length](.4), LoadHeight: of[unit.Length](.5), FrameHeight: of[unit.Length](5.2)},
	}
}

// drive is the drive of h by the formulas of rope and drum alone, written out on their own: T_j = T_0·e^j raising,
// T_0·e^(−j) lowering, the parts at the mass summing to m·g; torque T_0·(D + d)/2.
func drive(h lift.Hoist) lift.Drive {
	var d lift.Drive
	m, all := 0.0, len(h.Mass) > 0
	for _, p := range h.Mass {
		m += float64(p.Mass.Val)
		all = all && p.Mass.Is
	}
	if all {
		d.Mass = of[unit.Mass](m)
	}
	d.Machine.K, d.Machine.R = h.Machine.K, h.Machine.R
	if !all || !h.Reeving.RopeParts.Is || !h.Reeving.LeadSheaves.Is || !h.Reeving.Efficiency.Is {
		return d
	}
	n, k, e := int(h.Reeving.RopeParts.Val), int(h.Reeving.LeadSheaves.Val), float64(h.Reeving.Efficiency.Val)
	up, down := 0.0, 0.0
	for j := k; j < k+n; j++ {
		up += math.Pow(e, float64(j))
		down += math.Pow(e, -float64(j))
	}
	fu, fd := m*unit.G/up, m*unit.G/down
	for j := range k + n {
		d.Tensions = append(d.Tensions, lift.Tension{Part: j, Up: unit.Force(fu * math.Pow(e, float64(j))), Down: unit.Force(fd * math.Pow(e, -float64(j)))})
	}
	d.RopeUp, d.RopeDown = of[unit.Force](fu), of[unit.Force](fd)
	if !h.Drum.Diameter.Is || !h.Rope.Diameter.Is {
		return d
	}
	r := float64(h.Drum.Diameter.Val+h.Rope.Diameter.Val) / 2
	d.DrumTorqueUp = of[unit.Torque](fu * r)
	q := fu * r
	for _, s := range h.Train.Stages {
		if !s.Ratio.Is || !s.Efficiency.Is {
			return d
		}
		d.Stages = append(d.Stages, lift.StageResult{Ratio: s.Ratio.Val, OutUp: unit.Torque(q), InUp: unit.Torque(q / float64(s.Ratio.Val*s.Efficiency.Val))})
		q = q / float64(s.Ratio.Val*s.Efficiency.Val)
	}
	d.Ratio = of[unit.Ratio](5)
	if h.Machine.K.Is && h.Machine.R.Is && h.Raise.Voltage.Is {
		d.StallRopePull = of[unit.Force](1.9 * fu)
		d.Raising = lift.Raising{Known: true, Starts: true, Speed: .05, Rotor: 5}
		d.Lowering = lift.Lowering{Known: true, RunsBack: "yes", Steady: true, Speed: .04, Rotor: 4, Shunt: true}
		if h.Machine.J.Is {
			d.ReflectedMass = of[unit.Mass](1)
			if h.Holds.BrakeDelay.Is {
				d.Overtravel = of[unit.Length](.012)
				d.LetGo = lift.LetGo{Known: true, BrakeSpeed: of[unit.Speed](.3)}
			}
		}
	}
	return d
}

func find(t *testing.T, checks []Check, id, part string) Check {
	t.Helper()
	for _, c := range checks {
		if c.ID == id && (part == "" || c.Part == part) {
			return c
		}
	}
	t.Fatalf("no check %q %q", id, part)
	return Check{}
}

func near(t *testing.T, what string, got, want, rel float64) {
	t.Helper()
	if math.Abs(got-want) > rel*math.Abs(want) {
		t.Errorf("%s = %.8g, want %.8g within %g", what, got, want, rel)
	}
}
