package form

import (
	"math"

	"duskweight/internal/document"
	"duskweight/internal/model/unit"
)

// Differences lists what differs between two versions of the thing that the form edits, in the order of the form.
func (f Form[T]) Differences(old, new T, sys unit.System) []Difference {
	old, new = document.Clone(old), document.Clone(new) // walking a form makes empty rows
	return Tell(f.Parts, &old, &new, sys)
}

// Tell lists what differs between two versions, in the order of the parts. Walking them makes empty rows in both.
func Tell[T any](parts []Part[T], was, is *T, sys unit.System) []Difference {
	w, i := Told(changed(parts, was, is), was, is, sys)
	return Differ(w, i, "")
}

// changed leaves out what is the same in two versions: printing a number that can be read back takes far longer than comparing
// two. A list stays whole where one of its rows differs, for its rows may have moved.
func changed[T any](parts []Part[T], was, is *T) (out []Part[T]) {
	if was == nil || is == nil {
		return parts
	}
	for _, p := range parts {
		switch {
		case p.Group != nil:
			g := *p.Group
			if g.Parts = changed(g.Parts, was, is); len(g.Parts) > 0 {
				out = append(out, Part[T]{Group: &g})
			}
		case p.Input != nil && alike(p.Input, was, is), p.List != nil && sameRows(p.List, was, is):
		default:
			out = append(out, p)
		}
	}
	return out
}

func sameRows[T any](l *list[T], was, is *T) bool {
	n := l.Count(was)
	if n != l.Count(is) {
		return false
	}
	for i := range n {
		if len(changed(l.Row(i), was, is)) > 0 {
			return false
		}
	}
	return true
}

// alike reports whether an input holds the same, a number to the last bit.
func alike[T any](in *Input[T], was, is *T) bool {
	if in.Value == nil {
		return in.Show(was, unit.Metric) == in.Show(is, unit.Metric)
	}
	a, knownA := in.Value(was)
	b, knownB := in.Value(is)
	return knownA == knownB && (!knownA || math.Float64bits(a) == math.Float64bits(b))
}

// Differ lists what differs between two versions; where is the row that they are in, "Panel 2, ". What a save says, what the
// history tells and what stands side by side after a conflict all come from here.
func Differ(was, is []Value, where string) (out []Difference) {
	old := map[string]Value{}
	for _, v := range was {
		old[v.Key] = v
	}
	for _, v := range is {
		b := old[v.Key]
		delete(old, v.Key)
		switch {
		case v.One != "" || b.One != "":
			out = append(out, differRows(b, v, where)...)
		case b.text != v.text:
			out = append(out, Difference{Path: v.Path, Label: where + v.label, Old: b.text, New: v.text})
		}
	}
	for _, v := range was {
		if b, gone := old[v.Key]; gone && b.text != "" && b.One == "" {
			out = append(out, Difference{Path: b.Path, Label: where + b.label, Old: b.text})
		}
	}
	return out
}

// differRows lists what differs between two lists. Rows that are alike at the beginning and at the end are paired; what
// lies between them was added, taken out or changed.
func differRows(was, is Value, where string) (out []Difference) {
	a, b := was.Rows, is.Rows
	same := func(x, y []Value) bool { return len(Differ(x, y, "")) == 0 && len(x) == len(y) }
	first := 0
	for first < len(a) && first < len(b) && same(a[first], b[first]) {
		first++
	}
	endA, endB := len(a), len(b)
	for endA > first && endB > first && same(a[endA-1], b[endB-1]) {
		endA--
		endB--
	}
	for i := first; i < max(endA, endB); i++ {
		switch {
		case i >= endA:
			out = append(out, Difference{Path: is.rowPath(i), Label: where + is.rowName(i), New: inBrief(b[i]), row: rowAdded})
		case i >= endB:
			out = append(out, Difference{Path: was.rowPath(i), Label: where + was.rowName(i), Old: inBrief(a[i]), row: rowGone})
		default:
			name := where + is.rowName(i) + ", "
			if is.One == "store" && len(a) == 1 && len(b) == 1 {
				name = where // the only store needs no name
			}
			out = append(out, Differ(a[i], b[i], name)...)
		}
	}
	return out
}
