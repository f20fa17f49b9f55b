package lift

import "duskweight/internal/model/unit"

// MostInertia is the greatest inertia (kg·m²) that the rotor can have, and whether it is a bound: the user's own J, or where
// that is not known a bound from the mass m and the outer diameter d of the motor. Where the shaft turns inside a body that
// stands still, ½·(m/2)·(0.3·d)²: half of the mass turns, within 0.3 of the diameter from the axis (our own judgement). Where
// the outer shell turns, or that is not said, m·(d/2)²: no part of the motor lies further out.
// Not known without J and without mass or diameter.
func (m Machine) MostInertia() (most unit.Known[unit.Inertia], bound bool) {
	if m.J.Is {
		return m.J, false
	}
	if !m.Mass.Is || !m.Diameter.Is {
		return unit.Known[unit.Inertia]{}, false
	}
	mass, d := float64(m.Mass.Val), float64(m.Diameter.Val)
	if m.ShellTurns == unit.No {
		return told[unit.Inertia](0.5 * (mass / 2) * (0.3 * d) * (0.3 * d)), true
	}
	return told[unit.Inertia](mass * (d / 2) * (d / 2)), true
}
