package lift

import (
	"fmt"
	"math"
	"slices"

	"duskweight/internal/model/unit"
)

// touchVolts is the highest direct voltage that is thought safe to touch in the dry (common practice, IEC 61140).
const touchVolts = 60

// branch is one load on the terminals: it takes nothing under its threshold, then (U − threshold)/slope; a slope of 0
// is a constant voltage. A constant power takes P/U from its least voltage on. A governed one keeps the rotor's speed.
type branch struct {
	kind             LoadKind
	name             string
	threshold, slope float64 // threshold with the diode in it
	diode            float64
	power, least     float64 // constant power
	speed            float64 // governed
	efficiency       float64
	load             DCLoad
}

func (b branch) stiff() bool {
	return b.slope == 0 && (b.kind == LoadString || b.kind == LoadCell || b.kind == LoadClamp)
}

// current is what the branch takes at a voltage, and how fast that grows. Constant voltages and governed loads take
// what is left over and are not asked.
func (b branch) current(u float64) (i, slope float64) {
	switch {
	case b.kind == LoadConstantPower:
		if u >= b.least && u > 0 {
			return b.power / u, -b.power / (u * u)
		}
	case b.kind == LoadGoverned || b.stiff():
	case u > b.threshold:
		return (u - b.threshold) / b.slope, 1 / b.slope
	}
	return 0, 0
}

// branches reads the loads, false where one lacks what decides its current.
func (w *work) branches() ([]branch, bool) {
	if len(w.h.Lower.Loads) == 0 {
		w.lack("lower.loads", "voltage, speed and power on the way down")
		return nil, false
	}
	all := true
	var bs []branch
	for i, l := range w.h.Lower.Loads {
		b, ok := w.branch(i, l)
		all = all && ok
		bs = append(bs, b)
	}
	return bs, all
}

func (w *work) branch(i int, l DCLoad) (branch, bool) {
	ok := true
	need := func(is bool, field string) {
		if !is {
			w.lack(fmt.Sprintf("lower.loads[%d].%s", i, field), "voltage, speed and power on the way down")
			ok = false
		}
	}
	b := branch{kind: l.Kind, name: l.Name, diode: float64(l.Diode.Or(0)), efficiency: 1, load: l}
	switch l.Kind {
	case LoadResistor:
		need(l.Resistance.Is, "resistance_ohm")
		b.slope, b.threshold, b.efficiency = float64(l.Resistance.Val), b.diode, 0
	case LoadString:
		need(l.Threshold.Is, "threshold_v")
		need(l.Slope.Is, "slope_ohm")
		b.slope, b.threshold = float64(l.Slope.Val), float64(l.Threshold.Val)+b.diode
	case LoadCell, LoadClamp:
		need(l.Threshold.Is, "threshold_v")
		if !l.Slope.Is {
			w.lack(fmt.Sprintf("lower.loads[%d].slope_ohm", i), "the voltage exactly; counted as none")
		}
		b.slope, b.threshold = float64(l.Slope.Val), float64(l.Threshold.Val)+b.diode
		if l.Kind == LoadClamp {
			b.efficiency = 0
		}
	case LoadConstantPower:
		need(l.Power.Is, "power_w")
		b.power, b.least = float64(l.Power.Val), float64(l.MinVoltage.Or(0))
	case LoadGoverned:
		need(l.Speed.Is, "set_speed_rad_s")
		b.speed = float64(l.Speed.Val)
	default:
		need(false, "kind")
	}
	b.efficiency = float64(l.Efficiency.Or(unit.Ratio(b.efficiency)))
	return b, ok
}

// root is where the loads together take the current of the machine.
type root struct {
	found  bool // a steady voltage
	u      float64
	stiff  bool    // a constant voltage or a governor holds it
	slope  float64 // g_L = Σ dI/dU there, A/V
	holder int     // the branch that takes what is left over, −1 for none
	races  bool    // without a root: above the balance the loads take less than the machine gives
	at     float64 // without a root: the balance that does not last, 0 where there is none
}

// settle finds the first steady voltage, coming up from nothing, at which the loads take the current. Between two
// voltages where something begins to conduct the sum is A + B·U + P/U, so its steady root is the greater one of
// B·U² + (A − I)·U + P = 0.
func settle(bs []branch, i float64, governed float64) root {
	top, holder := ceiling(bs, governed)
	edges := thresholds(bs, top)
	r := root{holder: -1}
	for e, lo := range edges {
		hi := top
		if e+1 < len(edges) {
			hi = edges[e+1]
		}
		a, b, p := segment(bs, lo, hi)
		if u, g, ok := steady(a, b, p, i, lo, hi); ok {
			return root{found: true, u: u, slope: g, holder: -1}
		}
		if u := unsteady(a, b, p, i, lo, hi); u > 0 {
			r.at = u
		}
	}
	if !math.IsInf(top, 1) && taken(bs, top) <= i {
		return root{found: true, u: top, stiff: true, holder: holder}
	}
	r.races = math.IsInf(top, 1) && taken(bs, math.MaxFloat64) < i
	return r
}

// ceiling is the lowest constant voltage among the branches, and who holds it.
func ceiling(bs []branch, governed float64) (float64, int) {
	top, holder := math.Inf(1), -1
	for j, b := range bs {
		u := math.Inf(1)
		if b.kind == LoadGoverned {
			u = governed
		} else if b.stiff() {
			u = b.threshold
		}
		if u < top {
			top, holder = u, j
		}
	}
	return top, holder
}

// thresholds are the voltages under top at which something begins to take current, from 0 up.
func thresholds(bs []branch, top float64) []float64 {
	edges := []float64{0}
	for _, b := range bs {
		u := b.threshold
		if b.kind == LoadConstantPower {
			u = b.least
		}
		if b.kind != LoadGoverned && !b.stiff() && u > 0 && u < top {
			edges = append(edges, u)
		}
	}
	slices.Sort(edges)
	return slices.Compact(edges)
}

// segment is what the branches take between two thresholds: a + b·U + p/U.
func segment(bs []branch, lo, hi float64) (a, b, p float64) {
	for _, x := range bs {
		switch {
		case x.kind == LoadGoverned || x.stiff():
		case x.kind == LoadConstantPower:
			if x.least <= lo {
				p += x.power
			}
		case x.threshold <= lo:
			a -= x.threshold / x.slope
			b += 1 / x.slope
		}
	}
	return a, b, p
}

// steady is the root of a + b·U + p/U = i with a rising sum, if it lies between lo and hi.
func steady(a, b, p, i, lo, hi float64) (u, g float64, ok bool) {
	d := (i-a)*(i-a) - 4*b*p
	if b <= 0 || d < 0 || i <= a {
		return 0, 0, false
	}
	u = ((i - a) + math.Sqrt(d)) / (2 * b)
	g = b - p/(u*u)
	return u, g, u >= lo && u <= hi && g > 0
}

// unsteady is the root with a falling sum, 0 for none.
func unsteady(a, b, p, i, lo, hi float64) float64 {
	if p <= 0 || i <= a {
		return 0
	}
	d := (i-a)*(i-a) - 4*b*p
	if d < 0 {
		return 0
	}
	u := 2 * p / ((i - a) + math.Sqrt(d))
	if u < lo || u > hi {
		return 0
	}
	return u
}

// taken is the current that all but the constant voltages take.
func taken(bs []branch, u float64) float64 {
	sum := 0.0
	for _, b := range bs {
		i, _ := b.current(u)
		sum += i
	}
	return sum
}

// split is the current of every branch at a root: the holder takes what is left over.
func (r root) split(bs []branch, i float64) []float64 {
	is := make([]float64, len(bs))
	left := i
	for j, b := range bs {
		is[j], _ = b.current(r.u)
		left -= is[j]
	}
	if r.holder >= 0 {
		is[r.holder] += math.Max(0, left)
	}
	return is
}

// reaching is the power that reaches the lamps: Σ (U − diode)·I·η.
func (r root) reaching(bs []branch, i float64) float64 {
	sum := 0.0
	for j, x := range r.split(bs, i) {
		sum += (r.u - bs[j].diode) * x * bs[j].efficiency
	}
	return sum
}
