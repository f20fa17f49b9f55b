package year

// hours runs the hours from…to of a managed year, a piece at most; rec may be nil. The sums of stores, levels and waiting
// devices begin at nothing.
func (m *manager) hours(bus []float64, d *Demand, standing float64, stores []store, unmet []float64, rec *record, from, to int) dealt {
	var t dealt
	for h := from; h < to; h++ {
		m.hour(&t, h, tame(bus[h]), d, standing, stores, unmet, rec)
	}
	for k := range stores {
		if stores[k].own != nil {
			t.spill += stores[k].sum.idle * (1 / hour)
		}
	}
	if rec != nil {
		rec.idle(stores, from, to)
	}
	return t
}

// hour runs one hour in which bus comes to the line, W, in this order, H = 3600 s:
//
//	a. leak and locks of the stores      b. at clock 0 each waiting device asks its day's energy anew
//	c. the charge σ                      d. each level: off below its σ, on again from a higher one
//	e. the backup goes on or off         f. M = standing + what is on; room = max(0, bus − M)
//	g. waiting devices that must, or that the charge lets, run: into M
//	h. bus ≥ M: stores are offered the rest, and the backup's charging besides; what they leave of the sun goes to devices
//	   that still wait
//	i. bus < M: the backup first; if it covers the rest, its charging goes to the stores; else the stores give
//	j. what levels keep off is missing too
func (m *manager) hour(t *dealt, h int, bus float64, d *Demand, standing float64, stores []store, unmet []float64, rec *record) {
	clock := h % 24
	if clock == 0 {
		m.newDay(h / 24)
	}
	sigma := charge(stores, h)
	offE, offN := m.shed(sigma, h)
	m.switchBackup(t, sigma, clock)
	n := bus - positive(d.total[h]+standing-(offE+offN)) // bus − M
	runE, runN := m.letRun(sigma, clock, &n)
	spill, lack, direct, charged := 0.0, 0.0, 0.0, 0.0
	if y := m.giving(); n >= 0 {
		more := 0.0
		if m.gen.on {
			more = m.backup.charging(0)
		}
		left := through(stores, n+more, h, rec)
		taken := n + more - left
		sun := min(taken, n)
		charged, spill = taken-sun, n-sun
		e, nice := m.askAgain(&spill)
		runE, runN = runE+e, runN+nice
	} else if y >= -n {
		direct = -n
		offer := m.backup.charging(direct)
		charged = offer - through(stores, offer, h, rec)
	} else {
		direct = y
		lack = positive(-through(stores, n+direct, h, rec))
	}
	m.book(t, h, d, spill, lack, direct, charged, offE, offN, runE, runN, unmet, rec)
}

// newDay begins a day: what waits is asked anew, what waits for too long is missed, and the backup has its hours again.
func (m *manager) newDay(day int) {
	m.gen.used = 0
	for i := range m.waiting {
		a := &m.waiting[i]
		e := 0.0
		if day < len(a.Energy) {
			e = tame(a.Energy[day])
		}
		a.back += e
		a.sum.asked += e
		if most := (1 + a.Carry) * e; a.back > most {
			a.sum.missed += a.back - most
			a.sum.days++
			a.back = most
		}
	}
}

// charge is σ after the leak of hour h.
func charge(stores []store, h int) float64 {
	have, hold := 0.0, 0.0
	for k := range stores {
		s := &stores[k]
		if s.aside {
			continue
		}
		x := min(s.X, s.x*s.keep)
		locked := 0.0
		if h < len(s.locked) {
			locked = within(s.locked[h]) * s.X
		}
		have += positive(x - locked)
		hold += s.X - locked
	}
	if hold <= 0 {
		return 0
	}
	return have / hold
}

// shed switches the levels and returns what they keep off in hour h, W: essential, nice.
func (m *manager) shed(sigma float64, h int) (essential, nice float64) {
	for i := range m.levels {
		l := &m.levels[i]
		if l.off {
			l.off = sigma < l.back
		} else {
			l.off = sigma < l.below
		}
		if !l.off {
			continue
		}
		if w := l.essential[h] + l.nice[h]; w > 0 {
			essential += l.essential[h]
			nice += l.nice[h]
			l.sum.hours++
			l.sum.energy += w
		}
	}
	return essential, nice
}

// switchBackup switches the backup for a whole hour.
func (m *manager) switchBackup(t *dealt, sigma float64, clock int) {
	if !m.has {
		return
	}
	may := m.may.open(clock) && m.gen.used < m.backup.Most
	switch {
	case !m.gen.on && may && sigma < m.backup.Start:
		m.gen.on = true
		t.starts++
	case m.gen.on && (!may || sigma >= m.backup.Stop):
		m.gen.on = false
	}
	if m.gen.on {
		m.gen.used++
		t.hours++
	}
}

// giving is the most that the backup gives now, W.
func (m *manager) giving() float64 {
	if !m.gen.on {
		return 0
	}
	return m.backup.Rated
}

// letRun lets waiting devices run that must or that the charge lets, and returns what they use, W: essential, nice. n is what
// the line has over, W; they take it off, and one that takes all of it leaves nothing, without rounding: no store is asked for
// a trace. The others are marked to ask again.
func (m *manager) letRun(sigma float64, clock int, n *float64) (essential, nice float64) {
	for i := range m.waiting {
		a := &m.waiting[i]
		a.want, a.now = 0, 0
		if !(a.back > 0) || !a.hours.open(clock) {
			continue
		}
		u := min(a.Power, a.back*(1/hour))
		switch {
		case a.Must && a.back > a.Power*hour*float64(left(clock, a.To)-1):
		case sigma >= a.RunAbove:
			u = min(u, positive(*n)) // room
		default:
			a.want = u
			continue
		}
		*n -= u
		essential, nice = a.run(u, essential, nice)
	}
	return essential, nice
}

// askAgain gives the sun that the stores leave to the devices that still wait, in their order.
func (m *manager) askAgain(sun *float64) (essential, nice float64) {
	for i := range m.waiting {
		a := &m.waiting[i]
		if a.want <= 0 || *sun <= 0 {
			continue
		}
		u := min(a.want, *sun)
		*sun -= u
		a.want -= u
		essential, nice = a.run(u, essential, nice)
	}
	return essential, nice
}

// run lets a waiting device run at u W for the hour.
func (a *asking) run(u, essential, nice float64) (float64, float64) {
	e := min(a.back, u*hour)
	a.back -= e
	a.sum.run += e
	a.now += u
	if a.Essential {
		return essential + u, nice
	}
	return essential, nice + u
}

// through lets n W, above zero offered, below zero asked, go through the stores in their order, and returns what they leave.
func through(stores []store, n float64, h int, rec *record) float64 {
	net := [1]float64{n}
	for k := range stores {
		tr := trace{}
		if rec != nil {
			tr = trace{flow: rec.stores[k].flow[h : h+1], state: rec.stores[k].state[h : h+1]}
		}
		if stores[k].own != nil {
			stores[k].overOwn(net[:], h, tr)
		} else {
			stores[k].over(net[:], h, tr)
		}
	}
	return net[0]
}

// book books the hour. What is missing is missing from what is nice first, then from what is essential; what levels keep off
// is missing from its own kind. What is off and what runs are W, of what is essential and of what is nice. They are numbers, not pairs:
// pairs went over memory, and the hour waited for them.
func (m *manager) book(t *dealt, h int, d *Demand, spill, lack, direct, charged, offE, offN, runE, runN float64, unmet []float64, rec *record) {
	t.spill += spill
	t.direct += direct
	t.charged += charged
	if m.gen.on {
		t.out += direct
		if charged > 0 {
			t.out += charged / m.backup.Gain
		}
	}
	miss := lack + offE + offN
	t.miss += miss
	unmet[h] = miss * hour
	m.runs[0][h], m.runs[1][h] = runE, runN
	m.gone[0][h], m.gone[1][h] = 0, 0
	if miss > 0 {
		nice := min(lack, positive(d.nice[h]-offN+runN))
		essential := min(lack-nice, positive(d.essential[h]-offE+runE))
		m.gone[0][h], m.gone[1][h] = (essential+offE)*hour, (nice+offN)*hour
	}
	if rec != nil {
		rec.spilled[h] = positive(spill * hour)
		rec.dealt.hour(m, h, direct, charged, [2]float64{offE, offN})
	}
}

// charging is what the backup has at the line for the stores while y W of it are used at once.
func (b *Backup) charging(y float64) float64 { return b.Gain * min(b.Rated-y, b.Charge) }
