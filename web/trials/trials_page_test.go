package trials_test

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web/form"
	"duskweight/web/formtest"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// A fall that is written down reaches the hoist's page and the sheet; the look is linked to its field. The measured
// values make a new variant and leave the old one; without records there is nothing to use.
func TestTrials(t *testing.T) {
	s := webtest.NewSite(t)
	doc := catalog.Sample()
	h := doc.Variants[2].Stores[0].Hoist
	h.Holds.Holds = []lift.Hold{{Kind: "spring_brake", OnDrum: "yes"}, {Kind: "ratchet", OnDrum: "yes"}}
	p, vs := webtest.Create(t, s, "sample", doc)
	at := page.VariantURL(p.ID, vs[2].ID)
	here := at + "/trials/0"

	sent, _ := webtest.FormAt(t, webtest.Ask(s.Handler(), "GET", here+"?all=1", nil).Body.String(), here)
	w := webtest.Ask(s.Handler(), "POST", here+"/measured", url.Values{form.NameRevision: {sent.Get(form.NameRevision)}})
	if w.Code != http.StatusBadRequest {
		t.Errorf("without records: %d", w.Code)
	}
	v := webtest.Stored(t, s, vs[2].ID)
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
	body := webtest.Ask(s.Handler(), "GET", here, nil).Body.String()
	for _, want := range []string{"not every part was looked at", "5 parts still to look at", "make a new variant", "Gears, lifting", "±"} {
		if !strings.Contains(body, want) {
			t.Errorf("the page does not say %q", want)
		}
	}
	hoist := webtest.Ask(s.Handler(), "GET", at+"/hoist/0", nil).Body.String()
	if !strings.Contains(hoist, here+"?field=stores[0].hoist.trials.failures[0].looked.knots#f-stores-0-hoist-trials-failures-0-looked-knots") {
		t.Error("the page of the hoist does not lead to the look that is owed")
	}
	if sheet := webtest.Ask(s.Handler(), "GET", at+"/sheet", nil).Body.String(); strings.Contains(sheet, "125 %") || strings.Contains(sheet, "at most 100") || !strings.Contains(sheet, "Hang nothing") {
		t.Error("the sheet lets it hang after a fall")
	}
	csv := webtest.Ask(s.Handler(), "GET", here+"/records.csv", nil).Body.String()
	if !strings.HasPrefix(csv, "way,date,") || !strings.Contains(csv, "up,'=cmd,") {
		t.Errorf("csv: %s", csv)
	}
	if w := webtest.Ask(s.Handler(), "POST", here+"/measured", url.Values{form.NameRevision: {"1"}}); w.Code != http.StatusConflict {
		t.Errorf("a stale page: %d", w.Code)
	}
	if w := webtest.Ask(s.Handler(), "POST", here+"/measured", url.Values{form.NameRevision: {page.Itoa(int(saved.Revision))}}); w.Code != http.StatusSeeOther {
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
	if formtest.Dump(webtest.Stored(t, s, vs[2].ID)) != formtest.Dump(saved) {
		t.Error("the variant of the records was changed")
	}
}

// After a failure the load steps begin again, and a copy of a variant has neither steps nor records; what fell stays.
func TestStepsBeginAgain(t *testing.T) {
	s := webtest.NewSite(t)
	doc := catalog.Sample()
	h := doc.Variants[2].Stores[0].Hoist
	h.Trials.Steps.S25.Done = "yes"
	h.Trials.Raises = []lift.RaiseTrial{{Date: "Monday"}}
	p, vs := webtest.Create(t, s, "sample", doc)
	here := page.StoreURL(p.ID, vs[2].ID, 0, "trials")
	typed, _ := webtest.FormAt(t, webtest.Ask(s.Handler(), "GET", here+"?all=1", nil).Body.String(), here)
	typed.Set(form.NameDo, "add:stores[0].hoist.trials.failures")
	if w := webtest.Ask(s.Handler(), "POST", here, typed); w.Code != http.StatusSeeOther {
		t.Fatal(w.Code)
	}
	now := webtest.Stored(t, s, vs[2].ID).Value.Stores[0].Hoist.Trials
	if now.Steps.S25.Done != "" || len(now.Failures) != 1 || len(now.Raises) != 1 {
		t.Errorf("after a failure: %+v", now)
	}
	if w := webtest.Ask(s.Handler(), "POST", page.ProjectURL(p.ID)+"/variants", url.Values{"from": {page.Itoa(int(vs[2].ID))}}); w.Code != http.StatusSeeOther {
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

// A day that has not come is refused beside its field; the day itself is saved.
func TestDayThatHasNotCome(t *testing.T) {
	s := webtest.NewSite(t)
	doc := catalog.Sample()
	doc.Variants[2].Stores[0].Hoist.Trials.Failures = []lift.Failure{{Date: "3 May", Shock: "no"}}
	p, vs := webtest.Create(t, s, "sample", doc)
	here := page.VariantURL(p.ID, vs[2].ID) + "/trials/0"
	const field = "stores[0].hoist.trials.failures[0].date"
	post := func(date string) string {
		sent, _ := webtest.FormAt(t, webtest.Ask(s.Handler(), "GET", here+"?part=failures", nil).Body.String(), here+"?part=failures")
		if !sent.Has(field) {
			t.Fatalf("no field %s", field)
		}
		sent.Set(field, date)
		return webtest.Ask(s.Handler(), "POST", here, sent).Body.String()
	}
	const late = "his day has not come yet"
	if day := string(reason.Today(s.Now())); strings.Contains(post(day), late) || webtest.Stored(t, s, vs[2].ID).Value.Stores[0].Hoist.Trials.Failures[0].Date != day {
		t.Errorf("the day itself is refused")
	}
	body := post("2126-01-01")
	if !strings.Contains(body, late) || webtest.Stored(t, s, vs[2].ID).Value.Stores[0].Hoist.Trials.Failures[0].Date == "2126-01-01" {
		t.Errorf("a day a hundred years on is not refused beside its field")
	}
}
