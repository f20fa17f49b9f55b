package path

import (
	"math"
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

func caseOf(t *testing.T, c Check, name string) Case {
	t.Helper()
	for _, k := range c.Cases {
		if k.Name == name {
			return k
		}
	}
	t.Fatalf("%s has no case %q", c.ID, name)
	return Case{}
}

// Straight up at e = 1 beside the middle: 981 N at .2 m from the middle of a base .8 wide tips about the far edge with
// 981·(.4 + .2) = 588.4 N·m; with a level part H at .3 m towards the near edge, H·.3 + V·(.4 − .2) is compared.
func TestTippingAboutBothEdges(t *testing.T) {
	tip := func(angle float64) float64 {
		c := checkOf(t, "base_overturning", func(h *lift.Hoist) {
			h.Reeving.Efficiency = of[unit.Ratio](1)
			h.Base.Width, h.Base.PullOffset, h.Base.PullHeight, h.Base.RopeAngle = of[unit.Length](.8), of[unit.Length](.2), of[unit.Length](.3), unit.Of(unit.Angle(angle))
		})
		return caseOf(t, c, "at rest").Demand.Val
	}
	w := 100 * unit.G
	near(t, "straight up", tip(0), w*.6, 1e-12)
	near(t, "level", tip(math.Pi/2), w*.3, 1e-9)
	a := math.Pi / 4
	near(t, "at 45°", tip(a), math.Max(w*math.Sin(a)*.3+w*math.Cos(a)*.2, w*math.Cos(a)*.6-w*math.Sin(a)*.3), 1e-12)
}

// A cross hole doubles the stress while working, and the net section takes events: T = 61.02 N·m, M = 1089.6 N·.048 m.
func TestShaftCases(t *testing.T) {
	c := checkOf(t, "shaft", func(h *lift.Hoist) { h.Structure.Beam = lift.Beam{} })
	f := 100 * unit.G / .9
	m, q := f*.06*.24/.3, f*.056
	net := ShaftStress(m, q, .035, .008)
	near(t, "working", caseOf(t, c, "working").Demand.Val, 1.25*2*net, 1e-12)
	near(t, "stalled", caseOf(t, c, "upper stop missed, motor stalled").Demand.Val, (1.9+.05*math.Sqrt(60000/5.5)/f)*net, 1e-12) // and the rotor's swing, as in TestRopeEvents
	// √(σ² + 3τ²) on the whole section, by hand: σ = 32·M/(π·D³), τ = 16·T/(π·D³)
	d3 := math.Pi * .035 * .035 * .035
	near(t, "no hole", ShaftStress(m, q, .035, 0), math.Sqrt(math.Pow(32*m/d3, 2)+3*math.Pow(16*q/d3, 2)), 1e-12)
	c = checkOf(t, "shaft", func(h *lift.Hoist) { h.Drum.BearingSpan = unit.Known[unit.Length]{} })
	near(t, "overhung", caseOf(t, c, "working").Demand.Val, 1.25*2*ShaftStress(f*.06, q, .035, .008), 1e-12)
}

// A planetary stage of 12 sun teeth, module 2, two meshes: W = 2·T_in/(m·12·2), T_in the sun's torque.
func TestPlanetaryTooth(t *testing.T) {
	h := whole()
	s := &h.Train.Stages[0]
	s.Kind, s.SunTeeth = "planetary", of[unit.Count](12)
	s.Tooth.Module, s.Tooth.Teeth, s.Tooth.Meshes = of[unit.Length](.002), of[unit.Count](18), of[unit.Count](2)
	c := find(t, Checks(h, drive(h)), "gear_tooth", "")
	out := 100 * unit.G / .9 * .056
	w := 2 * out / (5 * .95) / (.002 * 12 * 2)
	near(t, "stress", caseOf(t, c, "at rest").Demand.Val, w/(.03*.002*.309), 1e-12)
	// Barth at the pitch line: rotor 5 rad/s, ratio 5, 18 mm: v = 1·.018 m/s
	near(t, "working", caseOf(t, c, "working").Demand.Val, 1.25*(6.1+.018)/6.1*w/(.03*.002*.309), 1e-12)
	s.SunTeeth = unit.Known[unit.Count]{}
	c = find(t, Checks(h, drive(h)), "gear_tooth", "")
	near(t, "sun not known", caseOf(t, c, "at rest").Demand.Val, 2*out/(.002*18*2)/(.03*.002*.309), 1e-12)
	s.Kind, s.Rated, s.Tooth = "box", of[unit.Torque](60), lift.Tooth{}
	c = find(t, Checks(h, drive(h)), "gear_tooth", "")
	near(t, "box", caseOf(t, c, "working").Demand.Val, 1.25*out, 1e-12)
	if c.Word != GivesWay {
		t.Errorf("76 N·m on a box of 60: %s", c.Word)
	}
}

// Room: stop distance 12 mm, so 2·.012 + .1 = .124 m.
func TestRoomAbove(t *testing.T) {
	for _, x := range []struct {
		room float64
		want Word
	}{{.123, GivesWay}, {.124, Holds}} {
		c := checkOf(t, "overhoist", func(h *lift.Hoist) { h.Holds.RoomAbove = of[unit.Length](x.room) })
		if c.Word != x.want {
			t.Errorf("room %g: %s", x.room, c.Word)
		}
	}
}

// Events on the rope at the top: rope 5 m of line and .5 m over the mass, EA 60 kN; strength left 30000·.9·.835.
func TestRopeEvents(t *testing.T) {
	h := whole()
	h.Structure.Beam = lift.Beam{} // rigid
	checks := Checks(h, drive(h))
	k, m := 60000/5.5, 100.
	w, left := m*unit.G, 30000*.9*.835
	slack := find(t, checks, "slack", "")
	near(t, "slack", float64(slack.Demand.Val), w*(1+math.Sqrt(1+2*.012*k/w)), 1e-12)
	near(t, "left", float64(slack.Capacity.Val), left, 1e-12)
	near(t, "brake", float64(find(t, checks, "brake_catch", "").Demand.Val), w+.3*math.Sqrt(k*m), 1e-12)
	stall := find(t, checks, "overhoist", "the rope, if the mass runs past the upper stop")
	near(t, "stall", float64(stall.Demand.Val), 1.9*w/.9+.05*math.Sqrt(k*1), 1e-12)
	if slack.Wanted != 2 {
		t.Errorf("wanted %v on breaking", slack.Wanted)
	}
	for _, s := range []string{"", "no"} {
		h.Holds.SlackSwitch = unit.Answer(s)
		if c := find(t, Checks(h, drive(h)), "slack", ""); c.Word != NotKnown {
			t.Errorf("slack switch %q: %s", s, c.Word)
		}
	}
	// The base at the pull of the stalled motor and the swing of its rotor, times cos .05, against 320 kg.
	b := find(t, checks, "overhoist", "the base, if the mass runs past the upper stop")
	near(t, "base", float64(b.Demand.Val), (1.9*w/.9+.05*math.Sqrt(k*1))*math.Cos(.05), 1e-12)
}

// C24 at λ = 100: λ_rel = 100/π·√(21/7400) = 1.69568, k = .5·(1 + .2·1.39568 + 2.87533) = 2.07723,
// k_c = 1/(2.07723 + √(4.31489 − 2.87533)) = .30516.
func TestBucklingShare(t *testing.T) {
	c, _ := timberOf("C24")
	near(t, "k_c", c.kc(100), .30516, 1e-4)
	near(t, "stocky", c.kc(10), 1, 0)
	// 120 square, 5 m, braced: λ = 5/(.12/√12) = 144.3; buckling wanted 3 on Euler, π²·7400e6·1.728e-5/25 = 50.48 kN
	p := checkOf(t, "post", func(*lift.Hoist) {})
	k := caseOf(t, p, "working, buckling")
	near(t, "critical", k.Capacity.Val, math.Pi*math.Pi*7400e6*math.Pow(.12, 4)/12/25, 1e-12)
	if k.Wanted != 3 || k.OK != 5 {
		t.Errorf("borders %v and %v, want 3 and 5", k.Wanted, k.OK)
	}
	pressed := caseOf(t, p, "at rest, pressed")
	near(t, "pressed", pressed.Capacity.Val, c.kc(5/(.12/math.Sqrt(12)))*.6*21e6/1.3, 1e-12)
	hoist := 100 * unit.G * (1 + 1/.9)
	near(t, "force", pressed.Demand.Val, 1.35*.5*(hoist+20*unit.G)/.0144, 1e-12)
	near(t, "factor of a fixed foot", lengthFactor("fixed_foot_pinned_top"), .8, 0)
}

// The beam of the whole hoist: shear f_v·.67·.6/1.3 = 1.237 MPa; crushed f_c,90·.6/1.3 = 1.154 MPa over 100×100 mm;
// sag with creep 1.8 of P·L³/48·EI against L/240; beside a hole of 16 mm (b − 16)·h²/6.
func TestBeamCases(t *testing.T) {
	c := checkOf(t, "beam", func(h *lift.Hoist) { h.Structure.Beam.OwnMass = of[unit.Mass](0) })
	p := 100 * unit.G * (1 + 1/.9)
	shear := caseOf(t, c, "at rest, shear")
	near(t, "shear bears", shear.Capacity.Val, .6*4e6*.67/1.3, 1e-12)
	near(t, "shear", shear.Demand.Val, 1.5*1.35*p/2/.02, 1e-12)
	crushed := caseOf(t, c, "working, crushed at the support")
	near(t, "crushed", crushed.Demand.Val, 1.25*1.35*p/2/.01, 1e-12)
	near(t, "crushed bears", crushed.Capacity.Val, .9*2.5e6/1.3, 1e-12)
	hole := caseOf(t, c, "at rest, bending beside the hole")
	near(t, "hole", hole.Demand.Val, 1.35*p*2/4/((.1-.016)*.04/6), 1e-12)
	sag := caseOf(t, c, "sags in the long run")
	near(t, "sag", sag.Demand.Val, 1.8*p*8/(48*11e9*.1*.008/12), 1e-12)
	near(t, "may sag", sag.Capacity.Val, 2./240, 1e-12)
	// Outdoors k_mod .5 and creep 3; a shallow beam of 100 mm gains (150/100)^.2.
	c = checkOf(t, "beam", func(h *lift.Hoist) { h.Site.Outdoors, h.Structure.Beam.Depth = "yes", of[unit.Length](.1) })
	near(t, "outdoors, shallow", caseOf(t, c, "at rest, bending").Capacity.Val, .5*24e6*math.Pow(1.5, .2)/1.3, 1e-12)
}

// A board of 30×300 on edge over 4 m tips over: σ_crit = .78·.0009·7.4e9/(.3·(3.2 + .6)) = 4.557 MPa,
// λ = √(24/4.557) = 2.295, k_crit = 1/λ² = .1899. A beam of 100×200 over 2 m keeps all.
func TestTallThinBeamTips(t *testing.T) {
	m := member{kind: "timber", t: must24()}
	near(t, "tall", m.tilting(rectangle(.03, .3), 4), .1899, 1e-3)
	near(t, "stout", m.tilting(rectangle(.1, .2), 2), 1, 0)
}

// A beam of square steel tube 80×80×4, S235, 2 m: W = (80⁴ − 72⁴)/(12·40) mm³ = 29.35 cm³; 1.35·2070.3·2/4 N·m over it.
func TestSteelTubeBeam(t *testing.T) {
	c := checkOf(t, "beam", func(h *lift.Hoist) {
		h.Structure.Beam = lift.Beam{Kind: "steel_tube", Width: of[unit.Length](.08), Depth: of[unit.Length](.08), Wall: of[unit.Length](.004), Yield: of[unit.Stress](235e6),
			Span: of[unit.Length](2), Support: "two_supports", Hole: of[unit.Length](0), OwnMass: of[unit.Mass](0)}
	})
	k := caseOf(t, c, "at rest, bending")
	near(t, "bending", k.Demand.Val, 1.35*100*unit.G*(1+1/.9)*2/4/29.35e-6, 1e-3)
	near(t, "bears", k.Capacity.Val, 235e6, 0)
	if c.Word != Holds {
		t.Errorf("%s %s", c.Word, c.Say)
	}
}

// On a wall nothing is known; a mass outdoors leans: 240 kg and 1 m² at 1 kN lean over 20°.
func TestWallAndWind(t *testing.T) {
	if c := checkOf(t, "base_uplift", func(h *lift.Hoist) { h.Base.Where = "on_wall" }); c.Word != NotKnown {
		t.Errorf("on a wall: %s", c.Word)
	}
	h := whole()
	h.Site.Outdoors, h.Site.LoadWidth, h.Site.LoadHeight, h.Mass[0].Mass = "yes", of[unit.Length](1), of[unit.Length](1), of[unit.Mass](240)
	z := HazardsOf(h, drive(h))
	near(t, "lean", z.WindLean.Val.Degrees(), 22.5, .02)
	near(t, "swing", float64(z.SwingRadius.Val), 4*math.Sin(float64(z.WindLean.Val))+.5, 1e-12)
}

func BenchmarkChecks(b *testing.B) {
	h := whole()
	d := drive(h)
	for b.Loop() {
		Checks(h, d)
	}
}

// Sections against each other: a box whose wall reaches the middle is the whole rectangle, a tube whose wall does is
// the whole bar; a thin ring has W = π·d²·t/4 and shear area A/2.
func TestSections(t *testing.T) {
	box, rect := boxTube(.1, .2, .05), rectangle(.1, .2)
	near(t, "box, area", box.area, rect.area, 1e-12)
	near(t, "box, W", box.w, rect.w, 1e-12)
	near(t, "box, weak", box.least, rect.least, 1e-12)
	tube, bar := roundTube(.1, .05), roundBar(.1)
	near(t, "tube, area", tube.area, bar.area, 1e-12)
	near(t, "tube, W", tube.w, bar.w, 1e-12)
	thin := roundTube(.1, .0001)
	near(t, "ring, W", thin.w, math.Pi*.1*.1*.0001/4, .005)
	near(t, "ring, shear", thin.shear, thin.area/2, 1e-12)
	near(t, "bar, shear", roundBar(.1).shear, math.Pi*.01/4*.75, 1e-12)
	near(t, "bar beside a hole", bar.net(.01), math.Pi*1e-3/32-.01*.01/6, 1e-12)
	near(t, "box beside a hole", boxTube(.1, .1, .005).net(.02), boxTube(.1, .1, .005).w-.02*.005*.1, 1e-12)
	if rect.net(.2) != 0 {
		t.Error("a hole as wide as the beam leaves nothing")
	}
	near(t, "radius", rectangle(.1, .1).radius(), .1/math.Sqrt(12), 1e-12)
}

// Drum and rope: 100/12 rope diameters; a printed hub wants 5; screws 6 mm, eight on 120 mm in shear.
func TestDrumParts(t *testing.T) {
	c := checkOf(t, "bend_ratio", func(*lift.Hoist) {})
	near(t, "D/d", float64(c.Had.Val), 100./12, 1e-12)
	c = checkOf(t, "drum_hub", func(h *lift.Hoist) { h.Drum.HubMaterial = "printed" })
	if k := caseOf(t, c, "working, hub pressed"); k.Wanted != 5 || k.OK != 10 {
		t.Errorf("a printed hub wants %v, OK %v", k.Wanted, k.OK)
	}
	if k := caseOf(t, c, "upper stop missed, motor stalled"); k.Wanted != 2 {
		t.Errorf("a printed hub breaks: an event wants %v", k.Wanted)
	}
	q := 100 * unit.G / .9 * .056
	near(t, "screws", ScrewShear(q, .006, 8, .12), 2*q/.12/8/(.75*math.Pi*9e-6), 1e-12)
	c = checkOf(t, "coupling", func(*lift.Hoist) {})
	near(t, "coupling", caseOf(t, c, "working").Demand.Val, 1.25*q, 1e-12)
	near(t, "coupling's peak", caseOf(t, c, "upper stop missed, motor stalled").Capacity.Val, 400, 1e-12)
	c = checkOf(t, "drum_capacity", func(*lift.Hoist) {})
	// 250/12 → 20 wraps, (160 − 100)/24 → 2 layers: 20·π·(.112 + .112 + 2·.87·.012)
	near(t, "room", float64(c.Capacity.Val), 20*math.Pi*(2*.112+2*.87*.012), 1e-12)
	near(t, "wound", float64(c.Demand.Val), 4+3*math.Pi*.112, 1e-12)
	c = checkOf(t, "base_board", func(*lift.Hoist) {})
	near(t, "board", caseOf(t, c, "at rest, bending").Demand.Val, 1.35*6*100*unit.G/.9*math.Cos(.05)*.2/(.6*.0016), 1e-12)
	for _, fit := range []string{"press", "glue", "set_screw"} {
		if c = checkOf(t, "drum_hub", func(h *lift.Hoist) { h.Drum.HubFit = lift.HubFit(fit) }); c.Word != NotKnown {
			t.Errorf("a hub held by %s: %s", fit, c.Word)
		}
	}
	c = checkOf(t, "drum_hub", func(h *lift.Hoist) {
		h.Drum.HubFit, h.Drum.KeyWidth, h.Drum.KeyLength, h.Drum.KeyYield = "key", of[unit.Length](.010), of[unit.Length](.05), of[unit.Stress](355e6)
	})
	near(t, "hub at the key", caseOf(t, c, "working, hub pressed").Demand.Val, 1.25*4*q/(.035*.01*.05), 1e-12)
}
