package web

import (
	"net/http"

	"github.com/go-chi/chi/v5"
)

// Handler is the whole list of addresses. Nothing that is fetched by GET changes anything.
func (s *Site) Handler() http.Handler {
	r := chi.NewRouter()
	r.Use(withHeaders, s.onlyOwnHost, s.onlyOwnPages)
	r.NotFound(s.page(func(http.ResponseWriter, *http.Request) error { return errNotFound }))
	r.MethodNotAllowed(s.page(func(http.ResponseWriter, *http.Request) error { return errWrongMethod }))

	r.Get("/static/*", s.page(s.serveAsset))
	r.Head("/static/*", s.page(s.serveAsset))
	return r
}
