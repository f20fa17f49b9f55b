package load_test

import (
	"encoding/json"
	"net/http"
	"os"
	"strings"
	"testing"

	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/load"
	"duskweight/internal/model/unit"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// battery is a plan in which everything about battery and loads is answered: 12.8 V, 40 Ah, a fuse of 15 A.
func battery(t *testing.T) model.Document {
	t.Helper()
	text, err := os.ReadFile("../../testdata/readiness/line.json")
	if err != nil {
		t.Fatal(err)
	}
	var all struct{ Bases map[string]json.RawMessage }
	if err := json.Unmarshal(text, &all); err != nil {
		t.Fatal(err)
	}
	doc, err := document.Decode(all.Bases["battery"])
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

// A kettle of 2 kW through an inverter of 1.5 kW: the card stands first in the answer, says when the kettle runs with the lamps, what the
// inverter gives and what to use instead, with a link to the field; a kilowatt and a half of inverter for 1.25 × 2 kW
// is a use of 1.67. The band before all else names the variant that nothing may be used of.
func TestAllAtOnceOnNightLoad(t *testing.T) {
	s, doc := webtest.NewSite(t), battery(t)
	l := &doc.Project.Load
	l.Appliances = append(l.Appliances, load.Appliance{Name: "Kettle", Power: unit.Of(unit.Power(2000)), Count: unit.Of(unit.Count(1)), From: unit.Of(unit.Duration(19 * 3600)), To: unit.Of(unit.Duration(20 * 3600)),
		Supply: load.SupplyInverter, Priority: load.PriorityNice, Purpose: "other", StopsHarm: unit.No})
	l.Inverter = load.Inverter{Present: unit.Yes, Rated: unit.Of(unit.Power(1500)), Surge: unit.Of(unit.Power(3000)), Input: unit.Of(unit.Voltage(12.8)), OwnSockets: unit.Yes}
	p, _ := webtest.Create(t, s, "kettle", doc)
	at := page.ProjectURL(p.ID) + "/load"
	body := webtest.Ask(s.Handler(), http.MethodGet, at, nil).Body.String()
	text := strings.Join(strings.Fields(webtest.Tags.ReplaceAllString(body, " ")), " ")
	for _, want := range []string{"DO NOT USE", "All at once gives way", "From 19:00", "Kettle may run together: 2 010", "Inverter, running", "1.7 ×", "Fuse of the battery", "15 A", "Use one of at least 2 500"} {
		if !strings.Contains(text, want) {
			t.Errorf("the page does not say %q in %s", want, text[strings.Index(text, "All at once"):])
		}
	}
	if a, b := strings.Index(body, `class="state is-no"`), strings.Index(body, "<h1"); a < 0 || a > b {
		t.Errorf("the band does not stand before the heading: %d, %d", a, b)
	}
	for _, id := range []string{`load?field=load.inverter.rated_w#f-load-inverter-rated-w`, `cells/0?field=stores[0].cells.fuse_a#f-stores-0-cells-fuse-a`} {
		if !strings.Contains(body, id+`"`) {
			t.Errorf("no link to %s", id)
		}
	}
	sent, _ := webtest.FormAt(t, webtest.Ask(s.Handler(), http.MethodGet, at+"?all=1", nil).Body.String(), at)
	sent.Set("load.appliances[3].power_w", "1")
	part := webtest.Ask(s.Handler(), http.MethodPost, at+"/try", sent, "X-Part", "results").Body.String()
	if !strings.Contains(part, `data-swap="band"`) || strings.Contains(part, "DO NOT USE") || strings.Contains(part, "gives way") {
		t.Errorf("a kettle of 1 W still gives way: %.400s", part)
	}
}

// Without a variant there is nothing to check, and the card says so; without a lamp nothing runs.
func TestAllAtOnceWithoutVariants(t *testing.T) {
	s := webtest.NewSite(t)
	p, err := s.Store.CreateProject(t.Context(), model.Document{Project: model.Project{Name: "Empty", Seed: 1}}, "made", s.Now())
	if err != nil {
		t.Fatal(err)
	}
	body := webtest.Ask(s.Handler(), http.MethodGet, page.ProjectURL(p.ID)+"/load", nil).Body.String()
	for _, want := range []string{"No lamp or device has hours and watts that are known.", ", cable or battery to check."} {
		if !strings.Contains(body, want) {
			t.Errorf("the page does not say %q: %s", want, webtest.Tags.ReplaceAllString(body, " "))
		}
	}
}
