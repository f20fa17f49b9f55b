package trials_test

import (
	"net/http"
	"strings"
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// firstHoist is the place of the first lifted mass of a document's first variant; -1 for none.
func firstHoist(doc model.Document) int {
	for i, st := range doc.Variants[0].Stores {
		if st.Hoist != nil {
			return i
		}
	}
	return -1
}

// Of the plans that must not hang no load step has fields, of those that are not ready at most the first, of those that are
// ready or proven one. The record form for the yard says the same.
func TestLoadStepsByState(t *testing.T) {
	s := webtest.NewSite(t)
	seen := map[string]int{}
	for _, plan := range webtest.UnsafePlans(t) {
		i := firstHoist(plan.Doc)
		if i < 0 {
			continue
		}
		p, vs := webtest.Create(t, s, plan.ID, plan.Doc)
		at := page.StoreURL(p.ID, vs[0].ID, i, "trials")
		body := webtest.Ask(s.Handler(), "GET", at, nil).Body.String()
		steps := strings.Count(body, `class="rung-ask"`)
		form := webtest.Ask(s.Handler(), "GET", at+"/record", nil).Body.String()
		rows := strings.Count(form, "<b>Up</b>") / 2 * strings.Count(form, `<th scope="row"><b>`)
		hoist := model.HoistOf(s.Grounds.Of(p).Evaluate(vs[0].Value).Stores[i])
		forbids := hoist.Ready == "no"
		for _, r := range hoist.Because {
			forbids = forbids || r.Forbids
		}
		switch seen[string(hoist.Ready)]++; {
		case forbids:
			if steps != 0 || rows != 0 || !strings.Contains(form, "DO NOT HANG.") {
				t.Errorf("%s: must not hang, and has %d load steps on the page and %d rows on the form", plan.ID, steps, rows)
			}
		case hoist.Ready == "not_known":
			if steps > 1 || strings.Contains(form, "50 %") || !strings.Contains(form, "the first load step only") || strings.Contains(body, ".at_50.done") {
				t.Errorf("%s: is not ready, and has %d load steps", plan.ID, steps)
			}
		case steps != 1 || !strings.Contains(form, "125 %"):
			t.Errorf("%s: is %s, and has %d load steps", plan.ID, hoist.Ready, steps)
		}
	}
	for _, word := range []string{"yes", "not_known", "no"} {
		if seen[word] == 0 {
			t.Errorf("no plan is %s", word)
		}
	}
}

// readyPlan is a plan that is ready, with its first load step passed.
func readyPlan(t *testing.T) model.Document {
	t.Helper()
	for _, plan := range webtest.UnsafePlans(t) {
		if i := firstHoist(plan.Doc); plan.Ready == "yes" && i >= 0 {
			plan.Doc.Variants[0].Stores[i].Hoist.Trials.Steps = lift.LoadSteps{S25: lift.LoadStep{Done: unit.Yes, Mass: unit.Of[unit.Mass](1000), Date: "2020-11-02"}}
			return plan.Doc
		}
	}
	t.Fatal("no plan is ready")
	return model.Document{}
}

// A step is passed by one button: mass and day stand in the fields, and what else was written down stays. The next step then has
// the fields. A load that is no number is refused beside its field, on the card of that step.
func TestPassAStep(t *testing.T) {
	s := webtest.NewSite(t)
	doc := readyPlan(t)
	p, vs := webtest.Create(t, s, "ready", doc)
	i := firstHoist(doc)
	at, hoist := page.StoreURL(p.ID, vs[0].ID, i, "trials"), model.HoistPath(i)
	step := hoist + ".trials.steps.at_50"
	body := webtest.Ask(s.Handler(), "GET", at, nil).Body.String()
	_, ask, ok := strings.Cut(body, `class="rung-ask"`)
	if !ok {
		t.Fatal("no step has fields")
	}
	sent, fields := webtest.FormAt(t, `<form action="`+at+strings.Replace(ask[strings.Index(ask, `"`+at)+1+len(at):], `name="asked"`, `name="x"`, 1), at)
	if len(fields) != 2 || fields[0] != step+".mass_kg" || sent.Get(step+".mass_kg") == "" || sent.Get(step+".date") != s.Now().Format("2006-01-02") {
		t.Fatalf("the fields of the step are %v: %v", fields, sent)
	}
	mass := sent.Get(step + ".mass_kg")
	sent.Set(step+".done", "yes")
	sent.Set(step+".mass_kg", "sixty")
	w := webtest.Ask(s.Handler(), "POST", at, sent)
	if w.Code != http.StatusUnprocessableEntity || !strings.Contains(w.Body.String(), "Load step: 50 %") || !strings.Contains(w.Body.String(), "sixty") {
		t.Errorf("a mass that is no number: %d", w.Code)
	}
	sent.Set(step+".mass_kg", mass)
	if w := webtest.Ask(s.Handler(), "POST", at, sent); w.Code != http.StatusSeeOther || w.Header().Get("Location") != at {
		t.Fatalf("passed: %d to %q", w.Code, w.Header().Get("Location"))
	}
	now := webtest.Stored(t, s, vs[0].ID).Value.Stores[i].Hoist.Trials.Steps
	if now.S50.Done != unit.Yes || !now.S50.Mass.Is || now.S25.Date != "2020-11-02" {
		t.Errorf("stored: %+v", now)
	}
	if body := webtest.Ask(s.Handler(), "GET", at, nil).Body.String(); !strings.Contains(body, `name="`+hoist+".trials.steps.at_75.done") {
		t.Error("the step after it has no fields")
	}
}

// The cards together hold every input of the whole form, each on one card.
func TestCardsHoldEveryRecord(t *testing.T) {
	s := webtest.NewSite(t)
	doc := readyPlan(t)
	i := firstHoist(doc)
	tr := &doc.Variants[0].Stores[i].Hoist.Trials
	tr.Raises, tr.Lowers, tr.Warmth, tr.Held = make([]lift.RaiseTrial, 1), make([]lift.LowerTrial, 1), make([]lift.WarmthTrial, 1), make([]lift.HeldTrial, 1)
	tr.Failures, tr.Proofs = []lift.Failure{{Shock: unit.No}}, []lift.Proof{{By: "A. Smith", Witness: "B. Jones"}}
	p, vs := webtest.Create(t, s, "full", doc)
	at := page.StoreURL(p.ID, vs[0].ID, i, "trials")
	_, all := webtest.FormAt(t, webtest.Ask(s.Handler(), "GET", at+"?all=1", nil).Body.String(), at)
	on := map[string]int{}
	for _, part := range []string{"at_25", "at_50", "at_75", "at_100", "at_125", "failures", "raises", "lowers", "least", "warmth", "held", "proofs"} {
		_, fields := webtest.FormAt(t, webtest.Ask(s.Handler(), "GET", at+"?part="+part, nil).Body.String(), at)
		for _, f := range fields {
			on[f]++
		}
	}
	for _, f := range all {
		if on[f] != 1 {
			t.Errorf("%s stands on %d cards", f, on[f])
		}
	}
	if len(on) != len(all) {
		t.Errorf("the cards have %d inputs, the form %d", len(on), len(all))
	}
}
