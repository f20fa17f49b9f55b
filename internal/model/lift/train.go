package lift

import (
	"math"

	"duskweight/internal/model/unit"
)

// pair is one stage as the chain sees it: ratio, efficiency both ways, idle torque at its input.
type pair struct{ r, fwd, back, t0 float64 }

// chain is a train of stages, the first at the motor, either running or at the first push.
type chain []pair

// up returns the torque at the stage's input that raises a torque t at its output.
func (s pair) up(t float64) float64 {
	return float64(StageUp(unit.Torque(t), unit.Ratio(s.r), unit.Ratio(s.fwd), unit.Torque(s.t0)))
}

// down returns the torque that comes through to the stage's input from a torque t at its output.
func (s pair) down(t float64) float64 {
	return float64(StageDown(unit.Torque(t), unit.Ratio(s.r), unit.Ratio(s.back), unit.Torque(s.t0)))
}

// ratio is the product of the ratios.
func (c chain) ratio() float64 {
	n := 1.0
	for _, s := range c {
		n *= s.r
	}
	return n
}

// up returns the torque at the motor that raises a torque at the drum, and the torque at each stage's input.
func (c chain) up(t float64) (float64, []float64) {
	in := make([]float64, len(c))
	for i := len(c) - 1; i >= 0; i-- {
		t = c[i].up(t)
		in[i] = t
	}
	return t, in
}

// down returns the torque that comes through to the motor, the torque at each stage's input, and the stage that does
// not run back, −1 for none. Stages behind the one that stops get nothing.
func (c chain) down(t float64) (float64, []float64, int) {
	in := make([]float64, len(c))
	if t <= 0 {
		return t, in, len(c) - 1
	}
	for i := len(c) - 1; i >= 0; i-- {
		t = c[i].down(t)
		in[i] = t
		if t <= 0 {
			return t, in, i
		}
	}
	return t, in, -1
}

// backward is the product of the backward efficiencies, 0 or the least of them where one does not run back.
func (c chain) backward() float64 {
	product, least := 1.0, 1.0
	for _, s := range c {
		product *= s.back
		least = math.Min(least, s.back)
	}
	if least <= 0 {
		return least
	}
	return product
}

// forward is the product of the forward efficiencies.
func (c chain) forward() float64 {
	product := 1.0
	for _, s := range c {
		product *= s.fwd
	}
	return product
}

// drumTorqueFor returns the least torque at the drum that brings a torque through to the motor, or false where a stage
// lets none through.
func (c chain) drumTorqueFor(motor float64) (float64, bool) {
	t := motor
	for _, s := range c {
		if s.back <= 0 {
			return 0, false
		}
		t = (t + s.t0) * s.r / s.back
	}
	return t, true
}

// pull returns the torque at the drum that a torque of the motor makes.
func (c chain) pull(motor float64) float64 {
	t := motor
	for _, s := range c {
		t = math.Max(0, t-s.t0) * s.r * s.fwd
	}
	return t
}
