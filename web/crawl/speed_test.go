package crawl_test

import (
	"context"
	"database/sql"
	"fmt"
	"io"
	"math/rand/v2"
	"net/http"
	"net/http/httptest"
	"net/url"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"duskweight/web/form"
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

// saver is a connection with a project of its own, whose hoist it changes.
type saver struct {
	client   *http.Client
	base, at string
	form     url.Values
	n        int64 // the revision that it saves on
}

func savers(b *testing.B, n int) []*saver {
	s, base := webtest.Serve(b)
	all := make([]*saver, n)
	for i := range all {
		webtest.Ask(s.Handler(), "POST", "/sample", url.Values{})
		ps, err := s.Store.Projects(b.Context())
		if err != nil {
			b.Fatal(err)
		}
		vs, err := s.Store.Variants(b.Context(), ps[0].ID)
		if err != nil {
			b.Fatal(err)
		}
		at := fmt.Sprintf("/projects/%d/variants/%d/hoist/0", ps[0].ID, vs[0].ID)
		sent, _ := webtest.FormAt(b, webtest.Ask(s.Handler(), "GET", at, nil).Body.String(), at)
		sent.Set(form.NamePage, "") // each save is a step of its own
		one := &http.Client{Transport: &http.Transport{}, CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}
		b.Cleanup(one.CloseIdleConnections)
		all[i] = &saver{client: one, base: base, at: at, form: sent, n: vs[0].Revision}
	}
	return all
}

// do sends a request and reads its answer to the end.
func (s *saver) do(ctx context.Context, method, at, body string) (int, error) {
	r, err := http.NewRequestWithContext(ctx, method, s.base+at, strings.NewReader(body))
	if err != nil {
		return 0, err
	}
	if body != "" {
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	}
	answer, err := s.client.Do(r)
	if err != nil {
		return 0, err
	}
	_, err = io.Copy(io.Discard, answer.Body)
	return answer.StatusCode, err
}

// save changes the travel of the hoist.
func (s *saver) save(ctx context.Context) error {
	s.form.Set("stores[0].hoist.travel_m", strconv.FormatFloat(2+float64(s.n%500)/1000, 'f', 4, 64)) // three digits behind a point are asked back
	s.form.Set(form.NameRevision, strconv.FormatInt(s.n, 10))
	code, err := s.do(ctx, "POST", s.at, s.form.Encode())
	if err == nil && code != http.StatusSeeOther {
		err = fmt.Errorf("%s: %d", s.at, code)
	}
	s.n++
	return err
}

// all runs f for each connection at once.
func everySaver(b *testing.B, all []*saver, f func(*saver) error) {
	var wait sync.WaitGroup
	for _, one := range all {
		wait.Go(func() {
			if err := f(one); err != nil {
				b.Error(err)
			}
		})
	}
	wait.Wait()
	if b.Failed() {
		b.FailNow()
	}
}

// BenchmarkSaves is a saved form over connections of this machine, as a share of the rate at which plain SQLite writes a row as
// long as a variant in the same run, on the same disk and as safely: one connection, WAL, synchronous=FULL.
func BenchmarkSaves(b *testing.B) {
	for _, connections := range []int{1, 16} {
		b.Run(fmt.Sprint(connections), func(b *testing.B) {
			all := savers(b, connections)
			plain, err := sql.Open("sqlite3", "file:"+filepath.Join(b.TempDir(), "plain.db")+"?_journal_mode=WAL&_synchronous=FULL&_txlock=immediate")
			if err != nil {
				b.Fatal(err)
			}
			defer plain.Close()
			plain.SetMaxOpenConns(1)
			if _, err := plain.Exec(`CREATE TABLE revision (seq INTEGER PRIMARY KEY, body TEXT NOT NULL)`); err != nil {
				b.Fatal(err)
			}
			put, err := plain.Prepare(`INSERT INTO revision (body) VALUES (?)`)
			if err != nil {
				b.Fatal(err)
			}
			body := strings.Repeat("x", 3000)
			const each = 100
			var took, tookPlain time.Duration
			for b.Loop() {
				begun := time.Now()
				for range each {
					if _, err := put.Exec(body); err != nil {
						b.Fatal(err)
					}
				}
				tookPlain += time.Since(begun)
				begun = time.Now()
				everySaver(b, all, func(s *saver) error {
					for range each {
						if err := s.save(b.Context()); err != nil {
							return err
						}
					}
					return nil
				})
				took += time.Since(begun)
			}
			rate, ratePlain := float64(b.N*each*connections)/took.Seconds(), float64(b.N*each)/tookPlain.Seconds()
			b.ReportMetric(rate, "saves/s")
			b.ReportMetric(ratePlain, "plain/s")
			b.ReportMetric(rate/ratePlain, "of-plain")
		})
	}
}

// BenchmarkMixed is sixteen connections that save and look at pages as they like: one request of four saves.
func BenchmarkMixed(b *testing.B) {
	all := savers(b, 16)
	var mu sync.Mutex
	took := map[string][]time.Duration{}
	pages := []string{"", "/load", "/history", "/variants/#", "/variants/#/hoist/0", "/variants/#/sheet", "/compare"}
	b.ResetTimer()
	for b.Loop() {
		everySaver(b, all, func(s *saver) error {
			r := rand.New(rand.NewPCG(uint64(s.n), 1))
			base, variant, _ := strings.Cut(strings.TrimSuffix(s.at, "/hoist/0"), "/variants/")
			for range 40 {
				begun, what := time.Now(), "save"
				if r.IntN(4) == 0 {
					if err := s.save(b.Context()); err != nil {
						return err
					}
				} else {
					what = pages[r.IntN(len(pages))]
					if code, err := s.do(b.Context(), "GET", base+strings.Replace(what, "#", variant, 1), ""); err != nil || code != http.StatusOK {
						return fmt.Errorf("%s: %d, %w", what, code, err)
					}
				}
				mu.Lock()
				took[what] = append(took[what], time.Since(begun))
				mu.Unlock()
			}
			return nil
		})
	}
	var looked []time.Duration
	for what, ds := range took {
		slices.Sort(ds)
		b.Logf("%-22s p50 %6.1f, p99 %6.1f ms", what, ms(ds[len(ds)/2]), ms(ds[len(ds)*99/100]))
		if what != "save" {
			looked = append(looked, ds...)
		}
	}
	slices.Sort(looked)
	b.ReportMetric(ms(looked[len(looked)/2]), "page-p50-ms")
	b.ReportMetric(ms(looked[len(looked)*99/100]), "page-p99-ms")
	b.ReportMetric(ms(took["save"][len(took["save"])*99/100]), "save-p99-ms")
}
