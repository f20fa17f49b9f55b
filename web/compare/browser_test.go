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
	tab.Wait(`window.echarts && document.querySelector("#range b")`) // the picture is drawn when its fold opens, or for paper
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

// The three variants of the worked example stand on one screen and a half: the scales, what differs, and one line for all that is
// the same. The design allows 1,400 px at a width of 1366. Each variant has its buttons at its name, and the rows that are the
// same are there when their fold is opened.
func TestBrowserCompareIsShort(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	url := base + page.ProjectURL(p.ID) + "/compare"
	for _, look := range []browsertest.Look{{}, {Width: 1920, Height: 1080, Dark: true}, browsertest.Phone} {
		tab := b.Open(t, look)
		tab.Go(url)
		tab.Wait(`document.querySelector("#range b")`)
		tab.Shot(fmt.Sprintf("compare-%d", look.Width))
		if high := tab.Number("document.documentElement.scrollHeight"); look.Width != browsertest.Phone.Width && high > 1400 {
			t.Errorf("%d px wide: %v px high", look.Width, high)
		}
		if wide := tab.Sideways(); wide > 0 {
			t.Errorf("%d px wide: %d px stand out", look.Width, wide)
		}
		for _, found := range tab.Axe() {
			t.Errorf("%d px wide: %v", look.Width, found)
		}
	}
	tab := b.Open(t, browsertest.Look{})
	tab.Go(url)
	if n := tab.Number(`document.querySelectorAll(".axes li form button, .axes li .button").length`); n != 6 {
		t.Errorf("%v buttons at the heads of three variants, want Copy and Change of each", n)
	}
	if text := tab.String(`document.querySelector(".cmp-two").innerText`); strings.Contains(text, "Nights that count") {
		t.Error("a row that is the same in all variants is not folded")
	}
	tab.Click("#same > summary")
	if text := tab.String(`document.querySelector("#same").innerText`); !strings.Contains(text, "Nights that count") || !strings.Contains(text, "Breaks first") {
		t.Errorf("the fold has no rows: %s", text)
	}
	tab.Click(".axes li:nth-child(2) form button")
	tab.Wait(`location.pathname.match(/variants\/\d+$/)`)
	made, err := s.Store.Variants(t.Context(), p.ID)
	if err != nil || len(made) != len(vs)+1 {
		t.Fatalf("%d variants after a copy, %v", len(made), err)
	}
}
