package water

import (
	"math"

	"duskweight/internal/model/unit"
)

// Density is that of water at 20 °C, kg/m³.
const Density unit.Density = 998.2

// smooth is the coefficient C of Hazen and Williams for plastic pipe (from memory; published tables use it for plastic).
const smooth = 150

// Friction is the height, m, that flow loses along a plastic pipe of a length and an inner diameter, h = 10.67·L·Q^1.852/
// (150^1.852·d^4.8704). It is 0 without flow and has no upper end; without a diameter it is without end. Source: Hazen and
// Williams in SI; fitted to turbulent water near 15 °C and speeds up to 3 m/s.
func Friction(flow unit.Flow, length, inner unit.Length) unit.Length {
	if flow <= 0 || length <= 0 {
		return 0
	}
	return unit.Length(10.67 * float64(length) * math.Pow(float64(flow), 1.852) / (math.Pow(smooth, 1.852) * math.Pow(float64(inner), 4.8704)))
}

// velocity is the mean speed of a flow in a pipe, Q/(π·d²/4).
func velocity(flow unit.Flow, inner unit.Length) unit.Speed {
	return unit.Speed(4 * float64(flow) / (math.Pi * float64(inner) * float64(inner)))
}

// PumpFlow is the flow at which a pump of an efficiency spends a power, W, on lifting water to head through a pipe: the root of
// ρ·g·Q·(h + h_f(Q)) = η·P. The left side grows with Q and is convex, so Newton's steps from a flow without friction come down
// to it without passing it.
func PumpFlow(power unit.Power, eta unit.Ratio, head, length, inner unit.Length) unit.Flow {
	const weight = float64(Density) * unit.G
	work := float64(eta) * float64(power)
	if work <= 0 || head <= 0 {
		return 0
	}
	q := work / (weight * float64(head))
	for range 200 {
		lost := float64(Friction(unit.Flow(q), length, inner))
		over := weight*q*(float64(head)+lost) - work
		next := q - over/(weight*(float64(head)+2.852*lost))
		if !(next < q) || q-next <= 1e-15*q {
			return unit.Flow(next)
		}
		q = next
	}
	return unit.Flow(q)
}
