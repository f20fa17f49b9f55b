package year

import (
	"math"

	"duskweight/internal/model/reservoir"
)

// abreast is four stores that run the same hours side by side: their chains from state to state do not hang on each
// other, so the processor works on all of them at once. Each comes to the same numbers as alone, to the last bit.
type abreast[T any] interface {
	// states are those of the four now.
	states() *[4]float64
	// capacity is that of store j.
	capacity(j int) float64
	// hours runs the hours from…to of the year, a piece at most, lists for each store those that lack, and returns what
	// the piece came to.
	hours(bus, total []float64, from, to int, short *[4][]lack) [4]T
	// conclude reads the answers for store j out of its year of n hours.
	conclude(w *Workspace, b *Brief, j int, l *lane[T], d *Demand, n int)
}

// Sweep runs the settled year once for each store, each alone with the same sun and load, and appends what each comes
// to. Stores that use the same power all the time are run four at a time where all four are straight and do not leak,
// or where the filling of all four falls near full; the numbers are those of Quick to the last bit.
func (w *Workspace) Sweep(out []Brief, bus []float64, d *Demand, stores []reservoir.Reservoir) []Brief {
	for len(stores) > 0 {
		if d.managed == nil && len(stores) >= 4 && sameStanding(stores[:4]) {
			if f, ok := fourOf(stores); ok {
				out, stores = quickFour(w, &w.lane, out, bus, d, &f), stores[4:]
				continue
			}
			if w.bends.of(stores) {
				out, stores = quickFour(w, &w.bent, out, bus, d, &w.bends), stores[4:]
				continue
			}
		}
		out = append(out, w.Quick(bus, d, stores[:1]))
		stores = stores[1:]
	}
	return out
}

// sameStanding reports whether all use the same power all the time, so that the line offers and asks the same of each.
func sameStanding(stores []reservoir.Reservoir) bool {
	for _, s := range stores {
		if tame(float64(s.Standing)) != tame(float64(stores[0].Standing)) {
			return false
		}
	}
	return true
}

// quickFour is Quick for four at once. Each is concluded when its own year repeats itself, though the others may go on.
func quickFour[T any](w *Workspace, lanes *[4]lane[T], out []Brief, bus []float64, d *Demand, f abreast[T]) []Brief {
	var b [4]Brief
	x := f.states()
	for j := range lanes {
		lanes[j].size(len(bus))
		x[j] = f.capacity(j)
	}
	for passes := 1; passes <= runs; passes++ {
		all := true
		for j := range lanes {
			lanes[j].start = x[j]
		}
		passFour(lanes, bus, d.total, f, passes == 1)
		for j := range lanes {
			if b[j].Settled {
				continue
			}
			b[j].Passes = passes
			b[j].Settled = math.Abs(x[j]-lanes[j].start) <= settledTo*f.capacity(j)
			if b[j].Settled || passes == runs {
				f.conclude(w, &b[j], j, &lanes[j], d, len(bus))
			}
			all = all && b[j].Settled
		}
		if all {
			break
		}
	}
	return append(out, b[:]...)
}

// passFour runs the pieces of a year, as far as they differ from the pass before for any of the four.
func passFour[T any](lanes *[4]lane[T], bus, total []float64, f abreast[T], first bool) {
	x := f.states()
	for i := range lanes[0].sum {
		same := !first
		for j := range lanes {
			same = same && lanes[j].begin[i] == x[j]
		}
		if same {
			for j := range lanes {
				x[j] = lanes[j].last
			}
			return
		}
		from := i * piece
		to := min(from+piece, len(bus))
		var short [4][]lack
		for j := range lanes {
			lanes[j].begin[i] = x[j]
			short[j] = lanes[j].short[from:to]
		}
		sum := f.hours(bus, total, from, to, &short)
		for j := range lanes {
			lanes[j].sum[i] = sum[j]
		}
	}
	for j := range lanes {
		lanes[j].last = x[j]
	}
}
