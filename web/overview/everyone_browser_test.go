package overview_test

import (
	"fmt"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/web/browsertest"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// The overview, its class mode before and after a guess, the page In motion and a refused number, for everyone: no finding of
// the checks, nothing sideways, no complaint, at 1366 px in light and at 320 px in the dark.
func TestBrowserForEveryone(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	at := page.ProjectURL(p.ID)
	for _, look := range []browsertest.Look{{Width: 1366, Height: 900, Still: true}, {Width: 320, Height: 700, Dark: true, Still: true}} {
		tab := b.Open(t, look)
		check := func(what string) {
			for _, f := range tab.Axe() {
				t.Errorf("%d px, %s: %v", look.Width, what, f)
			}
			if wide := tab.Sideways(); wide > 0 {
				t.Errorf("%d px, %s: %d px sideways", look.Width, what, wide)
			}
		}
		for _, page := range []string{at, at + "?class=1", at + "?class=1&guess=40", page.StoreURL(p.ID, vs[0].ID, 0, "motion")} {
			tab.Go(base + page)
			check(page)
		}
		tab.Go(base + at)
		tab.String(`(() => { const f = document.querySelector("form[data-try]"); f.querySelector("input[inputmode=decimal]").value = "a b c"; HTMLFormElement.prototype.submit.call(f); return ""; })()`)
		tab.Wait(`document.title.startsWith("Error: ") && document.querySelector(".summary a") && document.readyState === "complete"`)
		check("a refused number")
		for _, c := range tab.Complaints("422") {
			t.Errorf("%d px: console: %s", look.Width, fmt.Sprint(c))
		}
	}
}

// The day is played on a press, moment by moment, says each, waits on a second press, goes on with a third, and is over after the last.
// With reduced motion there is nothing to press.
func TestBrowserPlaysTheDay(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	p, _ := webtest.Create(t, s, "sample", catalog.Sample())
	tab := b.Open(t, browsertest.Look{Width: 1366, Height: 900})
	tab.Go(base + page.ProjectURL(p.ID))
	now := func() string {
		return tab.String(`(() => { const all = [...document.querySelectorAll(".moments li")]; return all.findIndex(li => li.matches(".now")) + " of " + all.length; })()`)
	}
	if now() != "-1 of 4" {
		t.Fatal("it plays by itself, or there is no day: ", now())
	}
	tab.Click(".play-day")
	tab.Wait(`document.querySelector(".moments li:nth-child(2).now")`)
	tab.Click(".play-day")
	if word, said := tab.Text(".play-day"), tab.String(`document.querySelector("#day figcaption [role=status]").textContent`); word != "Go on" || said == "" {
		t.Errorf("after the second press: %q, said %q", word, said)
	}
	for _, f := range tab.Axe() {
		t.Errorf("while it waits: %v", f)
	}
	tab.Click(".play-day")
	tab.Wait(`document.querySelector(".moments li:nth-child(4).now")`)
	tab.Wait(`!document.querySelector(".moments .now") && document.querySelector(".play-day").textContent === "Play the day"`)
	still := b.Open(t, browsertest.Look{Width: 1366, Height: 900, Still: true})
	still.Go(base + page.ProjectURL(p.ID))
	still.Wait(`document.querySelector(".play-day")?.hidden`)
}
