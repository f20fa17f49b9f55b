package hoist_test

import (
	"net/http"
	"net/url"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/parts"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/hoist"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

var fieldName = regexp.MustCompile(`name="(stores\[0\]\.hoist\.[^"]+)"`)

// cardFields are the inputs on the card of a page.
func cardFields(body string) []string {
	_, card, _ := strings.Cut(body, `<section class="card"`)
	card, _, _ = strings.Cut(card, `class="bench-below"`)
	var out []string
	for _, m := range fieldName.FindAllStringSubmatch(card, -1) {
		if !strings.HasSuffix(m[1], "[]") {
			out = append(out, m[1])
		}
	}
	return out
}

// The cards together edit every input of the form once and no input twice: of a hoist that is empty, of the worked example,
// and of one with four pulleys, three holds and every kind of gear stage.
func TestCardsEditEveryInputOnce(t *testing.T) {
	s := webtest.NewSite(t)
	many := catalog.Sample()
	h := many.Variants[0].Stores[0].Hoist
	h.Reeving.LeadSheaves, h.Reeving.RopeParts = unit.Of[unit.Count](3), unit.Of[unit.Count](2)
	h.Reeving.DeadEnd = lift.DeadEndBeam
	h.Reeving.Sheaves = make([]lift.Sheave, 4)
	h.Holds.Holds = append(h.Holds.Holds, lift.Hold{Kind: lift.HoldRatedProp})
	h.Train.Stages = []lift.Stage{{Kind: lift.StageWorm}, {Kind: lift.StageBox}, {Kind: lift.StageSpur}, {Kind: lift.StageBelt}}
	blank := catalog.Sample()
	blank.Variants[0].Stores[0].Hoist = &lift.Hoist{}
	for name, doc := range map[string]model.Document{"example": catalog.Sample(), "many": many, "blank": blank} {
		p, vs := webtest.Create(t, s, name, doc)
		design := *vs[0].Value.Stores[0].Hoist
		at := page.StoreURL(p.ID, vs[0].ID, 0, "hoist")
		seen := map[string]int{}
		for _, part := range parts.All(design) {
			w := webtest.Ask(s.Handler(), http.MethodGet, at+"?more=1&part="+url.QueryEscape(part.ID), nil)
			if w.Code != http.StatusOK {
				t.Fatal(part.ID, w.Code)
			}
			for _, f := range cardFields(w.Body.String()) {
				seen[strings.TrimPrefix(f, "stores[0].hoist.")]++
			}
		}
		want, _ := form.Form[lift.Hoist]{Parts: hoist.HoistForm()}.Paths(&design)
		for _, f := range want {
			if seen[f] != 1 {
				t.Errorf("%s: %s stands on %d cards", name, f, seen[f])
			}
		}
	}
}

var settledOf = regexp.MustCompile(`<b>(\d+) of (\d+) parts settled`)

// A plan that is not ready never shows all parts settled, and its first view names the danger first: every unsafe plan.
func TestUnsafeNeverAllSettled(t *testing.T) {
	s := webtest.NewSite(t)
	seen := 0
	for _, plan := range webtest.UnsafePlans(t) {
		if len(plan.Doc.Variants) == 0 {
			continue
		}
		for _, v := range plan.Doc.Variants {
			i := slices.IndexFunc(v.Stores, func(st model.Store) bool { return st.Hoist != nil })
			if i < 0 {
				continue
			}
			p, vs := webtest.Create(t, s, plan.ID, plan.Doc)
			body := webtest.Ask(s.Handler(), http.MethodGet, page.StoreURL(p.ID, vs[0].ID, i, "hoist"), nil).Body.String()
			m := settledOf.FindStringSubmatch(body)
			if m == nil {
				t.Fatalf("%s: no progress on the page", plan.ID)
			}
			settled, _ := strconv.Atoi(m[1])
			all, _ := strconv.Atoi(m[2])
			ready := model.Evaluate(plan.Doc, "").Variants[0].Stores[i].Ready
			if (ready == "no" || ready == "not_known") && settled >= all {
				t.Errorf("%s is %s and shows %s", plan.ID, ready, m[0])
			}
			seen++
			break
		}
	}
	if seen < 50 {
		t.Fatalf("only %d plans were looked at", seen)
	}
}
