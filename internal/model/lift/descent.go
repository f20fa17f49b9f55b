package lift

import "math"

// descent is a whole way down as it really goes: from rest, through the layers of rope from the outermost in, to the stop.
type descent struct {
	time     float64 // s
	reaching float64 // what reaches the lamps, brake coil and controller not yet taken off, J
	fastest  float64 // of the mass, m/s
	last     float64 // its speed at the stop, m/s
	left     float64 // what mass and rotor carry into the stop, J
}

// descend follows the mass from rest with the brake just opened and running friction:
//
//	(m·q_d + J·c²)·dv/dt = K·c·(I* − I(e)),   e = K·c·v − V_b = U + I·R with the loads taking I at U
//
// I* is the current of the steady speed. Where I grows in a straight line of e, v comes near its end as e^(−t/τ), and time,
// way and energy are closed forms; a way down is some such pieces. From one layer to the next ½·(m·q_d + J·c²)·v² stays: the
// rope climbs down over its last turn and does no work.
func (w *work) descend(bs []branch) descent {
	d := descent{}
	v, before := 0.0, 0.0
	for k := len(w.layers) - 1; k >= 0; k-- {
		f := w.rideIn(k, bs)
		if before > 0 {
			v *= math.Sqrt(before / f.heavy)
		}
		before = f.heavy
		v = f.through(v, w.layers[k].share*w.travel, &d)
	}
	c := w.gearing(w.layers[0])
	d.last, d.left = v, (w.m+w.j*c*c)*v*v/2
	return d
}

// rideIn is the way down in layer k.
func (w *work) rideIn(k int, bs []branch) ride {
	p, at := w.down.points[k], w.roots[k]
	f := ride{gear: w.kk * p.c, brush: w.vb, star: p.current, heavy: w.moving() + w.j*p.c*p.c, steady: p.speed}
	f.governed = at.holder >= 0 && bs[at.holder].kind == LoadGoverned
	f.pieces = w.pieces(bs, p, at)
	return f
}

// pieces are the stretches of one layer. The last is the line through the steady speed, and goes on above it; where a governor
// keeps the speed, or where a converter comes on only there, it is nothing before it.
func (w *work) pieces(bs []branch, p point, at root) []piece {
	last := piece{to: math.Inf(1), ref: w.kk*p.rotor - w.vb, at: p.current, slope: at.slope / (1 + at.slope*w.r), on: bs, holder: at.holder, r: w.r}
	if at.stiff || math.IsInf(at.slope, 1) {
		last.slope = 1 / w.r
	}
	way := newTerminals(bs, w.r, p.current, last.ref).pieces(w.vb)
	governed := at.holder >= 0 && bs[at.holder].kind == LoadGoverned
	if before := way[len(way)-1]; !governed && len(before.on) == len(bs) {
		way = way[:len(way)-1]
	}
	return append(way, last)
}

// ride is the way down in one layer.
type ride struct {
	gear     float64 // K·c, V for a metre a second
	brush    float64 // V
	star     float64 // A
	heavy    float64 // m·q_d + J·c², kg
	steady   float64 // m/s
	governed bool    // the steady speed is kept, not approached
	pieces   []piece
}

// through follows a way of so many metres from speed v, adds to the descent and returns the speed at its end.
func (f ride) through(v, way float64, d *descent) float64 {
	last := f.pieces[len(f.pieces)-1]
	for _, p := range f.pieces[:len(f.pieces)-1] {
		if to := f.speed(p.to); v < to && way > 0 {
			s := f.step(p, v, to, way)
			v, way = s.speed, way-s.way
			d.add(s)
		}
	}
	switch {
	case way <= 0:
		return v
	case f.governed:
		t := way / f.steady
		d.add(stretch{t, way, f.steady, last.reaching(0) * t})
		return f.steady
	}
	s := f.step(last, v, math.Inf(1), way)
	d.add(s)
	return s.speed
}

// speed is that of the mass at e.
func (f ride) speed(e float64) float64 { return (e + f.brush) / f.gear }

// stretch is one piece of a way down.
type stretch struct{ time, way, speed, energy float64 }

func (d *descent) add(s stretch) {
	d.time += s.time
	d.reaching += s.energy
	d.fastest = max(d.fastest, s.speed)
}

// step follows one piece from speed v until the speed is to or the way is over: dv/dt = a − β·(v − v_0).
func (f ride) step(p piece, v, to, way float64) stretch {
	beside := f.gear * (v - f.speed(p.ref))
	a := f.gear * (f.star - p.at - p.slope*beside) / f.heavy
	beta := f.gear * f.gear * p.slope / f.heavy
	if a <= 0 && v < f.steady { // by rounding only: the loads take less than the mass gives until it is there
		a, beta = 0, 0
	}
	t := math.Inf(1)
	if up := to - v; a > 0 && beta*up < a {
		t = up / a * logOver(beta*up/a)
	}
	if math.IsInf(t, 1) || v*t+a*t*t*second(beta*t) > way {
		t = timeFor(v, a, beta, way)
	} else {
		way = v*t + a*t*t*second(beta*t)
	}
	end := v + a*t*first(beta*t)
	return stretch{t, way, end, p.mean(beside, f.gear*(end-v), beta*t) * t}
}

// mean is the mean power over a time of y time constants in which e grows by rise from so many volts beside the piece's ref. The
// power is a square of e, so three values tell it. With x the share of the rise that is done, its mean is φ_2(y)/φ_1(y) and
// that of its square ((s·φ_1(s·y))² in the mean)/φ_1(y)²; in a long time nearly all is done, and the share that is left to do
// keeps the digits.
func (p piece) mean(beside, rise, y float64) float64 {
	low, mid := p.reaching(beside+rise/4), p.reaching(beside+rise/2)
	if y < 1 {
		high := p.reaching(beside + rise*3/4)
		bend := 8 * (low - 2*mid + high)
		line := 2*(high-low) - bend
		return mid - line/2 - bend/4 + line*second(y)/first(y) + bend*square(y)/(first(y)*first(y))
	}
	end, left := p.reaching(beside+rise), math.Exp(-y)
	bend := 16. / 3 * (low - end - 1.5*(mid-end))
	line := 2*(mid-end) - bend/2
	all := 1 - left
	return end + line*(first(y)-left)/all + bend*(first(2*y)-2*left*first(y)+left*left)/(all*all)
}

// timeFor is when v·t + a·t²·φ_2(β·t) is the way, by Newton's rule. Where the speed grows it starts at or behind the end, as
// φ_2(y) ≥ 1/(2 + y), and where it falls before it: from there the rule never goes past it.
func timeFor(v, a, beta, way float64) float64 {
	t := way / v
	if a > 0 {
		b := max(0, beta) * way
		t = min(t, (b+math.Sqrt(b*b+8*a*way))/(2*a))
	}
	for range 200 {
		off := v*t + a*t*t*second(beta*t) - way
		next := t - off/(v+a*t*first(beta*t))
		if math.Abs(next-t) <= 1e-15*t {
			return next
		}
		t = next
	}
	return t
}
