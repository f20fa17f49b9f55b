package hoist_test

import (
	"encoding/json"
	"html"
	"regexp"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/web/browsertest"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// The page In motion of the worked example has at most 120 moments, a table, its numbers as a file and a tab; a variant
// without a hoist has neither page nor tab. Where nothing moves it says why.
func TestMotionPage(t *testing.T) {
	s := webtest.NewSite(t)
	doc := catalog.Sample()
	stalls := doc.Variants[0]
	h := *stalls.Stores[0].Hoist
	h.Raise.Voltage = unit.Of[unit.Voltage](1)
	stalls.Name, stalls.Stores = "Stalls", append(stalls.Stores[:0:0], stalls.Stores...)
	stalls.Stores[0].Hoist = &h
	blank := stalls
	blank.Name, blank.Stores = "Blank", append(stalls.Stores[:0:0], stalls.Stores...)
	blank.Stores[0].Hoist = &lift.Hoist{}
	doc.Variants = append(doc.Variants, stalls, blank)
	p, vs := webtest.Create(t, s, "sample", doc)
	at := func(v int) string { return page.StoreURL(p.ID, vs[v].ID, 0, "motion") }
	body := webtest.Ask(s.Handler(), "GET", at(0), nil).Body.String()
	m := regexp.MustCompile(`data-trip="([^"]*)"`).FindStringSubmatch(body)
	if m == nil {
		t.Fatal("no moments")
	}
	var trip struct {
		T, Z []float64
		Say  [][]string
	}
	if err := json.Unmarshal([]byte(html.UnescapeString(m[1])), &trip); err != nil {
		t.Fatal(err)
	}
	if n := len(trip.T); n == 0 || n > lift.MostBeats || len(trip.Z) != n || len(trip.Say) != n || trip.Z[n-1] != 0 {
		t.Errorf("%d moments, %d heights", n, len(trip.Z))
	}
	if !strings.Contains(body, "once the mass may hang") || strings.Index(body, "DO NOT HANG") > strings.Index(body, "<h1") {
		t.Error("the danger is not told first")
	}
	if w := webtest.Ask(s.Handler(), "GET", at(0)+"/motion.csv", nil); w.Code != 200 || strings.Count(w.Body.String(), "\n") != len(trip.T)+1 {
		t.Errorf("csv: %d, %d lines", w.Code, strings.Count(w.Body.String(), "\n"))
	}
	for v, why := range map[int]string{3: "The motor stalls :", 4: "How it lifts is not known yet"} {
		body := webtest.Ask(s.Handler(), "GET", at(v), nil).Body.String()
		if !strings.Contains(webtest.TextOf(body), why) || strings.Contains(body, "data-trip") {
			_, said, _ := strings.Cut(body, `class="verdict"`)
			t.Errorf("%s does not say %q: %.200s", vs[v].Value.Name, why, said)
		}
	}
	battery := page.VariantURL(p.ID, vs[1].ID)
	if w := webtest.Ask(s.Handler(), "GET", battery+"/motion", nil); w.Code != 404 {
		t.Errorf("a battery in motion: %d", w.Code)
	}
	if strings.Contains(webtest.Ask(s.Handler(), "GET", battery, nil).Body.String(), ">In motion<") {
		t.Error("a variant without a hoist has the tab")
	}
	if w := webtest.Ask(s.Handler(), "GET", page.VariantURL(p.ID, vs[0].ID)+"/motion", nil); w.Code != 200 {
		t.Errorf("without a number: %d", w.Code)
	}
}

// Nothing moves before a press (WCAG 2.2, 2.2.2). Play moves 20 times as fast as the clock, Pause stops, the slider moves by
// hand; with reduced motion there is the hand alone, without scripts the table. At most 14 KB to load, nothing sideways at
// 320 px, at most 3400 px high at 360 px.
func TestBrowserMotion(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	at := page.StoreURL(p.ID, vs[0].ID, 0, "motion")
	if n := len(webtest.Packed(s.Handler(), at)); n > 14*1024 {
		t.Errorf("%d bytes packed", n)
	} else {
		t.Logf("%d bytes packed", n)
	}
	const time, place = `+document.querySelector("[data-scrub]").value`, `document.querySelector(".trip .moves").getAttribute("transform")`
	tab := b.Open(t, browsertest.Look{Width: 1366, Height: 768})
	tab.Go(base + at)
	tab.Number(`new Promise(done => setTimeout(() => done(0), 300))`)
	if v := tab.Number(time); v != 0 {
		t.Errorf("it moves by itself: %v s", v)
	}
	start := tab.String(place)
	tab.Number(`(document.querySelector("[data-play]").click(), 0)`)
	tab.Wait(time + ` > 20`)
	tab.Number(`(document.querySelector("[data-play]").click(), 0)`)
	if tab.String(place) == start {
		t.Error("the mass does not move")
	}
	stopped := tab.Number(time)
	tab.Number(`new Promise(done => setTimeout(() => done(0), 300))`)
	if tab.Number(time) != stopped {
		t.Error("it moves while it is paused")
	}
	tab.Number(`(() => { const r = document.querySelector("[data-scrub]"); r.value = r.max; r.dispatchEvent(new Event("input", {bubbles: true})); return 0 })()`)
	if clock := tab.Text("[data-clock]"); !strings.Contains(clock, "coming down") {
		t.Errorf("by hand to the end it says %q", clock)
	}
	tab.Clean()
	still := b.Open(t, browsertest.Look{Still: true})
	still.Go(base + at)
	if still.Number(`+document.querySelector("[data-play]").checkVisibility()`) != 0 || still.Number(`+document.querySelector("[data-scrub]").checkVisibility()`) != 1 {
		t.Error("with reduced motion it can be played, or not moved by hand")
	}
	plain := b.Open(t, browsertest.Look{NoScripts: true})
	plain.Go(base + at)
	if plain.Number(`[...document.querySelectorAll(".play, .cursor, .lit")].filter(e => getComputedStyle(e).visibility === "visible" && getComputedStyle(e).display !== "none").length`) != 0 || plain.Number(`document.querySelectorAll("main table tbody tr").length`) != 6 {
		t.Error("without scripts something looks as if it could move, or the table is missing")
	}
	narrow := b.Open(t, browsertest.Look{Width: 320, Height: 700, Still: true})
	narrow.Go(base + at)
	phone := b.Open(t, browsertest.Look{Width: 360, Height: 800, Still: true})
	phone.Go(base + at)
	if over, tall := narrow.Number(`document.documentElement.scrollWidth - innerWidth`), phone.Number(`document.documentElement.scrollHeight`); over > 0 || tall > 3400 {
		t.Errorf("%v px sideways at 320 px, %v px at 360 px", over, tall)
	}
}
