package sheet

import (
	"fmt"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// sheetView is the printed page, ready to print.
type sheetView struct {
	page.PaperTop
	Back   string
	Letter bool
	Roomy  bool // little stands on it: larger letters

	kinds page.Kinds

	sheetState
	Waits   []page.RefusedOn // pages on which refused entries wait
	Verdict []string
	Drawing string
	Drawn   int // the greatest height of the drawing, mm
	Build   [][]string
	More    string // parts that did not fit
	Set     []page.PairView
	Checks  []page.CheckView
	Order   []string
	Steps   []loadStep
	StepSay string
	Caution []string
	Sign    bool
	Hoist   bool
}

// sheetState is which of the three sheets it is.
type sheetState struct {
	State   string // "ready", "not ready", "do not hang"
	Band    string // across the sheet
	Unknown []string
}

// loadStep is one load step with its box.
type loadStep struct{ Share, Mass string }

// How much of a text is printed.
const (
	sheetChecks  = 5
	sheetUnknown = 12
	sheetText    = 84

	sheetComes = 99 // letters of how it comes down without power
)

// sheetOf prints the plan sheet of a variant; its first hoist is the one that is drawn. The size of the paper and the head
// stand in v already.
func sheetOf(v sheetView, r model.VariantResult, p model.Project, of model.Variant, sys unit.System) sheetView {
	for _, line := range r.Headline[:min(2, len(r.Headline))] {
		v.Verdict = append(v.Verdict, form.Clip(line.In(sys), 2*sheetText))
	}
	hoist, more := drawnHoist(r)
	v.sheetState = stateOf(r, sys)
	v.Sign = v.State == "ready"
	v.Caution = sheetCautions(hoist)
	if hoist != nil {
		v.Hoist = true
		v.hoist(hoist, sys)
		if n := guessed(of); n > 0 {
			v.Set = append([]page.PairView{{Name: "Guessed", Value: page.Counted(n, "value") + " of this plan, typical and not yours yet"}}, v.Set...)
		}
		v.Set = append(v.Set, besideHoist(v.kinds, r, of, sys)...)
	} else {
		for _, s := range r.Stores {
			if k := v.kinds.Of(s.Kind); k.Set != nil {
				v.Set = append(v.Set, k.Set(s, sys)...)
			}
		}
		v.Set = append(v.Set, panelSettings(of, sys)...)
		if len(r.Stores) > 0 && v.State != "do not hang" {
			v.Order = v.kinds.Of(r.Stores[0].Kind).Order
		}
	}
	if more > 0 {
		v.Set = append(v.Set, page.PairView{Name: "Other hoists", Value: page.Counted(more, "more hoist") + " in this plan: not on this sheet"})
	}
	v.fit(of.Parts, p.Currency)
	return v
}

// stateOf is the state of a variant's sheet.
func stateOf(r model.VariantResult, sys unit.System) (v sheetState) {
	switch r.Ready {
	case reason.No:
		v.State = "do not hang"
		v.Band = page.DoNot(r) + "."
		if len(r.Because) > 0 {
			v.Band += " " + form.Whole(r.Because[0].Text().In(sys), 2*sheetText)
		}
		if fellSince(r) {
			v.Band += " It fell or took a shock, and not every part was looked at since."
		}
	case reason.NotKnown:
		v.State = "not ready"
		for _, b := range r.Because {
			why := b.Text().In(sys)
			name, _, _ := strings.Cut(why, ". Not known") // what is missing there stands on the page of the hoist
			if rest, open := strings.CutPrefix(name, "Not known "); open {
				name, _, _ = strings.Cut(page.FirstSentence(form.SentenceCase(rest)), ":")
			}
			v.Unknown = append(v.Unknown, name)
		}
		room := page.PaperName
		switch n := len(v.Unknown); {
		case n <= 2:
			room = 2 * sheetText
		case n <= 6:
			room = sheetText
		}
		for i, name := range v.Unknown {
			v.Unknown[i] = form.Clip(name, room)
		}
		things := "things are"
		if len(v.Unknown) == 1 {
			things = "thing is"
		}
		v.Band = fmt.Sprintf("NOT READY: %d %s not known.", len(v.Unknown), things)
		if n := len(v.Unknown); n > sheetUnknown {
			v.Unknown = append(v.Unknown[:sheetUnknown], fmt.Sprintf("and %d more, on the pages of the plan", n-sheetUnknown))
		}
	default:
		v.State, v.Band = "ready", "READY for use: nothing is open."
		if r.Facts.Lifts {
			v.Band = "READY for the load steps: all checks hold or are tight."
		}
	}
	return v
}

func (v *sheetView) hoist(h *model.HoistResult, sys unit.System) {
	v.Checks = page.CheckViews(tightestOf(h.Checks), "", sys, nil, "")
	for i := range v.Checks {
		v.Checks[i].Part = form.Clip(v.Checks[i].Part, page.PaperName)
	}
	v.Set = hoistSettings(h, sys)
	if v.State == "do not hang" { // nothing that reads like leave to run it
		v.Set = v.Set[1:]
	} else {
		for _, s := range h.Hazards.SwitchOrder {
			v.Order = append(v.Order, form.Clip(s, 2*sheetText))
		}
	}
	var clashes []string
	v.Drawing, clashes = page.DrawingOf(h, sys)
	for _, say := range clashes {
		v.Set = append([]page.PairView{{Name: "Cannot be built so", Value: say}}, v.Set...)
	}
	switch v.State {
	case "ready":
		v.StepSay = "With dead weight, from " + page.FirstLift(sys) + " first, then the whole travel. Nobody inside the keep-out. Tick each when nothing moved, slipped or got hot."
		v.Steps = loadSteps(h.Drive.Mass, sys, 25, 50, 75, 100, 125)
	case "not ready":
		if page.LooksOwed(h.Checks) > 0 { // not even the first step
			v.Band = "NOT READY. Hang nothing: after a fall or a shock not every part was looked at."
			break
		}
		v.StepSay = "Only this step, and the mass at most " + page.FirstLift(sys) + " off the ground, until the list above is empty."
		v.Steps = loadSteps(h.Drive.Mass, sys, 25)
	}
}

func loadSteps(m unit.Known[unit.Mass], sys unit.System, shares ...float64) []loadStep {
	var out []loadStep
	for _, s := range shares {
		mass := "mass not known"
		if v, ok := m.Value(); ok {
			mass = unit.Masses.Format(float64(v)*s/100, sys)
		}
		out = append(out, loadStep{unit.Rounded(s, 3) + " %", mass})
	}
	return out
}

// tightestOf are the checks that the sheet has room for, as they are sorted; what is only counted and is enough, such as two
// holds where two are wanted, stands behind what is strained.
func tightestOf(checks []path.Check) []path.Check {
	strained := func(c path.Check) bool {
		return c.Demand.In != unit.Pieces || c.Word == path.GivesWay || c.Word == path.NotKnown
	}
	var first, then []path.Check
	for _, c := range checks {
		if strained(c) {
			first = append(first, c)
		} else {
			then = append(then, c)
		}
	}
	all := append(first, then...)
	return all[:min(len(all), sheetChecks)]
}

// sheetCautions are the short ones that stand on every sheet.
func sheetCautions(h *model.HoistResult) []string {
	if h == nil {
		return []string{"Not for medical devices or alarms.", "Not in bedrooms, escape routes or lofts; smoke alarm near it.", "A fuse at each source, for direct current, close to it.",
			"Nothing here feeds house wiring; a licensed person connects an inverter. Local codes come first."}
	}
	return []string{
		"Never stand, reach or work under the mass. Not for persons: nobody rides, nobody tests with a person.",
		"Work brake and pawl from outside the keep-out and beside the rope's line, by a cord.",
		"Block the mass, on the ground or on a rated prop, before touching drive, rope or brake.",
		"Lamps stay plugged in while it comes down. Sun and lamps never on the motor together.",
		"After any fall or shock: rope, knots, pulleys, pins, container and base are not known until each was looked at.",
		"Not for medical devices or alarms. A licensed person checks the beam and any house wiring; local codes come first.",
	}
}
