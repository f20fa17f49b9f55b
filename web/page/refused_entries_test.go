package page_test

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// A refused entry on the page of the hoist and one on the night load are told on the overview and on the sheet of that
// variant, and not on another's; once they are right nothing is told.
func TestRefusedEntriesAreTold(t *testing.T) {
	s := webtest.NewSite(t)
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	base, at := page.ProjectURL(p.ID), page.VariantURL(p.ID, vs[2].ID)
	send := func(page, field, text string, want int) {
		t.Helper()
		typed, _ := webtest.FormAt(t, webtest.Ask(s.Handler(), "GET", page, nil).Body.String(), page)
		typed.Set(field, text)
		if w := webtest.Ask(s.Handler(), "POST", page, typed); w.Code != want {
			t.Fatalf("%s %s=%q: %d", page, field, text, w.Code)
		}
	}
	says := func(page, words string) bool {
		return strings.Contains(webtest.Ask(s.Handler(), "GET", page, url.Values{}).Body.String(), words)
	}
	send(at+"/hoist/0", "stores[0].hoist.travel_m", "high", http.StatusUnprocessableEntity)
	send(base+"/load?all=1", "load.appliances[0].power_w", "much", http.StatusUnprocessableEntity)
	for page, words := range map[string]string{base: "A refused entry waits on “Lifted mass” of Block and a small battery", at + "/sheet": "Refused entries wait, and do not count, on:"} {
		if !says(page, words) {
			t.Errorf("%s does not say %q", page, words)
		}
	}
	if !says(base, "A refused entry waits on “Night load”") || says(page.VariantURL(p.ID, vs[1].ID)+"/sheet", ">Lifted mass</a>") {
		t.Error("the night load is not told, or the hoist on another sheet")
	}
	send(at+"/hoist/0", "stores[0].hoist.travel_m", "4", http.StatusSeeOther)
	send(base+"/load?all=1", "load.appliances[0].power_w", "6", http.StatusSeeOther)
	if says(base, "refused entry") || says(at+"/sheet", "Refused entries") {
		t.Error("told though all is right")
	}
}
