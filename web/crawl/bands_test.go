package crawl_test

import (
	"fmt"
	"net/http"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// Of a project in which nothing may be hung, each page that is about a plan says so before its heading: for the eye, for the
// ear and on paper. Comparing variants, the word stands over the name of each.
func TestBandsBeforeHeadings(t *testing.T) {
	s := webtest.NewSite(t)
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	at := page.VariantURL(p.ID, vs[0].ID)
	for _, path := range []string{at, at + "/takes", at + "/sheet", at + "/sheet/wiring", at + "/sheet/checks", at + "/parts", at + "/trials/0", at + "/hoist/0",
		page.ProjectURL(p.ID) + "/load", page.ProjectURL(p.ID) + fmt.Sprintf("/shelf/fits?v=%d", vs[0].ID)} {
		body := webtest.Ask(s.Handler(), http.MethodGet, path, nil).Body.String()
		band, head := strings.Index(body, `class="state is-no"`), strings.Index(body, "<h1")
		if band < 0 || band > head || !strings.Contains(body[:head], "DO NOT HANG.") {
			t.Errorf("%s: the band stands at %d, the heading at %d", path, band, head)
		}
	}
	body := webtest.Ask(s.Handler(), http.MethodGet, page.ProjectURL(p.ID)+fmt.Sprintf("/compare?v=%d&v=%d", vs[0].ID, vs[1].ID), nil).Body.String()
	_, table, _ := strings.Cut(body, "<thead>")
	word, name := strings.Index(table, "DO NOT HANG"), strings.Index(table, `>`+vs[0].Value.Name+`</a>`)
	if word < 0 || name < 0 || word > name || strings.Count(table[:strings.Index(table, "</thead>")], "state-line") != 2 {
		t.Errorf("compare: the word stands at %d, the name at %d", word, name)
	}
}
