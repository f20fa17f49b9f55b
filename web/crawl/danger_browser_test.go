package crawl_test

import (
	"fmt"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model/unit"
	"duskweight/web/browsertest"
	"duskweight/web/form"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// After a change the danger is read out first, then the verdict of energy, and the band above the page says the same: a hook
// for 10 kg under a mass of 120 kg. Taking the change back takes the danger back.
func TestBrowserDangerFirst(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	tab := b.Open(t, browsertest.Look{Width: 1366, Height: 768, Still: true})
	tab.Go(base + page.VariantURL(p.ID, vs[2].ID) + "/hoist/0?part=eye")
	if first := tab.String("document.querySelector('main').firstElementChild.innerText"); !strings.Contains(first, "READY for the load steps") {
		t.Fatalf("the page begins with %q", first)
	}
	field := "#" + form.FieldID("stores[0].hoist.structure.hanger_working_load_n")
	tab.Number("location.hash = '" + field + "', 0")
	tab.Wait("document.activeElement.id === '" + field[1:] + "'")
	was := tab.String(fmt.Sprintf("document.querySelector(%q).value", field))
	said := "document.querySelector('#said[role=status]').textContent"
	tab.Type(field, unit.Rounded(10, 2))
	tab.Wait(said + ".startsWith('DO NOT HANG.')")
	heard, above := tab.String(said), tab.String("document.getElementById('band').innerText")
	danger, verdict := strings.Index(heard, "the hook of the top pulley"), strings.Index(heard, "Carries most")
	if danger < 0 || verdict < danger {
		t.Errorf("it reads %q: the danger and its reason first, then the verdict", heard)
	}
	if !strings.Contains(above, "DO NOT HANG.") || strings.Contains(above, "READY") {
		t.Errorf("above the page stands %q", above)
	}
	tab.Type(field, was)
	tab.Wait(said + ".startsWith('READY for the load steps')")
	if c := tab.Complaints(); len(c) > 0 {
		t.Errorf("console: %+v", c)
	}
}
