package year

import "math"

// runs is the most often that a year is run before it is called not settled.
const runs = 20

// settled is how close a store's last state must come to its first, as a share of its capacity.
const settledTo = 1e-9

// record is where a pass writes what happened hour by hour, in joules; the slices of one store follow each other.
type record struct {
	unmet     []float64
	spilled   []float64
	taken     [][]float64
	delivered [][]float64
	state     [][]float64
}

// pass runs the hours once and writes each hour's unmet joules to unmet; rec may be nil. standing is that of all the
// stores together. It returns the joules spilled and unmet.
func pass(bus []float64, d *Demand, standing float64, stores []store, unmet []float64, rec *record) (spill, miss float64) {
	unmet = unmet[:len(bus)]
	total := d.total[:len(bus)]
	day := 0
	for h, b := range bus {
		if day++; day == 24 {
			day = 0
		}
		for k := range stores {
			stores[k].leak()
			if day == 1 {
				stores[k].left = stores[k].cap
			}
		}
		net := tame(b) - (total[h] + standing)
		rest := 0.0
		if net >= 0 {
			rest = net * hour
			for k := range stores {
				got := stores[k].fill(rest/hour, h)
				if rest -= got; rest < 0 {
					rest = 0
				}
				if rec != nil {
					rec.taken[k][h], rec.delivered[k][h] = got, 0
				}
			}
			spill += rest
			unmet[h] = 0
		} else {
			rest = -net * hour
			for k := range stores {
				got := stores[k].draw(rest/hour, h)
				if rest -= got; rest < 0 {
					rest = 0
				}
				if rec != nil {
					rec.taken[k][h], rec.delivered[k][h] = 0, got
				}
			}
			miss += rest
			unmet[h] = rest
		}
		if rec != nil {
			rec.spilled[h] = 0
			if net >= 0 {
				rec.spilled[h] = rest
			}
			for k := range stores {
				rec.state[k][h] = stores[k].x
			}
		}
	}
	return spill, miss
}

// together reports whether every store ended where it began.
func together(stores []store, start []float64) bool {
	for k := range stores {
		if math.Abs(stores[k].x-start[k]) > settledTo*stores[k].X {
			return false
		}
	}
	return true
}
