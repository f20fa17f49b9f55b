package model

import (
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Wires is the battery on the line: its voltages, its resistance, its cable in the year, and what its board uses.
func (c *CellsResult) Wires() Wires {
	r := c.Resolved
	w := Wires{Standing: r.Standing, Devices: c.devices()}
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

// devices are cable, fuse, board and battery, from the line on.
func (c *CellsResult) devices() []Device {
	d, r := c.Design, c.Resolved
	if r.WhyNot != "" {
		return []Device{device(Battery, say.Sentence{}, ids("not_computed", "batteries_joined"), "")}
	}
	rated := func(k unit.Known[unit.Current]) say.Sentence {
		if !k.Is {
			return say.Sentence{}
		}
		return say.That("%s", say.Current(k.Val))
	}
	area := say.Sentence{}
	if d.CableArea.Is {
		area = say.That("%s", say.WireArea(d.CableArea.Val))
	}
	return []Device{
		device(BatteryCable, area, ids("cable"), "cable_area_m2", "cable_length_m"),
		device(BatteryFuse, rated(d.Fuse), ids("fuse", "peak_fuse", "fuse_breaks"), "fuse_a", "breaking_a"),
		device(Board, rated(d.BoardMost), ids("board"), "management_board", "board_max_a"),
		device(Battery, say.That("%s, %s", say.Voltage(r.Voltage), say.Charge(r.Charge)), ids("volts_line", "volts_touch", "batteries_joined", "low_voltage"), "block_voltage_v", "series", "kind", "internal_ohm"),
	}
}
