package web

import (
	"encoding/json"
	"net/http"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"duskweight/internal/model"
	"duskweight/internal/model/search"
	"duskweight/internal/store"
	"duskweight/web/browsertest"
)

// The words of pairs, by hand: √(0.93·0.07/100) = 0.0255, whole percents; √(0.5·0.5/10) = 0.158, tens; all of 100: above
// 1 − 3/100. The better one stands first.
func TestWordsOfPairs(t *testing.T) {
	for _, tc := range []struct {
		v    search.Versus
		want string
	}{
		{search.Versus{More: 93, Same: 4, Less: 3, Years: 100}, "In 93 of 100 years, A has more nights with light than B. In 4 it has the same and in 3 fewer. The chance is 93 %, give or take 3 %."},
		{search.Versus{More: 3, Same: 4, Less: 93, Years: 100}, "In 93 of 100 years, B has more nights with light than A. In 4 it has the same and in 3 fewer. The chance is 93 %, give or take 3 %."},
		{search.Versus{More: 5, Same: 2, Less: 3, Years: 10}, "In 5 of 10 years, A has more nights with light than B. In 2 it has the same and in 3 fewer. The chance is 50 %, give or take 20 %."},
		{search.Versus{More: 931, Same: 0, Less: 69, Years: 1000}, "In 931 of 1 000 years, A has more nights with light than B. In 0 it has the same and in 69 fewer. The chance is 93.1 %, give or take 0.8 %."},
		{search.Versus{More: 100, Years: 100}, "In all 100 years, A has more nights with light than B: a chance above 97 %."},
		{search.Versus{Same: 100, Years: 100}, "In every one of 100 years, A and B have the same number of nights with light."},
		{search.Versus{More: 5, Same: 90, Less: 5, Years: 100}, "Neither is better: in 5 of 100 years, A has more nights with light than B, in as many it has fewer, and in 90 the same."},
	} {
		if got := pairSay("A", "B", tc.v); got != tc.want {
			t.Errorf("%+v:\n%s\n%s", tc.v, got, tc.want)
		}
	}
}

// The page of the sample says everything that it should for the three variants, within a second, and takes what is asked.
func TestSurePage(t *testing.T) {
	s := newSite(t)
	ask(s.Handler(), "POST", "/sample", map[string][]string{})
	began := time.Now()
	w := ask(s.Handler(), "GET", "/projects/1/sure", nil)
	t.Logf("100 years of three variants: %v", time.Since(began).Round(time.Millisecond))
	body := w.Body.String()
	for _, want := range []string{"in about 9 years of 10 at least", "Bad year", "Usual year", "Good year", "100 years of weather", "n=1000", "/help/sure"} {
		if !strings.Contains(body, want) {
			t.Errorf("not on the page: %q", want)
		}
	}
	// One of the sample's variants has no night with light in any year: a sentence, and no picture of nothing.
	if n := strings.Count(body, "<figure"); w.Code != http.StatusOK || n != 3 || strings.Count(body, "<polyline") != 2 {
		t.Errorf("status %d, %d strips, want 3", w.Code, n)
	}
	if body := ask(s.Handler(), "GET", "/projects/1/sure?v=2&n=20", nil).Body.String(); strings.Count(body, "<polyline") != 1 || !strings.Contains(body, "20 years of weather") {
		t.Error("one variant and 20 years: not what was asked")
	}
	for _, n := range []string{"0", "-1", "9", "1001", "many", "1e2", "99999999999999999999"} {
		if w := ask(s.Handler(), "GET", "/projects/1/sure?n="+n, nil); w.Code != http.StatusBadRequest {
			t.Errorf("n=%s: status %d", n, w.Code)
		}
	}
}

// Without a sky, with a file, and with a store that gives nothing back the page says so and shows no number.
func TestSureWithLess(t *testing.T) {
	for _, tc := range []struct {
		s    search.Sure
		want string
	}{
		{search.Sure{Years: 1, Nights: 365, WhyOne: "it is a file", Variants: []search.Certain{{Name: "A", Nights: []float64{300}}}}, "one year only: it is a file"},
		{search.Sure{Years: 1, WhyOne: "the place is not known", Variants: []search.Certain{{Name: "A", WhyNot: "the place is not known"}}}, "No year can be run yet: the place is not known."},
		{search.Sure{}, "no variant"},
	} {
		v := sureOf(tc.s, model.Project{}, 0)
		if !strings.Contains(v.Empty, tc.want) || len(v.Rows) > 0 {
			t.Errorf("%q does not say %q; %d rows", v.Empty, tc.want, len(v.Rows))
		}
	}
	v := sureOf(search.Sure{Years: 100, Nights: 365, Variants: []search.Certain{{Name: "A", WhyNot: "no panel"}}, Pairs: [][]search.Versus{{{}}}}, model.Project{}, 0)
	if len(v.Lacks) != 1 || !strings.Contains(v.Lacks[0], "A: no year can be run, because no panel.") {
		t.Errorf("%q", v.Lacks)
	}
}

// Looked at by the accessibility checker and at both ends of the widths.
func TestBrowserSure(t *testing.T) {
	b := browsertest.Start(t)
	s, base := serve(t)
	ask(s.Handler(), "POST", "/sample", map[string][]string{})
	for _, width := range []int{1366, 320} {
		tab := b.Open(t, browsertest.Look{Width: width, Height: 900})
		tab.Go(base + "/projects/1/compare")
		tab.Follow("button[formaction=sure]")
		if got := tab.Text("h1"); got != "How sure" {
			t.Errorf("from Compare: %q", got)
		}
		for _, f := range tab.Axe() {
			t.Errorf("%d px: %v", width, f)
		}
		if n := tab.Sideways(); n > 0 {
			t.Errorf("%d px: %d px too wide", width, n)
		}
		tab.Clean()
		tab.Shot("sure-" + itoa(width))
	}
}

// The years come bit by bit: the count grows to the end, the results come at the named steps, and the last ones are those of
// the whole page to the letter. Who asks for what cannot be is refused as on the page.
func TestYearsComeBitByBit(t *testing.T) {
	s := newSite(t)
	ask(s.Handler(), "POST", "/sample", map[string][]string{})
	for _, parts := range []string{"", "&parts=yes"} {
		w := ask(s.Handler(), "GET", "/projects/1/sure/many?v=2&n=30"+parts, nil)
		var last sureLine
		shown, html := []int{}, ""
		for line := range strings.Lines(w.Body.String()) {
			var l sureLine
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
		took := regexp.MustCompile(`These 30 years.*?</p>`)
		whole := ask(s.Handler(), "GET", last.URL, nil).Body.String()
		if !strings.Contains(took.ReplaceAllString(whole, ""), took.ReplaceAllString(html, "")) {
			t.Errorf("%q: the page of the same address says something else", parts)
		}
		if moved := strings.Contains(whole, "Which input moves the answer most"); moved != (parts != "") {
			t.Errorf("%q: which input moves the answer: %v", parts, moved)
		}
	}
	if w := ask(s.Handler(), "GET", "/projects/1/sure/many?n=5", nil); w.Code != http.StatusBadRequest {
		t.Errorf("5 years: status %d", w.Code)
	}
}

// The second answer on the page Variant follows what is typed: half the battery, fewer nights in a bad year.
func TestYearsFollowTyping(t *testing.T) {
	s := newSite(t)
	ask(s.Handler(), "POST", "/sample", map[string][]string{})
	page := ask(s.Handler(), "GET", "/projects/1/variants/2", nil).Body.String()
	if !strings.Contains(page, `data-follow="/projects/1/variants/2/sure"`) {
		t.Error("the page does not ask for it")
	}
	if w := ask(s.Handler(), "GET", "/projects/1/variants/2/sure", nil); w.Code != http.StatusSeeOther || w.Header().Get("Location") != "/projects/1/sure?v=2&n=100&parts=yes" {
		t.Errorf("without scripts: %d %s", w.Code, w.Header().Get("Location"))
	}
	body := ask(s.Handler(), "POST", "/projects/1/variants/2/sure", map[string][]string{nameRevision: {"1"}}).Body.String()
	if !strings.Contains(body, "in about 9 years of 10 at least") {
		t.Errorf("the saved variant: %s", textOf(body))
	}
}

// A thousand years with parts that differ show what they come to while more come, stop at the button, and leave that; the
// form then gives the whole of a smaller number, with its own address.
func TestBrowserYearsStop(t *testing.T) {
	b := browsertest.Start(t)
	s, base := serve(t)
	ask(s.Handler(), "POST", "/sample", map[string][]string{})
	tab := b.Open(t, browsertest.Look{Width: 1366, Height: 900})
	tab.Go(base + "/projects/1/sure?v=2&n=10&parts=yes")
	tab.Click("#sure-results a[data-many]")
	tab.Wait(`!document.getElementById("sure-work").hidden && document.getElementById("sure-results").textContent.includes("25 years of weather")`)
	tab.Shot("sure-work")
	tab.Click("#sure-stop")
	tab.Wait(`document.getElementById("sure-work").hidden`)
	if said := tab.Text("#sure-said"); !strings.HasPrefix(said, "Stopped. Below are the first ") {
		t.Errorf("stopped: %q", said)
	}
	for _, f := range tab.Axe() {
		t.Error(f)
	}
	tab.Click(".chooser button")
	tab.Wait(`document.getElementById("sure-said").textContent === "10 years are done."`)
	if at := tab.URL(); !strings.HasSuffix(at, "/projects/1/sure?n=10&parts=yes&v=2") {
		t.Errorf("address %s", at)
	}
	tab.Clean()
}

// Nights that ask for nothing are not nights with light.
func TestSureWithoutLamps(t *testing.T) {
	s := newSite(t)
	ask(s.Handler(), "POST", "/sample", map[string][]string{})
	p, err := s.Store.Project(t.Context(), 1)
	if err != nil {
		t.Fatal(err)
	}
	p.Value.Load.Appliances = nil
	if _, err := s.Store.SaveProject(t.Context(), 1, p.Value, store.Edit{Revision: p.Revision}, testNow); err != nil {
		t.Fatal(err)
	}
	body := ask(s.Handler(), "GET", "/projects/1/sure", nil).Body.String()
	if !strings.Contains(body, "no night has lamps or devices") || strings.Contains(body, "365 of 365") {
		t.Error("a project without lamps is said to have light")
	}
}
