package model

import (
	"reflect"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// usual are the quantities that a value of a type is told in where no field says otherwise. A type that is not here is a
// plain number to every reader.
var usual = map[reflect.Type]unit.Quantity{
	reflect.TypeFor[unit.Length](): unit.Lengths, reflect.TypeFor[unit.Mass](): unit.Masses, reflect.TypeFor[unit.Force](): unit.Forces,
	reflect.TypeFor[unit.Torque](): unit.Torques, reflect.TypeFor[unit.Stress](): unit.Stresses, reflect.TypeFor[unit.Energy](): unit.Energies,
	reflect.TypeFor[unit.Power](): unit.Powers, reflect.TypeFor[unit.Voltage](): unit.Voltages, reflect.TypeFor[unit.Current](): unit.Currents,
	reflect.TypeFor[unit.Charge](): unit.Charges, reflect.TypeFor[unit.Resistance](): unit.Resistances, reflect.TypeFor[unit.MachineConstant](): unit.MachineConstants,
	reflect.TypeFor[unit.Inertia](): unit.Inertias, reflect.TypeFor[unit.ThermalResistance](): unit.ThermalResistances, reflect.TypeFor[unit.Duration](): unit.Durations,
	reflect.TypeFor[unit.Celsius](): unit.Temperatures, reflect.TypeFor[unit.Angle](): unit.Angles, reflect.TypeFor[unit.AngularSpeed](): unit.RotationSpeeds,
	reflect.TypeFor[unit.Speed](): unit.Speeds, reflect.TypeFor[unit.Area](): unit.Areas, reflect.TypeFor[unit.Irradiance](): unit.Irradiances,
	reflect.TypeFor[unit.Irradiation](): unit.Irradiations, reflect.TypeFor[unit.PerKelvin](): unit.PerKelvins,
}

// Whole is the problem as a sentence that stands without its field: what is wrong, and with what. A range is told in the
// usual unit of its value, for a reader who sees no document.
func (p Problem) Whole() say.Sentence {
	if p.out == nil {
		return p.Say
	}
	if q, ok := usual[p.out.kind]; ok {
		p = p.As(q)
	}
	return say.That("%s: %s", say.Marked(p.out.of), p.Say)
}

// Whole are the problems as sentences that stand without their fields.
func (ps Problems) Whole() Problems {
	out := make(Problems, len(ps))
	for i, p := range ps {
		out[i] = Problem{Path: p.Path, Say: p.Whole()}
	}
	return out
}
