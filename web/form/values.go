package form

import (
	"fmt"
	"reflect"
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

// Told tells two versions of a thing in the order of its form, without what is alike in both: comparing a value is
// far quicker than wording it. A version that is nil has nothing to tell.
func Told[T any](parts []Part[T], was, is *T, sys unit.System) (w, i []Value) {
	parts = differing(parts, was, is)
	if was != nil {
		w = valuesOf(parts, was, "", sys)
	}
	if is != nil {
		i = valuesOf(parts, is, "", sys)
	}
	return w, i
}

// differing keeps the parts whose place in the document is in a field of T that two versions do not share.
func differing[T any](parts []Part[T], was, is *T) []Part[T] {
	if was == nil || is == nil {
		return parts
	}
	alike := map[string]bool{}
	a, b := reflect.ValueOf(was).Elem(), reflect.ValueOf(is).Elem()
	for i := range a.NumField() {
		key, _, _ := strings.Cut(a.Type().Field(i).Tag.Get("json"), ",")
		alike[key] = reflect.DeepEqual(a.Field(i).Interface(), b.Field(i).Interface())
	}
	return outside(parts, alike)
}

// outside leaves out the parts that lie in one of the fields.
func outside[T any](parts []Part[T], fields map[string]bool) (out []Part[T]) {
	for _, p := range parts {
		switch {
		case p.Group != nil:
			g := *p.Group
			if g.Parts = outside(g.Parts, fields); len(g.Parts) > 0 {
				out = append(out, Part[T]{Group: &g})
			}
		case p.Input != nil && !fields[Field(p.Input.Path)], p.List != nil && !fields[Field(p.List.Path)]:
			out = append(out, p)
		}
	}
	return out
}

// Field is the first word of a path: "rope" of "rope.breaking_load_n", "panels" of "panels[0].count".
func Field(path string) string {
	if end := strings.IndexAny(path, ".["); end >= 0 {
		return path[:end]
	}
	return path
}

// valuesOf tells a thing in the order of its form. at is the place of what the parts are inside of.
func valuesOf[T any](parts []Part[T], t *T, at string, sys unit.System) (out []Value) {
	for _, p := range parts {
		switch {
		case p.Input != nil:
			out = append(out, Value{Path: p.Input.Path, Key: strings.TrimPrefix(p.Input.Path, at), label: p.Input.Label, text: p.Input.Text(t, sys)})
		case p.Group != nil:
			for _, v := range valuesOf(p.Group.Parts, t, at, sys) {
				if p.Group.Shape == "" && slices.ContainsFunc(MonthNames[:], func(m string) bool { return m == v.label }) {
					v.label = p.Group.Title + ", " + v.label
				}
				out = append(out, v)
			}
		default:
			l := Value{Path: p.List.Path, Key: strings.TrimPrefix(p.List.Path, at), label: p.List.Title, One: p.List.One}
			for i := range p.List.Count(t) {
				l.Rows = append(l.Rows, valuesOf(p.List.Row(i), t, l.rowPath(i), sys))
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
	if in.Kind == AsNumber {
		shown = unit.Apart(shown)
	}
	if u := in.Symbol(sys); u != "" && shown != "" {
		return shown + " " + u
	}
	return shown
}

// taped is a known length in feet and inches, where it is told so and the reader reads inches.
func (in *Input[T]) taped(t *T, sys unit.System) (string, bool) {
	if in.q == nil || in.Value == nil || !in.q.Taped(sys) {
		return "", false
	}
	v, known := in.Value(t)
	if !known {
		return "", false
	}
	return in.q.Format(v, sys), true
}

// Told is Text for a reader. A number that was given in the other system, and is long in this one, has the digits of its quantity:
// 309 lb for 140 kg, not 308.647.
func (in *Input[T]) Told(t *T, sys unit.System) string {
	if text, taped := in.taped(t, sys); taped {
		return text
	}
	text := in.Text(t, sys)
	if in.q == nil || in.Value == nil || text == "" || in.q.Symbol(unit.Metric) == in.q.Symbol(unit.Imperial) {
		return text
	}
	if v, ok := in.Value(t); ok && len(in.q.FormatFull(v, sys)) > longTyped {
		return in.q.Format(v, sys)
	}
	return text
}

// longTyped is the most characters of a number that stands in its field as it is.
const longTyped = 9

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
