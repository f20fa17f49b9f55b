package lift

import (
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Lowering is the way down: Voltage, Rotor and Speed at the steady speed in the fullest layer, Time, Power and EnergyOut over
// the whole travel as it is run, from rest to the stop. RunsBack is decided in the
// layer that helps the mass least; it and the currents are told as soon as the machine is known. Known says that the rest
// can be told too: it does not come down at all, or what hangs on the terminals is known. Where it is not steady,
// Voltage, Rotor and Speed are those of the balance that does not last (0 where there is none), and Time, Power and
// EnergyOut are 0. A rotor's inertia that is not known counts as none: then it gathers speed soonest.
type Lowering struct {
	Known            bool
	RunsBack         ComesDown    // "yes", "nudge", "no"
	Current          unit.Current // I*, ≤ 0 when it does not run back
	BreakawayCurrent unit.Current
	Voltage          unit.Voltage
	Rotor            unit.AngularSpeed
	Speed            unit.Speed
	Time             unit.Duration
	Power            unit.Power  // delivered in the mean over the whole travel, from rest to the stop: EnergyOut over Time
	SteadyPower      unit.Power  // delivered at the steady speed
	EnergyOut        unit.Energy // delivered over the whole travel, auxiliary power off
	Steady           bool
	Slope            float64 // g_L = Σ dI/dU, A/V; +Inf is never put here: a constant voltage gives Stiff = true
	Stiff            bool
	Growth           unit.Known[unit.Ratio] // 1/s, growth rate of the runaway where it is not steady
	Shunt            bool                   // a permanent, unfused path stands
	MayOpen          []string               // everything that lets the mass go when it opens
	Cures            []Cure
	Say              say.Sentence
	NeedsMass        unit.Known[unit.Mass]   // smallest mass that comes down by itself, same drum and gears
	NeedsDrum        unit.Known[unit.Length] // smallest drum that does
	NeedsRatio       unit.Known[unit.Ratio]  // greatest ratio that does

	CurrentLow, SpeedLow float64 // at the first layer: A, m/s

	EndSpeed unit.Speed        // at the lower stop
	Left     unit.Energy       // what mass and rotor carry into the lower stop
	Top      unit.Speed        // the highest on this way down
	TopRotor unit.AngularSpeed // at Top, in the first layer
	Short    bool              // the travel ends before the steady speed is reached, even if it fell freely
}

// Fastest is the highest speed of the mass on its way down with its loads on: the steady one, or where the travel is too
// short for it, the highest that it comes to.
func (lo Lowering) Fastest() unit.Speed {
	if lo.Short {
		return lo.Top
	}
	return lo.Speed
}

// FastestRotor is the rotor's speed at Fastest.
func (lo Lowering) FastestRotor() unit.AngularSpeed {
	if lo.Short {
		return lo.TopRotor
	}
	return lo.Rotor
}

// ComesDown is whether the mass comes down by itself.
type ComesDown string

// The words of ComesDown.
const (
	DownYes   ComesDown = "yes"
	DownNudge ComesDown = "nudge" // once it is pushed
	DownNo    ComesDown = "no"
)
