package crawl_test

import (
	"html"
	"net/http"
	"regexp"
	"strings"
	"testing"

	"github.com/go-chi/chi/v5"

	"duskweight/internal/catalog"
	"duskweight/web/webtest"
)

// aloneRoutes are the addresses that no link of a page leads to, each with its reason.
var aloneRoutes = map[string]string{
	"/healthz":  "asked by whoever watches over the program, a container say",
	"/verdicts": "the verdicts of the list of projects, asked for by a script",
	"/projects/{project}/variants/{variant}/cheapest/many":          "the second answer of a page, asked for by a script",
	"/projects/{project}/variants/{variant}/cheapest.csv":           "the numbers of a search, behind the button that begins it",
	"/projects/{project}/shelf/fits/many":                           "the second answer of a page, asked for by a script",
	"/shelf":                                                        "leads on to the shelf of the project that was open last",
	"/projects/{project}/variants/{variant}/hoist":                  "without its number: the first one",
	"/projects/{project}/variants/{variant}/motion":                 "without its number: the first one",
	"/projects/{project}/variants/{variant}/cells":                  "without its number: the first one",
	"/projects/{project}/variants/{variant}/water":                  "without its number: the first one",
	"/projects/{project}/variants/{variant}/trials":                 "without its number: the first one",
	"/projects/{project}/sure/many":                                 "the second answer of a page, asked for by a script",
	"/projects/{project}/variants/said":                             "what each variant comes to, asked for by the script of the menu",
	"/projects/{project}/sure/said":                                 "the second answer of a page, asked for by a script",
	"/projects/{project}/place/file/reading":                        "shown while a weather file is read",
	"/settings/copies/{copy}":                                       "a copy of the data file, once there is one",
	"/projects/{project}/variants/{variant}/trials/{i}/records.csv": "the records, once there is one",
}

var anyLink = regexp.MustCompile(`(?:href|action|formaction)="(/[^"#]*)`)

// Every address that shows something is reached from the first page by links and forms that only show: no page of the program
// can be found by its address alone.
func TestEveryRouteIsLinked(t *testing.T) {
	t.Parallel()
	s := webtest.NewSite(t)
	webtest.Create(t, s, "sample", catalog.Sample())
	webtest.Create(t, s, "water", webtest.Pond(catalog.Sample()))
	h := s.Handler()
	seen, done, count := map[string]bool{}, map[string]bool{}, map[string]int{}
	queue := []string{"/"}
	for len(queue) > 0 {
		at := queue[0]
		queue = queue[1:]
		path, _, _ := strings.Cut(at, "?")
		c := chi.NewRouteContext()
		if done[at] || !h.(chi.Routes).Match(c, "GET", path) {
			continue
		}
		done[at] = true
		route := strings.TrimSuffix(c.RoutePattern(), "/")
		most := mostOfOne
		if strings.HasSuffix(route, "/hoist/{i}") {
			most = 60 // one for each part, before the page with all inputs
		}
		if count[route]++; count[route] > most {
			continue
		}
		got := webtest.Ask(h, "GET", at, nil)
		if got.Code >= http.StatusBadRequest {
			continue
		}
		seen[route] = true
		if to := got.Header().Get("Location"); to != "" {
			queue = append(queue, to)
		}
		if strings.HasPrefix(got.Header().Get("Content-Type"), "text/html") {
			for _, m := range anyLink.FindAllStringSubmatch(got.Body.String(), -1) {
				queue = append(queue, html.UnescapeString(m[1]))
			}
		}
	}
	err := chi.Walk(h.(chi.Routes), func(method, route string, _ http.Handler, _ ...func(http.Handler) http.Handler) error {
		if route = strings.TrimSuffix(route, "/"); method != "GET" || route == "" {
			return nil
		}
		if !seen[route] && aloneRoutes[route] == "" {
			t.Errorf("no link leads to %s", route)
		}
		if seen[route] && aloneRoutes[route] != "" {
			t.Errorf("a link leads to %s, which is said to stand alone", route)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}
