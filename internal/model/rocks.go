package model

import (
	"math"

	"duskweight/internal/model/pipe"
	"duskweight/internal/model/unit"
)

// Weighed is what gives one energy at the end of the wires: rock or water that comes down from a height, or a battery.
type Weighed struct {
	Rock   unit.Mass
	Water  unit.Volume
	Charge unit.Charge // of a battery of 12.8 V that is used to 80 %
}

// What a good hoist gives on its way down of the energy of its mass, and a small turbine of that of its water (our own
// judgement; the ranges stand on the page).
const (
	hoistOut   = 0.55
	turbineOut = 0.40
)

// Weigh reckons what gives an energy, J, from a height, m, over zero: m = E/(g·h·η), V = E/(ρ·g·h·η), and the battery.
func Weigh(e unit.Energy, height unit.Length) Weighed {
	gh := unit.G * float64(height)
	return Weighed{unit.Mass(float64(e) / (gh * hoistOut)), unit.Volume(float64(e) / (float64(pipe.Density) * gh * turbineOut)), batteryFor(e)}
}

// What stone weighs, solid, kg/m³, and the energy on the label of a battery for each m³ of it, J (both from memory: granite; an
// iron-phosphate battery of 1.28 kWh has 12.5 litres).
const (
	stone      = 2650.0
	cellsDense = 1.28e3 * 3600 / 0.0125
)

// Sides are the sides of cubes of the rock, of the water and of the battery, m.
func (w Weighed) Sides() (rock, water, battery unit.Length) {
	side := func(volume float64) unit.Length { return unit.Length(math.Cbrt(volume)) }
	return side(float64(w.Rock) / stone), side(float64(w.Water)), side(float64(w.Charge) * ironVolts / cellsDense)
}
