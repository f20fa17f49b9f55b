package crawl_test

import (
	"html"
	"net/http"
	"regexp"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/web/browsertest"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

var missingLinks = regexp.MustCompile(`(?s)<h2 id="missing">.*?</section>`)

var linksOf = regexp.MustCompile(`<a href="([^"#]*)(?:#([^"]*))?">([^<]*)</a>`)

// missingOn are the links of the list "Still missing" of a page: page, anchor, words.
func missingOn(body string) (out [][3]string) {
	for _, list := range missingLinks.FindAllString(body, -1) {
		for _, m := range linksOf.FindAllStringSubmatch(list, -1) {
			out = append(out, [3]string{html.UnescapeString(m[1]), m[2], html.UnescapeString(m[3])})
		}
	}
	return out
}

// Every line of "Still missing" leads to the very field on its page, or to the list where its row can be added.
func TestMissingLeadsToTheField(t *testing.T) {
	s := webtest.NewSite(t)
	n := 0
	docs := pageDocuments(t)
	for name, doc := range map[string]model.Document{"sample": docs["sample"], "blank stores": docs["blank stores"], "first plan": catalog.Start(webtest.ExampleAnswers(t))} {
		p, vs := webtest.Create(t, s, name, doc)
		bodies := map[string]string{}
		read := func(page string) string {
			if bodies[page] == "" {
				bodies[page] = webtest.Ask(s.Handler(), "GET", page, nil).Body.String()
			}
			return bodies[page]
		}
		for _, page := range webtest.PagesOf(p, vs) {
			w := webtest.Ask(s.Handler(), "GET", page, nil)
			if w.Code != http.StatusOK {
				continue
			}
			for _, l := range missingOn(w.Body.String()) {
				n++
				to := l[0]
				if to == "" {
					to = page
				}
				if l[1] == "" || !strings.Contains(read(to), ` id="`+l[1]+`"`) {
					t.Errorf("%s of %s: %q leads to %s#%s, which is not there", page, name, l[2], to, l[1])
				}
			}
		}
	}
	if n < 50 {
		t.Errorf("only %d links were followed", n)
	}
}

// With scripts and without, such a link opens what is folded and the caret stands in the field.
func TestBrowserMissingLeadsToTheField(t *testing.T) {
	t.Parallel()
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	p, vs := webtest.Create(t, s, "first plan", catalog.Start(webtest.ExampleAnswers(t)))
	page := page.VariantURL(p.ID, vs[0].ID)
	links := missingOn(webtest.Ask(s.Handler(), "GET", page, nil).Body.String())
	for _, off := range []bool{false, true} {
		tab := b.Open(t, browsertest.Look{Width: 1366, Height: 900, NoScripts: off})
		step := 8
		if off {
			step = 18 // each is a new page here
		}
		for i := 0; i < len(links); i += step {
			l := links[i]
			tab.Go("about:blank")
			tab.Go(base + l[0] + "#" + l[1])
			tab.Wait("document.activeElement && document.activeElement.id === '" + l[1] + "'")
			if tab.String("String(document.activeElement.checkVisibility())") != "true" {
				t.Errorf("scripts off %v: %s is not to be seen", off, l[2])
			}
		}
	}
}
