package year

import (
	"math"

	"duskweight/internal/model/reservoir"
	"duskweight/internal/model/unit"
)

// Workspace holds what a sweep needs again and again, so that a year allocates nothing. One workspace for each
// goroutine; the zero Workspace is ready.
type Workspace struct {
	stores          []store
	start           []float64
	unmet           []float64
	missed          []float64 // by night: appliance joules
	missedEssential []float64
}

// Quick runs the settled year like Run and returns what a sweep needs of it.
func (w *Workspace) Quick(bus []float64, d *Demand, stores []reservoir.Reservoir) Brief {
	w.stores = w.stores[:0]
	standing := 0.0
	for _, r := range stores {
		w.stores = append(w.stores, ready(r))
		standing += tame(float64(r.Standing))
	}
	w.start = sized(w.start, len(stores))
	w.unmet = sized(w.unmet, len(bus))
	var b Brief
	var spill, miss float64
	b.Passes, b.Settled, spill, miss = settle(bus, d, standing, w.stores, w.start, w.unmet, nil)
	b.Spilled, b.Unmet = joules(spill), joules(miss)
	for k := range w.stores {
		b.Taken += joules(w.stores[k].sum.taken)
		b.Delivered += joules(w.stores[k].sum.delivered)
	}
	if len(w.stores) > 0 {
		b.End = joules(w.stores[0].x)
	}
	w.reckon(&b, d)
	return b
}

// reckon reads nights, outages and shares out of the hours in which something is missing.
func (w *Workspace) reckon(b *Brief, d *Demand) {
	w.missed = sized(w.missed, len(d.wanted))
	w.missedEssential = sized(w.missedEssential, len(d.wanted))
	clear(w.missed)
	clear(w.missedEssential)
	var nice, essential float64
	run, first, n := 0, -1, len(w.unmet)
	for h, u := range w.unmet {
		e := 0.0
		if u > 0 {
			wantNice, wantEss := d.nice[h]*hour, d.essential[h]*hour
			m := min(u, wantNice)
			e = min(u-m, wantEss)
			nice += m
			essential += e
			if d.night != nil && d.night[h] >= 0 {
				w.missed[d.night[h]] += m + e
				w.missedEssential[d.night[h]] += e
			}
			if e > served*wantEss {
				run++
				b.LongestOutage = max(b.LongestOutage, run)
				continue
			}
		}
		if first < 0 {
			first = run
		}
		run = 0
	}
	if first < 0 {
		first = 0
	}
	b.LongestOutage = min(n, max(b.LongestOutage, run+first))
	b.UnmetNice, b.UnmetEssential = joules(nice), joules(essential)
	b.ServedShare = 1
	if d.appliances > 0 {
		b.ServedShare = math.Max(0, 1-(nice+essential)/d.appliances)
	}
	b.Nights = d.counted
	for k, is := range d.isNight {
		if is && w.missed[k] <= served*d.wanted[k] {
			b.NightsServed++
		}
		if is && w.missedEssential[k] <= served*d.wantedEssential[k] {
			b.NightsEssential++
		}
	}
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
