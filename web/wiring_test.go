package web

import (
	"net/http"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
)

// The pages for the yard carry the band of the plan sheet, every check, the order of switching and the cautions; the
// drawing says when nothing stays on the motor.
func TestYardPages(t *testing.T) {
	s := newSite(t)
	p, vs := create(t, s, "sample", catalog.Sample())
	at := variantURL(p.ID, vs[0].ID) + "/sheet"
	sheet := ask(s.Handler(), "GET", at, nil).Body.String()
	wiring := ask(s.Handler(), "GET", at+"/wiring", nil).Body.String()
	checks := ask(s.Handler(), "GET", at+"/checks", nil).Body.String()
	r := model.Evaluate(catalog.Sample(), "").Variants[0]
	h := r.Stores[0].Hoist
	for _, c := range h.Checks {
		if !strings.Contains(strings.ToLower(unescape(checks)), strings.ToLower(c.Part)) {
			t.Errorf("%q is not in the list of checks", c.Part)
		}
	}
	if n := strings.Count(checks, "☐"); n != len(h.Checks) {
		t.Errorf("%d boxes for %d checks", n, len(h.Checks))
	}
	for _, body := range []string{sheet, wiring, checks} {
		if !strings.Contains(body, "DO NOT HANG") {
			t.Error("a page for the yard does not say DO NOT HANG")
		}
	}
	for _, want := range append(append([]string{"Nobody under the mass", "licensed person", "no switch, no plug"}, h.Hazards.SwitchOrder...), h.Drive.Lowering.MayOpen...) {
		if !strings.Contains(unescape(wiring), want) {
			t.Errorf("the wiring does not say %q", want)
		}
	}
	bare := *h
	bare.Design.Lower.Shunt, bare.Design.Lower.Loads = "", []lift.DCLoad{{Kind: "resistor", Permanent: "no"}}
	if v := wiringOf(&bare); v.Shunt != "" || !strings.Contains(wiringAlt(v), "is missing") {
		t.Errorf("a resistor behind a switch counts as one that stays: %+v", v)
	}
	if w := ask(s.Handler(), "GET", variantURL(p.ID, vs[1].ID)+"/sheet/wiring", nil); w.Code != http.StatusNotFound {
		t.Errorf("the wiring of a hoist that is not there: %d", w.Code)
	}
}
