package compare_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/web"
	"duskweight/web/browsertest"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// The comparison of three and of four variants, with its years and its picture, is one page of either paper.
func TestBrowserComparePrinted(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	doc := catalog.Sample()
	comparePrinted(t, b, s, base, doc)
	more := doc.Variants[0]
	more.Name = "Block in the gable, two"
	doc.Variants = append(doc.Variants, more)
	comparePrinted(t, b, s, base, doc)
}

func comparePrinted(t *testing.T, b *browsertest.Browser, s *web.Site, base string, doc model.Document) {
	t.Helper()
	p, _ := webtest.Create(t, s, "sample", doc)
	tab := b.Open(t, browsertest.Look{Width: 1366, Height: 3400})
	tab.Go(base + page.ProjectURL(p.ID) + "/compare")
	tab.Wait(`document.querySelector(".chart svg") && document.querySelector("#range b")`)
	for name, paper := range map[string]chromedp.PaperSize{"a4": chromedp.PaperA4, "letter": chromedp.PaperLetter} {
		sheet := tab.PrintOn(paper)
		sheet.Keep(t, fmt.Sprintf("compare-%d-%s", len(doc.Variants), name))
		if sheet.Pages != 1 {
			t.Errorf("%d variants, %s: %d pages", len(doc.Variants), name, sheet.Pages)
		}
		for _, want := range []string{"highest is best", "In other years", "cost so far, EUR"} {
			if !strings.Contains(strings.ReplaceAll(sheet.Text, "\u00a0", " "), want) {
				t.Errorf("%s: %q is not on it", name, want)
			}
		}
	}
}
