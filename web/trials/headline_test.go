package trials

import (
	"strings"
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
	"duskweight/web/form"
)

// The page says what the judge says: nothing is hung of a plan that is refused, with its reason; one that is proven for 80 of 120 kg is loaded up to
// 80 kg, and its last step is 100 kg (125 %), until the day on which the proof ends.
func TestHeadlineOfTheJudge(t *testing.T) {
	var v trialsView
	v.headline(lift.Hoist{}, &model.HoistResult{Ready: reason.No, Because: []reason.Reason{{Word: reason.No, Say: say.That("The rope is too short.")}}}, unit.Metric)
	if v.Headline != "Do not hang it." || v.Reason != "The rope is too short." {
		t.Errorf("refused: %q %q", v.Headline, v.Reason)
	}
	h := &model.HoistResult{Ready: reason.Proven, Because: []reason.Reason{{Word: reason.Proven, Mass: unit.Of(unit.Mass(80)), Until: "2027-03-01"}}}
	h.Drive.Mass = unit.Of(unit.Mass(120))
	v = trialsView{}
	v.headline(lift.Hoist{}, h, unit.Metric)
	if got := strings.ReplaceAll(v.Headline, unit.Space, " "); !strings.HasPrefix(got, "Proven by test up to 80 kg, until 1 March 2027.") || len(v.More) > 0 {
		t.Errorf("proven: %q %q", got, v.More)
	}
	rows := stairsOf(h).rungs(trialsAt{}, "", form.FormView{}, "", unit.Metric)
	if got := strings.ReplaceAll(rows[4].Mass, unit.Space, " "); got != "100 kg" || rows[0].Form == nil || rows[1].Form != nil {
		t.Errorf("steps: %+v", rows)
	}
	h.Because = append(h.Because, reason.Reason{Word: reason.NotKnown, Forbids: true})
	for _, r := range stairsOf(h).rungs(trialsAt{}, "", form.FormView{}, "", unit.Metric) {
		if r.Form != nil {
			t.Errorf("a hoist that must not even be tried may hang at %s", r.Share)
		}
	}
}

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
