package sheet_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"duskweight/internal/catalog"
	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/cell"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/web/browsertest"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// sheetPlan is one plan with the state that its sheet must show.
type sheetPlan struct {
	name  string
	state string // "ready", "proven", "not ready", "hang nothing", "do not hang", "do not use"
	cells bool   // no hoist in it
	doc   model.Document
	n     int // which variant of the document
}

// sheetPlans are plans that fill the sheet in every way that the forms allow.
func sheetPlans(t *testing.T) []sheetPlan {
	t.Helper()
	sample := func(change func(*model.Document, *model.Variant, *lift.Hoist)) model.Document {
		doc := catalog.Sample()
		v := &doc.Variants[2]
		change(&doc, v, v.Stores[0].Hoist)
		return doc
	}
	named := func(name string) model.Document {
		return sample(func(doc *model.Document, v *model.Variant, h *lift.Hoist) {
			nameAll(doc, v, h, name)
		})
	}
	place, ok := catalog.Climate("Denver, Colorado")
	if !ok {
		t.Fatal("no such climate")
	}
	first := catalog.Start(catalog.Answers{Name: "Hill cabin", Place: place, HeavyName: "Stone", Mass: 40, Height: 3, Lamps: 2, LampPower: 5, Hours: 4 * unit.Hour, Seed: 1})
	cells := catalog.Sample()
	cells.Variants[1].Stores = append(cells.Variants[1].Stores, model.Store{Cells: &cell.Bank{Name: webtest.Novel, Role: "night", Kind: "lfp"}}, model.Store{Cells: &cell.Bank{Name: webtest.OneWord, Role: "night", Kind: "lfp"}})
	return []sheetPlan{
		{"sample, gives way", "do not hang", false, catalog.Sample(), 0},
		{"sample, battery", "ready", true, catalog.Sample(), 1},
		{"sample, both", "ready", false, catalog.Sample(), 2},
		{"three answers", "do not hang", false, first, 0},
		{"one word of 200 letters", "ready", false, named(webtest.OneWord), 2},
		{"words of 200 letters", "ready", false, named(webtest.Novel), 2},
		{"forty parts", "ready", false, sample(func(_ *model.Document, v *model.Variant, _ *lift.Hoist) {
			for range 40 {
				v.Parts = append(v.Parts, cost.Part{Name: webtest.Novel, Number: webtest.OneWord, Get: "borrow", Of: "store", Price: unit.Of[unit.Money](1234567)})
			}
		}), 2},
		{"much not known", "not ready", false, sample(func(_ *model.Document, v *model.Variant, h *lift.Hoist) {
			nameAll(nil, v, h, webtest.Novel)
			h.Structure.HangerRating = unit.Known[unit.Force]{}
			h.Rope.BreakingLoad = unit.Known[unit.Force]{}
			h.Container.Rating, h.Container.EyeRating = unit.Known[unit.Force]{}, unit.Known[unit.Force]{}
			h.Drum.ShaftYield, h.Drum.PinYield = unit.Known[unit.Stress]{}, unit.Known[unit.Stress]{}
			h.Reeving.Sheaves[0].Rating = unit.Known[unit.Force]{}
			for i := range h.Train.Stages {
				h.Train.Stages[i].Tooth.Strength = unit.Known[unit.Stress]{}
			}
		}), 2},
		{"one thing not known", "not ready", false, sample(func(_ *model.Document, _ *model.Variant, h *lift.Hoist) {
			h.Structure.HangerRating = unit.Known[unit.Force]{}
		}), 2},
		{"much gives way", "do not hang", false, sample(func(doc *model.Document, v *model.Variant, h *lift.Hoist) {
			nameAll(doc, v, h, webtest.OneWord)
			h.Mass[0].Mass = unit.Of[unit.Mass](9000)
			h.Holds.Holds = nil
		}), 2},
		{"batteries without numbers", "not ready", true, cells, 1},
		{"nothing in it", "", true, model.Document{Edition: 1, Project: model.Project{Name: "Nothing", Place: sun.Place{Sky: "described"}}, Variants: []model.Variant{{Name: "Nothing", Controller: panel.Controller{Kind: "tracking"}}}}, 0},
	}
}

// sheetsOfAll is how many plans are printed in all.
const sheetsOfAll = 50

// randomPlans are more plans of the sample's kinds, each with its names, parts, masses, pulleys, ropes, loads and what is
// not known of it drawn anew from the seed.
func randomPlans(n int) []sheetPlan {
	rnd := rand.New(rand.NewPCG(7, 11))
	names := []string{"Block", webtest.OneWord, webtest.Novel, "Kürbis, Öl & <Pumpe>", strings.Repeat("重い石 ", 30), strings.Repeat("l", 200), strings.Repeat("Mm-", 60)}
	name := func() string { return names[rnd.IntN(len(names))] }
	forget := []func(*lift.Hoist){
		func(h *lift.Hoist) { h.Structure.HangerRating.Is = false },
		func(h *lift.Hoist) { h.Rope.BreakingLoad.Is = false },
		func(h *lift.Hoist) { h.Container.Rating.Is = false },
		func(h *lift.Hoist) { h.Container.EyeRating.Is = false },
		func(h *lift.Hoist) { h.Drum.ShaftYield.Is = false },
		func(h *lift.Hoist) { h.Drum.PinYield.Is = false },
		func(h *lift.Hoist) { h.Drum.Diameter.Is = false },
		func(h *lift.Hoist) { h.Machine.K.Is = false },
		func(h *lift.Hoist) { h.Train.Stages[0].Tooth.Strength.Is = false },
		func(h *lift.Hoist) { h.Base.Mass.Is = false },
		func(h *lift.Hoist) { h.Travel.Is = false },
		func(h *lift.Hoist) { h.Reeving.RopeParts.Is = false },
		func(h *lift.Hoist) { h.Holds.Holds = nil },
		func(h *lift.Hoist) { h.Site.ComesDown = "" },
	}
	var plans []sheetPlan
	for i := range n {
		doc := catalog.Sample()
		at := []int{0, 2, 2, 2, 1}[rnd.IntN(5)]
		v := &doc.Variants[at]
		doc.Project.Name, doc.Project.Place.Name, v.Name = name(), name(), name()
		v.Parts = v.Parts[:rnd.IntN(len(v.Parts)+1)]
		for range rnd.IntN(30) {
			v.Parts = append(v.Parts, cost.Part{Name: name(), Number: name(), Get: cost.Get([]string{"have", "buy", "make", "borrow", ""}[rnd.IntN(5)]), Of: "store", Price: unit.Of(unit.Money(rnd.Float64() * 1e5))})
		}
		for s := range v.Stores {
			if b := v.Stores[s].Cells; b != nil {
				b.Name = name()
				if rnd.IntN(3) == 0 {
					b.Fuse.Is, b.Board = false, ""
				}
			}
			h := v.Stores[s].Hoist
			if h == nil {
				continue
			}
			h.Name, h.Machine.Name, h.Site.ComesDown = name(), name(), name()
			for range rnd.IntN(12) {
				h.Mass = append(h.Mass, lift.Piece{Name: name(), Mass: unit.Of(unit.Mass(rnd.Float64() * 5))})
			}
			for l := range h.Lower.Loads {
				h.Lower.Loads[l].Name = name()
			}
			ropes := 1 + max(0, rnd.IntN(8)-3)
			h.Reeving.RopeParts = unit.Of(unit.Count(ropes))
			h.Reeving.DeadEnd = lift.DeadEnd([]string{"beam", "mass"}[ropes%2])
			h.Reeving.Sheaves = slices.Repeat(h.Reeving.Sheaves[:1], int(h.Reeving.LeadSheaves.Val)+ropes-1)
			for s := range h.Reeving.Sheaves {
				h.Reeving.Sheaves[s].Name = name()
			}
			h.Rope.Length.Is = false
			h.Travel = unit.Of(unit.Length(.5 + rnd.Float64()*float64([]int{1, 4, 40}[rnd.IntN(3)])))
			for range []int{0, 0, 1, 4, 9}[rnd.IntN(5)] {
				forget[rnd.IntN(len(forget))](h)
			}
		}
		for range rnd.IntN(3) {
			v.Stores = append(v.Stores, doc.Variants[at].Stores[0])
		}
		plans = append(plans, sheetPlan{fmt.Sprintf("random %d", i+1), "any", at == 1, doc, at})
	}
	return plans
}

// provenPlans are plans with a load test that is four weeks old, in usual and in long words, and one that children may
// come under.
func provenPlans(t *testing.T) (out []sheetPlan) {
	t.Helper()
	for _, p := range webtest.UnsafePlans(t) {
		v := &p.Doc.Variants[0]
		switch {
		case p.Ready == "proven":
			for i := range v.Stores[0].Hoist.Trials.Proofs {
				v.Stores[0].Hoist.Trials.Proofs[i].Date = "2026-02-21"
			}
			long := document.Clone(p.Doc)
			nameAll(&long, &long.Variants[0], long.Variants[0].Stores[0].Hoist, webtest.Novel)
			long.Variants[0].Stores[0].Hoist.Site.MayFall = "yes"
			out = append(out, sheetPlan{p.ID, "proven", false, p.Doc, 0}, sheetPlan{p.ID + ", long words, may fall", "proven", false, long, 0})
		case p.ID == "d29-children-not-known":
			out = append(out, sheetPlan{p.ID, "hang nothing", false, p.Doc, 0})
		}
	}
	return out
}

// blankPlan is a hoist of which nothing is said.
func blankPlan() sheetPlan {
	doc := catalog.Sample()
	doc.Variants = doc.Variants[:1]
	doc.Variants[0].Parts, doc.Variants[0].Origins = nil, nil
	doc.Variants[0].Stores = []model.Store{{Hoist: &lift.Hoist{}}}
	return sheetPlan{"blank hoist", "any", false, doc, 0}
}

// nameAll gives everything that has a name the same one.
func nameAll(doc *model.Document, v *model.Variant, h *lift.Hoist, name string) {
	if doc != nil {
		doc.Project.Name, doc.Project.Place.Name = name, name
	}
	v.Name, h.Name, h.Machine.Name, h.Site.ComesDown = name, name, name, name
	for i := range h.Mass {
		h.Mass[i].Name = name
	}
	for i := range h.Lower.Loads {
		h.Lower.Loads[i].Name = name
	}
	for i := range h.Reeving.Sheaves {
		h.Reeving.Sheaves[i].Name = name
	}
	for i := range v.Parts {
		v.Parts[i].Name, v.Parts[i].Number = name, name
	}
	for i := range v.Stores {
		if b := v.Stores[i].Cells; b != nil {
			b.Name = name
		}
	}
}

// cutOff lists the boxes of the sheet whose content is larger than they are and is hidden.
const cutOff = `(() => { const out = [];
	for (const e of document.querySelectorAll("article.sheet, article.sheet *")) {
		if (e.closest("svg") || getComputedStyle(e).display === "inline") continue;
		if (e.matches("article.sheet") || getComputedStyle(e).overflow !== "visible") {
			if (e.scrollHeight > e.clientHeight + 1) out.push(e.tagName + "." + e.className + " is " + (e.scrollHeight - e.clientHeight) + " px too high");
			if (e.scrollWidth > e.clientWidth + 1) out.push(e.tagName + "." + e.className + " is " + (e.scrollWidth - e.clientWidth) + " px too wide");
		}
	}
	const sheet = document.querySelector("article.sheet").getBoundingClientRect();
	for (const e of document.querySelectorAll("article.sheet td, article.sheet th, article.sheet li, article.sheet p, article.sheet dd, article.sheet svg")) {
		const box = e.getBoundingClientRect();
		if (box.right > sheet.right + 1 || box.bottom > sheet.bottom + 1) out.push(e.tagName + " reaches over the edge: " + e.textContent.slice(0, 40));
	}
	return out.join("; ") })()`

// tabsOf is how many plans one tab prints before the next is opened.
const tabsOf = 16

// Every plan on both papers is exactly one page with nothing cut off, letters of at least 8 pt, a drawing of 40 % of A4 to the
// scale that it says; the band, the load steps, the signature lines and the last caution stand on it as its state asks.
func TestBrowserSheets(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	plans := sheetPlans(t)
	plans = append(plans, blankPlan())
	long := os.Getenv("DUSKWEIGHT_TORTURE") != "" // all of them; else some of those that differ by chance or by one answer
	if n := sheetsOfAll - len(plans); !long {
		plans = append(plans, randomPlans(n/4)...)
	} else {
		plans = append(plans, randomPlans(n)...)
	}
	plans = append(plans, provenPlans(t)...)
	for i, p := range webtest.UnsafePlans(t) {
		if !long && i%5 != 1 {
			continue
		}
		plans = append(plans, sheetPlan{"unsafe " + p.ID, "any", p.Doc.Variants[0].Stores[0].Hoist == nil, p.Doc, 0})
	}
	states, toScale := map[string]int{}, 0
	var tab *browsertest.Tab
	for i, plan := range plans {
		if i%tabsOf == 0 {
			tab = b.Open(t, browsertest.Look{Width: 734, Height: 1100, Print: true}) // 194 mm of 96 px an inch
		}
		if ps := model.Check(plan.doc); len(ps) > 0 {
			t.Errorf("%s: %v", plan.name, ps)
			continue
		}
		p, err := s.Store.CreateProject(t.Context(), plan.doc, "made", s.Now())
		if err != nil {
			t.Fatal(err)
		}
		vs, err := s.Store.Variants(t.Context(), p.ID)
		if err != nil {
			t.Fatal(err)
		}
		for _, paper := range []string{"a4", "letter"} {
			name := plan.name + " on " + paper
			tab.Go(base + page.VariantURL(p.ID, vs[plan.n].ID) + "/sheet?paper=" + paper)
			if cut := tab.String(cutOff); cut != "" {
				t.Errorf("%s: %s", name, cut)
			}
			if drawnTrue(t, tab, name, plan, paper == "letter") {
				toScale++
			}
			sheet := tab.Print()
			sheet.Keep(t, "sheet-"+strings.ReplaceAll(name, ",", ""))
			if sheet.Pages != 1 {
				t.Errorf("%s: %d pages", name, sheet.Pages)
				continue
			}
			if sheet.Least < 7.95 { // 8 pt, as the browser rounds them
				t.Errorf("%s: letters of %.2f pt", name, sheet.Least)
			}
			if w := sheet.Size[0][0]; (w > 600) != (paper == "letter") { // A4 is 595 points wide, Letter 612
				t.Errorf("%s: %v points wide", name, w)
			}
			if plan.state == "any" {
				plan.state = stateOfSheet(sheet)
			}
			sheetSays(t, name, plan, sheet)
		}
		states[plan.state]++
		if c := tab.Complaints(); len(c) > 0 {
			t.Errorf("%s: console: %+v", plan.name, c)
		}
	}
	if t.Logf("%v, %d drawings measured", states, toScale); min(states["ready"], states["not ready"], states["do not hang"]) < 3 || states["proven"] < 2 || states["hang nothing"] < 1 {
		t.Errorf("the plans print %v: want at least 3 of the usual ones, two proven and one that hangs nothing", states)
	}
	if toScale < len(plans) {
		t.Errorf("only %d of the drawings on two papers could be measured", toScale)
	}
}

// The same on whatever paper the printer holds: the styles of one page print on the other without a second sheet.
func TestBrowserOtherPaper(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	tab := b.Open(t, browsertest.Look{Width: 734, Height: 1100, Print: true})
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	for _, paper := range []chromedp.PaperSize{chromedp.PaperA4, chromedp.PaperLetter} {
		tab.Go(base + page.VariantURL(p.ID, vs[2].ID) + "/sheet?paper=letter")
		if sheet := tab.PrintOn(paper); sheet.Pages != 1 {
			t.Errorf("the Letter sheet prints on %d pages of %v", sheet.Pages, paper)
		}
		for _, v := range []int{0, 2} {
			tab.Go(base + page.VariantURL(p.ID, vs[v].ID) + "/sheet/wiring")
			if sheet := tab.PrintOn(paper); sheet.Pages != 1 {
				t.Errorf("%s: wiring and switching take %d pages of %v", vs[v].Value.Name, sheet.Pages, paper)
			}
		}
	}
}

// inDrawing measures the drawing in mm of paper, 96 px an inch: its width and height, the n of its scale, how far apart the
// marks of the two stops are drawn, and its smallest letters; nothing without one.
const inDrawing = `(() => {
	const svg = document.querySelector(".sheet-plan svg");
	if (!svg) return "";
	const mm = px => px * 25.4 / 96, box = svg.getBoundingClientRect();
	const letters = [...svg.querySelectorAll("text")].map(e => { const m = e.getScreenCTM(); return mm(parseFloat(getComputedStyle(e).fontSize) * Math.hypot(m.a, m.b)) });
	const marks = [...svg.querySelectorAll('line[stroke-width="2.4"]')].map(e => e.getBoundingClientRect()).map(r => (r.top + r.bottom) / 2);
	const said = [...svg.querySelectorAll("text")].map(e => e.textContent);
	const scale = said.find(s => s.startsWith("scale 1 : "));
	const cut = said.includes("height is cut");
	return [mm(box.width), mm(box.height), scale.slice(10).replace(/[^0-9.]/g, ""), cut ? 0 : mm(Math.max(...marks) - Math.min(...marks)), Math.min(...letters)].join(" ");
})()`

// drawnTrue measures the drawing on the sheet: 188 × 133 mm of A4 (40.1 % of 210 × 297 mm), 194 × 124 mm of Letter, letters of
// at least 2.82 mm, and the travel of the plan, where it is known and whole, as long as the scale says. It reports whether the
// travel was measured.
func drawnTrue(t *testing.T, tab *browsertest.Tab, name string, plan sheetPlan, letter bool) bool {
	t.Helper()
	said := tab.String(inDrawing)
	if said == "" {
		if !plan.cells {
			t.Errorf("%s: no drawing", name)
		}
		return false
	}
	var w, h, scale, travel, least float64
	if _, err := fmt.Sscan(said, &w, &h, &scale, &travel, &least); err != nil {
		t.Fatalf("%s: %q: %v", name, said, err)
	}
	wantW, wantH := 188.0, 133.0
	if letter {
		wantW, wantH = 194, 124
	}
	if math.Abs(w-wantW) > .3 || math.Abs(h-wantH) > .3 {
		t.Errorf("%s: the drawing is %.1f × %.1f mm", name, w, h)
	}
	if !letter && w*h < .4*210*297 {
		t.Errorf("%s: the drawing takes %.1f %% of the page", name, 100*w*h/210/297)
	}
	if least < 2.82 {
		t.Errorf("%s: letters of %.2f mm in the drawing", name, least)
	}
	for _, st := range plan.doc.Variants[plan.n].Stores {
		if st.Hoist == nil {
			continue
		}
		if !st.Hoist.Travel.Is || travel == 0 {
			return false
		}
		if want := float64(st.Hoist.Travel.Val) * 1000 / scale; math.Abs(travel-want) > .25 {
			t.Errorf("%s: a travel of %v m is drawn %.2f mm long, at 1 : %v it is %.2f", name, st.Hoist.Travel.Val, travel, scale, want)
		}
		return true
	}
	return false
}

// stateOfSheet reads from its band which sheet it is.
func stateOfSheet(sheet browsertest.Sheet) string {
	switch {
	case sheet.Says("DO NOT HANG."):
		return "do not hang"
	case sheet.Says("DO NOT USE."): // the hoist may be sound, and what stands against the plan is its electricity
		return "do not use"
	case sheet.Says("NOT READY:"):
		return "not ready"
	case sheet.Says("NOT READY."):
		return "hang nothing"
	case sheet.Says("PROVEN BY TEST"):
		return "proven"
	}
	return "ready"
}

func sheetSays(t *testing.T, name string, plan sheetPlan, sheet browsertest.Sheet) {
	t.Helper()
	has := func(want bool, words ...string) {
		t.Helper()
		for _, w := range words {
			if sheet.Says(w) != want {
				t.Errorf("%s: %q is on it: %v, want %v", name, w, !want, want)
			}
		}
	}
	if plan.cells {
		has(true, "Connect no medical device and no alarm.", "Local codes come")
		has(false, "Load steps", "Use dead weight", "Do only this step", "DO NOT HANG", "rope")
	} else {
		has(true, "Never stand, reach or work under the mass.", "Before you touch anything", "local codes come", "Keep out", "all round", "Stop marks on the rope", "One switch, centre")
	}
	steps := []string{"50 %", "75 %", "100 %", "125 %"}
	sign := []string{"Built and checked by, date", "Licensed person"}
	switch plan.state {
	case "proven":
		has(false, "DO NOT HANG", "NOT READY", "READY for the load steps")
		has(true, "under keep-out, until", "Second adult who saw the test", "Load steps", "125 %", "Switch order", "Let nobody inside the keep-out.")
		has(true, sign...)
	case "hang nothing":
		has(false, "DO NOT HANG", "Load steps", "25 %", "125 %", "at most 100 mm")
		has(false, sign...)
		has(true, "NOT READY. ", "nothing")
	case "ready":
		has(false, "DO NOT HANG", "NOT READY")
		has(true, sign...)
		if !plan.cells {
			has(true, "Load steps", "25 %", "Switch order")
			has(true, steps...)
			has(true, "Next look at rope, pins and brake")
		}
	case "not ready":
		has(false, "DO NOT HANG", "125 %", "50 %")
		has(false, sign...)
		has(true, "NOT READY:", "not known.")
		if !plan.cells {
			has(true, "Load steps", "25 %", "at most 100 mm", "Switch order")
		}
	case "do not hang", "do not use":
		has(true, strings.ToUpper(plan.state)+".")
		has(false, "Load steps", "Use dead weight", "Do only this step", "Greatest mass")
		has(false, sign...)
	}
}
