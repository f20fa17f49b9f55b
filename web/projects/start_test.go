package projects_test

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/web/projects"
	"duskweight/web/webtest"
)

// Whoever knows nothing gets a first answer too: everything is typical, marked so, and a verdict stands on the page.
func TestStartWithoutAnyAnswer(t *testing.T) {
	s := webtest.NewSite(t)
	w := webtest.Ask(s.Handler(), "POST", "/start", url.Values{"place": {projects.PlaceNotKnown}, "mass": {"I do not know"}, "height": {"?"}, "lamps": {""}, "watts": {"not known"}, "hours": {""}})
	if w.Code != http.StatusSeeOther {
		t.Fatalf("%d: %s", w.Code, w.Body)
	}
	if body := webtest.Ask(s.Handler(), "GET", w.Header().Get("Location"), nil).Body.String(); !strings.Contains(strings.ToLower(body), "carries the night") {
		t.Error("no verdict")
	}
	doc, err := s.Store.Export(t.Context(), 1)
	if err != nil {
		t.Fatal(err)
	}
	for _, path := range []string{"place.latitude_rad", "load.appliances[0].count", "load.appliances[0].power_w", "load.appliances[0].from_dusk_s"} {
		if doc.Project.Origins[path].Kind != "typical" {
			t.Errorf("%s is not marked typical", path)
		}
	}
	for _, path := range []string{"stores[0].hoist.mass[0].mass_kg", "stores[0].hoist.travel_m"} {
		if doc.Variants[0].Origins[path].Kind != "typical" {
			t.Errorf("%s is not marked typical", path)
		}
	}
	for _, page := range []string{"/projects/1/place", "/projects/1/load", "/projects/1/variants/1/hoist/0"} {
		if !strings.Contains(webtest.Ask(s.Handler(), "GET", page, nil).Body.String(), "<b>typical</b>") {
			t.Errorf("%s shows no mark", page)
		}
	}
}

// A guess is inside of what is called usual, and the plan that it makes can be taken. An answer that was given is no guess.
func TestGuesses(t *testing.T) {
	for name, g := range catalog.Guesses() {
		if g.Value < g.Low || g.Value > g.High || g.Source == "" {
			t.Errorf("%s: %v of %v to %v, from %q", name, g.Value, g.Low, g.High, g.Source)
		}
		a := webtest.ExampleAnswers(t)
		a.Guess(name)
		if ps := model.Check(catalog.Start(a)); len(ps) > 0 {
			t.Errorf("%s: %v", name, ps)
		}
	}
	if doc := catalog.Start(webtest.ExampleAnswers(t)); doc.Variants[0].Origins["stores[0].hoist.travel_m"].Kind != "" || len(doc.Project.Origins) > 0 {
		t.Error("what was answered is marked typical")
	}
}

// What is to carry the hoist is answered with the first questions: a tree is said there not to be made for this, and stays in
// the plan as typed; a word that is not of the list is refused.
func TestStartSupport(t *testing.T) {
	s := webtest.NewSite(t)
	if body := webtest.Ask(s.Handler(), "GET", "/start", nil).Body.String(); !strings.Contains(body, "A tree, a balcony, roof trusses and joists are not made for this") {
		t.Error("the first questions do not say what is not made for it")
	}
	answers := url.Values{"place": {"Brest"}, "mass": {"80"}, "height": {"4"}, "support": {"living_tree"}}
	if got := webtest.Ask(s.Handler(), "POST", "/start", answers); got.Code != http.StatusSeeOther {
		t.Fatal(got.Code, got.Body.String())
	} else if body := webtest.Ask(s.Handler(), "GET", got.Header().Get("Location")+"/export.json", nil).Body.String(); !strings.Contains(body, `"rests_on": "living_tree"`) {
		t.Error("the tree is not in the plan")
	}
	answers.Set("support", "a cloud")
	if got := webtest.Ask(s.Handler(), "POST", "/start", answers); got.Code != http.StatusUnprocessableEntity || !strings.Contains(got.Body.String(), "Choose one of the list") {
		t.Error("a cloud carries it", got.Code)
	}
}
