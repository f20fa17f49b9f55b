package ready

import (
	"encoding/json"
	"math"
	"os"
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/unit"
)

// tested is a proof that counts on the day it is looked at, of a metal part on a bench.
func tested() (Case, lift.Proof) {
	var c Case
	c.On = "2026-11-28"
	c.Hoist.Site.Barrier = lift.BarrierLockedRoom
	c.Heavy.Drive.Mass = unit.Of[unit.Mass](100)
	c.Hazards.DropEnergy = unit.Of[unit.Energy](4000)
	return c, lift.Proof{MadeOf: lift.MadeMetal, Moved: unit.No, Measured: lift.MeasuredWithLoadCell, HeldFor: unit.Of[unit.Duration](900),
		On: lift.OnBench, Date: "2026-06-01", By: "A. Smith", Witness: "B. Jones", Lifts: unit.Of[unit.Count](10)}
}

// When a proof counts (section 5 of the rule book): 15 min and 12 months or 500 lifts for metal, 24 h and 3 months or 100
// lifts for wood, ground and plastic; over 5 kJ or 250 kg on the rope with a qualified person.
func TestProofBorders(t *testing.T) {
	day := unit.Of[unit.Duration](86400)
	for _, x := range []struct {
		name   string
		id     string
		change func(*Case, *lift.Proof)
		why    string // the field that keeps it from counting; "" where it counts
	}{
		{"as it is", "hanger", func(*Case, *lift.Proof) {}, ""},
		{"a second too short", "hanger", func(_ *Case, p *lift.Proof) { p.HeldFor.Val = 899 }, "held_s"},
		{"the last day of twelve months", "hanger", func(_ *Case, p *lift.Proof) { p.Date = "2025-11-28" }, ""},
		{"a day later", "hanger", func(_ *Case, p *lift.Proof) { p.Date = "2025-11-27" }, "date"},
		{"on the day itself", "hanger", func(_ *Case, p *lift.Proof) { p.Date = "2026-11-28" }, ""},
		{"a test of tomorrow", "hanger", func(_ *Case, p *lift.Proof) { p.Date = "2026-11-29" }, "date"},
		{"no day to look at it", "hanger", func(c *Case, _ *lift.Proof) { c.On = "" }, "date"},
		{"500 lifts", "hanger", func(_ *Case, p *lift.Proof) { p.Lifts.Val = 500 }, ""},
		{"501 lifts", "hanger", func(_ *Case, p *lift.Proof) { p.Lifts.Val = 501 }, "lifts_since"},
		{"lifts not counted", "hanger", func(_ *Case, p *lift.Proof) { p.Lifts.Is = false }, "lifts_since"},
		{"wood for a day, three months ago", "beam", func(_ *Case, p *lift.Proof) {
			p.MadeOf, p.HeldFor, p.Date, p.Lifts.Val = lift.MadeWood, day, "2026-08-28", 100
		}, ""},
		{"wood, a day over three months", "beam", func(_ *Case, p *lift.Proof) {
			p.MadeOf, p.HeldFor, p.Date = lift.MadeWood, day, "2026-08-27"
		}, "date"},
		{"wood, 101 lifts", "beam", func(_ *Case, p *lift.Proof) {
			p.MadeOf, p.HeldFor, p.Date, p.Lifts.Val = lift.MadeWood, day, "2026-11-01", 101
		}, "lifts_since"},
		{"wood, not quite a day", "beam", func(_ *Case, p *lift.Proof) { p.MadeOf, p.HeldFor.Val, p.Date = lift.MadeWood, 86399, "2026-11-01" }, "held_s"},
		{"wood between motor and drum", "cross_pin", func(_ *Case, p *lift.Proof) { p.MadeOf, p.HeldFor, p.Date = lift.MadeWood, day, "2026-11-01" }, "made_of"},
		{"plastic teeth on the motor's side", "gear_tooth", func(_ *Case, p *lift.Proof) { p.MadeOf, p.HeldFor, p.Date = lift.MadePlastic, day, "2026-11-01" }, ""},
		{"a printed hub", "drum_hub", func(_ *Case, p *lift.Proof) { p.MadeOf, p.HeldFor, p.Date = lift.MadePrinted, day, "2026-11-01" }, "made_of"},
		{"fibre", "hanger", func(_ *Case, p *lift.Proof) { p.MadeOf = "fibre" }, "made_of"},
		{"ground under the frame for a day", "bracing", func(_ *Case, p *lift.Proof) { p.MadeOf, p.HeldFor, p.Date = lift.MadeGround, day, "2026-11-01" }, ""},
		{"5 kJ on the rope, nobody else", "hanger", func(c *Case, p *lift.Proof) { p.On, c.Hazards.DropEnergy.Val = lift.OnRope, 5000 }, ""},
		{"more than 5 kJ on the rope", "hanger", func(c *Case, p *lift.Proof) { p.On, c.Hazards.DropEnergy.Val = lift.OnRope, 5001 }, "qualified"},
		{"the same, seen by one who is qualified", "hanger", func(c *Case, p *lift.Proof) { p.On, c.Hazards.DropEnergy.Val, p.Expert = lift.OnRope, 5001, "C. Brown" }, ""},
		{"more than 5 kJ, on a bench", "hanger", func(c *Case, _ *lift.Proof) { c.Hazards.DropEnergy.Val = 5001 }, ""},
		{"an energy not known, on the rope", "hanger", func(c *Case, p *lift.Proof) { p.On, c.Hazards.DropEnergy.Is = lift.OnRope, false }, "qualified"},
		{"250 kg on the rope", "hanger", func(c *Case, p *lift.Proof) { p.On, c.Heavy.Drive.Mass.Val = lift.OnRope, 250 }, ""},
		{"more than 250 kg on the rope", "hanger", func(c *Case, p *lift.Proof) { p.On, c.Heavy.Drive.Mass.Val = lift.OnRope, 250.1 }, "qualified"},
		{"a mark moved", "hanger", func(_ *Case, p *lift.Proof) { p.Moved = unit.Yes }, "moved"},
		{"not measured", "hanger", func(_ *Case, p *lift.Proof) { p.Measured = "" }, "measured_with"},
		{"a witness who is the builder", "hanger", func(_ *Case, p *lift.Proof) { p.Witness = " a. smith " }, "witness"},
		{"nothing keeps people away", "hanger", func(c *Case, _ *lift.Proof) { c.Hoist.Site.Barrier = lift.BarrierNone }, "date"},
		{"a fall on the day of the test", "hanger", func(c *Case, p *lift.Proof) {
			c.Hoist.Trials.Failures = []lift.Failure{{Date: p.Date, What: "it fell", Shock: unit.Yes}}
		}, "date"},
		{"a fall the day before", "hanger", func(c *Case, _ *lift.Proof) {
			c.Hoist.Trials.Failures = []lift.Failure{{Date: "2026-05-31", What: "it fell", Shock: unit.Yes}}
		}, ""},
	} {
		c, p := tested()
		x.change(&c, &p)
		if ok, why := c.valid(x.id, p); why != x.why || ok != (x.why == "") {
			t.Errorf("%s: %v, %q, want %q", x.name, ok, why, x.why)
		}
	}
}

// strong is the hoist of the plan that is ready, with 120 kg on a scale: 122.4 kg at the heaviest.
func strong(t *testing.T) Case {
	t.Helper()
	text, err := os.ReadFile("../../../../testdata/unsafe/plans.json")
	if err != nil {
		t.Fatal(err)
	}
	var f struct {
		Bases struct {
			Hoist struct {
				Variants []struct {
					Stores []struct{ Hoist lift.Hoist }
				}
			}
		}
	}
	if err := json.Unmarshal(text, &f); err != nil {
		t.Fatal(err)
	}
	h := f.Bases.Hoist.Variants[0].Stores[0].Hoist
	d := lift.Compute(h)
	return New(h, d, path.Checks(h, d), path.HazardsOf(h, d), "2026-11-28")
}

// asks is the test that a part of a material must pass.
func asks(c Case, part string, made lift.ProofMaterial) (none Test) {
	for _, t := range c.Tests(part) {
		if t.MadeOf == made {
			return t
		}
	}
	return none
}

// What no test clears asks for none: a rope, a hanger in masonry; a beam is never of plastic.
func TestNoTestForWhatNoTestClears(t *testing.T) {
	c := strong(t)
	c.Hoist.Structure.HangerFixing = lift.FixingAnchorInMasonry
	for _, id := range []string{"rope", "knot", "hanger", "stops"} {
		if got := c.Tests(id); len(got) > 0 {
			t.Errorf("%s: %v", id, got)
		}
	}
	if got := c.Tests("pulley"); len(got) > 0 {
		t.Errorf("a check that is none: %v", got)
	}
	if got := c.Tests("head_sheave"); len(got) != 2 || got[0].MadeOf != lift.MadeMetal || got[1].MadeOf != lift.MadeWood || got[1].Held != 86400 {
		t.Errorf("the top pulley: %+v", got)
	}
}

// How large a test must be: the factor of the material, 3.0 for plastic, times jerks of 1.25 times what hangs at rest at the
// heaviest, 122.4·9.80665/0.92 = 1304.7 N · 0.056 m = 73.0638 N·m: 274.0 N·m. For metal 1.5 · 1.25 is less than 1.1 times the
// largest event, a stalled motor at the upper stop, and that is asked for.
func TestProofSize(t *testing.T) {
	c := strong(t)
	s, ok := path.StillOf("cross_pin", c.Heavy.Hoist, c.Heavy.Drive)
	if !ok || s.Event < 1.875/1.1 || s.Event > 3.75/1.1 {
		t.Fatalf("the events do not lie between the two factors: %+v", s)
	}
	for _, x := range []struct {
		part   string
		made   lift.ProofMaterial
		factor float64
		wanted float64
	}{{"gear_tooth", lift.MadePlastic, 3.75, 3.75 * 73.0638}, {"cross_pin", lift.MadeMetal, 1.875, 1.1 * float64(s.Event) * 73.0638}} {
		for _, by := range []float64{0.999, 1.001} {
			_, p := tested()
			p.MadeOf, p.Torque = x.made, unit.Of(unit.Torque(by*x.wanted))
			mass, ok := c.carries(x.part, p)
			if ok != (by > 1) {
				t.Errorf("%s: a test of %.1f N·m, %.1f wanted: %v", x.part, by*x.wanted, x.wanted, ok)
			}
			if asked := asks(c, x.part, x.made); math.Abs(float64(asked.Torque.Val)/x.wanted-1) > 1e-5 || asked.Force.Is {
				t.Errorf("%s asks for %v, want %g N·m at the drum", x.part, asked, x.wanted)
			}
			if want := by * x.wanted / 73.0638 / x.factor * 122.4; ok && math.Abs(float64(mass)-want) > 0.01 {
				t.Errorf("%s is proven for %v kg, want %g", x.part, mass, want)
			}
		}
	}
}

// A frame is pulled with 1.5 times what pushes it sideways at the worst, with a load cell: the rope's 271 N alone indoors
// where the earth does not shake, 978 N where it shakes strongly.
func TestProofOfFrame(t *testing.T) {
	c := strong(t)
	c.Hoist.Site.Outdoors, c.Hoist.Site.WindPlan = unit.No, unit.Yes
	_, p := tested()
	for _, x := range []struct {
		quake lift.Earthquakes
		push  float64
	}{{lift.EarthquakesNone, 271}, {lift.EarthquakesStrong, 978}, {"", 978}} {
		c.Hoist.Site.Earthquake = x.quake
		for _, y := range []struct {
			load float64
			with lift.MeasuredWith
			ok   bool
		}{{1.5*x.push - 2, lift.MeasuredWithLoadCell, false}, {1.5*x.push + 2, lift.MeasuredWithLoadCell, true}, {1.5*x.push + 2, lift.MeasuredWithDeadWeight, false}} {
			p.Load, p.Measured = unit.Of(unit.Force(y.load)), y.with
			if asked := asks(c, "bracing", p.MadeOf); math.Abs(float64(asked.Force.Val)-1.5*x.push) > 2 || asked.Torque.Is || asked.Held != 900 {
				t.Errorf("earthquake %q: asks for %v, want %g N", x.quake, asked, 1.5*x.push)
			}
			if _, ok := c.carries("bracing", p); ok != y.ok {
				t.Errorf("earthquake %q, %g N by %s: %v, want %v", x.quake, y.load, y.with, ok, y.ok)
			}
		}
	}
}
