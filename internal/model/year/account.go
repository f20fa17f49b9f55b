package year

// served is the share of what was wanted that may be missing before a night or an hour counts as without.
const served = 1e-6

// Full is the share of what a night wants that may be missing while the night counts as full: our own judgement, a lamp
// a little less bright is not missed.
const Full = 0.01

// ledger reads the answers out of what the last pass wrote.
type ledger struct {
	out *Result
	in  Input
	d   *Demand
	w   *Workspace
	rec *record

	beside bool      // a store has a source of its own
	own    []float64 // W, what each store uses all the time
	ownSum float64
	parts  [4]*Part // in the order in which they are served

	missingEssential []float64 // J by hour
}

// account writes the answers of the last pass to out.
func account(out *Result, in Input, d *Demand, w *Workspace, rec *record) {
	l := ledger{
		out: out, in: in, d: d, w: w, rec: rec,
		own:              make([]float64, len(in.Stores)),
		parts:            [4]*Part{&out.StoreStanding, &out.Standing, &out.Essential, &out.Nice},
		missingEssential: make([]float64, len(in.Bus)),
		beside:           hasOwn(w.stores),
	}
	for k, r := range in.Stores {
		l.own[k] = tame(float64(r.Standing))
		l.ownSum += l.own[k]
	}
	out.Stores = make([]StoreYear, len(in.Stores))
	out.NightLog = make([]Night, len(d.wanted))
	for h := range in.Bus {
		l.hour(h)
	}
	out.closeNights(d)
	out.closeStores(in, w.stores, w.start, l.own, len(in.Bus), rec)
	wanted := float64(out.Essential.Wanted + out.Nice.Wanted)
	out.ServedShare = share(wanted-float64(out.Essential.Unmet+out.Nice.Unmet), wanted)
	wanted = float64(out.Essential.Wanted)
	out.EssentialShare = share(wanted-float64(out.Essential.Unmet), wanted)
	out.LongestOutage = longest(l.missingEssential, d.essential)
	out.WorstWeek = worst(w.unmet, 168)
	if d.managed != nil {
		out.managed(&w.managed, d.managed)
	}
	out.Typical = typical(in.Bus, d, l.ownSum, w, rec)
}

// hour books one hour: where what the sun brought went, and where what was wanted came from.
func (l *ledger) hour(h int) {
	out, d := l.out, l.d
	want := [4]float64{l.ownSum * hour, d.standing[h] * hour, d.essential[h] * hour, d.nice[h] * hour}
	all := (d.total[h] + l.ownSum) * hour
	var off [4]float64
	backup := 0.0
	if d.managed != nil {
		off, backup = l.manage(h, &want)
		all = want[0] + want[1] + want[2] + want[3]
	}
	bus := tame(l.in.Bus[h]) * hour
	use := min(bus, positive(all-off[2]-off[3]))
	own := 0.0
	if l.beside {
		own = given(l.w.stores, h) * hour
	}
	out.Bus += joules(bus + own)
	out.Own += joules(own)
	out.Load += joules(all)
	out.Direct += joules(use)
	out.Spilled += joules(l.rec.spilled[h])
	for i, w := range want {
		l.parts[i].Wanted += joules(w)
	}
	if l.w.unmet[h] > 0 {
		l.lacks(h, l.w.unmet[h], want)
	}
	serve := serving{left: want}
	if d.managed != nil {
		serve.left[2], serve.left[3] = positive(want[2]-off[2]), positive(want[3]-off[3])
	}
	serve.give(use, &l.parts, fromSun)
	serve.give(backup, &l.parts, fromBackup)
	for k := range out.Stores {
		flow := l.rec.stores[k].flow[h] * hour
		if flow >= 0 {
			out.Taken += joules(flow)
			continue
		}
		out.Delivered -= joules(flow)
		standing, appliances := serve.give(-flow, &l.parts, fromStore)
		out.Stores[k].ToStanding += joules(standing)
		out.Stores[k].ToAppliances += joules(appliances)
	}
}

// lacks books that u joules are missing in hour h.
func (l *ledger) lacks(h int, u float64, want [4]float64) {
	l.out.Unmet += joules(u)
	miss := missing(u, want)
	if l.d.managed != nil {
		miss = l.w.managed.goneFrom(h, u, want)
	}
	for i, m := range miss {
		l.parts[i].Unmet += joules(m)
	}
	l.missingEssential[h] = miss[2]
	l.out.night(l.d, h, miss)
}

// serving hands out an hour's energy to the four parts in their order.
type serving struct{ left [4]float64 }

// from is where served energy comes from.
type from int

const (
	fromSun from = iota
	fromBackup
	fromStore
)

// give serves e joules and books them by where they come from; what exceeds the wish is nobody's.
func (s *serving) give(e float64, parts *[4]*Part, whence from) (standing, appliances float64) {
	for i := range s.left {
		g := min(e, s.left[i])
		if g <= 0 {
			continue
		}
		s.left[i] -= g
		e -= g
		switch whence {
		case fromSun:
			parts[i].Direct += joules(g)
		case fromBackup:
			parts[i].Backup += joules(g)
		default:
			parts[i].Delivered += joules(g)
		}
		if i < 2 {
			standing += g
		} else {
			appliances += g
		}
	}
	return standing, appliances
}

// missing says which parts an hour's unmet energy is missing from: the last served first.
func missing(unmet float64, want [4]float64) (miss [4]float64) {
	for i := 3; i >= 0 && unmet > 0; i-- {
		miss[i] = min(unmet, want[i])
		unmet -= miss[i]
	}
	return miss
}

// night books what an hour misses to its night.
func (out *Result) night(d *Demand, h int, miss [4]float64) {
	if d.night == nil || d.night[h] < 0 {
		return
	}
	k := d.night[h]
	out.NightLog[k].Unmet += joules(miss[2] + miss[3])
	out.NightLog[k].UnmetEssential += joules(miss[2])
}

// closeNights says which nights were served.
func (out *Result) closeNights(d *Demand) {
	for k := range out.NightLog {
		n := &out.NightLog[k]
		n.Counted = d.isNight[k]
		n.Wanted, n.WantedEssential = n.Wanted+joules(d.wanted[k]), n.WantedEssential+joules(d.wantedEssential[k])
		if !n.Counted {
			continue
		}
		n.Served, n.Essential = lit(float64(n.Wanted), float64(n.Unmet), float64(n.WantedEssential), float64(n.UnmetEssential))
		out.Nights++
		out.NightsServed += one(n.Served)
		out.NightsEssential += one(n.Essential)
	}
}

// closeStores sums up each store.
func (out *Result) closeStores(in Input, stores []store, start, own []float64, n int, rec *record) {
	days := float64(n) / 24
	for k := range stores {
		s, y := &stores[k], &out.Stores[k]
		y.Name = in.Stores[k].Name
		y.Capacity, y.Start, y.End = joules(s.X), joules(start[k]), joules(s.x)
		y.Taken, y.Delivered = joules(s.sum.taken), joules(s.sum.delivered)
		y.FillLoss = joules(s.sum.taken - s.sum.up)
		y.DrawLoss = joules(s.sum.down - s.sum.delivered)
		y.Leaked = joules(s.sum.leaked)
		y.Loss = y.FillLoss + y.DrawLoss + y.Leaked
		y.Change = joules(s.x - start[k])
		y.Standing = joules(own[k] * hour * float64(n))
		y.Filled, y.Drawn = joules(s.sum.up), joules(s.sum.down)
		y.HoursFull = s.sum.full / hour
		if s.X > 0 {
			y.Cycles = s.sum.down / s.X
			y.FillsADay = s.sum.up / s.X / days
			y.MostFills = s.mostFills(start[k], rec.stores[k])
		}
	}
}

// mostFills returns the most that one day filled, as a share of the capacity.
func (s *store) mostFills(x float64, tr trace) float64 {
	most, today := 0.0, 0.0
	for h, now := range tr.state {
		if h%24 == 0 {
			today = 0
		}
		if tr.flow[h] > 0 {
			today += now - x*s.keep
		}
		x = now
		most = max(most, today)
	}
	return most / s.X
}
