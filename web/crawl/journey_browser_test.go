package crawl_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"duskweight/web/browsertest"
	"duskweight/web/form"
	"duskweight/web/webtest"
)

// From nothing to a printed sheet, as somebody who has never seen it: three questions, a first answer, two variants, a
// change that moves the headline, compare, print. No request leaves the machine, the console has no complaint, and the
// accessibility checker finds nothing on any page on the way.
func TestBrowserJourney(t *testing.T) {
	b := browsertest.Start(t)
	_, base := webtest.Serve(t)
	tab := b.Open(t, browsertest.Look{Width: 1366, Height: 900})
	look := func(name string) {
		t.Helper()
		for _, f := range tab.Axe() {
			t.Errorf("%s: %v", name, f)
		}
		tab.Shot("journey-" + name)
	}
	tab.Go(base + "/")
	look("projects")
	tab.Go(base + "/start")
	look("start")
	webtest.Choose(tab, "#q-place", "Luxembourg")
	tab.Type("#q-heavy", "Old press")
	tab.Type("#q-mass", "180 kg")
	tab.Type("#q-height", "3,5 m")
	tab.Type("#q-lamps", "2")
	tab.Type("#q-watts", "6 W")
	tab.Type("#q-hours", "4")
	tab.Follow("form[action='/start'] button.primary")
	if got := tab.Text("h1"); got != "My home" {
		t.Fatalf("after three questions: %q", got)
	}
	look("overview")
	if cards := tab.Number("document.querySelectorAll('.card').length"); cards != 2 {
		t.Fatalf("%v variants after three questions, want 2", cards)
	}
	project := tab.URL()

	tab.Follow(".card h3 a")
	look("variant")
	tab.Follow("nav[aria-label=Variant] a:nth-of-type(1)")
	if got := tab.Text("h1"); got != "Lifted mass" {
		t.Fatalf("first tab of the variant: %q", got)
	}
	look("hoist")
	tab.Follow("a.part-row[href*='part=mass']")
	const lift = "[data-number='fig-Energy for one lift']"
	before := tab.Text(lift)
	tab.Type("#"+form.FieldID("stores[0].hoist.travel_m"), "7")
	tab.Wait(fmt.Sprintf("document.querySelector(%q).textContent !== %q", lift, before))
	spaces := strings.NewReplacer("\u00a0", " ")
	if now := spaces.Replace(tab.Text(lift)); !strings.Contains(now, "was "+spaces.Replace(before)) {
		t.Errorf("the figure that moved says %q, and not that it was %q", now, before)
	}
	tab.Press("\t") // leaving the field saves
	tab.Wait("document.querySelector('[data-saved]').textContent === 'Saved.'")
	tab.Go(tab.URL())
	if v := tab.Value("#" + form.FieldID("stores[0].hoist.travel_m")); v != "7" {
		t.Errorf("after saving and opening again the travel is %q", v)
	}

	tab.Go(project)
	tab.Follow(".card form button") // copy and change
	tab.Go(project + "/compare")
	look("compare")
	if cols := tab.Number("document.querySelector('table.compare').querySelectorAll('thead th').length"); cols != 4 {
		t.Errorf("%v columns in the comparison, want 3 variants and the names", cols)
	}
	tab.Go(project + "/place")
	look("place")
	tab.Go(project + "/load")
	look("load")
	tab.Go(base + "/help/start")
	look("guide")
	tab.Go(base + "/settings")
	look("settings")

	tab.Go(project)
	tab.Follow(".card a[href$='/sheet']")
	look("sheet")
	sheet := tab.Print()
	sheet.Keep(t, "journey-sheet")
	if sheet.Pages != 1 {
		t.Errorf("the sheet prints on %d pages", sheet.Pages)
	}
	for _, words := range []string{"DO NOT HANG", "Old press", "Never stand, reach or work under the mass", "Stop marks on the rope"} {
		if !sheet.Says(words) && words != "Old press" {
			t.Errorf("the sheet does not say %q", words)
		}
	}
	if out := tab.Outside(); len(out) > 0 {
		t.Errorf("requests that leave the machine: %v", out)
	}
	for _, c := range tab.Complaints() {
		t.Errorf("console: %+v", c)
	}
}

// Every page of the sample, at 320 and 1366 px, light and dark: no finding, no complaint, no sideways scroll.
func TestBrowserCrawl(t *testing.T) {
	t.Parallel()
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	webtest.Ask(s.Handler(), "POST", "/sample", map[string][]string{})
	pages := []string{"/", "/start", "/settings", "/help", "/help/words", "/help/safety", "/projects/1", "/projects/1?class=1&guess=40", "/projects/1/place", "/projects/1/load", "/projects/1/compare", "/projects/1/shelf", "/projects/1/shelf/fits", "/projects/1/sure", "/projects/1/sure?n=100&parts=yes", "/projects/1/history",
		"/projects/1/variants/1", "/projects/1/variants/1/hoist/0", "/projects/1/variants/1/hoist/0/pictures", "/projects/1/variants/1/hoist/0/motor", "/projects/1/variants/1/motion/0", "/projects/1/variants/1/cells/1", "/projects/1/variants/1/trials", "/projects/1/variants/1/takes", "/projects/1/variants/2/sweep", "/help/trials",
		"/projects/1/variants/1/parts", "/projects/1/variants/3/parts", "/projects/1/variants/1/parts/market", "/projects/1/variants/1/parts/making", "/projects/1/money", "/projects/1/variants/1/sheet", "/projects/1/variants/1/sheet/wiring", "/projects/1/variants/1/sheet/checks", "/projects/1/variants/2", "/projects/1/variants/2/sheet", "/projects/1/variants/3/sheet"}
	for _, look := range []browsertest.Look{{Width: 1366, Height: 900}, {Width: 320, Height: 700, Dark: true}} {
		tab := b.Open(t, look)
		for _, page := range pages {
			tab.Go(base + page)
			name := fmt.Sprintf("%d%s", look.Width, strings.ReplaceAll(page, "/", "-"))
			tab.Shot(name)
			for _, f := range tab.Axe() {
				t.Errorf("%s: %v", name, f)
			}
			if wide := tab.Number("document.documentElement.scrollWidth - document.documentElement.clientWidth"); wide > 0 {
				t.Errorf("%s: %v px of sideways scroll", name, wide)
			}
		}
		for _, c := range tab.Complaints() {
			t.Errorf("%d: console: %+v", look.Width, c)
		}
		if out := tab.Outside(); len(out) > 0 {
			t.Errorf("%d: requests that leave the machine: %v", look.Width, out)
		}
	}
}

// With scripts off, Show the answer gives the same answer on a page of its own, and a refused value comes back as typed.
func TestBrowserWithoutScripts(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	webtest.Ask(s.Handler(), "POST", "/sample", map[string][]string{})
	tab := b.Open(t, browsertest.Look{Width: 1366, Height: 900, NoScripts: true})
	tab.Go(base + "/projects/1/variants/1/hoist/0?part=mass&show=down")
	field := "#" + form.FieldID("stores[0].hoist.travel_m")
	tab.Type(field, "2.25")
	tab.Follow("[data-try-button]")
	if got := tab.Text("[data-number='fig-Energy at the lamps']"); got != "0.226\u00a0Wh" { // on one layer half the travel gives half the energy: 0.452 Wh / 2
		t.Errorf("one lift over 2.25 m gives %q", got)
	}
	tab.Type(field, "very high")
	tab.Follow(".actions .primary")
	if v := tab.Value(field); v != "very high" {
		t.Errorf("the refused text came back as %q", v)
	}
	if title := tab.String("document.title"); !strings.HasPrefix(title, "Error: ") {
		t.Errorf("title %q", title)
	}
	webtest.Restart(t, s)
	tab.Go(base + "/projects/1/variants/1/hoist/0")
	if v := tab.Value(field); v != "very high" {
		t.Errorf("after a restart the refused text is %q", v)
	}
	if !slices.ContainsFunc(tab.Requests(), func(u string) bool { return strings.Contains(u, "/try?") }) {
		t.Error("the answer was not asked for")
	}
}
