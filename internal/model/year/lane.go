package year

import (
	"math"
)

// lane is where a store that runs beside others keeps its year in pieces, each of which came to a T.
type lane[T any] struct {
	begin []float64 // state in which each piece began
	sum   []T       // what it came to
	short []lack    // the hours that lack, each piece's from its first hour's place on
	start float64   // state in which the last pass began
	last  float64   // state in which it ended
}

// size makes room for a year of n hours.
func (l *lane[T]) size(n int) {
	pieces := (n + piece - 1) / piece
	l.begin = sized(l.begin, pieces)
	if cap(l.sum) < pieces {
		l.sum = make([]T, pieces)
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
		x = k.pass(l, bus, d.total, x, b.Passes == 1)
		if b.Settled = math.Abs(x-l.start) <= settledTo*k.X; b.Settled || b.Passes == runs {
			break
		}
	}
	k.conclude(w, &b, l, d, len(bus))
	return b
}

// pass runs the pieces of a year from state x, as far as they differ from the pass before, and returns the last state.
func (k *straight) pass(l *lane[stretch], bus, total []float64, x float64, first bool) float64 {
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
func (k *straight) conclude(w *Workspace, b *Brief, l *lane[stretch], d *Demand, n int) {
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
