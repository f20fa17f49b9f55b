package variant_test

import (
	"bytes"
	"compress/gzip"
	"encoding/csv"
	"html"
	"net/http"
	"path"
	"regexp"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// Every picture of the sample's pages has its numbers as a CSV file whose rows are as long as its head, at the address that
// stands beside it.
func TestPicturesAsNumbers(t *testing.T) {
	s := webtest.NewSite(t)
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	pages := []string{page.ProjectURL(p.ID) + "/place", page.ProjectURL(p.ID) + "/load", page.ProjectURL(p.ID) + "/sure?v=2&v=3", page.ProjectURL(p.ID) + "/sure?v=2&parts=yes", page.VariantURL(p.ID, vs[1].ID) + "/sweep"}
	for _, v := range vs {
		pages = append(pages, page.VariantURL(p.ID, v.ID))
	}
	pages = append(pages, page.VariantURL(p.ID, vs[0].ID)+"/hoist/0?depth=bench&all=1", page.VariantURL(p.ID, vs[0].ID)+"/hoist/0/pictures", page.ProjectURL(p.ID)+"/compare?v=1&v=2&v=3")
	link := regexp.MustCompile(`href="([^"]*\.csv[^"]*)"`)
	seen := map[string]bool{}
	for _, page := range pages {
		body := webtest.Ask(s.Handler(), "GET", page, nil).Body.String()
		figures := strings.Count(body, "<figure")
		links := link.FindAllStringSubmatch(body, -1)
		if len(links) == 0 || !strings.Contains(page, "/sure") && !strings.Contains(page, "/hoist/0?") && len(links) < figures {
			t.Errorf("%s: %d pictures and %d addresses of numbers", page, figures, len(links))
		}
		for _, m := range links {
			at := html.UnescapeString(m[1])
			w := webtest.Ask(s.Handler(), "GET", at, nil)
			rows, err := csv.NewReader(w.Body).ReadAll() // refuses rows of other lengths
			if w.Code != http.StatusOK || err != nil || len(rows) < 2 || !strings.HasPrefix(w.Header().Get("Content-Type"), "text/csv") {
				t.Errorf("%s: %d, %d rows, %v", at, w.Code, len(rows), err)
			}
			seen[path.Base(strings.Split(at, "?")[0])] = true
		}
	}
	for _, name := range []string{"day.csv", "flow.csv", "nights.csv", "week.csv", "state1.csv", "mass.csv", "sun.csv", "burns-171.csv", "years.csv", "sweep.csv", "sweep-lines.csv", "costs.csv", "checks.csv"} {
		if !seen[name] {
			t.Errorf("no page leads to %s", name)
		}
	}
	if w := webtest.Ask(s.Handler(), "GET", page.VariantURL(p.ID, vs[0].ID)+"/nothing.csv", nil); w.Code != http.StatusNotFound {
		t.Errorf("a picture that there is none of: %d", w.Code)
	}
}

// The page of a variant comes light: 14 KiB as the browser loads it, the chart library apart.
func TestVariantPageIsLight(t *testing.T) {
	s := webtest.NewSite(t)
	h := s.Handler()
	p, err := s.Store.CreateProject(t.Context(), catalog.Sample(), "made", s.Now())
	if err != nil {
		t.Fatal(err)
	}
	vs, err := s.Store.Variants(t.Context(), p.ID)
	if err != nil {
		t.Fatal(err)
	}
	for _, v := range vs {
		body := webtest.Ask(h, "GET", page.VariantURL(p.ID, v.ID)+"?month=6", nil).Body.String()
		if !strings.Contains(body, `<b aria-current="true">Jun</b>`) {
			t.Error("the month of the address is not the one shown")
		}
		var small bytes.Buffer
		z := gzip.NewWriter(&small)
		z.Write([]byte(body)) // a buffer takes everything
		z.Close()
		if small.Len() > 14<<10 {
			t.Errorf("%s: %d bytes", v.Value.Name, small.Len())
		}
	}
}
