package cell

import (
	"math"
	"slices"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Flag is something said in words, with the path of the field it is about. Bad ones say do not use it so; Open ones say that
// it is not known whether it may be used so; the others beware.
type Flag struct {
	Path string
	Say  say.Sentence
	Head say.Sentence // of an open one: what is not known, in few words
	Bad  bool
	Open bool
	ID   string // of the reason that a bad one makes; empty follows from Path
}

// Life is how the settled year wears the cells.
type Life struct {
	Known     bool
	Years     unit.Known[unit.Ratio] // until the share of the capacity is left at which they are replaced; not known when nothing wears them
	YearsLow  unit.Known[unit.Ratio] // if it goes badly: two fifths sooner, and crystals as of small currents
	YearsHigh unit.Known[unit.Ratio] // if shelf and cycles do not add up: the shorter of the two, as the trade counts
	Capped    bool                   // Years is as long as any warranty goes

	Wear       float64 // share of the cycle life that a year takes: Sulphation·Σ count/N(D)
	Shelf      float64 // share of the life on the shelf that a year takes, at its temperature and state of charge
	Sulphation float64 // by how much faster cycles wear lead–acid that is seldom full; 1 for other cells

	Cycles   []Cycle    // ranges as shares of the label's capacity
	FullTurn float64    // Σ range·count: full cycles that carry the same energy
	Deepest  unit.Ratio // greatest depth of discharge of the year, of the label's capacity

	NotFull     unit.Duration // longest time on end under FullFrom
	Sulphates   bool          // lead–acid, and NotFull is 14 days or more
	FreezeHours int           // lead–acid: hours colder than the acid's freezing point
	NearFreeze  int           // hours within 5 K of it
	BelowZero   int           // hours in which the cells are colder than 0 °C
	NoFillHours int           // hours too cold or too hot to charge
}

// FullFrom is the state of charge that counts as full, and NotFullMost the time that lead–acid may go without it.
const (
	FullFrom    = 0.98
	NotFullMost = 14 * unit.Day
)

// least is the depth under which a cycle is rounding, not wear.
const least = 1e-9

// Age works out the life from the settled year: state is what the reservoir holds at the end of each hour, joules, 0 to
// full; drawn is what it gave in the hour, joules; full is the reservoir's capacity; cells is their temperature. They are read
// as repeating every year. The depth of discharge is counted from full, in shares of the label's capacity.
func (r Resolved) Age(state, drawn []float64, full unit.Energy, cells Temperature) Life {
	if r.WhyNot != "" || len(state) == 0 || r.Energy <= 0 {
		return Life{}
	}
	charge := make([]float64, len(state)) // state of charge
	for h, x := range state {
		charge[h] = 1 - (float64(full)-x)/float64(r.Energy)
	}
	l := Life{Known: true, Cycles: RainflowRepeating(charge)}
	for _, c := range l.Cycles {
		l.FullTurn += c.Range * c.Count
		if c.Range > least {
			l.Wear += c.Count / r.CyclesTo(c.Range)
		}
	}
	yearPart := float64(len(state)) / (365 * 24)
	l.Wear /= yearPart
	l.FullTurn /= yearPart
	l.Shelf = r.shelf(charge, cells.hours)
	l.last(r, charge, drawn)
	l.stand(r, charge, cells.hours)
	return l
}

// soonest is the share of the usual life that is left of it when it goes badly (source.TypicalCells: lives scatter by 40 %).
const soonest = 0.6

// last turns shelf and cycles into years, with what crystals add to the cycles of lead–acid.
func (l *Life) last(r Resolved, charge, drawn []float64) {
	l.Sulphation = 1
	worst := 1.0
	if r.Kind.Lead {
		l.Sulphation, worst = sulphation(charge, drawn, float64(r.Energy)/10)
	}
	later := math.Pow((1-r.End())/(1-UsualEndOfLife), 1/r.Kind.Ages.Bend) // of what the kind's numbers are told for
	l.Shelf /= later
	l.Wear /= later
	slow := l.Wear * worst
	l.Wear *= l.Sulphation
	if l.Shelf+l.Wear <= 0 {
		return
	}
	most := r.Kind.Ages.Cap
	years := 1 / (l.Shelf + l.Wear)
	l.Capped = years >= most
	l.Years = unit.Of(unit.Ratio(min(most, years)))
	l.YearsLow = unit.Of(unit.Ratio(min(most, soonest/(l.Shelf+slow))))
	l.YearsHigh = unit.Of(unit.Ratio(min(most, 1/max(l.Shelf, l.Wear))))
}

// End returns the share of the capacity that is left when the cells are replaced.
func (r Resolved) End() float64 { return float64(r.bank.EndShare.Or(UsualEndOfLife)) }

// Left returns the share of the capacity that is left after a part of the life, 0 new to 1 when the cells are replaced:
// 1 − (1 − End)·part^z.
func (r Resolved) Left(part float64) float64 {
	return 1 - (1-r.End())*math.Pow(part, r.Kind.Ages.Bend)
}

// CyclesTo returns N(D) = N_ref·(D/D_ref)^(−k), the cycles of depth d to 80 % of the capacity.
func (r Resolved) CyclesTo(d float64) float64 {
	return r.CycleLife * math.Pow(d/r.CycleDepth, -r.CycleSlope)
}

// stand fills in how the cells stand over the year: full, low, cold.
func (l *Life) stand(r Resolved, charge, t []float64) {
	l.Deepest = unit.Ratio(1 - slices.Min(charge))
	hours := longest(len(charge), func(h int) bool { return charge[h] < FullFrom })
	l.NotFull = unit.Duration(hours) * unit.Hour
	l.Sulphates = r.Kind.Lead && l.NotFull >= NotFullMost
	for h, c := range t {
		if c < 0 {
			l.BelowZero++
		}
		if c < float64(r.ChargeMin) || c > float64(r.ChargeMax) {
			l.NoFillHours++
		}
		if !r.Kind.Lead {
			continue
		}
		switch f := float64(FreezesAt(charge[h%len(charge)])); {
		case c <= f:
			l.FreezeHours++
		case c <= f+5:
			l.NearFreeze++
		}
	}
}

// longest returns the longest run of hours for which is holds, wrapping round the year.
func longest(n int, is func(h int) bool) int {
	best, run := 0, 0
	for h := range 2 * n {
		if !is(h % n) {
			run = 0
			continue
		}
		run++
		best = max(best, min(run, n))
	}
	return best
}

// freezing is the freezing point of lead–acid electrolyte, °C, at states of charge 0, ¼, ½, ¾, 1: densities 1.120,
// 1.155, 1.190, 1.225, 1.265 (source.TypicalFreeze, from memory).
var freezing = [5]float64{-10, -16, -24, -37, -57}

// FreezesAt returns the temperature at which the acid of a lead–acid cell freezes, in straight lines between five
// points.
func FreezesAt(charge float64) unit.Celsius {
	x := 4 * math.Max(0, math.Min(1, charge))
	i := min(3, int(x))
	return unit.Celsius(freezing[i] + (freezing[i+1]-freezing[i])*(x-float64(i)))
}
