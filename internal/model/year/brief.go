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
	unmet  []float64 // J by hour
	year   pieces

	lane  [4]lane[stretch] // of straight stores
	bent  [4]lane[bout]    // of stores whose filling falls
	bends bends

	missed          []float64 // by night: appliance joules
	missedEssential []float64

	managed         manager
	wanted          []float64 // of a managed year, by night: appliance joules
	wantedEssential []float64
}

// ready makes the stores ready for years of n hours and returns what they use all the time, W.
func (w *Workspace) ready(stores []reservoir.Reservoir, n int) (standing float64) {
	w.stores = w.stores[:0]
	for _, r := range stores {
		w.stores = append(w.stores, ready(r))
		standing += tame(float64(r.Standing))
	}
	w.start = sized(w.start, len(stores))
	w.unmet = sized(w.unmet, n)
	return standing
}

// Quick runs the settled year like Run and returns what a sweep needs of it. bus must hold no value below zero.
func (w *Workspace) Quick(bus []float64, d *Demand, stores []reservoir.Reservoir) Brief {
	standing := w.ready(stores, len(bus))
	if len(stores) == 1 && d.managed == nil {
		if k, ok := straighten(&w.stores[0], standing); ok {
			return w.quickStraight(bus, d, k)
		}
	}
	w.untime()
	passes, settled, spill, miss := w.settle(bus, d, standing, nil)
	return w.brief(d, passes, settled, spill, miss)
}

// untime leaves the hours at full out, which a Brief does not have.
func (w *Workspace) untime() {
	for k := range w.stores {
		w.stores[k].untimed = w.stores[k].timeless()
	}
}

// brief reads the answers out of a year that was settled; spill and miss are the joules of it.
func (w *Workspace) brief(d *Demand, passes int, settled bool, spill, miss float64) Brief {
	b := Brief{Passes: passes, Settled: settled}
	b.Spilled, b.Unmet = joules(spill), joules(miss)
	for k := range w.stores {
		b.Taken += joules(w.stores[k].sum.taken)
		b.Delivered += joules(w.stores[k].sum.delivered)
	}
	if len(w.stores) > 0 {
		b.End = joules(w.stores[0].x)
	}
	c := newCount(w, d)
	if d.managed != nil {
		b.Backup = w.managed.backupYear()
		c.managed()
	} else {
		for h, u := range w.unmet {
			if u > 0 {
				c.lacks(h, u)
			}
		}
	}
	c.close(&b, len(w.unmet))
	return b
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
