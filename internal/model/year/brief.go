package year

import (
	"math"

	"duskweight/internal/model/reservoir"
	"duskweight/internal/model/unit"
)

// Workspace holds what a sweep needs again and again, so that a year allocates nothing. One workspace for each
// goroutine; the zero Workspace is ready.
type Workspace struct {
	stores []store
	start  []float64 // states in which the last pass began
	end    []float64 // states in which it ended
	unmet  []float64 // J by hour
	year   pieces

	stretches []stretch // of a straight store, by piece
	begin     []float64 // the same: the state in which each began
	short     []lack    // hours that lack, each piece's from its first hour's place on
	last      float64   // state in which the last whole pass ended

	missed          []float64 // by night: appliance joules
	missedEssential []float64
}

// ready makes the stores ready for years of n hours and returns what they use all the time, W.
func (w *Workspace) ready(stores []reservoir.Reservoir, n int) (standing float64) {
	w.stores = w.stores[:0]
	for _, r := range stores {
		w.stores = append(w.stores, ready(r))
		standing += tame(float64(r.Standing))
	}
	w.start = sized(w.start, len(stores))
	w.end = sized(w.end, len(stores))
	w.unmet = sized(w.unmet, n)
	return standing
}

// Quick runs the settled year like Run and returns what a sweep needs of it. bus must hold no value below zero.
func (w *Workspace) Quick(bus []float64, d *Demand, stores []reservoir.Reservoir) Brief {
	standing := w.ready(stores, len(bus))
	if len(stores) == 1 {
		if k, ok := straighten(&w.stores[0], standing); ok {
			return w.quickStraight(bus, d, &k)
		}
	}
	var b Brief
	var spill, miss float64
	b.Passes, b.Settled, spill, miss = w.settle(bus, d, standing, nil)
	b.Spilled, b.Unmet = joules(spill), joules(miss)
	for k := range w.stores {
		b.Taken += joules(w.stores[k].sum.taken)
		b.Delivered += joules(w.stores[k].sum.delivered)
	}
	if len(w.stores) > 0 {
		b.End = joules(w.stores[0].x)
	}
	c := newCount(w, d)
	for h, u := range w.unmet {
		if u > 0 {
			c.lacks(h, u)
		}
	}
	c.close(&b, len(bus))
	return b
}

// quickStraight is Quick with one straight store: the lean kernel, piece by piece.
func (w *Workspace) quickStraight(bus []float64, d *Demand, k *straight) Brief {
	n := (len(bus) + piece - 1) / piece
	w.begin = sized(w.begin, n)
	if cap(w.stretches) < n {
		w.stretches = make([]stretch, n)
	}
	w.stretches = w.stretches[:n]
	if cap(w.short) < len(bus) {
		w.short = make([]lack, len(bus))
	}
	w.short = w.short[:len(bus)]
	b := Brief{}
	x, start := k.X, k.X
	for b.Passes = 1; ; b.Passes++ {
		start = x
		x = k.pass(w, bus, d.total, x, b.Passes == 1)
		if b.Settled = math.Abs(x-start) <= settledTo*k.X; b.Settled || b.Passes == runs {
			break
		}
	}
	var t stretch
	miss := 0.0
	c := newCount(w, d)
	for i := range n {
		p := w.stretches[i]
		t.surplus += p.surplus
		t.deficit += p.deficit
		t.above += p.above
		t.over += p.over
		for _, l := range w.short[i*piece : i*piece+p.short] {
			miss += l.unmet
			c.lacks(l.h, l.unmet)
		}
	}
	b.Spilled = joules(t.above*hour + t.over*k.perGain)
	b.Taken = joules(t.surplus*hour) - b.Spilled
	b.Unmet = joules(miss)
	b.Delivered = joules(t.deficit*hour - miss)
	b.End = joules(x)
	c.close(&b, len(bus))
	return b
}

// pass runs the pieces of a year from state x, as far as they differ from the pass before, and returns the last state.
func (k *straight) pass(w *Workspace, bus, total []float64, x float64, first bool) float64 {
	for i := range w.stretches {
		if !first && w.begin[i] == x {
			return w.last
		}
		w.begin[i] = x
		from := i * piece
		to := min(from+piece, len(bus))
		x, w.stretches[i] = k.run(bus[from:to], total[from:to], from, w.short[from:to], x)
	}
	w.last = x
	return x
}

// sized returns v with length n, anew only where it does not fit.
func sized(v []float64, n int) []float64 {
	if cap(v) < n {
		return make([]float64, n)
	}
	return v[:n]
}

func joules(v float64) unit.Energy { return unit.Energy(v) }

// share returns part/whole, not known when whole is nothing.
func share(part, whole float64) unit.Known[unit.Ratio] {
	if whole <= 0 {
		return unit.Known[unit.Ratio]{}
	}
	return unit.Of(unit.Ratio(math.Max(0, part/whole)))
}
