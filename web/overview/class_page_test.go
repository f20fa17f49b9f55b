package overview_test

import (
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// For a class: the danger before all else, no name of project, variant or part, no form that saves, and no bar before the
// guess. The sample takes 57.6 Wh / 0.452 Wh = 127 lifts, told with two digits.
func TestClassMode(t *testing.T) {
	s := webtest.NewSite(t)
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	at := page.ProjectURL(p.ID) + "?class=1"
	open := webtest.Ask(s.Handler(), "GET", at, nil).Body.String()
	told := webtest.Ask(s.Handler(), "GET", at+"&guess=40", nil).Body.String()
	for name, body := range map[string]string{"before": open, "after": told} {
		if danger := strings.Index(body, "DO NOT HANG."); danger < 0 || danger > strings.Index(body, "<h1") {
			t.Errorf("%s: the danger stands at %d", name, danger)
		}
		names := []string{p.Value.Name}
		for _, v := range vs {
			names = append(names, v.Value.Name)
			for _, st := range v.Value.Stores {
				names = append(names, st.Design().Name())
			}
		}
		for _, hidden := range names {
			if strings.Contains(body, hidden) {
				t.Errorf("%s: it names %q", name, hidden)
			}
		}
		if strings.Contains(body, `method="post"`) || strings.Contains(body, "Your data") {
			t.Errorf("%s: something can be saved, or the data file is shown", name)
		}
	}
	if strings.Contains(open, `class="draw bar"`) || strings.Contains(open, "57.6") {
		t.Error("the answer stands there before the guess")
	}
	if n := strings.Count(told, `class="draw bar"`); n != 4 || !strings.Contains(webtest.TextOf(told), "You guessed 40 lifts. A night needs 130 lifts.") {
		t.Errorf("%d bars, %s", n, webtest.TextOf(told))
	}
	for _, bad := range []string{"many", "0", "-3", "1e9"} {
		body := webtest.Ask(s.Handler(), "GET", at+"&guess="+bad, nil).Body.String()
		if !strings.Contains(body, `class="problem"`) || strings.Contains(body, `class="draw bar"`) {
			t.Errorf("%q is taken as a guess", bad)
		}
	}
	empty := catalog.Sample()
	empty.Variants = empty.Variants[:1]
	empty.Variants[0].Stores, empty.Variants[0].Parts = nil, nil
	q, _ := webtest.Create(t, s, "nothing that stores", empty)
	if w := webtest.Ask(s.Handler(), "GET", page.ProjectURL(q.ID)+"?class=1&guess=40", nil); w.Code != 200 || !strings.Contains(w.Body.String(), "not known yet") {
		t.Errorf("without a store: %d", w.Code)
	}
}
