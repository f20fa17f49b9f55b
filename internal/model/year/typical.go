package year

import "duskweight/internal/model/unit"

// monthDays are the days of the months of a year without a 29 February.
var monthDays = [12]int{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}

// typical returns each month's mean day.
func typical(bus []float64, d *Demand, own float64, w *Workspace, rec *record) (t [12][24]Clock) {
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
			c.Unmet += unit.Power(w.unmet[h] * (per / hour))
			c.Spilled += unit.Power(rec.spilled[h] * (per / hour))
			c.Own += unit.Power(given(w.stores, h) * per)
			if d.managed != nil {
				c.Load += unit.Power((w.managed.runs[0][h] + w.managed.runs[1][h]) * per)
				c.Backup += unit.Power(rec.dealt.direct[h] * per)
			}
			for k := range rec.stores {
				c.Delivered += unit.Power(positive(-rec.stores[k].flow[h]) * hour * (per / hour))
				c.State[k] += unit.Energy(rec.stores[k].state[h] * per)
			}
		}
	}
	return t
}
