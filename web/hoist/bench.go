package hoist

import (
	"net/http"
	"net/url"
	"slices"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/parts"
	"duskweight/web/form"
	"duskweight/web/page"
)

// The page Lifted mass as a drawing that can be touched: the state, the next question, the drawing with a sign at each
// part, the card of one part, all parts as a list, and the answer. The whole form on one page is at ?depth=bench&all=1.

// depth is how much a card shows first; it changes no value and no check.
type depth string

const (
	depthIdea  depth = "idea"
	depthBuild depth = "build"
	depthBench depth = "bench"
)

// Names in the address.
const (
	nameDepth = "depth"
	namePart  = page.NamePart
	nameMore  = page.NameMore
	nameShow  = page.NameShow
	nameLater = page.NameLater
	nameAll   = page.NameAll
)

// benchAt is what the address asks for.
type benchAt struct {
	url   string // of the page
	depth depth
	part  string   // whose card is open; "" for that of the question
	field string   // an input inside the hoist that the card must show
	more  bool     // all inputs of the part
	show  string   // the tab of the answer
	later []string // inputs that were put behind their tier
	whole bool     // the whole form on one page
}

func benchAtOf(r *http.Request, url, hoist string) benchAt {
	q := r.URL.Query()
	b := benchAt{url: url, depth: depth(q.Get(nameDepth)), part: q.Get(namePart), more: q.Get(nameMore) != "", show: q.Get(nameShow), later: q[nameLater]}
	if b.depth != depthIdea && b.depth != depthBench {
		b.depth = depthBuild
	}
	b.whole = b.depth == depthBench && q.Get(nameAll) != ""
	b.field = strings.TrimPrefix(q.Get(page.NameField), hoist+".")
	if !slices.Contains(tabNames, b.show) {
		b.show = tabNames[0]
	}
	if len(b.later) > page.MostLater {
		b.later = b.later[:page.MostLater]
	}
	return b
}

// query is the address of the page with what differs from the usual.
func (b benchAt) query() string {
	q := url.Values{}
	if b.depth != depthBuild {
		q.Set(nameDepth, string(b.depth))
	}
	if b.part != "" {
		q.Set(namePart, b.part)
	}
	if b.whole {
		q.Set(nameAll, "1")
	}
	if b.more {
		q.Set(nameMore, "1")
	}
	if b.show != tabNames[0] {
		q.Set(nameShow, b.show)
	}
	q[nameLater] = b.later
	if text := q.Encode(); text != "" {
		return "?" + text
	}
	return ""
}

// link is the same page with something changed, at an element of it.
func (b benchAt) link(change func(*benchAt), at string) string {
	b.later = slices.Clone(b.later)
	b.field = ""
	change(&b)
	return b.url + b.query() + at
}

// card is the address of the card of a part.
func (b benchAt) card(part string) string {
	return b.link(func(b *benchAt) { b.part, b.more = part, false }, "#card")
}

// bench is one design as the page shows it.
type bench struct {
	at     benchAt
	h      hoistPage
	v      model.Variant
	whole  model.VariantResult
	result *model.HoistResult
	said   parts.Said
	states []parts.State
	ask    parts.Question
	open   int // whose card is open
}

// benchOf works out the parts of a design, the next question and the open card.
func (h hoistPage) benchOf(v model.Variant, whole model.VariantResult, at benchAt, refused []string) bench {
	result := model.HoistOf(whole.Stores[h.i])
	b := bench{at: at, h: h, v: v, whole: whole, result: result}
	f := form.Form[lift.Hoist]{Parts: hoistInputs()}
	design := *v.Stores[h.i].Hoist
	_, given := f.Paths(&design)
	hoist := model.HoistPath(h.i)
	b.said = parts.Said{At: hoist, Checks: result.Lines(), Flags: result.Drive.Flags, Because: whole.Stores[h.i].Because, Typical: v.TypicalOf(h.i), Given: given}
	b.states = parts.States(design, b.said)
	inside := make([]string, len(refused))
	for i, p := range refused {
		inside[i] = strings.TrimPrefix(p, hoist+".")
	}
	b.ask = parts.Next(design, b.states, b.said, parts.Ask{Refused: inside, Drive: result.Drive.Missing, Later: at.later})
	b.open = b.opened(inside)
	return b
}

// opened is the part whose card is open: that of a refused value, that which the address names, or that of the question.
func (b bench) opened(refused []string) int {
	for i, s := range b.states {
		if s.ID == b.at.part {
			return i
		}
	}
	all := b.parts()
	for _, p := range append(slices.Clone(refused), b.at.field) {
		if i := parts.Owner(all, p); p != "" && i >= 0 {
			return i
		}
	}
	return max(b.ask.Part, 0)
}

// shown reports whether the open card shows an input.
func (b bench) shown(all []parts.Part) func(path string) bool {
	s := b.states[b.open]
	return func(path string) bool {
		if i := parts.Owner(all, path); i < 0 || all[i].ID != s.ID {
			return false
		}
		switch {
		case b.at.more, b.at.depth == depthBench, path == b.at.field, b.ask.Part == b.open && path == b.ask.Path, b.given(path):
			return true
		case b.at.depth == depthIdea:
			return s.Idea(path)
		}
		return s.Shows(path) || slices.Contains(s.Open, path)
	}
}

// given reports whether the user has filled an input in.
func (b bench) given(path string) bool { return b.h.filled()[path] }
