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
	"duskweight/internal/model/panel"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web"
	"duskweight/web/form"
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
			Form: PanelForm(), Kind: store.VariantKind, Saved: v, Save: s.Store.SaveVariant, Units: sys, Url: "/panels", Frame: func() (page.Frame, error) { return page.Frame{Title: "Panels"}, nil },
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
	typed := SentBack(PanelForm(), v.Value, 0)
	typed.Set(form.NameRevision, strconv.FormatInt(v.Revision, 10))
	typed.Set(form.NamePage, "page-of-test")
	return typed
}

// PanelForm is a small form of a variant, with a list, a fold, a choice and a typical value.
func PanelForm() form.Form[model.Variant] {
	gamma := func(a *panel.Array) *unit.Known[unit.PerKelvin] { return &a.Gamma }
	return form.Form[model.Variant]{
		Parts: []form.Part[model.Variant]{
			form.Text("name", "Name", func(v *model.Variant) *string { return &v.Name }),
			form.Rows("panels", "Panels", "group of panels", 3, func(v *model.Variant) *[]panel.Array { return &v.Panels }, panel.Array{Name: "new"},
				form.Text("name", "Place", func(a *panel.Array) *string { return &a.Name }),
				form.Number("count", "How many", unit.Counts, func(a *panel.Array) *unit.Known[unit.Count] { return &a.Count }),
				form.Number("panel_w", "Power of one", unit.Powers, func(a *panel.Array) *unit.Known[unit.Power] { return &a.Power }),
				form.Folded("Heat", "",
					form.Number("gamma_per_k", "Change with temperature", unit.PerKelvins, gamma),
					form.Word("cell_temperature", "Method for the cell temperature", func(a *panel.Array) *panel.CellModel { return &a.Cell }))),
		},
		Origins: func(v *model.Variant) *model.Origins { return &v.Origins },
		Check:   model.CheckVariant,
	}
}

func OneVariant() model.Variant {
	return model.Variant{
		Name: "A", Controller: panel.Controller{Kind: panel.ControllerTracking},
		Panels: []panel.Array{
			{Name: "roof", Count: unit.Of[unit.Count](2), Power: unit.Of[unit.Power](100), Cell: panel.CellFaiman},
			{Name: "wall", Count: unit.Of[unit.Count](1), Power: unit.Of[unit.Power](50), Gamma: unit.Of[unit.PerKelvin](-0.004), Cell: panel.CellFaiman},
		},
		Origins: model.Origins{"panels[1].gamma_per_k": {Kind: model.OriginTypical, Source: "x"}, "panels[0].count": {Kind: model.OriginTypical}},
	}
}

// SentBack is what a browser sends when nobody typed anything.
func SentBack(f form.Form[model.Variant], v model.Variant, sys unit.System) url.Values {
	typed := url.Values{}
	var collect func([]form.PartView)
	collect = func(parts []form.PartView) {
		for _, p := range parts {
			switch {
			case p.Field != nil:
				typed.Set(p.Field.Path, p.Field.Value)
			case p.Group != nil:
				collect(p.Group.Parts)
			case p.List != nil:
				typed.Set(p.List.Path+form.RowsSuffix, page.Itoa(p.List.Count))
				for _, r := range p.List.Rows {
					collect(r.Parts)
				}
			}
		}
	}
	collect(f.View(&v, nil, nil, sys).Parts)
	return typed
}
