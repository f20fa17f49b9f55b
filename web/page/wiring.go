package page

import (
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// WiringOf names what stands on both sides of the switch.
func WiringOf(h *model.HoistResult) WiringView {
	v := WiringView{Supply: "supply", Loads: "lamps", Fused: h.Design.Raise.Feed != lift.FeedPanel}
	if h.Direct != nil {
		v.Supply = "panel"
	}
	for _, load := range h.Design.Lower.Loads {
		switch {
		case load.Permanent == unit.Yes && load.Kind != "":
			v.Shunt = permanentWords[string(load.Kind)]
		case load.Kind == lift.LoadCell:
			v.Loads = "diode, battery"
		}
	}
	if v.Shunt == "" && h.Design.Lower.Shunt == unit.Yes {
		v.Shunt = "resistor or clamp"
	}
	return v
}

// permanentWords name what is wired for good, short enough for the drawing.
var permanentWords = map[string]string{"resistor": "a resistor", "string": "lamps in a row", "cell": "a battery", "constant_power": "a converter", "governed": "a converter", "clamp": "a clamp"}

// WiringAlt is the drawing in words.
func WiringAlt(v WiringView) string {
	through := ""
	if v.Fused {
		through = ", through a fuse"
	}
	say := "One changeover switch with off in the middle. To one side" + through + ", the " + v.Supply + " by day. To the other side what it drives at night: " + v.Loads + ". Its blade goes to the motor, which has a brake on its shaft. "
	if v.Shunt == "" {
		return say + "A resistor that stays on the motor for good is missing."
	}
	return say + "Straight on the motor, without fuse, switch or plug: " + v.Shunt + "."
}
