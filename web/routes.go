package web

import (
	"net/http"

	"github.com/go-chi/chi/v5"

	"duskweight/web/cells"
	"duskweight/web/cheapest"
	"duskweight/web/compare"
	"duskweight/web/history"
	"duskweight/web/hoist"
	"duskweight/web/load"
	"duskweight/web/overview"
	"duskweight/web/page"
	"duskweight/web/parts"
	"duskweight/web/place"
	"duskweight/web/projects"
	"duskweight/web/settings"
	"duskweight/web/sheet"
	"duskweight/web/shelf"
	"duskweight/web/sure"
	"duskweight/web/takes"
	"duskweight/web/trials"
	"duskweight/web/variant"
	"duskweight/web/water"
)

// Handler puts the rooms together: each is asked for its addresses. Nothing that is fetched by GET changes anything.
func (s *Site) Handler() http.Handler {
	r := s.guarded()
	if s.rescue != nil {
		s.rescueRoutes(r)
		return r
	}
	r.NotFound(s.Page(func(http.ResponseWriter, *http.Request) error { return page.ErrNotFound }))
	all, one := projects.New(s.Site), &variant.Pages{Site: s.Site}
	sure := &sure.Pages{Site: s.Site, EditVariant: one.EditVariant}
	r.Group(func(r chi.Router) { // files that are read in
		r.Use(s.onlySmallForms(page.ImportLimit))
		all.Uploads(r)
	})
	r.Group(func(r chi.Router) {
		r.Use(s.onlySmallForms(place.WeatherLimit))
		s.place.Uploads(r)
	})
	r.Group(func(r chi.Router) {
		r.Use(s.onlySmallForms(page.FormLimit))
		for _, room := range []interface{ Routes(chi.Router) }{
			all, s.guide, &settings.Pages{Site: s.Site}, &overview.Pages{Site: s.Site}, s.place, &load.Pages{Site: s.Site},
			&shelf.Pages{Site: s.Site}, &compare.Pages{Site: s.Site}, sure, one, &history.Pages{Site: s.Site}, &water.Pages{Site: s.Site},
		} {
			room.Routes(r)
		}
		r.Route("/projects/{project}/variants/{variant}", func(r chi.Router) {
			for _, room := range []interface{ OfVariant(chi.Router) }{
				one, &hoist.Pages{Site: s.Site}, &cells.Pages{Site: s.Site}, &water.Pages{Site: s.Site}, &trials.Pages{Site: s.Site}, &takes.Pages{Site: s.Site}, &cheapest.Pages{Site: s.Site},
				&parts.Pages{Site: s.Site}, sure, &sheet.Pages{Site: s.Site},
			} {
				room.OfVariant(r)
			}
		})
	})
	return r
}

// guarded is a router with what guards every page, and the files that they use.
func (s *Site) guarded() chi.Router {
	r := chi.NewRouter()
	r.Use(WithHeaders, s.onlyOwnHost, s.onlySmallHeaders, s.onlyOwnPages, headAsGet)
	r.MethodNotAllowed(s.Page(func(http.ResponseWriter, *http.Request) error { return page.ErrWrongMethod }))
	r.Get("/static/*", s.Page(s.ServeAsset))
	return r
}

// rescueRoutes are the pages while the data file is lost: its own one and the guide. Every other address leads to it.
func (s *Site) rescueRoutes(r chi.Router) {
	r.NotFound(s.Page(func(w http.ResponseWriter, r *http.Request) error {
		if !safe(r.Method) {
			return page.ErrNotFound
		}
		return page.SeeOther(w, r, "/")
	}))
	r.Group(func(r chi.Router) {
		r.Use(s.onlySmallForms(page.FormLimit))
		s.rescue.Routes(r)
		s.guide.Routes(r)
	})
}
