package history_test

import (
	"net/http"
	"net/url"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web"
	"duskweight/web/history"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// told says in one line what lies between two variants.
func told(was, is model.Variant, sys unit.System) string {
	return strings.ReplaceAll(strings.Join(history.ChangesOf(store.FullChange{VariantWas: &was, VariantIs: &is}, web.AllTables(), sys), "; "), unit.Space, " ")
}

// The history tells what changed in words and in the units of the page. 60 kg / 0.45359237 are
// 132.277 lb.
func TestHistoryTellsWhatChanged(t *testing.T) {
	was := catalog.Sample().Variants[0]
	hoist := func(v model.Variant) *lift.Hoist { return v.Stores[0].Hoist }
	for name, c := range map[string]struct {
		change func(*model.Variant)
		want   string
		sys    unit.System
	}{
		"two values": {func(v *model.Variant) {
			hoist(*v).Rope.Diameter = unit.Of[unit.Length](0.006)
			hoist(*v).Mass[0].Mass = unit.Of[unit.Mass](60)
		}, "Piece 1, Mass: ", unit.Metric},
		"not known": {func(v *model.Variant) { hoist(*v).Rope.Diameter = unit.Known[unit.Length]{} }, "Rope diameter: 12 mm → not known", unit.Metric},
		"imperial":  {func(v *model.Variant) { hoist(*v).Mass[0].Mass = unit.Of[unit.Mass](60) }, "Piece 1, Mass: 251 lb → 132 lb", unit.Imperial},
		"a row more": {func(v *model.Variant) {
			hoist(*v).Mass = append(hoist(*v).Mass, lift.Piece{Name: "Anvil", Mass: unit.Of[unit.Mass](35)})
		}, "added (Anvil", unit.Metric},
		"a row less": {func(v *model.Variant) { v.Panels = v.Panels[1:] }, "taken out", unit.Metric},
		"the name":   {func(v *model.Variant) { v.Name = "Other" }, "→ Other", unit.Metric},
		"nothing":    {func(*model.Variant) {}, "", unit.Metric},
	} {
		is := document.Clone(was)
		c.change(&is)
		if got := told(was, is, c.sys); !strings.Contains(got, c.want) || c.want == "" && got != "" {
			t.Errorf("%s: %q does not say %q", name, got, c.want)
		}
	}
	// a row taken out of the middle is one change, though all after it move up
	hoist(was).Mass = []lift.Piece{{Name: "A", Mass: unit.Of[unit.Mass](1)}, {Name: "B", Mass: unit.Of[unit.Mass](2)}, {Name: "C", Mass: unit.Of[unit.Mass](3)}}
	is := document.Clone(was)
	hoist(is).Mass = append(hoist(is).Mass[:1:1], hoist(is).Mass[2])
	if got := history.ChangesOf(store.FullChange{VariantWas: &was, VariantIs: &is}, web.AllTables(), unit.Metric); len(got) != 1 || !strings.Contains(got[0], "Piece 2 taken out (B") {
		t.Errorf("%q", got)
	}
}

// Each value of a document that may be not known is told when it goes, and nothing else is.
func TestHistoryTellsEveryValue(t *testing.T) {
	doc := catalog.Sample()
	for i := range doc.Variants {
		v := document.Clone(doc.Variants[i])
		webtest.EachKnown(reflect.ValueOf(&v), func(_, is reflect.Value, tag reflect.StructTag) {
			if !is.Bool() {
				return
			}
			is.SetBool(false)
			if got := history.ChangesOf(store.FullChange{VariantWas: &doc.Variants[i], VariantIs: &v}, web.AllTables(), unit.Metric); len(got) != 1 {
				t.Errorf("%s of %s is told as %q", tag.Get("json"), v.Name, got)
			}
			is.SetBool(true)
		}, "")
	}
	p := document.Clone(doc.Project)
	webtest.EachKnown(reflect.ValueOf(&p), func(_, is reflect.Value, tag reflect.StructTag) {
		if !is.Bool() {
			return
		}
		is.SetBool(false)
		if got := history.ChangesOf(store.FullChange{ProjectWas: &doc.Project, ProjectIs: &p}, web.AllTables(), unit.Metric); len(got) != 1 {
			t.Errorf("%s of the project is told as %q", tag.Get("json"), got)
		}
		is.SetBool(true)
	}, "")
}

// A hundred and twenty saves are taken back one by one and made again, with a new start of the program in between, and
// all stand in the history, page by page.
func TestHistoryAcrossRestarts(t *testing.T) {
	s := webtest.NewSite(t)
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	const steps = 120
	v := vs[0]
	for i := range steps {
		next := document.Clone(v.Value)
		next.Name = "Name " + strconv.Itoa(i)
		var err error
		if v, err = s.Store.SaveVariant(t.Context(), v.ID, next, store.Edit{Revision: v.Revision, Said: "Renamed"}, s.Now()); err != nil {
			t.Fatal(err)
		}
	}
	back := func(verb string, step func() *store.Change) {
		c := step()
		if c == nil {
			t.Fatal("nothing to " + verb)
		}
		if w := webtest.Ask(s.Handler(), "POST", page.ProjectURL(p.ID)+"/"+verb, url.Values{"seq": {page.StepOf(c).Seq}}); w.Code != http.StatusSeeOther {
			t.Fatalf("%s: %d", verb, w.Code)
		}
	}
	for i := range steps {
		if i == steps/2 {
			webtest.Restart(t, s)
		}
		back("undo", func() *store.Change { undo, _, _ := s.Store.Steps(t.Context(), p.ID); return undo })
	}
	if now, _ := s.Store.Variant(t.Context(), v.ID); now.Value.Name != vs[0].Value.Name {
		t.Errorf("after all undos it is %q", now.Value.Name)
	}
	webtest.Restart(t, s)
	for range steps {
		back("redo", func() *store.Change { _, redo, _ := s.Store.Steps(t.Context(), p.ID); return redo })
	}
	if now, _ := s.Store.Variant(t.Context(), v.ID); now.Value.Name != "Name 119" {
		t.Errorf("after all redos it is %q", now.Value.Name)
	}
	seen, at := 0, page.ProjectURL(p.ID)+"/history"
	for at != "" {
		body := webtest.Ask(s.Handler(), "GET", at, nil).Body.String()
		seen += strings.Count(body, "<tr>") - 1
		_, after, more := strings.Cut(body, `href="`+page.ProjectURL(p.ID)+`/history?before=`)
		at = ""
		if n, _, ok := strings.Cut(after, `"`); ok && more {
			at = page.ProjectURL(p.ID) + "/history?before=" + n
		}
	}
	if want := 1 + len(vs) + 3*steps; seen != want {
		t.Errorf("%d lines in the history, want %d", seen, want)
	}
}
