package year

// settleManaged is settle for a managed year: what is switched off, what waits and whether the backup is on belong to the
// state in which the year repeats itself.
func (w *Workspace) settleManaged(bus []float64, d *Demand, standing float64, rec *record) (passes int, settled bool, spill, miss float64) {
	m := &w.managed
	m.ready(d, len(bus))
	n := len(m.sums)
	w.year.size(n, len(w.stores))
	for k := range w.stores {
		w.start[k] = w.stores[k].X
		w.stores[k].x = w.stores[k].X
	}
	for passes = 1; ; passes++ {
		m.note(m.start)
		w.passManaged(bus, d, standing, rec, n)
		if settled = w.together() && m.together(); settled || passes == runs {
			break
		}
		for k := range w.stores {
			w.start[k] = w.stores[k].x
		}
	}
	for k := range w.stores {
		w.stores[k].sum = sums{}
		for i := range n {
			w.stores[k].sum.add(w.year.sum[i*len(w.stores)+k])
		}
	}
	for i := range n {
		spill += m.sums[i].spill * hour
		miss += m.sums[i].miss * hour
	}
	return passes, settled, spill, miss
}

// passManaged is pass for a managed year. Pieces begin with a day, so the hours of the backup do not belong to their state.
func (w *Workspace) passManaged(bus []float64, d *Demand, standing float64, rec *record, n int) {
	m, stores, wide := &w.managed, len(w.stores), w.managed.width()
	for i := range n {
		begin := w.year.begin[i*stores : (i+1)*stores]
		same := stores > 0 && begin[0] == begin[0] // not in the first pass
		for k := range w.stores {
			same = same && w.stores[k].x == begin[k]
			begin[k] = w.stores[k].x
			w.stores[k].sum = sums{}
		}
		if m.note(m.begin[i*wide:(i+1)*wide]) && same { // from here on as the pass before, to where this one began
			for k := range w.stores {
				w.stores[k].x = w.start[k]
			}
			m.recall(m.start)
			return
		}
		from := i * piece
		to := min(from+piece, len(bus))
		m.forget()
		m.sums[i] = m.hours(bus, d, standing, w.stores, w.unmet, rec, from, to)
		for k := range w.stores {
			w.year.sum[i*stores+k] = w.stores[k].sum
		}
		for k := range m.levels {
			m.off[i*len(m.levels)+k] = m.levels[k].sum
		}
		for k := range m.waiting {
			m.ran[i*len(m.waiting)+k] = m.waiting[k].sum
		}
	}
}

// forget begins the sums of levels and waiting devices anew.
func (m *manager) forget() {
	for i := range m.levels {
		m.levels[i].sum = kept{}
	}
	for i := range m.waiting {
		m.waiting[i].sum = waited{}
	}
}

// backupYear is what the backup did in the year that was settled last.
func (m *manager) backupYear() (b BackupYear) {
	for _, t := range m.sums {
		b.add(BackupYear{Hours: t.hours, Starts: t.starts, Energy: joules((t.direct + t.charged) * hour), Direct: joules(t.direct * hour), Out: joules(t.out * hour)})
	}
	if m.has {
		b.burn(&m.backup)
	}
	return b
}
