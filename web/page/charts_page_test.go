package page_test

import (
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"github.com/a-h/templ"

	"duskweight/web"
	"duskweight/web/browsertest"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// A chart in a real browser: drawn as SVG after the first paint under the strict policy, in light and dark, also while
// the pointer is over it; and a page without a chart does not fetch the library.
func TestBrowserCharts(t *testing.T) {
	b := browsertest.Start(t)
	s := webtest.NewSite(t)
	option, err := page.Option(page.LineOf(1, 5, 3), nil)
	if err != nil {
		t.Fatal(err)
	}
	mux := http.NewServeMux()
	mux.Handle("/static/", s.Handler())
	mux.Handle("/chart", web.WithHeaders(s.Page(func(w http.ResponseWriter, r *http.Request) error {
		return s.Show(w, r, http.StatusOK, page.Frame{Title: "Chart"}, page.Heading1("Chart", page.Chart(page.ChartView{
			ID: "day", Title: "A day", Say: "The sun gives up to 5 W.", Option: option,
			Head: []string{"Hour", "W"}, Rows: [][]string{{"0", "1"}, {"1", "5"}, {"2", "3"}},
		})))
	})))
	mux.Handle("/none", web.WithHeaders(s.Page(func(w http.ResponseWriter, r *http.Request) error {
		return s.Show(w, r, http.StatusOK, page.Frame{Title: "None"}, page.Heading1("None", templ.NopComponent))
	})))
	server := httptest.NewServer(mux)
	t.Cleanup(server.Close)
	for _, look := range []browsertest.Look{{}, {Dark: true}, browsertest.Phone} {
		tab := b.Open(t, look)
		tab.Go(server.URL + "/none")
		tab.Go(server.URL + "/chart")
		tab.Wait(`document.documentElement.dataset.charts === "drawn" && document.querySelector("#chart-day svg path")`)
		tab.String(`(() => { const r = document.querySelector("#chart-day svg").getBoundingClientRect();
			for (const kind of ["mousemove", "mouseover"]) document.querySelector("#chart-day svg").dispatchEvent(new MouseEvent(kind, {bubbles: true, clientX: r.left + r.width / 2, clientY: r.top + r.height / 2})); return ""; })()`)
		tab.Clean()
		tab.Shot("chart")
		libraries := 0
		for _, u := range tab.Requests() {
			if strings.Contains(u, "echarts") {
				libraries++
			}
		}
		if libraries != 1 {
			t.Errorf("the library was fetched %d times, want once, by the page with a chart", libraries)
		}
		if n := tab.Sideways(); n > 0 {
			t.Errorf("%d pixels too wide", n)
		}
	}
}
