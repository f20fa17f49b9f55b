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
	perP1  float64 // 1/p1
	perAf  float64 // 1/a_f
	bend   float64 // state above which it falls
	easy   float64 // state up to which an hour of filling is one straight step: no cap, no fall, not full
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
	s.easy = s.X
	from, end := r.AcceptFrom, tame(r.AcceptEnd)
	if from > 0 && from < 1 && end < 1 && !s.step && s.X > 0 {
		s.p1 = s.pf * (1 - end) / ((1 - from) * s.X)
		s.bend = from * s.X
		s.p0 = s.pf + s.p1*s.bend
		s.falls = s.p1 > 0 && !math.IsInf(s.p1, 0)
		s.reach, s.perP1, s.perAf = hour, 1/s.p1, 1/s.af
		if beta := s.af * s.p1; beta*hour > 0 {
			s.reach = -math.Expm1(-beta*hour) / beta
		}
		if s.falls {
			s.easy = s.bend
		}
	}
	if s.cap > 0 {
		s.easy = 0
	}
	return s
}

// trace is where a store writes what happened, by hour.
type trace struct {
	flow  []float64 // W in the mean of the hour: taken from the line, or below zero what was delivered to it
	state []float64 // own joules at the end of the hour
}

// over runs a stretch of hours, whole days but at the end of the year, over the store. net is by hour what the stores
// before it leave: above zero what is offered, below zero what is still asked, W in the mean; it is left holding what
// this store leaves. first is the number of the first hour in the year. In each hour the leak comes first.
//
//	offered S: u = 0 if S < P_th, else P_f if step, else min(S, P_f);   dx/dt = a_f·u − b_f;   t = min(H, (X − x)/(a_f·u − b_f))
//	asked L:   y = min(L, P_d);   −dx/dt = a_d·max(y, P_dmin) + b_d;   t = min(H, x/(a_d·max(y, P_dmin) + b_d))
//
// A store that would not rise at that power is not filled, and one that would give without falling gives nothing.
func (s *store) over(net []float64, first int, tr trace) {
	x := s.x
	var t sums
	for i := 0; i < len(net); {
		for ; i < len(net) && net[i] >= 0; i++ { // filling, as long as it goes on
			n, flow := net[i], 0.0
			x = s.begin(&t, x, first+i)
			if x >= s.X {
				t.full += hour
			} else if n > 0 && n >= s.pth && !(first+i < len(s.noFill) && s.noFill[first+i]) {
				u := s.pf
				if n < u && !s.step {
					u = n
				}
				rate := s.af*u - s.bf
				if end := x + rate*hour; end < s.easy && u <= n && rate > 0 {
					t.up += end - x // what the state gained, rounding included: the ledger closes by it
					t.taken += u * hour
					x, flow = end, u
				} else if rate > 0 {
					s.x = x
					flow = s.fillUp(u, rate, n)
					x = s.x
				}
				net[i] = positive(n - flow)
			}
			tr.hour(i, flow, x)
		}
		for ; i < len(net) && !(net[i] >= 0); i++ { // drawing, as long as it goes on
			n, flow := net[i], 0.0
			x = s.begin(&t, x, first+i)
			y := s.pd
			if -n < y {
				y = -n
			}
			z := y
			if z < s.pmin {
				z = s.pmin
			}
			rate := s.ad*z + s.bd
			floor := 0.0
			if first+i < len(s.locked) {
				floor = positive(s.locked[first+i] * s.X)
			}
			if y <= 0 || rate <= 0 || x <= floor {
				if x >= s.X {
					t.full += hour
				}
			} else if end := x - rate*hour; end > floor {
				t.down += x - end
				t.delivered += y * hour
				x, flow = end, -y
				net[i] = -positive(flow - n)
			} else {
				d := (x - floor) / rate
				t.down += x - floor
				t.delivered += y * d
				x, flow = floor, -y*d*(1/hour)
				net[i] = -positive(flow - n)
			}
			tr.hour(i, flow, x)
		}
	}
	s.x = x
	s.sum.add(t)
}

// begin begins an hour: a day's cap with the day, and the leak.
func (s *store) begin(t *sums, x float64, h int) float64 {
	if s.cap > 0 && h%24 == 0 {
		s.left = s.cap
	}
	if s.keep == 1 {
		return x
	}
	was := x
	x *= s.keep
	t.leaked += was - x
	return x
}

// hour writes one hour, where it is wanted.
func (tr *trace) hour(i int, flow, x float64) {
	if tr.flow != nil {
		tr.flow[i], tr.state[i] = flow, x
	}
}

// positive takes the rounding off what cannot be below zero.
func positive(v float64) float64 {
	if v < 0 {
		return 0
	}
	return v
}

// fillUp fills at power u and own rate in an hour in which n is offered, where the store may become full, the day's cap
// may be reached or acceptance may fall, and returns the mean power taken. A step store that is offered less than its
// power while its threshold lets it (a store before it carries the line) runs for the share of the hour that the energy
// lasts.
func (s *store) fillUp(u, rate, n float64) float64 {
	limit := hour
	if u > n {
		limit = hour * (n / u)
	}
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
	if kink := (s.p0 - u) * s.perP1; s.x < kink {
		end := kink
		if end > top {
			end = top
		}
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
	if end := r - beta*gap; up >= gap && end > 0 { // t = ln(r/end)/β, with r/end = 1 + β·gap/end
		q := gap / end
		if dt = q * log1pOver(beta*q); dt > left {
			dt = left
		}
		up = gap
		s.x = top
	} else {
		if up > gap {
			up = gap
		}
		s.x += up
	}
	return taken + (up+s.bf*dt)*s.perAf, t + dt
}

// log1pOver is ln(1 + z)/z for z ≥ 0: eight terms of its series where z is small (the ninth is under 1e-16), else the
// plain logarithm. A store that leaks comes here in every hour in which it is full.
func log1pOver(z float64) float64 {
	if z < 0.01 {
		return 1 - z*(1./2-z*(1./3-z*(1./4-z*(1./5-z*(1./6-z*(1./7-z*(1./8)))))))
	}
	return math.Log(1+z) / z
}
