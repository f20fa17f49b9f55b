package page

import (
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// WiringOf names what stands on both sides of the switch.
func WiringOf(h *model.HoistResult) WiringView {
	raise := h.Design.Raise
	v := WiringView{Supply: "supply", Loads: "lamps", Switch: "rating not known", Fused: raise.Feed == lift.FeedDrive || raise.Feed == lift.FeedRelay}
	if raise.Switch.Is {
		v.Switch = "breaks " + unit.Currents.Format(float64(raise.Switch.Val), unit.Metric)
	}
	if h.Direct != nil {
		v.Supply = "panel"
	}
	for _, load := range h.Design.Lower.Loads {
		switch {
		case load.Permanent == unit.Yes && permanentWords[load.Kind] != "":
			v.Shunt = permanentWords[load.Kind]
		case load.Kind == lift.LoadCell:
			v.Loads = "diode, battery"
		}
	}
	return v
}

// permanentWords name what is wired to the motor for good, short enough for the drawing: a resistor or a clamp alone, as the
// judge counts them.
var permanentWords = map[lift.LoadKind]string{lift.LoadResistor: "a resistor", lift.LoadClamp: "a clamp"}

// WiringAlt is the drawing in words.
func WiringAlt(v WiringView) string {
	through := ""
	if v.Fused {
		through = ", through a fuse"
	}
	say := "One changeover switch with off in the middle (" + v.Switch + "). To one side" + through + ", the " + v.Supply + " by day. To the other side what it drives at night: " + v.Loads + ". Its blade goes to the motor, which has a brake on its shaft. "
	if v.Shunt == "" {
		return say + "A resistor that stays on the motor for good is missing."
	}
	return say + "Straight on the motor, without fuse, switch or plug: " + v.Shunt + "."
}
