package web

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
)

// A fall that is written down reaches the hoist's page and the sheet; the look is linked to its field. The measured
// values make a new variant and leave the old one; without records there is nothing to use.
func TestTrials(t *testing.T) {
	s := newSite(t)
	doc := catalog.Sample()
	h := doc.Variants[2].Stores[0].Hoist
	h.Holds.Holds = []lift.Hold{{Kind: "spring_brake", OnDrum: "yes"}, {Kind: "ratchet", OnDrum: "yes"}}
	p, vs := create(t, s, "sample", doc)
	at := variantURL(p.ID, vs[2].ID)
	page := at + "/trials/0"

	sent, _ := formAt(t, ask(s.Handler(), "GET", page, nil).Body.String(), page)
	w := ask(s.Handler(), "POST", page+"/measured", url.Values{nameRevision: {sent.Get(nameRevision)}})
	if w.Code != http.StatusBadRequest {
		t.Errorf("without records: %d", w.Code)
	}
	v := stored(t, s, vs[2].ID)
	d := lift.Compute(*v.Value.Stores[0].Hoist)
	trials := &v.Value.Stores[0].Hoist.Trials
	trials.Failures = []lift.Failure{{Date: "3 May", Shock: "yes", Look: lift.Look{Rope: "sound"}}}
	for _, share := range []float64{0.5, 0.75, 1} {
		kg := unit.Of(d.Mass.Val * unit.Mass(share))
		trials.Raises = append(trials.Raises, lift.RaiseTrial{Mass: kg, Current: unit.Of(unit.Current(0.2) + d.Raising.Current*unit.Current(share)), Date: "=cmd"})
	}
	saved, err := s.Store.SaveVariant(t.Context(), v.ID, v.Value, store.Edit{Revision: v.Revision, Said: "tried"}, s.Now())
	if err != nil {
		t.Fatal(err)
	}
	body := ask(s.Handler(), "GET", page, nil).Body.String()
	for _, want := range []string{"not every part was looked at", "5 parts still to look at", "make a new variant", "Gears, lifting", "±"} {
		if !strings.Contains(body, want) {
			t.Errorf("the page does not say %q", want)
		}
	}
	hoist := ask(s.Handler(), "GET", at+"/hoist/0", nil).Body.String()
	if !strings.Contains(hoist, page+"#f-stores-0-hoist-trials-failures-0-looked-knots") {
		t.Error("the page of the hoist does not lead to the look that is owed")
	}
	if sheet := ask(s.Handler(), "GET", at+"/sheet", nil).Body.String(); strings.Contains(sheet, "125 %") || strings.Contains(sheet, "at most 100") || !strings.Contains(sheet, "Hang nothing") {
		t.Error("the sheet lets it hang after a fall")
	}
	csv := ask(s.Handler(), "GET", page+"/records.csv", nil).Body.String()
	if !strings.HasPrefix(csv, "way,date,") || !strings.Contains(csv, "up,'=cmd,") {
		t.Errorf("csv: %s", csv)
	}
	if w := ask(s.Handler(), "POST", page+"/measured", url.Values{nameRevision: {"1"}}); w.Code != http.StatusConflict {
		t.Errorf("a stale page: %d", w.Code)
	}
	if w := ask(s.Handler(), "POST", page+"/measured", url.Values{nameRevision: {itoa(int(saved.Revision))}}); w.Code != http.StatusSeeOther {
		t.Fatalf("measured: %d %s", w.Code, w.Body)
	}
	all, err := s.Store.Variants(t.Context(), p.ID)
	if err != nil {
		t.Fatal(err)
	}
	made := all[len(all)-1].Value
	if len(all) != len(vs)+1 || made.Stores[0].Hoist.Train.Stages[0].Efficiency == h.Train.Stages[0].Efficiency {
		t.Errorf("%d variants, the last %q", len(all), made.Name)
	}
	if dump(stored(t, s, vs[2].ID)) != dump(saved) {
		t.Error("the variant of the records was changed")
	}
}

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
		return []lift.Failure{{Shock: shock, Look: lift.Look{Rope: rope, Knots: "sound", Pulleys: "sound", Pins: "damaged", Container: "sound", Base: "sound"}}}
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

// After a failure the load steps begin again, and a copy of a variant has neither steps nor records; what fell stays.
func TestStepsBeginAgain(t *testing.T) {
	s := newSite(t)
	doc := catalog.Sample()
	h := doc.Variants[2].Stores[0].Hoist
	h.Trials.Steps.S25.Done = "yes"
	h.Trials.Raises = []lift.RaiseTrial{{Date: "Monday"}}
	p, vs := create(t, s, "sample", doc)
	page := storeURL(p.ID, vs[2].ID, 0, "trials")
	typed, _ := formAt(t, ask(s.Handler(), "GET", page, nil).Body.String(), page)
	typed.Set(nameDo, "add:stores[0].hoist.trials.failures")
	if w := ask(s.Handler(), "POST", page, typed); w.Code != http.StatusSeeOther {
		t.Fatal(w.Code)
	}
	now := stored(t, s, vs[2].ID).Value.Stores[0].Hoist.Trials
	if now.Steps.S25.Done != "" || len(now.Failures) != 1 || len(now.Raises) != 1 {
		t.Errorf("after a failure: %+v", now)
	}
	if w := ask(s.Handler(), "POST", projectURL(p.ID)+"/variants", url.Values{"from": {itoa(int(vs[2].ID))}}); w.Code != http.StatusSeeOther {
		t.Fatal(w.Code)
	}
	all, err := s.Store.Variants(t.Context(), p.ID)
	if err != nil {
		t.Fatal(err)
	}
	if tried := all[3].Value.Stores[0].Hoist.Trials; len(tried.Raises) != 0 || len(tried.Failures) != 1 {
		t.Errorf("the copy has %+v", tried)
	}
}
