// Package typical says what is usual for each number that a form asks for, with its source: a typical value where there
// is one, and why not where there is none. Nothing that bears the mass ever has one.
package typical

import (
	"regexp"

	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
)

// Habit is what is usual for one number of a form, as it is typed in metric units: a typical value with its source and
// what is usual, or why there is no typical value. Nothing that bears the mass ever has one. What is usual only serves
// to find a slip: a value outside of it is taken, and the page asks to check it.
type Habit struct {
	Take, Low, High string // take is empty where nothing is typical; low and high where the unit's own range is all there is
	Of              string // what it is typical of, or where what is usual comes from
	From            source.Source
	Why             string // why nothing is typical
	Counts          bool   // an empty field counts as take
}

// Why a number has no typical value.
const (
	WhyStrength = "Strength is never typical: read it on your part or its paper."
	WhyLabel    = "Read it on the label or the sheet of your own part."
	WhyMeasure  = "Measure it on your own build."
	WhyYours    = "Only you know it."
	WhySize     = "Take the values of a motor of its size from the catalog: they are marked typical."
	WhyWorked   = "Left empty, it is worked out from the rest or the careful value is used."
	whyPlace    = "Take it from a place near you or from a weather file."
)

// Value is a typical value that is offered where nothing is known.
func Value(take, low, high, of string, from source.Source) Habit {
	return Habit{Take: take, Low: low, High: high, Of: of, From: from}
}

// emptyIs is a typical value that an empty field counts as.
func emptyIs(take, low, high, of string, from source.Source) Habit {
	return Habit{Take: take, Low: low, High: high, Of: of, From: from, Counts: true}
}

// None is a number without a typical value; what is usual of it is our own judgement.
func None(why, low, high string) Habit {
	return Habit{Low: low, High: high, Why: why, From: source.Judgement}
}

// HabitOf finds the habit of an input by the type and the path of its row. Rows of a list and months share one.
func HabitOf(name string) (Habit, bool) {
	name = indices.ReplaceAllString(name, "[]")
	for _, table := range []map[string]Habit{HoistHabits, BuildHabits, PlainHabits} {
		if h, ok := table[name]; ok {
			return h, true
		}
	}
	return Habit{}, false
}

var indices = regexp.MustCompile(`\[\d+\]`)

// Usual is a habit in the units of the design.
type Usual struct {
	Habit
	Quantity        unit.Quantity
	Take, Low, High float64
}

// Usually reads a habit; a range that it does not give is that of the quantity. A row that cannot be read stops the program.
func (h Habit) Usually(q unit.Quantity) Usual {
	u := Usual{Habit: h, Quantity: q}
	u.Take, _ = q.Constant(h.Take)
	u.Low, _ = q.Constant(h.Low)
	u.High, _ = q.Constant(h.High)
	return u
}

// Typical reports whether there is a typical value.
func (u Usual) Typical() bool { return u.Habit.Take != "" }

// Source is where the typical value comes from.
func (u Usual) Source() source.Ref { return u.From.At(u.Of) }

// Between tells what is usual: "50 to 98 %". It is empty where the range is that of the quantity.
func (u Usual) Between(sys unit.System) string {
	if u.Habit.High == "" {
		return ""
	}
	return u.Quantity.Between(u.Low, u.High, sys)
}

// timesOut is how many times over or under what is usual a value is far outside of it: the wrong unit mostly is.
const timesOut = 3

// Remark is what is said of a value outside of what is usual; empty inside. A strength is only compared, so that nobody
// reads what is usual as what would hold.
func (u Usual) Remark(v float64, sys unit.System) string {
	if u.Habit.High == "" {
		if u.Quantity.Plausible(v) {
			return ""
		}
		return "This is outside the usual " + u.Quantity.PlausibleRange(sys) + ": check the unit."
	}
	if v >= u.Low && v <= u.High {
		return ""
	}
	if u.Why == WhyStrength || v > timesOut*u.High || v < u.Low/timesOut {
		return "Far outside the usual " + u.Between(sys) + ": check the unit."
	}
	return "This is outside the usual " + u.Between(sys) + "."
}
