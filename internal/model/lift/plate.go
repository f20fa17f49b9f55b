package lift

import (
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Plate is what the plate of a motor with brushes tells of full load.
type Plate struct {
	Voltage unit.Voltage
	Power   unit.Power // at the shaft
	Speed   unit.AngularSpeed
	Current unit.Current
}

// PlateFree is the current without load as a share of that at full load: of a 250 W scooter motor 1.8 A of 13 A (from memory,
// ± 30 %).
const PlateFree = 1.8 / 13

// FromPlate estimates constant, resistance and current without load of a motor from its full load, ± 30 %:
//
//	T = P/ω, I_0 = 0.138·I, K = T/(I − I_0), R = (V − K·ω)/I
//
// The brushes' drop is inside R. An error is a plain sentence: the plate asks for more than it takes, or leaves no volts for
// R.
func FromPlate(p Plate) (k unit.MachineConstant, r unit.Resistance, free unit.Current, err error) {
	if !(p.Voltage > 0 && p.Power > 0 && p.Speed > 0 && p.Current > 0) {
		return 0, 0, 0, say.Refuse("all four numbers must be above 0")
	}
	if float64(p.Power) >= float64(p.Voltage)*float64(p.Current) {
		return 0, 0, 0, say.Refuse("these numbers do not belong together: the shaft would give %s, and only %s go in", say.Power(p.Power), say.Power(unit.Power(float64(p.Voltage)*float64(p.Current))))
	}
	free = p.Current * PlateFree
	constant := float64(p.Power) / float64(p.Speed) / float64(p.Current-free)
	ohms := (float64(p.Voltage) - constant*float64(p.Speed)) / float64(p.Current)
	if ohms <= 0 {
		return 0, 0, 0, say.Refuse("these numbers do not belong together: nothing is left for the resistance of the motor")
	}
	return unit.MachineConstant(constant), unit.Resistance(ohms), free, nil
}
