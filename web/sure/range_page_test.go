package sure_test

import (
	"net/http"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/search"
	"duskweight/web/form"
	"duskweight/web/page"
	"duskweight/web/sure"
	"duskweight/web/webtest"
)

// Each headline has a place for its range, which is a link without scripts; the range that follows says what is reached
// in 9 of 10 made years, as the page How sure says it.
func TestHeadlinesHaveRanges(t *testing.T) {
	s := webtest.NewSite(t)
	doc := catalog.Sample()
	p, vs := webtest.Create(t, s, "sample", doc)
	base := page.ProjectURL(p.ID)
	for _, page := range []string{base, base + "/compare"} {
		body := webtest.Ask(s.Handler(), "GET", page, nil).Body.String()
		if !strings.Contains(body, `id="range"`) || !strings.Contains(body, `href="`+base+"/sure?v=") {
			t.Errorf("%s has no place for its range", page)
		}
	}
	years, err := search.Years(t.Context(), p.Value, []model.Variant{vs[1].Value}, p.Value.MadeYears(), 1, nil)
	if err != nil {
		t.Fatal(err)
	}
	want := form.SentenceCase(sure.NineSay(years.Variants[0], years.Nights))
	if !strings.HasPrefix(want, "In 9 of 10 made years at least ") {
		t.Fatalf("the sample's battery: %s", want)
	}
	one := webtest.Ask(s.Handler(), "GET", base+"/sure/said?v="+page.Itoa(int(vs[1].ID)), nil, "X-Part", "results")
	for _, w := range []string{webtest.Readable(one.Body.String())} {
		if !strings.Contains(w, want) || !strings.Contains(w, "Usual year ") || !strings.Contains(w, "one year in ten is under ") {
			t.Errorf("%q does not say %q", w, want)
		}
	}
	all := webtest.Readable(webtest.Ask(s.Handler(), "GET", base+"/sure/said", nil, "X-Part", "results").Body.String())
	for _, v := range vs {
		if !strings.Contains(all, v.Value.Name+":") {
			t.Errorf("%s is not among the ranges", v.Value.Name)
		}
	}
	if w := webtest.Ask(s.Handler(), "GET", base+"/sure/said", nil); w.Code != http.StatusSeeOther {
		t.Errorf("as a page: %d", w.Code)
	}
}

// Where nothing is asked of the night, the range promises nothing.
func TestRangeOfNothing(t *testing.T) {
	s := webtest.NewSite(t)
	doc := catalog.Sample()
	doc.Project.Load.Appliances = nil
	p, _ := webtest.Create(t, s, "no lamps", doc)
	if body := webtest.Ask(s.Handler(), "GET", page.ProjectURL(p.ID)+"/sure/said", nil, "X-Part", "results").Body.String(); strings.Contains(body, "9 of 10 made years") {
		t.Errorf("nothing is asked of the night: %s", webtest.Readable(body))
	}
}
