package web

import (
	"net/http"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/search"
)

// Each headline has a place for its range, which is a link without scripts; the range that follows says what is reached
// in about 9 years of 10, as the page How sure says it.
func TestHeadlinesHaveRanges(t *testing.T) {
	s := newSite(t)
	doc := catalog.Sample()
	p, vs := create(t, s, "sample", doc)
	base := projectURL(p.ID)
	for _, page := range []string{base, base + "/compare"} {
		body := ask(s.Handler(), "GET", page, nil).Body.String()
		if !strings.Contains(body, `id="range"`) || !strings.Contains(body, `href="`+base+"/sure?v=") {
			t.Errorf("%s has no place for its range", page)
		}
	}
	sure, err := search.Years(t.Context(), p.Value, []model.Variant{vs[1].Value}, usualYears, 1, nil)
	if err != nil {
		t.Fatal(err)
	}
	want := sentenceCase(nineSay(sure.Variants[0], sure.Nights))
	if !strings.HasPrefix(want, "In about 9 years of 10 at least ") {
		t.Fatalf("the sample's battery: %s", want)
	}
	one := ask(s.Handler(), "GET", base+"/sure/said?v="+itoa(int(vs[1].ID)), nil, "X-Part", "results")
	for _, w := range []string{readable(one.Body.String())} {
		if !strings.Contains(w, want) || !strings.Contains(w, "A bad year has") || !strings.Contains(w, "a good year") {
			t.Errorf("%q does not say %q", w, want)
		}
	}
	all := readable(ask(s.Handler(), "GET", base+"/sure/said", nil, "X-Part", "results").Body.String())
	for _, v := range vs {
		if !strings.Contains(all, v.Value.Name+":") {
			t.Errorf("%s is not among the ranges", v.Value.Name)
		}
	}
	if w := ask(s.Handler(), "GET", base+"/sure/said", nil); w.Code != http.StatusSeeOther {
		t.Errorf("as a page: %d", w.Code)
	}
}

// Where nothing is asked of the night, the range promises nothing.
func TestRangeOfNothing(t *testing.T) {
	s := newSite(t)
	doc := catalog.Sample()
	doc.Project.Load.Appliances = nil
	p, _ := create(t, s, "no lamps", doc)
	if body := ask(s.Handler(), "GET", projectURL(p.ID)+"/sure/said", nil, "X-Part", "results").Body.String(); strings.Contains(body, "9 years of 10") {
		t.Errorf("nothing is asked of the night: %s", readable(body))
	}
}

// Years that are all alike are told once.
func TestRangeOfOneNumber(t *testing.T) {
	c := search.Certain{Light: search.Spread{Worst: 54, Bad: 54, Usual: 54, Good: 54, Best: 54}, Nine: 54}
	if l := rangeLineOf(c, 365); l.Nine != "In every year that was tried 54 of 365 nights have light." || l.Range != "" {
		t.Errorf("%+v", l)
	}
	c.Light.Best = 57
	if l := rangeLineOf(c, 365); l.Range != "A bad, a usual and a good year have 54." {
		t.Errorf("%+v", l)
	}
}
