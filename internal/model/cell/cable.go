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

// sections are the standard cross-sections, mm², with the greatest resistance at 20 °C of solid and stranded (class 2)
// and of flexible conductors (class 5, from memory), Ω/km (source.IEC60228), and the current that a PVC cable stands in
// a house, A (source.IEC60364, from memory; 0: not known).
var sections = []struct{ area, class2, class5, amps float64 }{
	{1.5, 12.1, 13.3, 17.5}, {2.5, 7.41, 7.98, 24}, {4, 4.61, 4.95, 32}, {6, 3.08, 3.30, 41}, {10, 1.83, 1.91, 57},
	{16, 1.15, 1.21, 76}, {25, 0.727, 0.780, 96}, {35, 0.524, 0.554, 119}, {50, 0.387, 0.386, 0}, {70, 0.268, 0, 0},
	{95, 0.193, 0, 0}, {120, 0.153, 0, 0}, {150, 0.124, 0, 0}, {185, 0.0991, 0, 0}, {240, 0.0754, 0, 0}, {300, 0.0601, 0, 0},
}

// ConductorOhm returns the greatest resistance of a metre of a standard section at 20 °C: class 2 or class 5. It is
// false for a section that is not in the table.
func ConductorOhm(area unit.Area, class int) (unit.Resistance, bool) {
	for _, s := range sections {
		if math.Abs(s.area*1e-6-float64(area)) > 1e-9 {
			continue
		}
		ohm := map[int]float64{2: s.class2, 5: s.class5}[class]
		return unit.Resistance(ohm / 1000), ohm > 0
	}
	return 0, false
}

// AtTemperature brings a copper resistance at 20 °C to temperature t.
func AtTemperature(r20 unit.Resistance, t unit.Celsius) unit.Resistance {
	return r20 * unit.Resistance(1+CopperAlpha*(float64(t)-20))
}

// GaugeArea returns the cross-section of a wire of a gauge number: d = 0.127 mm · 92^((36−n)/39) (source.ASTMB258).
func GaugeArea(n int) unit.Area {
	d := 0.127e-3 * math.Pow(92, float64(36-n)/39)
	return unit.Area(math.Pi / 4 * d * d)
}

// Drop returns the voltage lost there and back in a cable of length l one way: 2·l·I·ρ/A, copper at temperature t.
func Drop(l unit.Length, i unit.Current, a unit.Area, t unit.Celsius) unit.Voltage {
	rho := CopperRho * (1 + CopperAlpha*(float64(t)-20))
	return unit.Voltage(2 * float64(l) * float64(i) * rho / float64(a))
}

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
	return unit.Current(amps), amps > 0
}

// DropMost is the share of the voltage that may be lost in a cable (common practice), HotCable the temperature at which
// it is counted.
const (
	DropMost = 0.03
	HotCable = unit.Celsius(40)
)
