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

	untimed bool // timeless, and nobody asks for the hours at full: no logarithm is needed

	x    float64
	left float64 // of cap, today
	sum  sums

	cap    float64 // own joules a day; 0 is none
	noFill []bool
	locked []float64

	own   *reservoir.Source // beside the line; nil for none
	aside bool              // no charge is read from it
}

// sums are a store's totals over some hours: taken and delivered at the line; up, down and leaked in own joules.
type sums struct {
	taken, delivered float64
	up, down, leaked float64
	full             float64 // seconds at full
	idle             float64 // of a source of its own: joules that it did not take
}

// add adds the totals of later hours.
func (s *sums) add(t sums) {
	s.taken += t.taken
	s.delivered += t.delivered
	s.up += t.up
	s.down += t.down
	s.leaked += t.leaked
	s.full += t.full
	s.idle += t.idle
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

// timeless reports whether the moment at which the store is full changes nothing but the hours at full: its filling
// falls, loses nothing while it goes on, has no cap, and goes on with some power to the end.
func (s *store) timeless() bool {
	const some = 1e-9 // of p0, far above rounding
	return s.falls && s.bf == 0 && s.cap == 0 && s.p0-s.p1*s.X > some*s.p0
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
		own:    r.Own,
		aside:  r.Aside,
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
