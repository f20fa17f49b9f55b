package web

import (
	"encoding/json"
	"net/http"
	"net/url"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/unit"
)

// what a page says, without its tags and with single spaces.
func readable(body string) string {
	return strings.Join(strings.Fields(strings.ReplaceAll(unescape(tags.ReplaceAllString(body, " ")), "\u00a0", " ")), " ")
}

// A list of which some parts have no price: how many have one, what they come to, which miss one, and no figure that
// pretends to know the rest.
func TestPartsNotPriced(t *testing.T) {
	s := newSite(t)
	p, vs := create(t, s, "sample", catalog.Sample())
	at := variantURL(p.ID, vs[0].ID) + "/parts"
	w := ask(s.Handler(), "GET", at, nil)
	text := readable(w.Body.String())
	for _, want := range []string{
		"8 of 12 listed parts priced;", "more are asked for by the plan.",
		"Priced so far", "218 EUR", // 0 + 32 + 28 + 45 + 70 + 25 + 12 + 6
		"No price yet for: Four planetary stages 5:1, steel; Motor 24 V, 3000 rpm; Fence and sign; Eye bolt M8 with shoulder.",
		"All parts, at the start how", "not known",
		"The plan asks for",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not on the page", want)
		}
	}
	if strings.Contains(w.Body.String(), "data-chart") {
		t.Error("a chart is drawn of a bill that is not priced")
	}
	if w := ask(s.Handler(), "GET", at+"/costs.csv", nil); w.Code != http.StatusNotFound {
		t.Errorf("numbers of a bill that is not priced: %d", w.Code)
	}
}

// The eye bolt of 140 kg where the check asks for more is said to be too little, on the page and on the market list.
func TestPartTooWeak(t *testing.T) {
	s := newSite(t)
	p, vs := create(t, s, "sample", catalog.Sample())
	for _, page := range []string{"/parts", "/parts/market"} {
		if text := readable(ask(s.Handler(), "GET", variantURL(p.ID, vs[0].ID)+page, nil).Body.String()); !strings.Contains(text, "The plan says 140 kg: too little.") {
			t.Errorf("%s does not say that the eye bolt is too weak", page)
		}
		if text := readable(ask(s.Handler(), "GET", variantURL(p.ID, vs[2].ID)+page, nil).Body.String()); strings.Contains(text, "too little") {
			t.Errorf("%s says that something of the mended hoist is too weak", page)
		}
	}
}

// What the plan asks for goes on the list at the press of a button, without a price, and what was typed beside it stays.
func TestAddNeeds(t *testing.T) {
	s := newSite(t)
	p, vs := create(t, s, "sample", catalog.Sample())
	at := variantURL(p.ID, vs[0].ID) + "/parts"
	press := func(do string, more url.Values) model.Variant {
		t.Helper()
		sent, _ := formAt(t, ask(s.Handler(), "GET", at, nil).Body.String(), at)
		sent.Set(nameDo, do)
		for k, v := range more {
			sent[k] = v
		}
		if w := ask(s.Handler(), "POST", at, sent); w.Code != http.StatusSeeOther || !strings.HasSuffix(w.Header().Get("Location"), "#f-parts") {
			t.Fatalf("%s: %d %s", do, w.Code, w.Header().Get("Location"))
		}
		return stored(t, s, vs[0].ID).Value
	}
	v := press("need:gloves", url.Values{"parts[1].price": {"41"}})
	if len(v.Parts) != 13 || v.Parts[12].As != "gloves" || v.Parts[12].Of != "safety" || v.Parts[12].Price.Is || v.Parts[1].Price.Val != 41 {
		t.Errorf("gloves: %+v", v.Parts)
	}
	v = press("need:all", nil)
	needs := model.Needs(v, model.Prepare(p.Value).Evaluate(v))
	if _, open := model.Matched(v.Parts, needs); len(open) != 0 {
		t.Errorf("still open: %v", open)
	}
	n := len(v.Parts)
	if v = press("need:all", nil); len(v.Parts) != n {
		t.Errorf("added again: %d, then %d", n, len(v.Parts))
	}
	v = press("free:all", nil)
	for _, part := range v.Parts {
		if want := part.Get == "have" || part.Get == "borrow"; part.Price.Is != want && (part.As == "gloves" || part.Get == "have") {
			t.Errorf("%+v", part)
		}
	}
}

// twoBills is a project of two variants with one part each and known years: by hand, the battery of 160 that lasts 8 years
// is dearer than the hoist of 500 from year 24 on.
func twoBills(horizon int) model.Document {
	doc := catalog.Sample()
	doc.Variants = doc.Variants[:2]
	doc.Project.Money = cost.Terms{Horizon: unit.Of(unit.Count(horizon)), Rate: unit.Of[unit.Ratio](0.03), Upkeep: unit.Of[unit.Money](0)}
	doc.Variants[0].Parts = []cost.Part{{Name: "hoist", Of: "store", Price: unit.Of[unit.Money](500), Upkeep: unit.Of[unit.Money](2)}}
	doc.Variants[1].Parts = []cost.Part{{Name: "battery", Of: "store", Price: unit.Of[unit.Money](160), Life: unit.Of(8 * 365 * unit.Day), Upkeep: unit.Of[unit.Money](1)}}
	return doc
}

// The crossing is named in a sentence and marked in the picture at its year, with the table and the numbers behind it.
func TestCostsCross(t *testing.T) {
	s := newSite(t)
	p, _ := create(t, s, "two", twoBills(30))
	body := ask(s.Handler(), "GET", projectURL(p.ID)+"/compare", nil).Body.String()
	if text := readable(body); !strings.Contains(text, "“Battery under the bench” becomes dearer than “Block in the gable” in year 24.") {
		t.Error("the crossing is not said")
	}
	option := body[strings.Index(body, `<script id="data-costs"`):]
	option = option[strings.Index(option, ">")+1 : strings.Index(option, "</script>")]
	var o struct {
		Series []struct {
			Name string
			Data [][2]float64
		}
	}
	if err := json.Unmarshal([]byte(option), &o); err != nil {
		t.Fatal(err)
	}
	if len(o.Series) != 3 || len(o.Series[0].Data) != 61 || len(o.Series[2].Data) != 1 || o.Series[2].Data[0] != [2]float64{24, 548} {
		t.Errorf("series %+v", o.Series)
	}
	if d := o.Series[1].Data; d[0] != [2]float64{0, 160} || d[15] != [2]float64{8, 167} || d[16] != [2]float64{8, 328} {
		t.Errorf("the step of year 8: %v", d[14:17])
	}
	csv := ask(s.Handler(), "GET", projectURL(p.ID)+"/compare/costs.csv", nil).Body.String()
	if lines := strings.Split(strings.TrimSpace(csv), "\n"); len(lines) != 32 || lines[25] != "24,2,548,161,664" {
		t.Errorf("%d lines, year 24: %s", len(lines), lines[min(25, len(lines)-1)])
	}
	q, _ := create(t, s, "short", twoBills(20))
	if text := readable(ask(s.Handler(), "GET", projectURL(q.ID)+"/compare", nil).Body.String()); !strings.Contains(text, "“Block in the gable” stays dearer than “Battery under the bench”: they never cross in the 20 years.") {
		t.Error("that they never cross is not said")
	}
}

// A typed name never becomes anything but a name in a chart.
func TestLineNames(t *testing.T) {
	for _, name := range []string{"fn:boom", "--ink", "", strings.Repeat("W", 500)} {
		if n := lineName(0, name); strings.HasPrefix(n, "fn:") || strings.HasPrefix(n, "--") || len([]rune(n)) > 40 {
			t.Errorf("%q becomes %q", name, n)
		}
	}
}

// A number to look for is never rounded down, and what is there never up, in the unit that is read. By hand: 1 lbf·ft is
// 1.3558179 N·m, so 12.3 N·m are 9.0720 lbf·ft; 1 lb is 0.45359237 kg, so 264.2 kg are 582.46 lb; 1.241 m are 4.0715 ft;
// 1 psi is 6894.757 Pa, so 7 MPa are 1015.26 psi.
func TestLeastNeverLess(t *testing.T) {
	for _, c := range []struct {
		v           float64
		u           string
		sys         unit.System
		least, most string
	}{
		{264.2 * 9.80665, "N", unit.Metric, "265 kg", "264 kg"}, {1001 * 9.80665, "N", unit.Metric, "1010 kg", "1000 kg"}, {12.31, "N·m", unit.Metric, "12.4 N·m", "12.3 N·m"},
		{2.001, "A", unit.Metric, "2.01 A", "2 A"}, {3, "A", unit.Metric, "3 A", "3 A"}, {2.5e-6, "m²", unit.Metric, "2.5 mm²", "2.5 mm²"}, {144000, "C", unit.Metric, "40 Ah", "40 Ah"},
		{1.241, "m", unit.Metric, "1.25 m", "1.24 m"}, {1.2344, "rad/s", unit.Metric, "1.24 rad/s", "1.23 rad/s"}, {1.2344, "1", unit.Metric, "1.24", "1.23"},
		{12.3, "N·m", unit.Imperial, "9.08 lbf·ft", "9.07 lbf·ft"}, {264.2 * 9.80665, "N", unit.Imperial, "583 lb", "582 lb"}, {1.241, "m", unit.Imperial, "4.08 ft", "4.07 ft"},
		{7e6, "Pa", unit.Imperial, "1020 psi", "1010 psi"},
	} {
		plain := strings.NewReplacer("\u00a0", " ")
		if got := plain.Replace(leastText(c.v, c.u, c.sys)); got != c.least {
			t.Errorf("at least %g %s prints %q, want %q", c.v, c.u, got, c.least)
		}
		w := model.Want{Unit: c.u}
		w.Stated.Val = unit.Ratio(c.v)
		if got := plain.Replace(shortText(w, c.sys)); got != c.most {
			t.Errorf("%g %s that is there prints %q, want %q", c.v, c.u, got, c.most)
		}
	}
}
