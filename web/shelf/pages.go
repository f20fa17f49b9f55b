// Package shelf shows the page Parts shelf (/projects/{project}/shelf): motors, gears, drums, ropes and pulleys at hand,
// and which of them fit into a hoist (…/shelf/fits).
package shelf

import (
	"net/http"
	"net/url"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/go-chi/chi/v5"

	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/search"
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
	r.Get("/projects/{project}/shelf/fits", s.Page(s.showFits))
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
	e.Above = shelfAbove(shelfTop{URL: e.Url, Revision: strconv.FormatInt(e.Saved.Revision, 10), Hoists: hoists, Empty: e.Saved.Value.Shelf.Parts() == 0})
	e.Answer = func(p model.Project) (page.Answer, error) {
		v := shelfViewOf(p.Shelf, e.Url, hoists)
		return page.Answer{First: v.Headline, Body: shelfResults(v)}, nil
	}
	return e, nil
}

// hoistAsked is the hoist that a form or an address names, the first where it names none, and all there are.
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
	return all[0], all, nil
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

// fitsWait is the longest that a search through a shelf may take.
const fitsWait = 20 * time.Second

func (s *Pages) showFits(w http.ResponseWriter, r *http.Request) error {
	p, err := s.Project(r)
	if err != nil {
		return err
	}
	sys, err := s.Units(r.Context())
	if err != nil {
		return err
	}
	at := page.ProjectURL(p.ID) + "/shelf"
	h, all, err := s.hoistAsked(r, p.ID, r.URL.Query())
	if err != nil {
		return err
	}
	f, err := s.ProjectFrame(r.Context(), p, "What fits", at)
	if err != nil {
		return err
	}
	if len(all) == 0 {
		return s.Show(w, r, http.StatusOK, f, fitsPage(fitsView{Back: at, Say: "No variant of this project has a lifted mass yet. Add one to a variant, then come back."}))
	}
	_ = http.NewResponseController(w).SetWriteDeadline(time.Now().Add(fitsWait)) // it is not a slow reader, it is a long search
	fits, err := search.FitsOf(r.Context(), s.Grounds.Of(p), p.Value, h.Variant.Value, h.I, runtime.GOMAXPROCS(0))
	if err != nil {
		return page.LeftOr(r, err)
	}
	f.Title = "What fits in " + h.Name
	view := fitsViewOf(fits, p.Value.Shelf, sys)
	now := s.Grounds.Of(p).Evaluate(h.Variant.Value)
	view.Bands = page.StoreBands(now, h.I, sys, s.LinksOf(p, h.Variant.Value, h.Variant.ID).To)
	view.Bands[0].Of = "The hoist that the parts are tried in:"
	view.choose(at, h, all, p.Revision)
	return s.Show(w, r, http.StatusOK, f, fitsPage(view))
}

// useFit makes a new variant with a combination of parts; the one that it was tried in stays.
func (s *Pages) useFit(w http.ResponseWriter, r *http.Request) error {
	p, h, typed, revision, err := s.hoistPosted(r)
	if err != nil {
		return err
	}
	if revision != p.Revision || typed.Get("variant") != strconv.FormatInt(h.Variant.Revision, 10) {
		return store.ErrStale
	}
	c, ok := combinationOf(typed.Get("parts"), p.Value.Shelf)
	if !ok {
		return page.BadRequest("These parts are not on the shelf.")
	}
	variants, err := s.Store.Variants(r.Context(), p.ID)
	if err != nil {
		return err
	}
	next := document.Clone(c.With(p.Value, h.Variant.Value, h.I))
	next.Name = page.FreeName(variants, h.Variant.Value.Name)
	next.Parts = withoutReplaced(next.Parts, c)
	if problems := model.CheckVariant(next); len(problems) > 0 {
		return problems
	}
	made, err := s.Store.CreateVariant(r.Context(), p.ID, next, "Copied from "+h.Variant.Value.Name+", with parts of the shelf", s.Now())
	if err != nil {
		return err
	}
	return page.SeeOther(w, r, page.StoreURL(p.ID, made.ID, h.I, "hoist"))
}

// withoutReplaced takes the parts that a combination replaces from a list of parts, as far as the list says what they are.
func withoutReplaced(parts []cost.Part, c model.Combination) []cost.Part {
	gone := map[string]bool{"motor": c.Motor != model.Own, "gear": c.Stages != nil, "drum": c.Drum != model.Own, "rope": c.Rope != model.Own, "pulley": c.Pulley != model.Own}
	return slices.DeleteFunc(parts, func(p cost.Part) bool { return gone[string(p.As)] })
}

// written is a combination in the form of a page: motor, drum, rope, pulley, and the stages; -1 for the hoist's own.
func written(c model.Combination) string {
	var b strings.Builder
	for _, n := range []int{c.Motor, c.Drum, c.Rope, c.Pulley} {
		b.WriteString(page.Itoa(n) + " ")
	}
	for _, n := range c.Stages {
		b.WriteString(page.Itoa(n) + " ")
	}
	return strings.TrimSpace(b.String())
}

// combinationOf reads what written wrote; false where a part is not on the shelf.
func combinationOf(text string, s model.Shelf) (c model.Combination, ok bool) {
	ns := []int{}
	for word := range strings.FieldsSeq(text) {
		n, err := strconv.Atoi(word)
		if err != nil || len(ns) > 20 {
			return c, false
		}
		ns = append(ns, n)
	}
	if len(ns) < 4 {
		return c, false
	}
	for i, n := range ns {
		least, most := model.Own, len(s.Stages)
		if i < 4 {
			most = []int{len(s.Motors), len(s.Drums), len(s.Ropes), len(s.Pulleys)}[i]
		} else {
			least = 0
		}
		if n < least || n >= most {
			return c, false
		}
	}
	c = model.Combination{Motor: ns[0], Drum: ns[1], Rope: ns[2], Pulley: ns[3]}
	if len(ns) > 4 {
		c.Stages = ns[4:]
	}
	return c, true
}

// nameOr is a name, or what kind of thing it is with its place where it has none.
func nameOr(name, kind string, i int) string {
	if name = strings.TrimSpace(name); name != "" {
		return name
	}
	return kind + " " + page.Itoa(i+1)
}
