package cells_test

import (
	"net/http"
	"net/url"
	"regexp"
	"slices"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/cell"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/unit"
	"duskweight/web"
	"duskweight/web/cells"
	"duskweight/web/form"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// battery is the worked example with its battery changed, saved, and the address of its page.
func battery(t testing.TB, s *web.Site, name string, change func(*model.Document)) (at string) {
	t.Helper()
	doc := catalog.Sample()
	if change != nil {
		change(&doc)
	}
	p, vs := webtest.Create(t, s, name, doc)
	return page.StoreURL(p.ID, vs[1].ID, 0, "cells")
}

func bodyOf(t testing.TB, s *web.Site, at string) string {
	t.Helper()
	w := webtest.Ask(s.Handler(), http.MethodGet, at, nil)
	if w.Code != http.StatusOK {
		t.Fatal(at, w.Code)
	}
	return w.Body.String()
}

func cardOf(body string) string {
	_, card, _ := strings.Cut(body, `<section class="card"`)
	card, _, _ = strings.Cut(card, `class="bench-below"`)
	return card
}

var partLink = regexp.MustCompile(`<a class="part(?: sel)?" href="[^"]*part=(\w+)`)

// The cards together edit every input of a battery once and none twice: with lithium cells, with lead cells, which have no
// board, and one that is blank.
func TestCardsEditEveryInputOnce(t *testing.T) {
	s := webtest.NewSite(t)
	for name, b := range map[string]cell.Bank{"example": *catalog.Sample().Variants[1].Stores[0].Cells, "lead": {Kind: cell.SealedLead, Capacity: unit.Of[unit.Charge](3600 * 7), Voltage: unit.Of[unit.Voltage](12)}, "blank": {}} {
		at := battery(t, s, name, func(d *model.Document) { d.Variants[1].Stores[0].Cells = new(b) })
		seen, parts := map[string]int{}, map[string]bool{}
		for _, m := range partLink.FindAllStringSubmatch(bodyOf(t, s, at), -1) {
			parts[m[1]] = true
		}
		if parts["board"] != (name != "lead") || parts["inverter"] || len(parts) < 8 {
			t.Errorf("%s: the drawing has %v", name, parts)
		}
		for part := range parts {
			for _, m := range regexp.MustCompile(`name="stores\[0\]\.cells\.([^"]+)"`).FindAllStringSubmatch(cardOf(bodyOf(t, s, at+"?more=1&part="+part)), -1) {
				seen[m[1]]++
			}
		}
		want, _ := form.Form[cell.Bank]{Parts: cells.CellsForm()}.Paths(new(b))
		for _, f := range want {
			if seen[f] != 1 {
				t.Errorf("%s: %s stands on %d cards", name, f, seen[f])
			}
		}
		whole := bodyOf(t, s, at+"?all=1")
		for _, f := range want {
			if !strings.Contains(whole, `name="stores[0].cells.`+f+`"`) {
				t.Errorf("%s: %s is not on the page of all inputs", name, f)
			}
		}
	}
}

// A battery that is not there yet is dashed and asked for first; its life is a dashed bar without a number.
func TestEmptyBattery(t *testing.T) {
	s := webtest.NewSite(t)
	at := battery(t, s, "empty", func(d *model.Document) {
		d.Variants[1].Stores[0].Cells = &cell.Bank{Kind: cell.LFP}
		d.Variants[1].Panels = nil
	})
	body := bodyOf(t, s, at)
	for _, want := range []string{"Which kind of battery is it?", "Battery none yet: missing", "Panels none yet: missing", "Not known yet: too little is known", `stroke-dasharray="5 4"`} {
		if !strings.Contains(body, want) {
			t.Errorf("%q is not on the page", want)
		}
	}
	if strings.Contains(body, `class="cellf"`) || strings.Contains(body, "About ") {
		t.Error("the cells are drawn, or their life is told")
	}
	// The question saves one input and asks the next.
	sent := url.Values{page.NameAsked: {"1"}, form.NameRevision: {"1"}, "stores[0].cells.block_capacity_c": {"50"}, form.NameUnits: {"metric"}}
	if w := webtest.Ask(s.Handler(), http.MethodPost, at, sent); w.Code != http.StatusSeeOther || !strings.HasSuffix(w.Header().Get("Location"), "#next") {
		t.Fatal(w.Code, w.Header().Get("Location"))
	}
	if body := bodyOf(t, s, at); !strings.Contains(body, `id="q-field" name="stores[0].cells.block_voltage_v"`) {
		t.Error("the voltage is not asked for next")
	}
}

// A value that is refused stays as it was typed, on its card, with what is wrong beside it; so does one of the panels, whose
// inputs stand on another page, too. One that fits is saved from here.
func TestRefusedOnItsCard(t *testing.T) {
	s := webtest.NewSite(t)
	at := battery(t, s, "refused", nil)
	for part, name := range map[string]string{"fuse": "stores[0].cells.fuse_a", "panels": "panels[0].count"} {
		sent, _ := webtest.FormAt(t, bodyOf(t, s, at+"?part="+part), at)
		sent.Set(name, "many")
		w := webtest.Ask(s.Handler(), http.MethodPost, at, sent)
		card := cardOf(w.Body.String())
		if w.Code != http.StatusUnprocessableEntity || !webtest.TypedBack(card, name, "many") || !strings.Contains(card, `aria-invalid="true"`) {
			t.Errorf("%s: %d, and the card is %.600s", part, w.Code, card)
		}
		sent.Set(name, "7")
		if w := webtest.Ask(s.Handler(), http.MethodPost, at, sent); w.Code != http.StatusSeeOther {
			t.Errorf("%s: 7 is not taken: %d", part, w.Code)
		}
	}
	v := webtest.Stored(t, s, 2).Value
	if v.Stores[0].Cells.Fuse.Val != 7 || v.Panels[0].Count.Val != 7 {
		t.Errorf("saved are %v A and %v panels", v.Stores[0].Cells.Fuse, v.Panels[0].Count)
	}
}

// Five panels of 22.5 V open in a row make 112.5 V at 25 °C and more in frost: over 60 V a licensed person is named, and the
// panels are no longer settled.
func TestOver60Volts(t *testing.T) {
	s := webtest.NewSite(t)
	over := func(series float64) string {
		return bodyOf(t, s, battery(t, s, "volts", func(d *model.Document) {
			d.Variants[1].Panels[0].Count = unit.Of(unit.Count(series))
			d.Variants[1].Panels[0].Sheet = &panel.Sheet{Voc: unit.Of[unit.Voltage](22.5), Series: unit.Of(unit.Count(series))}
			d.Variants[1].Controller.MaxInput = unit.Of[unit.Voltage](200)
		}))
	}
	const say, line = "more than 60 V can kill. Let a licensed person connect what carries it", `stroke="#D55E00" stroke-width="3.4"`
	if body := over(5); !strings.Contains(body, say) || !strings.Contains(body, line) {
		t.Error("over 60 V no licensed person is named, or the line is not in the failing colour")
	}
	if body := over(1); strings.Contains(body, say) || strings.Contains(body, line) {
		t.Error("one panel of 22.5 V is told to be over 60 V")
	}
}

// Of four batteries one is drawn, and a menu leads to the others. Only one has no menu.
func TestFourBatteries(t *testing.T) {
	s := webtest.NewSite(t)
	at := battery(t, s, "four", func(d *model.Document) {
		v := &d.Variants[1]
		for range 3 {
			v.Stores = append(v.Stores, model.Store{Cells: new(*v.Stores[0].Cells)})
		}
	})
	body := bodyOf(t, s, at)
	menu := regexp.MustCompile(`(?s)<nav class="which".*?</nav>`).FindString(body)
	if n := strings.Count(menu, "<a "); n != 4 || strings.Count(menu, `aria-current="page"`) != 1 || strings.Count(body, `class="hit"`) != 9 {
		t.Errorf("the menu has %d batteries: %s", n, menu)
	}
	if bodyOf(t, s, strings.TrimSuffix(at, "0")+"3"); strings.Contains(bodyOf(t, s, battery(t, s, "one", nil)), `class="which"`) {
		t.Error("one battery has a menu")
	}
}

// The drawing leads along the current, in the order of reading, and each link says its word.
func TestDrawingAlongTheCurrent(t *testing.T) {
	s := webtest.NewSite(t)
	var order []string
	for _, m := range partLink.FindAllStringSubmatch(bodyOf(t, s, battery(t, s, "order", nil)), -1) {
		order = append(order, m[1])
	}
	if want := []string{"panels", "panel_cable", "controller", "fuse", "cable", "battery", "board", "place", "loads"}; !slices.Equal(order, want) {
		t.Errorf("%v, want %v", order, want)
	}
}

// A battery that may not be used, or of which something is open, never shows all parts settled: every unsafe plan with one.
func TestUnsafeNeverAllSettled(t *testing.T) {
	s := webtest.NewSite(t)
	settled := regexp.MustCompile(`<b>(\d+) of (\d+) parts settled`)
	seen := 0
	for _, plan := range webtest.UnsafePlans(t) {
		if len(plan.Doc.Variants) == 0 {
			continue
		}
		v := plan.Doc.Variants[0]
		i := slices.IndexFunc(v.Stores, func(st model.Store) bool { return st.Cells != nil })
		if i < 0 {
			continue
		}
		ready := model.Evaluate(plan.Doc, "").Variants[0].Stores[i].Ready
		if ready != "no" && ready != "not_known" {
			continue
		}
		p, vs := webtest.Create(t, s, plan.ID, plan.Doc)
		m := settled.FindStringSubmatch(bodyOf(t, s, page.StoreURL(p.ID, vs[0].ID, i, "cells")))
		if m == nil || m[1] == m[2] {
			t.Errorf("%s is %s and shows %v", plan.ID, ready, m)
		}
		seen++
	}
	if seen < 8 {
		t.Fatalf("only %d plans were looked at", seen)
	}
}
