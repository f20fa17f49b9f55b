package page_test

import (
	"net/http"
	"strings"
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// Beside DO NOT HANG stands a reason that forbids it, never a question that is only open, and it is the first of the list
// below: on every plan of the test data that must not be built.
func TestFirstReasonForbids(t *testing.T) {
	for _, p := range webtest.UnsafePlans(t) {
		r := model.Evaluate(p.Doc, "2026-11-28").Variants[0]
		if r.Ready != reason.No {
			continue
		}
		b := page.VariantBand(r, unit.Metric, nil)
		forbids := false
		for _, one := range r.Because {
			forbids = forbids || one.Word == reason.No && one.Say.In(unit.Metric) == b.Why
		}
		if !forbids {
			t.Errorf("%s: %s %s", p.ID, b.Word, b.Why)
		}
		if list := page.ReasonsOf(r.Because, unit.Metric, func(string) form.LinkView { return form.LinkView{} }).List; list[0].State != reason.No {
			t.Errorf("%s: the list begins with %q", p.ID, list[0].Say)
		}
	}
}

// A form that shows what is saved says of no field that something else is saved.
func TestNothingElseIsSaved(t *testing.T) {
	s := webtest.NewSite(t)
	h := s.Handler()
	webtest.Ask(h, "POST", "/sample", map[string][]string{})
	for _, address := range []string{"/projects/1/load", "/projects/1/place", "/projects/1/place?part=means", "/projects/1/place?all=1", "/projects/1/variants/1", "/projects/1/variants/1/hoist/0"} {
		w := webtest.Ask(h, "GET", address, nil)
		if w.Code != http.StatusOK || strings.Contains(w.Body.String(), `class="stored"`) {
			t.Errorf("%s: %d, says of a field what is saved", address, w.Code)
		}
	}
}
