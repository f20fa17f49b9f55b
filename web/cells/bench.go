package cells

import (
	"net/http"
	"net/url"
	"slices"

	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// The page Battery as a drawing that can be touched: the state, the next question, the drawing with a sign at each part,
// the card of one part, all parts as a list, and the answer. All inputs of the battery on one page are at ?all=1.

// benchAt is what the address asks for.
type benchAt struct {
	url   string   // of the page
	part  string   // whose card is open; "" for that of the question
	field string   // an input that the card must show
	more  bool     // all inputs of the part
	show  string   // the tab of the answer
	week  bool     // the worst week
	later []string // inputs that were put behind
	all   bool     // all inputs of the battery on one page
}

// nameWeek is the worst week in the address.
const nameWeek = "week"

func benchAtOf(r *http.Request, url string) benchAt {
	q := r.URL.Query()
	at := benchAt{url: url, part: q.Get(page.NamePart), field: q.Get(page.NameField), more: q.Get(page.NameMore) != "", show: q.Get(page.NameShow),
		week: q.Get(nameWeek) != "", later: q[page.NameLater], all: q.Get(page.NameAll) != ""}
	if !slices.Contains(tabNames, at.show) {
		at.show = tabNames[0]
	}
	at.later = at.later[:min(len(at.later), page.MostLater)]
	return at
}

// query is the address of the page with what differs from the usual.
func (at benchAt) query() string {
	q := url.Values{}
	set := func(name, value string, is bool) {
		if is {
			q.Set(name, value)
		}
	}
	set(page.NamePart, at.part, at.part != "")
	set(page.NameMore, "1", at.more)
	set(page.NameAll, "1", at.all)
	set(page.NameShow, at.show, at.show != tabNames[0])
	set(nameWeek, "1", at.week)
	if len(at.later) > 0 {
		q[page.NameLater] = at.later
	}
	if text := q.Encode(); text != "" {
		return "?" + text
	}
	return ""
}

// link is the same page with something changed, at an element of it.
func (at benchAt) link(change func(*benchAt), element string) string {
	at.later, at.field = slices.Clone(at.later), ""
	change(&at)
	return at.url + at.query() + element
}

// card is the address of the card of a part.
func (at benchAt) card(id string) string {
	return at.link(func(a *benchAt) { a.part, a.more = id, false }, "#card")
}

// bench is one design as the page shows it.
type bench struct {
	at     benchAt
	h      *cellsPage
	v      model.Variant
	whole  model.VariantResult
	c      *model.CellsResult
	st     model.StoreResult
	prefix string // path of the battery
	board  bool   // its cells have a management board
	given  map[string]bool
	paths  []string // of all inputs, in the order of the form
	states []state
	ask    string // the path that is asked next; empty where nothing is left
	open   int    // whose card is open
}

// benchOf works out the parts of a design, the next question and the open card.
func (h *cellsPage) benchOf(v model.Variant, whole model.VariantResult, at benchAt, refused []string) *bench {
	b := &bench{at: at, h: h, v: v, whole: whole, st: whole.Stores[h.i], prefix: model.CellsPath(h.i)}
	b.c = model.CellsOf(b.st)
	b.board = b.c.Design.Kind == "" || b.c.Resolved.Kind.Ion
	b.paths, b.given = h.inputsOf(v)
	b.makeStates()
	b.ask = b.next(refused)
	b.open = b.opened(refused)
	return b
}

// inputs are the paths of the inputs of a part.
func (b *bench) inputs(id string) (out []string) {
	for _, p := range b.paths {
		if ownerOf(p, b.prefix, b.board) == id {
			out = append(out, p)
		}
	}
	return out
}

// opened is the part whose card is open: that of a refused value, that which the address names, or that of the question.
func (b *bench) opened(refused []string) int {
	index := func(id string) int { return slices.IndexFunc(b.states, func(s state) bool { return s.id == id }) }
	of := func(path string) int {
		if path == "" {
			return -1
		}
		return index(ownerOf(path, b.prefix, b.board))
	}
	if i := index(b.at.part); i >= 0 {
		return i
	}
	for _, p := range append(slices.Clone(refused), b.at.field, b.ask) {
		if i := of(p); i >= 0 {
			return i
		}
	}
	return max(index(partBattery), 0)
}

// shown reports whether the open card shows an input.
func (b *bench) shown(path string) bool {
	s := b.states[b.open]
	if s.page != "" || ownerOf(path, b.prefix, b.board) != s.id {
		return false
	}
	if b.at.more || path == b.at.field || path == b.ask || slices.Contains(s.first, keyOf(path, b.prefix)) {
		return true
	}
	return slices.Contains(s.Open, path) && !b.first(s) || b.gas(path)
}

// first reports whether an input that the part shows at once is still open: the others wait for it.
func (b *bench) first(s state) bool {
	return slices.ContainsFunc(s.Open, func(p string) bool { return slices.Contains(s.first, keyOf(p, b.prefix)) })
}

// gas reports whether a path is that of the opening for air of a battery that gives off gas.
func (b *bench) gas(path string) bool {
	return b.c.Air.Boost > 0 && path == model.Join(b.prefix, "vent_area_m2")
}

// inputsOf are the paths of all inputs of a design, in the order of the form, and which of them hold something.
func (h *cellsPage) inputsOf(v model.Variant) ([]string, map[string]bool) {
	var paths []string
	given := map[string]bool{}
	v = document.Clone(v)
	h.Form.Walk(h.Form.Parts, &v, func(in *form.Input[model.Variant]) {
		paths = append(paths, in.Path)
		given[in.Path] = in.Show(&v, unit.Metric) != ""
	})
	return paths, given
}
