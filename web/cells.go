package web

import (
	"net/http"

	"duskweight/internal/model"
	"duskweight/internal/model/cell"
)

// The page Battery: /projects/{p}/variants/{v}/cells/{i}.

func (s *Site) cellsEditor(r *http.Request) (editor[model.Variant], error) {
	p, v, i, sys, err := s.storeOf(r, func(st model.Store) bool { return st.Cells != nil })
	if err != nil {
		return editor[model.Variant]{}, err
	}
	url := storeURL(p.ID, v.ID, i, "cells")
	e := s.variantEditor(r.Context(), p, v, url, "Battery")
	e.form.parts = within(model.StorePath(i, "cells"), func(v *model.Variant) *cell.Bank { return v.Stores[i].Cells }, cellsForm()...)
	labels := e.form.labels(v.Value)
	e.answer = func(v model.Variant) (answer, error) {
		view := cellsViewOf(s.grounds.of(p).Evaluate(v), i, sys, labels, url)
		return answer{first: view.Headline, facts: view.Facts, body: cellsResults(view)}, nil
	}
	return e, nil
}
