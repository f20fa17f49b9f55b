package sure_test

import (
	"encoding/json"
	"net/http"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"duskweight/internal/store"
	"duskweight/web/browsertest"
	"duskweight/web/form"
	"duskweight/web/page"
	"duskweight/web/sure"
	"duskweight/web/webtest"
)

// The page of the sample says everything that it should for the three variants, within a second, and takes what is asked.
func TestSurePage(t *testing.T) {
	s := webtest.NewSite(t)
	webtest.Ask(s.Handler(), "POST", "/sample", map[string][]string{})
	began := time.Now()
	w := webtest.Ask(s.Handler(), "GET", "/projects/1/sure", nil)
	t.Logf("200 years of three variants: %v", time.Since(began).Round(time.Millisecond))
	body := w.Body.String()
	for _, want := range []string{"in 9 of 10 made years at least", "Bad year", "Usual year", "Good year", "200 made years of weather", "n=1000", "/help/sure"} {
		if !strings.Contains(body, want) {
			t.Errorf("not on the page: %q", want)
		}
	}
	// One of the sample's variants has no night with light in any year: a sentence, and no picture of nothing.
	if n := strings.Count(body, "<figure"); w.Code != http.StatusOK || n != 1 || dotted(body) != 2 {
		t.Errorf("status %d, %d pictures with %d rows of dots, want one with two", w.Code, n, dotted(body))
	}
	if body := webtest.Ask(s.Handler(), "GET", "/projects/1/sure?v=2&n=20", nil).Body.String(); dotted(body) != 1 || !strings.Contains(body, "20 made years of weather") {
		t.Error("one variant and 20 years: not what was asked")
	}
	for _, n := range []string{"0", "-1", "9", "1001", "many", "1e2", "99999999999999999999"} {
		if w := webtest.Ask(s.Handler(), "GET", "/projects/1/sure?n="+n, nil); w.Code != http.StatusBadRequest {
			t.Errorf("n=%s: status %d", n, w.Code)
		}
	}
}

// dotted is how many rows of dots the picture of a page has; it is drawn twice.
func dotted(body string) int { return strings.Count(body, `class="made"`) / 2 }

// Looked at by the accessibility checker and at both ends of the widths.
func TestBrowserSure(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	webtest.Ask(s.Handler(), "POST", "/sample", map[string][]string{})
	for _, width := range []int{1366, 320} {
		tab := b.Open(t, browsertest.Look{Width: width, Height: 900})
		tab.Go(base + "/projects/1/compare")
		tab.Follow("button[formaction=sure]")
		if got := tab.Text("h1"); !strings.Contains(got, "in 9 of 10 made years at least ") {
			t.Errorf("from Compare: %q", got)
		}
		tab.Wait(`document.querySelectorAll("#moves li").length > 4`)
		for _, f := range tab.Axe() {
			t.Errorf("%d px: %v", width, f)
		}
		if n := tab.Sideways(); n > 0 {
			t.Errorf("%d px: %d px too wide", width, n)
		}
		tab.Clean()
		tab.Shot("sure-" + page.Itoa(width))
	}
}

// The years come bit by bit: the count grows to the end, the results come at the named steps, and the last ones are those of
// the whole page to the letter. Who asks for what cannot be is refused as on the page.
func TestYearsComeBitByBit(t *testing.T) {
	s := webtest.NewSite(t)
	webtest.Ask(s.Handler(), "POST", "/sample", map[string][]string{})
	for _, parts := range []string{"", "&parts=yes"} {
		w := webtest.Ask(s.Handler(), "GET", "/projects/1/sure/many?v=2&n=30"+parts, nil)
		var last sure.SureLine
		shown, html := []int{}, ""
		for line := range strings.Lines(w.Body.String()) {
			var l sure.SureLine
			if err := json.Unmarshal([]byte(line), &l); err != nil || l.Done < last.Done || l.Of != 30 {
				t.Fatalf("line %q after %d: %v", line, last.Done, err)
			}
			if l.HTML != "" {
				shown, html = append(shown, l.Done), l.HTML
			}
			last = l
		}
		if !slices.Equal(shown, []int{25, 30}) || last.URL == "" {
			t.Errorf("results after %v years, address %q", shown, last.URL)
		}
		took := regexp.MustCompile(`(?s)These 30 years.*?</p>`)
		whole := webtest.Ask(s.Handler(), "GET", last.URL, nil).Body.String()
		if !strings.Contains(took.ReplaceAllString(whole, ""), took.ReplaceAllString(html, "")) {
			t.Errorf("%q: the page of the same address says something else", parts)
		}
		if moved := strings.Contains(whole, `class="moves"`); moved != (parts != "") {
			t.Errorf("%q: which input moves the answer: %v", parts, moved)
		}
	}
	if w := webtest.Ask(s.Handler(), "GET", "/projects/1/sure/many?n=5", nil); w.Code != http.StatusBadRequest {
		t.Errorf("5 years: status %d", w.Code)
	}
}

// The second answer on the page Variant follows what is typed: half the battery, fewer nights in a bad year.
func TestYearsFollowTyping(t *testing.T) {
	s := webtest.NewSite(t)
	webtest.Ask(s.Handler(), "POST", "/sample", map[string][]string{})
	page := webtest.Ask(s.Handler(), "GET", "/projects/1/variants/2", nil).Body.String()
	if !strings.Contains(page, `data-follow="/projects/1/variants/2/sure"`) {
		t.Error("the page does not ask for it")
	}
	if w := webtest.Ask(s.Handler(), "GET", "/projects/1/variants/2/sure", nil); w.Code != http.StatusSeeOther || w.Header().Get("Location") != "/projects/1/sure?v=2&n=200&parts=yes" {
		t.Errorf("without scripts: %d %s", w.Code, w.Header().Get("Location"))
	}
	body := webtest.Ask(s.Handler(), "POST", "/projects/1/variants/2/sure", map[string][]string{form.NameRevision: {"1"}}).Body.String()
	if !strings.Contains(body, "in 9 of 10 made years at least") {
		t.Errorf("the saved variant: %s", webtest.TextOf(body))
	}
}

// A thousand years with parts that differ show what they come to while more come, stop at the button, and leave that; the
// form then gives the whole of a smaller number, with its own address.
func TestBrowserYearsStop(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	webtest.Ask(s.Handler(), "POST", "/sample", map[string][]string{})
	tab := b.Open(t, browsertest.Look{Width: 1366, Height: 900})
	tab.Go(base + "/projects/1/sure?v=2&n=10&parts=yes")
	tab.Click("#many-results a[data-many]")
	tab.Wait(`!document.getElementById("many-work").hidden && document.getElementById("many-results").textContent.includes("25 made years of weather")`)
	tab.Shot("sure-work")
	tab.Click("#many-stop")
	tab.Wait(`document.getElementById("many-work").hidden`)
	if said := tab.Text("#many-said"); !strings.HasPrefix(said, "Stopped. Below are the first ") {
		t.Errorf("stopped: %q", said)
	}
	for _, f := range tab.Axe() {
		t.Error(f)
	}
	tab.Click("#choose summary")
	tab.Click(".chooser button")
	tab.Wait(`document.getElementById("many-said").textContent === "10 years are done."`)
	if at := tab.URL(); !strings.HasSuffix(at, "/projects/1/sure?n=10&parts=yes&v=2") {
		t.Errorf("address %s", at)
	}
	tab.Clean()
}

// Nights that ask for nothing are not full nights.
func TestSureWithoutLamps(t *testing.T) {
	s := webtest.NewSite(t)
	webtest.Ask(s.Handler(), "POST", "/sample", map[string][]string{})
	p, err := s.Store.Project(t.Context(), 1)
	if err != nil {
		t.Fatal(err)
	}
	p.Value.Load.Appliances = nil
	if _, err := s.Store.SaveProject(t.Context(), 1, p.Value, store.Edit{Revision: p.Revision}, webtest.TestNow); err != nil {
		t.Fatal(err)
	}
	body := webtest.Ask(s.Handler(), "GET", "/projects/1/sure", nil).Body.String()
	if !strings.Contains(body, "no night has lamps or devices") || strings.Contains(body, "365 of 365") {
		t.Error("a project without lamps is said to have light")
	}
}

// What moves the answer follows the page, of the variant that it speaks of first; each input leads to the page where it is typed.
func TestMovesFollow(t *testing.T) {
	s := webtest.NewSite(t)
	webtest.Ask(s.Handler(), "POST", "/sample", map[string][]string{})
	if body := webtest.Ask(s.Handler(), "GET", "/projects/1/sure", nil).Body.String(); !strings.Contains(body, `data-follow="/projects/1/sure/moves?v=2"`) {
		t.Error("the page does not ask for it")
	}
	body := webtest.Ask(s.Handler(), "GET", "/projects/1/sure/moves?v=2", nil, "X-Part", "results").Body.String()
	for _, to := range []string{"/projects/1/place", "/projects/1/load", "/projects/1/load?part=standing", "/projects/1/variants/2", "/projects/1/variants/2/cells/0"} {
		if !strings.Contains(body, `href="`+to+`"`) {
			t.Errorf("no input leads to %s", to)
		}
	}
	if w := webtest.Ask(s.Handler(), "GET", "/projects/1/sure/moves?v=2", nil); w.Code != http.StatusSeeOther || !strings.Contains(w.Header().Get("Location"), "parts=yes") {
		t.Errorf("without scripts: %d %s", w.Code, w.Header().Get("Location"))
	}
}

// The page is light and not long: at most 14 KB packed, and 2,900 px on a phone.
func TestBrowserSureIsLight(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	webtest.Ask(s.Handler(), "POST", "/sample", map[string][]string{})
	for _, at := range []string{"/projects/1/sure", "/projects/1/sure?n=1000&parts=yes"} {
		if n := len(webtest.Packed(s.Handler(), at)); n > 14<<10 {
			t.Errorf("%s: %d bytes packed", at, n)
		}
	}
	tab := b.Open(t, browsertest.Look{Width: 360, Height: 740})
	tab.Go(base + "/projects/1/sure")
	tab.Wait(`document.querySelectorAll("#moves li").length > 4`)
	if high := tab.Number("document.documentElement.scrollHeight"); high > 2900 {
		t.Errorf("%.0f px high", high)
	}
	wide := b.Open(t, browsertest.Look{Width: 1366, Height: 768})
	wide.Go(base + "/projects/1/sure")
	if low := wide.Number(`document.getElementById("years-picture").getBoundingClientRect().bottom`); low > 768 {
		t.Errorf("the picture ends at %.0f px", low)
	}
	plain := b.Open(t, browsertest.Look{Width: 1366, Height: 768, NoScripts: true})
	plain.Go(base + "/projects/1/sure")
	plain.Follow("#moves a")
	if got := plain.Text(".moves"); !strings.Contains(got, "What lamps and devices use") {
		t.Errorf("without scripts: %q", got)
	}
}
