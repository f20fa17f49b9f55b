package crawl_test

import (
	"strings"
	"testing"

	"duskweight/web/browsertest"
	"duskweight/web/webtest"
)

// From a fresh start to a verdict with the keyboard alone and scripts off: three questions, one of them not answered.
func TestBrowserFirstRun(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	tab := b.Open(t, browsertest.Look{Width: 1366, Height: 900, NoScripts: true})
	presses := 0
	reach := func(what string) {
		t.Helper()
		for range 60 {
			if tab.String("String(document.activeElement.matches("+"'"+what+"'"+"))") == "true" {
				return
			}
			tab.Press("\t")
			presses++
		}
		t.Fatalf("the tab key does not reach %s", what)
	}
	tab.Go(base + "/")
	reach(`a[href="/start"]`)
	tab.Press("\r")
	tab.Wait("location.pathname === '/start' && document.readyState === 'complete'")
	reach("#q-place")
	tab.Press("Lux") // a list takes the first letters
	for id, text := range map[string]string{"#q-mass": "180 kg"} {
		reach(id)
		tab.Press(text)
	}
	reach("#q-height") // not known: stays empty
	reach("#q-lamps")
	tab.Press("2")
	reach("#q-hours")
	tab.Press("4\r") // Enter sends the form
	tab.Wait("location.pathname === '/projects/1' && document.readyState === 'complete'")
	if said := tab.Text("[data-headline]"); !strings.Contains(said, "night") {
		t.Errorf("the first answer says %q", said)
	}
	doc, err := s.Store.Export(t.Context(), 1)
	if err != nil {
		t.Fatal(err)
	}
	v := doc.Variants[0]
	if m := v.Stores[0].Hoist.Mass[0].Mass.Val; m != 180 || v.Origins["stores[0].hoist.travel_m"].Kind != "typical" || doc.Project.Place.Latitude.Val == 0 {
		t.Errorf("mass %v, height %v, place %v", m, v.Origins["stores[0].hoist.travel_m"], doc.Project.Place.Latitude)
	}
	if presses > 40 {
		t.Errorf("%d presses of the tab key from the start to the verdict", presses)
	}
}
