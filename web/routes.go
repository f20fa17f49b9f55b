package web

import (
	"net/http"

	"github.com/go-chi/chi/v5"
	"github.com/go-chi/chi/v5/middleware"
)

// Handler is the whole list of addresses. Nothing that is fetched by GET changes anything.
func (s *Site) Handler() http.Handler {
	r := chi.NewRouter()
	r.Use(withHeaders, s.onlyOwnHost, s.onlyOwnPages, middleware.GetHead)
	r.NotFound(s.page(func(http.ResponseWriter, *http.Request) error { return errNotFound }))
	r.MethodNotAllowed(s.page(func(http.ResponseWriter, *http.Request) error { return errWrongMethod }))

	r.Get("/static/*", s.page(s.serveAsset))

	r.Group(func(r chi.Router) { // files that are read in
		r.Use(s.onlySmallForms(importLimit))
		r.Post("/import", s.page(s.importProject))
	})
	r.Group(func(r chi.Router) {
		r.Use(s.onlySmallForms(formLimit))
		r.Get("/", s.page(s.showProjects))
		r.Post("/sample", s.page(s.addSample))

		r.Get("/settings", s.page(s.showSettings))
		r.Post("/settings", s.page(s.saveSettings))
		r.Post("/settings/copy", s.page(s.makeCopy))
		r.Post("/settings/download", s.page(s.downloadAll))
		r.Get("/settings/copies/{copy}", s.page(s.downloadCopy))

		r.Get("/projects/{project}/export.json", s.page(s.exportProject))
		r.Get("/projects/{project}/history", s.page(s.showHistory))
		r.Post("/projects/{project}/delete", s.page(s.deleteProject))
		r.Post("/projects/{project}/restore", s.page(s.restoreProject))
		r.Post("/projects/{project}/undo", s.page(s.undo))
		r.Post("/projects/{project}/redo", s.page(s.redo))
	})
	return r
}
