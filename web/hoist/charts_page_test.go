package hoist_test

import (
	"encoding/csv"
	"net/http"
	"strconv"
	"strings"
	"testing"

	"duskweight/web/browsertest"
	"duskweight/web/hoist"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// The numbers of a picture as CSV: a head with units, plain numbers, no more for a picture that is not there.
func TestHoistCSV(t *testing.T) {
	s := webtest.NewSite(t)
	p, err := s.Store.CreateProject(t.Context(), hoist.StraightDoc(), "made", webtest.TestNow)
	if err != nil {
		t.Fatal(err)
	}
	vs, err := s.Store.Variants(t.Context(), p.ID)
	if err != nil {
		t.Fatal(err)
	}
	base := page.StoreURL(p.ID, vs[0].ID, 0, "hoist") + "/"
	w := webtest.Ask(s.Handler(), http.MethodGet, base+"panel.csv", nil)
	if w.Code != http.StatusOK || w.Header().Get("Content-Type") != "text/csv; charset=utf-8" || !strings.Contains(w.Header().Get("Content-Disposition"), "panel.csv") {
		t.Fatal(w.Code, w.Header())
	}
	rows, err := csv.NewReader(w.Body).ReadAll()
	if err != nil || len(rows) < 100 || strings.Join(rows[0], "|") != "line|voltage, V|value|unit" {
		t.Fatal(err, len(rows), rows[0])
	}
	for _, row := range rows[1:] {
		for _, cell := range row[1:3] {
			if _, err := strconv.ParseFloat(cell, 64); err != nil {
				t.Fatal(err)
			}
		}
	}
	for _, no := range []string{"nothing.csv", "../../../x.csv"} {
		if w := webtest.Ask(s.Handler(), http.MethodGet, base+no, nil); w.Code == http.StatusOK {
			t.Errorf("%s: %d", no, w.Code)
		}
	}
}

// The pictures in a real browser, under the strict policy: all drawn, nothing said in the console, nothing sticks out of a
// phone; a closed fold draws when it is opened.
func TestBrowserPictures(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	p, err := s.Store.CreateProject(t.Context(), hoist.StraightDoc(), "made", webtest.TestNow)
	if err != nil {
		t.Fatal(err)
	}
	vs, err := s.Store.Variants(t.Context(), p.ID)
	if err != nil {
		t.Fatal(err)
	}
	for _, look := range []browsertest.Look{{Width: 1366, Height: 900}, {Dark: true}, browsertest.Phone} {
		tab := b.Open(t, look)
		tab.Go(base + page.StoreURL(p.ID, vs[0].ID, 0, "hoist") + "?depth=bench&all=1")
		tab.Wait(`document.querySelectorAll("#pictures [data-chart]").length === 7`)
		if shut := tab.String(`String(!document.getElementById("pictures-fold").open)`); shut != strconv.FormatBool(look.Width == 320) {
			t.Errorf("%d px: closed %s", look.Width, shut)
		}
		tab.Wait(`(() => { const d = document.getElementById("pictures-fold"); if (!d.dataset.tried) { d.dataset.tried = "yes"; d.open = false; requestAnimationFrame(() => { d.open = true; }); } const c = document.querySelector("#chart-panel svg"); return d.open && c && c.clientWidth > 100; })()`)
		tab.Wait(`[...document.querySelectorAll("#pictures [data-chart]")].every(c => c.querySelector("svg path"))`)
		// A saved picture is whole without the page: no class, a size, its own ground and lines with a colour.
		tab.String(`(() => { window.took = ""; const make = URL.createObjectURL; URL.createObjectURL = b => { b.text().then(t => { window.took = t; }); return make(b); }; HTMLAnchorElement.prototype.click = () => {}; document.querySelector("#chart-motor").closest("figure").querySelector(".save-picture").click(); return ""; })()`)
		tab.Wait(`window.took !== ""`)
		if bad := tab.String(`(() => { const d = new DOMParser().parseFromString(window.took, "image/svg+xml"), s = d.documentElement; return [d.querySelector("parsererror") && "not XML", s.tagName !== "svg" && s.tagName, d.querySelector("[class], [style]") && "leans on the page", !(s.getAttribute("width") > 100) && "no size", [...d.querySelectorAll("path")].every(p => p.getAttribute("stroke") === "none") && "no line", d.querySelectorAll("text").length < 5 && "no words"].filter(Boolean).join(", "); })()`); bad != "" {
			t.Error("the saved picture: ", bad)
		}
		for _, f := range tab.Axe() {
			t.Error(f)
		}
		tab.Clean()
		if n := tab.Sideways(); n > 0 {
			t.Errorf("%d pixels too wide", n)
		}
		tab.Shot("pictures")
	}
}
