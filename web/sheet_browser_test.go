package web

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/cell"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/web/browsertest"
)

// sheetPlan is one plan with the state that its sheet must show.
type sheetPlan struct {
	name  string
	state string // "ready", "not ready", "do not hang"
	cells bool   // no hoist in it
	doc   model.Document
	n     int // which variant of the document
}

var (
	oneWord = strings.Repeat("W", 200)
	novel   = strings.Repeat("A very long name without any end ", 6)
)

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
	place, ok := catalog.Climate("Denver CO")
	if !ok {
		t.Fatal("no such climate")
	}
	first := catalog.Start(catalog.Answers{Name: "Hill cabin", Place: place, HeavyName: "Stone", Mass: 40, Height: 3, Lamps: 2, LampPower: 5, Hours: 4 * unit.Hour, Seed: 1})
	cells := catalog.Sample()
	cells.Variants[1].Stores = append(cells.Variants[1].Stores, model.Store{Cells: &cell.Bank{Name: novel, Role: "night", Kind: "lfp"}}, model.Store{Cells: &cell.Bank{Name: oneWord, Role: "night", Kind: "lfp"}})
	return []sheetPlan{
		{"sample, gives way", "do not hang", false, catalog.Sample(), 0},
		{"sample, battery", "ready", true, catalog.Sample(), 1},
		{"sample, both", "ready", false, catalog.Sample(), 2},
		{"three answers", "do not hang", false, first, 0},
		{"one word of 200 letters", "ready", false, named(oneWord), 2},
		{"words of 200 letters", "ready", false, named(novel), 2},
		{"forty parts", "ready", false, sample(func(_ *model.Document, v *model.Variant, _ *lift.Hoist) {
			for range 40 {
				v.Parts = append(v.Parts, cost.Part{Name: novel, Number: oneWord, Get: "borrow", Of: "store", Price: unit.Of[unit.Money](1234567)})
			}
		}), 2},
		{"much not known", "not ready", false, sample(func(_ *model.Document, v *model.Variant, h *lift.Hoist) {
			nameAll(nil, v, h, novel)
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
			nameAll(doc, v, h, oneWord)
			h.Mass[0].Mass = unit.Of[unit.Mass](9000)
			h.Holds.Holds = nil
		}), 2},
		{"batteries without numbers", "not ready", true, cells, 1},
		{"nothing in it", "", true, model.Document{Edition: 1, Project: model.Project{Name: "Nothing", Place: sun.Place{Sky: "described"}}, Variants: []model.Variant{{Name: "Nothing", Controller: panel.Controller{Kind: "tracking"}}}}, 0},
	}
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

// Every plan on both papers is exactly one page with nothing cut off; the band, the load steps, the signature lines and
// the last caution stand on it as its state asks.
func TestBrowserSheets(t *testing.T) {
	b := browsertest.Start(t)
	s, base := serve(t)
	tab := b.Open(t, browsertest.Look{Width: 711, Height: 1100, Print: true}) // 188 mm of 96 px an inch
	for _, plan := range sheetPlans(t) {
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
			tab.Go(base + variantURL(p.ID, vs[plan.n].ID) + "/sheet?paper=" + paper)
			if cut := tab.String(cutOff); cut != "" {
				t.Errorf("%s: %s", name, cut)
			}
			sheet := tab.Print()
			sheet.Keep(t, "sheet-"+strings.ReplaceAll(name, ",", ""))
			if sheet.Pages != 1 {
				t.Errorf("%s: %d pages", name, sheet.Pages)
				continue
			}
			if w := sheet.Size[0][0]; (w > 600) != (paper == "letter") { // A4 is 595 points wide, Letter 612
				t.Errorf("%s: %v points wide", name, w)
			}
			sheetSays(t, name, plan, sheet)
		}
	}
	if c := tab.Complaints(); len(c) > 0 {
		t.Errorf("console: %+v", c)
	}
	// The same on whatever paper the printer holds: the styles of one page print on the other without a second sheet.
	for _, paper := range []chromedp.PaperSize{chromedp.PaperA4, chromedp.PaperLetter} {
		tab.Go(base + "/projects/3/variants/9/sheet?paper=letter")
		if sheet := tab.PrintOn(paper); sheet.Pages != 1 {
			t.Errorf("the Letter sheet prints on %d pages of %v", sheet.Pages, paper)
		}
		for _, at := range []string{"/projects/1/variants/1", "/projects/1/variants/3"} {
			tab.Go(base + at + "/sheet/wiring")
			if sheet := tab.PrintOn(paper); sheet.Pages != 1 {
				t.Errorf("%s: wiring and switching take %d pages of %v", at, sheet.Pages, paper)
			}
		}
	}
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
		has(true, "Not for medical devices or alarms.", "Local codes come")
		has(false, "Load steps", "100 mm", "DO NOT HANG", "rope")
	} else {
		has(true, "Never stand, reach or work under the mass.", "Block the mass", "local codes come", "Keep out, all round", "Switch order")
	}
	steps := []string{"50 %", "75 %", "100 %", "125 %"}
	sign := []string{"Built and checked by, date", "Licensed person"}
	switch plan.state {
	case "ready":
		has(false, "DO NOT HANG", "NOT READY")
		has(true, sign...)
		if !plan.cells {
			has(true, "Load steps", "25 %")
			has(true, steps...)
			has(true, "Next look at rope, pins and brake")
		}
	case "not ready":
		has(false, "DO NOT HANG", "125 %", "50 %")
		has(false, sign...)
		has(true, "NOT READY:", "not known.")
		if !plan.cells {
			has(true, "Load steps", "25 %", "at most 100 mm")
		}
	case "do not hang":
		has(true, "DO NOT HANG.")
		has(false, "NOT READY", "Load steps", "125 %")
		has(false, sign...)
	}
}
