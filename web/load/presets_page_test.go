package load_test

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/load"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// An empty page asks what is switched on and shows the presets before all else; a press adds the fridge that runs all day, marked typical,
// and a second press a second one. A key that is none adds nothing.
func TestPresetAddsARow(t *testing.T) {
	s := webtest.NewSite(t)
	p, err := s.Store.CreateProject(t.Context(), model.Document{Project: model.Project{Name: "Empty", Seed: 1, Place: sun.Place{Sky: sun.SkyDescribed}}}, "made", s.Now())
	if err != nil {
		t.Fatal(err)
	}
	at := page.ProjectURL(p.ID) + "/load"
	body := webtest.Ask(s.Handler(), http.MethodGet, at, nil).Body.String()
	if !strings.Contains(body, "What is switched on at night?") || !strings.Contains(body, `class="card presets large"`) {
		t.Errorf("the empty page does not ask: %s", webtest.Tags.ReplaceAllString(body, " "))
	}
	for n, key := range []string{"fridge", "fridge", "lathe"} {
		sent := url.Values{form.NameRevision: {page.Itoa(n + 1)}, form.NameDo: {page.PressPreset + ":" + key}, page.NameAsked: {"1"}}
		r := webtest.Ask(s.Handler(), http.MethodPost, at, sent)
		if to := r.Header().Get("Location"); r.Code != http.StatusSeeOther || to != at+"#rows" {
			t.Fatalf("%s: %d to %q: %s", key, r.Code, to, webtest.Tags.ReplaceAllString(r.Body.String(), " "))
		}
	}
	saved, err := s.Store.Project(t.Context(), p.ID)
	if err != nil {
		t.Fatal(err)
	}
	list := saved.Value.Load.Appliances
	if len(list) != 2 {
		t.Fatalf("%d rows after two presses", len(list))
	}
	if a := list[1]; a.From != unit.Of(unit.Duration(0)) || a.To != a.From || a.Purpose != load.ForCooling || saved.Value.Origins["load.appliances[1].power_w"].Kind != model.OriginTypical {
		t.Errorf("%+v, %+v", a, saved.Value.Origins)
	}
	body = webtest.Ask(s.Handler(), http.MethodGet, at, nil).Body.String()
	if strings.Contains(body, "presets large") || !strings.Contains(body, ", all day") {
		t.Errorf("the rows: %s", webtest.Tags.ReplaceAllString(body, " "))
	}
}

// While the hours of a lamp are not known the night needs at least so much; an essential one is named, one that is nice to have is not.
func TestHeadlineSaysAtLeast(t *testing.T) {
	s, doc := webtest.NewSite(t), battery(t)
	lamps := doc.Project.Load.Appliances
	headline := func() string {
		p, _ := webtest.Create(t, s, "night", doc)
		body := webtest.Ask(s.Handler(), http.MethodGet, page.ProjectURL(p.ID)+"/load", nil).Body.String()
		_, rest, _ := strings.Cut(body, "<h1")
		_, rest, _ = strings.Cut(rest, ">")
		h, _, _ := strings.Cut(rest, "</h1>")
		return h
	}
	if h := headline(); strings.Contains(h, "at least") {
		t.Errorf("all is known: %q", h)
	}
	open := load.Appliance{Name: "Fridge", Power: unit.Of[unit.Power](80), Count: unit.Of[unit.Count](1), Supply: load.SupplyDc, Priority: load.PriorityEssential}
	doc.Project.Load.Appliances = append(lamps[:len(lamps):len(lamps)], open)
	if h := headline(); !strings.Contains(h, "at least") || !strings.Contains(h, "When “Fridge” runs is not known, so it is not counted.") {
		t.Errorf("a fridge without hours: %q", h)
	}
	open.Priority = load.PriorityNice
	doc.Project.Load.Appliances = append(lamps[:len(lamps):len(lamps)], open)
	if h := headline(); !strings.Contains(h, "at least") || strings.Contains(h, "Fridge") {
		t.Errorf("one that is nice to have: %q", h)
	}
}
