package search

import (
	"cmp"
	"math"
	"slices"

	"duskweight/internal/model/unit"
)

// Choice is what the search for the cheapest plan changes: everything else of the variant stays.
type Choice struct {
	Panels int        // of all arrays together
	Blocks int        // of the store that is bought in blocks; 0 where there is none
	Factor float64    // of the size of the store that grows as a whole; 0 leaves it out, and 1 stands where there is none
	Tilt   unit.Angle // of the panels; of the first array where Turned is not set
	Turned bool       // all arrays have this tilt; else each has its own as it is
}

// Plan is a choice, what it costs over the years with all that is replaced, and what it gives.
type Plan struct {
	Choice
	Low, Cost, High unit.Known[unit.Money]
	Nights          int                    // full, in the last year of the batteries
	Bad             unit.Known[unit.Count] // full in a bad year, one of ten; not known where one year alone is known
}

// order sorts by cost, then more nights, fewer panels, fewer blocks, smaller factor, flatter.
func order(a, b Plan) int {
	return cmp.Or(cmp.Compare(a.Cost.Val, b.Cost.Val), cmp.Compare(b.Nights, a.Nights), cmp.Compare(a.Panels, b.Panels),
		cmp.Compare(a.Blocks, b.Blocks), cmp.Compare(a.Factor, b.Factor), cmp.Compare(a.Tilt, b.Tilt))
}

// front keeps, from the cheapest on, each plan with more full nights than all before it: for the others there is one that costs
// no more and gives no less. It sorts plans in place.
func front(plans []Plan) (out []Plan) {
	slices.SortStableFunc(plans, order)
	most := -1
	for _, p := range plans {
		if p.Nights > most {
			out, most = append(out, p), p.Nights
		}
	}
	return out
}

// firstWith is the place of the first plan of a front with a share of the nights; −1 where none has.
func firstWith(front []Plan, share float64, nights int) int {
	return slices.IndexFunc(front, func(p Plan) bool { return p.Nights >= needed(share, nights) })
}

// needed is how many full nights a share of them is.
func needed(share float64, nights int) int { return int(math.Ceil(share*float64(nights) - 1e-9)) }

// fewest keeps, where no cost is known, the plans that have so many full nights with the fewest panels for each size of the
// stores, as far as no other of them has fewer of everything. Where none has so many, the one with most.
func fewest(plans []Plan, nights int) (out []Plan) {
	plans = slices.Clone(plans)
	slices.SortStableFunc(plans, func(a, b Plan) int {
		return cmp.Or(cmp.Compare(a.Panels, b.Panels), cmp.Compare(a.Blocks, b.Blocks), cmp.Compare(a.Factor, b.Factor), cmp.Compare(b.Nights, a.Nights), cmp.Compare(a.Tilt, b.Tilt))
	})
	most := 0
	for i, p := range plans {
		if p.Nights > plans[most].Nights {
			most = i
		}
		more := func(o Plan) bool { return o.Blocks <= p.Blocks && o.Factor <= p.Factor }
		if p.Nights >= nights && !slices.ContainsFunc(out, more) {
			out = append(out, p)
		}
	}
	if len(out) == 0 && len(plans) > 0 {
		out = plans[most : most+1]
	}
	return out
}
