package web

import (
	"fmt"
	"slices"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/unit"
)

// sheetView is the printed page, ready to print.
type sheetView struct {
	paperTop
	Back   string
	Letter bool
	Full   bool // much is not known: the drawing and the parts make room
	Roomy  bool // little stands on it: larger letters

	sheetState
	Waits   []refusedOn // pages on which refused entries wait
	Verdict []string
	Drawing string
	Drawn   int // the greatest height of the drawing, mm
	Build   [][]string
	More    string // parts that did not fit
	Set     []pairView
	Checks  []checkView
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
	sheetName    = 42
	sheetComes   = 99 // letters of how it comes down without power
)

// sheetOf prints the plan sheet of a variant; its first hoist is the one that is drawn. The size of the paper and the head
// stand in v already.
func sheetOf(v sheetView, r model.VariantResult, p model.Project, of model.Variant, sys unit.System) sheetView {
	r = retold(r, sys)
	for _, say := range r.Headline[:min(2, len(r.Headline))] {
		v.Verdict = append(v.Verdict, clip(say, 2*sheetText))
	}
	var hoist *model.HoistResult
	more := 0
	for i := range r.Stores {
		switch h := r.Stores[i].Hoist; {
		case h != nil && hoist == nil:
			hoist = h
		case h != nil:
			more++
		}
	}
	v.sheetState = stateOf(r)
	v.Sign = v.State == "ready"
	v.Caution = sheetCautions(hoist)
	if hoist != nil {
		v.Hoist = true
		v.hoist(hoist, sys)
		if n := guessed(of); n > 0 {
			v.Set = append([]pairView{{"Guessed", counted(n, "value") + " of this plan, typical and not yours yet"}}, v.Set...)
		}
		v.Set = append(v.Set, besideHoist(r, of, sys)...)
	} else {
		v.Set = append(cellsSettings(r, sys), panelSettings(of, sys)...)
		if len(r.Stores) > 0 && v.State != "do not hang" {
			v.Order = cellsOrder
		}
	}
	if more > 0 {
		v.Set = append(v.Set, pairView{"Other hoists", counted(more, "more hoist") + " in this plan: not on this sheet"})
	}
	v.fit(of.Parts, p.Currency)
	return v
}

// stateOf is the state of a variant's sheet.
func stateOf(r model.VariantResult) (v sheetState) {
	switch r.Ready {
	case "no":
		v.State = "do not hang"
		v.Band = doNot(r) + "."
		if len(r.Reasons) > 0 {
			v.Band += " " + whole(r.Reasons[0], 2*sheetText)
		}
		if slices.ContainsFunc(r.Stores, func(s model.StoreResult) bool { return s.Hoist != nil && looksOwed(s.Hoist.Checks) > 0 }) {
			v.Band += " It fell or took a shock, and not every part was looked at since."
		}
	case "not_known":
		v.State = "not ready"
		for _, why := range r.Reasons {
			name, _, _ := strings.Cut(why, ". Not known") // what is missing there stands on the page of the hoist
			if rest, open := strings.CutPrefix(name, "Not known "); open {
				name, _, _ = strings.Cut(firstSentence(sentenceCase(rest)), ":")
			}
			v.Unknown = append(v.Unknown, name)
		}
		room := sheetName
		switch n := len(v.Unknown); {
		case n <= 2:
			room = 2 * sheetText
		case n <= 6:
			room = sheetText
		}
		for i, name := range v.Unknown {
			v.Unknown[i] = clip(name, room)
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
		if slices.ContainsFunc(r.Stores, func(s model.StoreResult) bool { return s.Hoist != nil }) {
			v.Band = "READY for the load steps: all checks hold or are tight."
		}
	}
	return v
}

func (v *sheetView) hoist(h *model.HoistResult, sys unit.System) {
	v.Checks = checkViews(tightestOf(h.Checks), "", sys, nil, "")
	for i := range v.Checks {
		v.Checks[i].Part = clip(v.Checks[i].Part, sheetName)
	}
	v.Set = hoistSettings(h, sys)
	if v.State == "do not hang" { // nothing that reads like leave to run it
		v.Set = v.Set[1:]
	} else {
		for _, s := range h.Hazards.SwitchOrder {
			v.Order = append(v.Order, clip(s, 2*sheetText))
		}
	}
	var clashes []string
	v.Drawing, clashes = drawingOf(h, sys)
	for _, say := range clashes {
		v.Set = append([]pairView{{"Cannot be built so", say}}, v.Set...)
	}
	switch v.State {
	case "ready":
		v.StepSay = "With dead weight, from 100 mm first, then the whole travel. Nobody inside the keep-out. Tick each when nothing moved, slipped or got hot."
		v.Steps = loadSteps(h.Drive.Mass, sys, 25, 50, 75, 100, 125)
	case "not ready":
		if looksOwed(h.Checks) > 0 { // not even the first step
			v.Band = "NOT READY. Hang nothing: after a fall or a shock not every part was looked at."
			break
		}
		v.StepSay = "Only this step, and the mass at most 100 mm off the ground, until the list above is empty."
		v.Steps = loadSteps(h.Drive.Mass, sys, 25)
	}
	v.StepSay = strings.ReplaceAll(retell(v.StepSay, sys), "3.94"+unit.Space+"in", "4"+unit.Space+"in") // a round height, as is 100 mm
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

// shockVolts is the direct voltage from which a shock can kill, as the page of the hoist has it.
const shockVolts unit.Voltage = 60

// hoistSettings are what is set at the hoist; the greatest mass stands first.
func hoistSettings(h *model.HoistResult, sys unit.System) []pairView {
	d, g := h.Drive, h.Design
	rows := []pairView{
		{"Greatest mass", known(d.Mass, unit.Masses, sys)},
		stopMarks(g, sys),
		{"Ratio and drum", clauses(", ", ifKnown(d.Ratio, unit.GearRatios, sys, "%s : 1"), ifKnown(g.Drum.Diameter, unit.SmallLengths, sys, "drum %s"),
			ifKnown(g.Drum.DeadWraps, unit.Counts, sys, "%s turns stay on"))},
	}
	if r := d.Raising; r.Known && r.Stalls {
		rows = append(rows, pairView{"Lifting", "the motor stalls"})
	} else if r.Known && r.Speed > 0 {
		rows = append(rows, pairView{"Lifting", unit.Currents.Format(float64(r.Current), sys) + ", " + model.Lasting(r.Time)})
	}
	if l := d.Lowering; l.Short {
		rows = append(rows, pairView{"Lowering", "never steady on this travel; arrives at up to " + unit.Speeds.Format(float64(l.EndSpeed), sys)})
	} else if l.Known && l.Current > 0 {
		rows = append(rows, pairView{"Lowering", unit.Currents.Format(float64(l.Current), sys) + " at " + unit.Voltages.Format(float64(l.Voltage), sys) + ", " + model.Lasting(l.Time)})
	}
	rows = append(rows, pairView{"Never fused or switched", shuntText(g.Lower, sys)})
	if lg := d.LetGo; lg.Known && lg.OpenSpeed > 0 {
		when := "Lamps unplugged"
		if d.Lowering.Shunt {
			when = "Motor wire open"
		}
		say := "it arrives at " + unit.Speeds.Format(float64(lg.OpenSpeed), sys)
		if lg.OpenVoltage > shockVolts {
			say += ", with " + unit.Voltages.Format(float64(lg.OpenVoltage), sys) + " on the wires: do not touch"
		}
		if lg.BreaksUpFirst {
			say = "the motor breaks up first, at " + unit.RotationSpeeds.Format(float64(lg.OpenRotor), sys) + ": guard it" + strings.TrimPrefix(say, "it arrives at "+unit.Speeds.Format(float64(lg.OpenSpeed), sys))
		}
		rows = append(rows, pairView{when, say})
	}
	if j, ok := d.LetGo.JoinedSpeed.Value(); ok {
		rows = append(rows, pairView{"Motor wires joined", "it creeps at " + unit.SlowSpeeds.Format(float64(j), sys) + "; that holds nothing"})
	}
	keep := known(h.Hazards.KeepOut, unit.Lengths, sys)
	if h.Hazards.AtLeast && h.Hazards.KeepOut.Is {
		keep = "at least " + keep
	}
	if w := h.Hazards.RecoilLine; w.Is && w.Val > h.Hazards.KeepOut.Or(0) {
		keep += "; a breaking rope whips " + known(w, unit.Lengths, sys) + " along its line"
	}
	rows = append(rows, pairView{"Keep out, all round", keep}, pairView{"Holds", holdsText(g.Holds)}, pairView{"Without power", clip(h.Hazards.ComesDown, sheetComes)})
	return rows
}

// tightestOf are the checks that the sheet has room for, as they are sorted; what is only counted and is enough, such as two
// holds where two are wanted, stands behind what is strained.
func tightestOf(checks []path.Check) []path.Check {
	strained := func(c path.Check) bool {
		return c.Unit != "1" || c.Word == path.GivesWay || c.Word == path.NotKnown
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

// stopMarks says where the rope is marked for the stops. What passes the drum between them is the travel times the ropes that
// carry the mass, and it comes from the side of the mass.
func stopMarks(h lift.Hoist, sys unit.System) pairView {
	n, ok := h.Reeving.RopeParts.Value()
	rope := h.Travel
	if !ok || !rope.Is {
		return pairView{"Stop marks on the rope", "not known"}
	}
	rope.Val *= unit.Length(n)
	say := "lower: where it meets the drum, mass down; upper: " + known(rope, unit.Lengths, sys) + " nearer to the mass"
	if n > 1 {
		say += fmt.Sprintf(", as %d ropes carry it", n)
	}
	return pairView{"Stop marks on the rope", say + "; a mark stops nothing"}
}

// ifKnown puts a value into words, which hold one %s; "" where it is not known.
func ifKnown[T unit.Number](k unit.Known[T], q unit.Quantity, sys unit.System, words string) string {
	if !k.Is {
		return ""
	}
	return fmt.Sprintf(words, q.Format(float64(k.Val), sys))
}

// orTake is a value, or where it is not known the one to take.
func orTake[T unit.Number](is, take unit.Known[T], q unit.Quantity, sys unit.System) string {
	if !is.Is && take.Is {
		return "not known; take " + known(take, q, sys)
	}
	return known(is, q, sys)
}

// clauses joins what is known; "not known" where nothing is.
func clauses(between string, parts ...string) string {
	parts = slices.DeleteFunc(parts, func(p string) bool { return p == "" })
	if len(parts) == 0 {
		return "not known"
	}
	return strings.Join(parts, between)
}

func shuntText(l lift.Lower, sys unit.System) string {
	for _, load := range l.Loads {
		if load.Permanent == "yes" {
			return clip(orUnnamed(load.Name), 40) + ifKnown(load.Threshold, unit.Voltages, sys, ", from %s") + ifKnown(load.Resistance, unit.Resistances, sys, ", %s")
		}
	}
	return "missing" // a resistor that is not among the loads counts as none
}

func holdsText(h lift.Holds) string {
	if len(h.Holds) == 0 {
		return "none named"
	}
	var names []string
	for _, o := range h.Holds {
		if o.Kind != "" {
			names = append(names, wordFor(o.Kind))
		}
	}
	if len(names) == 0 {
		return "not known"
	}
	return clip(strings.Join(names, " and "), 60)
}

// cellsSettings are what is set at the batteries of a variant without a hoist.
func cellsSettings(r model.VariantResult, sys unit.System) []pairView {
	var rows []pairView
	for _, s := range r.Stores {
		if s.Cells == nil {
			continue
		}
		b := s.Cells.Design
		rows = append(rows, pairView{clip(orUnnamed(s.Name), 40), "gives " + known(s.Capacity, unit.Energies, sys) + " from full"},
			pairView{"Fuse close to it, for direct current", fuseText(*s.Cells, sys)},
			pairView{"Cable, one way", clauses(" of ", ifKnown(b.CableLength, unit.Lengths, sys, "%s"), orTake(b.CableArea, s.Cells.Line.AreaTake, unit.SmallAreas, sys))},
			pairView{"Where it stands", orNotKnown(wordFor(b.Indoors))},
			pairView{"Its cells are", orNotKnown(wordFor(b.Origin))})
		if s.Cells.Resolved.Kind.Ion {
			rows = append(rows, pairView{"A board stops charging in the cold", orNotKnown(wordFor(b.Board))})
		}
		if air := s.Cells.Air; air.Boost > 0 {
			rows = append(rows, pairView{"Opening for air, low down and near the top", "each " + unit.Openings.Format(float64(air.Opening), sys)})
		}
	}
	return rows
}

// fuseText is the fuse of a battery, or the one to take.
func fuseText(c model.CellsResult, sys unit.System) string {
	say := orTake(c.Design.Fuse, c.Line.FuseTake, unit.Currents, sys)
	if f, ok := c.Design.Fuse.Value(); ok && f < c.Line.FuseLeast && c.Line.FuseTake.Is {
		say += ", may blow; take " + known(c.Line.FuseTake, unit.Currents, sys)
	}
	return say
}

// guessed is how many values of a variant are typical and were never confirmed.
func guessed(v model.Variant) (n int) {
	for _, o := range v.Origins {
		if o.Kind == "typical" {
			n++
		}
	}
	return n
}

// besideHoist are the batteries and panels of a plan with a hoist, in short: their own page has the rest.
func besideHoist(r model.VariantResult, v model.Variant, sys unit.System) (rows []pairView) {
	for _, s := range r.Stores {
		if s.Cells == nil {
			continue
		}
		b := s.Cells.Design
		cable := clauses(" of ", ifKnown(b.CableLength, unit.Lengths, sys, "%s"), orTake(b.CableArea, s.Cells.Line.AreaTake, unit.SmallAreas, sys))
		rows = append(rows, pairView{"Battery", clip(orUnnamed(s.Name), 30) + ": fuse " + fuseText(*s.Cells, sys) + "; cable " + cable})
		if len(rows) == 2 {
			break
		}
	}
	label, ok := unit.Power(0), len(v.Panels) > 0
	for _, a := range v.Panels {
		n := a.Nominal()
		label, ok = label+n.Val, ok && n.Is
	}
	if ok {
		rows = append(rows, pairView{"Panels", unit.Powers.Format(float64(label), sys) + " in all; cover or unplug them first"})
	}
	return rows
}

// panelSettings are the panels of a plan without a hoist, and their controller.
func panelSettings(v model.Variant, sys unit.System) (rows []pairView) {
	for i, a := range v.Panels {
		if i == 3 {
			rows = append(rows, pairView{"More panels", "on the page of the variant"})
			break
		}
		rows = append(rows, pairView{clip(orElse(a.Name, "Panels"), 40), clauses(", ", ifKnown(a.Count, unit.Counts, sys, "%s of them"), ifKnown(a.Power, unit.Powers, sys, "%s each"),
			ifKnown(a.Tilt, unit.Angles, sys, "tilted %s"), ifKnown(a.Azimuth, unit.Angles, sys, "facing %s (180° is south)"))})
	}
	if len(v.Panels) > 0 {
		rows = append(rows, pairView{"Controller", orNotKnown(wordFor(v.Controller.Kind))})
	}
	return rows
}

// cellsOrder is how a battery, its controller and the panels are joined and taken apart: the controller finds the battery's
// voltage before the sun reaches it (common practice; the controller's own paper comes first).
var cellsOrder = []string{"Before all: the fuse out, the panels covered or unplugged.", "Battery to the controller, then the fuse in.", "Lamps to the line, panels last.",
	"To take it apart: panels first, then lamps, the fuse, the battery. The controller’s own paper comes first."}

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

// whole shortens a text to the sentences that fit in the room of n usual letters; the first is clipped where not even
// it fits.
func whole(s string, n int) string {
	kept := ""
	for sentence := range strings.SplitAfterSeq(s, ". ") {
		if width(strings.TrimSpace(kept+sentence)) > 2*n {
			break
		}
		kept += sentence
	}
	if kept == "" {
		return clip(s, n)
	}
	return strings.TrimSpace(kept)
}

// clip shortens a text to the room of n usual letters. Wide letters take more of it, so that a name of nothing but W
// takes no more lines than another.
func clip(s string, n int) string {
	room := 2 * n
	r := []rune(strings.Join(strings.Fields(s), " "))
	last := 0 // letters that fit with the sign of what is missing behind them
	for i, c := range r {
		room -= halves(c)
		if room < 0 {
			return strings.TrimSpace(string(r[:last])) + "…"
		}
		if room >= 2 {
			last = i + 1
		}
	}
	return string(r)
}

// halves is the room that a letter takes, in halves of a usual one, rounded up.
func halves(c rune) int {
	switch {
	case c >= 0x1100: // the scripts of full width, and pictures
		return 4
	case strings.ContainsRune("WMmw@%", c), c >= 'A' && c <= 'Z':
		return 3
	}
	return 2
}
