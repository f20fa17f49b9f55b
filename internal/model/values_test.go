package model_test

import (
	"math"
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/lift/ready"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
)

// base is the hoist of the plan that is ready, at the heaviest of its weighing: 120 kg on a scale, and 2 % more.
func base(t *testing.T) lift.Hoist {
	t.Helper()
	doc, err := readPlans(t).document(t, plan{Base: "hoist"})
	if err != nil {
		t.Fatal(err)
	}
	h := *doc.Variants[0].HoistAt(0)
	h.Mass = []lift.Piece{{Name: "all that hangs", Mass: unit.Of(unit.Mass(122.4)), Weighed: lift.ByScale}}
	return h
}

func about(t *testing.T, what string, got, want, by float64) {
	t.Helper()
	if !(math.Abs(got-want) <= by) {
		t.Errorf("%s: %v, want %v", what, got, want)
	}
}

// The fall of 122.4 kg until it is caught, by hand. The drum's radius is (100 + 12)/2 = 56 mm. The mass sinks at
// 0.0145 m/s; 0.2 s of free fall add 9.80665·0.2 = 1.9613 m/s.
func TestFallByHand(t *testing.T) {
	h := base(t)
	d := lift.Compute(h)
	planned := h
	planned.Mass = []lift.Piece{{Mass: unit.Of(unit.Mass(120))}}
	about(t, "drum whole, as planned", float64(lift.Compute(planned).LetGo.BrakeSpeed.Val), 0.0208, 5e-5)
	v0 := float64(d.Lowering.Fastest())
	free, _ := path.FallTo(unit.Speed(v0), unit.Speed(v0), 0.2)
	about(t, "drum free", float64(free), 1.976, 5e-4)
	about(t, "radius", float64(d.Winding.RadiusLast.Val), 0.056, 1e-12)

	// A brake of 110 N·m slows with 88: a = 88/(0.056·122.4) − 9.80665 = 3.0318 m/s².
	// 0.2 s: v = 0.3 + 1.9613, s = 0.0046 + 0.06 + 0.1961 + 2.2613²/6.0636; 0.1 s: v = 1.2807, s = 0.0836 + 0.2705.
	for _, c := range []struct{ delay, speed, fall float64 }{{0.2, 2.261, 1.104}, {0.1, 1.281, 0.354}} {
		h.Holds.Holds = []lift.Hold{{Kind: lift.HoldSpringBrake, OnDrum: unit.Yes, Trips: unit.Yes, Torque: unit.Of(unit.Torque(110)),
			TripsAt: unit.Of(unit.Speed(0.3)), ActsIn: unit.Of(unit.Duration(c.delay))}}
		k := path.Catches(h, d)[0]
		about(t, "brake, speed", float64(k.Speed), c.speed, 5e-4)
		about(t, "brake, fall", float64(k.Fall), c.fall, 5e-4)
		about(t, "brake, torque", float64(k.Torque), 1.3*110, 1e-9)
	}

	// A catch: v = √(0.09 + 2·9.80665·0.02); k = 21,521 N/m; 1 + 0.6945/9.80665·√(21,521/122.4) = 1.939; 122.4·9.80665·1.939.
	// The torque of that pull on 56 mm is 130 N·m.
	for _, c := range []struct{ way, speed, pull, torque, off float64 }{{0.02, 0.6945, 2328, 130, 1}, {1.2, 4.8607, 9090, 509, 10}} {
		h.Holds.Holds = []lift.Hold{{Kind: lift.HoldOverspeedCatch, OnDrum: unit.Yes, Trips: unit.Yes, Torque: unit.Of(unit.Torque(150)),
			TripsAt: unit.Of(unit.Speed(0.3)), EngagesIn: unit.Of(unit.Length(c.way))}}
		k := path.Catches(h, d)[0]
		about(t, "catch, speed", float64(k.Speed), c.speed, 5e-4)
		about(t, "catch, pull", float64(k.Pull), c.pull, c.off)
		about(t, "catch, torque", float64(k.Torque), c.torque, 1)
	}
	left, ok := path.RopeLeft(h, d)
	if !ok || math.Abs(float64(left)/2-6550) > 5 { // twice the pull, of 13.1 kN
		t.Errorf("rope keeps %v", left)
	}
}

// What pushes the frame sideways, by hand: the rope 122.4·9.80665/0.92·sin 12° = 271 N; an earthquake with 0.2 and 0.4 of
// 122.4 kg, 22 kg of beam and half of two posts of 5.9 m · (0.12 m)² · 420 kg/m³: 353 and 706 N. Wind on the beam,
// 1.6 m · 0.2 m, and half of the posts, 2 · 5.9 m · 0.12 m/2: 1.028 m² · 975.4 Pa = 1002.7 N, and on the mass, 0.4 m · 0.3 m,
// 179.2 Pa · 0.12 m² = 21.5 N, or a storm's 117 N.
func TestSidewaysByHand(t *testing.T) {
	h := base(t)
	s := path.SidewaysOf(h, lift.Compute(h))
	for _, c := range []struct {
		quake     lift.Earthquakes
		out, plan bool
		want      float64
	}{{lift.EarthquakesNone, false, true, 271}, {lift.EarthquakesSome, false, true, 624}, {lift.EarthquakesStrong, false, true, 978},
		{lift.EarthquakesNone, true, true, 1295.5}, {lift.EarthquakesNone, true, false, 1391}} {
		about(t, string(c.quake), float64(ready.SideForce(s, c.quake, c.out, c.plan)), c.want, 0.6)
	}
	about(t, "braced", float64(h.Structure.SidePull.Val), 588.4, 0.1)
}

// Height by hand: travel 4.5 + mass 0.3 + shackle 0.1 + pad 0.15 + room 0.6 + half the pulley 0.05 = 5.70 m of 5.75. Rope:
// 5.75 − 0.3 − 0.1 − 0.15 = 5.2 m down to the mass, (5.75 − 0.35)/cos 12° = 5.521 to the drum, 3½ turns of π·0.112 m =
// 1.2315: 11.95 m with the pad's height taken off.
func TestClashesByHand(t *testing.T) {
	h := base(t)
	if got := ready.Clashes(h); len(got) > 0 {
		t.Errorf("the plan that is ready clashes: %v", got)
	}
	for _, c := range []struct {
		id     string
		change func(*lift.Hoist)
		by     float64
	}{
		{"geometry_height", func(h *lift.Hoist) { h.Travel = unit.Of(unit.Length(4.5 + 0.05 + 0.01)) }, 0.01},
		{"geometry_rope", func(h *lift.Hoist) { h.Rope.Length = unit.Of(unit.Length(11.94)) }, 0.0122},
		{"geometry_posts", func(h *lift.Hoist) { h.Structure.Posts[0].Height = unit.Of(unit.Length(5.7)) }, 0.1}, // 5.75 + 0.05 − 5.7
		// 0.71·1.2 + 0.05 = 0.902 m of 0.8 − 0.06
		{"geometry_width", func(h *lift.Hoist) { h.Site.LoadWidth = unit.Of(unit.Length(1.2)) }, 0.162},
		// 0.71·0.4 + 0.05 + 0.4 = 0.734 m of 5.4·tan 6° = 0.5676
		{"geometry_drive", func(h *lift.Hoist) { h.Structure.LeadAngle = unit.Of(unit.Angle(6 * math.Pi / 180)) }, 0.1664},
	} {
		h := base(t)
		c.change(&h)
		found := false
		for _, k := range ready.Clashes(h) {
			if k.ID == c.id {
				found = true
				if k.Word != reason.No {
					t.Errorf("%s: %s", c.id, k.Word)
				}
				about(t, c.id, float64(k.By), c.by, 1e-4)
			}
		}
		if !found {
			t.Errorf("%s is not seen: %v", c.id, ready.Clashes(h))
		}
	}
}

// Warmth by hand: 4 K/W · 16 A² · 0.8 Ω = 51.2 K, and copper grows: 51.2/(1 − 0.00393·51.2) = 64.1 K. With 24 V/11 A =
// 2.182 Ω: 139.6/(1 − 0.5488) = 309.5 K. At 3 Ω it never settles: 0.00393·192 is 0.75, at 4 Ω 1.006.
func TestWarmthByHand(t *testing.T) {
	about(t, "of the sheet", ready.Warmth(4, 4, 0.8), 64.1, 0.05)
	about(t, "of another motor", ready.Warmth(4, 4, 24.0/11), 309.5, 0.05)
	if !math.IsInf(ready.Warmth(4, 4, 4), 1) || math.IsInf(ready.Warmth(4, 4, 3), 1) {
		t.Error("where it never settles")
	}
}

// Twenty panels of 22.5 V at −10.3 °C: 450·(1 + 0.003·35.3) = 497.7 V; by the table for −10 to −15 °C 450·1.16 = 522 V.
func TestStringByHand(t *testing.T) {
	sheet := panel.Sheet{Voc: unit.Of(unit.Voltage(22.5)), Beta: unit.Of(unit.PerKelvin(-0.003))}
	about(t, "by the coefficient", float64(panel.Array{Sheet: &sheet}.OpenCold(20, -10.3)), 497.7, 0.05)
	sheet.Beta = unit.Known[unit.PerKelvin]{}
	about(t, "by the table", float64(panel.Array{Sheet: &sheet}.OpenCold(20, -10.3)), 522, 0.05)
}

// A catch that stops the fall of 122.4 kg pulls with 1.939 times its weight (TestFallByHand), and so does the line to the
// drum, 1200.3/0.92·cos 12° = 1276.2 N at rest: 1.939·(1200.3 + 1276.2) = 4802 N on the middle of 1.6 m of beam, with 22 kg of
// its own. M = 4802·1.6/4 + 22·9.80665·1.6/8 = 1964 N·m on 0.1·0.2²/6 m³: 2.946 MPa. C24 for a moment, k_mod 0.9 and no size
// factor at 0.2 m, breaks at 0.9·24 = 21.6 MPa. A post of a half: 2401 + 107.9 N.
func TestCatchOnBeamAndPostByHand(t *testing.T) {
	h := base(t)
	seen := 0
	for _, k := range path.Checks(h, lift.Compute(h)) {
		for _, c := range k.Cases {
			switch {
			case k.Part == "the beam" && c.Name == "a gear breaks, and the catch stops the fall, bending":
				seen++
				about(t, "stress", c.Demand.Val, 2.946e6, 3e3)
				about(t, "strength", c.Capacity.Val, 21.6e6, 1)
				about(t, "wanted", float64(c.Wanted), 2, 0)
			case k.Part == "post 1" && c.Name == "a gear breaks, and the catch stops the fall, buckling":
				seen++
				about(t, "on the post", c.Demand.Val, 2509, 3)
			}
		}
	}
	if seen != 2 {
		t.Errorf("%d of two lines", seen)
	}
}
