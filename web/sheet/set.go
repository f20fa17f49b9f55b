package sheet

import (
	"fmt"
	"slices"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
	"duskweight/web/form"
	"duskweight/web/page"
)

// What is set at a hoist, a battery and panels, as the plan sheet has it.

// shockVolts is the direct voltage from which a shock can kill, as the page of the hoist has it.
const shockVolts unit.Voltage = 60

// liftCurrent is what lifting takes: a range where the drop at the motor's brushes is one.
func liftCurrent(h *model.HoistResult, sys unit.System) string {
	if b := h.Brush; b != nil {
		return page.Span(unit.Currents, float64(b.Low.Raising.Current), float64(b.High.Raising.Current), sys)
	}
	return unit.Currents.Format(float64(h.Drive.Raising.Current), sys)
}

// hoistSettings are what is set at the hoist; the greatest mass stands first.
func hoistSettings(h *model.HoistResult, sys unit.System) []page.PairView {
	d, g := h.Drive, h.Design
	rows := []page.PairView{
		{Name: "Greatest mass", Value: page.Known(d.Mass, unit.Masses, sys)},
		stopMarks(g, sys),
		{Name: "Ratio and drum", Value: page.Clauses(", ", page.IfKnown(d.Ratio, unit.GearRatios, sys, "%s : 1"), drumText(g.Drum, sys),
			page.IfKnown(g.Drum.DeadWraps, unit.Counts, sys, "%s turns stay on"))},
	}
	rows = append(append(rows, liftingRow(h, sys)...), loweringRow(h, sys)...)
	rows = append(rows, page.PairView{Name: "Never fused or switched", Value: shuntText(g.Lower, sys)})
	if lg := d.LetGo; lg.Known && lg.OpenSpeed > 0 {
		when := "If the lamps are unplugged"
		if d.Lowering.Shunt {
			when = "If a motor wire comes off"
		}
		runs, volts := "the mass runs away and arrives at "+unit.Speeds.Format(float64(lg.OpenSpeed), sys), ""
		if lg.OpenVoltage > shockVolts {
			volts = ". About " + say.Voltage(lg.OpenVoltage).To(2).In(sys) + " on its wires: do not touch"
		}
		if lg.BreaksUpFirst {
			runs = "the motor overspeeds and flies apart: guard it"
		}
		rows = append(rows, page.PairView{Name: when, Value: runs + volts})
	}
	if j, ok := d.LetGo.JoinedSpeed.Value(); ok {
		rows = append(rows, page.PairView{Name: "Motor wires joined", Value: "the mass creeps " + tapeTo(unit.Length(60*j), unit.TapeSixteenth, unit.Up, sys) + " a minute; joined wires do not hold it"})
	}
	keep := "not known"
	if k := h.Hazards.KeepOut; k.Is {
		keep = tapeTo(k.Val, unit.TapeInch, unit.Up, sys)
	}
	if h.Hazards.AtLeast && h.Hazards.KeepOut.Is {
		keep = "at least " + keep
	}
	if w := h.Hazards.RecoilLine; w.Is && w.Val > h.Hazards.KeepOut.Or(0) {
		keep += "; a breaking rope whips " + tapeTo(w.Val, unit.TapeFoot, unit.Up, sys) + " along its line"
	}
	rows = append(rows, page.PairView{Name: "Keep out, all round", Value: keep}, page.PairView{Name: "Holds", Value: holdsText(g.Holds)}, page.PairView{Name: "Without power", Value: form.Clip(h.Hazards.ComesDown, sheetComes)})
	if look, ok := page.NextLook(g, ""); ok { // paper does not know the day on which it is read
		rows = append(rows, look)
	}
	return rows
}

// liftingRow is the current and the time of a lift; nothing where they are not known.
func liftingRow(h *model.HoistResult, sys unit.System) []page.PairView {
	say := ""
	switch r := h.Drive.Raising; {
	case r.Gearless:
		say = "not known: the gearbox of the motor's label is not in the plan"
	case r.Known && r.Stalls:
		say = "the motor stalls"
	case r.Known && r.Speed > 0:
		say = liftCurrent(h, sys) + ", " + form.Lasting(r.Time)
	default:
		return nil
	}
	return []page.PairView{{Name: "Lifting", Value: say}}
}

// loweringRow is the current, the voltage and the time of a way down; nothing where they are not known.
func loweringRow(h *model.HoistResult, sys unit.System) []page.PairView {
	say := ""
	switch l := h.Drive.Lowering; {
	case l.Short:
		say = "never steady on this travel; arrives at " + unit.Speeds.Format(float64(l.EndSpeed), sys)
	case l.Known && l.Current > 0:
		say = unit.Currents.Format(float64(l.Current), sys) + " at " + unit.Voltages.Format(float64(l.Voltage), sys) + ", " + form.Lasting(l.Time)
	default:
		return nil
	}
	return []page.PairView{{Name: "Lowering", Value: say}}
}

// unbroken keeps a length of an inch tape on one line: 14′ 9-1/8″ is not 14′ 9 and then 1/8″.
func unbroken(length string) string { return strings.ReplaceAll(length, "-", "\u2011") }

// onDrawing are the settings that stand on the drawing of the sheet as well.
var onDrawing = map[string]bool{"Greatest mass": true, "Ratio and drum": true, "Never fused or switched": true, "Keep out, all round": true, "Holds": true, "Lifting": true, "Lowering": true}

// drawnLast puts the settings that stand on the drawing behind the others.
func drawnLast(rows []page.PairView) []page.PairView {
	slices.SortStableFunc(rows, func(a, b page.PairView) int {
		switch {
		case onDrawing[a.Name] == onDrawing[b.Name]:
			return 0
		case onDrawing[a.Name]:
			return 1
		}
		return -1
	})
	return rows
}

func drumText(d lift.Drum, sys unit.System) string {
	if !d.Diameter.Is {
		return ""
	}
	return "drum " + tape(d.Diameter, sys)
}

// stopMarks says where the rope is marked for the stops. What passes the drum between them is the travel times the ropes that
// carry the mass, and it comes from the side of the mass.
func stopMarks(h lift.Hoist, sys unit.System) page.PairView {
	n, ok := h.Reeving.RopeParts.Value()
	rope := h.Travel
	if !ok || !rope.Is {
		return page.PairView{Name: "Stop marks on the rope", Value: "not known"}
	}
	rope.Val *= unit.Length(n)
	// Rounded down: the hoist stops a little lower, never a little higher.
	marks := "lower: at the drum, mass down; upper: " + unbroken(tapeTo(rope.Val, unit.TapeSixteenth, unit.Down, sys)) + " along the rope towards the mass"
	if n > 1 {
		marks += fmt.Sprintf(", as %d ropes carry it", n)
	}
	return page.PairView{Name: "Stop marks on the rope", Value: marks + ". A mark does not stop the hoist"}
}

func shuntText(l lift.Lower, sys unit.System) string {
	for _, load := range l.Loads {
		if load.Permanent == unit.Yes {
			return form.Clip(page.OrUnnamed(load.Name), 40) + page.IfKnown(load.Threshold, unit.Voltages, sys, ", from %s") + page.IfKnown(load.Resistance, unit.Resistances, sys, ", %s")
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
			names = append(names, form.WordFor(string(o.Kind)))
		}
	}
	if len(names) == 0 {
		return "not known"
	}
	return form.Clip(strings.Join(names, " and "), 60)
}

// guessed is how many values of a variant are typical and were never confirmed.
func guessed(v model.Variant) (n int) {
	for _, o := range v.Origins {
		if o.Kind == model.OriginTypical {
			n++
		}
	}
	return n
}

// besideHoist are the other stores and the panels of a plan with a hoist, in short: their own page has the rest.
func besideHoist(kinds page.Kinds, r model.VariantResult, v model.Variant, sys unit.System) (rows []page.PairView) {
	for _, s := range r.Stores {
		if k := kinds.Of(s.Kind); k.Sheet.Beside != nil && len(rows) < 2 {
			rows = append(rows, k.Sheet.Beside(s, sys))
		}
	}
	label, ok := unit.Power(0), len(v.Panels) > 0
	for _, a := range v.Panels {
		n := a.Nominal()
		label, ok = label+n.Val, ok && n.Is
	}
	if ok {
		rows = append(rows, page.PairView{Name: "Panels", Value: unit.Powers.Format(float64(label), sys) + " in all; cover or unplug them first"})
	}
	return rows
}

// panelSettings are the panels of a plan without a hoist, and their controller.
func panelSettings(v model.Variant, sys unit.System) (rows []page.PairView) {
	for i, a := range v.Panels {
		if i == 3 {
			rows = append(rows, page.PairView{Name: "More panels", Value: "on the page of the variant"})
			break
		}
		rows = append(rows, page.PairView{Name: form.Clip(page.OrElse(a.Name, "Panels"), 40), Value: page.Clauses(", ", page.IfKnown(a.Count, unit.Counts, sys, "%s of them"), page.IfKnown(a.Power, unit.Powers, sys, "%s each"),
			tiltSay(a, sys), page.IfKnown(a.Azimuth, unit.Angles, sys, "facing %s (180° is south)"))})
	}
	if len(v.Panels) > 0 {
		rows = append(rows, page.PairView{Name: "Controller", Value: form.OrNotKnown(form.WordFor(string(v.Controller.Kind)))})
	}
	return rows
}

// tiltSay tells how an array is tilted, or how steep and how flat over the year; nothing where that is not known.
func tiltSay(a panel.Array, sys unit.System) string {
	if a.TiltBy != nil {
		return "tilt changed each month, " + page.Extent(unit.Angles, a.TiltBy[:], sys)
	}
	return page.IfKnown(a.Tilt, unit.Angles, sys, "tilted %s")
}
