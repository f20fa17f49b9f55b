package cells

import (
	"slices"

	"duskweight/internal/model"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/reason"
	"duskweight/web/form"
	"duskweight/web/page"
)

// next is the input that is asked next: one that was refused; what the battery is; what its own reasons name; what its parts
// need; then panels, controller and what the project says. What was put behind comes last of all, and is never dropped.
func (b *bench) next(refused []string) string {
	var all []string
	all = append(all, refused...)
	for _, p := range b.inputs(partBattery) {
		if s := b.state(partBattery); slices.Contains(s.Open, p) && slices.Contains(s.first, keyOf(p, b.prefix)) {
			all = append(all, p)
		}
	}
	for _, own := range []bool{true, false} {
		for _, s := range b.states {
			for _, p := range s.Open {
				if model.Within(p, b.prefix) == own {
					all = append(all, p)
				}
			}
		}
	}
	later := ""
	for _, p := range all {
		if !slices.Contains(b.at.later, p) {
			return p
		}
		if later == "" {
			later = p
		}
	}
	return later
}

// asked are the questions by the key of their input; the rest ask by their label.
var asked = map[string]string{
	"kind": "Which kind of battery is it?", "block_capacity_c": "Which kind of battery is it?", "block_voltage_v": "Which kind of battery is it?",
	"cells_are": "Are the cells new and alike?", "management_board": "Does a board stop charging in the cold?", "board_max_a": "How much does the board let through?",
	"place": "Where is the battery?", "vent_area_m2": "How large are the openings for air?",
	"charge_rate_per_h": "How fast may the battery be charged?",
	"fuse_a":            "Which fuse is close to the battery?", "fuse_distance_m": "How far is the fuse from the battery?", "breaking_a": "Which short circuit does the fuse end?",
	"cable_area_m2": "How thick is the battery cable?", "cable_length_m": "How long is the battery cable?",
	"panels.count": "How many panels are there?", "panels.panel_w": "What does one panel give?", "panels.sheet.panels_in_series": "How many panels are in a row?",
	"panels.sheet": "What does the panel’s data sheet say?", "panels.cable_area_m2": "How thick is the panel cable?",
	"controller.max_input_v": "Which voltage does the controller withstand?", "controller.licensed": "Who wires what is above 60 V?",
}

// settles says why the question comes now.
func (b *bench) settles(path string) string {
	switch keyOf(path, b.prefix) {
	case "kind", "block_capacity_c", "block_voltage_v":
		return "Everything else follows from it."
	case "fuse_distance_m":
		return "Only the fuse ends a short circuit in the cable behind it."
	}
	n := 0
	for _, r := range b.whole.Because {
		if r.Path == path {
			n++
		}
	}
	if n > 0 {
		return "Your answer settles " + page.Counted(n, "check") + "."
	}
	return "Without it the part stays not known."
}

// question prints the next question.
func (b *bench) question() page.AskView {
	variant := page.VariantURL(b.h.project, b.h.Saved.ID)
	if b.ask == "" {
		return page.AskView{All: true, Done: "Every part of this battery has its answers.", Sheet: variant + "/sheet"}
	}
	s := b.state(ownerOf(b.ask, b.prefix, b.board))
	if s == nil { // refused, and of no part
		s = b.state(partBattery)
	}
	q := page.AskView{Part: s.name, Path: b.ask, Settles: b.settles(b.ask)}
	q.Thing = read[s.id].Thing
	label := b.h.labels[b.ask]
	q.Ask = asked[keyOf(b.ask, b.prefix)]
	if q.Ask == "" && label != "" {
		q.Ask = s.name + ": " + label + "?"
	}
	switch {
	case s.page != "":
		q.Ask = b.reasonAsk(s, b.ask)
		q.Open = &form.LinkView{Text: "Answer on the page Night load", URL: b.h.links(b.v)(b.ask).URL}
	default:
		if q.Field, q.Also = b.h.FieldAt(b.v, b.ask); q.Field == nil {
			q.Open = &form.LinkView{Text: "Answer on its card", URL: b.at.card(s.id)}
		}
	}
	if q.Ask == "" {
		q.Ask = b.reasonAsk(s, b.ask)
	}
	q.Later = b.at.link(func(a *benchAt) { a.part, a.later = "", append(a.later, b.ask) }, "#next")
	if b.buy(*s) != nil {
		q.Buy = b.at.link(func(a *benchAt) { a.part, a.more = s.id, false }, "#buy")
	}
	return q
}

// reasonAsk asks in the words of the reason that waits for a path.
func (b *bench) reasonAsk(s *state, path string) string {
	for _, r := range s.Because {
		if r.Path == path && r.Word == reason.NotKnown {
			return r.Short().In(b.h.sys)
		}
	}
	return s.name + ": what is not known?"
}

// marketPart is what the market list calls a part; what it does not name is not bought by a number.
var marketPart = map[string]cost.As{partFuse: cost.AsFuse, partCable: cost.AsCable}

// buy is what to look for when a part of the battery is bought, nil where nothing is or where it is there.
func (b *bench) buy(s state) *page.BuyView {
	as := marketPart[s.id]
	if as == "" || s.id == partFuse && b.c.Design.Fuse.Is || s.id == partCable && b.c.Design.CableArea.Is {
		return nil
	}
	needs := model.Needs(b.v, b.whole)
	for i, n := range needs {
		if n.As != as || len(n.Want) == 0 || len(b.c.Needs(b.prefix)) == 0 {
			continue
		}
		out := &page.BuyView{Title: n.Name, Sizes: page.SizesText(n, b.h.sys), Why: n.Look.In(b.h.sys), Post: page.VariantURL(b.h.project, b.h.Saved.ID) + "/parts"}
		out.Say, _ = page.WantText(n, b.h.sys)
		if _, open := model.Matched(b.v.Parts, needs); slices.Contains(open, i) && !n.Want[0].None {
			out.As = string(n.As)
		}
		return out
	}
	return nil
}
