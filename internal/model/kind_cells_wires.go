package model

import (
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Wires is the battery on the line: its voltages, its resistance, its cable in the year, and what its board uses.
func (c *CellsResult) Wires() Wires {
	r := c.Resolved
	w := Wires{Standing: r.Standing}
	if r.WhyNot != "" {
		return w
	}
	w.Bank = &Bank{Nominal: r.Voltage, Rest: r.Rest(), Full: r.Full(), Ohm: r.Internal() + r.CableOhm(), ForNight: c.Design.ForNight()}
	w.Lives = []live{{"series", "The battery, charged full,", r.Full()}}
	if !c.Design.CableArea.Is {
		w.Checks = []LineCheck{{ID: "battery_cable", Path: "cable_area_m2", Quantity: unit.Currents, Word: NotKnown, Say: say.That("How thick the battery's cable is, is not known.")}}
	}
	if c.Line.Drop.Is {
		w.Cables = []CableRun{{"cable_area_m2", "battery cable", c.Line.Most, c.Line.Drop.Val, c.Line.DropShare.Val}}
	}
	return w
}
