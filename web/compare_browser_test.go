package web

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"duskweight/internal/catalog"
	"duskweight/web/browsertest"
)

// The comparison of three variants, with its years and its picture, is one page of either paper.
func TestBrowserComparePrinted(t *testing.T) {
	b := browsertest.Start(t)
	s, base := serve(t)
	p, _ := create(t, s, "sample", catalog.Sample())
	tab := b.Open(t, browsertest.Look{Width: 1366, Height: 3400})
	tab.Go(base + projectURL(p.ID) + "/compare")
	tab.Wait(`document.querySelector(".chart svg") && document.querySelector("#range b")`)
	for name, paper := range map[string]chromedp.PaperSize{"a4": chromedp.PaperA4, "letter": chromedp.PaperLetter} {
		sheet := tab.PrintOn(paper)
		sheet.Keep(t, "compare-"+name)
		if sheet.Pages != 1 {
			t.Errorf("%s: %d pages", name, sheet.Pages)
		}
		for _, want := range []string{"highest is best", "In other years", "paid so far, EUR"} {
			if !strings.Contains(strings.ReplaceAll(sheet.Text, "\u00a0", " "), want) {
				t.Errorf("%s: %q is not on it", name, want)
			}
		}
	}
}
