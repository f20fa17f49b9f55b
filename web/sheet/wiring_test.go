package sheet_test

import (
	"net/http"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// The pages for the yard carry the band of the plan sheet, every check, the order of switching and the cautions; the
// drawing says when nothing stays on the motor.
func TestYardPages(t *testing.T) {
	s := webtest.NewSite(t)
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	at := page.VariantURL(p.ID, vs[0].ID) + "/sheet"
	sheet := webtest.Ask(s.Handler(), "GET", at, nil).Body.String()
	wiring := webtest.Ask(s.Handler(), "GET", at+"/wiring", nil).Body.String()
	checks := webtest.Ask(s.Handler(), "GET", at+"/checks", nil).Body.String()
	r := model.Evaluate(catalog.Sample(), "").Variants[0]
	h := model.HoistOf(r.Stores[0])
	for _, c := range h.Checks {
		if !strings.Contains(strings.ToLower(webtest.Unescape(checks)), strings.ToLower(c.Part)) {
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
	for _, want := range append(append([]string{"Let nobody be under the mass", "licensed person", "no switch, no plug"}, h.Hazards.SwitchOrder...), h.Drive.Lowering.MayOpen...) {
		if !strings.Contains(webtest.Unescape(wiring), want) {
			t.Errorf("the wiring does not say %q", want)
		}
	}
	for _, d := range r.Circuit(catalog.Sample().Variants[0]) { // each thing that is checked stands in drawing and list
		if rating := d.Rating.String(); rating != "" && strings.Count(webtest.Unescape(wiring), rating) < 2 {
			t.Errorf("the wiring does not show %s %s", d.Kind, rating)
		}
	}
	if n := strings.Count(wiring, `class="mid word"`); n != len(r.Circuit(catalog.Sample().Variants[0])) {
		t.Errorf("%d devices are drawn", n)
	}
	bare := *h
	bare.Design.Lower.Shunt, bare.Design.Lower.Loads = "", []lift.DCLoad{{Kind: "resistor", Permanent: "no"}}
	if v := page.WiringOf(&bare); v.Shunt != "" || !strings.Contains(page.WiringAlt(v), "is missing") {
		t.Errorf("a resistor behind a switch counts as one that stays: %+v", v)
	}
	lamps := *h
	lamps.Design.Lower.Shunt, lamps.Design.Lower.Loads = "yes", []lift.DCLoad{{Kind: lift.LoadString, Permanent: "yes"}}
	if v := page.WiringOf(&lamps); v.Shunt != "" {
		t.Errorf("lamps in a row are drawn as what holds the speed for good, and the judge counts a resistor or clamp alone: %+v", v)
	}
	for feed, fused := range map[lift.Feed]bool{lift.FeedDrive: true, lift.FeedRelay: true, lift.FeedPanel: false, "": false} {
		lamps.Design.Raise.Feed, lamps.Design.Raise.Switch = feed, unit.Of(unit.Current(16))
		v := page.WiringOf(&lamps)
		if v.Fused != fused || !strings.Contains(page.WiringAlt(v), "breaks 16\u00a0A") {
			t.Errorf("%q: a fuse is drawn %v, and the switch %q", feed, v.Fused, v.Switch)
		}
		lamps.Design.Raise.Switch = unit.Known[unit.Current]{}
		if v := page.WiringOf(&lamps); !strings.Contains(page.WiringAlt(v), "rating not known") {
			t.Errorf("%q: %q", feed, v.Switch)
		}
	}
	battery := page.VariantURL(p.ID, vs[1].ID) + "/sheet"
	if w := webtest.Ask(s.Handler(), "GET", battery+"/checks", nil); w.Code != http.StatusNotFound {
		t.Errorf("the checks of a hoist that is not there: %d", w.Code)
	}
	if body := webtest.Ask(s.Handler(), "GET", battery+"/wiring", nil).Body.String(); !strings.Contains(body, ">battery fuse<") || strings.Contains(body, "changeover") {
		t.Error("the wiring of a battery alone is not that of a battery")
	}
}
