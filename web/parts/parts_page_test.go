package parts_test

import (
	"encoding/json"
	"net/http"
	"net/url"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/web/form"
	"duskweight/web/page"
	"duskweight/web/parts"
	"duskweight/web/webtest"
)

// A list of which some parts have no price: how many have one, what they come to, which miss one, and no figure that
// pretends to know the rest.
func TestPartsNotPriced(t *testing.T) {
	s := webtest.NewSite(t)
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	at := page.VariantURL(p.ID, vs[0].ID) + "/parts"
	w := webtest.Ask(s.Handler(), "GET", at, nil)
	text := webtest.Readable(w.Body.String())
	for _, want := range []string{
		"9 of 13 listed parts priced;", "the plan needs ",
		"Priced so far", "308 EUR", // 0 + 32 + 28 + 45 + 70 + 25 + 90 + 12 + 6
		"No price yet for: Four planetary stages 5:1, steel; Motor 24 V, 3000 rpm; Fence and sign; Eye bolt M8 with shoulder.",
		"All parts, at the start how", "not known",
		"Parts that the plan needs",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not on the page", want)
		}
	}
	if strings.Contains(w.Body.String(), "data-chart") {
		t.Error("a chart is drawn of a bill that is not priced")
	}
	if w := webtest.Ask(s.Handler(), "GET", at+"/costs.csv", nil); w.Code != http.StatusNotFound {
		t.Errorf("numbers of a bill that is not priced: %d", w.Code)
	}
}

// The eye bolt of 140 kg where the check asks for more is said to be too little, on the page and on the market list.
func TestPartTooWeak(t *testing.T) {
	s := webtest.NewSite(t)
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	for _, here := range []string{"/parts", "/parts/market"} {
		if text := webtest.Readable(webtest.Ask(s.Handler(), "GET", page.VariantURL(p.ID, vs[0].ID)+here, nil).Body.String()); !strings.Contains(text, "The plan says 140 kg: too little.") {
			t.Errorf("%s does not say that the eye bolt is too weak", here)
		}
		if text := webtest.Readable(webtest.Ask(s.Handler(), "GET", page.VariantURL(p.ID, vs[2].ID)+here, nil).Body.String()); strings.Contains(text, "too little") {
			t.Errorf("%s says that something of the mended hoist is too weak", here)
		}
	}
}

// Parts that the plan needs goes on the list at the press of a button, without a price, and what was typed beside it stays.
func TestAddNeeds(t *testing.T) {
	s := webtest.NewSite(t)
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	at := page.VariantURL(p.ID, vs[0].ID) + "/parts"
	press := func(do string, more url.Values) model.Variant {
		t.Helper()
		sent, _ := webtest.FormAt(t, webtest.Ask(s.Handler(), "GET", at, nil).Body.String(), at)
		sent.Set(form.NameDo, do)
		for k, v := range more {
			sent[k] = v
		}
		if w := webtest.Ask(s.Handler(), "POST", at, sent); w.Code != http.StatusSeeOther || !strings.HasSuffix(w.Header().Get("Location"), "#f-parts") {
			t.Fatalf("%s: %d %s", do, w.Code, w.Header().Get("Location"))
		}
		return webtest.Stored(t, s, vs[0].ID).Value
	}
	v := press("need:gloves", url.Values{"parts[1].price": {"41"}})
	if len(v.Parts) != 14 || v.Parts[13].As != "gloves" || v.Parts[13].Of != "safety" || v.Parts[13].Price.Is || v.Parts[1].Price.Val != 41 {
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

// The crossing is named in a sentence and marked in the picture at its year, with the table and the numbers behind it.
func TestCostsCross(t *testing.T) {
	s := webtest.NewSite(t)
	p, _ := webtest.Create(t, s, "two", parts.TwoBills(30))
	body := webtest.Ask(s.Handler(), "GET", page.ProjectURL(p.ID)+"/compare", nil).Body.String()
	if text := webtest.Readable(body); !strings.Contains(text, "“Battery under the bench” costs more than “Block in the gable” in year 24.") {
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
	csv := webtest.Ask(s.Handler(), "GET", page.ProjectURL(p.ID)+"/compare/costs.csv", nil).Body.String()
	if lines := strings.Split(strings.TrimSpace(csv), "\n"); len(lines) != 32 || lines[25] != "24,2,548,161,664" {
		t.Errorf("%d lines, year 24: %s", len(lines), lines[min(25, len(lines)-1)])
	}
	q, _ := webtest.Create(t, s, "short", parts.TwoBills(20))
	if text := webtest.Readable(webtest.Ask(s.Handler(), "GET", page.ProjectURL(q.ID)+"/compare", nil).Body.String()); !strings.Contains(text, "“Block in the gable” always costs more than “Battery under the bench”: the two lines never cross in the 20 years.") {
		t.Error("that they never cross is not said")
	}
}
