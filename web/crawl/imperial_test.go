package crawl_test

import (
	"html"
	"net/http"
	"net/url"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// metricFigure is a number with a unit that a page in imperial units does not show. Watts, volts, amperes, ohms, hours,
// watt-hours, the sun on a square metre and the square millimetres of a wire are the same in both systems.
var metricFigure = regexp.MustCompile(`\d[ ](?:kg(?:/m³)?|t|g|mm|cm|m|km|µm|N|kN|daN|N·m|mN·m|kN·m|MPa|GPa|kPa|Pa|°C|K|m/s|mm/s|km/h|m²|cm²|m³|l|litres?|kilograms?|metres?|millimetres?|degrees Celsius|g·cm²|kg·cm²|N/mm|N/m)(?:[^\pL\pN²³·/]|$)`)

// With imperial units no page shows a metric figure, but for what stands behind "how", the labels of standards and the
// words of the user.
func TestImperialPages(t *testing.T) {
	s := webtest.NewSite(t)
	sample, plan := catalog.Sample(), catalog.Start(webtest.ExampleAnswers(t))
	for _, doc := range []*model.Document{&sample, &plan} { // the words of the user stay as they are
		eachText(reflect.ValueOf(doc), func(v reflect.Value) { v.SetString("Words") }, "")
		for i := range doc.Variants {
			doc.Variants[i].Origins = nil
		}
	}
	p, vs := webtest.Create(t, s, "sample", sample)
	q, us := webtest.Create(t, s, "first plan", plan)
	if err := s.Store.SaveSettings(t.Context(), map[string]string{page.SettingUnits: "imperial"}); err != nil {
		t.Fatal(err)
	}
	told := map[string]bool{}
	for _, page := range append(append(webtest.PagesOf(p, vs), webtest.PagesOf(q, us)...), "/", "/start") {
		w := webtest.Ask(s.Handler(), "GET", page, nil)
		if w.Code != http.StatusOK {
			continue
		}
		body := behindHow.ReplaceAllString(w.Body.String(), "")
		for _, block := range append(blocksOf(body), attributesOf(body)...) {
			for _, m := range metricFigure.FindAllString(strings.ReplaceAll(block, unit.Space, " "), -1) {
				if key := m + block; !told[key] {
					told[key] = true
					t.Errorf("%s: %q in %q", page, m, form.Clip(block, 220))
				}
			}
		}
	}
}

var (
	behindHow = regexp.MustCompile(`(?s)<details class="how.*?</details>|<p class="echo">.*?</p>`)
	spoken    = regexp.MustCompile(`(?:aria-label|title|value|content)="([^"]*)"|<title>([^<]*)</title>|<(?:text|tspan)\b[^>]*>([^<]*)<`)
)

// attributesOf are the texts of attributes that are shown or read aloud, and those in pictures.
func attributesOf(page string) (out []string) {
	for _, m := range spoken.FindAllStringSubmatch(page, -1) {
		out = append(out, html.UnescapeString(m[1]+m[2]+m[3]))
	}
	return out
}

// The figures of a sentence, by hand: 311/0.45359237 = 685.6 lb; 71.6/1.3558179 = 52.81 lbf·ft; 104 MPa/6894.757 Pa =
// 15 084 psi; 0.0029 m³/3.785411784 l = 0.7661 gal; 0.081 cm²/6.4516 = 0.012555 in²; 35/0.3048 = 114.8 ft/s;
// 1000/4.4482216 = 224.8 lbf; 25·1.8 + 32 = 77 °F; 10 800/0.45359237 = 23 810 lb.
func TestRetell(t *testing.T) {
	for say, want := range map[string]string{
		"It carries 311 kg (working).":          "It carries 686 lb (working).",
		"It must hold 71.6 N·m.":                "It must hold 52.8 lbf·ft.",
		"stressed to 104 MPa, 5 mm":             "stressed to 15 100 psi, 0.197 in",
		"0.0029 m³ of air, 0.081 cm² low down":  "0.766 US gal of air, 0.0126 in² low down",
		"a storm of 35 m/s feels about 1 kN.":   "a storm of 115 ft/s feels about 225 lbf.",
		"at 25 °C":                              "at 77 °F",
		"to last the night: 10\u00a0800 kg":     "to last the night: 23 800 lb",
		"1.6 kg/m³, 3 mm/s, 12 V, 5 kWh, 2 min": "1.6 kg/m³, 3 mm/s, 12 V, 5 kWh, 2 min",
		"100 mm, 200 mm":                        "3.94 in, 7.87 in",
		"no figure":                             "no figure",
	} {
		if got := strings.ReplaceAll(form.Retell(say, unit.Imperial), unit.Space, " "); got != want {
			t.Errorf("%q is told as %q, want %q", say, got, want)
		}
		if got := form.Retell(say, unit.Metric); got != say {
			t.Errorf("metric: %q is told as %q", say, got)
		}
	}
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
	forms := []string{page.ProjectURL(p.ID) + "/place", page.ProjectURL(p.ID) + "/load", at, at + "/hoist/0", at + "/cells/1"}
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
	page := at + "/hoist/0"
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
	here := page.VariantURL(p.ID, vs[0].ID) + "/hoist/0"
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
