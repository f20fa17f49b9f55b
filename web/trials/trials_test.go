package trials

import (
	"strings"
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
)

// A step counts only with the mass that it asks for, and a test with dead weight only with 125 % of the load.
func TestStepsAndHolds(t *testing.T) {
	mass, kg := unit.Of[unit.Mass](100), unit.Of[unit.Mass]
	rungs := func(s lift.LoadSteps, ready reason.Word) []rung {
		return stairs{steps: s, mass: mass, ready: ready, barred: ready == reason.No}.rungs(trialsAt{}, "stores[0].hoist", form.FormView{}, "2026-11-28", unit.Metric)
	}
	plain := func(s string) string { return strings.ReplaceAll(s, unit.Space, " ") }
	rows := rungs(lift.LoadSteps{S25: lift.LoadStep{Done: "yes", Mass: kg(25)}, S50: lift.LoadStep{Done: "yes", Mass: kg(40)}, S75: lift.LoadStep{Done: "no"}, S100: lift.LoadStep{Done: "yes"}}, reason.Yes)
	for i, want := range []string{"Passed", "Now: hang 50 kg, 100 mm off the ground, for 10 minutes.", "Did not pass", "Passed before: do it again after the step 50 %", "After 100 %"} {
		if plain(rows[i].Say) != want {
			t.Errorf("%s: %q, want %q", rows[i].Share, plain(rows[i].Say), want)
		}
	}
	if f := rows[1].Form; f == nil || f.Mass != "50" || f.Today != "2026-11-28" || f.Path != "stores[0].hoist.trials.steps.at_50" || !strings.HasPrefix(plain(rows[1].More), "Passed with 40 kg only: do it again. ") {
		t.Errorf("the step that is next: %+v, %q", f, rows[1].More)
	}
	for ready, want := range map[reason.Word][3]string{reason.Yes: {"Now: hang 25 kg", "After 25 %", "form"}, reason.NotKnown: {"Now: hang 25 kg", "After 25 %", "form"}, reason.No: {"Hang nothing now", "After 25 %", ""}} {
		rows := rungs(lift.LoadSteps{}, ready)
		if !strings.HasPrefix(plain(rows[0].Say), want[0]) || plain(rows[1].Say) != want[1] || (rows[0].Form != nil) != (want[2] != "") {
			t.Errorf("%s: %q, %q", ready, rows[0].Say, rows[1].Say)
		}
	}
	first := lift.LoadSteps{S25: lift.LoadStep{Done: "yes", Mass: kg(25), Date: "2026-11-02"}}
	if rows := rungs(first, reason.NotKnown); rows[0].Say != "Passed, 2 November 2026" || rows[1].Form != nil || rows[1].Say != "Not until the plan is ready" {
		t.Errorf("not ready, the first step passed: %q, %q", rows[0].Say, rows[1].Say)
	}
	if rows := rungs(first, reason.No); rows[1].Form != nil || rows[1].Say != "Hang nothing now" {
		t.Errorf("refused, the first step passed: %q", rows[1].Say)
	}
	if plain(rows[4].Mass) != "125 kg" {
		t.Errorf("the last step hangs %s", rows[4].Mass)
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
