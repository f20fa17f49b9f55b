package history_test

import (
	"net/http"
	"net/url"
	"strconv"
	"testing"

	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web"
	"duskweight/web/webtest"
)

// BenchmarkHistory is the page of a project with a thousand changes, turn about of a hoist, the panels and the load: its
// newest page, an older one, and the newest after one more change.
func BenchmarkHistory(b *testing.B) {
	s := thousand(b)
	change := func(i int) func() {
		return func() { changeOnce(b, s, i) }
	}
	at := "/projects/1/history"
	for name, c := range map[string]struct {
		at     string
		before func()
	}{
		"newest": {at, func() {}},
		"older":  {at + "?before=500", func() {}},
		"grown":  {at, change(1)},
	} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				b.StopTimer()
				c.before()
				b.StartTimer()
				if w := webtest.Ask(s.Handler(), "GET", c.at, nil); w.Code != http.StatusOK {
					b.Fatal(w.Code)
				}
			}
		})
	}
}

// thousand is a site whose only project has a thousand changes.
func thousand(t testing.TB) *web.Site {
	s := webtest.NewSite(t)
	webtest.Ask(s.Handler(), "POST", "/sample", url.Values{})
	for i := range 1000 {
		changeOnce(t, s, i)
	}
	return s
}

// changeOnce saves one value more: of the hoist, of the panels or of the load, turn about.
func changeOnce(t testing.TB, s *web.Site, i int) {
	ctx := t.Context()
	edit := store.Edit{Said: "Step " + strconv.Itoa(i)}
	p, err := s.Store.Project(ctx, 1)
	if err != nil {
		t.Fatal(err)
	}
	if i%3 == 2 {
		is := document.Clone(p.Value)
		is.Load.Appliances[0].Power = unit.Of(unit.Power(3 + i%50))
		edit.Revision = p.Revision
		_, err = s.Store.SaveProject(ctx, p.ID, is, edit, s.Now())
	} else {
		var vs []store.Saved[model.Variant]
		if vs, err = s.Store.Variants(ctx, p.ID); err != nil {
			t.Fatal(err)
		}
		v := vs[i%3]
		is := document.Clone(v.Value)
		if st := is.Stores[0]; st.Hoist != nil {
			st.Hoist.Travel = unit.Of(unit.Length(2 + float64(i)/1000))
		} else {
			is.Panels[0].Power = unit.Of(unit.Power(100 + i))
		}
		edit.Revision = v.Revision
		_, err = s.Store.SaveVariant(ctx, v.ID, is, edit, s.Now())
	}
	if err != nil {
		t.Fatal(err)
	}
}
