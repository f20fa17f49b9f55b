package water

import (
	"math"

	"duskweight/internal/model/pipe"
	"duskweight/internal/model/unit"
)

// velocity is the mean speed of a flow in a pipe, Q/(π·d²/4).
func velocity(flow unit.Flow, inner unit.Length) unit.Speed {
	return unit.Speed(4 * float64(flow) / (math.Pi * float64(inner) * float64(inner)))
}

// PumpFlow is the flow at which a pump of an efficiency spends a power, W, on lifting water to head through a pipe: the root of
// ρ·g·Q·(h + h_f(Q)) = η·P. The left side grows with Q and is convex, so Newton's steps from a flow without friction come down
// to it without passing it.
func PumpFlow(power unit.Power, eta unit.Ratio, head, length, inner unit.Length) unit.Flow {
	const weight = float64(pipe.Density) * unit.G
	work := float64(eta) * float64(power)
	if work <= 0 || head <= 0 {
		return 0
	}
	q := work / (weight * float64(head))
	for range 200 {
		lost := float64(pipe.Friction(unit.Flow(q), length, inner))
		over := weight*q*(float64(head)+lost) - work
		next := q - over/(weight*(float64(head)+2.852*lost))
		if !(next < q) || q-next <= 1e-15*q {
			return unit.Flow(next)
		}
		q = next
	}
	return unit.Flow(q)
}
