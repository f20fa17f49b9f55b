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
	af, bf float64

	pmin, pd float64
	ad, bd   float64

	keep float64 // share that an hour of leak leaves

	p0, p1 float64 // accepted power p0 − p1·x, where it falls
	bend   float64 // state above which it falls
	reach  float64 // how far an hour on the fall reaches, in seconds of its first rate
	step   bool
	falls  bool

	x    float64
	left float64 // of cap, today
	sum  sums

	cap    float64 // own joules a day; 0 is none
	noFill []bool
	locked []float64
}

// sums are a store's totals over some hours: taken and delivered at the line; up, down and leaked in own joules.
type sums struct {
	taken, delivered float64
	up, down, leaked float64
	full             float64 // seconds at full
}

// add adds the totals of later hours.
func (s *sums) add(t sums) {
	s.taken += t.taken
	s.delivered += t.delivered
	s.up += t.up
	s.down += t.down
	s.leaked += t.leaked
	s.full += t.full
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
		s.bend = from * s.X
		s.p0 = s.pf + s.p1*s.bend
		s.falls = s.p1 > 0 && !math.IsInf(s.p1, 0)
		s.reach = hour
		if beta := s.af * s.p1; beta*hour > 0 {
			s.reach = -math.Expm1(-beta*hour) / beta
		}
	}
	return s
}

// fill offers the mean power offer (W at the line) in hour h and returns the mean power taken from the line.
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
	u, limit := s.pf, hour
	if offer < u {
		if s.step {
			limit = hour * (offer / u)
		} else {
			u = offer
		}
	}
	rate := s.af*u - s.bf
	if rate <= 0 {
		return 0
	}
	up := rate * limit
	// the common hour: neither full, nor capped, nor where acceptance falls
	if end := s.x + up; end < s.X && s.cap == 0 && (!s.falls || end <= s.bend) {
		s.sum.up += end - s.x // what the state gained, rounding included: the ledger closes by it
		s.x = end
		s.sum.taken += u * limit
		if limit == hour {
			return u
		}
		return offer
	}
	return s.fillUp(u, rate, limit)
}

// fillUp fills at power u, own rate and for at most limit seconds, where the store may become full, the day's cap may
// be reached or acceptance may fall.
func (s *store) fillUp(u, rate, limit float64) float64 {
	top := s.X
	if s.cap > 0 && s.x+s.left < top {
		top = s.x + s.left
	}
	if top <= s.x {
		return 0
	}
	was := s.x
	var taken, t float64
	if s.falls {
		taken, t = s.fillFalling(u, rate, top)
	} else {
		taken, t = s.fillStraight(u, rate, limit, top)
	}
	up := s.x - was
	s.left -= up
	s.sum.up += up
	s.sum.taken += taken
	if s.x >= s.X {
		s.sum.full += hour - t
	}
	if t == hour && !s.falls {
		return u
	}
	return taken * (1 / hour)
}

// fillStraight fills at one rate up to top and returns the joules taken and the time it took.
func (s *store) fillStraight(u, rate, limit, top float64) (taken, t float64) {
	if gap := top - s.x; gap < rate*limit {
		t = gap / rate
		s.x = top
		return u * t, t
	}
	s.x = min(s.x+rate*limit, top)
	return u * limit, limit
}

// fillFalling fills where the accepted power falls as p0 − p1·x: first at u = min(S, P_f) up to the kink where the
// line crosses u, then along it, where dx/dt = a_f(p0 − p1·x) − b_f = r falls as e^(−βt), β = a_f·p1. Exact.
func (s *store) fillFalling(u, rate, top float64) (taken, t float64) {
	left := hour
	if kink := (s.p0 - u) / s.p1; s.x < kink {
		end := min(kink, top)
		taken, t = s.fillStraight(u, rate, hour, end)
		if left -= t; left <= 0 || end == top {
			return taken, t
		}
	}
	r := s.af*(s.p0-s.p1*s.x) - s.bf
	gap := top - s.x
	if r <= 0 || gap <= 0 {
		return taken, t
	}
	beta := s.af * s.p1
	reach := s.reach // of a whole hour: (1 − e^(−βH))/β
	if left != hour {
		reach = -math.Expm1(-beta*left) / beta
	}
	dt, up := left, r*reach
	if end := r - beta*gap; up >= gap && end > 0 {
		dt, up = min(left, math.Log1p(beta*gap/end)/beta), gap
		s.x = top
	} else {
		up = min(up, gap)
		s.x += up
	}
	return taken + (up+s.bf*dt)/s.af, t + dt
}

// draw asks for the mean power ask (W at the line) in hour h and returns the mean power delivered.
//
//	y = min(L, P_d);   −dx/dt = a_d·max(y, P_dmin) + b_d;   t = min(H, x/(a_d·max(y, P_dmin) + b_d))
//
// The locked share stays. A store that would give without falling gives nothing.
func (s *store) draw(ask float64, h int) float64 {
	y := s.pd
	if ask < y {
		y = ask
	}
	z := y
	if z < s.pmin {
		z = s.pmin
	}
	rate := s.ad*z + s.bd
	if y <= 0 || rate <= 0 {
		s.idle()
		return 0
	}
	floor := 0.0
	if h < len(s.locked) && s.locked[h] > 0 {
		floor = s.locked[h] * s.X
	}
	was, t := s.x, hour
	down := rate * hour
	if room := was - floor; down < room {
		s.x = was - down
	} else {
		if room <= 0 {
			s.idle()
			return 0
		}
		t = room / rate
		s.x = floor
	}
	s.sum.down += was - s.x
	s.sum.delivered += y * t
	if t == hour {
		return y
	}
	return y * (t * (1 / hour))
}

// idle counts an hour in which nothing comes out of the store.
func (s *store) idle() {
	if s.x >= s.X {
		s.sum.full += hour
	}
}
