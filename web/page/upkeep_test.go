package page

import (
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
)

// The next look is three months after the last; one that is due says so from the day after. Nothing is said before the first,
// and paper compares with no day.
func TestNextLookInWords(t *testing.T) {
	sound := lift.Look{Rope: "sound", Knots: "sound", Pulleys: "renewed", Pins: "sound", Container: "sound", Base: "sound"}
	looked := []lift.LookTrial{{Date: "2026-11-28", Look: sound}}
	for _, c := range []struct {
		name  string
		looks []lift.LookTrial
		on    reason.Day
		want  string
	}{
		{"never looked at", nil, "2026-11-29", ""},
		{"looked at", looked, "2026-11-29", "28 February 2027"},
		{"on the day", looked, "2027-02-28", "28 February 2027"},
		{"the day after", looked, "2027-03-01", "due since 28 February 2027: look before you lift"},
		{"on paper", looked, "", "28 February 2027"},
	} {
		row, ok := NextLook(lift.Hoist{Trials: lift.Trials{Looks: c.looks}}, c.on)
		if ok != (c.want != "") || ok && row.Value != c.want {
			t.Errorf("%s: %q, %v", c.name, row.Value, ok)
		}
	}
}
