package year

import "math"

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
		if !s.untimed {
			q := gap / end
			if dt = q * log1pOver(beta*q); dt > left {
				dt = left
			}
		}
		up = gap
		s.x = top
	} else {
		if up > gap {
			up = gap
		}
		s.x = min(s.x+up, top) // x + (top − x) may round above top
	}
	return taken + (up+s.bf*dt)*s.perAf, t + dt
}

// taper is an hour of filling above the kink, for a store that is untimed: up = min(a_f(p0 − p1·x)·reach, X − x), as
// fillFalling works it out. It returns the state after it and the mean power taken.
func (s *store) taper(x float64) (end, flow float64) {
	up, gap := s.af*(s.p0-s.p1*x)*s.reach, s.X-x
	if up >= gap {
		up, end = gap, s.X
	} else {
		end = min(x+up, s.X) // x + (X − x) may round above X
	}
	taken := up * s.perAf
	s.sum.up += end - x
	s.sum.taken += taken
	return end, taken * (1 / hour)
}

// log1pOver is ln(1 + z)/z for z ≥ 0: eight terms of its series where z is small (the ninth is under 1e-16), else the
// plain logarithm. A store that leaks comes here in every hour in which it is full.
func log1pOver(z float64) float64 {
	if z < 0.01 {
		return 1 - z*(1./2-z*(1./3-z*(1./4-z*(1./5-z*(1./6-z*(1./7-z*(1./8)))))))
	}
	return math.Log(1+z) / z
}
