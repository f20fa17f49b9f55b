package form

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"duskweight/internal/document"
	"duskweight/internal/model/unit"
)

// difference is one value that two versions do not share, in words.
type difference struct{ Path, Label, Old, New string }

// Differences lists what differs between two versions, in the order of the form.
func (f Form[T]) Differences(old, new T, sys unit.System) []difference {
	old, new = document.Clone(old), document.Clone(new) // walking a form makes empty rows
	type shown struct{ label, text string }
	before := map[string]shown{}
	f.Walk(f.Parts, &old, func(in *Input[T]) { before[in.Path] = shown{in.Label, in.Text(&old, sys)} })
	var out []difference
	after := map[string]bool{}
	f.Walk(f.Parts, &new, func(in *Input[T]) {
		after[in.Path] = true
		if now := in.Text(&new, sys); now != before[in.Path].text {
			out = append(out, difference{in.Path, in.Label, before[in.Path].text, now})
		}
	})
	f.Walk(f.Parts, &old, func(in *Input[T]) {
		if b := before[in.Path]; !after[in.Path] && b.text != "" {
			out = append(out, difference{in.Path, in.Label, b.text, ""})
		}
	})
	return out
}

// Text is a value with its unit, in words.
func (in *Input[T]) Text(t *T, sys unit.System) string {
	shown := in.Show(t, sys)
	if in.Kind == AsChoice {
		return WordFor(shown)
	}
	if u := in.Symbol(sys); u != "" && shown != "" {
		return shown + " " + u
	}
	return shown
}

// Told tells a change line by line, as the history does: "Stage 2, Ratio to 1: 3 → 4", "Hold 1 added".
func (f Form[T]) Told(old, new T, sys unit.System) []string {
	old, new = document.Clone(old), document.Clone(new) // walking a form makes empty rows
	return Differ(ValuesOf(f.Parts, &old, "", sys), ValuesOf(f.Parts, &new, "", sys), "")
}

// Said is a change in one line: the first difference, and how many more.
func Said(lines []string) string {
	if len(lines) == 0 {
		return "Confirmed as it is"
	}
	switch n := len(lines) - 1; n {
	case 0:
		return lines[0]
	case 1:
		return lines[0] + ", and one more"
	default:
		return lines[0] + ", and " + strconv.Itoa(n) + " more"
	}
}

// Value is one value of a thing in words, or a list of rows of them.
type Value struct {
	Key         string // its place inside the row or the thing
	label, text string
	One         string    // of a list: what one row is called
	Rows        [][]Value // of a list
	Names       []string  // of a list: what each row is called, where it has a name of its own
}

// ValuesOf tells a thing in the order of its form. at is the place of what the parts are inside of.
func ValuesOf[T any](parts []Part[T], t *T, at string, sys unit.System) (out []Value) {
	for _, p := range parts {
		switch {
		case p.Input != nil:
			out = append(out, Value{Key: strings.TrimPrefix(p.Input.Path, at), label: p.Input.Label, text: p.Input.Text(t, sys)})
		case p.Group != nil:
			for _, v := range ValuesOf(p.Group.Parts, t, at, sys) {
				if p.Group.Shape == "" && slices.ContainsFunc(MonthNames[:], func(m string) bool { return m == v.label }) {
					v.label = p.Group.Title + ", " + v.label
				}
				out = append(out, v)
			}
		default:
			l := Value{Key: strings.TrimPrefix(p.List.Path, at), label: p.List.Title, One: p.List.One}
			for i := range p.List.Count(t) {
				l.Rows = append(l.Rows, ValuesOf(p.List.Row(i), t, fmt.Sprintf("%s[%d]", p.List.Path, i), sys))
				l.Names = append(l.Names, "")
			}
			out = append(out, l)
		}
	}
	return out
}

// Differ tells what differs between two versions; where is the row that they are in, "Panel 2, ".
func Differ(was, is []Value, where string) (out []string) {
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
			out = append(out, where+v.label+": "+short(OrNotKnown(b.text))+" → "+short(OrNotKnown(v.text)))
		}
	}
	for _, v := range was {
		if b, gone := old[v.Key]; gone && b.text != "" && b.One == "" {
			out = append(out, where+b.label+": "+short(b.text)+" → not known")
		}
	}
	return out
}

// differRows tells what differs between two lists. Rows that are alike at the beginning and at the end are paired; what
// lies between them was added, taken out or changed.
func differRows(was, is Value, where string) (out []string) {
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
			out = append(out, where+rowName(is, i)+" added"+rowInBrief(b[i]))
		case i >= endB:
			out = append(out, where+rowName(was, i)+" taken out"+rowInBrief(a[i]))
		default:
			name := where + rowName(is, i) + ", "
			if is.One == "store" && len(a) == 1 && len(b) == 1 {
				name = where // the only store needs no name
			}
			out = append(out, Differ(a[i], b[i], name)...)
		}
	}
	return out
}

func rowName(l Value, i int) string {
	if l.Names[i] != "" {
		return Clip(l.Names[i], 40)
	}
	return fmt.Sprintf("%s %d", SentenceCase(l.One), i+1)
}

// rowInBrief is the first values of a row in brackets.
func rowInBrief(row []Value) string {
	var told []string
	for _, v := range row {
		if v.text != "" && v.One == "" && v.text != "not known" && len(told) < MostBrief {
			told = append(told, short(v.text))
		}
	}
	if len(told) == 0 {
		return ""
	}
	return " (" + strings.Join(told, ", ") + ")"
}
