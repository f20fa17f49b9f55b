package catalog

import (
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// Stage is a typical gear stage at full load. Strength of its teeth is never typical.
type Stage struct {
	From
	Name       string
	Kind       string // the word of the design: "planetary"
	Efficiency unit.Ratio
	Low, High  unit.Ratio // the range met; the same as Efficiency where none is given
	Idle       unit.Ratio // torque to turn it empty, as a share of its rated input torque
	Breakaway  unit.Ratio // loss torque at rest over loss torque running
}

// Take copies the row's values into a design; ratio and rated input torque are the user's own. A rated torque of 0
// leaves the idle torque not known.
func (s Stage) Take(into *lift.Stage, ratio unit.Ratio, rated unit.Torque) {
	into.Kind = s.Kind
	into.Ratio = unit.Of(ratio)
	into.Efficiency = unit.Of(s.Efficiency)
	into.IdleTorque = unit.Known[unit.Torque]{}
	if rated > 0 {
		into.IdleTorque = unit.Of(unit.Torque(float64(s.Idle) * float64(rated)))
	}
}

// Stages returns typical stages. Friction wheels and belts never stand between the mass and its brake.
func Stages() []Stage {
	of := func(note string) From { return typicalOf("a stage of this kind", note) }
	never := "Never between the mass and its brake."
	return []Stage{
		{of(""), "Metal spur wheels on ball bearings", "spur", 0.97, 0.94, 0.98, 0.01, 1.3},
		{of(""), "Planetary, metal", "planetary", 0.95, 0.95, 0.95, 0.02, 1.3},
		{of(""), "Planetary in a small gear motor", "planetary", 0.90, 0.90, 0.90, 0.05, 1.5},
		{readNote("course notes on a plastic planetary kit: 85 % a stage, varies widely; idle torque and first push from memory", ""), "Planetary, moulded plastic", "planetary", 0.85, 0.85, 0.85, 0.05, 1.6},
		{of(""), "Printed spur wheels, greased", "spur", 0.88, 0.80, 0.93, 0.04, 1.6},
		{readNote("measured printed strain-wave gears of 20:1: 48 to 58 %; idle torque and first push from memory", "Usually stays stuck."), "Printed strain wave", "strain_wave", 0.55, 0.48, 0.60, 0.08, 1.8},
		{of("Often stays stuck."), "Printed cycloid", "cycloid", 0.70, 0.65, 0.75, 0.08, 1.8},
		{of("Stays stuck."), "Worm with one start, lead 3 to 5°", "worm", 0.50, 0.40, 0.60, 0.04, 1.5},
		{of(""), "Worm with 2 to 4 starts, lead 10 to 20°", "worm", 0.76, 0.70, 0.82, 0.04, 1.5},
		{of(never), "Toothed belt", "belt", 0.97, 0.93, 0.97, 0.02, 1.2},
		{of(never), "V-belt", "belt", 0.92, 0.92, 0.92, 0.04, 1.2},
		{of(never), "Round belt", "belt", 0.85, 0.85, 0.85, 0.06, 1.2},
		{of("Dry it falls to 0.92."), "Roller or bicycle chain, clean", "chain", 0.97, 0.92, 0.97, 0.01, 1.2},
		{of(""), "Bevel wheels", "bevel", 0.95, 0.95, 0.95, 0.02, 1.3},
	}
}
