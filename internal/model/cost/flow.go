package cost

import (
	"cmp"
	"math"

	"duskweight/internal/model/unit"
)

// yearSeconds is a year of the model: 8760 hours.
const yearSeconds = 365 * 86400

// wholeYears takes a life that misses a whole number of years by less than 1 in 1000 as whole, so that a year of 365
// and one of 365¼ days mean the same.
func wholeYears(l float64) float64 {
	if r := math.Round(l); r >= 1 && math.Abs(l-r) <= 1e-3*l {
		return r
	}
	return max(l, 1/yearSeconds)
}

// flow is a bill over the years: paid[t] at the end of year t, paid[0] at the start.
type flow struct {
	paid    []float64
	salvage float64 // at the end
}

func newFlow(horizon int) flow { return flow{paid: make([]float64, horizon+1)} }

// due returns how often a part of life l has been replaced by the end of year t: at l, 2l, … and always before the
// horizon.
func (f *flow) due(l float64, t int) float64 {
	n := len(f.paid) - 1
	k := math.Floor(float64(t)/l + 1e-9)
	if before := math.Ceil(float64(n)/l-1e-9) - 1; k > before {
		k = before
	}
	return max(k, 0)
}

// buy pays cost at the start and at the end of each year in which the part is due again, and takes what its last piece
// is still worth at the end, by its remaining life. A life of 0 is the whole horizon.
func (f *flow) buy(name string, cost, life float64) (again []Replacement) {
	f.paid[0] += cost
	if life <= 0 {
		return nil
	}
	n := len(f.paid) - 1
	done := 0.0
	for t := 1; t <= n; t++ {
		k := f.due(life, t)
		if k > done {
			f.paid[t] += (k - done) * cost
			again = append(again, Replacement{Name: name, Year: t, Times: int(k - done), Paid: unit.Money((k - done) * cost)})
			done = k
		}
	}
	left := ((done+1)*life - float64(n)) / life
	f.salvage += cost * min(max(left, 0), 1)
	return again
}

// every pays cost at the end of each year.
func (f *flow) every(cost float64) {
	for t := 1; t < len(f.paid); t++ {
		f.paid[t] += cost
	}
}

// present is what the bill is worth today: Σ C_t·(1 + i)^−t − salvage·(1 + i)^−n.
func (f *flow) present(i float64) float64 {
	sum := 0.0
	for t, c := range f.paid {
		sum += c * PresentWorth(i, float64(t))
	}
	return sum - f.salvage*PresentWorth(i, float64(len(f.paid)-1))
}

func (f *flow) years() []Year {
	out := make([]Year, len(f.paid))
	total := 0.0
	for t, c := range f.paid {
		total += c
		out[t] = Year{Paid: unit.Money(c), Total: unit.Money(total)}
	}
	return out
}

// Cross is a year from whose end on one bill has cost more than another.
type Cross struct {
	Year   int
	Dearer int // which of the two has cost more from then on: 0 or 1
}

// Crossings returns the years in which the lines of two bills cross, exactly: money is paid at the ends of years only, so
// they cross there or never. A year in which both have cost the same counts for neither; what has cost more at first
// crosses nothing.
func Crossings(a, b []Year) []Cross {
	var out []Cross
	before := 0 // +1 where a has cost more, −1 where b has
	for t := range min(len(a), len(b)) {
		now := cmp.Compare(a[t].Total, b[t].Total)
		if now != 0 && before != 0 && now != before {
			out = append(out, Cross{Year: t, Dearer: (1 - now) / 2})
		}
		if now != 0 {
			before = now
		}
	}
	return out
}
