package shelf_test

import (
	"net/http"
	"net/url"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// Panels and battery go from a variant to the shelf, and from the shelf into another variant, where they are the same panels
// and the same battery; what belongs to the place is asked there. One change each, which can be undone.
func TestPanelsAndBatteriesOnTheShelf(t *testing.T) {
	s := webtest.NewSite(t)
	doc := catalog.Sample()
	doc.Project.Shelf = model.Shelf{}
	from := &doc.Variants[1]
	from.Stores[0].Cells.Series, from.Stores[0].Cells.Parallel = unit.Of[unit.Count](2), unit.Of[unit.Count](2)
	p, vs := webtest.Create(t, s, "sample", doc)
	at := page.ProjectURL(p.ID) + "/shelf"
	sent := func(do string, more url.Values) *http.Response {
		t.Helper()
		body := webtest.Ask(s.Handler(), "GET", at, nil).Body.String()
		typed := url.Values{form.NameRevision: {regexp.MustCompile(`name="revision" value="(\d+)"`).FindStringSubmatch(body)[1]}}
		for k, v := range more {
			typed[k] = v
		}
		return webtest.Ask(s.Handler(), "POST", at+do, typed).Result()
	}
	id := func(i int) string { return page.Itoa(int(vs[i].ID)) }
	if r := sent("/put-home", url.Values{"v": {id(1)}}); r.StatusCode != http.StatusSeeOther {
		t.Fatalf("put: %d", r.StatusCode)
	}
	saved, err := s.Store.Project(t.Context(), p.ID)
	shelf := saved.Value.Shelf
	if err != nil || len(shelf.Panels) != len(from.Panels) || len(shelf.Cells) != 1 || shelf.Cells[0].Count.Or(0) != 4 {
		t.Fatalf("%v: %+v", err, shelf)
	}
	if sent("/put-home", url.Values{"v": {id(1)}}); true {
		if again, err := s.Store.Project(t.Context(), p.ID); err != nil || !reflect.DeepEqual(again.Value.Shelf, shelf) {
			t.Errorf("%v: the same parts lie there twice", err)
		}
	}
	body := webtest.Ask(s.Handler(), "GET", at+"?part=batteries%5B0%5D", nil).Body.String()
	for _, say := range []string{"Add it to a variant", "4 of them", "Copy parts of a variant"} {
		if !strings.Contains(body, say) {
			t.Errorf("%q is not on the page", say)
		}
	}
	if strings.Contains(webtest.Ask(s.Handler(), "GET", at, nil).Body.String(), "What fits in") {
		t.Error("a shelf without a part of a hoist offers to try its parts")
	}
	to := func(part, variant, revision string) *http.Response {
		return sent("/add", url.Values{"part": {part}, "v": {variant}, "variant": {revision}})
	}
	version := func(i int) string {
		now, err := s.Store.Variant(t.Context(), vs[i].ID)
		if err != nil {
			t.Fatal(err)
		}
		return page.Itoa(int(now.Revision))
	}
	for _, no := range []string{"", "batteries[1]", "batteries[-1]", "batteries", "motors[0]", "nothing[0]"} {
		if r := to(no, id(2), version(2)); r.StatusCode != http.StatusBadRequest {
			t.Errorf("%q: %d", no, r.StatusCode)
		}
	}
	if r := to("batteries[0]", id(2), "99"); r.StatusCode != http.StatusConflict {
		t.Errorf("an old variant: %d", r.StatusCode)
	}
	if r := to("batteries[0]", "99", "1"); r.StatusCode != http.StatusNotFound {
		t.Errorf("a variant that is not there: %d", r.StatusCode)
	}
	before, _ := s.Store.Variant(t.Context(), vs[2].ID)
	if r := to("panels[0]", id(2), version(2)); r.StatusCode != http.StatusSeeOther || r.Header.Get("Location") != page.VariantURL(p.ID, vs[2].ID) {
		t.Fatalf("panels: %d %s", r.StatusCode, r.Header.Get("Location"))
	}
	r := to("batteries[0]", id(2), version(2))
	if want := page.StoreURL(p.ID, vs[2].ID, len(before.Value.Stores), "cells"); r.StatusCode != http.StatusSeeOther || r.Header.Get("Location") != want {
		t.Fatalf("battery: %d %s, want %s", r.StatusCode, r.Header.Get("Location"), want)
	}
	now, err := s.Store.Variant(t.Context(), vs[2].ID)
	if err != nil {
		t.Fatal(err)
	}
	panel := now.Value.Panels[len(now.Value.Panels)-1]
	if panel.Power != from.Panels[0].Power || panel.Count != from.Panels[0].Count || panel.Tilt.Is || panel.Azimuth.Is {
		t.Errorf("panels became %+v", panel)
	}
	b, was := now.Value.Stores[len(now.Value.Stores)-1].Cells, from.Stores[0].Cells
	if b == nil || b.Kind != was.Kind || b.Capacity != was.Capacity || b.Voltage != was.Voltage || b.Origin != was.Origin || b.Series.Is || b.Parallel.Is {
		t.Errorf("the battery became %+v", b)
	}
	for range 2 {
		if _, err := s.Store.Undo(t.Context(), p.ID, 0, s.Now()); err != nil {
			t.Fatal(err)
		}
	}
	if back, err := s.Store.Variant(t.Context(), vs[2].ID); err != nil || !reflect.DeepEqual(back.Value, before.Value) {
		t.Errorf("%v: the changes are not undone", err)
	}
}

// A typical value stays marked as one on its way to the shelf and back.
func TestOriginsGoWithPanelsAndCells(t *testing.T) {
	doc := catalog.Sample()
	v := doc.Variants[1]
	v.Panels = append([]panel.Array(nil), v.Panels...)
	v.Panels[0].Count = unit.Of[unit.Count](900) // more than a row of the shelf holds
	v.Origins = model.Origins{
		"panels[0].panel_w":                {Kind: model.OriginTypical},
		"panels[0].tilt_rad":               {Kind: model.OriginTypical},
		"stores[0].cells.block_capacity_c": {Kind: model.OriginTypical},
	}
	p, n := doc.Project.ShelveHome(v)
	if n < 2 {
		t.Fatalf("%d parts", n)
	}
	if ps := model.CheckProject(p); len(ps) > 0 {
		t.Errorf("the shelf refuses what it was given: %v", ps)
	}
	i, k := len(p.Shelf.Panels)-len(v.Panels), len(p.Shelf.Cells)-1
	w := p.WithCells(p.WithPanels(model.Variant{}, i), k)
	want := model.Origins{"panels[0].panel_w": {Kind: model.OriginTypical}, "stores[0].cells.block_capacity_c": {Kind: model.OriginTypical}}
	if !reflect.DeepEqual(w.Origins, want) {
		t.Errorf("origins %v, want %v", w.Origins, want)
	}
}
