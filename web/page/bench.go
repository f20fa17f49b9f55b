package page

import (
	"io"

	"duskweight/internal/document"
	"duskweight/internal/draw"
	"duskweight/web/form"
)

// What the pages that are a drawing to touch have in common: the next question, the list of all parts, the progress, the
// head of a card, what to buy, and the tabs of the answer.

// Names in the address of such a page.
const (
	NamePart  = "part"  // whose card is open
	NameMore  = "more"  // all inputs of the part
	NameShow  = "show"  // the tab of the answer
	NameLater = "later" // inputs that were put behind
	NameAll   = "all"   // the whole form
)

// MostLater is how many questions may be put behind: it bounds the address.
const MostLater = 40

// AskView is the one question that is asked next, with at most three answers.
type AskView struct {
	Ask     string // "What does the reel say?"
	Settles string
	Field   *form.FieldView // the input that answers it
	Path    string
	Also    []HiddenValue  // the lengths of the lists that its row stands in
	Open    *form.LinkView // its card, where the card alone can answer
	Thing   string         // key of the drawing of what is read or measured; "" for none
	Part    string
	Later   string // address that puts it behind
	NoLabel bool   // it is read on a label: the way out is called so
	Buy     string // address that tells what to buy; "" where nothing is bought
	All     bool   // nothing is left to ask
	Done    string // what is said then
	Sheet   string
}

// Few reports whether the question has so few answers that each is a button.
func (q AskView) Few() bool {
	return len(q.Field.Tiles) > 0 || q.Field.Kind == form.AsChoice && len(q.Field.Options) <= 4
}

// HiddenValue is what a form sends besides its fields.
type HiddenValue struct{ Name, Value string }

// FieldAt makes the field of one input of a form, with the lengths of the lists that its row stands in; nil where the path
// is that of no single input.
func (e Editor[T]) FieldAt(t T, path string) (*form.FieldView, []HiddenValue) {
	f := e.Form
	f.Shown = func([]string) []form.Part[T] {
		return form.Pick(f.Parts, func(p string) bool { return p == path }, func(string) bool { return false })
	}
	t = document.Clone(t)
	f.Grow(&t, path)
	return fieldOf(f.View(&t, nil, nil, e.Units).Parts)
}

// fieldOf is the last field of a form, and the lengths of its lists.
func fieldOf(list []form.PartView) (field *form.FieldView, also []HiddenValue) {
	keep := func(f *form.FieldView, more []HiddenValue) {
		if f != nil {
			field = f
		}
		also = append(also, more...)
	}
	for _, one := range list {
		switch {
		case one.Field != nil:
			field = one.Field
		case one.Group != nil:
			keep(fieldOf(one.Group.Parts))
		case one.List != nil:
			also = append(also, HiddenValue{one.List.Path + form.RowsSuffix, Itoa(one.List.Count)})
			for _, row := range one.List.Rows {
				keep(fieldOf(row.Parts))
			}
		}
	}
	return field, also
}

// PartRowView is a part in the list of all parts.
type PartRowView struct {
	Href, Name, Word, Line, Use string
	Sign                        string // SVG
	Here                        bool
}

// PartRowsView are all parts, the worst first; those that are settled are folded.
type PartRowsView struct {
	Rows, Holding []PartRowView
}

// All is how many parts there are.
func (v PartRowsView) All() int { return len(v.Rows) + len(v.Holding) }

// BuyView is what to look for when a part is bought.
type BuyView struct {
	Title string
	Say   string // the number, or why there is none
	Sizes string
	Why   string // what would make it smaller
	As    string // of the market list; "" where it stands there already
	Post  string // address of the list
}

// PartHeadView is the head of the card of a part.
type PartHeadView struct{ Sign, Name, Word, Close string }

// Squares draws a square a part, the settled ones first. say is the sentence that it shows.
func Squares(settled, tight, bad, all int, say string) string {
	return SvgOf(func(w io.Writer) error { return draw.Progress(settled, tight, bad, all, say, w) })
}
