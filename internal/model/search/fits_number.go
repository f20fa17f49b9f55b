package search

import (
	"fmt"
	"slices"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// What names a number of a hoist that may be changed to cure a combination.
type What string

// The closed list of such numbers.
const (
	WhatMass     What = "mass"      // of the heaviest piece
	WhatVolts    What = "volts"     // of the supply
	WhatLimit    What = "limit"     // most current of the supply
	WhatLoad     What = "load"      // resistance of a resistor on the motor
	WhatTravel   What = "travel"    //
	WhatDrum     What = "drum"      // its diameter
	WhatWidth    What = "width"     // of the drum
	WhatShaft    What = "shaft"     // its diameter
	WhatPin      What = "pin"       // its diameter
	WhatKey      What = "key"       // its length
	WhatRopeLong What = "rope_long" // length of the rope
	WhatRope     What = "rope"      // its breaking load, from a label
	WhatPulley   What = "pulley"    // its working load, from a label
	WhatRatio    What = "ratio"     // of a stage without teeth
	WhatTeeth    What = "teeth"     // their width
	WhatGear     What = "gear"      // rated torque of a stage, from a label
	WhatLead     What = "lead"      // angle of a worm
)

// number is a number of a hoist: where it stands, and how it is read and written.
type number struct {
	what  What
	part  string // the first word of its path inside the hoist
	nth   int    // in its list
	of    unit.Quantity
	get   func(*lift.Hoist) (float64, bool)
	set   func(*lift.Hoist, float64)
	buy   bool // a strength: it only grows, and is read on a label
	field string
}

func numberAt[T unit.Number](what What, part, field string, nth int, of unit.Quantity, at func(*lift.Hoist) *unit.Known[T]) number {
	return number{what: what, part: part, field: field, nth: nth, of: of,
		get: func(h *lift.Hoist) (float64, bool) { return float64(at(h).Val), at(h).Is },
		set: func(h *lift.Hoist, x float64) { at(h).Val = T(x) }}
}

// bought is a number that is the strength on a label.
func bought(n number) number {
	n.buy = true
	return n
}

// numbersOf are the numbers of a hoist that are known and may cure it.
func numbersOf(h *lift.Hoist) []number {
	all := []number{
		numberAt(WhatVolts, "raise", "raise.voltage_v", 0, unit.Voltages, func(h *lift.Hoist) *unit.Known[unit.Voltage] { return &h.Raise.Voltage }),
		numberAt(WhatLimit, "raise", "raise.current_limit_a", 0, unit.Currents, func(h *lift.Hoist) *unit.Known[unit.Current] { return &h.Raise.CurrentLimit }),
		numberAt(WhatTravel, "travel_m", "travel_m", 0, unit.Heights, func(h *lift.Hoist) *unit.Known[unit.Length] { return &h.Travel }),
		numberAt(WhatDrum, "drum", "drum.diameter_m", 0, unit.Widths, func(h *lift.Hoist) *unit.Known[unit.Length] { return &h.Drum.Diameter }),
		numberAt(WhatWidth, "drum", "drum.width_m", 0, unit.Widths, func(h *lift.Hoist) *unit.Known[unit.Length] { return &h.Drum.Width }),
		numberAt(WhatShaft, "drum", "drum.shaft_diameter_m", 0, unit.SmallLengths, func(h *lift.Hoist) *unit.Known[unit.Length] { return &h.Drum.ShaftDiameter }),
		numberAt(WhatPin, "drum", "drum.pin_diameter_m", 0, unit.SmallLengths, func(h *lift.Hoist) *unit.Known[unit.Length] { return &h.Drum.PinDiameter }),
		numberAt(WhatKey, "drum", "drum.key_length_m", 0, unit.SmallLengths, func(h *lift.Hoist) *unit.Known[unit.Length] { return &h.Drum.KeyLength }),
		numberAt(WhatRopeLong, "rope", "rope.length_m", 0, unit.Lengths, func(h *lift.Hoist) *unit.Known[unit.Length] { return &h.Rope.Length }),
		bought(numberAt(WhatRope, "rope", "rope.breaking_load_n", 0, unit.Loads, func(h *lift.Hoist) *unit.Known[unit.Force] { return &h.Rope.BreakingLoad })),
	}
	for i := range h.Reeving.Sheaves {
		all = append(all, bought(numberAt(WhatPulley, "reeving", fmt.Sprintf("reeving.sheaves[%d].working_load_n", i), i, unit.Loads, func(h *lift.Hoist) *unit.Known[unit.Force] { return &h.Reeving.Sheaves[i].Rating })))
	}
	for i, l := range h.Lower.Loads {
		if l.Kind == lift.LoadResistor {
			all = append(all, numberAt(WhatLoad, "lower", fmt.Sprintf("lower.loads[%d].resistance_ohm", i), i, unit.Resistances, func(h *lift.Hoist) *unit.Known[unit.Resistance] { return &h.Lower.Loads[i].Resistance }))
		}
	}
	for i, s := range h.Train.Stages {
		at := fmt.Sprintf("train.stages[%d].", i)
		if !s.SunTeeth.Is && !s.RingTeeth.Is {
			all = append(all, numberAt(WhatRatio, "train", at+"ratio", i, unit.GearRatios, func(h *lift.Hoist) *unit.Known[unit.Ratio] { return &h.Train.Stages[i].Ratio }))
		}
		all = append(all, numberAt(WhatTeeth, "train", at+"tooth.face_width_m", i, unit.SmallLengths, func(h *lift.Hoist) *unit.Known[unit.Length] { return &h.Train.Stages[i].Tooth.FaceWidth }),
			numberAt(WhatLead, "train", at+"lead_angle_rad", i, unit.Angles, func(h *lift.Hoist) *unit.Known[unit.Angle] { return &h.Train.Stages[i].LeadAngle }),
			bought(numberAt(WhatGear, "train", at+"rated_torque_nm", i, unit.Torques, func(h *lift.Hoist) *unit.Known[unit.Torque] { return &h.Train.Stages[i].Rated })))
	}
	heaviest := -1
	for i, m := range h.Mass {
		if m.Mass.Is && (heaviest < 0 || m.Mass.Val > h.Mass[heaviest].Mass.Val) {
			heaviest = i
		}
	}
	if heaviest >= 0 {
		all = append(all, numberAt(WhatMass, "mass", fmt.Sprintf("mass[%d].mass_kg", heaviest), heaviest, unit.Masses, func(h *lift.Hoist) *unit.Known[unit.Mass] { return &h.Mass[heaviest].Mass }))
	}
	return slices.DeleteFunc(all, func(n number) bool {
		x, is := n.get(h)
		return !is || x <= 0
	})
}

// with is a hoist with another value of the number.
func (n number) with(h lift.Hoist, x float64) lift.Hoist {
	h.Mass, h.Train.Stages = slices.Clone(h.Mass), slices.Clone(h.Train.Stages)
	h.Reeving.Sheaves, h.Lower.Loads = slices.Clone(h.Reeving.Sheaves), slices.Clone(h.Lower.Loads)
	n.set(&h, x)
	return h
}
