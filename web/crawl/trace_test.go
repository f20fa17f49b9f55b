package crawl_test

import (
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"testing"
	"time"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web/form"
	"duskweight/web/hoist"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// BenchmarkTrace follows one number of the lifted mass from the form that was sent to the page that answers: both requests
// whole, and each hop of them alone, half of them within the time that is told. What a request has besides its hops is its
// page: strings, HTML and the words that lead to the guide.
func BenchmarkTrace(b *testing.B) {
	s := webtest.NewSite(b)
	p, vs := webtest.Create(b, s, "sample", catalog.Sample())
	v, at := vs[0], page.StoreURL(p.ID, vs[0].ID, 0, "hoist")
	h := s.Handler()
	const field = "stores[0].hoist.travel_m"
	sent, _ := webtest.FormAt(b, webtest.Ask(h, "GET", at, nil).Body.String(), at)
	travel := func(i int) string { return strconv.FormatFloat(4+float64(i%100)/100, 'g', -1, 64) }
	f := form.Form[model.Variant]{
		Parts:   form.Within(model.HoistPath(0), func(v *model.Variant) *lift.Hoist { return v.Stores[0].Hoist }, hoist.HoistForm()...),
		Origins: func(v *model.Variant) *model.Origins { return &v.Origins }, Check: model.CheckVariant,
	}
	fresh := func() model.Variant { return must(s.Store.Variant(b.Context(), v.ID)).Value }
	ground := model.Prepare(p.Value)
	var took [8][]time.Duration
	clock := func(hop int, do func()) {
		begun := time.Now()
		do()
		took[hop] = append(took[hop], time.Since(begun))
	}
	for i := 0; b.Loop(); i++ {
		clock(0, func() {
			now := must(s.Store.Variant(b.Context(), v.ID))
			sent.Set(form.NameRevision, strconv.FormatInt(now.Revision, 10))
			sent.Set(field, travel(2*i))
			if w := webtest.Ask(h, "POST", at, sent); w.Code != http.StatusSeeOther {
				b.Fatal(w.Code, w.Body)
			}
		})
		clock(1, func() {
			if w := webtest.Ask(h, "GET", at, nil); w.Code != http.StatusOK {
				b.Fatal(w.Code)
			}
		})
		was, is := fresh(), fresh()
		typed := url.Values{}
		for name, values := range sent {
			typed[name] = values
		}
		typed.Set(field, travel(2*i+1))
		clock(2, func() {
			if ps := f.Read(typed, &is, unit.Metric); len(ps) > 0 {
				b.Fatal(ps)
			}
		})
		var diffs []form.Difference
		clock(3, func() { diffs = f.Differences(was, is, unit.Metric) })
		now := must(s.Store.Variant(b.Context(), v.ID))
		clock(4, func() {
			must(s.Store.SaveVariant(b.Context(), v.ID, is, store.Edit{Revision: now.Revision, Said: form.Said(diffs)}, s.Now()))
		})
		clock(5, func() {
			if _, _, err := s.Store.Design(b.Context(), p.ID, v.ID); err != nil {
				b.Fatal(err)
			}
			must(s.Store.Settings(b.Context()))
		})
		clock(6, func() { ground.Evaluate(is) })
		clock(7, func() { f.View(&is, nil, nil, unit.Metric) })
	}
	for hop, name := range []string{"POST", "GET", "decode+check", "differences", "save", "read", "evaluate", "form-view"} {
		slices.Sort(took[hop])
		b.ReportMetric(ms(took[hop][len(took[hop])/2]), name+"-ms")
	}
}

// must returns what was read or saved; a benchmark without it means nothing.
func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}
