package model

import (
	"fmt"

	"duskweight/internal/model/cell"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/load"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// loadOpen is a device or a standing use of which nobody says how much it uses, or when: at worst it is on at the peak, and
// more than the battery's fuse, cable and board withstand.
func loadOpen(j judgement) []reason.Reason {
	if !j.hasBattery() {
		return nil
	}
	var out []reason.Reason
	add := func(path, name, what string) {
		out = append(out, ask("peak_fuse", path, source.Derivation.Whole(), say.That("%s %s uses is not known, and so whether fuse, cable and inverter carry everything that is on together.", what, name),
			say.That("Read it on its label, or give the most that it can be.")))
	}
	l := j.ground.Project.Load
	for i, a := range l.Appliances {
		if _, refused := load.Refused(a); refused || a.Count.Is && a.Count.Val == 0 {
			continue
		}
		switch {
		case !a.Power.Is:
			add(atAppliance(i, "power_w"), nameOf(a), "How much")
		case !a.Count.Is:
			add(atAppliance(i, "count"), nameOf(a), "How much all of")
		}
	}
	for i, s := range l.Standing {
		if !s.Power.Is {
			add(fmt.Sprintf("load.standing[%d].power_w", i), orName(s.Name, "a standing device"), "How much")
		}
	}
	return out
}

func orName(name, without string) string {
	if name == "" {
		return without
	}
	return name
}

func (j judgement) hasBattery() bool {
	for _, s := range j.result.Stores {
		if c := CellsOf(s); c != nil && c.Resolved.WhyNot == "" {
			return true
		}
	}
	return false
}

// boundless is a power of panels beyond anything on a roof, W: what an array brings of which nobody says how many or how
// strong its panels are.
const boundless = 1e6

// chargeOpen is panels of which nobody says how many or how strong they are: at worst they charge the battery with whatever
// the controller lets through.
func chargeOpen(j judgement) []reason.Reason {
	at, field := -1, ""
	arrays := make([]panel.Array, len(j.variant.Panels))
	for i, a := range j.variant.Panels {
		if none := a.Count.Is && a.Count.Val == 0; !none && !a.Nominal().Is {
			at, field = i, "panel_w"
			if !a.Count.Is {
				field = "count"
			}
			a.Count, a.Power, a.Sheet = unit.Of(unit.Count(1)), unit.Of(unit.Power(boundless)), nil
		}
		arrays[i] = a
	}
	if at < 0 || j.variant.Controller.Kind == panel.ControllerDirect {
		return nil
	}
	most, _ := panel.Charge(arrays, j.variant.Controller, j.variant.Controller.Line())
	for i, s := range j.result.Stores {
		c := CellsOf(s)
		if c == nil || c.Resolved.WhyNot != "" {
			continue
		}
		if cells := unit.Current(c.Resolved.ChargeMost / unit.Power(c.Resolved.Voltage)); most > cells || most > c.Design.Fuse.Or(most) {
			return []reason.Reason{inCell(i, ask("charge_current", atPanels(at, field), source.Derivation.Whole(),
				say.That("How much current the panels push into the battery is not known: how many they are, or how strong, is not given."), say.That("Give their number and their watts, or the controller's most current.")))}
		}
	}
	return nil
}

// floatShare is the charge current, as a share of the capacity an hour, that lead cells withstand for good without a
// controller (common practice: a fiftieth).
const floatShare = 0.02

// chargeUngoverned is panels straight on a battery: nothing ends the charge when it is full. Only lead withstands it, and
// only a trickle. Where the panels feed a motor straight, they do not reach the battery.
func chargeUngoverned(j judgement) []reason.Reason {
	if j.variant.Controller.Kind != panel.ControllerDirect {
		return nil
	}
	for _, s := range j.result.Stores {
		if h := HoistOf(s); h != nil && h.Design.Raise.Feed == lift.FeedPanel {
			return nil
		}
	}
	amps, _ := panel.Charge(j.variant.Panels, j.variant.Controller, j.variant.Controller.Line())
	known := true
	for _, a := range j.variant.Panels {
		known = known && a.Nominal().Is
	}
	var out []reason.Reason
	for i, s := range j.result.Stores {
		c := CellsOf(s)
		if c == nil || c.Resolved.WhyNot != "" {
			continue
		}
		trickle := unit.Current(floatShare * c.Resolved.Charge.AmpereHours())
		if c.Resolved.Kind.Lead && known && amps <= trickle || len(j.variant.Panels) == 0 {
			continue
		}
		out = append(out, inCell(i, must("charge_current", "controller.kind", source.CommonPractice.Whole(),
			say.That("The panels stand straight on the battery: nothing ends the charge when it is full, and an overcharged battery burns or gives off hydrogen."),
			say.That("Use a charge controller made for this kind of cells."))))
	}
	return out
}

// fuseNear is how far from the battery a fuse still protects its cable, m (common practice).
const fuseNear = unit.Length(0.2)

// cautionNear says that only the cable behind a fuse is protected. It forbids nothing.
func cautionNear(d unit.Known[unit.Length]) (cell.Flag, bool) {
	if d.Is && d.Val <= fuseNear {
		return cell.Flag{}, false
	}
	return cell.Flag{ID: "fuse_near", Path: "fuse_distance_m", Say: say.That("Only the fuse ends a short circuit, and only behind it. Put it at most %s along the cable from the battery.", say.Length(fuseNear))}, true
}
