package sheet

import (
	"slices"

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
	Years  string // a usual and a bad year
	Unsure string // where its years are worked out, while they are not
	Roomy  bool   // little stands on it: larger letters

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
	Wired   bool // there is a page of its wiring
}

// sheetState is which of the three sheets it is.
type sheetState struct {
	Band   page.BandView   // across the sheet
	Stores []page.BandView // of each store, where there are several or one is better than the whole
	More   string          // stores that did not fit
	Narrow bool            // their lines stand in three columns
	Causes []string        // what is not known, or what else forbids it
}

// loadStep is one load step with its box.
type loadStep struct{ Share, Mass string }

// How much of a text is printed.
const (
	sheetChecks = 5
	sheetCauses = 8 // reasons in the list; the others stand on screen
	sheetStores = 4 // lines of single stores
	sheetText   = 84

	sheetComes = 99 // letters of how it comes down without power
)

// sheetOf prints the plan sheet of a variant; its first hoist is the one that is drawn. The size of the paper and the head
// stand in v already.
func sheetOf(v sheetView, r model.VariantResult, p model.Project, of model.Variant, sys unit.System) sheetView {
	for _, line := range r.Headline[:min(2, len(r.Headline))] {
		v.Verdict = append(v.Verdict, form.Clip(line.In(sys), 2*sheetText))
	}
	hoist, more := drawnHoist(r)
	v.Wired = len(r.Stores) > 0
	v.sheetState = stateOf(r, sys)
	v.Sign = !v.Band.State.Worse(reason.Proven)
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
			if k := v.kinds.Of(s.Kind); k.Sheet.Set != nil {
				v.Set = append(v.Set, k.Sheet.Set(s, sys)...)
			}
		}
		v.Set = append(v.Set, panelSettings(of, sys)...)
		if len(r.Stores) > 0 && v.Band.State != reason.No {
			v.Order = v.kinds.Of(r.Stores[0].Kind).Sheet.Order
		}
	}
	if more > 0 {
		v.Set = append(v.Set, page.PairView{Name: "Other hoists", Value: page.Counted(more, "more hoist") + " in this plan: not on this sheet"})
	}
	v.fit(of.Parts, p.Currency)
	return v
}

func (v *sheetView) hoist(h *model.HoistResult, sys unit.System) {
	tightest := tightestOf(h.Lines())
	v.Checks = page.CheckViews(tightest, "", sys, nil, "")
	for i := range v.Checks {
		if slices.ContainsFunc(h.Because, func(r reason.Reason) bool { return r.Word == reason.Proven && r.ID == tightest[i].ID }) {
			v.Checks[i].Sign, v.Checks[i].Word = page.BandSigns[reason.Proven], "proven"
		}
		v.Checks[i].Part = form.Clip(v.Checks[i].Part, page.PaperName)
	}
	v.Set = hoistSettings(h, sys)
	if v.Band.State == reason.No { // nothing that reads like leave to run it
		v.Set = v.Set[1:]
	} else {
		for _, s := range h.Hazards.SwitchOrder {
			v.Order = append(v.Order, form.Clip(s, 2*sheetText))
		}
	}
	v.Drawing = page.DrawingOf(h, sys)
	v.steps(h, sys)
}

// steps are the load steps that the state allows: all of them, up to what a load test proved where one stands for a part, or
// the first alone.
func (v *sheetView) steps(h *model.HoistResult, sys unit.System) {
	if v.Band.Bars || v.Band.State == reason.No {
		return // not even the first step
	}
	if v.Band.State == reason.NotKnown {
		v.StepSay = "Only this step, and the mass at most " + page.FirstLift(sys) + " off the ground, until the list above is empty."
		v.Steps = loadSteps(h.Drive.Mass, sys, 25)
		return
	}
	v.StepSay = "With dead weight, from " + page.FirstLift(sys) + " first, then the whole travel. Nobody inside the keep-out. Tick each when nothing moved, slipped or got hot."
	if v.Band.Fall != "" {
		v.StepSay = "Lock the gate first. " + v.StepSay
	}
	mass := h.Drive.Mass
	if up, _, proven := page.Proof(h.Because); proven && up.Is && up.Val < mass.Or(up.Val) {
		mass = up
	}
	v.Steps = loadSteps(mass, sys, 25, 50, 75, 100, 125)
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
