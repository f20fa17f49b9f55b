package hoist

import (
	"slices"
	"strings"

	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/lift/parts"
	"duskweight/web/form"
	"duskweight/web/page"
)

// questionView is the one question that is asked next, with at most three answers.
type questionView struct {
	Ask     string // "What does the reel say?"
	Settles string
	Field   *form.FieldView // the input that answers it
	Path    string
	Also    []hiddenValue // the lengths of the lists that its row stands in
	Part    string
	Later   string // address that puts it behind
	NoLabel bool   // it is read on a label: the way out is called so
	Buy     string // address that tells what to buy; "" where nothing is bought
	All     bool   // nothing is left to ask
	Sheet   string
}

// Few reports whether the question has so few answers that each is a button.
func (q questionView) Few() bool { return q.Field.Kind == form.AsChoice && len(q.Field.Options) <= 4 }

type hiddenValue struct{ Name, Value string }

// question prints the next question. form makes the field of it.
func (b bench) question(v page.EditorView) questionView {
	if b.ask.Part < 0 {
		return questionView{All: true, Sheet: page.VariantURL(b.h.project, b.h.Saved.ID) + "/sheet"}
	}
	s := b.states[b.ask.Part]
	q := questionView{Ask: s.Ask, Settles: b.settles(), Part: s.Name, Path: b.said.At + "." + b.ask.Path}
	q.Field, q.Also = b.field(b.ask.Path)
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

// field makes the field of one input, with the lengths of the lists that its row stands in.
func (b bench) field(p string) (*form.FieldView, []hiddenValue) {
	hoist := b.said.At + "."
	f := b.h.Form
	f.Shown = func([]string) []form.Part[model.Variant] {
		return form.Pick(f.Parts, func(path string) bool { return path == hoist+p }, func(string) bool { return false })
	}
	v := document.Clone(b.v)
	f.Grow(&v, hoist+p)
	var field *form.FieldView
	var also []hiddenValue
	var find func(list []form.PartView)
	find = func(list []form.PartView) {
		for _, one := range list {
			switch {
			case one.Field != nil:
				field = one.Field
			case one.Group != nil:
				find(one.Group.Parts)
			case one.List != nil:
				also = append(also, hiddenValue{one.List.Path + form.RowsSuffix, page.Itoa(one.List.Count)})
				for _, row := range one.List.Rows {
					find(row.Parts)
				}
			}
		}
	}
	find(f.View(&v, nil, nil, b.h.sys).Parts)
	return field, also
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

// buyView is what to look for when a part is bought.
type buyView struct {
	Title string
	Say   string // the number, or why there is none
	Sizes string
	Why   string // what would make it smaller
	As    string // of the market list; "" where it stands there already
	Post  string // address of the list
}

// buy is what to buy for a part that is not settled, or nil.
func (b bench) buy(s parts.State) *buyView {
	as := asOf(s.Part)
	if as == "" {
		return nil
	}
	needs := model.Needs(b.v, b.whole)
	for i, n := range needs {
		if n.As != as || !b.isNeed(s, n) || len(n.Want) == 0 {
			continue
		}
		out := &buyView{Title: n.Name, Post: page.VariantURL(b.h.project, b.h.Saved.ID) + "/parts"}
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
	for _, n := range model.Needs(v, b.h.ground.Evaluate(v)) {
		if n.As == now.As && len(n.Want) > 0 && n.Want[0].Least.Is && now.Want[0].Least.Is && n.Want[0].Least.Val < now.Want[0].Least.Val*0.999 {
			text, _ := page.WantText(n, b.h.sys)
			return "It is so much because no slack switch is named: the mass may drop into a slack rope. With a slack switch: " + text + "."
		}
	}
	return ""
}
