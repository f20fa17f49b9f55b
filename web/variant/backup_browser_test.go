package variant_test

import (
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/web/browsertest"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// The page Backup of a plan whose laptop goes off by the charge and whose pump waits: on the narrowest phone, in the dark, it has
// no fault and nothing leaves its sides; on paper it is one sheet, with plan and order of supply and without what only a screen can
// do; without scripts its form makes a generator that burns fuel, with the caution of its exhaust.
func TestBrowserBackupEverywhere(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	p, vs := webtest.Create(t, s, "cabin", catalog.Cabin())
	at := base + page.VariantURL(p.ID, vs[0].ID) + "/backup"
	tab := b.Open(t, browsertest.Look{Width: 320, Height: 640, Dark: true, Still: true})
	tab.Go(at)
	tab.Clean()
	if over := tab.Sideways(); over > 0 {
		t.Errorf("%d px too wide", over)
	}
	paper := tab.Print()
	for _, want := range []string{p.Value.Name, vs[0].Value.Name, "Order of supply", "on sun that is left over", "51 hours a year. That is"} {
		if !paper.Says(want) {
			t.Errorf("%q is not on paper", want)
		}
	}
	if paper.Pages != 1 || paper.Says("Feb") || paper.Says("Save") {
		t.Errorf("%d sheets: %s", paper.Pages, paper.Text)
	}
	tab.Look(browsertest.Look{Width: 320, Height: 640, NoScripts: true})
	tab.Go(at)
	tab.String(`(document.querySelector("[name='backup.kind']").value = "petrol", "")`)
	for name, typed := range map[string]string{"rated_w": "1000", "start_below": "40", "stop_above": "80"} {
		tab.Type("[name='backup."+name+"']", typed)
	}
	tab.Follow("form .primary")
	if got := webtest.Stored(t, s, vs[0].ID).Value.Backup; !got.Runs() || got.Rated.Val != 1000 || !got.Burns() {
		t.Errorf("saved: %+v", got)
	}
	if text := tab.Text("#answer"); !strings.Contains(text, "exhaust kills") {
		t.Errorf("the answer does not warn of exhaust: %s", text)
	}
}
