package hoist_test

import (
	"net/http"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model/unit"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// A plate with the numbers of full load gives the three constants, with scripts or without; what cannot be is said, and what
// is typed comes back.
func TestPlateOnPage(t *testing.T) {
	s := webtest.NewSite(t)
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	page := page.VariantURL(p.ID, vs[0].ID) + "/hoist/0/motor"
	get := func(query string) string {
		w := webtest.Ask(s.Handler(), "GET", page+query, nil)
		if w.Code != http.StatusOK {
			t.Fatalf("%s: %d", query, w.Code)
		}
		return strings.ReplaceAll(w.Body.String(), unit.Space, " ")
	}
	for query, wants := range map[string][]string{ // the numbers are those of TestFromPlate
		"?volts=24&watts=250&turns=2650&amps=13,7":    {"0.0763 V·s/rad", "0.206 Ω", "1.9 A", `value="13,7"`},
		"?volts=24&watts=250+W&turns=2650+rpm&amps=0": {"all four", `value="250 W"`},
		"?volts=24&watts=400&turns=2650&amps=13.7":    {"do not belong together"},
		"?volts=24&watts=250":                         {"All four numbers are needed."},
		"?volts=%3Cb%3E&watts=250&turns=1&amps=1":     {"Volts: ", `value="&lt;b&gt;"`},
	} {
		body := get(query)
		for _, want := range wants {
			if !strings.Contains(strings.ToLower(body), strings.ToLower(want)) {
				t.Errorf("%s: no %q", query, want)
			}
		}
	}
	if body := get(""); strings.Contains(body, `role="alert"`) || !strings.Contains(body, `id="plate-amps"`) {
		t.Error("an empty form is blamed, or is not there")
	}
}
