//go:build linux

package main

import (
	"encoding/json"
	"fmt"
	"io"
	"log/slog"
	"math/rand/v2"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/go-chi/chi/v5"

	"duskweight/internal/store"
	"duskweight/web"
)

var aParameter = regexp.MustCompile(`\{(\w+)\}`)

// routes lists every address that the program answers, with what is there in place of the parameters.
func routes(t *testing.T) (gets, posts []string) {
	t.Helper()
	kept, err := store.Open(t.Context(), filepath.Join(t.TempDir(), "routes.db"), time.Now())
	if err != nil {
		t.Fatal(err)
	}
	defer kept.Close()
	site, err := web.New(web.Config{Store: kept, Now: time.Now, Log: slog.New(slog.NewTextHandler(io.Discard, nil))})
	if err != nil {
		t.Fatal(err)
	}
	is := map[string][]string{"project": {"1"}, "variant": {"1", "2", "3"}, "i": {"0"}, "picture": {"power", "nights", "filling"}, "topic": {"", "breaks", "known", "sources"}, "copy": {"1"}}
	err = chi.Walk(site.Handler().(chi.Routes), func(method, route string, _ http.Handler, _ ...func(http.Handler) http.Handler) error {
		all := []string{strings.Replace(route, "*", "app.css", 1)}
		for _, p := range aParameter.FindAllStringSubmatch(route, -1) {
			if is[p[1]] == nil {
				return fmt.Errorf("what stands for %s in %s?", p[0], route)
			}
			var more []string
			for _, at := range all {
				for _, value := range is[p[1]] {
					more = append(more, strings.Replace(at, p[0], value, 1))
				}
			}
			all = more
		}
		if method == "GET" {
			gets = append(gets, all...)
		} else {
			posts = append(posts, all...)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return gets, posts
}

// long are the addresses that work for more than a moment; they are asked for seldom.
var long = regexp.MustCompile(`/(sure|takes|cheapest|sweep|fits|rocks|verdicts|compare|money|moves|many)\b`)

// grows makes projects, variants or copies; they would be asked for ever more.
var grows = regexp.MustCompile(`^/(sample|start|import|settings/cop.*)$|/(variants|stores|take|put|put-home|use|add|delete|restore|back|climate)$`)

// resident is the memory that a process takes (Linux, proc(5)), and how many threads and open files it has.
func resident(t *testing.T, pid int) (bytes, threads, files int) {
	t.Helper()
	text, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", pid))
	if err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(string(text)) {
		f := strings.Fields(line)
		switch f[0] {
		case "VmRSS:":
			bytes, _ = strconv.Atoi(f[1])
			bytes <<= 10
		case "Threads:":
			threads, _ = strconv.Atoi(f[1])
		}
	}
	open, err := os.ReadDir(fmt.Sprintf("/proc/%d/fd", pid))
	if err != nil {
		t.Fatal(err)
	}
	return bytes, threads, len(open)
}

// TestMixedRequests asks the whole program for everything that it has, saves in between, and sends what strangers may send:
// no answer is a fault of the program, hostile ones are refused, and, where there are enough requests to fill what it keeps
// (some fifty thousand do), its memory in the last quarter is that of the quarter before, within 5 %. A million requests in the
// long form.
func TestMixedRequests(t *testing.T) {
	const connections = 8
	gets, posts := routes(t)
	var hosts []string
	text, err := os.ReadFile("../../testdata/hosts/hostile.json")
	if err == nil {
		err = json.Unmarshal(text, &hosts)
	}
	if err != nil {
		t.Fatal(err)
	}
	plain := regexp.MustCompile(`^[A-Za-z0-9.-]+(:\d+)?$`) // net/http mends others before they are sent
	hosts = slices.DeleteFunc(hosts, func(host string) bool { return !plain.MatchString(host) })
	if len(hosts) < 10 {
		t.Fatalf("%d hosts", len(hosts))
	}
	a := startApart(t, filepath.Join(home(t), "data"))
	if got, err := a.post("/sample", url.Values{"example": {""}}); err != nil || got.code != http.StatusSeeOther {
		t.Fatal(got.code, err)
	}
	quick := slices.DeleteFunc(slices.Clone(gets), long.MatchString)
	slow := slices.DeleteFunc(slices.Clone(gets), func(at string) bool { return !long.MatchString(at) })
	posts = slices.DeleteFunc(posts, func(at string) bool { return grows.MatchString(at) || long.MatchString(at) })
	if len(quick) < 60 || len(slow) < 10 || len(posts) < 40 {
		t.Fatal(len(quick), len(slow), len(posts))
	}
	n := often(600, 1_000_000)
	var sent, refused, saved atomic.Int64
	one := func(r *rand.Rand, i int) error {
		any := func(of []string) string { return of[r.IntN(len(of))] }
		allowed := func(code int) bool { return code < 500 }
		var got reply
		var err error
		what := ""
		switch kind := r.IntN(100); {
		case i < len(quick)+len(posts): // each of them once
			if what = append(quick, posts...)[i]; i < len(quick) {
				got, err = a.get(what)
			} else {
				got, err = a.post(what, url.Values{"revision": {"1"}})
			}
		case kind < 60:
			what = any(quick)
			got, err = a.get(what)
		case kind == 60 && r.IntN(4) == 0:
			what = any(slow)
			got, err = a.get(what)
		case kind < 75: // a change
			what = "/settings"
			got, err = a.post(what, url.Values{"units": {any([]string{"metric", "imperial"})}, "currency": {any([]string{"EUR", "Rs", "kr"})}})
			allowed = func(code int) bool { return code == http.StatusSeeOther }
			saved.Add(1)
		case kind < 85: // a form that was never shown
			what = any(posts)
			got, err = a.post(what, url.Values{"revision": {strconv.Itoa(r.IntN(9))}, "page": {"p"}, "units": {"metric"}, "name": {strings.Repeat("n", r.IntN(400))},
				"stores[0].hoist.travel_m": {any([]string{"", "-1", "1e99", "NaN", "4,5", "\x00"})}, "panels[]": {"99999"}, "do": {"remove:panels[7]"}})
		case kind < 90: // a name that is not ours
			what = any(gets)
			got, err = a.send(any([]string{"GET", "POST", "PUT", "OPTIONS"}), what, "", nil, "Host", any(hosts))
			allowed = func(code int) bool { return code == http.StatusMisdirectedRequest || code == http.StatusBadRequest }
			refused.Add(1)
		case kind < 95: // another site
			what = any(posts)
			got, err = a.send("POST", what, "application/x-www-form-urlencoded", strings.NewReader("units=metric"), "Sec-Fetch-Site", "cross-site", "Origin", "https://example.org")
			allowed = func(code int) bool { return code == http.StatusForbidden }
			refused.Add(1)
		default: // what no browser sends
			what = any([]string{"/..%2f..%2fetc/passwd", "/projects/%00", "/projects/99999999999999999999", "/projects/1/variants/-1", "/projects/1/history?before=%ff", "/help/%e2%80%ae", "/static/../go.mod", "/projects/1/variants/1/hoist/7"})
			got, err = a.send(any([]string{"GET", "POST", "DELETE", "BREW"}), what, any([]string{"", "text/plain", "multipart/form-data", "application/json"}), strings.NewReader(strings.Repeat("x", r.IntN(3000))))
		}
		if err == nil && !allowed(got.code) {
			err = fmt.Errorf("%d %.200s", got.code, aTag.ReplaceAllString(got.body, " "))
		}
		if err != nil {
			return fmt.Errorf("%s: %w", what, err)
		}
		sent.Add(1)
		return nil
	}
	type sample struct{ bytes, threads, files int }
	var samples []sample
	const parts = 20
	for part := range parts {
		var wait sync.WaitGroup
		for c := range connections {
			r := rand.New(rand.NewPCG(uint64(part), uint64(c)))
			wait.Go(func() {
				for i := part*n/parts + c; i < (part+1)*n/parts && !t.Failed(); i += connections {
					if err := one(r, i); err != nil {
						t.Errorf("request %d: %v", i, err)
					}
				}
			})
		}
		wait.Wait()
		if t.Failed() {
			return
		}
		var s sample
		s.bytes, s.threads, s.files = resident(t, a.cmd.Process.Pid)
		samples = append(samples, s)
	}
	middle := func(of []sample, what func(sample) int) int {
		var all []int
		for _, s := range of {
			all = append(all, what(s))
		}
		slices.Sort(all)
		return all[len(all)/2]
	}
	bytes := func(s sample) int { return s.bytes }
	early, late := middle(samples[parts/2:3*parts/4], bytes), middle(samples[3*parts/4:], bytes)
	var each []int
	for _, s := range samples {
		each = append(each, s.bytes>>20)
	}
	last := samples[parts-1]
	t.Logf("%d requests, %d saved, %d hostile; memory %d MB in the third quarter, %d MB in the last (%+.1f %%), in all %v; %d threads and %d files at the end",
		sent.Load(), saved.Load(), refused.Load(), early>>20, late>>20, 100*(float64(late)/float64(early)-1), each, last.threads, last.files)
	if most := samples[parts/2].files + 4; last.files > most { // what a page of another moment may have open
		t.Errorf("%d files are open, %d after half", last.files, samples[parts/2].files)
	}
	if most := samples[parts/2].threads + 8; last.threads > most {
		t.Errorf("%d threads run, %d after half", last.threads, samples[parts/2].threads)
	}
	if n >= 100_000 && float64(late) > 1.05*float64(early) { // fewer say more of what it learns
		t.Errorf("the memory grew from %d to %d bytes", early, late)
	}
}
