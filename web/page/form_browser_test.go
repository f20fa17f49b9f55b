package page_test

import (
	"fmt"
	"testing"

	"duskweight/web/browsertest"
	"duskweight/web/form"
	"duskweight/web/webtest"
)

// A hoist on a phone: verdict and danger stand above the form, a link to a field in a
// closed section opens it, and the field under the finger stays where it is while the answer above changes its height.
func TestBrowserFormOnPhone(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	webtest.Ask(s.Handler(), "POST", "/sample", map[string][]string{})
	tab := b.Open(t, browsertest.Look{Width: 320, Height: 700, Still: true})
	page := base + "/projects/1/variants/1/hoist/0?depth=bench&all=1"
	tab.Go(page)
	top := func(css string) float64 {
		return tab.Number(fmt.Sprintf("document.querySelector(%q).getBoundingClientRect().top + scrollY", css))
	}
	for _, css := range []string{"[data-peek-headline]", "[data-peek=lift]", "#band"} {
		if top(css) >= top("#form") {
			t.Errorf("%s stands under the form", css)
		}
	}

	id := tab.String("document.querySelector('[id$=drum-diameter-m]').id")
	if tab.String("String(document.getElementById('"+id+"').closest('details').open)") != "false" {
		t.Error("the section of the drum is open before anybody asked for it")
	}
	tab.Number("location.hash = '#" + id + "', 0")
	tab.Wait("document.getElementById('" + id + "').closest('details').open && document.activeElement.id === '" + id + "'")

	field := "#" + form.FieldID("stores[0].hoist.travel_m")
	tab.Number(fmt.Sprintf("document.querySelector(%q).scrollIntoView({block: 'center', behavior: 'instant'}), 0", field))
	before, was := tab.Number(fmt.Sprintf("document.querySelector(%q).getBoundingClientRect().top", field)), tab.Text("[data-number=lift]")
	tab.Type(field, "0.1")
	tab.Wait(fmt.Sprintf("document.querySelector('[data-number=lift]').textContent !== %q", was))
	if short, long := tab.Text("[data-peek=lift]"), tab.String("(() => { const n = document.querySelector('[data-number=lift]').cloneNode(true); for (const w of n.querySelectorAll('.was')) w.remove(); return n.textContent.trim().replaceAll(String.fromCharCode(160), String.fromCharCode(32)); })()"); short != long {
		t.Errorf("%q over the form, %q in the answer", short, long)
	}
	tab.Wait("new Promise(ok => requestAnimationFrame(() => requestAnimationFrame(() => ok(true))))")
	if moved := tab.Number(fmt.Sprintf("document.querySelector(%q).getBoundingClientRect().top", field)) - before; moved > 8 || moved < -8 { // the answer grows by lines of 20 px and more; whole pixels and the caret's own scroll stay under 3
		t.Errorf("the field under the finger moved by %.0f px", moved)
	}
}
