package web

import (
	"net/http"

	"duskweight/internal/model"
	"duskweight/internal/model/load"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
)

// The page Night load: /projects/{project}/load.

func (s *Site) loadEditor(r *http.Request) (editor[model.Project], error) {
	e, sys, err := s.projectEditor(r, "/load", "Night load")
	if err != nil {
		return e, err
	}
	e.form.parts = within("load", func(p *model.Project) *load.Load { return &p.Load }, loadForm()...)
	labels := e.form.labels(e.saved.Value)
	e.answer = func(p model.Project) (answer, error) {
		v := loadViewOf(model.Prepare(p), sys, labels, e.url)
		return answer{first: v.Headline, facts: v.Facts, body: loadResults(v)}, nil
	}
	return e, nil
}

// projectEditor is an editor of a project; the caller adds its form and its answer.
func (s *Site) projectEditor(r *http.Request, path, title string) (editor[model.Project], unit.System, error) {
	p, err := s.project(r)
	if err != nil {
		return editor[model.Project]{}, 0, err
	}
	sys, err := s.units(r.Context())
	if err != nil {
		return editor[model.Project]{}, 0, err
	}
	url := projectURL(p.ID) + path
	return editor[model.Project]{
		kind: store.ProjectKind, saved: p, save: s.Store.SaveProject, url: url,
		frame: func() (frame, error) { return s.projectFrame(r.Context(), p, title, url) },
		form:  form[model.Project]{origins: func(p *model.Project) *model.Origins { return &p.Origins }, check: model.CheckProject},
	}, sys, nil
}

// sendLoadCSV sends the numbers of one picture of the night load as it is saved.
func (s *Site) sendLoadCSV(w http.ResponseWriter, r *http.Request) error {
	p, err := s.project(r)
	if err != nil {
		return err
	}
	return sendPicture(w, r, loadViewOf(s.grounds.of(p), unit.Metric, nil, "").Pictures)
}
