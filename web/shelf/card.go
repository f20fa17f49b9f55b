package shelf

import (
	"fmt"
	"net/http"
	"net/url"
	"reflect"
	"strings"

	"github.com/a-h/templ"

	"duskweight/internal/model"
	"duskweight/web/form"
	"duskweight/web/page"
)

// The page Parts shelf shows one card of its form at a time: that of the part in its address, ?part=motors[2]; no card where
// it names none, and the whole form at ?all=1.

const (
	namePart = "part"
	nameAll  = "all"
)

// spareAt is a place on the shelf: a list and a row of it, which may be the one behind its last. The zero value is none.
type spareAt struct {
	list string
	i    int
}

// spareOf reads the place from an address: of the part that it names, or of the one in which the field lies that it names.
func spareOf(r *http.Request, s model.Shelf) (at spareAt, ok bool) {
	q := r.URL.Query()
	row := q.Get(namePart)
	if field, isField := strings.CutPrefix(q.Get(page.NameField), "shelf."); isField {
		row, _, _ = strings.Cut(field, "]")
		row += "]"
	}
	return placeOf(row, s)
}

// placeOf reads a place from its row: "motors[2]".
func placeOf(row string, s model.Shelf) (at spareAt, ok bool) {
	list, i, isRow := form.SplitRow(row)
	if n, there := counts(s)[list]; !isRow || !there || i < 0 || i > n || i >= model.MostSpares {
		return spareAt{}, false
	}
	return spareAt{list, i}, true
}

// counts are how many parts each list has.
func counts(s model.Shelf) map[string]int {
	out := map[string]int{}
	for _, l := range s.Counts() {
		out[l.List] = l.Parts
	}
	return out
}

func (a spareAt) row() string   { return fmt.Sprintf("%s[%d]", a.list, a.i) }
func (a spareAt) path() string  { return "shelf." + a.row() }
func (a spareAt) query() string { return "?" + url.Values{namePart: {a.row()}}.Encode() }

// onCards makes the editor show the planks and the card of one part, if any, in place of the whole form.
func onCards(e *page.Editor[model.Project], at spareAt, open bool, top shelfTop) {
	whole := e.Form
	saved := e.Saved.Value.Shelf
	e.Form.Shown = func([]string) []form.Part[model.Project] {
		inside := func(path string) bool { return open && model.Within(path, at.path()) }
		return form.Pick(whole.Parts, inside, func(list string) bool { return inside(list) })
	}
	e.Style = "shelf.css"
	if open {
		e.Grow = func(p *model.Project) { whole.Grow(p, at.path()) }
		e.Card = at.query
	}
	e.Tidy = func(p *model.Project) { tidy(&p.Shelf, saved) }
	e.Where = func(path string) string { return page.FieldURL(e.Url, path) }
	e.Next = func(typed url.Values) string {
		if do := typed.Get(form.NameDo); !open || strings.HasPrefix(do, "remove:"+at.path()) {
			return ""
		}
		return at.query()
	}
	e.Lay = func(v page.EditorView, _ []string) templ.Component {
		card := cardView{}
		if open {
			card = cardView{Open: true, Name: "A new part", Form: v.Form, Close: e.Url, New: at.i >= counts(saved)[at.list]}
			if !card.New {
				card.Name = spareName(saved, at.list, at.i)
				card.Into, card.Row = top.into(at), at.row()
			}
		}
		return shelfPage(v, top, card)
	}
}

// tidy takes out the rows behind the last that a card made and nobody filled.
func tidy(s *model.Shelf, saved model.Shelf) {
	s.Motors = trimmed(s.Motors, len(saved.Motors))
	s.Stages = trimmed(s.Stages, len(saved.Stages))
	s.Drums = trimmed(s.Drums, len(saved.Drums))
	s.Ropes = trimmed(s.Ropes, len(saved.Ropes))
	s.Pulleys = trimmed(s.Pulleys, len(saved.Pulleys))
	s.Panels = trimmed(s.Panels, len(saved.Panels))
	s.Cells = trimmed(s.Cells, len(saved.Cells))
}

func trimmed[T any](rows []T, least int) []T {
	for len(rows) > least && reflect.ValueOf(rows[len(rows)-1]).IsZero() {
		rows = rows[:len(rows)-1]
	}
	return rows
}
