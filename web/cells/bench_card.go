package cells

import (
	"net/url"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"sync"

	"github.com/a-h/templ"

	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/cell"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// cardView is the card of one part round its fields.
type cardView struct {
	Head    page.PartHeadView
	Rule    string // what the part must be, in a sentence
	Scale   string // SVG: what flows and what carries it
	Unsaid  string // what of it is not known
	Against []page.ReasonView
	Says    []string // checks and remarks
	Form    form.FormView
	Parts   []form.PartView
	Buy     *page.BuyView
	Read    *page.ReadView // where its numbers stand
	More    string         // address of all inputs
	Count   int
	Typical int // typical values in use
	Links   []form.LinkView
	Away    string // why its inputs stand on another page; empty where they stand here
}

// onCards makes the editor show the card of one part instead of the whole form. Which card that is follows from the design
// as it is saved.
func (h *cellsPage) onCards(at benchAt) {
	saved := h.Saved.Value
	card := sync.OnceValue(func() *bench { return h.benchOf(saved, h.whole(), at, nil) })
	whole := h.Form
	h.Form.Shown = func(refused []string) []form.Part[model.Variant] {
		b := card()
		if len(refused) > 0 {
			b = h.benchOf(saved, h.whole(), at, refused)
		}
		return form.Pick(whole.Parts, b.shown, func(string) bool { return false })
	}
	h.Grow = func(v *model.Variant) {
		if b := card(); len(v.Panels) == 0 && b.states[b.open].id == partPanels {
			v.Panels = []panel.Array{{}}
		}
	}
	tidy := h.Tidy
	h.Tidy = func(v *model.Variant) {
		tidy(v)
		if n := len(v.Panels); n > len(saved.Panels) && reflect.DeepEqual(v.Panels[n-1], panel.Array{}) {
			v.Panels = v.Panels[:n-1]
		}
	}
	h.Card = func() string {
		here := at
		here.part = card().states[card().open].id
		return here.query()
	}
	h.Next = func(typed url.Values) string { return nextOf(at, typed) }
	h.Where = func(path string) string { return page.FieldURL(at.url, path) }
	h.Answer = func(v model.Variant) (page.Answer, error) { return h.benchAnswer(v, at) }
	h.Lay = func(v page.EditorView, refused []string) templ.Component {
		b := h.benchOf(saved, h.whole(), at, refused)
		return benchPage(v, b.question(), b.cardOf(v))
	}
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

// cardOf prints the open card.
func (b *bench) cardOf(v page.EditorView) cardView {
	s := b.states[b.open]
	c := cardView{Form: v.Form, Parts: v.Form.Parts, Buy: b.buy(s), Away: s.why}
	c.Head = page.PartHeadView{Sign: draw.Sign(s.Word), Name: s.name, Word: word(s), Close: b.at.link(func(a *benchAt) { a.part, a.more = "", false }, "#part-"+s.id)}
	c.Against = page.ReasonsOf(s.Because, b.h.sys, b.h.links(b.v)).List
	for _, k := range s.Checks {
		if k.Word != model.NotKnown && !b.drawn(k) && !slices.ContainsFunc(s.Because, func(r reason.Reason) bool { return r.Word == reason.No }) {
			c.Says = append(c.Says, k.Say.In(b.h.sys))
		}
	}
	for _, f := range s.Remarks {
		if model.Join(b.prefix, f.Path) == b.ask { // the question says it
			continue
		}
		c.Says = append(c.Says, f.Say.In(b.h.sys))
	}
	c.Count = len(b.inputs(s.id))
	if s.page != "" {
		c.Links = []form.LinkView{{Text: s.name + " on the page Night load", URL: page.ProjectURL(b.h.project) + s.page}}
		return c
	}
	if !b.at.more && c.Count > len(s.first) {
		c.More = b.at.link(func(a *benchAt) { a.part, a.more = s.id, true }, "#card")
	}
	b.pictured(s.id, &c)
	if r, ok := read[s.id]; ok {
		c.Read = r.View(b.h.sys, b.at.part == s.id && s.Word == path.NotKnown)
	}
	switch s.id {
	case partBattery:
		c.Typical = len(b.c.Resolved.Typical)
	case partPanels, partPanelCable, partController:
		c.Links = []form.LinkView{{Text: "The page Panels and stores", URL: page.VariantURL(b.h.project, b.h.Saved.ID)}}
	}
	return c
}

// drawn reports whether the scale of a card shows a check that holds.
func (b *bench) drawn(k model.LineCheck) bool {
	return k.Word == model.Holds && (k.Quantity == unit.Currents || k.ID == "volts_string")
}

// pictured adds the rule of a part and its scale.
func (b *bench) pictured(id string, c *cardView) {
	switch id {
	case partFuse, partCable, partBoard:
		c.Rule = map[string]string{partFuse: "The fuse is rated above the current that flows and below the current that the cable carries.", partCable: "The cable carries more current than its fuse lets through.",
			partBoard: "The board protects the cells: it must let through what flows, and must not charge them in frost."}[id]
		s, unsaid := b.amperes()
		c.Unsaid = unsaid
		if len(s.Flows)+len(s.Ends) > 0 {
			c.Scale = page.SvgOf(s.Draw)
		}
	case partPanels:
		c.Rule = "Cold panels make more volts: count with the coldest morning."
		if s, ok := b.volts(); ok {
			c.Scale = page.SvgOf(s.Draw)
		}
	case partController:
		c.Rule = "It withstands the volts of the panels in the cold, and what it gives does not overload battery and fuse."
	case partPanelCable:
		c.Rule = "It carries the current of all panels on it, and loses at most 3 % of their voltage."
	case partBattery:
		c.Rule = "Use new, equal cells of one kind. What the label does not say counts as typical of the kind."
	case partPlace:
		c.Rule = "Put the battery where nobody sleeps, and not on the way out. Put a smoke alarm beside it."
	}
}

// amperes are what flows through the battery's fuse and what carries it, on one axis, and what of it is not known.
func (b *bench) amperes() (s draw.Scale, unsaid string) {
	sys, d := b.h.sys, b.c.Design
	amps := func(i unit.Current) string { return unit.Currents.Format(float64(i), sys) }
	flow := func(i unit.Current, say, look string, pale bool) {
		if i > 0 {
			s.Flows = append(s.Flows, draw.ScaleMark{Say: amps(i) + " " + say, Value: float64(i), Look: look, Pale: pale})
		}
	}
	var start unit.Current
	if i := b.bank(); i >= 0 {
		bank := b.whole.Peak.Banks[i]
		flow(bank.Current, "at night, all at once", "night", false)
		if bank.Start > bank.Current {
			start = bank.Start
		}
	}
	if b.c.Resolved.WhyNot == "" {
		flow(b.whole.Wiring.Charge, "from the sun", "sun", false)
	}
	flow(start, "for a start", "night", true)
	var open []string
	end := func(name string, i unit.Current, known bool) {
		if !known {
			open = append(open, name)
			return
		}
		s.Ends = append(s.Ends, draw.ScaleMark{Say: name + " " + amps(i), Value: float64(i)})
	}
	end("fuse", d.Fuse.Or(0), d.Fuse.Is)
	most, ok := cell.Ampacity(d.CableArea.Or(0))
	end("cable", most, ok)
	if b.board {
		end("board", d.BoardMost.Or(0), d.BoardMost.Is)
	}
	s.Unit = "A"
	s.Title = "On one scale of amperes: " + said(s.Flows) + "; " + said(s.Ends)
	if len(open) > 0 {
		unsaid = "Not known: how many amperes " + strings.Join(open, " and ") + map[bool]string{true: " carries.", false: " carry."}[len(open) == 1]
		s.Title += ". " + unsaid
	}
	return s, unsaid
}

// said are some values of a scale in words.
func said(list []draw.ScaleMark) string {
	var out []string
	for _, m := range list {
		out = append(out, m.Say)
	}
	if len(out) == 0 {
		return "nothing"
	}
	return strings.Join(out, ", ")
}

// volts are the voltages of the string that makes most, from a hot day to the coldest morning, and what the controller
// withstands; false where it is not known how many panels stand in a row.
func (b *bench) volts() (s draw.Scale, ok bool) {
	var w model.StringVolts
	for _, one := range b.whole.Wiring.Strings {
		if one.Known && one.ColdWorst > w.ColdWorst {
			w = one
		}
	}
	if !w.Known {
		return s, false
	}
	sys := b.h.sys
	volts := func(v unit.Voltage) string { return unit.Voltages.FormatTo(float64(v), sys, 3, unit.Up) }
	add := func(v unit.Voltage, say string, pale bool) {
		s.Flows = append(s.Flows, draw.ScaleMark{Say: volts(v) + " " + say, Value: float64(v), Look: "sun", Pale: pale})
	}
	if w.Hot.Is {
		add(w.Hot.Val, "on a hot day, at work", true)
	}
	if sheet := b.v.Panels[w.At].Sheet; sheet != nil && sheet.Voc.Is {
		add(sheet.Voc.Val*unit.Voltage(w.InSeries), "open, at "+unit.Temperatures.Format(25, sys), true)
	}
	add(w.ColdWorst, "open, at "+unit.Temperatures.Format(b.whole.Wiring.ColdEnds[1], sys), false)
	if m := b.v.Controller.MaxInput; m.Is {
		s.Ends = append(s.Ends, draw.ScaleMark{Say: "controller " + unit.Voltages.Format(float64(m.Val), sys), Value: float64(m.Val)})
	}
	s.Unit = "V"
	s.Title = "Volts of " + strconv.Itoa(w.InSeries) + " in a row, on one scale: " + said(s.Flows) + "; " + said(s.Ends)
	return s, true
}
