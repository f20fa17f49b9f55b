package path

import (
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// What did not hold its dead weight forbids hanging until it held; more than 125 % of the load is no failure of the
// plan. The hoist weighs 100 kg.
func TestAfterTests(t *testing.T) {
	for _, c := range []struct {
		name string
		held []lift.HeldTrial
		want string
	}{
		{"nothing tried", nil, "yes"},
		{"held", []lift.HeldTrial{{What: "brake", Held: "yes", Mass: of[unit.Mass](125)}}, "yes"},
		{"brake", []lift.HeldTrial{{What: "brake", Held: "no", Mass: of[unit.Mass](125)}}, "no"},
		{"base", []lift.HeldTrial{{What: "base", Held: "no"}}, "no"},
		{"what was not said", []lift.HeldTrial{{Held: "no"}}, "no"},
		{"a prop that is not in the plan", []lift.HeldTrial{{What: "prop", Held: "no"}}, "no"},
		{"far more than wanted", []lift.HeldTrial{{What: "brake", Held: "no", Mass: of[unit.Mass](200)}}, "yes"},
		{"mended", []lift.HeldTrial{{What: "brake", Held: "no"}, {What: "brake", Held: "yes"}}, "yes"},
		{"another one held", []lift.HeldTrial{{What: "brake", Held: "no"}, {What: "ratchet", Held: "yes"}}, "no"},
	} {
		h := whole()
		h.Trials.Held = c.held
		d := drive(h)
		checks := Checks(h, d)
		for _, one := range checks {
			sound(t, one)
		}
		if got := worst(checks); got != c.want {
			t.Errorf("%s: %s", c.name, got)
		}
	}
}
