package hoist

import (
	"net/url"
	"strings"
	"sync"

	"github.com/a-h/templ"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/parts"
	"duskweight/web/form"
	"duskweight/web/page"
)

// onCards makes the editor show the card of one part instead of the whole form. Which card that is follows from the design
// as it is saved, and is worked out when a page is printed: an answer alone needs no card.
func (h *hoistPage) onCards(at benchAt) {
	saved, hoist := h.Saved.Value, model.HoistPath(h.i)
	all := parts.All(*saved.Stores[h.i].Hoist)
	card := sync.OnceValue(func() bench { return h.benchOf(saved, h.whole(), at, nil) })
	whole := h.Form
	h.Form.Shown = func(refused []string) []form.Part[model.Variant] {
		b := card()
		if len(refused) > 0 {
			b = h.benchOf(saved, h.whole(), at, refused)
		}
		shows := b.shown(all)
		return form.Pick(whole.Parts, func(path string) bool { return shows(strings.TrimPrefix(path, hoist+".")) },
			func(list string) bool { return b.wholeList(all, strings.TrimPrefix(list, hoist+".")) })
	}
	h.Grow = func(v *model.Variant) { whole.Grow(v, card().rowsShown(hoist)...) }
	h.Tidy = func(v *model.Variant) { tidyRows(v.Stores[h.i].Hoist, saved.Stores[h.i].Hoist) }
	h.Card = func() string {
		here := at
		here.part = card().states[card().open].ID
		return here.query()
	}
	h.Next = func(typed url.Values) string { return nextOf(at, typed) }
	h.Where = func(path string) string {
		return page.FieldURL(at.url, path)
	}
	h.Answer = func(v model.Variant) (page.Answer, error) { return h.benchAnswer(v, at) }
	h.Lay = func(v page.EditorView, refused []string) templ.Component { return h.lay(v, at, refused) }
}

// nextOf is what opens after a save: the next question after an answer to one, the same card after a card.
func nextOf(at benchAt, typed url.Values) string {
	at.field, at.later = "", nil
	if typed.Get(page.NameAsked) != "" {
		at.part, at.more = "", false
		return at.query() + "#next"
	}
	if typed.Get(form.NameDo) != "" { // the element follows from the button
		return at.query()
	}
	return at.query() + "#card"
}

// filledOf says which inputs of a hoist hold something.
func filledOf(h *lift.Hoist) map[string]bool {
	out := map[string]bool{}
	own := *h
	form.Form[lift.Hoist]{}.Walk(hoistInputs(), &own, func(in *form.Input[lift.Hoist]) { out[in.Path] = in.Show(&own, 0) != "" })
	return out
}

// wholeList reports whether the open card owns a list, so that it may get more rows there.
func (b bench) wholeList(all []parts.Part, list string) bool {
	i := parts.Owner(all, list)
	if i < 0 || all[i].ID != b.states[b.open].ID {
		return false
	}
	return list != "reeving.sheaves" && list != "holds.holds" && list != "holds.upper_stops" // their rows have cards of their own
}

// rowsShown are the paths of rows that the card shows though the design may not have them yet.
func (b bench) rowsShown(hoist string) []string {
	var out []string
	for _, p := range b.states[b.open].First {
		if list, _, ok := strings.Cut(p, "[]"); ok {
			p = list + "[0]"
		}
		out = append(out, hoist+"."+p)
	}
	if b.ask.Part == b.open {
		out = append(out, hoist+"."+b.ask.Path)
	}
	return out
}

// tidyRows takes out the rows at the end of a list that a card made and nobody filled. saved is the hoist as it was.
func tidyRows(h, saved *lift.Hoist) {
	h.Mass = trimmed(h.Mass, len(saved.Mass))
	h.Reeving.Sheaves = trimmed(h.Reeving.Sheaves, len(saved.Reeving.Sheaves))
	h.Train.Stages = trimmed(h.Train.Stages, len(saved.Train.Stages))
	h.Lower.Loads = trimmed(h.Lower.Loads, len(saved.Lower.Loads))
	h.Structure.Posts = trimmed(h.Structure.Posts, len(saved.Structure.Posts))
	h.Holds.Holds = trimmed(h.Holds.Holds, len(saved.Holds.Holds))
	h.Holds.UpperStops = trimmed(h.Holds.UpperStops, len(saved.Holds.UpperStops))
}

// trimmed takes blank rows off the end, down to a number of rows.
func trimmed[R comparable](rows []R, least int) []R {
	var blank R
	for len(rows) > least && rows[len(rows)-1] == blank {
		rows = rows[:len(rows)-1]
	}
	return rows
}
