package sheet

import (
	"fmt"
	"slices"
	"strings"

	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
	"duskweight/web/form"
	"duskweight/web/page"
)

// What stands on the drawing of the plan sheet: each part with its size and what its label says.

// tape is a length that is measured out with a tape.
func tape(l unit.Known[unit.Length], sys unit.System) string {
	switch {
	case !l.Is:
		return "?"
	case sys == unit.Imperial:
		return unit.Tape(l.Val, unit.TapeSixteenth, unit.Nearest)
	}
	return say.Length(l.Val).In(sys)
}

// tapeTo is a length rounded in a direction: with an inch tape to whole steps, else to three digits.
func tapeTo(l unit.Length, step int, dir unit.Round, sys unit.System) string {
	if sys == unit.Imperial {
		return unit.Tape(l, step, dir)
	}
	return say.Length(l).Toward(dir).In(sys)
}

// bought is the size of a thing as it is sold.
func bought(l unit.Known[unit.Length], sys unit.System) string {
	if !l.Is {
		return "?"
	}
	return unit.Bought(l.Val, sys)
}

// rated is a strength on a label, as a mass, rounded to the weaker side.
func rated(f unit.Known[unit.Force], words string, sys unit.System) string {
	if !f.Is {
		return words + " not known"
	}
	return words + " " + say.Weight(f.Val).Down().In(sys)
}

// wordOr is the word of a closed list, or what is said where it is not answered.
func wordOr[T ~string](value T, otherwise string) string {
	if value == "" {
		return otherwise
	}
	return form.SentenceCase(form.WordFor(string(value)))
}

// noteChecks are the checks of each part that has a note; a further pulley has one.
var noteChecks = map[string][]string{
	"eye": {"hanger"}, "pulley": {"head_sheave"}, "rope": {"rope", "bend_ratio"}, "ends": {"knot"}, "beam": {"beam"}, "posts": {"post"}, "mass": {"container"},
	"weights": {"base_uplift", "base_sliding", "base_overturning", "ground"}, "board": {"base_board"}, "stop-1": {"stops", "overhoist"}, "slack": {"slack"},
}

// givesWay reports whether a check of the part finds it too weak.
func givesWay(part string, checks []path.Check) bool {
	ids, named := noteChecks[part]
	if !named {
		ids = []string{"redirect_sheave"}
	}
	return slices.ContainsFunc(checks, func(c path.Check) bool { return c.Word == path.GivesWay && slices.Contains(ids, c.ID) })
}

// notesOf are the notes of a hoist beside its side view.
func notesOf(h *model.HoistResult, sys unit.System) []draw.Note {
	g := h.Design
	notes := []draw.Note{
		{Part: "eye", Head: wordOr(g.Structure.HangerKind, "Hook or eye ?"), Text: rated(g.Structure.HangerRating, "rated", sys)},
		{Part: "rope", Head: ropeHead(g.Rope, sys), Text: rated(g.Rope.BreakingLoad, "breaks at", sys) + ropeLength(g, sys)},
		{Part: "ends", Head: "Rope ends: " + strings.ToLower(wordOr(g.Rope.Ending, "not known"))},
	}
	notes = append(notes, pulleyNotes(g, sys)...)
	if g.Structure.Beam.Kind != lift.MemberNone {
		notes = append(notes, draw.Note{Part: "beam", Head: "Beam " + crossSection(g.Structure.Beam.Width, g.Structure.Beam.Depth, sys), Text: strings.TrimSpace(form.WordFor(string(g.Structure.Beam.Kind)) + " " + string(g.Structure.Beam.Class))})
	}
	if p := g.Structure.Posts; len(p) > 0 {
		notes = append(notes, draw.Note{Part: "posts", Head: page.Counted(len(p), "post") + " " + crossSection(p[0].Width, p[0].Depth, sys)})
	}
	if g.Holds.SlackSwitch == unit.Yes {
		notes = append(notes, draw.Note{Part: "slack", Head: "Slack switch"})
	}
	notes = append(notes, draw.Note{Part: "mass", Head: page.Known(h.Drive.Mass, unit.Masses, sys), Text: form.Clip(pieces(g.Mass), 40)},
		draw.Note{Part: "stop-1", Head: stopsHead(g.Holds.UpperStops), Text: "room above " + tape(g.Holds.RoomAbove, sys)})
	if g.Base.Where != lift.BaseOnBeam {
		fixed := map[unit.Answer]string{unit.Yes: "fastened", unit.No: "loose"}[g.Base.WeightsFixed]
		notes = append(notes, draw.Note{Part: "weights", Head: "Base " + page.Known(g.Base.Mass, unit.Masses, sys), Text: fixed},
			draw.Note{Part: "board", Head: "Board " + bought(g.Base.Board.Thickness, sys)})
	}
	for i := range notes {
		notes[i].Bad = givesWay(notes[i].Part, h.Checks)
	}
	return notes
}

// pulleyNotes are the notes of the pulleys: the one over the mass, and each further one.
func pulleyNotes(g lift.Hoist, sys unit.System) (out []draw.Note) {
	lead := int(g.Reeving.LeadSheaves.Or(1))
	for i := range lead + max(0, int(g.Reeving.RopeParts.Or(1))-1) {
		var s lift.Sheave
		if i < len(g.Reeving.Sheaves) {
			s = g.Reeving.Sheaves[i]
		}
		n := draw.Note{Part: fmt.Sprintf("pulley-%d", i+1), Head: fmt.Sprintf("Pulley %d, %s", i+1, tape(s.Diameter, sys)), Text: rated(s.Rating, "rated", sys)}
		if i == lead-1 {
			n.Part, n.Head = "pulley", "Top pulley "+tape(s.Diameter, sys)
		}
		out = append(out, n)
	}
	return out
}

// ropeHead is what the rope is.
func ropeHead(r lift.Rope, sys unit.System) string {
	kind := ""
	if r.Kind != "" {
		kind = form.WordFor(string(r.Kind)) + " "
	}
	return "Rope " + kind + bought(r.Diameter, sys)
}

// gearsText are the gears as a whole.
func gearsText(h *model.HoistResult, sys unit.System) string {
	n := len(h.Design.Train.Stages)
	if n == 0 {
		return "Gears ?"
	}
	return "Gears " + page.IfKnown(h.Drive.Ratio, unit.GearRatios, sys, "%s : 1, ") + page.Counted(n, "stage")
}

func ropeLength(g lift.Hoist, sys unit.System) string {
	if !g.Rope.Length.Is {
		return ""
	}
	return ", " + tapeTo(g.Rope.Length.Val, unit.TapeFoot, unit.Up, sys) + " long"
}

// crossSection is the size of a beam or post as it is sold.
func crossSection(w, d unit.Known[unit.Length], sys unit.System) string {
	if !d.Is {
		return bought(w, sys)
	}
	return strings.TrimSuffix(bought(w, sys), unit.Space+"mm") + " × " + bought(d, sys)
}

func pieces(mass []lift.Piece) string {
	var names []string
	for _, m := range mass {
		if m.Name != "" {
			names = append(names, m.Name)
		}
	}
	return strings.Join(names, ", ")
}

func stopsHead(stops []lift.Stop) string {
	named := 0
	for _, s := range stops {
		if s.Kind != "" {
			named++
		}
	}
	switch named {
	case 0:
		return "No stop at the top"
	case 1:
		return "One stop at the top"
	}
	return fmt.Sprintf("%d stops at the top", named)
}

// driveBox is the larger picture of the drive.
func driveBox(h *model.HoistResult, sys unit.System) draw.DriveBox {
	g := h.Design
	has := func(kinds ...lift.HoldKind) bool {
		return slices.ContainsFunc(g.Holds.Holds, func(o lift.Hold) bool { return slices.Contains(kinds, o.Kind) })
	}
	b := draw.DriveBox{Stages: len(g.Train.Stages), Brake: has(lift.HoldSpringBrake), Ratchet: has(lift.HoldRatchet, lift.HoldOverspeedCatch)}
	b.Lines = []draw.Line{
		{Text: "Drum " + tape(g.Drum.Diameter, sys) + page.IfKnown(g.Drum.DeadWraps, unit.Counts, sys, ", %s turns stay on"), Bold: true},
		{Text: shaftText(g.Drum, sys), Bold: true},
		{Text: gearsText(h, sys), Bold: true},
	}
	b.Lines = append(b.Lines, holdLines(g.Holds, sys)...) // what stands behind them is the first to go where the box is full
	b.Lines = append(b.Lines, draw.Line{Text: "Motor " + form.Clip(page.OrElse(g.Machine.Name, "not named"), 34)},
		draw.Line{Text: "Drum width " + tape(g.Drum.Width, sys) + ", flange " + tape(g.Drum.Flange, sys)})
	if g.Train.CaseScrewCount.Is {
		b.Lines = append(b.Lines, draw.Line{Text: page.Known(g.Train.CaseScrewCount, unit.Counts, sys) + " case screws of " + bought(g.Train.CaseScrewSize, sys)})
	}
	return b
}

// shaftText is the shaft of the drum and what keeps the drum on it.
func shaftText(d lift.Drum, sys unit.System) string {
	say := "Shaft " + bought(d.ShaftDiameter, sys)
	switch d.HubFit {
	case lift.FitCrossPin:
		say += ", pin " + bought(d.PinDiameter, sys)
	case lift.FitKey:
		say += ", key " + bought(d.KeyWidth, sys) + " × " + bought(d.KeyLength, sys)
	case "":
	default:
		say += ", " + form.WordFor(string(d.HubFit))
	}
	return say
}

// holdLines name the holds with what each of them holds.
func holdLines(h lift.Holds, sys unit.System) (out []draw.Line) {
	for _, o := range h.Holds {
		if o.Kind != "" {
			out = append(out, draw.Line{Text: wordOr(o.Kind, "") + page.IfKnown(o.Torque, unit.Torques, sys, " %s") + page.IfKnown(o.Force, unit.Forces, sys, " %s"), Bold: true})
		}
	}
	if len(out) == 0 {
		out = []draw.Line{{Text: "✕ No hold is named", Bold: true}}
	}
	return out
}

// switchBox is the switch between day and night.
func switchBox(h *model.HoistResult, sys unit.System) draw.SwitchBox {
	w := page.WiringOf(h)
	raise, lower := h.Design.Raise, h.Drive.Lowering
	b := draw.SwitchBox{Fused: w.Fused, Shunt: w.Shunt != "", Day: []string{"Day: " + w.Supply}, Night: []string{"Night: " + w.Loads}}
	if raise.Voltage.Is && h.Direct == nil {
		b.Day = append(b.Day, page.Known(raise.Voltage, unit.Voltages, sys))
	}
	if raise.Fuse.Is {
		b.Day = append(b.Day, "fuse "+page.Known(raise.Fuse, unit.Currents, sys))
	}
	if lower.Known && lower.Current > 0 {
		b.Night = append(b.Night, unit.Voltages.Format(float64(lower.Voltage), sys))
	}
	stays := "✕ Missing: a resistor or clamp that stays on the motor for good"
	if b.Shunt {
		stays = shuntText(h.Design.Lower, sys) + ": no fuse, switch or plug"
	}
	b.Lines = []draw.Line{{Text: stays, Bold: true}}
	for _, row := range append(liftingRow(h, sys), loweringRow(h, sys)...) {
		b.Lines = append(b.Lines, draw.Line{Text: row.Name + ": " + row.Value})
	}
	b.Lines = append(b.Lines, draw.Line{Text: "Never sun and lamps at once; the switch " + w.Switch + "."})
	return b
}

// keepOutLines say where nobody may be.
func keepOutLines(h *model.HoistResult, sys unit.System) []draw.Line {
	z := h.Hazards
	keep := "Keep out, all round: not known"
	if z.KeepOut.Is {
		keep = "Keep out " + tapeTo(z.KeepOut.Val, unit.TapeInch, unit.Up, sys) + ", all round."
		if z.AtLeast {
			keep = "Keep out at least " + tapeTo(z.KeepOut.Val, unit.TapeInch, unit.Up, sys) + ", all round."
		}
	}
	out := []draw.Line{{Text: keep, Bold: true}}
	if w := z.RecoilLine; w.Is && w.Val > z.KeepOut.Or(0) {
		out = append(out, draw.Line{Text: "A breaking rope whips " + tapeTo(w.Val, unit.TapeFoot, unit.Up, sys) + " along its line."})
	}
	return out
}
