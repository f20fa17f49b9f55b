// Package pipe is water in a plastic pipe: what it weighs and what its flow loses, for the pump that fills a tank by day and
// for the store of lifted water alike.
package pipe

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
// Williams in SI (source.HazenWilliams); fitted to turbulent water near 15 °C and speeds up to 3 m/s.
func Friction(flow unit.Flow, length, inner unit.Length) unit.Length {
	if flow <= 0 || length <= 0 {
		return 0
	}
	return unit.Length(10.67 * float64(length) * math.Pow(float64(flow), 1.852) / (math.Pow(smooth, 1.852) * math.Pow(float64(inner), 4.8704)))
}
