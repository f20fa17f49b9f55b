package crawl_test

import (
	"cmp"
	"fmt"
	"math"
	"net/http"
	"slices"
	"strconv"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// otherDigits are the pairs of figures with one name and one unit that are the same number with other digits: the coarser one
// is what the finer one rounds to, to the nearest, up or down.
func otherDigits(all []webtest.Figure) (pairs [][2]webtest.Figure) {
	by := map[string][]webtest.Figure{}
	for _, f := range all {
		key := f.Name + "\n" + f.Unit
		if !slices.ContainsFunc(by[key], func(o webtest.Figure) bool { return o.Value == f.Value }) {
			by[key] = append(by[key], f)
		}
	}
	for _, same := range by {
		for i, a := range same {
			for _, b := range same[i+1:] {
				if digitsOf(a.Value) > digitsOf(b.Value) {
					a, b = b, a
				}
				if digitsOf(a.Value) < digitsOf(b.Value) && roundsTo(b.Value, a.Value) {
					pairs = append(pairs, [2]webtest.Figure{a, b})
				}
			}
		}
	}
	slices.SortFunc(pairs, func(a, b [2]webtest.Figure) int { return cmp.Compare(a[0].Name, b[0].Name) })
	return pairs
}

// digitsOf counts the digits of a figure that are not zeros in front or, without a point, at the end.
func digitsOf(v string) int {
	v = strings.TrimLeft(strings.TrimPrefix(v, "-"), "0.")
	if !strings.Contains(v, ".") {
		v = strings.TrimRight(v, "0")
	}
	return len(strings.ReplaceAll(v, ".", ""))
}

// roundsTo reports whether fine is coarse when it is told with the digits of coarse.
func roundsTo(fine, coarse string) bool {
	a, _ := strconv.ParseFloat(fine, 64)
	b, _ := strconv.ParseFloat(coarse, 64)
	if a == b {
		return false // a round number needs no more digits: 0.3 is 0.30
	}
	n := digitsOf(coarse)
	step := math.Pow(10, math.Floor(math.Log10(math.Abs(a)))+1-float64(n))
	return n >= 2 && math.Abs(a-b) < step*(1-1e-9)
}

// What has one name has one number of digits, on whatever page it stands: the pages of both worked examples in metric units.
func TestSameFigureSameDigits(t *testing.T) {
	s := webtest.NewSite(t)
	h := s.Handler()
	for name, doc := range map[string]model.Document{"example": catalog.Sample(), "cabin": catalog.Cabin()} {
		p, vs := webtest.Create(t, s, name, doc)
		base := page.ProjectURL(p.ID)
		pages := []string{base, base + "/load", base + "/compare", base + "/place"}
		for i, v := range vs {
			at := page.VariantURL(p.ID, v.ID)
			pages = append(pages, base+fmt.Sprintf("?v=%d", v.ID), at, at+"/sheet", at+"/parts")
			for j, st := range doc.Variants[i].Stores {
				pages = append(pages, page.StoreURL(p.ID, v.ID, j, st.Kind().Key))
			}
		}
		var all []webtest.Figure
		for _, at := range pages {
			w := webtest.Ask(h, http.MethodGet, at, nil)
			if w.Code != http.StatusOK {
				t.Fatalf("%s: %d", at, w.Code)
			}
			on, err := webtest.FiguresOn(w.Body.String(), strings.TrimPrefix(at, base))
			if err != nil {
				t.Fatal(err)
			}
			all = append(all, on...)
		}
		if len(all) < 100 {
			t.Errorf("%s: only %d figures were read", name, len(all))
		}
		for _, pair := range otherDigits(all) {
			t.Errorf("%s: “%s” is %s %s on %s and %s on %s", name, pair[0].Name, pair[0].Value, pair[0].Unit, pair[0].Page, pair[1].Value, pair[1].Page)
		}
	}
}

// The test above finds what it looks for, and nothing else.
func TestSameFigureFinds(t *testing.T) {
	all, err := webtest.FiguresOn(`<title>A night needs 57.6&nbsp;Wh</title><dl><dt>A night needs</dt><dd>58&nbsp;Wh</dd><dt>Its use</dt><dd>2.22&nbsp;×</dd></dl>
<table><tr><th>Its use</th><td>2.3&nbsp;×</td></tr><tr><th>Height</th><td>3&nbsp;m</td></tr><tr><th>Height</th><td>3.1&nbsp;m</td></tr><tr><th>Height</th><td>3.25&nbsp;m</td></tr></table><h3>Its use</h3><p>1.9&nbsp;×</p>`, "here")
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, pair := range otherDigits(all) {
		got = append(got, pair[0].Value+" "+pair[1].Value)
	}
	if fmt.Sprint(got) != "[58 57.6 2.3 2.22]" {
		t.Errorf("found %q of %v", got, all)
	}
}
