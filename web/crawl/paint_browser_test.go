package crawl_test

import (
	"slices"
	"testing"

	"duskweight/web/browsertest"
	"duskweight/web/webtest"
)

// The largest paint and the shift of the layout of every page: printed, the median of three; a shift that the eye sees
// fails.
func TestBrowserPaint(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	webtest.Ask(s.Handler(), "POST", "/sample", map[string][]string{})
	tab := b.Open(t, browsertest.Look{Width: 1366, Height: 768})
	for _, page := range []string{"/", "/start", "/help", "/settings", "/projects/1", "/projects/1/place", "/projects/1/load", "/projects/1/compare", "/projects/1/sure", "/projects/1/variants/1", "/projects/1/variants/1/hoist/0",
		"/projects/1/variants/2/cells/0", "/projects/1/variants/1/takes", "/projects/1/variants/1/parts", "/projects/1/variants/1/trials", "/projects/1/variants/1/sheet"} {
		var paints, shifts []float64
		for range 3 {
			tab.Go(base + page)
			tab.Wait(`new Promise(ok => setTimeout(() => ok(true), 700))`)
			paints = append(paints, tab.Number(`new Promise(ok => { let at = 0; new PerformanceObserver(l => { for (const e of l.getEntries()) at = e.startTime; }).observe({type: "largest-contentful-paint", buffered: true}); setTimeout(() => ok(at), 50); })`))
			shifts = append(shifts, tab.Number(`new Promise(ok => { let sum = 0; new PerformanceObserver(l => { for (const e of l.getEntries()) if (!e.hadRecentInput) sum += e.value; }).observe({type: "layout-shift", buffered: true}); setTimeout(() => ok(sum), 50); })`))
		}
		slices.Sort(paints)
		slices.Sort(shifts)
		t.Logf("%-34s largest paint %4.0f ms, shift %.4f", page, paints[1], shifts[1])
		if shifts[1] > 0.01 {
			t.Errorf("%s: the layout shifts by %.3f", page, shifts[1])
		}
	}
}
