// Package cells shows the page Battery (…/cells/{i} below a variant): what it holds and gives, its life, its size.
package cells

import (
	"net/http"

	"github.com/go-chi/chi/v5"

	"duskweight/internal/model"
	"duskweight/internal/model/cell"
	"duskweight/web/form"
	"duskweight/web/page"
)

// Pages are the pages of this room.
type Pages struct{ *page.Site }

// OfVariant hangs the pages below the address of the variant. Without a number it is the first battery.
func (s *Pages) OfVariant(r chi.Router) {
	page.EditorAt(r, s.Site, "/cells", s.cellsEditor)
	page.EditorAt(r, s.Site, "/cells/{i}", s.cellsEditor)
}

// The page Battery: /projects/{p}/variants/{v}/cells/{i}.

func (s *Pages) cellsEditor(r *http.Request) (page.Editor[model.Variant], error) {
	p, v, i, sys, err := s.StoreOf(r, func(st model.Store) bool { return st.Cells != nil })
	if err != nil {
		return page.Editor[model.Variant]{}, err
	}
	url := page.StoreURL(p.ID, v.ID, i, "cells")
	e := s.VariantEditor(r.Context(), p, v, sys, url, "Battery")
	e.Form.Parts = form.Within(model.CellsPath(i), func(v *model.Variant) *cell.Bank { return v.Stores[i].Cells }, CellsForm()...)
	labels := e.Form.Labels(v.Value)
	e.Answer = func(v model.Variant) (page.Answer, error) {
		result, links := s.Results.Typed(p, e.Saved, v), s.LinksOf(p, v, e.Saved.ID)
		view := cellsViewOf(result, i, sys, labels, url)
		view.Against = page.ReasonsOf(result.Stores[i].Because, sys, links.To)
		view.Against.Answered = page.AnsweredOf(e.Form, v)
		return page.Answer{First: view.Headline, Facts: view.Facts, Bands: page.StoreBands(result, i, sys, links.To), Body: cellsResults(view)}, nil
	}
	return e, nil
}
