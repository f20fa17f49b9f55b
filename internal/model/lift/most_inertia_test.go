package lift

import (
	"testing"

	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
)

// A motor of 0.3 kg and 36 mm across. Where its shaft turns in a body that stands still: ½·0.15·(0.3·0.036)² = 8.748e-6 kg·m².
// Where the shell turns, and where nobody says: 0.3·0.018² = 9.72e-5, the inertia of a thin ring of all its mass at its
// outermost. The user's own number goes first; half of an answer tells nothing.
func TestMostInertia(t *testing.T) {
	none := unit.Known[unit.Inertia]{}
	m := Machine{Mass: known[unit.Mass](0.3), Diameter: known[unit.Length](0.036)}
	inside, outside, own, half, other := m, m, m, m, m
	inside.ShellTurns, outside.ShellTurns = unit.No, unit.Yes
	own.J = known[unit.Inertia](5e-6)
	half.Mass, other.Diameter = unit.Known[unit.Mass]{}, unit.Known[unit.Length]{}
	for _, c := range []struct {
		name  string
		m     Machine
		most  unit.Known[unit.Inertia]
		bound bool
	}{{"shaft", inside, known[unit.Inertia](8.748e-6), true}, {"shell", outside, known[unit.Inertia](9.72e-5), true}, {"not said", m, known[unit.Inertia](9.72e-5), true},
		{"own", own, known[unit.Inertia](5e-6), false}, {"no mass", half, none, false}, {"no diameter", other, none, false}} {
		most, bound := c.m.MostInertia()
		if most.Is != c.most.Is || bound != c.bound {
			t.Errorf("%s: %v, %v", c.name, most, bound)
		}
		check(t, []row{{c.name, float64(most.Val), float64(c.most.Val), 1e-12, source.Derivation.At("the comment above")}})
	}
}

// With the bound alone the hoist runs as one without inertia, which is worst when it runs away, and stops at the top as one
// whose inertia is the bound, which is worst there: 6.561e-5 kg·m² of ½·(m/2)·(0.3·d)² for 1 kg and 54 mm.
func TestBoundStopsAtTheTop(t *testing.T) {
	none, bound, heavy := worked(), worked(), worked()
	none.Machine.J = unit.Known[unit.Inertia]{}
	bound.Machine = none.Machine
	bound.Machine.Mass, bound.Machine.Diameter, bound.Machine.ShellTurns = known[unit.Mass](1), known[unit.Length](0.054), unit.No
	heavy.Machine.J = known[unit.Inertia](6.561e-5)
	for _, h := range []*Hoist{&none, &bound, &heavy} {
		h.Holds.BrakeDelay = known[unit.Duration](0.5)
	}
	n, b, y := Compute(none), Compute(bound), Compute(heavy)
	if n.Overtravel.Is || n.ReflectedMass.Is || !b.Overtravel.Is {
		t.Fatalf("without the bound %v, with it %v", n.Overtravel, b.Overtravel)
	}
	by := source.Derivation.At("the same hoist, worked out for that inertia")
	check(t, []row{
		{"past the upper stop", float64(b.Overtravel.Val), float64(y.Overtravel.Val), 1e-12, by},
		{"rotor as a mass", float64(b.ReflectedMass.Val), 6.561e-5 * 6666.67 * 6666.67, 1e-5, source.Derivation.At("J·c²")},
		{"runs away", float64(b.LetGo.OpenSpeed), float64(n.LetGo.OpenSpeed), 1e-12, source.Derivation.At("no inertia")},
		{"burst", float64(b.LetGo.BurstForce.Val), float64(n.LetGo.BurstForce.Val), 1e-12, source.Derivation.At("no inertia")},
	})
	if mentionsLack(b, "machine.j_kg_m2") || !mentionsLack(n, "machine.j_kg_m2") {
		t.Errorf("missing: %v; without the bound: %v", b.Missing, n.Missing)
	}
}
