package water

import (
	"testing"

	"duskweight/internal/model/pipe"
	"duskweight/internal/model/unit"
	"pgregory.net/rapid"
)

// drawn is a design of any accepted numbers that is a store.
func drawn(t *rapid.T) (Water, Resolved) {
	real := func(name string, least, most float64) float64 { return rapid.Float64Range(least, most).Draw(t, name) }
	w := Water{
		Volume: unit.Of(unit.Volume(real("volume", 0.01, 1e4))), Head: unit.Of(unit.Length(real("head", 0.1, 500))),
		Pump:    Pump{Rated: unit.Of(unit.Power(real("pump", 1, 1e5)))},
		Turbine: Turbine{Flow: unit.Of(unit.Flow(real("flow", 1e-6, 0.1)))},
		Pipe:    Pipe{Length: unit.Of(unit.Length(real("length", 0.1, 5000))), Inner: unit.Of(unit.Length(real("inner", 0.005, 2)))},
		Covered: unit.No, Surface: unit.Of(unit.Area(real("surface", 0.01, 1000))), Lower: LowerStream,
	}
	if rapid.Bool().Draw(t, "own efficiencies") {
		w.Pump.Efficiency, w.Turbine.Efficiency = unit.Of(unit.Ratio(real("pump eff", 0.01, 1))), unit.Of(unit.Ratio(real("turbine eff", 0.01, 1)))
	}
	if rapid.Bool().Draw(t, "valve") {
		w.Turbine.Kind = Valve
	}
	return w, w.Resolve()
}

// Energy is never made from nothing: what is drawn of a full tank is never more than ρ·g·V·h, what comes back never more than
// went in, and what the pump lifts never weighs more than its power. The tank empties in V/Q whatever the turbine.
func TestNothingFromNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, r := drawn(t)
		s := r.Reduce(nil)
		if s == nil {
			if r.Net > 0 {
				t.Fatalf("no store: %s", r.WhyNot)
			}
			return
		}
		if f := s.Fault(); f != "" {
			t.Fatalf("%s: %+v", f, s)
		}
		most := float64(pipe.Density) * unit.G * float64(w.Volume.Val) * float64(w.Head.Val)
		if got := float64(s.Drawn(s.DrawMax)); got > most*(1+1e-12) {
			t.Fatalf("%g J drawn of %g", got, most)
		}
		if back := s.RoundTrip(s.DrawMax); back > 1 {
			t.Fatalf("%g of it comes back", back)
		}
		lifts := float64(pipe.Density) * unit.G * float64(r.PumpFlow) * float64(w.Head.Val)
		if into := s.FillGain * float64(s.FillMax); into < lifts*(1-1e-9) || into > lifts*(1+1e-9) || lifts > float64(w.Pump.Rated.Val)*(1+1e-12) {
			t.Fatalf("%g W go in, the water that is lifted has %g", into, lifts)
		}
		if empties := float64(s.Capacity) / (s.DrawGain * float64(s.DrawMax)); empties < float64(r.EmptyTime)*(1-1e-9) || empties > float64(r.EmptyTime)*(1+1e-9) {
			t.Fatalf("it is empty after %g s, the water after %g", empties, float64(r.EmptyTime))
		}
	})
}

// A longer pipe and a thinner one never give more, and a tank twice as large holds twice as much.
func TestMoreIsNotLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, r := drawn(t)
		w.Pump.Efficiency, w.Turbine.Efficiency = unit.Of[unit.Ratio](0.5), unit.Of[unit.Ratio](0.5)
		r = w.Resolve()
		longer := w
		longer.Pipe.Length.Val *= 2
		if l := longer.Resolve(); l.Net > r.Net || l.PumpFlow > r.PumpFlow || l.Gives > r.Gives {
			t.Fatalf("a longer pipe gives more: %+v", l)
		}
		wider := w
		wider.Pipe.Inner.Val *= 2
		if l := wider.Resolve(); l.Net < r.Net || l.PumpFlow < r.PumpFlow*(1-1e-12) {
			t.Fatalf("a thicker pipe gives less: %+v", l)
		}
		larger := w
		larger.Volume.Val *= 2
		if got := larger.Resolve().Stored; got != 2*r.Stored {
			t.Fatalf("%g, twice %g", got, r.Stored)
		}
	})
}
