package year

// Run runs the settled year: from full stores, then again from the state it ended in, until start and end agree to
// 1e-9 of the capacity or 20 passes are done; the last pass is the one that counts.
func Run(in Input) Result {
	n := len(in.Bus)
	d := NewDemand(n, in.Standing, in.Essential, in.Nice, in.Night)
	stores := make([]store, len(in.Stores))
	for k, r := range in.Stores {
		stores[k] = ready(r)
	}
	standing := 0.0
	for _, r := range in.Stores {
		standing += tame(float64(r.Standing))
	}
	rec := newRecord(n, len(stores))
	start := make([]float64, len(stores))
	out := Result{}
	out.Passes, out.Settled, _, _ = settle(in.Bus, d, standing, stores, start, rec.unmet, rec)
	account(&out, in, d, stores, start, rec)
	if in.Keep {
		out.Hourly = &Hourly{Unmet: rec.unmet, Spilled: rec.spilled, Taken: rec.taken, Delivered: rec.delivered, State: rec.state}
	}
	return out
}

// settle runs passes until the year repeats itself. start is left holding the state in which the last pass began.
func settle(bus []float64, d *Demand, standing float64, stores []store, start, unmet []float64, rec *record) (passes int, settled bool, spill, miss float64) {
	for k := range stores {
		start[k] = stores[k].X
	}
	for passes = 1; ; passes++ {
		for k := range stores {
			stores[k].reset(start[k])
		}
		spill, miss = pass(bus, d, standing, stores, unmet, rec)
		if together(stores, start) {
			return passes, true, spill, miss
		}
		if passes == runs {
			return passes, false, spill, miss
		}
		for k := range stores {
			start[k] = stores[k].x
		}
	}
}

func newRecord(n, stores int) *record {
	rec := &record{unmet: make([]float64, n), spilled: make([]float64, n)}
	for range stores {
		rec.taken = append(rec.taken, make([]float64, n))
		rec.delivered = append(rec.delivered, make([]float64, n))
		rec.state = append(rec.state, make([]float64, n))
	}
	return rec
}
