package reason

import "duskweight/internal/model/unit"

// Tried is the word of a rule that was tried at the best and at the worst end of what is not known: No when it is bad at
// best, NotKnown when it is bad only at worst, Yes otherwise.
func Tried(badAtBest, badAtWorst bool) Word {
	switch {
	case badAtBest:
		return No
	case badAtWorst:
		return NotKnown
	}
	return Yes
}

// YesNo is the word of a question whose answer bad forbids: No for that answer, NotKnown for none.
func YesNo[A ~string](answer, bad A) Word {
	return Tried(answer == bad, answer == bad || answer == "")
}

// Ends is the interval in which a value lies: a point where it is known.
type Ends struct{ Least, Most float64 }

// Open reports whether the interval is more than a point.
func (e Ends) Open() bool { return e.Least != e.Most }

// Between returns the ends of a value: itself twice where it is known, else the ends of its accepted range.
func Between[T unit.Number](k unit.Known[T], least, most T) Ends {
	if v, ok := k.Value(); ok {
		return Ends{float64(v), float64(v)}
	}
	return Ends{float64(least), float64(most)}
}

// mostOpen is how many unknowns are tried together.
const mostOpen = 3

// Corners tries a rule at all corners of what is not known, at most three values that are open; with more of them it is
// NotKnown. bad is called with one value for each of the ends.
func Corners(ends []Ends, bad func(at []float64) bool) Word {
	open := 0
	for _, e := range ends {
		if e.Open() {
			open++
		}
	}
	if open > mostOpen {
		return NotKnown
	}
	all, any := true, false
	at := make([]float64, len(ends))
	var try func(i int)
	try = func(i int) {
		if i == len(ends) {
			b := bad(at)
			all, any = all && b, any || b
			return
		}
		at[i] = ends[i].Least
		try(i + 1)
		if ends[i].Open() {
			at[i] = ends[i].Most
			try(i + 1)
		}
	}
	try(0)
	return Tried(all, any)
}
