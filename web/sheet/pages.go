// Package sheet shows the plan sheet (…/sheet below a variant), one page of paper for the yard, and the two sheets beside
// it: the wiring (…/sheet/wiring) and the list of checks (…/sheet/checks).
package sheet

import (
	"fmt"
	"net/http"

	"github.com/go-chi/chi/v5"

	"duskweight/internal/model"
	"duskweight/internal/store"
	"duskweight/web/page"
)

// Pages are the pages of this room.
type Pages struct{ *page.Site }

// OfVariant hangs the pages below the address of the variant.
func (s *Pages) OfVariant(r chi.Router) {
	r.Get("/sheet", s.Page(s.showSheet))
	r.Get("/sheet/wiring", s.Page(s.showWiring))
	r.Get("/sheet/checks", s.Page(s.showCheckList))
}

// The page Plan sheet: /projects/{project}/variants/{variant}/sheet. One printed page for the yard.

func (s *Pages) showSheet(w http.ResponseWriter, r *http.Request) error {
	p, v, sys, err := s.VariantIn(r)
	if err != nil {
		return err
	}
	top, err := s.PaperTop(p, v)
	if err != nil {
		return err
	}
	view := sheetView{PaperTop: top, Back: page.VariantURL(p.ID, v.ID), Letter: r.URL.Query().Get("paper") == "letter", kinds: s.Tables.Stores}
	if view.Waits, err = s.RefusedEntries(r.Context(), p, v); err != nil {
		return err
	}
	result := s.Results.Of(p, v)
	years, err := s.Years.Of(r.Context(), p, []store.Saved[model.Variant]{v}, []model.VariantResult{result})
	if err != nil {
		return page.LeftOr(r, err)
	}
	view.Years = page.UsualAndBad(years[0])
	if years[0].Years == 0 && result.YearKnown {
		view.Unsure = fmt.Sprintf("%s/sure?v=%d", page.ProjectURL(p.ID), v.ID)
	}
	view = sheetOf(view, result, p.Value, v.Value, sys)
	return s.Show(w, r, http.StatusOK, page.Frame{Title: "Plan sheet: " + v.Value.Name, Paper: true}, sheetPage(view))
}
