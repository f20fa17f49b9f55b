package cell

import (
	"math"

	"duskweight/internal/model/unit"
)

// Ventilation is the air that carries away the hydrogen of charging: Q = 0.05·n·I_gas·C_rt·10⁻³ m³/h and openings in and
// out of 28·Q cm² each (IEC 62485-2, section 7). Zero for cells that make no gas in ordinary use.
type Ventilation struct {
	Cells        int
	Boost, Float float64   // m³/h
	Opening      unit.Area // at the inlet and again at the outlet, for boost charging
}

// Air returns the ventilation of n cells in a row of capacity c, for the gas of their kind.
func Air(n int, g Gas, c unit.Charge) Ventilation {
	q := func(mA float64) float64 { return 0.05 * float64(n) * mA * c.AmpereHours() * 1e-3 }
	return Ventilation{n, q(g.Boost), q(g.Float), unit.Area(28 * q(g.Boost) * 1e-4)}
}

// Ventilation returns the air that the bank wants. Strings in parallel add their capacity. The label's capacity is
// taken for the ten-hour capacity of the standard.
func (r Resolved) Ventilation() Ventilation {
	if r.WhyNot != "" || r.Kind.Gas.Boost == 0 {
		return Ventilation{}
	}
	n := int(math.Max(1, math.Round(float64(r.Voltage)/r.Kind.CellVoltage.Value)))
	return Air(n, r.Kind.Gas, r.Charge)
}
