package form

import (
	"duskweight/internal/document"
	"duskweight/internal/model/unit"
)

// Answered counts the inputs of a form that ask for a number or a word: those that have a value, and all of them. What
// stands folded is left out, and what may stay empty and does, as in the line of a section.
func (f Form[T]) Answered(t T) (known, all int) {
	t = document.Clone(t) // walking a form makes empty rows
	return answeredIn(f, f.Parts, &t, true)
}

// answeredIn counts some parts; sections says that a group among them is a section of the form, which counts though it
// opens and closes.
func answeredIn[T any](f Form[T], parts []Part[T], t *T, sections bool) (known, all int) {
	for _, p := range parts {
		if p.Group != nil {
			if sections || !p.Group.Fold {
				k, a := answeredIn(f, p.Group.Parts, t, false)
				known, all = known+k, all+a
			}
			continue
		}
		f.Walk([]Part[T]{p}, t, func(in *Input[T]) {
			switch {
			case in.Kind == asText || in.Kind == AsLong:
			case in.has(t):
				known, all = known+1, all+1
			case !in.Spare:
				all++
			}
		})
	}
	return known, all
}

// has reports whether an input has a value.
func (in *Input[T]) has(t *T) bool {
	if in.Value != nil {
		_, ok := in.Value(t)
		return ok
	}
	return in.Show(t, unit.Metric) != ""
}
