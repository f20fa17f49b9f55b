package web

import (
	"reflect"
	"regexp"
	"strings"
	"sync"

	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
)

// habit is what is usual for one number of a form, as it is typed in metric units: a typical value with its source and
// what is usual, or why there is no typical value. Nothing that bears the mass ever has one. What is usual only serves
// to find a slip: a value outside of it is taken, and the page asks to check it.
type habit struct {
	take, low, high string // take is empty where nothing is typical; low and high where the unit's own range is all there is
	of              string // what it is typical of, or where what is usual comes from
	from            source.Source
	why             string // why nothing is typical
	counts          bool   // an empty field counts as take
}

// Why a number has no typical value.
const (
	whyStrength = "Strength is never typical: read it on your part or its paper."
	whyLabel    = "Read it on the label or the sheet of your own part."
	whyMeasure  = "Measure it on your own build."
	whyYours    = "Only you know it."
	whySize     = "Take the values of a motor of its size from the catalog: they are marked typical."
	whyWorked   = "Left empty, it is worked out from the rest or takes the careful value."
	whyPlace    = "Take it from a place near you or from a weather file."
)

// typ is a typical value that is offered where nothing is known.
func typ(take, low, high, of string, from source.Source) habit {
	return habit{take: take, low: low, high: high, of: of, from: from}
}

// emptyIs is a typical value that an empty field counts as.
func emptyIs(take, low, high, of string, from source.Source) habit {
	return habit{take: take, low: low, high: high, of: of, from: from, counts: true}
}

// none is a number without a typical value; what is usual of it is our own judgement.
func none(why, low, high string) habit {
	return habit{low: low, high: high, why: why, from: source.Judgement}
}

// habitOf finds the habit of an input by the type and the path of its row. Rows of a list and months share one.
func habitOf(name string) (habit, bool) {
	name = indices.ReplaceAllString(name, "[]")
	for _, table := range []map[string]habit{hoistHabits, buildHabits, plainHabits} {
		if h, ok := table[name]; ok {
			return h, true
		}
	}
	return habit{}, false
}

var indices = regexp.MustCompile(`\[\d+\]`)

// usual is a habit in the units of the design.
type usual struct {
	habit
	quantity        unit.Quantity
	take, low, high float64
}

// usually reads a habit; a range that it does not give is that of the quantity. A row that cannot be read stops the program.
func (h habit) usually(q unit.Quantity) usual {
	u := usual{habit: h, quantity: q}
	u.take, _ = q.Constant(h.take)
	u.low, _ = q.Constant(h.low)
	u.high, _ = q.Constant(h.high)
	return u
}

// typical reports whether there is a typical value.
func (u usual) typical() bool { return u.habit.take != "" }

// source is where the typical value comes from.
func (u usual) source() source.Ref { return u.from.At(u.of) }

// between tells what is usual: "50 to 98 %". It is empty where the range is that of the quantity.
func (u usual) between(sys unit.System) string {
	if u.habit.high == "" {
		return ""
	}
	return u.quantity.Between(u.low, u.high, sys)
}

// timesOut is how many times over or under what is usual a value is far outside of it: the wrong unit mostly is.
const timesOut = 3

// remark is what is said of a value outside of what is usual; empty inside. A strength is only compared, so that nobody
// reads what is usual as what would hold.
func (u usual) remark(v float64, sys unit.System) string {
	if u.habit.high == "" {
		if u.quantity.Plausible(v) {
			return ""
		}
		return "Outside the usual " + u.quantity.PlausibleRange(sys) + ": check the unit."
	}
	if v >= u.low && v <= u.high {
		return ""
	}
	if u.why == whyStrength || v > timesOut*u.high || v < u.low/timesOut {
		return "Far outside the usual " + u.between(sys) + ": check the unit."
	}
	return "Outside the usual " + u.between(sys) + "."
}

// usualCache holds the habits that were read, by name; a quantity belongs to its input for good.
var usualCache sync.Map

// withUsual gives a number of a form table what is usual for it, where the table did not.
func withUsual[T any](in *input[T], q unit.Quantity) {
	if in.usual != nil {
		return
	}
	name := reflect.TypeFor[T]().String() + " " + in.path
	if u, ok := usualCache.Load(name); ok {
		in.usual = func(*T) usual { return u.(usual) }
		return
	}
	h, ok := habitOf(name)
	if !ok {
		return // a test names every number without one
	}
	u := h.usually(q)
	usualCache.Store(name, u)
	in.usual = func(*T) usual { return u }
}

// usualBy gives a number what is usual for the kind of thing that it belongs to.
func usualBy[T any](q unit.Quantity, pick func(*T) habit) func(*input[T]) {
	return func(in *input[T]) {
		in.usual = func(t *T) usual { return pick(t).usually(q) }
	}
}

// remarkOn is what is said of a value of the design that lies outside of what is usual.
func (in *input[T]) remarkOn(t *T, sys unit.System) string {
	if in.usual == nil {
		return ""
	}
	v, known := in.value(t)
	if !known {
		return ""
	}
	return in.usual(t).remark(v, sys)
}

// usualHint is what an empty field tells: what it counts as where its hint does not say so, and what is usual.
func (in *input[T]) usualHint(t *T, sys unit.System) string {
	if in.usual == nil {
		return ""
	}
	u := in.usual(t)
	var say []string
	if u.counts && !strings.Contains(in.hint, "empty") {
		say = append(say, "empty counts as "+u.quantity.Format(u.take, sys))
	}
	if between := u.between(sys); u.why != whyStrength && between != "" {
		say = append(say, "usual "+between)
	}
	return strings.Join(say, ", ")
}

// takeTypical puts the typical value into the design and gives its source. It reports false where there is none.
func (in *input[T]) takeTypical(t *T) (source.Ref, bool) {
	if in.usual == nil || !in.usual(t).typical() {
		return source.Ref{}, false
	}
	u := in.usual(t)
	if err := in.read(t, u.habit.take, unit.Metric); err != nil {
		return source.Ref{}, false
	}
	return u.source(), true
}
