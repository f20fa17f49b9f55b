package webtest

import (
	"net/http"
	"net/url"
	"strconv"
	"testing"

	"github.com/a-h/templ"
	"github.com/go-chi/chi/v5"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/store"
	"duskweight/web"
	"duskweight/web/form"
	"duskweight/web/formtest"
	"duskweight/web/page"
)

// PanelSite is a site with one editable page on the first variant of the sample.
func PanelSite(t *testing.T, s *web.Site) (http.Handler, int64) {
	t.Helper()
	p, err := s.Store.CreateProject(t.Context(), catalog.Sample(), "made", s.Now())
	if err != nil {
		t.Fatal(err)
	}
	vs, err := s.Store.Variants(t.Context(), p.ID)
	if err != nil {
		t.Fatal(err)
	}
	return PanelMux(s, vs[0].ID), vs[0].ID
}

func PanelMux(s *web.Site, id int64) http.Handler {
	mux := chi.NewRouter()
	page.EditorAt(mux, s.Site, "/panels", func(r *http.Request) (page.Editor[model.Variant], error) {
		v, err := s.Store.Variant(r.Context(), id)
		if err != nil {
			return page.Editor[model.Variant]{}, err
		}
		sys, err := s.Units(r.Context())
		return page.Editor[model.Variant]{
			Form: formtest.PanelForm(), Kind: store.VariantKind, Saved: v, Save: s.Store.SaveVariant, Units: sys, Url: "/panels", Frame: func() (page.Frame, error) { return page.Frame{Title: "Panels"}, nil },
			Answer: func(v model.Variant) (page.Answer, error) {
				first := strconv.Itoa(len(v.Panels)) + " groups of " + v.Name
				return page.Answer{First: first, Body: templ.Raw("<p data-headline>" + templ.EscapeString(first) + "</p>")}, nil
			},
		}, err
	})
	return mux
}

// page is the form as the browser has it.
func OpenForm(t *testing.T, s *web.Site, id int64) url.Values {
	t.Helper()
	v := Stored(t, s, id)
	typed := formtest.SentBack(formtest.PanelForm(), v.Value, 0)
	typed.Set(form.NameRevision, strconv.FormatInt(v.Revision, 10))
	typed.Set(form.NamePage, "page-of-test")
	return typed
}
