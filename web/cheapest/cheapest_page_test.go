package cheapest_test

import (
	"encoding/json"
	"fmt"
	"net/url"
	"regexp"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/unit"
	"duskweight/web"
	"duskweight/web/browsertest"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// cabin is the worked example's battery with a price for its panel too.
func cabin(t *testing.T, s *web.Site) (at string) {
	t.Helper()
	doc := catalog.Sample()
	doc.Variants = doc.Variants[1:2]
	v := &doc.Variants[0]
	v.Parts = append(v.Parts, cost.Part{Name: "Panel of 100 W", Of: cost.OfPanel, As: cost.AsPanel, Price: unit.Of[unit.Money](60)})
	p, err := s.Store.CreateProject(t.Context(), doc, "made", s.Now())
	if err != nil {
		t.Fatal(err)
	}
	vs, err := s.Store.Variants(t.Context(), p.ID)
	if err != nil {
		t.Fatal(err)
	}
	return page.VariantURL(p.ID, vs[0].ID)
}

// Without scripts a button asks for the answer, and the page comes with it: the sentence, the picture, the best plan. Its button
// makes a variant with the panels and batteries of the plan.
func TestCheapestPage(t *testing.T) {
	s := webtest.NewSite(t)
	at := cabin(t, s)
	first := webtest.Ask(s.Handler(), "GET", at+"/cheapest", nil).Body.String()
	if !strings.Contains(first, `name="run"`) || strings.Contains(first, "<figure") {
		t.Error("the page does not ask first")
	}
	body := webtest.Ask(s.Handler(), "GET", at+"/cheapest?run=1", nil).Body.String()
	title := regexp.MustCompile(`<h1>(\d+) full nights of 365 cost least with (\d+) panels? and (\d+) batter`).FindStringSubmatch(strings.ReplaceAll(body, `<a class="term"`, ""))
	if title == nil {
		t.Fatalf("no sentence: %s", regexp.MustCompile(`<h1>.*?</h1>`).FindString(body))
	}
	for _, want := range []string{"front-wide", "front-narrow", "Make it a variant", at + "/cheapest.csv", "/help/money#the-cheapest-plan"} {
		if !strings.Contains(body, want) {
			t.Errorf("not on the page: %q", want)
		}
	}
	fields := regexp.MustCompile(`<input type="hidden" name="(panels|blocks|factor|tilt|turned)" value="([^"]*)"`).FindAllStringSubmatch(body, -1)
	typed := url.Values{}
	for _, f := range fields[len(fields)-5:] {
		typed.Set(f[1], f[2])
	}
	w := webtest.Ask(s.Handler(), "POST", at+"/cheapest", typed)
	to := w.Header().Get("Location")
	if w.Code != 303 || to == "" || to == at {
		t.Fatalf("status %d, to %q: %s", w.Code, to, w.Body.String())
	}
	var project, variant int64
	if _, err := fmt.Sscanf(to, "/projects/%d/variants/%d", &project, &variant); err != nil {
		t.Fatal(err)
	}
	made, err := s.Store.Variant(t.Context(), variant)
	if err != nil {
		t.Fatal(err)
	}
	if v := made.Value; fmt.Sprint(v.Panels[0].Count.Val) != typed.Get("panels") || fmt.Sprint(v.Stores[0].Cells.Parallel.Val) != typed.Get("blocks") {
		t.Errorf("made %v panels and %v batteries, asked %v", v.Panels[0].Count.Val, v.Stores[0].Cells.Parallel.Val, typed)
	}
	typed.Set("panels", "999")
	if w := webtest.Ask(s.Handler(), "POST", at+"/cheapest", typed); w.Code != 400 {
		t.Errorf("a plan that was not tried: status %d", w.Code)
	}
	typed.Set("panels", "x")
	if w := webtest.Ask(s.Handler(), "POST", at+"/cheapest", typed); w.Code != 400 {
		t.Errorf("no number: status %d", w.Code)
	}
}

// With scripts the answer comes behind its progress, as lines; the last has the page.
func TestCheapestComesBitByBit(t *testing.T) {
	s := webtest.NewSite(t)
	at, h := cabin(t, s), s.Handler()
	lines := strings.Split(strings.TrimSpace(webtest.Ask(h, "GET", at+"/cheapest/many", nil).Body.String()), "\n")
	var last struct {
		Done, Of  int
		HTML, URL string
	}
	if err := json.Unmarshal([]byte(lines[len(lines)-1]), &last); err != nil {
		t.Fatal(err)
	}
	if last.Done != last.Of || last.Done < 100 || last.URL != at+"/cheapest" || !strings.Contains(last.HTML, "cost least with") {
		t.Errorf("%d of %d, %q", last.Done, last.Of, last.URL)
	}
	if body := webtest.Ask(h, "GET", at+"/cheapest", nil).Body.String(); !strings.Contains(body, "cost least with") {
		t.Error("what was found is not kept")
	}
}

// A price that is missing is named with a link to its field, and no plan is called the best.
func TestCheapestAsksForPrices(t *testing.T) {
	s := webtest.NewSite(t)
	webtest.Ask(s.Handler(), "POST", "/sample", map[string][]string{})
	body := webtest.Ask(s.Handler(), "GET", "/projects/1/variants/2/cheapest?run=1", nil).Body.String()
	if !strings.Contains(body, "has no panel") || !strings.Contains(body, `href="/projects/1/variants/2/parts"`) || strings.Contains(body, "The best plan is") || strings.Contains(body, "<figure") {
		t.Error("the panel without a price is not asked for")
	}
	body = webtest.Ask(s.Handler(), "GET", "/projects/1/variants/1/cheapest?run=1", nil).Body.String()
	if links := regexp.MustCompile(`href="/projects/1/variants/1/parts[^"]*parts[^"]*price"`).FindAllString(body, -1); len(links) == 0 {
		t.Error("a part without a price has no link to its field")
	}
}

// Where nothing can be tried the page says why.
func TestCheapestOfNothing(t *testing.T) {
	s := webtest.NewSite(t)
	doc := catalog.Sample()
	doc.Variants = []model.Variant{{Name: "empty", Controller: doc.Variants[0].Controller}}
	p, err := s.Store.CreateProject(t.Context(), doc, "made", s.Now())
	if err != nil {
		t.Fatal(err)
	}
	vs, err := s.Store.Variants(t.Context(), p.ID)
	if err != nil {
		t.Fatal(err)
	}
	at := page.VariantURL(p.ID, vs[0].ID)
	if body := webtest.Ask(s.Handler(), "GET", at+"/cheapest?run=1", nil).Body.String(); !strings.Contains(body, "No plan can be tried yet: there is no panel yet") {
		t.Errorf("%s", regexp.MustCompile(`<h1>.*?</h1>`).FindString(body))
	}
	if w := webtest.Ask(s.Handler(), "GET", at+"/cheapest.csv", nil); w.Code != 404 {
		t.Errorf("numbers of nothing: status %d", w.Code)
	}
}

// In a browser the plans are tried at once; looked at by the accessibility checker at both ends of the widths, light and dark.
func TestBrowserCheapest(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	at := cabin(t, s)
	for _, width := range []int{1366, 320} {
		tab := b.Open(t, browsertest.Look{Width: width, Height: 900, Dark: width == 320})
		tab.Go(base + at + "/cheapest")
		tab.Wait(`document.querySelector("#many-results h1").textContent.includes("cost least with")`)
		if found := tab.Axe(); len(found) > 0 {
			t.Errorf("at %d: %v", width, found)
		}
		if over := tab.Sideways(); over > 0 {
			t.Errorf("at %d the page runs %d px past its edge", width, over)
		}
	}
}

// A plan whose parts all cost nothing, for they are at hand, costs 0, and nothing stands in brackets behind it: 0 lies between no
// two numbers.
func TestCheapestOfPartsAtHand(t *testing.T) {
	s := webtest.NewSite(t)
	doc := catalog.Sample()
	doc.Variants = doc.Variants[1:2]
	v := &doc.Variants[0]
	v.Parts = append(v.Parts, cost.Part{Name: "Panel of 100 W", Of: cost.OfPanel, As: cost.AsPanel})
	for i := range v.Parts {
		v.Parts[i].Price, v.Parts[i].Upkeep, v.Parts[i].Low, v.Parts[i].High = unit.Of[unit.Money](0), unit.Of[unit.Money](0), unit.Known[unit.Money]{}, unit.Known[unit.Money]{}
	}
	p, vs := webtest.Create(t, s, "at hand", doc)
	body := webtest.Ask(s.Handler(), "GET", page.VariantURL(p.ID, vs[0].ID)+"/cheapest?run=1", nil).Body.String()
	title := webtest.Tags.ReplaceAllString(regexp.MustCompile(`(?s)<h1>.*?</h1>`).FindString(body), "")
	if !strings.Contains(title, "cost least with") || !strings.Contains(title, ": 0") || strings.Contains(title, "(") {
		t.Errorf("the sentence over the page: %q", title)
	}
	if n := strings.Count(body, "0 to 0"); n > 0 {
		t.Errorf("a range without a width stands %d times", n)
	}
}
