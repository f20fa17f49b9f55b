package page

import (
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
)

// The next look is three months after the last; one that is due says so from the day after. A hoist that may hang asks for a
// first look, one that may not says nothing before somebody has looked.
func TestNextLookInWords(t *testing.T) {
	sound := lift.Look{Rope: "sound", Knots: "sound", Pulleys: "renewed", Pins: "sound", Container: "sound", Base: "sound"}
	looked := []lift.LookTrial{{Date: "2026-11-28", Look: sound}}
	for _, c := range []struct {
		name  string
		ready reason.Word
		looks []lift.LookTrial
		on    reason.Day
		want  string
	}{
		{"not ready, never looked at", reason.NotKnown, nil, "2026-11-29", ""},
		{"ready, never looked at", reason.Yes, nil, "2026-11-29", "before the first lift; no look is recorded"},
		{"proven, never looked at", reason.Proven, nil, "2026-11-29", "before the first lift; no look is recorded"},
		{"not ready, looked at", reason.No, looked, "2026-11-29", "28 February 2027"},
		{"on the day", reason.Yes, looked, "2027-02-28", "28 February 2027"},
		{"the day after", reason.Yes, looked, "2027-03-01", "due since 28 February 2027: look before you lift"},
		{"on paper", reason.Yes, looked, "", "28 February 2027"},
	} {
		h := &model.HoistResult{Ready: c.ready}
		h.Design.Trials.Looks = c.looks
		row, ok := NextLook(h, c.on)
		if ok != (c.want != "") || row.Value != c.want {
			t.Errorf("%s: %q, %v", c.name, row.Value, ok)
		}
	}
}
