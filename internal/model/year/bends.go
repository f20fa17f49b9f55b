package year

import "duskweight/internal/model/reservoir"

// bends is four stores whose filling falls near full, abreast: a battery in many sizes. They use the same power all the
// time and have nothing else to them but a leak: no threshold, no losses while they run, no cap, no source of their own.
type bends struct {
	store    [4]bend
	x        [4]float64
	standing float64
}

// bend is one of the four, with what a piece came to.
type bend struct {
	store
	flat   float64 // J taken in hours below the fall
	spill  float64 // W·h at the line
	miss   float64 // W·h at the line
	short  []lack
	lacked int // hours in short
}

// bout is what a piece of the year comes to with a store whose filling falls.
type bout struct {
	taken, delivered float64 // J at the line
	spill, miss      float64 // J
	short            int     // hours in the list of those in which something is missing
}

// of makes the four of the first four stores where they are of that kind.
func (f *bends) of(stores []reservoir.Reservoir) bool {
	for j := range f.store {
		s := ready(stores[j])
		if s.pth > 0 || s.bd > 0 || s.pmin > 0 || s.af <= 0 || s.ad <= 0 || s.own != nil || !s.timeless() {
			return false
		}
		s.untimed = true
		f.store[j] = bend{store: s}
	}
	f.standing = tame(float64(stores[0].Standing))
	return true
}

func (f *bends) states() *[4]float64 { return &f.x }

func (f *bends) capacity(j int) float64 { return f.store[j].X }

// hours goes through a piece with all four. The calls stand four times on purpose, as the lines of four do.
func (f *bends) hours(bus, total []float64, from, to int, short *[4][]lack) (sum [4]bout) {
	a, b, c, d := &f.store[0], &f.store[1], &f.store[2], &f.store[3]
	for j := range f.store {
		f.store[j].begins(short[j])
	}
	xa, xb, xc, xd := f.x[0], f.x[1], f.x[2], f.x[3]
	bus, total = bus[from:to], total[from:to]
	total = total[:len(bus)]
	for h := range bus {
		n := tame(bus[h]) - (total[h] + f.standing)
		if n >= 0 {
			xa = a.fill(xa, n, from+h)
			xb = b.fill(xb, n, from+h)
			xc = c.fill(xc, n, from+h)
			xd = d.fill(xd, n, from+h)
			continue
		}
		xa = a.draw(xa, n, from+h)
		xb = b.draw(xb, n, from+h)
		xc = c.draw(xc, n, from+h)
		xd = d.draw(xd, n, from+h)
	}
	f.x = [4]float64{xa, xb, xc, xd}
	for j := range f.store {
		sum[j] = f.store[j].came()
	}
	return sum
}

// begins begins a piece.
func (s *bend) begins(short []lack) {
	s.sum, s.flat, s.spill, s.miss, s.short, s.lacked = sums{}, 0, 0, 0, short, 0
}

// came is what the piece came to.
func (s *bend) came() bout {
	return bout{
		taken: s.sum.taken + s.flat, delivered: s.sum.delivered,
		spill: s.spill * hour, miss: s.miss * hour, short: s.lacked,
	}
}

// fill is hour h of the year, in which n ≥ 0 W are offered, from state x, and returns the state after it, as store.over
// has it.
func (s *bend) fill(x, n float64, h int) float64 {
	x *= s.keep
	if h < len(s.noFill) && s.noFill[h] {
		s.spill += n
		return x
	}
	u := s.pf
	if n < u {
		u = n
	}
	rate := s.af * u
	if end := x + rate*hour; end < s.easy && rate > 0 {
		s.flat += u * hour
		s.spill += n - u
		return end
	}
	return s.fall(x, u, rate, n)
}

// fall is the hour of filling that ends above the bend, or finds the store full or nothing offered. Up to the kink, where
// the line of acceptance crosses u, it is straight; from there on it tapers; an hour that crosses the kink is both.
func (s *bend) fall(x, u, rate, n float64) float64 {
	if x >= s.X || !(rate > 0) {
		s.spill += n
		return x
	}
	flow, kink := 0.0, (s.p0-u)*s.perP1
	switch {
	case x >= kink:
		x, flow = s.taper(x)
	case min(kink, s.X)-x >= rate*hour:
		x = min(x+rate*hour, kink, s.X)
		flow = u * hour * (1 / hour)
		s.sum.taken += u * hour
	default:
		s.x = x
		flow = s.fillUp(u, rate, n)
		x = s.x
	}
	s.spill += positive(n - flow)
	return x
}

// draw is hour h of the year, in which n < 0 W are asked, from state x, and returns the state after it.
func (s *bend) draw(x, n float64, h int) float64 {
	x *= s.keep
	floor := 0.0
	if h < len(s.locked) {
		floor = positive(s.locked[h] * s.X)
	}
	if end := x + s.ad*n*hour; end > floor && -n <= s.pd {
		s.sum.delivered -= n * hour
		return end
	}
	return s.lack(x, n, floor, h)
}

// lack is the hour in which less is given than is asked.
func (s *bend) lack(x, n, floor float64, h int) float64 {
	y, flow := min(-n, s.pd), 0.0
	if rate := s.ad * y; rate > 0 && x > floor {
		if end := x - rate*hour; end > floor {
			s.sum.delivered += y * hour
			x, flow = end, -y
		} else {
			d := (x - floor) / rate
			s.sum.delivered += y * d
			x, flow = floor, -y*d*(1/hour)
		}
	}
	if left := positive(flow - n); left > 0 {
		s.miss += left
		s.short[s.lacked] = lack{h, left * hour}
		s.lacked++
	}
	return x
}

// conclude reads the answers out of the year of store j.
func (f *bends) conclude(w *Workspace, b *Brief, j int, l *lane[bout], d *Demand, n int) {
	var t bout
	c := newCount(w, d)
	for i, p := range l.sum {
		t.taken += p.taken
		t.delivered += p.delivered
		t.spill += p.spill
		t.miss += p.miss
		for _, s := range l.short[i*piece : i*piece+p.short] {
			c.lacks(s.h, s.unmet)
		}
	}
	b.Spilled, b.Unmet = joules(t.spill), joules(t.miss)
	b.Taken, b.Delivered = joules(t.taken), joules(t.delivered)
	b.End = joules(l.last)
	c.close(b, n)
}
