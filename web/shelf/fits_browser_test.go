package shelf_test

import (
	"regexp"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model/unit"
	"duskweight/web/browsertest"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// A search of more combinations than are worked out at once goes on by itself where there is a script, and comes to the page
// that the address with the whole search gives; without a script a link leads to that page.
func TestBrowserFitsComeBitByBit(t *testing.T) {
	doc := catalog.Sample()
	m := doc.Project.Shelf.Motors[0]
	for k := range 3 { // each nearly the first one, so that as many again move
		m.K.Val *= 1 + 0.01*unit.MachineConstant(k+1)
		m.Name = "Motor " + page.Itoa(k+1)
		doc.Project.Shelf.Motors = append(doc.Project.Shelf.Motors, m)
	}
	s, base := webtest.Serve(t)
	p, vs := webtest.Create(t, s, "many", doc)
	at := page.ProjectURL(p.ID) + "/shelf/fits?v=" + page.Itoa(int(vs[0].ID)) + "&i=0"
	first := webtest.Ask(s.Handler(), "GET", at, nil).Body.String()
	whole := webtest.Ask(s.Handler(), "GET", at+"&all=1", nil).Body.String()
	if !strings.Contains(first, "The 250 of them that lose least were worked out in full.") || !strings.Contains(first, "&amp;all=1") || strings.Contains(whole, "were worked out in full") {
		t.Fatal("the first page is not a part of the search, or does not lead to the whole")
	}
	does := regexp.MustCompile(`\d+ of [\d\s\x{202f}\x{a0}\x{2009}]+ combinations lift`).FindString(whole)
	tab := browsertest.Start(t).Open(t, browsertest.Look{Width: 1366, Height: 768, Still: true})
	tab.Go(base + at)
	tab.Wait(`document.getElementById("many-work").hidden && document.getElementById("many-said").textContent.endsWith("combinations are done.")`)
	if got := tab.Text("#many-results .verdict"); does == "" || !strings.HasPrefix(got, does) {
		t.Errorf("%q, the whole search says %q", got, does)
	}
}
