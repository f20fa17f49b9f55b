package model

import (
	"duskweight/internal/model/reservoir"
	"duskweight/internal/model/unit"
	"duskweight/internal/model/year"
)

// Worn is the year of a variant whose batteries have lived a part of their life. Batteries lose capacity; what they take and
// give at once stays.
type Worn struct {
	Part  float64 // of the life: 0 new, ½ half-way, 1 the last year
	Share float64 // of its capacity that the most worn of them has left
	year.Brief
}

// wornParts are the points of their life at which the year is run.
var wornParts = [...]float64{0, 0.5, 1}

// wear runs the settled year again with batteries that are half-way through their life and in its last year. Where nothing
// ages, the last year is the first one.
func (r *VariantResult) wear(in year.Input) {
	r.Last = r.Year.Brief()
	if _, ages := r.aged(1); !ages {
		return
	}
	in.Keep, in.Brief = false, true
	draft := year.Begin(in)
	for _, part := range wornParts {
		w := Worn{Part: part, Share: r.left(part), Brief: r.Last}
		if part > 0 {
			stores, _ := r.aged(part)
			draft.Settle(stores)
			w.Brief = draft.Brief()
		}
		r.Worn = append(r.Worn, w)
	}
	r.Last = r.Worn[len(r.Worn)-1].Brief
}

// aged returns the reservoirs of the year after a part of the life of each, and whether any holds less than new.
func (r *VariantResult) aged(part float64) (stores []reservoir.Reservoir, ages bool) {
	for _, s := range r.Stores {
		if s.Reservoir == nil {
			continue
		}
		left := s.Part.Left(part)
		stores, ages = append(stores, s.Aged(part)), ages || left < 1
	}
	return stores, ages
}

// Aged is the reservoir of a store that has one, after a part of its life.
func (s StoreResult) Aged(part float64) reservoir.Reservoir {
	out := *s.Reservoir
	out.Capacity *= unit.Energy(s.Part.Left(part))
	return out
}

// left is the least share of its capacity that a store has left after a part of its life.
func (r *VariantResult) left(part float64) float64 {
	least := 1.0
	for _, s := range r.Stores {
		if s.Reservoir != nil {
			least = min(least, s.Part.Left(part))
		}
	}
	return least
}

// nightsAnswer prints the nights of the last year.
func (r *VariantResult) nightsAnswer() NightsAnswer {
	t, count := r.Last.Tally, func(n int) unit.Known[unit.Count] { return unit.Of(unit.Count(n)) }
	return NightsAnswer{Full: count(t.NightsFull), Essential: count(t.NightsEssentialFull), Most: count(t.NightsMost), Dark: count(t.NightsDark),
		Share: unit.Of(unit.Ratio(t.NightShare)), Gap: count(r.Last.LongestOutage), ToFull: count(r.ToFull())}
}

// wornAnswers prints the year at each point of the batteries' life.
func (r *VariantResult) wornAnswers() []WornAnswer {
	out := make([]WornAnswer, len(r.Worn))
	for i, w := range r.Worn {
		out[i] = WornAnswer{unit.Ratio(w.Share), unit.Count(w.NightsFull), unit.Count(w.NightsEssentialFull), unit.Ratio(w.NightShare)}
	}
	return out
}
