package path

import (
	"fmt"
	"strings"
	"testing"

	"duskweight/internal/model/unit"
)

// The pressure under a post, in the words of its check: kPa below a tenth of a megapascal, MPa from there on. The force
// under the foot is what the first case says times its area of 0.16 m²; a foot of force/99,000 m² presses with 99 kPa, one
// of force/101,000 m² with 0.101 MPa.
func TestStressOnEitherSideOfItsUnit(t *testing.T) {
	pressed := func(area float64) Check {
		h := whole()
		h.Structure.Posts[0].FootArea = of[unit.Area](area)
		h.Structure.Posts[0].Soil = "rock"
		return find(t, Checks(h, drive(h)), "ground", "the ground under post 1")
	}
	force := float64(pressed(.16).Demand.Val) * .16
	for pascal, want := range map[float64]string{99000: "99 kPa", 101000: "0.101 MPa"} {
		c := pressed(force / pascal)
		near(t, "pressure, Pa", float64(c.Demand.Val), pascal, 1e-9)
		if said := strings.ReplaceAll(fmt.Sprint(c.Say), unit.Space, " "); !strings.Contains(said, want) {
			t.Errorf("%g Pa: %q, want %s", pascal, said, want)
		}
	}
}
