package crawl_test

import (
	"image/png"
	"os"
	"regexp"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/web/browsertest"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// The pictures of README.md: one of each moment of the worked example, from the idea to the printed sheet. They are taken anew with
// make shots.
func TestBrowserReadme(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	tab := b.Open(t, browsertest.Look{Width: 1100, Height: 760})
	at := page.VariantURL(p.ID, vs[0].ID)
	for _, moment := range []struct{ name, address, there string }{
		{"idea", page.ProjectURL(p.ID), "h1"},
		{"bench", at + "/hoist/0", "a.part-row"},
		{"motion", at + "/motion/0", "svg"},
		{"sheet", at + "/sheet", "svg"},
	} {
		if moment.name == "sheet" { // a sheet of paper is tall
			tab.Look(browsertest.Look{Width: 900, Height: 1100})
		}
		tab.Go(base + moment.address)
		if tab.Number("document.querySelectorAll('main "+moment.there+"').length") == 0 {
			t.Errorf("%s: no %s", moment.name, moment.there)
		}
		if moment.name == "motion" { // half way up
			tab.String("(() => { const r = document.querySelector('main input[type=range]'); r.value = (+r.min + +r.max) / 4; r.dispatchEvent(new Event('input', {bubbles: true})); return r.value })()")
		}
		tab.View("readme-" + moment.name)
	}
}

// Every picture that README.md shows lies in the project, is a picture, and is small enough for a slow line: 150 KB, our own
// judgement.
func TestReadmePictures(t *testing.T) {
	text, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	shown := regexp.MustCompile(`!\[[^\]]{20,}\]\(([^)]+)\)`).FindAllStringSubmatch(string(text), -1)
	if len(shown) < 4 {
		t.Errorf("%d pictures, want the idea, the bench, the motion and the sheet", len(shown))
	}
	for _, m := range shown {
		f, err := os.Open("../../" + m[1])
		if err != nil {
			t.Error(err)
			continue
		}
		defer f.Close()
		if info, err := f.Stat(); err != nil || info.Size() > 150e3 {
			t.Errorf("%s: %v bytes (%v)", m[1], info.Size(), err)
		}
		if _, err := png.DecodeConfig(f); err != nil {
			t.Errorf("%s: %v", m[1], err)
		}
	}
}
