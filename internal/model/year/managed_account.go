package year

// dealtHours is what a managed year did hour by hour, W.
type dealtHours struct {
	direct, charged []float64
	off             [2][]float64 // kept off by levels: essential, nice
	run, asks       [][]float64  // by waiting device
}

// size makes room for n hours and so many waiting devices.
func (r *dealtHours) size(n, waiting int) {
	r.direct, r.charged = sized(r.direct, n), sized(r.charged, n)
	for k := range r.off {
		r.off[k] = sized(r.off[k], n)
	}
	for len(r.run) < waiting {
		r.run, r.asks = append(r.run, nil), append(r.asks, nil)
	}
	r.run, r.asks = r.run[:waiting], r.asks[:waiting]
	for i := range r.run {
		r.run[i], r.asks[i] = sized(r.run[i], n), sized(r.asks[i], n)
	}
}

// hour notes hour h.
func (r *dealtHours) hour(m *manager, h int, direct, charged float64, off [2]float64) {
	r.direct[h], r.charged[h] = direct, charged
	r.off[0][h], r.off[1][h] = off[0], off[1]
	for i := range m.waiting {
		r.run[i][h], r.asks[i][h] = m.waiting[i].now, m.waiting[i].want
	}
}

// managed adds what is known of a managed year alone, in joules.
func (out *Hourly) managed(d *Demand, r *dealtHours) {
	if d.managed == nil {
		return
	}
	n := len(r.direct)
	out.Direct, out.Charge, out.Shed = make([]float64, n), make([]float64, n), make([]float64, n)
	for h := range n {
		out.Direct[h], out.Charge[h], out.Shed[h] = r.direct[h]*hour, r.charged[h]*hour, (r.off[0][h]+r.off[1][h])*hour
	}
	for i := range r.run {
		run, asks := make([]float64, n), make([]float64, n)
		for h := range n {
			run[h], asks[h] = r.run[i][h]*hour, r.asks[i][h]*hour
		}
		out.Run, out.Asks = append(out.Run, run), append(out.Asks, asks)
	}
}

// managed books what backup, levels and waiting devices did.
func (out *Result) managed(m *manager, of *Managed) {
	out.Backup = m.backupYear()
	for i, l := range of.Levels {
		y := LevelYear{Below: l.Below}
		for k := i; k < len(m.off); k += len(m.levels) {
			y.Hours += m.off[k].hours
			y.Energy += joules(m.off[k].energy * hour)
		}
		out.Shed = append(out.Shed, y)
	}
	for i := range of.Waiting {
		y := WaitYear{Change: joules(m.waiting[i].back - m.start[len(m.levels)+i])}
		for k := i; k < len(m.ran); k += len(m.waiting) {
			y.Asked += joules(m.ran[k].asked)
			y.Run += joules(m.ran[k].run)
			y.Missed += joules(m.ran[k].missed)
			y.Days += m.ran[k].days
		}
		out.Waiting = append(out.Waiting, y)
	}
}

// managed counts the hours of a managed year in which something is missing. What waiting devices run with in a night is
// wanted in that night.
func (c *count) managed() {
	d, w := c.d, c.w
	w.wanted, w.wantedEssential = append(w.wanted[:0], d.wanted...), append(w.wantedEssential[:0], d.wantedEssential...)
	c.wanted, c.wantedEssential = w.wanted, w.wantedEssential
	m := &w.managed
	for h, u := range w.unmet {
		essential, nice := m.runs[0][h]*hour, m.runs[1][h]*hour
		c.appliances += essential + nice
		if d.night != nil && d.night[h] >= 0 {
			w.wanted[d.night[h]] += essential + nice
			w.wantedEssential[d.night[h]] += essential
		}
		if u > 0 {
			c.misses(h, m.gone[1][h], m.gone[0][h], d.essential[h]*hour)
		}
	}
}

// manage changes an hour's wish, in joules by part, into that of a managed year, and returns what of it levels keep off and
// what the backup gives at once.
func (l *ledger) manage(h int, want *[4]float64) (off [4]float64, direct float64) {
	m, r := &l.w.managed, &l.rec.dealt
	for k := range m.runs {
		run := m.runs[k][h] * hour
		want[2+k] += run
		off[2+k] = r.off[k][h] * hour
		if night := l.d.nightOf(h); night >= 0 {
			l.out.NightLog[night].Wanted += joules(run)
			if k == 0 {
				l.out.NightLog[night].WantedEssential += joules(run)
			}
		}
	}
	return off, r.direct[h] * hour
}

// nightOf is the night to which hour h belongs, −1 for none.
func (d *Demand) nightOf(h int) int {
	if d.night == nil {
		return -1
	}
	return d.night[h]
}

// goneFrom says which parts the u joules that are missing in hour h of a managed year are missing from.
func (m *manager) goneFrom(h int, u float64, want [4]float64) [4]float64 {
	miss := missing(u-m.gone[0][h]-m.gone[1][h], [4]float64{want[0], want[1], 0, 0})
	miss[2], miss[3] = m.gone[0][h], m.gone[1][h]
	return miss
}
