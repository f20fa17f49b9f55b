package trials

import (
	"strings"
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// A step counts only with the mass that it asks for, and a test with dead weight only with 125 % of the load.
func TestStepsAndHolds(t *testing.T) {
	rows := stepRows(lift.LoadSteps{S25: lift.LoadStep{Done: "yes", Mass: unit.Of[unit.Mass](25)}, S50: lift.LoadStep{Done: "yes", Mass: unit.Of[unit.Mass](40)},
		S75: lift.LoadStep{Done: "no"}, S100: lift.LoadStep{Done: "yes"}}, unit.Of[unit.Mass](100), "yes", unit.Metric)
	for i, want := range []string{"passed", "passed with 40\u00a0kg only: do it again; this is next", "did not pass", "passed, but the mass that hung is not known: do it again after the step 50 %", "not done yet"} {
		if rows[i][2] != want {
			t.Errorf("%s: %q, want %q", rows[i][0], rows[i][2], want)
		}
	}
	for ready, want := range map[string][2]string{"yes": {"; this is next", ""}, "not_known": {"; this is next", "; not until the plan is ready"}, "no": {"; hang nothing now", "; hang nothing now"}} {
		if rows := stepRows(lift.LoadSteps{}, unit.Of[unit.Mass](100), ready, unit.Metric); rows[0][2] != "not done yet"+want[0] || rows[1][2] != "not done yet"+want[1] {
			t.Errorf("%s: %q, %q", ready, rows[0][2], rows[1][2])
		}
	}
	dated := stepRows(lift.LoadSteps{S25: lift.LoadStep{Done: "yes", Mass: unit.Of[unit.Mass](10), Date: "Monday"}}, unit.Of[unit.Mass](100), "yes", unit.Metric)
	if want := "passed with 10\u00a0kg only: do it again, Monday; this is next"; dated[0][2] != want {
		t.Errorf("%q, want %q", dated[0][2], want)
	}
	if rows[4][1] != "125\u00a0kg" {
		t.Errorf("the last step hangs %s", rows[4][1])
	}
	said := heldLines([]lift.HeldTrial{{What: "brake", Held: "yes", Mass: unit.Of[unit.Mass](125)}, {What: "brake", Held: "yes", Mass: unit.Of[unit.Mass](110)}, {What: "base", Held: "no"}, {}}, unit.Of[unit.Mass](100), unit.Metric)
	for i, want := range []string{"125 % of the load or more", "Wanted is 125 %", "did not hold", "shows nothing"} {
		if !strings.Contains(said[i], want) {
			t.Errorf("%q does not say %q", said[i], want)
		}
	}
}

// A part that was found damaged stands in the headline until it is renewed, with a shock or without.
func TestTrialsNameWhatIsDamaged(t *testing.T) {
	look := func(rope, shock string) []lift.Failure {
		return []lift.Failure{{Shock: unit.Answer(shock), Look: lift.Look{Rope: lift.Condition(rope), Knots: "sound", Pulleys: "sound", Pins: "damaged", Container: "sound", Base: "sound"}}}
	}
	if got := strings.Join(foundDamaged(append(look("damaged", "yes"), look("damaged", "")...)), ", "); got != "rope, pins or drum" {
		t.Errorf("found %q", got)
	}
	if got := foundDamaged(append(look("damaged", "no"), look("renewed", "yes")[0])); strings.Join(got, ", ") != "rope, pins or drum" {
		t.Errorf("found %q", got)
	}
}

// The last measured ways beside the plan, by hand: 9.5 A of 6.93 A are 37 % more, 40 s of 24.4 s 64 % more, 10 of 10.05 the
// same to a hundredth.
func TestAgainstPlan(t *testing.T) {
	amps, secs := unit.Of[unit.Current], unit.Of[unit.Duration]
	runs := []model.TrialRun{
		{Current: amps(1), PlanCurrent: amps(2)},
		{Current: amps(9.5), PlanCurrent: amps(6.93), Time: secs(40), PlanTime: secs(24.4)},
		{Down: true, Current: amps(10), PlanCurrent: amps(10.05), Time: secs(45), PlanTime: secs(60)},
		{Down: true, Date: "no plan"},
	}
	want := "The last way up took 37 % more current than planned, and 64 % more time than planned."
	if got := strings.ReplaceAll(against(runs), unit.Space, " "); got != want {
		t.Errorf("%q, want %q", got, want)
	}
	want += " The last way down took as much current as planned, and 25 % less time than planned."
	if got := strings.ReplaceAll(against(runs[:3]), unit.Space, " "); got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got := against(nil); got != "" {
		t.Errorf("without runs: %q", got)
	}
}
