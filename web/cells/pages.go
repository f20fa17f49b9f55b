// Package cells shows the page Battery (…/cells/{i} below a variant): what it holds and gives, its life, its size.
package cells

import (
	"net/http"
	neturl "net/url"

	"github.com/go-chi/chi/v5"

	"duskweight/internal/model"
	"duskweight/internal/model/cell"
	"duskweight/internal/model/unit"
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

// cellsPage is the editor of a battery with what its answer and the parts that follow it are made from.
type cellsPage struct {
	page.Editor[model.Variant]
	own      form.Form[model.Variant] // the inputs of the battery alone
	i        int                      // the store's place in its variant
	sys      unit.System
	labels   map[string]string // of the inputs, by path
	ground   func() model.Ground
	whole    func() model.VariantResult              // what the saved variant comes to
	evaluate func(model.Variant) model.VariantResult // what a typed one comes to
	links    func(model.Variant) func(path string) form.LinkView
	project  int64
}

func (s *Pages) cellsEditor(r *http.Request) (page.Editor[model.Variant], error) {
	p, v, i, sys, err := s.StoreOf(r, func(st model.Store) bool { return st.Cells != nil })
	if err != nil {
		return page.Editor[model.Variant]{}, err
	}
	url := page.StoreURL(p.ID, v.ID, i, "cells")
	h := &cellsPage{Editor: s.VariantEditor(r.Context(), p, v, sys, url, "Battery"), i: i, sys: sys, ground: func() model.Ground { return s.Grounds.Of(p) }, project: p.ID}
	h.Form.Parts = form.Within(model.CellsPath(i), func(v *model.Variant) *cell.Bank { return v.Stores[i].Cells }, CellsForm()...)
	h.own, h.Style = h.Form, "cells.css"
	h.whole = func() model.VariantResult { return s.Results.Of(p, v) }
	h.evaluate = func(w model.Variant) model.VariantResult { return s.Results.Typed(p, v, w) }
	at := benchAtOf(r, url)
	h.links = func(v model.Variant) func(string) form.LinkView {
		to := s.LinksOf(p, v, h.Saved.ID).To
		return func(path string) form.LinkView {
			if path == model.CellsPath(i) { // of the battery as a whole
				path = model.Join(path, "block_capacity_c")
			}
			if h.labels[path] != "" { // it has a card here
				return page.FieldLink(path, h.labels, url)
			}
			return to(path)
		}
	}
	if !at.all {
		h.Form.Parts = append(h.Form.Parts, s.Tables.Variant()...) // panels and controller have cards here, too
		h.Tidy = s.Tables.TidyVariant
		h.labels = h.Form.Labels(v.Value)
		h.onCards(at)
		return h.Editor, nil
	}
	h.labels = h.Form.Labels(v.Value)
	h.Card = at.query
	h.Next = func(neturl.Values) string { return at.query() }
	h.Answer = func(v model.Variant) (page.Answer, error) {
		result := h.evaluate(v)
		view := h.view(result, v)
		return page.Answer{First: view.Headline, Facts: view.Facts, Bands: page.StoreBands(result, i, sys, h.links(v)), Body: cellsResults(view)}, nil
	}
	return h.Editor, nil
}

// view prints the numbers of a variant.
func (h *cellsPage) view(result model.VariantResult, v model.Variant) cellsView {
	view := cellsViewOf(result, h.i, h.sys, h.labels, h.Url)
	view.Against = page.ReasonsOf(result.Stores[h.i].Because, h.sys, h.links(v))
	view.Against.Answered = page.AnsweredOf(h.own, v)
	return view
}
