package lift

import (
	"math"

	"duskweight/internal/model/unit"
)

// Back is what a stage does when its output is turned.
type Back string

// The classes of a stage by its forward efficiency: under 0.45 it locks, up to 0.55 it is uncertain, above it runs
// back (source.SelfLockFAQ). No gear of any class is counted on to hold a mass.
const (
	Locks     Back = "locks"
	Uncertain Back = "uncertain"
	RunsBack  Back = "runs back"

	lockBelow = 0.45
	sureAbove = 0.55
)

// Class returns the class of a stage with a forward efficiency.
func Class(forward unit.Ratio) Back {
	switch {
	case forward < lockBelow:
		return Locks
	case forward <= sureAbove:
		return Uncertain
	}
	return RunsBack
}

// BackwardOf returns the efficiency from drum to motor that belongs to an efficiency from motor to drum, by the law of
// equal loss torque at the stage's output: 2 − 1/η. 0 or less: it does not run back.
func BackwardOf(forward unit.Ratio) unit.Ratio { return 2 - 1/forward }

// BreakawayForward returns the forward efficiency of the first push, the loss torque being b times the running one:
// 1/η_ba = 1 + b·(1/η − 1).
func BreakawayForward(forward, b unit.Ratio) unit.Ratio { return 1 / (1 + b*(1/forward-1)) }

// BreakawayBackward returns the backward efficiency of the first push: 1 − b·(1 − back), which for back = 2 − 1/η is
// 1 − b·(1/η − 1).
func BreakawayBackward(backward, b unit.Ratio) unit.Ratio { return 1 - b*(1-backward) }

// PlanetaryRatio returns 1 + Z_r/Z_s: sun in, ring held, carrier out.
func PlanetaryRatio(sun, ring unit.Count) unit.Ratio { return 1 + unit.Ratio(ring)/unit.Ratio(sun) }

// PlanetaryForward returns (1 + η_0·i_0)/(1 + i_0) with i_0 = Z_r/Z_s and η_0 the efficiency with the carrier held
// (source.VDI2157).
func PlanetaryForward(mesh, i0 unit.Ratio) unit.Ratio { return (1 + mesh*i0) / (1 + i0) }

// PlanetaryBackward returns (1 + i_0)/(1 + i_0/η_0) (source.VDI2157).
func PlanetaryBackward(mesh, i0 unit.Ratio) unit.Ratio { return (1 + i0) / (1 + i0/mesh) }

// PlanetaryFaults returns why these teeth cannot be assembled, in words; none when they can. A ring of 0 follows from
// sun and planet.
//
//	Z_r = Z_s + 2·Z_p;   (Z_s + Z_r)/planets whole;   (Z_s + Z_p)·sin(π/planets) > Z_p + 2
func PlanetaryFaults(sun, planet, ring, planets unit.Count) []string {
	var say []string
	if ring == 0 {
		ring = sun + 2*planet
	}
	if planet > 0 && ring != sun+2*planet {
		say = append(say, "The ring must have as many teeth as the sun and two planets together.")
	}
	if planets > 0 && (sun+ring)%planets != 0 {
		say = append(say, "Sun and ring together must have a number of teeth that the number of planets divides, or the planets cannot be set in evenly.")
	}
	if planets > 1 && planet > 0 && float64(sun+planet)*math.Sin(math.Pi/float64(planets)) <= float64(planet+2) {
		say = append(say, "The planets would touch each other: fewer planets, or smaller ones.")
	}
	return say
}

// WormForward returns the efficiency of a worm that drives its wheel, with lead angle λ, friction μ and normal pressure
// angle φ: (cos φ − μ·tan λ)/(cos φ + μ·cot λ) (source.Shigley, eq. 13–46). 0 or less: it cannot drive.
func WormForward(lead unit.Angle, friction unit.Ratio, pressure unit.Angle) unit.Ratio {
	l, mu, cos := float64(lead), float64(friction), math.Cos(float64(pressure))
	return unit.Ratio((cos - mu*math.Tan(l)) / (cos + mu/math.Tan(l)))
}

// WormBackward returns the efficiency of the wheel driving its worm: (cos φ − μ·cot λ)/(cos φ + μ·tan λ).
func WormBackward(lead unit.Angle, friction unit.Ratio, pressure unit.Angle) unit.Ratio {
	l, mu, cos := float64(lead), float64(friction), math.Cos(float64(pressure))
	return unit.Ratio((cos - mu/math.Tan(l)) / (cos + mu*math.Tan(l)))
}

// StageUp returns the torque at a stage's input that raises a torque at its output: T/(r·η) + T_0.
func StageUp(out unit.Torque, ratio, forward unit.Ratio, idle unit.Torque) unit.Torque {
	return out/unit.Torque(ratio*forward) + idle
}

// StageDown returns the torque that a stage hands on towards the motor: T·back/r − T_0. 0 or less: it does not run back.
func StageDown(out unit.Torque, ratio, backward unit.Ratio, idle unit.Torque) unit.Torque {
	return out*unit.Torque(backward)/unit.Torque(ratio) - idle
}
