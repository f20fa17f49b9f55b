package year

import (
	"math"

	"duskweight/internal/model/reservoir"
)

// lane is where a straight store keeps its year in pieces.
type lane struct {
	begin []float64 // state in which each piece began
	sum   []stretch // what it came to
	short []lack    // the hours that lack, each piece's from its first hour's place on
	start float64   // state in which the last pass began
	last  float64   // state in which it ended
}

// size makes room for a year of n hours.
func (l *lane) size(n int) {
	pieces := (n + piece - 1) / piece
	l.begin = sized(l.begin, pieces)
	if cap(l.sum) < pieces {
		l.sum = make([]stretch, pieces)
	}
	l.sum = l.sum[:pieces]
	if cap(l.short) < n {
		l.short = make([]lack, n)
	}
	l.short = l.short[:n]
}

// quickStraight is Quick with one straight store: the lean kernel, piece by piece.
func (w *Workspace) quickStraight(bus []float64, d *Demand, k straight) Brief {
	l := &w.lane[0]
	l.size(len(bus))
	b := Brief{}
	x := k.X
	for b.Passes = 1; ; b.Passes++ {
		l.start = x
		x = l.pass(&k, bus, d.total, x, b.Passes == 1)
		if b.Settled = math.Abs(x-l.start) <= settledTo*k.X; b.Settled || b.Passes == runs {
			break
		}
	}
	w.conclude(&b, &k, l, d, len(bus))
	return b
}

// pass runs the pieces of a year from state x, as far as they differ from the pass before, and returns the last state.
func (l *lane) pass(k *straight, bus, total []float64, x float64, first bool) float64 {
	for i := range l.sum {
		if !first && l.begin[i] == x {
			return l.last
		}
		l.begin[i] = x
		from := i * piece
		to := min(from+piece, len(bus))
		x, l.sum[i] = k.run(bus[from:to], total[from:to], from, l.short[from:to], x)
	}
	l.last = x
	return x
}

// conclude reads the answers out of a straight store's year. What was taken and delivered follows from the balances.
func (w *Workspace) conclude(b *Brief, k *straight, l *lane, d *Demand, n int) {
	var t stretch
	miss := 0.0
	c := newCount(w, d)
	for i, p := range l.sum {
		t.surplus += p.surplus
		t.deficit += p.deficit
		t.above += p.above
		t.over += p.over
		for _, s := range l.short[i*piece : i*piece+p.short] {
			miss += s.unmet
			c.lacks(s.h, s.unmet)
		}
	}
	b.Spilled = joules(t.above*hour + t.over*k.perGain)
	b.Taken = joules(t.surplus*hour) - b.Spilled
	b.Unmet = joules(miss)
	b.Delivered = joules(t.deficit*hour - miss)
	b.End = joules(l.last)
	c.close(b, n)
}

// Sweep runs the settled year once for each store, each alone with the same sun and load, and appends what each comes
// to. Straight stores without leak that use the same power all the time are run four at a time; the numbers are those
// of Quick to the last bit.
func (w *Workspace) Sweep(out []Brief, bus []float64, d *Demand, stores []reservoir.Reservoir) []Brief {
	for len(stores) > 0 {
		if f, ok := fourOf(stores); ok && d.managed == nil {
			out = w.quickFour(out, bus, d, &f)
			stores = stores[4:]
			continue
		}
		out = append(out, w.Quick(bus, d, stores[:1]))
		stores = stores[1:]
	}
	return out
}

// fourOf makes a four of the first four stores where they are of that kind.
func fourOf(stores []reservoir.Reservoir) (f four, ok bool) {
	if len(stores) < 4 {
		return f, false
	}
	for j := range f.store {
		s := ready(stores[j])
		if f.store[j], ok = straighten(&s, tame(float64(stores[j].Standing))); !ok || f.store[j].keep != 1 {
			return f, false
		}
		if f.store[j].standing != f.store[0].standing {
			return f, false
		}
	}
	return f, true
}

// quickFour is quickStraight for four at once. Each is concluded when its own year repeats itself, though the others may
// go on.
func (w *Workspace) quickFour(out []Brief, bus []float64, d *Demand, f *four) []Brief {
	var b [4]Brief
	for j := range w.lane {
		w.lane[j].size(len(bus))
		f.x[j] = f.store[j].X
	}
	for passes := 1; passes <= runs; passes++ {
		all := true
		for j := range w.lane {
			w.lane[j].start = f.x[j]
		}
		w.passFour(bus, d.total, f, passes == 1)
		for j := range w.lane {
			if b[j].Settled {
				continue
			}
			b[j].Passes = passes
			b[j].Settled = math.Abs(f.x[j]-w.lane[j].start) <= settledTo*f.store[j].X
			if b[j].Settled || passes == runs {
				w.conclude(&b[j], &f.store[j], &w.lane[j], d, len(bus))
			}
			all = all && b[j].Settled
		}
		if all {
			break
		}
	}
	return append(out, b[:]...)
}

// passFour runs the pieces of a year, as far as they differ from the pass before for any of the four.
func (w *Workspace) passFour(bus, total []float64, f *four, first bool) {
	for i := range w.lane[0].sum {
		same := !first
		for j := range w.lane {
			same = same && w.lane[j].begin[i] == f.x[j]
		}
		if same {
			for j := range w.lane {
				f.x[j] = w.lane[j].last
			}
			return
		}
		from := i * piece
		to := min(from+piece, len(bus))
		for j := range w.lane {
			w.lane[j].begin[i] = f.x[j]
			f.short[j] = w.lane[j].short[from:to]
		}
		f.run(bus[from:to], total[from:to], from)
		for j := range w.lane {
			w.lane[j].sum[i] = f.sum[j]
		}
	}
	for j := range w.lane {
		w.lane[j].last = f.x[j]
	}
}
