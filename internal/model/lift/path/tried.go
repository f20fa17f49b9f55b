package path

import (
	"duskweight/internal/model/lift"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// afterTests takes in the tests with dead weight: what did not hold 125 % of the load or less the last time it was tried
// gives way, whatever its numbers say. A test that held adds nothing to a check: strength stays the user's statement.
func afterTests(h lift.Hoist, d lift.Drive, checks []Check) []Check {
	last := map[lift.Tested]lift.HeldTrial{}
	for _, t := range h.Trials.Held {
		if t.Held != "" {
			last[t.What] = t
		}
	}
	for _, b := range []struct {
		what           lift.Tested
		id, name, part string
	}{
		{lift.TestedBase, "base_uplift", "the base", ""},
		{lift.TestedBrake, "holds", "the brake", holdName(lift.HoldSpringBrake)},
		{lift.TestedRatchet, "holds", "the ratchet", holdName(lift.HoldRatchet)},
		{lift.TestedCatch, "holds", "the overspeed catch", holdName(lift.HoldOverspeedCatch)},
		{lift.TestedProp, "holds", "the prop", holdName(lift.HoldRatedProp)},
		{"", "holds", "something that was tested", ""},
	} {
		t, ok := last[b.what]
		if !ok || t.Held != unit.No || tooMuch(t, d) {
			continue
		}
		met := false
		for i := range checks {
			if c := &checks[i]; b.what != "" && c.ID == b.id && (b.part == "" || c.Part == b.part) {
				met = true
				letDown(c, b.name, t)
			}
		}
		if !met {
			c := newLine(b.id, b.name, "holds 125 % of the load in the test", source.Platforms.At("125 % of capacity")).c
			letDown(&c, b.name, t)
			checks = append(checks, c)
		}
	}
	return checks
}

// tooMuch reports whether the test asked for more than it has to hold.
func tooMuch(t lift.HeldTrial, d lift.Drive) bool {
	hung, okH := t.Mass.Value()
	m, okM := d.Mass.Value()
	return okH && okM && float64(hung) > 1.25*float64(m)*(1+1e-9)
}

func letDown(c *Check, name string, t lift.HeldTrial) {
	c.forget()
	on := say.That("")
	if t.Date != "" {
		on = say.That(" of %s", t.Date)
	}
	c.Word, c.Say = GivesWay, say.That("%s did not hold its dead weight in the test%s. Mend it, test it again, and write that down under Tests and repairs.", capital(name), on)
}
