package place_test

import (
	"net/http"
	"net/url"
	"slices"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web/browsertest"
	"duskweight/web/form"
	"duskweight/web/page"
	"duskweight/web/place"
	"duskweight/web/webtest"
)

// The states of the page: a place that is known, none, one in the polar night, one south of the equator. By hand for 78° N: the
// sun is down on 21 December, since 23.4° is more than 90° − 78°.
func TestPlaceStates(t *testing.T) {
	s := webtest.NewSite(t)
	at := func(change func(*sun.Place)) string {
		doc := catalog.Sample()
		change(&doc.Project.Place)
		p, _ := webtest.Create(t, s, "place", doc)
		return webtest.Ask(s.Handler(), "GET", page.ProjectURL(p.ID)+"/place", nil).Body.String()
	}
	known := at(func(*sun.Place) {})
	for _, want := range []string{"<h1 data-headline>December is your poorest month: ", "facing south", "not known, counted as free", `class="on"`} {
		if !strings.Contains(known, want) {
			t.Errorf("the sample: not on the page: %s", want)
		}
	}
	if n := strings.Count(known, `class="month-sky"`); n != 12 || strings.Count(known, `class="spread"`) != 13 { // and the key
		t.Errorf("the sample: %d months, %d spreads", n, strings.Count(known, `class="spread"`))
	}
	if strings.Index(known, `id="twelve-months"`) > strings.Index(known, `class="doors"`) {
		t.Error("the sample: the doors stand before the months")
	}
	none := at(func(p *sun.Place) { *p = sun.Place{Sky: sun.SkyDescribed} })
	if strings.Index(none, `id="twelve-months"`) < strings.Index(none, `class="doors"`) || strings.Count(none, `class="unknown"`) != 36 || strings.Contains(none, `class="seen"`) || strings.Contains(none, `class="on"`) {
		t.Error("no place: the doors come first, and the months are frames")
	}
	polar := at(func(p *sun.Place) {
		*p = sun.Place{Latitude: unit.Of(78 * unit.Degree), Sky: sun.SkyDescribed, Described: sun.DescribedMixed}
	})
	if !strings.Contains(polar, "the sun stays down: panels bring nothing") || !strings.Contains(webtest.TextOf(polar), "the sun stays down") || strings.Contains(polar, `class="spread"`) {
		t.Error("polar night, in words: no word of it, or a spread of days that nobody knows")
	}
	south := at(func(p *sun.Place) {
		*p = sun.Place{Latitude: unit.Of(-34 * unit.Degree), Sky: sun.SkyDescribed, Described: sun.DescribedDry}
	})
	if !strings.Contains(south, "facing north") || !strings.Contains(south, "34° south") || !strings.Contains(south, "is your poorest month") {
		t.Error("south of the equator")
	}
}

// Every input of the whole form stands on one of the cards, and no card has another: nothing became unreachable.
func TestCardsHoldEveryInput(t *testing.T) {
	s := webtest.NewSite(t)
	doc := catalog.Sample()
	doc.Project.Place.Horizon = []sun.Horizon{{}}
	p, _ := webtest.Create(t, s, "place", doc)
	at := page.ProjectURL(p.ID) + "/place"
	fields := func(query string) []string {
		_, f := webtest.FormAt(t, webtest.Ask(s.Handler(), "GET", at+query, nil).Body.String(), at)
		return f
	}
	whole := fields("?all=1")
	slices.Sort(whole)
	var cards []string
	for _, part := range []string{"climate", "means", "files", "where", "outline", "ground", "snow", "room", "project"} {
		cards = append(cards, fields("?part="+part)...)
	}
	slices.Sort(cards)
	if cards = slices.Compact(cards); !slices.Equal(cards, slices.Compact(whole)) {
		t.Errorf("on the cards: %v\nin the whole form: %v", cards, whole)
	}
	for _, path := range whole { // a link to a field opens its card
		to, _, _ := strings.Cut(page.FieldURL(at, path), "#")
		body := webtest.Ask(s.Handler(), "GET", to, nil).Body.String()
		if !strings.Contains(body, `name="`+path+`"`) {
			t.Errorf("the link to %s does not show it", path)
		}
	}
}

// A refused value comes back on its own card, as it was typed, and the summary stands over it.
func TestRefusedStaysOnItsCard(t *testing.T) {
	s := webtest.NewSite(t)
	p, _ := webtest.Create(t, s, "place", catalog.Sample())
	at := page.ProjectURL(p.ID) + "/place"
	sent, _ := webtest.FormAt(t, webtest.Ask(s.Handler(), "GET", at+"?part=where", nil).Body.String(), at)
	sent.Set("place.latitude_rad", "far")
	w := webtest.Ask(s.Handler(), "POST", at+"?part=where", sent)
	if w.Code != http.StatusUnprocessableEntity || !webtest.TypedBack(w.Body.String(), "place.latitude_rad", "far") || !strings.Contains(w.Body.String(), `class="summary"`) {
		t.Errorf("%d %s", w.Code, form.Clip(webtest.TextOf(w.Body.String()), 600))
	}
}

// A file that does not say what year it is asks, and what is answered is kept; nothing but yes and no is an answer.
func TestYearOfAFileIsAsked(t *testing.T) {
	s, h := weatherSite(t)
	body := webtest.Upload(h, place.WeatherURL, "file", place.PlainYear("Latitude: 40\nLongitude: 12\nTime zone: 1\ntime,ghi,dhi,temperature", nil)).Body.String()
	if w := webtest.Ask(h, "POST", place.WeatherURL+"/use", url.Values{"token": {tokenOf(t, body)}, "revision": {"1"}}); w.Code != http.StatusSeeOther {
		t.Fatalf("%d %s", w.Code, form.Clip(webtest.TextOf(w.Body.String()), 600))
	}
	stored := func() model.Project {
		p, err := s.Store.Project(t.Context(), 1)
		if err != nil {
			t.Fatal(err)
		}
		return p.Value
	}
	p := stored()
	p.Weather.Year, p.Weather.Typical = unit.Known[unit.Count]{}, ""
	saved, err := s.Store.Project(t.Context(), 1)
	if err != nil {
		t.Fatal(err)
	}
	saved, err = s.Store.SaveProject(t.Context(), 1, p, editOf(saved.Revision), webtest.TestNow)
	if err != nil {
		t.Fatal(err)
	}
	if got := webtest.Ask(h, "GET", "/projects/1/place", nil).Body.String(); !strings.Contains(got, "Is it one real year, or a typical year") || !strings.Contains(got, "not known: what year it is") {
		t.Fatalf("the page does not ask: %.1500s", got[strings.Index(got, `id="files"`):])
	}
	send := func(file, answer string) int {
		return webtest.Ask(h, "POST", "/projects/1/place/typical", url.Values{"file": {file}, "typical": {answer}, "revision": {page.Itoa(int(saved.Revision))}}).Code
	}
	if a, b, c := send("1", "yes"), send("0", "perhaps"), send("-1", "no"); a != 400 || b != 400 || c != 400 || stored().Weather.Typical != "" {
		t.Errorf("what is no answer: %d %d %d", a, b, c)
	}
	if code := send("0", "yes"); code != http.StatusSeeOther || stored().Weather.Typical != unit.Yes {
		t.Errorf("%d, %q", code, stored().Weather.Typical)
	}
	if got := webtest.Ask(h, "GET", "/projects/1/place", nil).Body.String(); strings.Contains(got, "Is it one real year, or") || !strings.Contains(got, "a typical year, put together") {
		t.Error("the page still asks, or does not say it")
	}
}

// The page is light and not long: at most 14 KB packed, and 2,900 px on a phone; months and doors are in sight at once.
func TestBrowserPlaceIsLight(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	webtest.Ask(s.Handler(), "POST", "/sample", url.Values{})
	for _, at := range []string{"/projects/1/place", "/projects/1/place?part=means", "/projects/1/place?part=climate"} {
		if n := len(webtest.Packed(s.Handler(), at)); n > 14<<10 {
			t.Errorf("%s: %d bytes packed", at, n)
		}
	}
	tab := b.Open(t, browsertest.Look{Width: 360, Height: 740})
	tab.Go(base + "/projects/1/place")
	if high := tab.Number("document.documentElement.scrollHeight"); high > 2900 {
		t.Errorf("%.0f px high", high)
	}
	wide := b.Open(t, browsertest.Look{Width: 1366, Height: 768})
	wide.Go(base + "/projects/1/place")
	if low := wide.Number(`document.querySelector(".doors").getBoundingClientRect().bottom`); low > 768 {
		t.Errorf("the doors end at %.0f px", low)
	}
	// typing moves the sentence and leaves the field alone
	wide.Go(base + "/projects/1/place?part=where")
	field := "#" + form.FieldID("place.latitude_rad")
	wide.Type(field, "48.5")
	wide.Wait(`document.querySelector(".under").textContent.includes("48.5° north")`)
	if v := wide.Value(field); v != "48.5" {
		t.Errorf("the field has %q", v)
	}
	dark := b.Open(t, browsertest.Look{Width: 320, Height: 740, Dark: true})
	for _, at := range []string{"/projects/1/place?part=means", "/projects/1/place?part=outline"} {
		for _, tab := range []*browsertest.Tab{wide, dark} {
			tab.Go(base + at)
			for _, f := range tab.Axe() {
				t.Errorf("%s: %v", at, f)
			}
			if n := tab.Sideways(); n > 0 {
				t.Errorf("%s: %d px too wide", at, n)
			}
		}
	}
	plain := b.Open(t, browsertest.Look{Width: 1366, Height: 768, NoScripts: true})
	plain.Go(base + "/projects/1/place")
	plain.Follow(".doors li:nth-child(2) a")
	plain.Type("#"+form.FieldID("place.monthly.ghi_j_m2_day[11]"), "0.9")
	plain.Follow(".card-form .primary")
	if p, err := s.Store.Project(t.Context(), 1); err != nil || p.Value.Place.Monthly.GHI[11] != 0.9*3.6e6 {
		t.Errorf("without scripts: %v, December has %v J/m²", err, p.Value.Place.Monthly.GHI[11])
	}
}

// editOf is a save after a revision.
func editOf(revision int64) store.Edit { return store.Edit{Revision: revision} }

func BenchmarkPage(b *testing.B) {
	s := webtest.NewSite(b)
	p, _ := webtest.Create(b, s, "sample", catalog.Sample())
	for b.Loop() {
		webtest.Ask(s.Handler(), "GET", page.ProjectURL(p.ID)+"/place", nil)
	}
}
