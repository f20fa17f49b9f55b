// Package load shows the page Night load (/projects/{project}/load): the lamps and devices of a night, what is always on,
// and when they burn.
package load

import (
	"net/http"

	"github.com/go-chi/chi/v5"

	"duskweight/internal/model"
	"duskweight/internal/model/load"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// Pages are the pages of this room.
type Pages struct{ *page.Site }

// Routes hangs the pages at their addresses.
func (s *Pages) Routes(r chi.Router) {
	page.EditorAt(r, s.Site, "/projects/{project}/load", s.loadEditor)
	r.Get("/projects/{project}/load/{picture}.csv", s.Page(s.sendLoadCSV))
}

// The page Night load: /projects/{project}/load.

func (s *Pages) loadEditor(r *http.Request) (page.Editor[model.Project], error) {
	e, sys, err := s.ProjectEditor(r, "/load", "Night load")
	if err != nil {
		return e, err
	}
	e.Form.Parts = form.Within("load", func(p *model.Project) *load.Load { return &p.Load }, LoadForm()...)
	labels := e.Form.Labels(e.Saved.Value)
	e.Answer = func(p model.Project) (page.Answer, error) {
		v := loadViewOf(model.Prepare(p), sys, labels, e.Url)
		return page.Answer{First: v.Headline, Facts: v.Facts, Body: loadResults(v)}, nil
	}
	return e, nil
}

// sendLoadCSV sends the numbers of one picture of the night load as it is saved.
func (s *Pages) sendLoadCSV(w http.ResponseWriter, r *http.Request) error {
	p, err := s.Project(r)
	if err != nil {
		return err
	}
	return page.SendPicture(w, r, loadViewOf(s.Grounds.Of(p), unit.Metric, nil, "").Pictures)
}
