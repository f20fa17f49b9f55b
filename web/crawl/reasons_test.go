package crawl_test

import (
	"html"
	"regexp"
	"strings"
	"testing"

	"duskweight/web/page"
	"duskweight/web/webtest"
)

// Every reason against one of the unsafe plans has a link, and every link leads to an element that is on its page: the field
// that answers it, its row or its list. Before the heading of each page stands the state of the plan with the words that the
// plan deserves, and no other band of another state.
func TestReasonsLeadToTheirFields(t *testing.T) {
	words := map[string]string{"no": "DO NOT ", "not_known": "NOT READY", "proven": "PROVEN BY TEST", "yes": "READY for"}
	s := webtest.NewSite(t)
	h := s.Handler()
	item := regexp.MustCompile(`(?s)<li class="is-[a-z-]+"><span class="state-sign".*?</li>`)
	link := regexp.MustCompile(`<a href="([^"#]*)(#[^"]*)?"`)
	seen, links := map[string]int{}, 0
	for _, plan := range webtest.UnsafePlans(t) {
		if plan.Ready == "proven" {
			plan.Doc.Variants[0].Stores[0].Hoist.Trials.Proofs[0].Date = "2026-02-21" // four weeks before the clock of the tests
		}
		p, vs := webtest.Create(t, s, plan.ID, plan.Doc)
		url := page.VariantURL(p.ID, vs[0].ID)
		body := webtest.Ask(h, "GET", url, nil).Body.String()
		_, main, _ := strings.Cut(body, `<main id="main" tabindex="-1">`)
		above, _, _ := strings.Cut(main, "<h1>")
		if !strings.HasPrefix(main, `<div id="band"><div class="state is-`+strings.ReplaceAll(plan.Ready, "_", "-")) || !strings.Contains(above, "<b>"+words[plan.Ready]) {
			t.Errorf("%s is %s, and its page begins with %q", plan.ID, plan.Ready, above)
		}
		seen[plan.Ready]++
		for _, li := range item.FindAllString(body, -1) {
			all := link.FindAllStringSubmatch(li, -1)
			if len(all) == 0 {
				t.Errorf("%s: no link in %s", plan.ID, li)
			}
			for _, l := range all {
				if strings.HasPrefix(l[1], "/help/") {
					continue
				}
				links++
				target := webtest.Ask(h, "GET", html.UnescapeString(l[1]), nil).Body.String()
				if l[2] == "" || !strings.Contains(target, `id="`+l[2][1:]+`"`) {
					t.Errorf("%s: %s%s is not there, from %s", plan.ID, l[1], l[2], li)
				}
			}
		}
	}
	if t.Logf("%v, %d links", seen, links); links < 60 || seen["no"] < 30 || seen["proven"] != 1 || seen["yes"] < 4 {
		t.Error("too little was looked at")
	}
}
