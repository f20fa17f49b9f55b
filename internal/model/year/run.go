package year

// Run runs the settled year: from full stores, then again from the state it ended in, until start and end agree to
// 1e-9 of the capacity or 20 passes are done; the last pass is the one that counts.
func Run(in Input) Result {
	n := len(in.Bus)
	d := NewDemand(n, in.Standing, in.Essential, in.Nice, in.Night)
	var w Workspace
	standing := w.ready(in.Stores, n)
	rec := newRecord(n, len(w.stores))
	out := Result{}
	out.Passes, out.Settled, _, _ = w.settle(in.Bus, d, standing, rec)
	account(&out, in, d, &w, rec)
	if in.Keep {
		out.Hourly = &Hourly{Unmet: w.unmet, Spilled: rec.spilled, Taken: rec.taken, Delivered: rec.delivered, State: rec.state}
	}
	return out
}

func newRecord(n, stores int) *record {
	rec := &record{spilled: make([]float64, n)}
	for range stores {
		rec.taken = append(rec.taken, make([]float64, n))
		rec.delivered = append(rec.delivered, make([]float64, n))
		rec.state = append(rec.state, make([]float64, n))
	}
	return rec
}
