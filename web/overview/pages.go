// Package overview shows the first page of a project (/projects/{project}): what it comes to, its variants, what to do
// next. The list of all projects is the room projects.
package overview

import (
	"net/http"
	"slices"
	"strconv"

	"github.com/go-chi/chi/v5"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web/page"
)

// Pages are the pages of this room.
type Pages struct{ *page.Site }

// Routes hangs the page at its address.
func (s *Pages) Routes(r chi.Router) {
	r.Get("/projects/{project}", s.Page(s.showOverview))
	r.Post("/projects/{project}", s.Page(s.keepNumbers))
	r.Post("/projects/{project}/try", s.Page(s.tryNumbers))
	r.Get("/projects/{project}/variants/said", s.Page(s.sendMenu))
	r.Get("/projects/{project}/{picture}.csv", s.Page(s.sendNumbers))
}

// asked is a project with its variants and what they come to.
type asked struct {
	project  store.Saved[model.Project]
	variants []store.Saved[model.Variant]
	results  []model.VariantResult
	ground   model.Ground
	sys      unit.System
	month    int // the present one, 0 for January
	focus    int // the variant of bars and day; −1 without any
}

// ask reads the project of the address and works its variants out.
func (s *Pages) ask(r *http.Request) (a asked, err error) {
	if a.project, err = s.Project(r); err != nil {
		return a, err
	}
	if a.variants, err = s.Store.Variants(r.Context(), a.project.ID); err != nil {
		return a, err
	}
	a.sys, err = s.Units(r.Context())
	a.ground, a.month = s.Grounds.Of(a.project), int(s.Now().Month())-1
	a.results = s.Results.All(a.project, a.variants)
	a.focus = a.focusOf(r.URL.Query().Get("v"))
	return a, err
}

// focusOf is the variant that is named by its number, or else the first that lifts something, or else the first.
func (a asked) focusOf(id string) int {
	if i := slices.IndexFunc(a.variants, func(v store.Saved[model.Variant]) bool { return strconv.FormatInt(v.ID, 10) == id }); i >= 0 {
		return i
	}
	if i := slices.IndexFunc(a.results, func(r model.VariantResult) bool { return r.Facts.Lifts }); i >= 0 {
		return i
	}
	return len(a.results[:min(1, len(a.results))]) - 1
}

func (s *Pages) showOverview(w http.ResponseWriter, r *http.Request) error {
	a, err := s.ask(r)
	if err != nil {
		return err
	}
	if r.URL.Query().Get(nameClass) == "1" {
		return s.showClass(w, r, a)
	}
	v := s.overviewOf(a)
	v.Sliders = s.sliders(a, nil, nil)
	return s.showView(w, r, http.StatusOK, a, v)
}

// showView shows the page of a project as it is stored.
func (s *Pages) showView(w http.ResponseWriter, r *http.Request, status int, a asked, v overviewView) error {
	p := a.project
	f, err := s.ProjectFrame(r.Context(), p, p.Value.Name, page.ProjectURL(p.ID))
	if err != nil {
		return err
	}
	f.Style, f.Script, f.Refused = "overview.css", "overview.js", status == http.StatusUnprocessableEntity
	v.Project = strconv.FormatInt(p.Revision, 10)
	if a.focus >= 0 {
		v.Keep, v.Variant = a.here(), strconv.FormatInt(a.variants[a.focus].Revision, 10)
		v.Try = page.ProjectURL(p.ID) + "/try" + v.Keep[len(page.ProjectURL(p.ID)):]
	}
	if v.Last, err = s.lastChanges(r.Context(), a); err != nil {
		return err
	}
	wait, err := s.RefusedEntries(r.Context(), p, a.variants...)
	if err != nil {
		return err
	}
	for _, on := range slices.Backward(wait) {
		v.Next = slices.Insert(v.Next, 0, nextView{Link: on.Link()})
	}
	return s.Show(w, r, status, f, overviewPage(v))
}

// sendNumbers sends the numbers behind the bars or the day.
func (s *Pages) sendNumbers(w http.ResponseWriter, r *http.Request) error {
	a, err := s.ask(r)
	if err != nil {
		return err
	}
	v := s.overviewOf(a)
	return page.SendPicture(w, r, slices.DeleteFunc([]page.PictureView{v.Bars.PictureView, v.Day.PictureView}, func(p page.PictureView) bool { return p.Numbers == nil }))
}
