package crawl_test

import (
	"cmp"
	"fmt"
	"maps"
	"net/http"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/web/guide"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// mostRead are the addresses that are followed of one project, and fewRead those in the form that runs every time.
const mostRead, fewRead = 600, 60

var linksHere = regexp.MustCompile(`href="([^"#]+)`)

// saidAt is one text with the first page on which it stands.
type saidAt struct{ Doc, Page, Kind, Text string }

// everythingSaid are the texts of all pages of several plans, each once: both worked examples, a first plan, a plan with
// empty stores, water, and each of the unsafe plans with what stands on its overview, hoist and sheet.
// In the short form that runs every time, they are fewer pages of each, and one unsafe plan in ten.
func everythingSaid(t *testing.T, long bool) []saidAt {
	t.Helper()
	most, nth := mostRead, 1
	if !long {
		most, nth = fewRead, 10
	}
	s := webtest.NewSite(t)
	h := s.Handler()
	seen := map[webtest.Said]bool{}
	var out []saidAt
	read := func(doc, at, named string) (links []string) {
		w := webtest.Ask(h, http.MethodGet, at, nil)
		if w.Code != http.StatusOK {
			return nil
		}
		kind := w.Header().Get("Content-Type")
		var all []webtest.Said
		switch {
		case strings.HasPrefix(kind, "text/html"), strings.HasPrefix(kind, "image/svg"):
			var err error
			if all, err = webtest.SaidOn(w.Body.String()); err != nil {
				t.Fatalf("%s: %v", at, err)
			}
		case strings.HasPrefix(kind, "text/csv"):
			first, _, _ := strings.Cut(w.Body.String(), "\n")
			all = []webtest.Said{{Kind: "csv", Text: strings.TrimSpace(first)}}
		}
		for _, one := range all {
			if !seen[one] {
				seen[one] = true
				out = append(out, saidAt{doc, named, one.Kind, one.Text})
			}
		}
		for _, m := range linksHere.FindAllStringSubmatch(w.Body.String(), -1) {
			links = append(links, webtest.Unescape(m[1]))
		}
		return links
	}
	docs := map[string]model.Document{"1 example": catalog.Sample(), "2 cabin": catalog.Cabin(), "3 first plan": catalog.Start(webtest.ExampleAnswers(t)),
		"4 blank": pageDocuments(t)["blank stores"], "5 water": webtest.Pond(catalog.Sample())}
	for _, name := range slices.Sorted(maps.Keys(docs)) {
		p, vs := webtest.Create(t, s, name, docs[name])
		base := page.ProjectURL(p.ID)
		next, known := webtest.PagesOf(p, vs), map[string]bool{}
		for i := 0; i < len(next) && i < most; i++ {
			if known[next[i]] {
				continue
			}
			known[next[i]] = true
			for _, link := range read(name, next[i], strings.TrimPrefix(next[i], base)) {
				if strings.HasPrefix(link, base) && !known[link] {
					next = append(next, link)
				}
			}
		}
		t.Logf("%s: %d pages", name, len(known))
	}
	for _, at := range []string{"/", "/start", "/settings", "/help", "/help?q=rope", "/help?q=xyzzy"} {
		read("all", at, at)
	}
	for _, topic := range guide.GuideTopics {
		read("guide", "/help/"+topic, "/help/"+topic)
	}
	for i, plan := range webtest.UnsafePlans(t) {
		if i%nth != 0 {
			continue
		}
		p, vs := webtest.Create(t, s, plan.ID, plan.Doc)
		at := page.VariantURL(p.ID, vs[0].ID)
		for _, more := range []string{"", "/hoist/0", "/sheet", "/cells/0", "/sheet/checks", "/trials/0"} {
			read(plan.ID, at+more, "unsafe"+more)
		}
	}
	return out
}

// Where DUSKWEIGHT_WORDS names a file, all texts are written into it for a reader: page, place, text, one a line.
func TestEverythingSaid(t *testing.T) {
	file := os.Getenv("DUSKWEIGHT_WORDS")
	all := everythingSaid(t, file != "" || os.Getenv("DUSKWEIGHT_TORTURE") != "")
	if len(all) < 3000 {
		t.Errorf("only %d texts were read", len(all))
	}
	oneMeaning(t, all)
	everySentenceHasAVerb(t, all)
	thousandsApart(t, all)
	if file == "" {
		return
	}
	var b strings.Builder
	last := ""
	for _, one := range all {
		if head := one.Doc + " " + one.Page; head != last {
			fmt.Fprintf(&b, "\n== %s\n", head)
			last = head
		}
		fmt.Fprintf(&b, "%s\t%s\n", one.Kind, one.Text)
	}
	if err := os.WriteFile(file, []byte(b.String()), 0o644); err != nil {
		t.Fatal(err)
	}
	n := map[string]int{}
	for _, one := range all {
		n[one.Kind]++
	}
	for _, kind := range slices.SortedFunc(maps.Keys(n), func(a, b string) int { return cmp.Compare(n[b], n[a]) }) {
		t.Logf("%6d %s", n[kind], kind)
	}
}
