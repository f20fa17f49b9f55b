package crawl_test

import (
	"slices"
	"testing"

	"duskweight/web/browsertest"
	"duskweight/web/form"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// From a key to the painted headline, nine times on the page of the sample's hoist: printed, never a reason to fail.
func TestBrowserTypingSpeed(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	webtest.Ask(s.Handler(), "POST", "/sample", map[string][]string{})
	tab := b.Open(t, browsertest.Look{Width: 1366, Height: 900})
	tab.Go(base + "/projects/1/variants/1/hoist/0?part=mass")
	tab.Number(`(() => {
		window.took = [];
		const field = document.getElementById("` + form.FieldID("stores[0].hoist.travel_m") + `");
		let begun = 0;
		addEventListener("live:swap", () => requestAnimationFrame(() => requestAnimationFrame(() => {
			window.took.push(performance.now() - begun);
			if (window.took.length < 9) type();
		})));
		function type() {
			begun = performance.now();
			field.value = String(4 + window.took.length / 10);
			field.dispatchEvent(new Event("input", {bubbles: true}));
		}
		type();
		return 0;
	})()`)
	tab.Wait("window.took.length === 9")
	times := make([]float64, 9)
	for i := range times {
		times[i] = tab.Number("window.took[" + page.Itoa(i) + "]")
	}
	slices.Sort(times)
	t.Logf("from key to painted headline: median %.0f ms, worst of nine %.0f ms", times[4], times[8])
}
