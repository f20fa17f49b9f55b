package form

import (
	"fmt"
	"slices"
	"strings"

	"duskweight/internal/model/unit"
)

// Value is one value of a thing in words, or a list of rows of them.
type Value struct {
	Path        string // its place in the form that it was read from
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
			out = append(out, Value{Path: p.Input.Path, Key: strings.TrimPrefix(p.Input.Path, at), label: p.Input.Label, text: p.Input.Text(t, sys)})
		case p.Group != nil:
			for _, v := range ValuesOf(p.Group.Parts, t, at, sys) {
				if p.Group.Shape == "" && slices.ContainsFunc(MonthNames[:], func(m string) bool { return m == v.label }) {
					v.label = p.Group.Title + ", " + v.label
				}
				out = append(out, v)
			}
		default:
			l := Value{Path: p.List.Path, Key: strings.TrimPrefix(p.List.Path, at), label: p.List.Title, One: p.List.One}
			for i := range p.List.Count(t) {
				l.Rows = append(l.Rows, ValuesOf(p.List.Row(i), t, l.rowPath(i), sys))
				l.Names = append(l.Names, "")
			}
			out = append(out, l)
		}
	}
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

// rowPath is the place of a row of a list.
func (v Value) rowPath(i int) string { return fmt.Sprintf("%s[%d]", v.Path, i) }

// rowName is what a row of a list is called: "Stage 2", or its own name.
func (v Value) rowName(i int) string {
	if v.Names[i] != "" {
		return Clip(v.Names[i], 40)
	}
	return fmt.Sprintf("%s %d", SentenceCase(v.One), i+1)
}

// inBrief is the first values of a row.
func inBrief(row []Value) string {
	var told []string
	for _, v := range row {
		if v.text != "" && v.One == "" && v.text != "not known" && len(told) < MostBrief {
			told = append(told, short(v.text))
		}
	}
	return strings.Join(told, ", ")
}
