// Package shelf shows the page Parts shelf (/projects/{project}/shelf): motors, gears, drums, ropes and pulleys at hand,
// and which of them fit into a hoist (…/shelf/fits); panels and batteries, which are added to a variant.
package shelf

import (
	"net/http"
	"net/url"
	"strconv"
	"strings"

	"github.com/go-chi/chi/v5"

	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/store"
	"duskweight/web/form"
	"duskweight/web/page"
)

// Pages are the pages of this room.
type Pages struct{ *page.Site }

// Routes hangs the pages at their addresses.
func (s *Pages) Routes(r chi.Router) {
	r.Get("/shelf", s.Page(s.showAnyShelf))
	page.EditorAt(r, s.Site, "/projects/{project}/shelf", s.shelfEditor)
	r.Post("/projects/{project}/shelf/put", s.Page(s.shelveHoist))
	r.Post("/projects/{project}/shelf/put-home", s.Page(s.shelveHome))
	r.Post("/projects/{project}/shelf/add", s.Page(s.addSpare))
	long := r.With(page.InLine(1))
	long.Get("/projects/{project}/shelf/fits", s.Page(s.showFits))
	long.Get("/projects/{project}/shelf/fits/many", s.Page(s.sendFits))
	long.Get("/projects/{project}/shelf/fits.csv", s.Page(s.sendFitsCSV))
	long.Get("/projects/{project}/shelf/why.csv", s.Page(s.sendWhyCSV))
	r.Post("/projects/{project}/shelf/use", s.Page(s.useFit))
}

// The pages Parts shelf, /projects/{project}/shelf, and What fits, /projects/{project}/shelf/fits?v=3&i=0: every combination
// of the parts on the shelf, tried in one hoist of the project.

// showAnyShelf leads to the shelf of the only project, or to the projects.
func (s *Pages) showAnyShelf(w http.ResponseWriter, r *http.Request) error {
	all, err := s.Store.Projects(r.Context())
	if err != nil {
		return err
	}
	if len(all) == 1 {
		return page.SeeOther(w, r, page.ProjectURL(all[0].ID)+"/shelf")
	}
	return page.SeeOther(w, r, "/")
}

func (s *Pages) shelfEditor(r *http.Request) (page.Editor[model.Project], error) {
	e, _, err := s.ProjectEditor(r, "/shelf", "Parts shelf")
	if err != nil {
		return e, err
	}
	variants, err := s.Store.Variants(r.Context(), e.Saved.ID)
	if err != nil {
		return e, err
	}
	hoists := page.HoistsOf(variants)
	e.Form.Parts = form.Within("shelf", func(p *model.Project) *model.Shelf { return &p.Shelf }, ShelfForm()...)
	top := shelfTop{URL: e.Url, Revision: strconv.FormatInt(e.Saved.Revision, 10), Hoists: hoists, Empty: e.Saved.Value.Shelf.Parts() == 0, All: e.Url + "?" + nameAll + "=1",
		Homes: withHome(e.Saved.Value, variants), Variants: intosOf(variants)}
	at, open := spareOf(r, e.Saved.Value.Shelf)
	sys := e.Units
	e.Answer = func(p model.Project) (page.Answer, error) {
		v := shelfViewOf(p.Shelf, e.Url, hoists, sys)
		v.mark(at, open)
		return page.Answer{First: v.Headline, Body: shelfResults(v)}, nil
	}
	if r.URL.Query().Get(nameAll) != "" {
		e.Above = shelfTake(top)
		e.Card = func() string { return "?" + nameAll + "=1" }
		e.Next = func(url.Values) string { return "?" + nameAll + "=1" }
		return e, nil
	}
	onCards(&e, at, open, top)
	return e, nil
}

// hoistAsked is the hoist that a form or an address names, that of the variant changed last where it names none, and all there
// are.
func (s *Pages) hoistAsked(r *http.Request, project int64, q url.Values) (page.HoistAt, []page.HoistAt, error) {
	variants, err := s.Store.Variants(r.Context(), project)
	if err != nil {
		return page.HoistAt{}, nil, err
	}
	all := page.HoistsOf(variants)
	for _, h := range all {
		if h.VariantID() == q.Get("v") && (page.Itoa(h.I) == q.Get("i") || q.Get("i") == "") {
			return h, all, nil
		}
	}
	switch {
	case q.Get("v") != "":
		return page.HoistAt{}, nil, page.ErrNotFound
	case len(all) == 0:
		return page.HoistAt{}, nil, nil
	}
	last := all[0]
	for _, h := range all[1:] {
		if h.Variant.At.After(last.Variant.At) {
			last = h
		}
	}
	return last, all, nil
}

// hoistPosted reads a form that is about a hoist of the project, and the revision of the project that its page showed.
func (s *Pages) hoistPosted(r *http.Request) (p store.Saved[model.Project], h page.HoistAt, typed url.Values, revision int64, err error) {
	if p, err = s.Project(r); err != nil {
		return p, h, typed, revision, err
	}
	if typed, revision, err = page.PostedForm(r); err != nil {
		return p, h, typed, revision, err
	}
	h, all, err := s.hoistAsked(r, p.ID, typed)
	if err == nil && len(all) == 0 {
		err = page.ErrNotFound
	}
	return p, h, typed, revision, err
}

// shelveHoist puts the parts of a hoist on the shelf.
func (s *Pages) shelveHoist(w http.ResponseWriter, r *http.Request) error {
	p, h, _, revision, err := s.hoistPosted(r)
	if err != nil {
		return err
	}
	next, n := document.Clone(p.Value).Shelve(h.Variant.Value, h.I)
	if problems := model.CheckProject(next); len(problems) > 0 {
		return problems
	}
	if n > 0 {
		if _, err := s.Store.SaveProject(r.Context(), p.ID, next, store.Edit{Revision: revision, Said: page.Counted(n, "part") + " of " + h.Name + " put on the shelf"}, s.Now()); err != nil {
			return err
		}
	}
	return page.SeeOther(w, r, page.ProjectURL(p.ID)+"/shelf")
}

// nameOr is a name, or what kind of thing it is with its place where it has none.
func nameOr(name, kind string, i int) string {
	if name = strings.TrimSpace(name); name != "" {
		return name
	}
	return kind + " " + page.Itoa(i+1)
}
