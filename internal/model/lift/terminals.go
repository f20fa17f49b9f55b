package lift

import (
	"math"
	"slices"
)

// terminals are the loads on the motor's wires as they answer to the voltage e = K·ω − V_b that the rotor makes behind its
// winding and its brushes: U + R·I(U) = e. Constant powers (converters) come on together where they leave the mass half of the
// pull that it has without them, and at the latest at the steady speed (our own judgement: started sooner they take all of it,
// the mass slows down and they stop again).
type terminals struct {
	all, even []branch // even: without the constant powers
	r         float64  // of the winding, Ω
	top       float64  // the lowest constant voltage, V
	balance   float64  // e at the steady speed, V
	start     float64  // e from which constant powers are on, V
}

// newTerminals are the loads with a winding of r ohms, the current that the mass gives and e at the steady speed. A governed
// load takes nothing under its speed and is no part of them.
func newTerminals(bs []branch, r, star, balance float64) terminals {
	t := terminals{all: bs, even: withoutPower(bs), r: r, balance: balance, start: balance}
	t.top, _ = ceiling(bs, math.Inf(1))
	if !t.powered() {
		return t
	}
	leaves := func(e float64) bool {
		on, ok := t.among(t.all, e)
		off, _ := t.among(t.even, e)
		return ok && on.i > off.i && on.i < (star+off.i)/2
	}
	for k := range samples {
		low, high := balance*float64(k)/samples, balance*float64(k+1)/samples
		if !leaves(high) {
			continue
		}
		for range 50 {
			if mid := (low + high) / 2; leaves(mid) {
				high = mid
			} else {
				low = mid
			}
		}
		t.start = high
		break
	}
	return t
}

// answer is what the loads do at one e: their voltage, their current, who of them is on, and who takes what is left over.
type answer struct {
	u, i   float64
	on     []branch
	holder int
}

// at is the answer of the loads, at the highest voltage where there are several.
func (t terminals) at(e float64) answer {
	if e <= 0 {
		return answer{on: t.even, holder: -1}
	}
	if t.powered() && e >= t.start {
		if a, ok := t.among(t.all, e); ok {
			return a
		}
	}
	a, _ := t.among(t.even, e)
	return a
}

// among is the answer of some loads; false where they ask for too much.
func (t terminals) among(bs []branch, e float64) (answer, bool) {
	if e >= t.top+t.r*taken(bs, t.top) {
		_, holder := ceiling(bs, math.Inf(1))
		return answer{t.top, (e - t.top) / t.r, bs, holder}, true
	}
	u, ok := shared(bs, e, t.r, t.top)
	return answer{u, (e - u) / t.r, bs, -1}, ok
}

func (t terminals) powered() bool { return len(t.even) < len(t.all) }

// shared is the highest voltage up to top at which loads and winding share e; false where the loads ask for too much at any.
// Between two thresholds the loads take a + b·U + p/U, so it is a root of (1 + R·b)·U² + (R·a − e)·U + R·p = 0.
func shared(bs []branch, e, r, top float64) (float64, bool) {
	edges := thresholds(bs, top)
	high := top
	for _, low := range slices.Backward(edges) {
		a, b, p := segment(bs, low, high)
		half := (e - r*a) / (1 + r*b) / 2
		d := half*half - r*p/(1+r*b)
		if d >= 0 {
			slack := 1e-12 * e
			for _, u := range []float64{half + math.Sqrt(d), half - math.Sqrt(d)} {
				if u >= low-slack && u <= high+slack && u > 0 {
					return min(max(u, low), high), true
				}
			}
		}
		high = low
	}
	return 0, false
}

// withoutPower are the loads but the constant powers: their current only grows with the voltage.
func withoutPower(bs []branch) []branch {
	var out []branch
	for _, b := range bs {
		if b.kind != LoadConstantPower {
			out = append(out, b)
		}
	}
	return out
}
