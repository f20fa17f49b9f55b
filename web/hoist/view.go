package hoist

import (
	"cmp"
	"slices"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// hoistView is the answer of one hoist, ready to print.
type hoistView struct {
	Headline string
	More     []string
	Facts    []page.FactView
	Against  page.ReasonsView
	Flags    []page.FlagView
	Checks   []page.CheckView
	Up       []page.PairView
	Down     []page.PairView
	Heat     []page.PairView
	Trouble  []troubleView // when it goes wrong
	Direct   *directView   // the panel straight on the motor
	Motor    motorView
	URL      string // of the page; what follows the answer has its own under it
	Fits     string // where other parts are tried in it; empty for none
	MayOpen  []string
	Cures    []string
	Missing  []form.LinkView
	Round    []page.QuestionView
	Keep     []page.PairView // drop and keep-out
	Cautions []string
	Order    []string
	Wiring   page.WiringView
	Drawing  string // SVG
}

// hoistViewOf prints store i of a variant. here is the address of its page, fields that of the page on which its inputs stand.
func hoistViewOf(r model.VariantResult, i int, sys unit.System, labels map[string]string, here, fields string) hoistView {
	h := model.HoistOf(r.Stores[i])
	d := h.Drive
	at := model.HoistPath(i)
	v := hoistView{Facts: page.FactsOf(r, sys), Checks: page.CheckViews(h.Lines(), at, sys, labels, fields), MayOpen: d.Lowering.MayOpen, Order: h.Hazards.SwitchOrder}
	v.Headline, v.More = page.HeadlineAndGiven(r, sys)
	for _, f := range d.Flags {
		v.Flags = append(v.Flags, page.FlagView{Say: f.Say.In(sys), Bad: f.Bad, Links: []form.LinkView{page.FlagLink(at, f.Path, labels, fields)}})
	}
	v.Flags = page.SaidOnce(v.Flags)
	slices.SortStableFunc(v.Flags, func(a, b page.FlagView) int { return cmp.Compare(page.Badness(b), page.Badness(a)) })
	v.Up, v.Down, v.Heat, v.Trouble = raisingRows(d, h.Brush, h.Direct, sys), loweringRows(d, h.Brush, sys), heatRows(d, sys), troublesOf(h, sys)
	v.Direct, v.Motor = directViewOf(h.Direct, sys, here), motorViewOf(h, sys, at, here)
	v.Motor.Box = boxOf(h, sys, here, 0)
	for _, c := range d.Lowering.Cures {
		v.Cures = append(v.Cures, c.Say.In(sys))
	}
	for _, m := range r.Missing {
		if model.Within(m.Path, at) {
			l := page.FieldLink(m.Path, labels, fields)
			l.Text += ": " + m.Wants.In(sys)
			v.Missing = append(v.Missing, l)
		}
	}
	v.Round = page.RoundOf(h, sys)
	for _, c := range h.Hazards.Cautions {
		v.Cautions = append(v.Cautions, c.Say.In(sys))
	}
	v.Keep = keepRows(h, sys)
	v.Wiring = page.WiringOf(h)
	v.Drawing = page.DrawingOf(h, sys)
	v.URL = here
	return v
}

func yesNo(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}
