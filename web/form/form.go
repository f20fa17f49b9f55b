// Package form is the engine of the forms: a table of inputs becomes a form to show, typed text becomes a design, what
// was refused is kept as a draft, and two versions are told apart value by value. It knows no HTTP and no subject of
// ours; what a form asks for stands in the room of its page.
package form

import (
	"fmt"
	"math"
	"reflect"
	"strconv"
	"strings"
	"sync"

	"duskweight/internal/model/unit"
	"duskweight/web/typical"
)

// The inputs table is the only place where typed text meets units. One row of it drives the form, the decoding, the
// editing, both unit systems, the mark of the origin and the accessible label:
//
//	number("drum.diameter_m", "Drum diameter", unit.Diameters, func(h *lift.Hoist) *unit.Known[unit.Length] { return &h.Drum.Diameter })
//
// A path is the value's place in the document, relative to T. It is also the name in the form. The hint and the words
// of a choice come from the tags of the design, so that a new input is one field there and one row here.

// Part is one node of a form: exactly one of its three is set.
type Part[T any] struct {
	Input *Input[T]
	Group *Group[T]
	List  *list[T]
}

// Group is a heading with parts under it. At the top of a form it is a section, which opens and closes.
type Group[T any] struct {
	Title string
	Intro string
	Shape string                       // "" for one below the other, shapeMonths for a table of twelve rows
	Fold  bool                         // inside a section: shown closed, what most people leave alone
	Brief func(*T, unit.System) string // what is inside, in a few words; nil tells what tell names
	tell  []string                     // paths of the values that its line tells, "path|%s across"; none: the first
	Links []LinkView                   // rows of the catalog that fill it in
	Other []LinkView                   // other pages that do
	Parts []Part[T]
}

// ShapeMonths is a group of groups with a value for each month, printed as one table.
const ShapeMonths = "months"

// list is a list of rows that can grow and shrink.
type list[T any] struct {
	Path   string
	Title  string
	One    string // what one row is called: "panel"
	Intro  string // one line for the empty list
	most   int
	picked bool                     // some rows or columns alone are shown
	fixed  bool                     // no row can be added here
	called func(t *T, i int) string // name of a row where none can be taken away; nil is the number alone, and they can
	Count  func(*T) int
	Resize func(*T, int)
	remove func(*T, int)
	Row    func(i int) []Part[T]
}

// Input is one value. show and read are each other's inverse: what show wrote and nobody changed is never read back.
type Input[T any] struct {
	Path    string
	Label   string
	Hint    string
	Spare   bool // may stay empty: a careful or usual value stands in for it
	Kind    InputKind
	Symbol  func(unit.System) string
	q       *unit.Quantity // of a number
	each    *unit.Quantity // of the numbers of the months, where it is typed as twelve
	Options []Option
	Show    func(*T, unit.System) string
	Read    func(*T, string, unit.System) error
	echo    func(*T, unit.System) string
	Value   func(*T) (float64, bool) // of a number, in SI
	Usual   func(*T) typical.Usual   // of a number: what is usual
}

type InputKind string

const (
	AsNumber InputKind = "number"
	asText   InputKind = "text"
	AsLong   InputKind = "long"
	AsChoice InputKind = "choice"
)

// Option is one word of a closed list.
type Option struct{ Value, Word string }

// Number is a quantity that may be not known.
func Number[T any, X unit.Number](path, label string, q unit.Quantity, at func(*T) *unit.Known[X], more ...func(*Input[T])) Part[T] {
	in := NewInput[T](path, label, AsNumber)
	in.Symbol = q.Symbol
	in.Show = func(t *T, sys unit.System) string {
		if v := *at(t); v.Is {
			return TypedForm(q, float64(v.Val), sys)
		}
		return ""
	}
	in.echo = func(t *T, sys unit.System) string {
		if v := *at(t); v.Is && sys == unit.Imperial && q.Symbol(unit.Metric) != q.Symbol(unit.Imperial) { // the reels and labels of makers are metric as often as not
			return q.Echo(float64(v.Val), sys)
		}
		return ""
	}
	in.Read = func(t *T, text string, sys unit.System) error {
		v, known, err := ReadNumber[X](q, text, sys)
		if err != nil {
			return err
		}
		*at(t) = unit.Known[X]{Val: v, Is: known}
		return nil
	}
	in.Value = func(t *T) (float64, bool) { return float64(at(t).Val), at(t).Is }
	return FinishNumber(in, q, more)
}

// Plain is a quantity that must be known.
func Plain[T any, X unit.Number](path, label string, q unit.Quantity, at func(*T) *X, more ...func(*Input[T])) Part[T] {
	in := NewInput[T](path, label, AsNumber)
	in.Symbol = q.Symbol
	in.Show = func(t *T, sys unit.System) string { return TypedForm(q, float64(*at(t)), sys) }
	in.Read = func(t *T, text string, sys unit.System) error {
		v, known, err := ReadNumber[X](q, text, sys)
		switch {
		case err != nil:
			return err
		case !known:
			return fmt.Errorf("a number is needed here")
		}
		*at(t) = v
		return nil
	}
	in.Value = func(t *T) (float64, bool) { return float64(*at(t)), true }
	return FinishNumber(in, q, more)
}

// TypedForm writes a stored value as it stands in a field, without its unit: in full where that is short, else rounded.
// Nothing is lost by that: text that nobody changed is never read back.
func TypedForm(q unit.Quantity, si float64, sys unit.System) string {
	full := q.FormatFull(si, sys)
	v, err := strconv.ParseFloat(full, 64)
	switch {
	case err == nil && len(full) > longTyped:
		return unit.Typed(unit.Rounded(v, 6))
	case err != nil && q.Symbol(unit.Metric) != q.Symbol(unit.Imperial): // "240 kg" in a field of pounds
		return unit.Typed(q.Number(si, sys))
	}
	return full
}

// ReadNumber reads a typed quantity into X; whole pieces must be whole.
func ReadNumber[X unit.Number](q unit.Quantity, text string, sys unit.System) (X, bool, error) {
	si, known, err := q.Parse(text, sys)
	if err != nil || !known {
		return 0, false, err
	}
	if X(1)/X(2) == 0 && (si != math.Trunc(si) || math.Abs(si) > 1e9) { // X counts whole pieces
		return 0, false, fmt.Errorf("give a whole number")
	}
	return X(si), true, nil
}

// WordsOf are the words of a closed list, which the design's own tag gives.
func WordsOf[T any](path string) (out []Option) {
	for value := range strings.SplitSeq(TagOf[T](path).Get("enum"), "|") {
		out = append(out, Option{value, WordFor(value)})
	}
	return out
}

// Word is one of a closed list of words, which the design's own tag gives. An empty word is "not known".
func Word[T any, S ~string](path, label string, at func(*T) *S, more ...func(*Input[T])) Part[T] {
	in := NewInput[T](path, label, AsChoice)
	in.Options = WordsOf[T](path)
	in.Show = func(t *T, _ unit.System) string { return string(*at(t)) }
	in.Read = func(t *T, text string, _ unit.System) error {
		for _, o := range in.Options {
			if o.Value == text {
				*at(t) = S(text)
				return nil
			}
		}
		return fmt.Errorf("choose one of the list")
	}
	return finish(in, more)
}

// Text is a line of words; long is several.
func Text[T any](path, label string, at func(*T) *string, more ...func(*Input[T])) Part[T] {
	return words(path, label, asText, at, more)
}

func Long[T any](path, label string, at func(*T) *string, more ...func(*Input[T])) Part[T] {
	return words(path, label, AsLong, at, more)
}

const longestText = 2000

func words[T any](path, label string, kind InputKind, at func(*T) *string, more []func(*Input[T])) Part[T] {
	in := NewInput[T](path, label, kind)
	in.Show = func(t *T, _ unit.System) string { return *at(t) }
	in.Read = func(t *T, text string, _ unit.System) error {
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

func NewInput[T any](path, label string, kind InputKind) *Input[T] {
	say := TagOf[T](path).Get("say")
	return &Input[T]{Path: path, Label: label, Kind: kind, Hint: hintFor(label, say), Spare: strings.Contains(say, "not known"), Symbol: func(unit.System) string { return "" }}
}

func finish[T any](in *Input[T], more []func(*Input[T])) Part[T] {
	for _, m := range more {
		m(in)
	}
	return Part[T]{Input: in}
}

// FinishNumber gives a number what is usual for it.
func FinishNumber[T any](in *Input[T], q unit.Quantity, more []func(*Input[T])) Part[T] {
	p := finish(in, more)
	in.q = &q
	if q.Symbol(unit.Metric) == "%" {
		in.Hint = inPercent(in.Hint)
	}
	withUsual(in, q)
	return p
}

// Hint replaces the line under the label that the design's tag gives.
func Hint[T any](say string) func(*Input[T]) { return func(in *Input[T]) { in.Hint = say } }

// Heading puts parts under a title.
func Heading[T any](title, intro string, parts ...Part[T]) Part[T] {
	return Part[T]{Group: &Group[T]{Title: title, Intro: intro, Parts: parts}}
}

// InBrief gives a section its own few words for what is inside.
func InBrief[T any](p Part[T], say func(*T, unit.System) string) Part[T] {
	p.Group.Brief = say
	return p
}

// Telling names the values that the line of a section tells, by path, each with its words: "drum.diameter_m|%s across".
func Telling[T any](p Part[T], paths ...string) Part[T] {
	p.Group.tell = paths
	return p
}

// Folded is a heading that is closed until it is opened: what most people leave alone.
func Folded[T any](title, intro string, parts ...Part[T]) Part[T] {
	return Part[T]{Group: &Group[T]{Title: title, Intro: intro, Parts: parts, Fold: true}}
}

// Rows is a list whose rows are all alike; blank is a new row.
func Rows[T, R any](path, title, one string, most int, at func(*T) *[]R, blank R, row ...Part[R]) Part[T] {
	return Part[T]{List: &list[T]{
		Path: path, Title: title, One: one, most: most,
		Intro: TagOf[T](path).Get("say"),
		Count: func(t *T) int { return len(*at(t)) },
		Resize: func(t *T, n int) {
			for len(*at(t)) < n {
				*at(t) = append(*at(t), blank)
			}
			*at(t) = (*at(t))[:n:n]
		},
		remove: func(t *T, i int) {
			all := *at(t)
			*at(t) = append(all[:i:i], all[i+1:]...)
		},
		Row: func(i int) []Part[T] {
			return Within(fmt.Sprintf("%s[%d]", path, i), func(t *T) *R { return &(*at(t))[i] }, row...)
		},
	}}
}

// Within lifts parts of P into a form of T; path is P's place in T.
func Within[T, P any](path string, at func(*T) *P, parts ...Part[P]) []Part[T] {
	out := make([]Part[T], len(parts))
	for i, p := range parts {
		switch {
		case p.Input != nil:
			out[i].Input = liftInput(path, at, p.Input)
		case p.Group != nil:
			g := p.Group
			out[i].Group = &Group[T]{Title: g.Title, Intro: g.Intro, Shape: g.Shape, Fold: g.Fold, Parts: Within(path, at, g.Parts...)}
			for _, one := range g.tell {
				out[i].Group.tell = append(out[i].Group.tell, path+"."+one)
			}
			if g.Brief != nil {
				out[i].Group.Brief = func(t *T, sys unit.System) string { return g.Brief(at(t), sys) }
			}
		default:
			out[i].List = liftList(path, at, p.List)
		}
	}
	return out
}

func liftInput[T, P any](path string, at func(*T) *P, p *Input[P]) *Input[T] {
	in := &Input[T]{Path: path + "." + p.Path, Label: p.Label, Hint: p.Hint, Spare: p.Spare, Kind: p.Kind, Symbol: p.Symbol, q: p.q, each: p.each, Options: p.Options}
	in.Show = func(t *T, sys unit.System) string { return p.Show(at(t), sys) }
	in.Read = func(t *T, text string, sys unit.System) error { return p.Read(at(t), text, sys) }
	if p.echo != nil {
		in.echo = func(t *T, sys unit.System) string { return p.echo(at(t), sys) }
	}
	if p.Usual != nil {
		in.Usual = func(t *T) typical.Usual { return p.Usual(at(t)) }
		in.Value = func(t *T) (float64, bool) { return p.Value(at(t)) }
	}
	return in
}

func liftList[T, P any](path string, at func(*T) *P, p *list[P]) *list[T] {
	return &list[T]{
		Path: path + "." + p.Path, Title: p.Title, One: p.One, Intro: p.Intro, most: p.most,
		Count:  func(t *T) int { return p.Count(at(t)) },
		Resize: func(t *T, n int) { p.Resize(at(t), n) },
		remove: func(t *T, i int) { p.remove(at(t), i) },
		Row:    func(i int) []Part[T] { return Within(path, at, p.Row(i)...) },
	}
}

// TagOf finds the tag of a value by its path in T, through lists and pointers. A path that does not exist is a mistake
// of the table and stops the program when the table is made.
func TagOf[T any](path string) reflect.StructTag {
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
		field, ok := FieldNamed(t, name)
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

func FieldNamed(t reflect.Type, name string) (reflect.StructField, bool) {
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
