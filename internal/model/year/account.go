package year

import "duskweight/internal/model/unit"

// served is the share of what was wanted that may be missing before a night or an hour counts as without.
const served = 1e-6

// account reads the answers out of what the last pass wrote.
func account(out *Result, in Input, d *Demand, w *Workspace, rec *record) {
	stores, start, missed := w.stores, w.start, w.unmet
	own := make([]float64, len(stores))
	ownSum := 0.0
	for k, r := range in.Stores {
		own[k] = tame(float64(r.Standing))
		ownSum += own[k]
	}
	out.Stores = make([]StoreYear, len(stores))
	out.NightLog = make([]Night, len(d.wanted))
	parts := [4]*Part{&out.StoreStanding, &out.Standing, &out.Essential, &out.Nice}
	missingEssential := make([]float64, len(in.Bus))
	lacking := func(h int, want [4]float64) {
		miss := missing(missed[h], want)
		for i, m := range miss {
			parts[i].Unmet += joules(m)
		}
		missingEssential[h] = miss[2]
		out.night(d, h, miss)
	}
	var bus, direct, spilled, load, delivered, taken, unmet float64
	for h := range in.Bus {
		b := tame(in.Bus[h])
		want := [4]float64{ownSum * hour, d.standing[h] * hour, d.essential[h] * hour, d.nice[h] * hour}
		all := (d.total[h] + ownSum) * hour
		use := min(b*hour, all)
		bus += b * hour
		load += all
		direct += use
		spilled += rec.spilled[h]
		unmet += missed[h]
		for i, w := range want {
			parts[i].Wanted += joules(w)
		}
		if missed[h] > 0 {
			lacking(h, want)
		}
		for k := range stores {
			taken += positive(rec.stores[k].flow[h]) * hour
		}
		if use == all {
			for i, w := range want {
				parts[i].Direct += joules(w)
			}
			continue
		}
		serve := serving{left: want}
		serve.give(use, &parts, false)
		for k := range stores {
			got := positive(-rec.stores[k].flow[h]) * hour
			delivered += got
			standing, appliances := serve.give(got, &parts, true)
			out.Stores[k].ToStanding += joules(standing)
			out.Stores[k].ToAppliances += joules(appliances)
		}
	}
	out.Bus, out.Direct, out.Spilled = joules(bus), joules(direct), joules(spilled)
	out.Load, out.Delivered, out.Taken, out.Unmet = joules(load), joules(delivered), joules(taken), joules(unmet)
	out.closeNights(d)
	out.closeStores(in, stores, start, own, len(in.Bus), rec)
	wanted := float64(out.Essential.Wanted + out.Nice.Wanted)
	out.ServedShare = share(wanted-float64(out.Essential.Unmet+out.Nice.Unmet), wanted)
	wanted = float64(out.Essential.Wanted)
	out.EssentialShare = share(wanted-float64(out.Essential.Unmet), wanted)
	out.LongestOutage = longest(missingEssential, d.essential)
	out.WorstWeek = worst(missed, 168)
	out.Typical = typical(in.Bus, d, ownSum, missed, rec)
}

// serving hands out an hour's energy to the four parts in their order.
type serving struct{ left [4]float64 }

// give serves e joules and books them as direct or delivered; what exceeds the wish is nobody's.
func (s *serving) give(e float64, parts *[4]*Part, stored bool) (standing, appliances float64) {
	for i := range s.left {
		g := min(e, s.left[i])
		if g <= 0 {
			continue
		}
		s.left[i] -= g
		e -= g
		if stored {
			parts[i].Delivered += joules(g)
		} else {
			parts[i].Direct += joules(g)
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
		n.Wanted, n.WantedEssential = joules(d.wanted[k]), joules(d.wantedEssential[k])
		if !n.Counted {
			continue
		}
		n.Served = float64(n.Unmet) <= served*d.wanted[k]
		n.Essential = float64(n.UnmetEssential) <= served*d.wantedEssential[k]
		out.Nights++
		if n.Served {
			out.NightsServed++
		}
		if n.Essential {
			out.NightsEssential++
		}
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

// longest finds the most hours on end in which more than a trace of what was wanted is missing, over the turn of the
// year too.
func longest(missing, wantedWatts []float64) Span {
	n := len(missing)
	out := func(h int) bool { return missing[h%n] > served*wantedWatts[h%n]*hour && missing[h%n] > 0 }
	best := Span{}
	for h := 0; h < n; {
		if !out(h) {
			h++
			continue
		}
		end := h
		for end < h+n && out(end) {
			end++
		}
		if end-h > best.Hours {
			best = Span{From: h, Hours: end - h}
		}
		h = end
	}
	for h := best.From; h < best.From+best.Hours; h++ {
		best.Unmet += joules(missing[h%n])
	}
	return best
}

// worst finds the width hours on end that miss most, over the turn of the year too.
func worst(unmet []float64, width int) Span {
	n := len(unmet)
	width = min(width, n)
	sum, best, from := 0.0, 0.0, 0
	for h := range width {
		sum += unmet[h]
	}
	best = sum
	for h := 1; h < n; h++ {
		sum += unmet[(h+width-1)%n] - unmet[h-1]
		if sum > best*(1+1e-12) {
			best, from = sum, h
		}
	}
	if best <= 0 {
		return Span{}
	}
	exact := 0.0
	for h := from; h < from+width; h++ {
		exact += unmet[h%n]
	}
	return Span{From: from, Hours: width, Unmet: joules(exact)}
}

// monthDays are the days of the months of a year without a 29 February.
var monthDays = [12]int{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}

// typical returns each month's mean day.
func typical(bus []float64, d *Demand, own float64, missed []float64, rec *record) (t [12][24]Clock) {
	h := 0
	for m, days := range monthDays {
		for c := range t[m] {
			t[m][c].State = make([]unit.Energy, len(rec.stores))
		}
		last := min(h+24*days, len(bus))
		per := 1 / float64(days)
		for ; h < last; h++ {
			c := &t[m][h%24]
			c.Bus += unit.Power(tame(bus[h]) * per)
			c.Load += unit.Power((d.total[h] + own) * per)
			c.Unmet += unit.Power(missed[h] * (per / hour))
			c.Spilled += unit.Power(rec.spilled[h] * (per / hour))
			for k := range rec.stores {
				c.Delivered += unit.Power(positive(-rec.stores[k].flow[h]) * hour * (per / hour))
				c.State[k] += unit.Energy(rec.stores[k].state[h] * per)
			}
		}
	}
	return t
}
