package model

import (
	"duskweight/internal/model/unit"
)

// Wires is a store as the line sees it. What a kind does not have is zero.
type Wires struct {
	Standing  unit.Power // what it uses all the time, as far as it is known
	Lifting   unit.Power // at most, in the moment in which it begins to fill from the line
	Brake     unit.Power // of what holds it open while it moves
	OwnPanels bool       // the panels feed it straight, and so neither the line nor a battery
	Bank      *Bank      // nil for a store that does not carry the line
	Lives     []live     // its voltages, with paths inside its design
	Cables    []CableRun // its cables, where what flows is known, with paths inside its design

	Devices []Device // what the rules of electricity check of it, along the current, with paths inside its design

	Checks []LineCheck // of what carries its current at the peak, beside those of Peak, with paths inside its design
}

// Bank is a store that carries the line: a battery of which enough is known.
type Bank struct {
	Nominal  unit.Voltage
	Rest     unit.Voltage    // without a current
	Full     unit.Voltage    // at the end of its charge
	Ohm      unit.Resistance // of cells and cable
	ForNight bool            // false: it feeds the electronics alone
}

// live is a voltage somewhere, and the field that gives it.
type live struct {
	path, what string
	volts      unit.Voltage
}

// banks are the places of the stores that carry the line, and what they are.
func banks(stores []StoreResult) (at []int, of []*Bank) {
	for i, s := range stores {
		if b := s.Part.Wires().Bank; b != nil {
			at, of = append(at, i), append(of, b)
		}
	}
	return at, of
}
