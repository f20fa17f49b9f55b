package sheet

import (
	"slices"

	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/cost"
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

	kinds      page.Kinds
	firstStore int             // how many of the settings are of the first store, where no hoist is drawn
	beside     []page.PairView // the settings of what stands beside the hoist

	sheetState
	Waits   []page.RefusedOn // pages on which refused entries wait
	Verdict []string
	Drawing string            // of the hoist
	Key     []draw.Note       // parts that are numbered in the drawing
	Remarks []string          // where the drawing is not as the numbers say
	Circuit *page.CircuitView // the wiring of a plan without a hoist
	Buy     string            // how many parts, in a line
	Set     []page.PairView
	Checks  []page.CheckView
	Order   []string
	OrderAt string // where the order of switching stands, if there is no room for it
	Steps   []loadStep
	StepSay string
	Caution []string
	Sign    bool
	Hoist   bool
	Wired   bool // there is a page of its wiring
}

// sheetState is which of the three sheets it is.
type sheetState struct {
	Band       page.BandView   // across the sheet
	Stores     []page.BandView // of each store, where there are several or one is better than the whole
	More       string          // stores that did not fit
	unnumbered int             // of the last causes: how many more there are
	Causes     []string        // what is not known, or what else forbids it
}

// InLines reports whether the reasons stand one under the other: what forbids a plan, with its number, or one or two things.
func (v sheetState) InLines() bool { return v.Band.State == reason.No || len(v.Causes) <= 2 }

// under are the lines right under the drawing: the key of its numbers, and where it is not as the numbers say.
func (v *sheetView) under() (out []string) {
	key := ""
	for i, n := range v.Key {
		if i > 0 {
			key += "; "
		}
		key += n.Head
		if n.Text != "" {
			key += ", " + n.Text
		}
	}
	if key != "" {
		out = append(out, "Numbers in the drawing: "+key+".")
	}
	return append(out, v.Remarks...)
}

// circuitUnits is the width of the wiring in its own units, circuitHigh the height of what is drawn of many batteries.
const (
	circuitUnits = page.CircuitWide
	circuitHigh  = 280
)

// circuitWide is how wide the wiring is drawn, mm.
func circuitWide(letter bool) float64 {
	if letter {
		return drawnWideLetter
	}
	return drawnWide
}

// loadStep is one load step with its box.
type loadStep struct{ Share, Mass string }

// How much of a text is printed.
const (
	sheetChecks = 5
	sheetCauses = 8 // reasons in the list; the others stand on screen
	sheetStores = 4 // lines of single stores
	sheetText   = 84
	sheetReason = 190 // letters of a reason that forbids a plan

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
	v.Caution = append(sheetCautions(hoist), backupCautions(of.Backup)...)
	if hoist != nil {
		v.Hoist = true
		v.hoist(hoist, r, sys)
		if n := guessed(of); n > 0 {
			v.Set = append([]page.PairView{{Name: "Guessed", Value: page.Counted(n, "value") + " of this plan, typical and not yours yet"}}, v.Set...)
		}
		v.beside = besideHoist(v.kinds, r, of, sys)
		v.Set = append(v.Set, v.beside...)
	} else {
		for _, s := range r.Stores {
			if k := v.kinds.Of(s.Kind); k.Sheet.Set != nil {
				v.Set = append(v.Set, k.Sheet.Set(s, sys)...)
			}
			if v.firstStore == 0 {
				v.firstStore = len(v.Set)
			}
		}
		v.Set = append(v.Set, panelSettings(of, sys)...)
		if len(r.Stores) > 0 {
			c := page.CircuitOf(of, r, sys)
			v.Circuit = &c
		}
		if len(r.Stores) > 0 && v.Band.State != reason.No {
			v.Order = v.kinds.Of(r.Stores[0].Kind).Sheet.Order
		}
	}
	v.Set = append(v.Set, backupSet(of.Backup, sys)...)
	if more > 0 {
		v.Set = append(v.Set, page.PairView{Name: "Other hoists", Value: page.Counted(more, "more hoist") + " in this plan: not on this sheet"})
	}
	v.Set = drawnLast(v.Set)
	v.Buy = buyLine(of.Parts)
	v.fit()
	return v
}

func (v *sheetView) hoist(h *model.HoistResult, r model.VariantResult, sys unit.System) {
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
		for _, s := range h.Hazards.SwitchOrder[1:] { // the first stands in the drawing, beside the switch
			v.Order = append(v.Order, form.Clip(s, 2*sheetText))
		}
	}
	v.draw(h, r, sys)
	v.steps(h, sys)
}

// The drawing of the sheet, mm: 40 % of A4; on Letter as wide as the paper allows.
const (
	drawnWide, drawnHigh             = 188, 133
	drawnWideLetter, drawnHighLetter = 194, 124
)

// draw draws the hoist.
func (v *sheetView) draw(h *model.HoistResult, r model.VariantResult, sys unit.System) {
	p := draw.Paper{Scene: page.PaperScene(h, sys), Wide: drawnWide, High: drawnHigh, Notes: notesOf(h, sys), Drive: driveBox(h, sys), Switch: switchBox(h, sys), Foot: keepOutLines(h, sys)}
	if v.Letter {
		p.Wide, p.High = drawnWideLetter, drawnHighLetter
	}
	p.Numbers = numbersOf(p.Scene.Marks, r, sys)
	for i, d := range p.Scene.ChainText() { // where the hole goes, right behind the drum
		p.Drive.Lines = slices.Insert(p.Drive.Lines, 1+i, draw.Line{Text: d})
	}
	v.Drawing, v.Key, v.Remarks = page.SvgOf(p.Draw), p.Key(), p.Scene.Notes
}

// buyLine says how many parts there are and how they come; their list has its own page.
func buyLine(parts []cost.Part) string {
	if len(parts) == 0 {
		return "No parts are listed on the page Buy and make."
	}
	var how []string
	for _, get := range []cost.Get{cost.GetHave, cost.GetBuy, cost.GetMake, cost.GetBorrow} {
		n := 0
		for _, p := range parts {
			if p.Get == get {
				n++
			}
		}
		if n > 0 {
			how = append(how, page.Itoa(n)+" to "+string(get))
		}
	}
	return page.Counted(len(parts), "part") + ": " + page.Clauses(", ", how...) + ". The list has a page of its own, Buy and make."
}

// steps are the load steps that the state allows: all of them, up to what a load test proved where one stands for a part, or
// the first alone.
func (v *sheetView) steps(h *model.HoistResult, sys unit.System) {
	if v.Band.Bars || v.Band.State == reason.No {
		return // not even the first step
	}
	if v.Band.State == reason.NotKnown {
		v.StepSay = "Do only this step, and lift the mass at most " + page.FirstLift(sys) + " off the ground, until the list above is empty."
		v.Steps = loadSteps(h.Drive.Mass, sys, 25)
		return
	}
	v.StepSay = "Use dead weight. Lift it " + page.FirstLift(sys) + " first, then the whole travel. Let nobody inside the keep-out. Tick if nothing slipped or got hot."
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
			mass = page.TestMass(unit.Mass(float64(v)*s/100), sys)
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
		return []string{"Connect no medical device and no alarm.", "Put no battery in a bedroom, an escape route or a loft. Put a smoke alarm near it.", "Put a fuse for direct current close to each source.",
			"Nothing here feeds house wiring; a licensed person connects an inverter. Local codes come first."}
	}
	return []string{
		"Never stand, reach or work under the mass. Never lift a person.",
		"Before you touch anything, put the mass on the ground or on a rated prop.",
		"Work brake and pawl by a cord from outside the keep-out.",
		"Lamps stay plugged in while the mass comes down.",
		"After a fall or shock no part is known until looked at.",
		"Lower the mass in gales and when nobody is there; lock it.",
		"Connect no medical device and no alarm. A licensed person checks the beam and any house wiring; local codes come first.",
	}
}
