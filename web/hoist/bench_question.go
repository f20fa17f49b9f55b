package hoist

import (
	"slices"
	"strings"

	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/lift/parts"
	"duskweight/web/page"
)

// question prints the next question. form makes the field of it.
func (b bench) question(v page.EditorView) page.AskView {
	if b.ask.Part < 0 {
		return page.AskView{All: true, Done: "Every part of this hoist has its answers.", Sheet: page.VariantURL(b.h.project, b.h.Saved.ID) + "/sheet"}
	}
	s := b.states[b.ask.Part]
	q := page.AskView{Ask: s.Ask, Settles: b.settles(), Part: s.Name, Path: b.said.At + "." + b.ask.Path}
	if r, ok := readingOf(s.ID, *b.v.Stores[b.h.i].Hoist); ok {
		q.Thing = r.Thing
	}
	q.Field, q.Also = b.h.FieldAt(b.v, q.Path)
	if q.Field != nil && q.Field.Problem == "" {
		pictured(q.Field)
	}
	if q.Field == nil { // a list, or something of another page: its card asks
		q.Path = ""
	}
	q.Later = b.at.link(func(a *benchAt) { a.part, a.later = "", append(a.later, b.ask.Path) }, "#next")
	if asOf(s.Part) != "" && b.hasLabel() {
		q.NoLabel = true
		q.Buy = b.at.link(func(a *benchAt) { a.part, a.more = s.ID, false }, "#buy")
	}
	return q
}

// labelled are the inputs that are read on a label, a reel or a stamp, and never guessed.
var labelled = []string{"breaking_load_n", "working_load_n", "eye_working_load_n", "hanger_working_load_n", "fixing_working_load_n", "rated_torque_nm", "torque_nm", "force_n", "coupling_torque_nm"}

func (b bench) hasLabel() bool {
	return slices.Contains(labelled, b.ask.Path[strings.LastIndexByte(b.ask.Path, '.')+1:])
}

// asOf is what the market list calls a part; "" for what is not bought.
func asOf(p parts.Part) cost.As {
	switch p.ID {
	case "rope":
		return cost.AsRope
	case "cage":
		return cost.AsContainer
	case "eye":
		return cost.AsHanger
	case "weights":
		return cost.AsBaseWeight
	case "gears":
		return cost.AsGear
	case "shaft":
		return cost.AsCoupling
	}
	switch {
	case strings.HasPrefix(p.ID, "pulley"):
		return cost.AsPulley
	case strings.HasPrefix(p.ID, "hold"):
		return cost.AsHold
	}
	return ""
}

// buy is what to buy for a part that is not settled, or nil.
func (b bench) buy(s parts.State) *page.BuyView {
	as := asOf(s.Part)
	if as == "" {
		return nil
	}
	needs := model.Needs(b.v, b.whole)
	for i, n := range needs {
		if n.As != as || !b.isNeed(s, n) || len(n.Want) == 0 {
			continue
		}
		out := &page.BuyView{Title: n.Name, Post: page.VariantURL(b.h.project, b.h.Saved.ID) + "/parts"}
		out.Say, _ = page.WantText(n, b.h.sys)
		out.Sizes = page.SizesText(n, b.h.sys)
		_, open := model.Matched(b.v.Parts, needs)
		if slices.Contains(open, i) && !n.Want[0].None {
			out.As = string(n.As)
		}
		if s.ID == "rope" {
			out.Why = b.withSlackSwitch(n)
		}
		return out
	}
	return nil
}

// isNeed reports whether a need is that of the part: the row of its label, where the design names one.
func (b bench) isNeed(s parts.State, n model.Need) bool {
	if n.At == "" {
		return true
	}
	at := n.At[min(len(n.At), len(b.said.At)+1):]
	all := b.parts()
	i := parts.Owner(all, at)
	return i >= 0 && all[i].ID == s.ID
}

// withSlackSwitch says what the rope's label must say once a switch stops the drum when the rope goes slack, where that is
// less: a mass that drops into a slack rope pulls several times its weight.
func (b bench) withSlackSwitch(now model.Need) string {
	if b.v.Stores[b.h.i].Hoist.Holds.SlackSwitch == "yes" {
		return ""
	}
	v := document.Clone(b.v)
	v.Stores[b.h.i].Hoist.Holds.SlackSwitch = "yes"
	for _, n := range model.Needs(v, b.h.ground().Evaluate(v)) {
		if n.As == now.As && len(n.Want) > 0 && n.Want[0].Least.Is && now.Want[0].Least.Is && n.Want[0].Least.Val < now.Want[0].Least.Val*0.999 {
			text, _ := page.WantText(n, b.h.sys)
			return "It is so much because no slack switch is named: the mass may drop into a slack rope. With a slack switch: " + text + "."
		}
	}
	return ""
}
