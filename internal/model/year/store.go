package year

import (
	"math"

	"duskweight/internal/model/reservoir"
)

// store is a reservoir made ready for the steps, with its state and its sums. Own joules and watts throughout.
type store struct {
	X      float64 // capacity
	pth    float64
	pf     float64
	step   bool
	af, bf float64

	pmin, pd float64
	ad, bd   float64

	keep float64 // share that an hour of leak leaves

	falls  bool    // acceptance falls near full
	p0, p1 float64 // accepted power p0 − p1·x

	noFill []bool
	locked []float64
	cap    float64 // own joules a day; 0 is none

	x    float64
	left float64 // of cap, today

	sum sums
}

// sums are a store's totals over a pass: taken and delivered at the line; up, down and leaked in own joules.
type sums struct {
	taken, delivered float64
	up, down, leaked float64
	full             float64 // seconds at full
}

// huge bounds what a reservoir may say, so that no product overflows.
const huge = 1e30

// tame returns v between 0 and huge; what is not a number is 0.
func tame(v float64) float64 {
	switch {
	case v > huge:
		return huge
	case v > 0:
		return v
	}
	return 0
}

// ready makes a store of r. Values that cannot be are tamed: the front door has refused them before.
func ready(r reservoir.Reservoir) store {
	s := store{
		X:      tame(float64(r.Capacity)),
		pth:    tame(float64(r.FillThreshold)),
		pf:     tame(float64(r.FillMax)),
		step:   r.FillStep,
		af:     tame(r.FillGain),
		bf:     tame(float64(r.FillLoss)),
		pmin:   tame(float64(r.DrawMin)),
		pd:     tame(float64(r.DrawMax)),
		ad:     tame(r.DrawGain),
		bd:     tame(float64(r.DrawLoss)),
		keep:   math.Exp(-tame(r.Leak) * hour),
		noFill: r.NoFill,
		locked: r.Locked,
		cap:    tame(float64(r.FillCap)),
	}
	from, end := r.AcceptFrom, tame(r.AcceptEnd)
	if from > 0 && from < 1 && end < 1 && !s.step && s.X > 0 {
		s.p1 = s.pf * (1 - end) / ((1 - from) * s.X)
		s.p0 = s.pf + s.p1*from*s.X
		s.falls = s.p1 > 0 && !math.IsInf(s.p1, 0)
	}
	return s
}

// reset begins a pass at state x.
func (s *store) reset(x float64) {
	s.x, s.left, s.sum = x, s.cap, sums{}
}

// leak lets an hour of leak go by: x ← x·exp(−leak·H).
func (s *store) leak() {
	if s.keep == 1 {
		return
	}
	was := s.x
	s.x *= s.keep
	s.sum.leaked += was - s.x
}

// fill offers the mean power offer (W at the line) in hour h and returns the joules taken from the line.
//
//	u = 0 if S < P_th, else P_f if step, else min(S, P_f);   dx/dt = a_f·u − b_f;   t = min(H, (X − x)/(a_f·u − b_f))
//
// A store that would not rise at that power is not filled. A step store that is offered less than its power while its
// threshold lets it (a store before it carries the line) runs for the share of the hour that the energy lasts.
func (s *store) fill(offer float64, h int) float64 {
	if s.x >= s.X {
		s.sum.full += hour
		return 0
	}
	if offer <= 0 || offer < s.pth || h < len(s.noFill) && s.noFill[h] {
		return 0
	}
	top := s.X
	if s.cap > 0 && s.x+s.left < top {
		top = s.x + s.left
	}
	was := s.x
	var taken, t float64
	if s.falls {
		taken, t = s.fillFalling(offer, top)
	} else {
		taken, t = s.fillStraight(offer, top)
	}
	up := s.x - was
	s.left -= up
	s.sum.up += up
	s.sum.taken += taken
	if s.x >= s.X {
		s.sum.full += hour - t
	}
	return taken
}

// fillStraight fills at one rate up to top and returns the joules taken and the time it took.
func (s *store) fillStraight(offer, top float64) (taken, t float64) {
	u := s.pf
	if !s.step && offer < u {
		u = offer
	}
	rate := s.af*u - s.bf
	if rate <= 0 || top <= s.x {
		return 0, 0
	}
	limit := hour
	if u > offer {
		limit = hour * (offer / u)
	}
	if t = (top - s.x) / rate; t < limit {
		s.x = top
		return u * t, t
	}
	s.x += rate * limit
	if s.x > top {
		s.x = top
	}
	return u * limit, limit
}

// fillFalling fills where the accepted power falls as p0 − p1·x: first at u = min(S, P_f) up to the kink where the
// line crosses u, then along it, where dx/dt = a_f(p0 − p1·x) − b_f = r falls as e^(−βt), β = a_f·p1. Exact.
func (s *store) fillFalling(offer, top float64) (taken, t float64) {
	u := s.pf
	if offer < u {
		u = offer
	}
	left := hour
	if kink := (s.p0 - u) / s.p1; s.x < kink {
		end := kink
		if end > top {
			end = top
		}
		taken, t = s.fillStraight(offer, end)
		if left -= t; left <= 0 || t == 0 || end == top {
			return taken, t
		}
	}
	r := s.af*(s.p0-s.p1*s.x) - s.bf
	if r <= 0 || top <= s.x {
		return taken, t
	}
	beta := s.af * s.p1
	gap := top - s.x
	dt, up := left, 0.0
	end := r - beta*gap // rate at top
	if end > 0 {
		if d := math.Log1p(beta*gap/end) / beta; d < dt {
			dt, up = d, gap
		}
	}
	if up > 0 {
		s.x = top
	} else {
		up = -r * math.Expm1(-beta*dt) / beta
		if up > gap {
			up = gap
		}
		s.x += up
	}
	return taken + (up+s.bf*dt)/s.af, t + dt
}

// draw asks for the mean power ask (W at the line) in hour h and returns the joules delivered.
//
//	y = min(L, P_d);   −dx/dt = a_d·max(y, P_dmin) + b_d;   t = min(H, x/(a_d·max(y, P_dmin) + b_d))
//
// The locked share stays. A store that would give without falling gives nothing.
func (s *store) draw(ask float64, h int) float64 {
	y := s.pd
	if ask < y {
		y = ask
	}
	floor := 0.0
	if h < len(s.locked) {
		floor = s.locked[h] * s.X
		if !(floor > 0) {
			floor = 0
		}
	}
	if y <= 0 || s.x <= floor {
		s.idle()
		return 0
	}
	z := y
	if z < s.pmin {
		z = s.pmin
	}
	rate := s.ad*z + s.bd
	if rate <= 0 {
		s.idle()
		return 0
	}
	was, t := s.x, hour
	if d := (s.x - floor) / rate; d < t {
		t, s.x = d, floor
	} else if s.x -= rate * t; s.x < floor {
		s.x = floor
	}
	s.sum.down += was - s.x
	s.sum.delivered += y * t
	return y * t
}

// idle counts an hour in which nothing is asked of the store.
func (s *store) idle() {
	if s.x >= s.X {
		s.sum.full += hour
	}
}
