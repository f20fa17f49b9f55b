package trials

import (
	"strings"
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
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

// The heading of the load steps says the same height as the line above it and as the sheet: 4 in, not 3.94.
func TestHeadingOfSteps(t *testing.T) {
	steps := TrialsForm()[0].Group
	for sys, want := range map[unit.System]string{unit.Metric: "100 mm off", unit.Imperial: "4 in off"} {
		if got := strings.ReplaceAll(say.Marked(steps.Intro).In(sys), unit.Space, " "); !strings.Contains(got, want) {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
