package year

import "duskweight/internal/model/reservoir"

// four is four straight stores without leak that use the same power all the time, abreast.
type four struct {
	store [4]straight
	x     [4]float64
	sum   [4]stretch
	short [4][]lack // hours that lack, from sum.short on
}

// fourOf makes a four of the first four stores where they are of that kind.
func fourOf(stores []reservoir.Reservoir) (f four, ok bool) {
	for j := range f.store {
		s := ready(stores[j])
		if f.store[j], ok = straighten(&s, tame(float64(stores[j].Standing))); !ok || f.store[j].keep != 1 {
			return f, false
		}
	}
	return f, true
}

func (f *four) states() *[4]float64 { return &f.x }

func (f *four) capacity(j int) float64 { return f.store[j].X }

func (f *four) hours(bus, total []float64, from, to int, short *[4][]lack) [4]stretch {
	f.short = *short
	f.run(bus[from:to], total[from:to], from)
	return f.sum
}

func (f *four) conclude(w *Workspace, b *Brief, j int, l *lane[stretch], d *Demand, n int) {
	f.store[j].conclude(w, b, l, d, n)
}

// run goes through the hours with all four. The lines stand four times on purpose: a loop over them keeps the states in
// memory and takes twice as long.
func (f *four) run(bus, total []float64, first int) {
	total = total[:len(bus)]
	a, b, c, d := &f.store[0], &f.store[1], &f.store[2], &f.store[3]
	xa, xb, xc, xd := f.x[0], f.x[1], f.x[2], f.x[3]
	ta, tb, tc, td := &f.sum[0], &f.sum[1], &f.sum[2], &f.sum[3]
	*ta, *tb, *tc, *td = stretch{}, stretch{}, stretch{}, stretch{}
	var surplus, deficit float64
	for h := 0; h < len(bus); {
		for ; h < len(bus); h++ {
			s := bus[h] - total[h] - a.standing
			if s < 0 {
				break
			}
			surplus += s
			if s > a.pf {
				xa += ta.capped(s, a)
			} else {
				xa += s * a.gain
			}
			if xa > a.X {
				ta.over += xa - a.X
				xa = a.X
			}
			if s > b.pf {
				xb += tb.capped(s, b)
			} else {
				xb += s * b.gain
			}
			if xb > b.X {
				tb.over += xb - b.X
				xb = b.X
			}
			if s > c.pf {
				xc += tc.capped(s, c)
			} else {
				xc += s * c.gain
			}
			if xc > c.X {
				tc.over += xc - c.X
				xc = c.X
			}
			if s > d.pf {
				xd += td.capped(s, d)
			} else {
				xd += s * d.gain
			}
			if xd > d.X {
				td.over += xd - d.X
				xd = d.X
			}
		}
		for ; h < len(bus); h++ {
			s := bus[h] - total[h] - a.standing
			if s >= 0 {
				break
			}
			deficit -= s
			if na := xa + s*a.cost; na >= 0 && s >= -a.pd {
				xa = na
			} else {
				xa = f.lacks(0, first+h, s, xa)
			}
			if nb := xb + s*b.cost; nb >= 0 && s >= -b.pd {
				xb = nb
			} else {
				xb = f.lacks(1, first+h, s, xb)
			}
			if nc := xc + s*c.cost; nc >= 0 && s >= -c.pd {
				xc = nc
			} else {
				xc = f.lacks(2, first+h, s, xc)
			}
			if nd := xd + s*d.cost; nd >= 0 && s >= -d.pd {
				xd = nd
			} else {
				xd = f.lacks(3, first+h, s, xd)
			}
		}
	}
	f.x = [4]float64{xa, xb, xc, xd}
	for j := range f.sum {
		f.sum[j].surplus, f.sum[j].deficit = surplus, deficit
	}
}

// capped books an offer above P_f and returns what goes in.
func (t *stretch) capped(s float64, k *straight) float64 {
	t.above += s - k.pf
	return k.pf * k.gain
}

// lacks books the rarer hour in which store j gives less than is asked, s < 0, and returns its state after it.
func (f *four) lacks(j, h int, s, x float64) float64 {
	k, t := &f.store[j], &f.sum[j]
	u := 0.0
	if s < -k.pd {
		u = (-s - k.pd) * hour
		x -= k.pd * k.cost
	} else {
		x += s * k.cost
	}
	if x < 0 {
		u -= x * k.perCost
		x = 0
	}
	f.short[j][t.short] = lack{h, u}
	t.short++
	return x
}
