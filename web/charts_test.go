package web

import (
	"context"
	"encoding/json"
	"io"
	"math"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"github.com/a-h/templ"
	"github.com/go-echarts/go-echarts/v2/charts"
	"github.com/go-echarts/go-echarts/v2/opts"

	"duskweight/web/browsertest"
)

// lineOf is a small chart with a title that tries to break out of its data block.
func lineOf(values ...float64) *charts.Line {
	line := charts.NewLine()
	line.SetGlobalOptions(charts.WithTooltipOpts(opts.Tooltip{Show: opts.Bool(true), Trigger: "axis"}), charts.WithTitleOpts(opts.Title{Title: "</script><script>alert(1)</script>"}),
		charts.WithXAxisOpts(opts.XAxis{Name: "hour"}), charts.WithYAxisOpts(opts.YAxis{Name: "power, W"}))
	var points []opts.LineData
	var hours []string
	for i, v := range values {
		points, hours = append(points, opts.LineData{Value: v}), append(hours, itoa(i))
	}
	line.SetXAxis(hours).AddSeries("sun", points)
	return line
}

func TestOption(t *testing.T) {
	got, err := Option(lineOf(1, 2, 3), func(m map[string]any) { m["patched"] = true })
	if err != nil {
		t.Fatal(err)
	}
	var m map[string]any
	if err := json.Unmarshal(got, &m); err != nil || m["useUTC"] != true || m["animation"] != false || m["patched"] != true {
		t.Errorf("%s %v", got, err)
	}
	if tip, _ := m["tooltip"].(map[string]any); tip["renderMode"] != "richText" {
		t.Errorf("the tooltip would write style attributes: %v", m["tooltip"])
	}
	for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		if got, err := Option(lineOf(1, bad), nil); err == nil {
			t.Errorf("%v is taken: %s", bad, got)
		}
	}
}

// A chart in a real browser: drawn as SVG after the first paint under the strict policy, in light and dark, also while
// the pointer is over it; and a page without a chart does not fetch the library.
func TestBrowserCharts(t *testing.T) {
	b := browsertest.Start(t)
	s := newSite(t)
	option, err := Option(lineOf(1, 5, 3), nil)
	if err != nil {
		t.Fatal(err)
	}
	mux := http.NewServeMux()
	mux.Handle("/static/", s.Handler())
	mux.Handle("/chart", withHeaders(s.page(func(w http.ResponseWriter, r *http.Request) error {
		return s.show(w, r, http.StatusOK, frame{Title: "Chart"}, heading1("Chart", chart(chartView{
			ID: "day", Title: "A day", Say: "The sun gives up to 5 W.", Option: option,
			Head: []string{"Hour", "W"}, Rows: [][]string{{"0", "1"}, {"1", "5"}, {"2", "3"}},
		})))
	})))
	mux.Handle("/none", withHeaders(s.page(func(w http.ResponseWriter, r *http.Request) error {
		return s.show(w, r, http.StatusOK, frame{Title: "None"}, heading1("None", templ.NopComponent))
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

// heading1 is a page of one heading.
func heading1(title string, body templ.Component) templ.Component {
	return templ.ComponentFunc(func(ctx context.Context, w io.Writer) error {
		if _, err := io.WriteString(w, "<h1>"+title+"</h1>"); err != nil {
			return err
		}
		return body.Render(ctx, w)
	})
}
