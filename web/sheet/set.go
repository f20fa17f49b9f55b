package sheet

import (
	"fmt"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
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
		{Name: "Ratio and drum", Value: page.Clauses(", ", page.IfKnown(d.Ratio, unit.GearRatios, sys, "%s : 1"), page.IfKnown(g.Drum.Diameter, unit.SmallLengths, sys, "drum %s"),
			page.IfKnown(g.Drum.DeadWraps, unit.Counts, sys, "%s turns stay on"))},
	}
	if r := d.Raising; r.Gearless {
		rows = append(rows, page.PairView{Name: "Lifting", Value: "not known: the gearbox of the motor's label is not in the plan"})
	} else if r.Known && r.Stalls {
		rows = append(rows, page.PairView{Name: "Lifting", Value: "the motor stalls"})
	} else if r.Known && r.Speed > 0 {
		rows = append(rows, page.PairView{Name: "Lifting", Value: liftCurrent(h, sys) + ", " + form.Lasting(r.Time)})
	}
	if l := d.Lowering; l.Short {
		rows = append(rows, page.PairView{Name: "Lowering", Value: "never steady on this travel; arrives at " + unit.Speeds.Format(float64(l.EndSpeed), sys)})
	} else if l.Known && l.Current > 0 {
		rows = append(rows, page.PairView{Name: "Lowering", Value: unit.Currents.Format(float64(l.Current), sys) + " at " + unit.Voltages.Format(float64(l.Voltage), sys) + ", " + form.Lasting(l.Time)})
	}
	rows = append(rows, page.PairView{Name: "Never fused or switched", Value: shuntText(g.Lower, sys)})
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
		rows = append(rows, page.PairView{Name: when, Value: say})
	}
	if j, ok := d.LetGo.JoinedSpeed.Value(); ok {
		rows = append(rows, page.PairView{Name: "Motor wires joined", Value: "it creeps at " + unit.SlowSpeeds.Format(float64(j), sys) + "; that holds nothing"})
	}
	keep := page.Known(h.Hazards.KeepOut, unit.Lengths, sys)
	if h.Hazards.AtLeast && h.Hazards.KeepOut.Is {
		keep = "at least " + keep
	}
	if w := h.Hazards.RecoilLine; w.Is && w.Val > h.Hazards.KeepOut.Or(0) {
		keep += "; a breaking rope whips " + page.Known(w, unit.Lengths, sys) + " along its line"
	}
	rows = append(rows, page.PairView{Name: "Keep out, all round", Value: keep}, page.PairView{Name: "Holds", Value: holdsText(g.Holds)}, page.PairView{Name: "Without power", Value: form.Clip(h.Hazards.ComesDown, sheetComes)})
	return rows
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
	say := "lower: where it meets the drum, mass down; upper: " + page.Known(rope, unit.Lengths, sys) + " nearer to the mass"
	if n > 1 {
		say += fmt.Sprintf(", as %d ropes carry it", n)
	}
	return page.PairView{Name: "Stop marks on the rope", Value: say + "; a mark stops nothing"}
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
			page.IfKnown(a.Tilt, unit.Angles, sys, "tilted %s"), page.IfKnown(a.Azimuth, unit.Angles, sys, "facing %s (180° is south)"))})
	}
	if len(v.Panels) > 0 {
		rows = append(rows, page.PairView{Name: "Controller", Value: form.OrNotKnown(form.WordFor(string(v.Controller.Kind)))})
	}
	return rows
}
