package year

// manager holds the state and the sums of a managed year. It is part of the Workspace, so that a year allocates nothing.
type manager struct {
	levels  []switched
	waiting []asking
	has     bool // there is a backup
	backup  Backup
	may     window // of the backup
	gen     generator

	begin []float64 // by piece: the state of switches, backlogs and backup in which it began
	sums  []dealt   // by piece
	off   []kept    // by piece and level
	ran   []waited  // by piece and waiting device
	start []float64 // the state in which the last pass began

	gone [2][]float64 // J by hour that is missing: essential, nice; what levels keep off included
	runs [2][]float64 // W by hour that waiting devices run at: essential, nice
}

// switched is a level with its state.
type switched struct {
	below, back     float64
	essential, nice []float64
	off             bool
	sum             kept
}

// kept is what a level keeps off over some hours.
type kept struct {
	hours  int
	energy float64 // W·h
}

// asking is a waiting device with its state.
type asking struct {
	Waiting
	hours window
	back  float64 // J that wait: B
	want  float64 // W that it still asks in this hour
	now   float64 // W that it runs at in this hour
	sum   waited
}

// waited is what a waiting device comes to over some hours, J.
type waited struct {
	asked, run, missed float64
	days               int
}

// generator is the state of the backup.
type generator struct {
	on   bool
	used float64 // hours today
}

// dealt is what a piece of the year comes to beside its stores; energies in W·h.
type dealt struct {
	spill, miss float64
	hours       int
	starts      int
	direct      float64 // of the backup, used at once
	charged     float64 // of the backup, at the line into stores
	out         float64 // of the backup
}

// ready makes the manager ready for years of n hours.
func (m *manager) ready(d *Demand, n int) {
	of := d.managed
	m.levels, m.waiting, m.has = m.levels[:0], m.waiting[:0], of.Backup != nil
	if m.has {
		m.backup, m.may = of.Backup.tamed(), windowOf(of.Backup.From, of.Backup.To)
	}
	for i, l := range of.Levels {
		m.levels = append(m.levels, switched{below: tame(l.Below), back: tame(l.Back), essential: d.levels[i].Essential, nice: d.levels[i].Nice})
	}
	for _, a := range of.Waiting {
		a.Power, a.Carry = tame(a.Power), tame(a.Carry)
		if a.From == a.To {
			a.From, a.To = 0, 24
		}
		m.waiting = append(m.waiting, asking{Waiting: a, hours: windowOf(a.From, a.To)})
	}
	m.gen = generator{}
	pieces := (n + piece - 1) / piece
	m.begin = sized(m.begin, pieces*m.width())
	m.start = sized(m.start, m.width())
	if cap(m.sums) < pieces {
		m.sums = make([]dealt, pieces)
	}
	m.sums = m.sums[:pieces]
	if c := pieces * len(m.levels); cap(m.off) < c {
		m.off = make([]kept, c)
	}
	if c := pieces * len(m.waiting); cap(m.ran) < c {
		m.ran = make([]waited, c)
	}
	m.off, m.ran = m.off[:pieces*len(m.levels)], m.ran[:pieces*len(m.waiting)]
	for k := range m.gone {
		m.gone[k], m.runs[k] = sized(m.gone[k], n), sized(m.runs[k], n)
	}
}

// width is how many numbers the state has.
func (m *manager) width() int { return len(m.levels) + len(m.waiting) + 1 }

// note writes the state into a row and reports whether it stood there already.
func (m *manager) note(row []float64) (same bool) {
	same = true
	put := func(i int, v float64) {
		same = same && row[i] == v
		row[i] = v
	}
	for i := range m.levels {
		put(i, float64(one(m.levels[i].off)))
	}
	for i := range m.waiting {
		put(len(m.levels)+i, m.waiting[i].back)
	}
	put(m.width()-1, float64(one(m.gen.on)))
	return same
}

// recall takes the state of a row.
func (m *manager) recall(row []float64) {
	for i := range m.levels {
		m.levels[i].off = row[i] != 0
	}
	for i := range m.waiting {
		m.waiting[i].back = row[len(m.levels)+i]
	}
	m.gen.on = row[m.width()-1] != 0
}

// together reports whether the state is that in which the last pass began.
func (m *manager) together() bool {
	for i := range m.levels {
		if m.levels[i].off != (m.start[i] != 0) {
			return false
		}
	}
	for i := range m.waiting {
		a := &m.waiting[i]
		if d := a.back - m.start[len(m.levels)+i]; d > settledTo*a.mostDay() || -d > settledTo*a.mostDay() {
			return false
		}
	}
	return m.gen.on == (m.start[m.width()-1] != 0)
}

// mostDay is the most that a day asks, J.
func (a *asking) mostDay() float64 {
	most := 0.0
	for _, e := range a.Energy {
		most = max(most, e)
	}
	return most
}
