package sheet

import (
	"fmt"
	"slices"
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

// hoistSettings are what is set at the hoist; the greatest mass stands first.
func hoistSettings(h *model.HoistResult, sys unit.System) []page.PairView {
	d, g := h.Drive, h.Design
	rows := []page.PairView{
		{Name: "Greatest mass", Value: page.Known(d.Mass, unit.Masses, sys)},
		stopMarks(g, sys),
		{Name: "Ratio and drum", Value: clauses(", ", ifKnown(d.Ratio, unit.GearRatios, sys, "%s : 1"), ifKnown(g.Drum.Diameter, unit.SmallLengths, sys, "drum %s"),
			ifKnown(g.Drum.DeadWraps, unit.Counts, sys, "%s turns stay on"))},
	}
	if r := d.Raising; r.Known && r.Stalls {
		rows = append(rows, page.PairView{Name: "Lifting", Value: "the motor stalls"})
	} else if r.Known && r.Speed > 0 {
		rows = append(rows, page.PairView{Name: "Lifting", Value: unit.Currents.Format(float64(r.Current), sys) + ", " + form.Lasting(r.Time)})
	}
	if l := d.Lowering; l.Short {
		rows = append(rows, page.PairView{Name: "Lowering", Value: "never steady on this travel; arrives at up to " + unit.Speeds.Format(float64(l.EndSpeed), sys)})
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
		return "not known; take " + page.Known(take, q, sys)
	}
	return page.Known(is, q, sys)
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
		if load.Permanent == unit.Yes {
			return form.Clip(page.OrUnnamed(load.Name), 40) + ifKnown(load.Threshold, unit.Voltages, sys, ", from %s") + ifKnown(load.Resistance, unit.Resistances, sys, ", %s")
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

// cellsSettings are what is set at the batteries of a variant without a hoist.
func cellsSettings(r model.VariantResult, sys unit.System) []page.PairView {
	var rows []page.PairView
	for _, s := range r.Stores {
		if s.Cells == nil {
			continue
		}
		b := s.Cells.Design
		rows = append(rows, page.PairView{Name: form.Clip(page.OrUnnamed(s.Name), 40), Value: "gives " + page.Known(s.Capacity, unit.Energies, sys) + " from full"},
			page.PairView{Name: "Fuse close to it, for direct current", Value: fuseText(*s.Cells, sys)},
			page.PairView{Name: "Cable, one way", Value: clauses(" of ", ifKnown(b.CableLength, unit.Lengths, sys, "%s"), orTake(b.CableArea, s.Cells.Line.AreaTake, unit.SmallAreas, sys))},
			page.PairView{Name: "Where it stands", Value: form.OrNotKnown(form.WordFor(string(b.Indoors)))},
			page.PairView{Name: "Its cells are", Value: form.OrNotKnown(form.WordFor(string(b.Origin)))})
		if s.Cells.Resolved.Kind.Ion {
			rows = append(rows, page.PairView{Name: "A board stops charging in the cold", Value: form.OrNotKnown(form.WordFor(string(b.Board)))})
		}
		if air := s.Cells.Air; air.Boost > 0 {
			rows = append(rows, page.PairView{Name: "Opening for air, low down and near the top", Value: "each " + unit.Openings.Format(float64(air.Opening), sys)})
		}
	}
	return rows
}

// fuseText is the fuse of a battery, or the one to take.
func fuseText(c model.CellsResult, sys unit.System) string {
	say := orTake(c.Design.Fuse, c.Line.FuseTake, unit.Currents, sys)
	if f, ok := c.Design.Fuse.Value(); ok && f < c.Line.FuseLeast && c.Line.FuseTake.Is {
		say += ", may blow; take " + page.Known(c.Line.FuseTake, unit.Currents, sys)
	}
	return say
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

// besideHoist are the batteries and panels of a plan with a hoist, in short: their own page has the rest.
func besideHoist(r model.VariantResult, v model.Variant, sys unit.System) (rows []page.PairView) {
	for _, s := range r.Stores {
		if s.Cells == nil {
			continue
		}
		b := s.Cells.Design
		cable := clauses(" of ", ifKnown(b.CableLength, unit.Lengths, sys, "%s"), orTake(b.CableArea, s.Cells.Line.AreaTake, unit.SmallAreas, sys))
		rows = append(rows, page.PairView{Name: "Battery", Value: form.Clip(page.OrUnnamed(s.Name), 30) + ": fuse " + fuseText(*s.Cells, sys) + "; cable " + cable})
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
		rows = append(rows, page.PairView{Name: form.Clip(page.OrElse(a.Name, "Panels"), 40), Value: clauses(", ", ifKnown(a.Count, unit.Counts, sys, "%s of them"), ifKnown(a.Power, unit.Powers, sys, "%s each"),
			ifKnown(a.Tilt, unit.Angles, sys, "tilted %s"), ifKnown(a.Azimuth, unit.Angles, sys, "facing %s (180° is south)"))})
	}
	if len(v.Panels) > 0 {
		rows = append(rows, page.PairView{Name: "Controller", Value: form.OrNotKnown(form.WordFor(string(v.Controller.Kind)))})
	}
	return rows
}

// cellsOrder is how a battery, its controller and the panels are joined and taken apart: the controller finds the battery's
// voltage before the sun reaches it (common practice; the controller's own paper comes first).
var cellsOrder = []string{"Before all: the fuse out, the panels covered or unplugged.", "Battery to the controller, then the fuse in.", "Lamps to the line, panels last.",
	"To take it apart: panels first, then lamps, the fuse, the battery. The controller’s own paper comes first."}
