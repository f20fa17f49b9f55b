package crawl_test

import (
	"io"
	"net/http"
	"net/http/httptest"
	"net/url"
	"slices"
	"strings"
	"testing"
	"time"

	"duskweight/web/webtest"
)

// BenchmarkAnswer is an edit to its new answer, over a connection of this machine that stays open: half of them come
// within p50, 99 of a hundred within p99. The first of each is left out: it prepares the ground.
func BenchmarkAnswer(b *testing.B) {
	s, base := webtest.Serve(b)
	webtest.Ask(s.Handler(), "POST", "/sample", url.Values{})
	for name, c := range map[string]struct{ at, field string }{
		"place":   {"/projects/1/place?all=1", ""},
		"load":    {"/projects/1/load?all=1", "load.appliances[0].power_w"},
		"variant": {"/projects/1/variants/1", "panels[0].panel_w"},
		"hoist":   {"/projects/1/variants/1/hoist/0", "stores[0].hoist.travel_m"},
		"cells":   {"/projects/1/variants/2/cells/0?part=battery", "stores[0].cells.block_voltage_v"},
	} {
		b.Run(name, func(b *testing.B) {
			form, _ := webtest.FormAt(b, webtest.Ask(s.Handler(), "GET", c.at, nil).Body.String(), c.at)
			was, size := form.Get(c.field), 0
			var took []time.Duration
			for b.Loop() {
				if was != "" {
					form.Set(c.field, strings.TrimSuffix(was, ".0")+[]string{"", "1"}[len(took)%2])
				}
				r, _ := http.NewRequestWithContext(b.Context(), "POST", base+strings.Replace(c.at+"?", "?", "/try?", 1), strings.NewReader(form.Encode()))
				r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
				r.Header.Set("X-Part", "results")
				begun := time.Now()
				size = fetch(b, r)
				took = append(took, time.Since(begun))
			}
			slices.Sort(took)
			b.ReportMetric(ms(took[len(took)/2]), "p50-ms")
			b.ReportMetric(ms(took[len(took)*99/100]), "p99-ms")
			b.ReportMetric(float64(size)/1024, "KiB")
		})
	}
}

// BenchmarkPage is a page over such a connection, as a share of the rate at which a file of its size comes from memory
// in the same run: one page without questions to the data file, and pages with them.
func BenchmarkPage(b *testing.B) {
	s, base := webtest.Serve(b)
	webtest.Ask(s.Handler(), "POST", "/sample", url.Values{})
	for name, at := range map[string]string{
		"guide": "/help/breaks", "projects": "/", "history": "/projects/1/history", "settings": "/settings",
		"overview": "/projects/1", "load": "/projects/1/load", "hoist": "/projects/1/variants/1/hoist/0", "sheet": "/projects/1/variants/1/sheet",
	} {
		b.Run(name, func(b *testing.B) {
			body := webtest.Ask(s.Handler(), "GET", at, nil).Body.Bytes()
			file := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) { _, _ = w.Write(body) }))
			defer file.Close()
			var page, static time.Duration
			for b.Loop() {
				r, _ := http.NewRequestWithContext(b.Context(), "GET", base+at, nil)
				begun := time.Now()
				fetch(b, r)
				page += time.Since(begun)
				r, _ = http.NewRequestWithContext(b.Context(), "GET", file.URL, nil)
				begun = time.Now()
				fetch(b, r)
				static += time.Since(begun)
			}
			b.ReportMetric(static.Seconds()/page.Seconds(), "of-file-rate")
			b.ReportMetric(float64(page.Microseconds())/float64(b.N)/float64(len(body))*12*1024, "µs/12KB")
			b.ReportMetric(float64(len(body))/1024, "KiB")
		})
	}
}

func fetch(b *testing.B, r *http.Request) int {
	answer, err := http.DefaultClient.Do(r)
	if err != nil {
		b.Fatal(err)
	}
	n, err := io.Copy(io.Discard, answer.Body)
	if answer.Body.Close() != nil || err != nil || answer.StatusCode != http.StatusOK {
		b.Fatalf("%s: %d, %v", r.URL, answer.StatusCode, err)
	}
	return int(n)
}

func ms(d time.Duration) float64 { return float64(d.Microseconds()) / 1000 }
