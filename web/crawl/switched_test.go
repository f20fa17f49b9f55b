package crawl_test

import (
	"html"
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model/unit"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

var spoken = regexp.MustCompile(`(?:aria-label|title|value|content)="([^"]*)"|<title>([^<]*)</title>|<(?:text|tspan)\b[^>]*>([^<]*)<`)

// attributesOf are the texts of attributes that are shown or read aloud, and those in pictures.
func attributesOf(page string) (out []string) {
	for _, m := range spoken.FindAllStringSubmatch(page, -1) {
		out = append(out, html.UnescapeString(m[1]+m[2]+m[3]))
	}
	return out
}

// What every form of the worked sample shows, sent back unchanged after the units were switched and switched again,
// changes not one bit of the project; and a page that was opened before the switch is read in the units that it shows.
func TestUnitsSwitched(t *testing.T) {
	s := webtest.NewSite(t)
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	units := func(word string) {
		if err := s.Store.SaveSettings(t.Context(), map[string]string{page.SettingUnits: word}); err != nil {
			t.Fatal(err)
		}
	}
	document := func() string {
		return webtest.Ask(s.Handler(), "GET", page.ProjectURL(p.ID)+"/export.json", nil).Body.String()
	}
	at := page.VariantURL(p.ID, vs[0].ID)
	forms := []string{page.ProjectURL(p.ID) + "/place?all=1", page.ProjectURL(p.ID) + "/load?all=1", at, at + "/hoist/0?depth=bench&all=1", at + "/cells/1?all=1"}
	want := ""
	for i, word := range []string{"metric", "imperial", "metric", "imperial", "metric"} {
		units(word)
		for _, page := range forms {
			sent, _ := webtest.FormAt(t, webtest.Ask(s.Handler(), "GET", page, nil).Body.String(), page)
			if w := webtest.Ask(s.Handler(), "POST", page, sent); w.Code != http.StatusSeeOther {
				t.Fatalf("%s in %s units: %d", page, word, w.Code)
			}
		}
		if i == 0 { // a panel without a data sheet has an empty one from here on
			want = document()
		}
		if document() != want {
			t.Fatalf("the project changed in %s units: %s", word, firstDifference(want, document()))
		}
	}
	page := at + "/hoist/0?depth=bench&all=1"
	sent, _ := webtest.FormAt(t, webtest.Ask(s.Handler(), "GET", page, nil).Body.String(), page)
	units("imperial")
	if w := webtest.Ask(s.Handler(), "POST", page, sent); w.Code != http.StatusSeeOther || document() != want {
		t.Errorf("a page of before the switch, sent back unchanged: %d, and the project changed: %v", w.Code, document() != want)
	}
	path := ""
	for name := range sent {
		if strings.HasSuffix(name, "travel_m") {
			path = name
		}
	}
	sent.Set(path, "2.5")
	if w := webtest.Ask(s.Handler(), "POST", page, sent); w.Code != http.StatusSeeOther {
		t.Fatal(w.Code)
	}
	now, err := s.Store.Variant(t.Context(), vs[0].ID)
	if err != nil || now.Value.Stores[0].Hoist.Travel.Val != 2.5 {
		t.Errorf("2.5 typed in a field of metres is %v m (%v)", now.Value.Stores[0].Hoist.Travel.Val, err)
	}
}

// firstDifference is the first line in which two documents differ.
func firstDifference(a, b string) string {
	x, y := strings.Split(a, "\n"), strings.Split(b, "\n")
	for i := range min(len(x), len(y)) {
		if x[i] != y[i] {
			return x[i] + " → " + y[i]
		}
	}
	return "its length"
}

// What could not be saved is kept in the unit that it was typed in: a form refused in feet and opened in metres shows feet,
// and is saved as them. A range is told in the units of the page.
func TestRefusedAcrossUnits(t *testing.T) {
	s := webtest.NewSite(t)
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	travel, drum := "stores[0].hoist.travel_m", "stores[0].hoist.drum.diameter_m"
	here := page.VariantURL(p.ID, vs[0].ID) + "/hoist/0?depth=bench&all=1"
	units := func(word string) {
		if err := s.Store.SaveSettings(t.Context(), map[string]string{page.SettingUnits: word}); err != nil {
			t.Fatal(err)
		}
	}
	form := func() url.Values {
		sent, _ := webtest.FormAt(t, webtest.Ask(s.Handler(), "GET", here, nil).Body.String(), here)
		return sent
	}
	units("imperial")
	sent := form()
	sent.Set(travel, "9")
	sent.Set(drum, "240")
	w := webtest.Ask(s.Handler(), "POST", here, sent)
	want := "Must be more than 0" + unit.Space + "in and at most "
	if w.Code != http.StatusUnprocessableEntity || !strings.Contains(w.Body.String(), want) || !strings.Contains(w.Body.String(), "it is 240"+unit.Space+"in.") {
		t.Errorf("%d; the range is not told in inches", w.Code)
	}
	if again := form(); again.Get(travel) != "9" || again.Get(drum) != "240" {
		t.Errorf("in the same units: %q and %q come back", again.Get(travel), again.Get(drum))
	}
	units("metric")
	again := form()
	if again.Get(travel) != "9 ft" || again.Get(drum) != "240 in" {
		t.Errorf("in the other units: %q and %q come back", again.Get(travel), again.Get(drum))
	}
	again.Set(drum, "110")
	if w := webtest.Ask(s.Handler(), "POST", here, again); w.Code != http.StatusSeeOther {
		t.Fatalf("%d", w.Code)
	}
	v, err := s.Store.Variant(t.Context(), vs[0].ID)
	if err != nil {
		t.Fatal(err)
	}
	if h := v.Value.Stores[0].Hoist; h.Travel.Val != 2.7432 || h.Drum.Diameter.Val != 0.11 {
		t.Errorf("9 ft are saved as %v m, 110 mm as %v m", h.Travel.Val, h.Drum.Diameter.Val)
	}
}
