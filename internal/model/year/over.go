package year

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
				} else if rate > 0 && s.untimed && x >= (s.p0-u)*s.perP1 {
					x, flow = s.taper(x)
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
