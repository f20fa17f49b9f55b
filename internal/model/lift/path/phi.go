package path

import (
	"math"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// hoistClass are φ_2min and β_2 (s/m) of a hoisting class.
type hoistClass struct{ least, slope float64 }

// classOf are the hoisting classes of EN 13001-2:2021, table 2 (HC2 read in a worked table of EN 1991-3; the others
// from memory).
func classOf(name lift.HoistClass) (hoistClass, bool) {
	switch name {
	case lift.HoistHC1:
		return hoistClass{1.05, 0.17}, true
	case lift.HoistHC2:
		return hoistClass{1.10, 0.34}, true
	case lift.HoistHC3:
		return hoistClass{1.15, 0.51}, true
	case lift.HoistHC4:
		return hoistClass{1.20, 0.68}, true
	}
	return hoistClass{}, false
}

// Phi is the factor for jerks φ and, in words, where it comes from:
//
//	φ = max(φ_2min + β_2·v, 1 + (v/g)·√(k_m/m)),
//
// v the faster of raising and lowering. The first term needs a hoisting class, the second the stiffness of the rope.
// Without a class 1.25 stands for it (slow geared hoist, common practice), or that of the hardest class where the mass
// moves faster than slow; 2.0 where the user says that no switch
// stops the drum when the rope goes slack (a mass put suddenly on a rope pulls twice its weight). Where the slack
// switch is not answered φ stays 1.25 and the check "slack" is not known, so that nothing passes on it. The user's own
// factor counts upward only.
func Phi(h lift.Hoist, d lift.Drive) (float64, string) {
	phi, why := 1.25, "1.25: slow geared hoist"
	v, okV := fastest(d)
	c, ok := classOf(h.Holds.Class)
	hardest, _ := classOf(lift.HoistHC4)
	switch {
	case ok && okV:
		phi = c.least + c.slope*v
		why = plainRatio(phi) + ": class " + string(h.Holds.Class) + " at the speed of this hoist"
	case okV && hardest.least+hardest.slope*v > phi:
		phi = hardest.least + hardest.slope*v
		why = plainRatio(phi) + ": no class given, so the hardest one, HC4, at the speed of this hoist"
	}
	if okV {
		if x, ok := jerk(h, d, v); ok && x > phi {
			phi, why = x, plainRatio(x)+": stretch of rope and beam at the speed of this hoist"
		}
	}
	if h.Holds.SlackSwitch == unit.No && phi < 2 {
		phi, why = 2, "2: no switch stops the drum when the rope goes slack"
	}
	if f, ok := h.Holds.Factor.Value(); ok && finite(float64(f)) && float64(f) > phi {
		phi, why = float64(f), plainRatio(float64(f))+": your own factor"
	}
	return phi, why
}

// plainRatio is a ratio in a text without units.
func plainRatio(x float64) string { return say.Times(unit.Ratio(x)).String() }

// phiSource names where φ comes from when a hoisting class gives it.
func (t *loads) phiSource(l *line) {
	if _, ok := classOf(t.h.Holds.Class); ok {
		l.also(source.EN130012.At("table 2"))
		return
	}
	l.also(source.CommonPractice.At("factor for jerks " + t.why))
}

// jerk is 1 + (v/g)·√(k_m/m).
func jerk(h lift.Hoist, d lift.Drive, v float64) (float64, bool) {
	m, ok := d.Mass.Value()
	if !ok || m <= 0 {
		return 0, false
	}
	t := loads{h: h, d: d, reeved: h.Reeving.RopeParts.Is && h.Reeving.LeadSheaves.Is && h.Reeving.RopeParts.Val >= 1,
		n: int(h.Reeving.RopeParts.Val), k: int(h.Reeving.LeadSheaves.Val)}
	k, miss := t.stiffness(false)
	if len(miss) > 0 {
		return 0, false
	}
	x := 1 + v/unit.G*math.Sqrt(k/float64(m))
	return x, finite(x)
}

// fastest is the faster of raising and lowering, m/s.
func fastest(d lift.Drive) (float64, bool) {
	v, ok := 0.0, false
	if d.Raising.Known && !d.Raising.Stalls {
		v, ok = math.Max(v, float64(d.Raising.Speed)), true
		v = math.Max(v, d.Raising.SpeedLow)
	}
	if d.Lowering.Known {
		v, ok = math.Max(v, float64(d.Lowering.Fastest())), true
	}
	return v, ok && finite(v)
}
