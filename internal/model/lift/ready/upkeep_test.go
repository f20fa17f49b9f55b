package ready

import (
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
)

// A look counts from the latest day on which all six parts were found sound or renewed: not one with a part left out, not one
// that found damage, not one whose day nobody can read.
func TestNextLook(t *testing.T) {
	sound := lift.Look{Rope: "sound", Knots: "sound", Pulleys: "renewed", Pins: "sound", Container: "sound", Base: "sound"}
	half, damaged := sound, sound
	half.Base, damaged.Rope = "", lift.PartDamaged
	at := func(day string, l lift.Look) lift.Failure { return lift.Failure{Date: day, Look: l} }
	for _, c := range []struct {
		name string
		had  []lift.Failure
		next reason.Day
	}{
		{"none", nil, ""},
		{"one", []lift.Failure{at("2026-11-28", sound)}, "2027-02-28"},
		{"the latest, whatever stands last", []lift.Failure{at("2026-03-01", sound), at("2026-05-02", sound), at("2026-04-01", sound)}, "2026-08-02"},
		{"half of one is none", []lift.Failure{at("2026-03-01", sound), at("2026-05-02", half)}, "2026-06-01"},
		{"damage is none", []lift.Failure{at("2026-03-01", sound), at("2026-05-02", damaged)}, "2026-06-01"},
		{"after a fall", []lift.Failure{{Date: "2026-03-01", Shock: "yes", Look: sound}}, "2026-06-01"},
		{"a day in other words", []lift.Failure{at("last spring", sound)}, ""},
	} {
		if got := NextLook(lift.Trials{Failures: c.had}); got != c.next {
			t.Errorf("%s: %q, not %q", c.name, got, c.next)
		}
		var looks []lift.LookTrial
		for _, f := range c.had {
			looks = append(looks, lift.LookTrial{Date: f.Date, Look: f.Look})
		}
		if got := NextLook(lift.Trials{Looks: looks}); got != c.next {
			t.Errorf("%s, as looks: %q, not %q", c.name, got, c.next)
		}
	}
}
