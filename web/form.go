package web

import (
	"fmt"
	"math"
	"reflect"
	"strconv"
	"strings"
	"sync"

	"duskweight/internal/model/unit"
)

// The inputs table is the only place where typed text meets units. One row of it drives the form, the decoding, the
// editing, both unit systems, the mark of the origin and the accessible label:
//
//	number("drum.diameter_m", "Drum diameter", unit.Diameters, func(h *lift.Hoist) *unit.Known[unit.Length] { return &h.Drum.Diameter })
//
// A path is the value's place in the document, relative to T. It is also the name in the form. The hint and the words
// of a choice come from the tags of the design, so that a new input is one field there and one row here.

// part is one node of a form: exactly one of its three is set.
type part[T any] struct {
	input *input[T]
	group *group[T]
	list  *list[T]
}

// group is a heading with parts under it. At the top of a form it is a section, which opens and closes.
type group[T any] struct {
	title string
	intro string
	shape string                       // "" for one below the other, shapeMonths for a table of twelve rows
	fold  bool                         // inside a section: shown closed, what most people leave alone
	brief func(*T, unit.System) string // what is inside, in a few words; nil tells what tell names
	tell  []string                     // paths of the values that its line tells, "path|%s across"; none: the first
	links []linkView                   // rows of the catalog that fill it in
	other []linkView                   // other pages that do
	parts []part[T]
}

// shapeMonths is a group of groups with a value for each month, printed as one table.
const shapeMonths = "months"

// list is a list of rows that can grow and shrink.
type list[T any] struct {
	path   string
	title  string
	one    string // what one row is called: "panel"
	intro  string // one line for the empty list
	most   int
	count  func(*T) int
	resize func(*T, int)
	remove func(*T, int)
	row    func(i int) []part[T]
}

// input is one value. show and read are each other's inverse: what show wrote and nobody changed is never read back.
type input[T any] struct {
	path    string
	label   string
	hint    string
	spare   bool // may stay empty: a careful or usual value stands in for it
	kind    inputKind
	symbol  func(unit.System) string
	q       *unit.Quantity // of a number
	options []option
	show    func(*T, unit.System) string
	read    func(*T, string, unit.System) error
	echo    func(*T, unit.System) string
	value   func(*T) (float64, bool) // of a number, in SI
	usual   func(*T) usual           // of a number: what is usual
}

type inputKind string

const (
	asNumber inputKind = "number"
	asText   inputKind = "text"
	asLong   inputKind = "long"
	asChoice inputKind = "choice"
)

// option is one word of a closed list.
type option struct{ value, word string }

// number is a quantity that may be not known.
func number[T any, X unit.Number](path, label string, q unit.Quantity, at func(*T) *unit.Known[X], more ...func(*input[T])) part[T] {
	in := newInput[T](path, label, asNumber)
	in.symbol = q.Symbol
	in.show = func(t *T, sys unit.System) string {
		if v := *at(t); v.Is {
			return typedForm(q, float64(v.Val), sys)
		}
		return ""
	}
	in.echo = func(t *T, sys unit.System) string {
		if v := *at(t); v.Is && sys == unit.Imperial && q.Symbol(unit.Metric) != q.Symbol(unit.Imperial) { // the reels and labels of makers are metric as often as not
			return q.Echo(float64(v.Val), sys)
		}
		return ""
	}
	in.read = func(t *T, text string, sys unit.System) error {
		v, known, err := readNumber[X](q, text, sys)
		if err != nil {
			return err
		}
		*at(t) = unit.Known[X]{Val: v, Is: known}
		return nil
	}
	in.value = func(t *T) (float64, bool) { return float64(at(t).Val), at(t).Is }
	return finishNumber(in, q, more)
}

// plain is a quantity that must be known.
func plain[T any, X unit.Number](path, label string, q unit.Quantity, at func(*T) *X, more ...func(*input[T])) part[T] {
	in := newInput[T](path, label, asNumber)
	in.symbol = q.Symbol
	in.show = func(t *T, sys unit.System) string { return typedForm(q, float64(*at(t)), sys) }
	in.read = func(t *T, text string, sys unit.System) error {
		v, known, err := readNumber[X](q, text, sys)
		switch {
		case err != nil:
			return err
		case !known:
			return fmt.Errorf("a number is needed here")
		}
		*at(t) = v
		return nil
	}
	in.value = func(t *T) (float64, bool) { return float64(*at(t)), true }
	return finishNumber(in, q, more)
}

// typedForm writes a stored value as it stands in a field, without its unit: in full where that is short, else rounded.
// Nothing is lost by that: text that nobody changed is never read back.
func typedForm(q unit.Quantity, si float64, sys unit.System) string {
	full := q.FormatFull(si, sys)
	v, err := strconv.ParseFloat(full, 64)
	switch {
	case err == nil && len(full) > 9:
		return unit.Rounded(v, 6)
	case err != nil && q.Symbol(unit.Metric) != q.Symbol(unit.Imperial): // "240 kg" in a field of pounds
		return q.Number(si, sys)
	}
	return full
}

// readNumber reads a typed quantity into X; whole pieces must be whole.
func readNumber[X unit.Number](q unit.Quantity, text string, sys unit.System) (X, bool, error) {
	si, known, err := q.Parse(text, sys)
	if err != nil || !known {
		return 0, false, err
	}
	if X(1)/X(2) == 0 && (si != math.Trunc(si) || math.Abs(si) > 1e9) { // X counts whole pieces
		return 0, false, fmt.Errorf("give a whole number")
	}
	return X(si), true, nil
}

// word is one of a closed list of words, which the design's own tag gives. An empty word is "not known".
func word[T any](path, label string, at func(*T) *string, more ...func(*input[T])) part[T] {
	in := newInput[T](path, label, asChoice)
	for value := range strings.SplitSeq(tagOf[T](path).Get("enum"), "|") {
		in.options = append(in.options, option{value, wordFor(value)})
	}
	in.show = func(t *T, _ unit.System) string { return *at(t) }
	in.read = func(t *T, text string, _ unit.System) error {
		for _, o := range in.options {
			if o.value == text {
				*at(t) = text
				return nil
			}
		}
		return fmt.Errorf("choose one of the list")
	}
	return finish(in, more)
}

// text is a line of words; long is several.
func text[T any](path, label string, at func(*T) *string, more ...func(*input[T])) part[T] {
	return words(path, label, asText, at, more)
}

func long[T any](path, label string, at func(*T) *string, more ...func(*input[T])) part[T] {
	return words(path, label, asLong, at, more)
}

const longestText = 2000

func words[T any](path, label string, kind inputKind, at func(*T) *string, more []func(*input[T])) part[T] {
	in := newInput[T](path, label, kind)
	in.show = func(t *T, _ unit.System) string { return *at(t) }
	in.read = func(t *T, text string, _ unit.System) error {
		text = strings.TrimSpace(strings.ReplaceAll(text, "\r\n", "\n"))
		if n := len([]rune(text)); n > longestText {
			return fmt.Errorf("at most %d letters; these are %d", longestText, n)
		}
		if strings.ContainsFunc(text, func(r rune) bool { return r < ' ' && r != '\n' && r != '\t' || r == 0xFFFD }) {
			return fmt.Errorf("there is a sign in it that cannot be shown")
		}
		*at(t) = text
		return nil
	}
	return finish(in, more)
}

func newInput[T any](path, label string, kind inputKind) *input[T] {
	say := tagOf[T](path).Get("say")
	return &input[T]{path: path, label: label, kind: kind, hint: hintFor(label, say), spare: strings.Contains(say, "not known"), symbol: func(unit.System) string { return "" }}
}

func finish[T any](in *input[T], more []func(*input[T])) part[T] {
	for _, m := range more {
		m(in)
	}
	return part[T]{input: in}
}

// finishNumber gives a number what is usual for it.
func finishNumber[T any](in *input[T], q unit.Quantity, more []func(*input[T])) part[T] {
	p := finish(in, more)
	in.q = &q
	if q.Symbol(unit.Metric) == "%" {
		in.hint = strings.Replace(in.hint, "counts as 1", "counts as 100 %", 1)
	}
	withUsual(in, q)
	return p
}

// hint replaces the line under the label that the design's tag gives.
func hint[T any](say string) func(*input[T]) { return func(in *input[T]) { in.hint = say } }

// heading puts parts under a title.
func heading[T any](title, intro string, parts ...part[T]) part[T] {
	return part[T]{group: &group[T]{title: title, intro: intro, parts: parts}}
}

// inBrief gives a section its own few words for what is inside.
func inBrief[T any](p part[T], say func(*T, unit.System) string) part[T] {
	p.group.brief = say
	return p
}

// telling names the values that the line of a section tells, by path, each with its words: "drum.diameter_m|%s across".
func telling[T any](p part[T], paths ...string) part[T] {
	p.group.tell = paths
	return p
}

// folded is a heading that is closed until it is opened: what most people leave alone.
func folded[T any](title, intro string, parts ...part[T]) part[T] {
	return part[T]{group: &group[T]{title: title, intro: intro, parts: parts, fold: true}}
}

// rows is a list whose rows are all alike; blank is a new row.
func rows[T, R any](path, title, one string, most int, at func(*T) *[]R, blank R, row ...part[R]) part[T] {
	return part[T]{list: &list[T]{
		path: path, title: title, one: one, most: most,
		intro: tagOf[T](path).Get("say"),
		count: func(t *T) int { return len(*at(t)) },
		resize: func(t *T, n int) {
			for len(*at(t)) < n {
				*at(t) = append(*at(t), blank)
			}
			*at(t) = (*at(t))[:n:n]
		},
		remove: func(t *T, i int) {
			all := *at(t)
			*at(t) = append(all[:i:i], all[i+1:]...)
		},
		row: func(i int) []part[T] {
			return within(fmt.Sprintf("%s[%d]", path, i), func(t *T) *R { return &(*at(t))[i] }, row...)
		},
	}}
}

// within lifts parts of P into a form of T; path is P's place in T.
func within[T, P any](path string, at func(*T) *P, parts ...part[P]) []part[T] {
	out := make([]part[T], len(parts))
	for i, p := range parts {
		switch {
		case p.input != nil:
			out[i].input = liftInput(path, at, p.input)
		case p.group != nil:
			g := p.group
			out[i].group = &group[T]{title: g.title, intro: g.intro, shape: g.shape, fold: g.fold, parts: within(path, at, g.parts...)}
			for _, one := range g.tell {
				out[i].group.tell = append(out[i].group.tell, path+"."+one)
			}
			if g.brief != nil {
				out[i].group.brief = func(t *T, sys unit.System) string { return g.brief(at(t), sys) }
			}
		default:
			out[i].list = liftList(path, at, p.list)
		}
	}
	return out
}

func liftInput[T, P any](path string, at func(*T) *P, p *input[P]) *input[T] {
	in := &input[T]{path: path + "." + p.path, label: p.label, hint: p.hint, spare: p.spare, kind: p.kind, symbol: p.symbol, q: p.q, options: p.options}
	in.show = func(t *T, sys unit.System) string { return p.show(at(t), sys) }
	in.read = func(t *T, text string, sys unit.System) error { return p.read(at(t), text, sys) }
	if p.echo != nil {
		in.echo = func(t *T, sys unit.System) string { return p.echo(at(t), sys) }
	}
	if p.usual != nil {
		in.usual = func(t *T) usual { return p.usual(at(t)) }
		in.value = func(t *T) (float64, bool) { return p.value(at(t)) }
	}
	return in
}

func liftList[T, P any](path string, at func(*T) *P, p *list[P]) *list[T] {
	return &list[T]{
		path: path + "." + p.path, title: p.title, one: p.one, intro: p.intro, most: p.most,
		count:  func(t *T) int { return p.count(at(t)) },
		resize: func(t *T, n int) { p.resize(at(t), n) },
		remove: func(t *T, i int) { p.remove(at(t), i) },
		row:    func(i int) []part[T] { return within(path, at, p.row(i)...) },
	}
}

// tagOf finds the tag of a value by its path in T, through lists and pointers. A path that does not exist is a mistake
// of the table and stops the program when the table is made.
func tagOf[T any](path string) reflect.StructTag {
	key := tagKey{reflect.TypeFor[T](), path}
	if tag, ok := foundTags.Load(key); ok {
		return tag.(reflect.StructTag)
	}
	tag := findTag(key.of, path)
	foundTags.Store(key, tag)
	return tag
}

// foundTags are those found before: a page makes its table for every request.
var foundTags sync.Map

type tagKey struct {
	of   reflect.Type
	path string
}

func findTag(t reflect.Type, path string) (tag reflect.StructTag) {
	of := t
	for name := range strings.SplitSeq(path, ".") {
		name, _, _ = strings.Cut(name, "[")
		field, ok := fieldNamed(t, name)
		if !ok {
			panic(fmt.Sprintf("web: %v has no value %q of path %q", of, name, path))
		}
		tag, t = field.Tag, field.Type
		for t.Kind() == reflect.Pointer || t.Kind() == reflect.Slice || t.Kind() == reflect.Array {
			t = t.Elem()
		}
	}
	return tag
}

func fieldNamed(t reflect.Type, name string) (reflect.StructField, bool) {
	if t.Kind() != reflect.Struct {
		return reflect.StructField{}, false
	}
	for f := range t.Fields() {
		if key, _, _ := strings.Cut(f.Tag.Get("json"), ","); key == name {
			return f, true
		}
	}
	return reflect.StructField{}, false
}
