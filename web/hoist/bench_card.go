package hoist

import (
	"slices"
	"strings"

	"duskweight/internal/draw"
	"duskweight/internal/model/lift/parts"
	"duskweight/internal/model/lift/path"
	"duskweight/web/form"
	"duskweight/web/page"
)

// cardView is the card of one part round its fields.
type cardView struct {
	Head        page.PartHeadView
	Ask         string
	Against     []page.ReasonView
	Flags       []string
	Checks      []page.CheckView
	Buy         *page.BuyView
	Read        *page.ReadView // where its numbers stand
	More        string
	Count       int // of all inputs of the part
	Links       []form.LinkView
	Form        form.FormView
	First, Rest []form.PartView // the fields that stand open, and those that are answered already
	AllOpen     bool
	Elsewhere   bool // the part has no inputs here
}

// cardOf prints the open card.
func (b bench) cardOf(v page.EditorView) cardView {
	s := b.states[b.open]
	c := cardView{Head: page.PartHeadView{Name: s.Name, Word: word(s), Sign: draw.Sign(s.Word)}, Ask: s.Ask, Form: v.Form, Elsewhere: s.ID == parts.Beyond}
	c.Against = page.ReasonsOf(s.Against, b.h.sys, b.h.links(b.v)).List
	for _, f := range s.Flags {
		c.Flags = append(c.Flags, f.Say.In(b.h.sys))
	}
	for _, one := range b.said.Checks {
		if parts.Owner(b.parts(), one.About()) == b.open && (one.Word == path.Tight || one.Word == path.Holds || one.Word == path.GivesWay) {
			c.Checks = append(c.Checks, page.CheckViews([]path.Check{one}, b.said.At, b.h.sys, b.h.labels, b.at.url)...)
		}
	}
	if s.Word != path.Holds {
		c.Buy = b.buy(s)
	}
	if r, ok := readingOf(s.ID, *b.v.Stores[b.h.i].Hoist); ok {
		c.Read = r.View(b.h.sys, b.at.part == s.ID && len(s.Open) > 0)
	}
	c.First, c.Rest = b.split(v.Form.Parts)
	c.AllOpen = b.at.more || b.at.depth == depthBench || len(c.First) == 0
	c.Head.Close = b.at.link(func(a *benchAt) { a.part, a.more = "", false }, "#part-"+s.ID)
	for p := range b.said.Given {
		if i := parts.Owner(b.parts(), p); i == b.open {
			c.Count++
		}
	}
	if !b.at.more && b.at.depth != depthBench {
		c.More = b.at.link(func(a *benchAt) { a.part, a.more = s.ID, true }, "#card")
	}
	c.Links = cardLinks(s.ID, b.at.url)
	return c
}

// split parts the fields of the card: what it shows first stands open; what else is asked for too, once all that is answered;
// the others are folded.
func (b bench) split(list []form.PartView) (first, rest []form.PartView) {
	s := b.states[b.open]
	answered := !slices.ContainsFunc(s.Open, s.Shows)
	for _, p := range list {
		at := ""
		if p.Field != nil {
			at = strings.TrimPrefix(p.Field.Path, b.said.At+".")
			if !b.at.more && b.at.depth != depthBench {
				pictured(p.Field)
			}
		}
		if p.List != nil && p.List.Count == 0 && p.List.Problem == "" && !b.asked(p.List.Path) { // readings of the bench that nobody took
			rest = append(rest, p)
		} else if f := p.Field; f == nil || f.Problem != "" || f.Unsaved || s.Shows(at) || answered && slices.Contains(s.Open, at) || at == b.at.field {
			first = append(first, p)
		} else {
			rest = append(rest, p)
		}
	}
	return first, rest
}

// asked reports whether the open card shows first, or asks for, something of a list.
func (b bench) asked(list string) bool {
	s := b.states[b.open]
	at := strings.TrimPrefix(list, b.said.At+".")
	return slices.ContainsFunc(append(s.First, s.Open...), func(p string) bool { return p == at || strings.HasPrefix(p, at+"[") })
}

// parts are the parts without their words.
func (b bench) parts() []parts.Part {
	all := make([]parts.Part, len(b.states))
	for i, s := range b.states {
		all[i] = s.Part
	}
	return all
}

// rowPart is the part that rows of the catalog fill in, by the word of their kind.
var rowPart = map[string]string{"material": "mass", "rope": "rope", "ending": "ends", "wear": "rope", "pulley": "pulley", "stage": "gears", "teeth": "gears",
	"lamp": "lamps", "eyebolt": "eye", "shackle": "eye", "timber": "beam", "steel": "beam", "bag": "cage"}

// cardLinks are other pages that fill a part in.
func cardLinks(part, url string) []form.LinkView {
	if part == "motor" {
		return []form.LinkView{{Text: "Measure the motor yourself, or work it out from its plate", URL: url + "/motor"}}
	}
	var out []form.LinkView
	for _, l := range rowLinks(url) {
		if rowPart[l.URL[strings.LastIndex(l.URL, "=")+1:]] == part {
			out = append(out, l)
		}
	}
	return out
}
