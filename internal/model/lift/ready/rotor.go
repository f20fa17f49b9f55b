package ready

import (
	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// swiftest is the shortest time J·R/K² in which a motor without load comes to 63 % of its speed. Data sheets print 3 to 20 ms
// for motors without iron in the rotor and about 0.4 ms for the swiftest servo motors (from memory); half of that is taken.
const swiftest unit.Duration = 0.0002

// rotor is an inertia that no rotor has: none, more than a motor of that mass and diameter can hold, or so little that the
// motor would come to its speed at once. How far a hoist runs past its upper stop hangs on it.
func rotor(c Case) []reason.Reason {
	m, d := c.Hoist.Machine, c.Plan.Drive.Machine
	r := reason.Reason{ID: "contradiction", Word: reason.NotKnown, Path: "machine.j_kg_m2", Clears: reason.Answer,
		Mend: say.That("Use the figure of its data sheet, or that of a motor of its size."), Source: source.Judgement.Whole()}
	if m.J.Is && m.J.Val <= 0 {
		r.Say = say.That("Every rotor has some inertia: it drives on when the mass has met the upper stop.")
		return []reason.Reason{r}
	}
	if most, ok := (lift.Machine{Mass: m.Mass, Diameter: m.Diameter}).MostInertia(); ok && m.J.Is && m.J.Val > most.Val {
		r.Beside, r.Source = "machine.mass_kg", source.Derivation.Whole()
		r.Say = say.That("Two answers contradict each other: the inertia of the rotor, and the mass and the diameter of the motor. A motor of that size has at most %s.", say.Of(unit.Inertias, float64(most.Val)))
		return []reason.Reason{r}
	}
	most, bound := m.MostInertia()
	if !most.Is || !d.K.Is || !d.R.Is {
		return nil
	}
	if t := float64(most.Val) * float64(d.R.Val) / (float64(d.K.Val) * float64(d.K.Val)); t < float64(swiftest) {
		if bound {
			r.Path, r.Mend = "machine.mass_kg", say.That("Weigh the motor, and measure its diameter.")
		}
		r.Say = say.That("A rotor with so little inertia would come to its speed at once: no motor with these constants does.")
		return []reason.Reason{r}
	}
	return nil
}
