package model

import (
	"duskweight/internal/model/cell"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// chargeField is the field of a battery at which reasons about its charge stand: they forbid that battery, whatever it is of
// panels or controller that charges it wrongly.
const chargeField = "charge_rate_per_h"

// boundless is a power of panels beyond anything on a roof, W: what an array brings of which nobody says how many or how
// strong its panels are.
const boundless = 1e6

// floatShare is the charge current, as a share of the capacity an hour, that lead cells withstand for good without a
// controller (common practice: a fiftieth).
const floatShare = 0.02

// fuseNear is how far from the battery a fuse still protects its cable, m (common practice).
const fuseNear = unit.Length(0.2)

// chargeMost is the most current that the cells may be charged with.
func (c *CellsResult) chargeMost() unit.Current {
	return unit.Current(c.Resolved.ChargeMost / unit.Power(c.Resolved.Voltage))
}

// chargeFuse is panels that charge a battery, as fast as a named limit lets them, with more than its fuse carries.
func chargeFuse(j judgement, c *CellsResult) []reason.Reason {
	w := j.result.Wiring
	f, ok := c.Design.Fuse.Value()
	if !ok || !w.Limited || w.Charge <= f {
		return nil
	}
	return []reason.Reason{must("peak_fuse", "fuse_a", source.CommonPractice.Whole(), say.That("The panels push %s through the battery's fuse of %s.", say.Current(w.Charge), say.Current(f)), thickerFuse())}
}

// chargeCurrent is panels that charge a battery faster than its cells or its fuse withstand.
func chargeCurrent(j judgement, c *CellsResult) []reason.Reason {
	w := j.result.Wiring
	if j.variant.Controller.Kind == panel.ControllerDirect {
		return nil
	}
	cells := c.chargeMost()
	fuse, fused := c.Design.Fuse.Value()
	over := w.Charge > cells*(1+1e-9)
	blows := fused && w.Charge > fuse
	most := cells
	if fused {
		most = min(most, fuse)
	}
	text := say.That("The panels push up to %s into cells for %s.", say.Current(w.Charge), say.Current(cells).Down())
	if !over && blows {
		text = say.That("The panels push up to %s through a fuse of %s.", say.Current(w.Charge), say.Current(fuse))
	}
	mend := say.That("Set the controller to at most %s, and enter that as its most current to the line.", say.Current(most).Down())
	switch {
	case over && w.Limited:
		return []reason.Reason{must("charge_current", chargeField, source.CommonPractice.Whole(), text, mend)}
	case (over || blows) && !w.Limited:
		return []reason.Reason{ask("charge_current", chargeField, source.CommonPractice.Whole(), text, say.Join(say.That("Nothing in the plan limits this current."), mend))}
	}
	return nil
}

// chargeOpen is panels of which nobody says how many or how strong they are: at worst they charge the battery with whatever
// the controller lets through.
func chargeOpen(j judgement, c *CellsResult) []reason.Reason {
	open := false
	arrays := make([]panel.Array, len(j.variant.Panels))
	for i, a := range j.variant.Panels {
		if none := a.Count.Is && a.Count.Val == 0; !none && !a.Nominal().Is {
			open = true
			a.Count, a.Power, a.Sheet = unit.Of(unit.Count(1)), unit.Of(unit.Power(boundless)), nil
		}
		arrays[i] = a
	}
	if !open || j.variant.Controller.Kind == panel.ControllerDirect {
		return nil
	}
	most, _ := panel.Charge(arrays, j.variant.Controller, j.variant.Controller.Line())
	if cells := c.chargeMost(); most <= cells && most <= c.Design.Fuse.Or(most) {
		return nil
	}
	return []reason.Reason{ask("charge_current", chargeField, source.Derivation.Whole(),
		say.That("How much current the panels push into the battery is not known: how many they are, or how strong, is not given."), say.That("Give their number and their watts, or the controller's most current."))}
}

// chargeUngoverned is panels straight on a battery: nothing ends the charge when it is full. Only lead withstands it, and
// only a trickle. Where the panels feed a motor straight, they do not reach the battery.
func chargeUngoverned(j judgement, c *CellsResult) []reason.Reason {
	if j.variant.Controller.Kind != panel.ControllerDirect {
		return nil
	}
	for _, s := range j.result.Stores {
		if s.Part.Wires().OwnPanels {
			return nil
		}
	}
	amps, _ := panel.Charge(j.variant.Panels, j.variant.Controller, j.variant.Controller.Line())
	known := true
	for _, a := range j.variant.Panels {
		known = known && a.Nominal().Is
	}
	trickle := unit.Current(floatShare * c.Resolved.Charge.AmpereHours())
	if c.Resolved.Kind.Lead && known && amps <= trickle || len(j.variant.Panels) == 0 {
		return nil
	}
	return []reason.Reason{must("charge_current", chargeField, source.CommonPractice.Whole(),
		say.That("The panels are wired straight to the battery: nothing ends the charge when it is full. An overcharged battery burns or gives off hydrogen."),
		say.That("Use a charge controller made for this kind of cells."))}
}

// cautionNear says that only the cable behind a fuse is protected. It forbids nothing.
func cautionNear(d unit.Known[unit.Length]) (cell.Flag, bool) {
	if d.Is && d.Val <= fuseNear {
		return cell.Flag{}, false
	}
	return cell.Flag{ID: "fuse_near", Path: "fuse_distance_m", Say: say.That("Only the fuse ends a short circuit, and only in the cable behind it. Put the fuse at most %s along the cable from the battery.", say.Taped(fuseNear).Down())}, true
}
