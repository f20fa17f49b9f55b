package path

import (
	"math/rand/v2"
	"testing"

	"duskweight/internal/model/lift"
)

// The same with the real drive: what it leaves out or gives must never make a check pass on nothing or print a figure
// that is none.
func TestWithTheRealDrive(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 5))
	for i := range 1500 {
		h := whole()
		h.Machine.Name = "12 V"
		if i > 0 {
			scramble(&h, r)
		}
		d := lift.Compute(h)
		checks := Checks(h, d)
		for _, c := range checks {
			sound(t, c)
		}
		HazardsOf(h, d)
		if t.Failed() {
			return
		}
	}
}

// The tensions of the real drive are those of the closed form that these tests use.
func TestFixtureAgreesWithTheDrive(t *testing.T) {
	h := whole()
	a, b := lift.Compute(h), drive(h)
	if len(a.Tensions) != len(b.Tensions) {
		t.Fatalf("%d parts, %d here", len(a.Tensions), len(b.Tensions))
	}
	for j := range b.Tensions {
		near(t, "up", float64(a.Tensions[j].Up), float64(b.Tensions[j].Up), 1e-12)
		near(t, "down", float64(a.Tensions[j].Down), float64(b.Tensions[j].Down), 1e-12)
	}
	near(t, "torque", float64(a.DrumTorqueUp.Val), float64(b.DrumTorqueUp.Val), .25) // the drive counts the fullest layer
}
