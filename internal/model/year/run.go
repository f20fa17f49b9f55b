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
		out.Hourly = rec.hourly(w.unmet)
	}
	return out
}

func newRecord(n, stores int) *record {
	rec := &record{spilled: make([]float64, n)}
	for range stores {
		rec.stores = append(rec.stores, trace{flow: make([]float64, n), state: make([]float64, n)})
	}
	return rec
}

// hourly turns the record into what is handed out.
func (rec *record) hourly(unmet []float64) *Hourly {
	out := &Hourly{Unmet: unmet, Spilled: rec.spilled}
	for _, tr := range rec.stores {
		taken, delivered := make([]float64, len(tr.flow)), make([]float64, len(tr.flow))
		for h, f := range tr.flow {
			taken[h], delivered[h] = positive(f)*hour, positive(-f)*hour
		}
		out.Taken = append(out.Taken, taken)
		out.Delivered = append(out.Delivered, delivered)
		out.State = append(out.State, tr.state)
	}
	return out
}
