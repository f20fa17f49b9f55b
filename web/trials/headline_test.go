package trials

import (
	"strings"
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
)

// The height of the first step is told in the reader's units, round in both. By hand: 100 mm are 3.94 in, 4 in to one digit.
func TestFirstStepInUnits(t *testing.T) {
	for sys, want := range []string{"at most 100 mm off", "at most 4 in off"} {
		var v trialsView
		v.headline(lift.Hoist{}, &model.HoistResult{Ready: reason.NotKnown}, unit.System(sys))
		if got := strings.ReplaceAll(v.Headline, unit.Space, " "); !strings.Contains(got, want) {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
