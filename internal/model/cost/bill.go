// Package cost counts the money of a variant over its years: what it takes at the start, what is replaced and when,
// what is left over at the end, and what a stored kilowatt-hour and a night with light come to. No price ships: every
// price is the user's own.
//
// Left out: taxes, loans, prices that move against each other, work. The energy that fills the stores is surplus and
// counts as free; the page says so.
package cost

import (
	"slices"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Input is a variant's bill and what its stores do in a year.
type Input struct {
	Parts     []Part
	Terms     Terms
	Delivered unit.Energy // by all its stores and straight from a backup, in a year
	Nights    int         // nights served, in a year

	Fuel     unit.Money // for the backup, in a year
	FuelOpen bool       // it uses something without a price: what a kWh costs is not known then

	// Batteries are the computed lives of the batteries, in their order. The first part that is a battery follows the
	// first of them, and so on; any other part that follows the cells follows the shortest.
	Batteries []Lifetime
}

// Result is what the money comes to, in the project's currency at the prices of today.
type Result struct {
	Priced  int                    // parts with a price
	Parts   int                    // parts
	Capital unit.Known[unit.Money] // all at the start; not known while a part has no price
	Listed  unit.Money             // of it, the parts that have one
	Spent   unit.Money             // bought already
	Without []int                  // places of the parts without a price

	Horizon int     // years counted
	Rate    float64 // real rate

	Delivered unit.Energy // by all stores, in a year: as it was given

	NPV       unit.Known[unit.Money] // of all that the plan without a store lacks; not known while one of these parts has no price
	Whole     unit.Known[unit.Money] // the same of all parts; not known while a part has no price
	Levelised unit.Known[unit.Money] // for each kWh that stores and backup deliver
	PerNight  unit.Known[unit.Money] // for each night with light
	Low, High Bar                    // at the low prices with the long lives, and the reverse
	Salvage   unit.Known[unit.Money] // what all parts are still worth at the end, in the money of that day
	Years     []Year                 // 0 to Horizon, all parts; empty while a part has no price
	Replaced  []Replacement          // in the order of the parts, then of the years
	Assumed   []say.Sentence         // what is not known and was counted as something

	PrintTime unit.Duration // printed parts: time on the printer, of those where it is known
	PrintMass unit.Mass     // printed parts: material, of those where it is known
}

// Year is one year's money: what is paid at its end (year 0: at the start), and all that was paid up to then. What the
// parts are still worth at the end of the horizon is not taken off here.
type Year struct {
	Paid  unit.Money
	Total unit.Money
}

// Replacement is a part that is bought again in a year, paid at its end.
type Replacement struct {
	Name  string
	Year  int
	Times int // more than once when it lasts less than a year
	Paid  unit.Money
}

// Reckon counts the bill.
//
//	NPV = Σ C_t·(1 + i)^−t − salvage·(1 + i)^−n, t = 0…n;   cost of a stored kWh = NPV/Σ E/(1 + i)^t, t = 1…n;
//	cost of a night = NPV·CRF(i, n)/nights
//
// A part that you have, make or borrow counts with the price you give it: 0 where it costs you nothing.
func Reckon(in Input) Result {
	out := reckon(in)
	out.Low, out.High = reckon(in.low()).bar(), reckon(in.high()).bar()
	return out
}

// reckon counts the bill without its bars.
func reckon(in Input) Result {
	out := Result{Parts: len(in.Parts), Delivered: in.Delivered}
	out.terms(in.Terms)
	bill := newFlow(out.Horizon)  // all parts
	store := newFlow(out.Horizon) // what the plan without a store lacks
	lives := newLives(in.Batteries)
	missingStore, storeParts, partUpkeep := 0, 0, false
	for i, p := range in.Parts {
		out.book(p)
		ofStore := p.Of != OfPanel && p.Of != OfLoad
		if ofStore {
			storeParts++
		}
		every := float64(p.Upkeep.Or(0)) * float64(p.Count.Or(1))
		bill.every(every)
		if ofStore {
			store.every(every)
		}
		partUpkeep = partUpkeep || p.Upkeep.Is
		price, ok := p.Price.Value()
		life := out.life(p, lives)
		if !ok {
			out.Without = append(out.Without, i)
			if ofStore {
				missingStore++
			}
			continue
		}
		cost := float64(price) * float64(p.Count.Or(1))
		out.Replaced = append(out.Replaced, bill.buy(p.Name, cost, life)...)
		if ofStore {
			store.buy(p.Name, cost, life)
		}
	}
	bill.every(float64(in.Fuel))
	store.every(float64(in.Fuel))
	if in.FuelOpen {
		out.assume("The price of what the backup uses is not known, and so not what a stored kWh costs.")
	}
	if storeParts > 0 {
		upkeep := out.upkeep(in.Terms, partUpkeep)
		bill.every(upkeep)
		store.every(upkeep)
	}
	if len(out.Without) == 0 && out.Parts > 0 {
		out.Capital = unit.Of(out.Listed)
		out.Salvage = unit.Of(unit.Money(bill.salvage))
		if !in.FuelOpen {
			out.Whole = unit.Of(unit.Money(bill.present(out.Rate)))
			out.Years = bill.years()
		}
	}
	if missingStore == 0 && storeParts > 0 && !in.FuelOpen {
		out.worth(store.present(out.Rate), in)
	}
	return out
}

// worth spreads the present worth of the store's bill over what the store does.
func (out *Result) worth(npv float64, in Input) {
	n := float64(out.Horizon)
	out.NPV = unit.Of(unit.Money(npv))
	if kWh := in.Delivered.WattHours() / 1000; kWh > 0 {
		out.Levelised = unit.Of(unit.Money(npv / (kWh * Annuity(out.Rate, n))))
	}
	if in.Nights > 0 {
		out.PerNight = unit.Of(unit.Money(npv * CRF(out.Rate, n) / float64(in.Nights)))
	}
}

// book counts the part itself.
func (out *Result) book(p Part) {
	count := float64(p.Count.Or(1))
	if price, ok := p.Price.Value(); ok {
		out.Priced++
		out.Listed += unit.Money(float64(price) * count)
		if p.Spent == unit.Yes {
			out.Spent += unit.Money(float64(price) * count)
		}
	}
	out.PrintTime += unit.Duration(float64(p.Print.Or(0)) * count)
	out.PrintMass += unit.Mass(float64(p.Grams.Or(0)) * count)
}

// What is counted where the money questions are not answered: Terms says so at the fields.
const (
	usualHorizon = 20
	usualRate    = 0.03
)

func (out *Result) terms(t Terms) {
	out.Horizon = int(t.Horizon.Or(usualHorizon))
	out.Horizon = max(1, min(out.Horizon, 60))
	out.Rate = float64(t.Rate.Or(usualRate))
	if !t.Horizon.Is {
		out.assume("The years are not known: %s are counted.", usualHorizon)
	}
	if !t.Rate.Is {
		out.assume("The interest rate is not known: %s a year above inflation is counted.", say.Share(usualRate))
	}
}

func (out *Result) upkeep(t Terms, ofParts bool) float64 {
	if !t.Upkeep.Is && !ofParts {
		out.assume("Upkeep is not known: nothing is counted for it.")
	}
	return float64(t.Upkeep.Or(0))
}

// life returns a part's life in years; 0 lasts the whole horizon.
func (out *Result) life(p Part, lives *lives) float64 {
	l := p.Life
	if p.Cells == unit.Yes {
		if computed := lives.of(p); computed.Is {
			l = computed
		} else {
			out.assume("The life of the cells is not known: their own entry counts, or else the whole time.")
		}
	}
	if !l.Is {
		return 0
	}
	return wholeYears(float64(l.Val) / yearSeconds)
}

// lives hands out the computed lives of the batteries.
type lives struct {
	each     []Lifetime
	shortest unit.Known[unit.Duration]
}

func newLives(each []Lifetime) *lives {
	l := lives{each: each}
	for _, life := range each {
		one := life.Usual
		if one.Is && (!l.shortest.Is || one.Val < l.shortest.Val) {
			l.shortest = one
		}
	}
	return &l
}

func (l *lives) of(p Part) unit.Known[unit.Duration] {
	if p.As != AsBattery || len(l.each) == 0 {
		return l.shortest
	}
	one := l.each[0].Usual
	l.each = l.each[1:]
	return one
}

// assume says once what was counted without being known.
func (out *Result) assume(words string, values ...any) {
	one := say.That(words, values...)
	if !slices.ContainsFunc(out.Assumed, one.Is) {
		out.Assumed = append(out.Assumed, one)
	}
}
