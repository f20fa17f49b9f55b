package cell

import (
	"math"

	"duskweight/internal/model/unit"
)

// Copper: resistivity at 20 °C (source.CopperIEC: 0.017241 Ω·mm²/m) and its rise, 1/K.
const (
	CopperRho   = 0.017241e-6 // Ω·m
	CopperAlpha = 0.00393     // 1/K
)

// sections are the standard cross-sections, mm² (source.IEC60228), with the current that a PVC cable withstands in a house,
// A (source.IEC60364, from memory; 0: not known, and so for all that are thicker).
var sections = []struct{ area, amps float64 }{
	{1.5, 17.5}, {2.5, 24}, {4, 32}, {6, 41}, {10, 57}, {16, 76}, {25, 96}, {35, 119}, {50, 0},
}

// Drop returns the voltage lost there and back in a cable of length l one way: 2·l·I·ρ/A, copper at temperature t.
func Drop(l unit.Length, i unit.Current, a unit.Area, t unit.Celsius) unit.Voltage {
	return unit.Voltage(2 * float64(l) * float64(i) * resistivity(t) / float64(a))
}

// resistivity returns that of copper at temperature t, Ω·m.
func resistivity(t unit.Celsius) float64 { return CopperRho * (1 + CopperAlpha*(float64(t)-20)) }

// Ampacity returns the current that a cable of section a may carry, by the next smaller standard section; false below
// 1.5 mm² and above 35 mm², where the table has none.
func Ampacity(a unit.Area) (unit.Current, bool) {
	amps := 0.0
	for _, s := range sections {
		if s.area*1e-6 > float64(a)*(1+1e-9) {
			break
		}
		amps = s.amps
	}
	return unit.Current(amps), amps != 0
}

// AreaFor returns the smallest standard section that carries a current; false where the table has none.
func AreaFor(i unit.Current) (unit.Area, bool) {
	for _, s := range sections {
		if s.amps >= float64(i) {
			return unit.Area(s.area * 1e-6), true
		}
	}
	return 0, false
}

// AmpacityEnds returns the least and the greatest current that a cable of section a may carry: what the table has for it, or
// what the nearest section of the table bounds.
func AmpacityEnds(a unit.Area) (least, most unit.Current) {
	const thinnest, thickest = 17.5, 119 // A, of 1.5 and 35 mm²
	if i, ok := Ampacity(a); ok {
		return i, i
	}
	if float64(a) < 1.5e-6 {
		return 0, thinnest
	}
	return thickest, unit.Current(math.Inf(1))
}

// DropMost is the share of the voltage that may be lost in a cable (common practice), HotCable the temperature at which
// it is counted.
const (
	DropMost = 0.03
	HotCable = unit.Celsius(40)
)
