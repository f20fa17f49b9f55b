package guide_test

import (
	"html"
	"net/http"
	"regexp"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/web/guide"
	"duskweight/web/webtest"
)

// At least sixty terms are linked on the pages, each to a row that exists, each once on a page outside of what is folded
// away.
func TestTermsOfPages(t *testing.T) {
	s := webtest.NewSite(t)
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	pages := append(webtest.PagesOf(p, vs), "/", "/start", "/settings", "/help")
	for _, topic := range guide.GuideTopics {
		pages = append(pages, "/help/"+topic)
	}
	words := webtest.Ask(s.Handler(), "GET", "/help/words", nil).Body.String()
	linked := map[string]bool{}
	for _, page := range pages {
		body := webtest.Ask(s.Handler(), "GET", page, nil).Body.String()
		for _, m := range guide.TermLinks.FindAllStringSubmatch(body, -1) {
			linked[m[1]] = true
			if !strings.Contains(words, `id="`+m[1]+`"`) {
				t.Errorf("%s: no row %s", page, m[1])
			}
		}
	}
	if len(linked) < 60 {
		t.Errorf("%d terms are linked somewhere, want at least 60", len(linked))
	}
}

// The search finds passages by their words, by the word of the trade, and shows where they stand; it stands without
// scripts, and text of a stranger stays text.
func TestGuideSearch(t *testing.T) {
	s := webtest.NewSite(t)
	for _, c := range []struct{ asked, url, marked string }{
		{"sheave", "/help/words#w-pulley", "sheave"},
		{"Peukert", "/help/cells", "Peukert"},
		{"first push", "/help/words#w-first-push", "first"},
		{"step-down converter", "/help/hoist#the-panel-straight-on-the-motor", "step"},
		{"children fence", "/help/safety#mechanical", "fence"},
		{"rainflow", "/help/formulas#battery", "rainflow"},
	} {
		w := webtest.Ask(s.Handler(), "GET", "/help?q="+strings.ReplaceAll(c.asked, " ", "+"), nil)
		body := w.Body.String()
		if w.Code != http.StatusOK || !strings.Contains(body, `href="`+c.url+`"`) || !strings.Contains(strings.ToLower(body), "<mark>"+strings.ToLower(c.marked)+"</mark>") {
			t.Errorf("%q: %d, not found at %s", c.asked, w.Code, c.url)
		}
	}
	body := webtest.Ask(s.Handler(), "GET", "/help?q=%3Cscript%3Ealert(1)%3C%2Fscript%3E", nil).Body.String()
	if strings.Contains(body, "<script>alert") || !strings.Contains(body, "&lt;script&gt;alert(1)") {
		t.Error("text of a stranger")
	}
	for _, q := range []string{"%00", "a", "....", strings.Repeat("rope+", 100), "%C4%B0stanbul", "%ff%fe", "''", "s"} {
		if w := webtest.Ask(s.Handler(), "GET", "/help?q="+q, nil); w.Code != http.StatusOK {
			t.Errorf("%s: %d", q, w.Code)
		}
	}
	// the place that a result leads to is on its page
	for _, m := range regexp.MustCompile(`href="(/help/[a-z]+)#([^"]+)"`).FindAllStringSubmatch(webtest.Ask(s.Handler(), "GET", "/help?q=rope", nil).Body.String(), -1) {
		if !strings.Contains(webtest.Ask(s.Handler(), "GET", m[1], nil).Body.String(), `id="`+m[2]+`"`) {
			t.Errorf("%s has no place %s", m[1], m[2])
		}
	}
}

// What is behind "how" leads to a page of the guide that exists.
func TestHowLeadsToTheGuide(t *testing.T) {
	s := webtest.NewSite(t)
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	for _, page := range webtest.PagesOf(p, vs) {
		for _, m := range regexp.MustCompile(`href="(/help/[a-z]+)[#"]`).FindAllStringSubmatch(webtest.Ask(s.Handler(), "GET", page, nil).Body.String(), -1) {
			if w := webtest.Ask(s.Handler(), "GET", html.UnescapeString(m[1]), nil); w.Code != http.StatusOK {
				t.Errorf("%s leads to %s: %d", page, m[1], w.Code)
			}
		}
	}
}
