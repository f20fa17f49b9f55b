package form

import (
	"reflect"
	"slices"
	"strings"
	"sync"

	"duskweight/internal/model"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/web/typical"
)

// Remarks are what is said of changed values outside of what is usual, by the id of their field.
func (f Form[T]) Remarks(t T, diffs []Difference, sys unit.System) map[string]string {
	out := map[string]string{}
	f.Walk(f.Parts, &t, func(in *Input[T]) {
		if !slices.ContainsFunc(diffs, func(d Difference) bool { return model.Within(in.Path, d.Path) }) {
			return
		}
		if say := in.RemarkOn(&t, sys); say != "" {
			out[FieldID(in.Path)] = say
		}
	})
	return out
}

// usualCache holds the habits that were read, by name; a quantity belongs to its input for good.
var usualCache sync.Map

// withUsual gives a number of a form table what is usual for it, where the table did not.
func withUsual[T any](in *Input[T], q unit.Quantity) {
	if in.Usual != nil {
		return
	}
	name := reflect.TypeFor[T]().String() + " " + in.Path
	if u, ok := usualCache.Load(name); ok {
		in.Usual = func(*T) typical.Usual { return u.(typical.Usual) }
		return
	}
	h, ok := typical.HabitOf(name)
	if !ok {
		return // a test names every number without one
	}
	u := h.Usually(q)
	usualCache.Store(name, u)
	in.Usual = func(*T) typical.Usual { return u }
}

// UsualBy gives a number what is usual for the kind of thing that it belongs to.
func UsualBy[T any](q unit.Quantity, pick func(*T) typical.Habit) func(*Input[T]) {
	return func(in *Input[T]) {
		in.Usual = func(t *T) typical.Usual { return pick(t).Usually(q) }
	}
}

// RemarkOn is what is said of a value of the design that lies outside of what is usual.
func (in *Input[T]) RemarkOn(t *T, sys unit.System) string {
	if in.Usual == nil {
		return ""
	}
	v, known := in.Value(t)
	if !known {
		return ""
	}
	return in.Usual(t).Remark(v, sys)
}

// UsualHint is what an empty field tells: what it counts as where its hint does not say so, and what is usual.
func (in *Input[T]) UsualHint(t *T, sys unit.System) string {
	if in.Usual == nil {
		return ""
	}
	u := in.Usual(t)
	var say []string
	if u.Counts && !strings.Contains(in.Hint, "empty") {
		say = append(say, ifEmpty+u.Quantity.Format(u.Take, sys))
	}
	if between := u.Between(sys); u.Why != typical.WhyStrength && between != "" {
		say = append(say, "usual "+between)
	}
	return strings.Join(say, ", ")
}

// TakeTypical puts the typical value into the design and gives its source. It reports false where there is none.
func (in *Input[T]) TakeTypical(t *T) (source.Ref, bool) {
	if in.Usual == nil || !in.Usual(t).Typical() {
		return source.Ref{}, false
	}
	u := in.Usual(t)
	if err := in.Read(t, u.Habit.Take, unit.Metric); err != nil {
		return source.Ref{}, false
	}
	return u.Source(), true
}
