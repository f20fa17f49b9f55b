// Package cheapest shows the page Cheapest variant (…/cheapest below a variant): what other numbers of panels and other sizes of
// the stores cost against their full nights, the best of them, and each as a new variant in one step.
package cheapest

import (
	"encoding/json"
	"fmt"
	"math"
	"net/http"
	"net/url"
	"runtime"
	"strconv"
	"sync"
	"time"

	"github.com/go-chi/chi/v5"

	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/search"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web/page"
)

// Pages are the pages of this room.
type Pages struct {
	*page.Site

	mu   sync.Mutex
	kept []keptSearch // the last one asked for stands first
}

// OfVariant hangs the pages below the address of the variant.
func (s *Pages) OfVariant(r chi.Router) {
	long := r.With(page.InLine(1))
	long.Get("/cheapest", s.Page(s.show))
	long.Get("/cheapest/many", s.Page(s.send))
	long.Get("/cheapest.csv", s.Page(s.sendCSV))
	r.Post("/cheapest", s.Page(s.make))
}

// searchWaits is how long a search may take: thousands of years with a lifted mass on an old computer.
const searchWaits = 5 * time.Minute

// asked is the variant of the address, and what is needed to search and to show.
type asked struct {
	project store.Saved[model.Project]
	variant store.Saved[model.Variant]
	sys     unit.System
	ground  model.Ground
}

func (s *Pages) asked(r *http.Request) (a asked, err error) {
	if a.project, a.variant, a.sys, err = s.VariantIn(r); err == nil {
		a.ground = s.Grounds.Of(a.project)
	}
	return a, err
}

func (a asked) url() string { return page.VariantURL(a.project.ID, a.variant.ID) + "/cheapest" }

// keptSearch is what was found for a variant of a project, as both were then.
type keptSearch struct {
	project, variant     int64 // revisions
	ofProject, ofVariant int64
	found                search.Cheapest
}

// searchesKept is how many of them are kept: a few kilobytes each.
const searchesKept = 8

func (a asked) key() keptSearch {
	return keptSearch{project: a.project.Revision, variant: a.variant.Revision, ofProject: a.project.ID, ofVariant: a.variant.ID}
}

// of is what was found already.
func (s *Pages) of(a asked) (search.Cheapest, bool) {
	s.mu.Lock()
	defer s.mu.Unlock()
	want := a.key()
	for _, k := range s.kept {
		found := k.found
		if k.found = (search.Cheapest{}); k.project == want.project && k.variant == want.variant && k.ofProject == want.ofProject && k.ofVariant == want.ofVariant {
			return found, true
		}
	}
	return search.Cheapest{}, false
}

// search searches, or takes what was found before. Nobody changes what it returns.
func (s *Pages) search(r *http.Request, a asked, progress func(done, of int)) (search.Cheapest, error) {
	if found, there := s.of(a); there {
		return found, nil
	}
	found, err := search.CheapestOf(r.Context(), a.ground, a.variant.Value, runtime.GOMAXPROCS(0), progress)
	if err != nil {
		return found, err
	}
	k := a.key()
	k.found = found
	s.mu.Lock()
	defer s.mu.Unlock()
	s.kept = append([]keptSearch{k}, s.kept[:min(len(s.kept), searchesKept-1)]...)
	return found, nil
}

// show shows what was found already. Else the page asks for it at once and shows a bar; without scripts a button asks for it,
// ?run=1, and the page comes when all is done.
func (s *Pages) show(w http.ResponseWriter, r *http.Request) error {
	a, err := s.asked(r)
	if err != nil {
		return err
	}
	f, err := s.VariantFrame(r.Context(), a.project, a.variant, "Cheapest variant", a.url())
	if err != nil {
		return err
	}
	f.Style, f.Script = "cheapest.css", "many.js"
	found, there := s.of(a)
	if !there && r.URL.Query().Get("run") != "" {
		_ = http.NewResponseController(w).SetWriteDeadline(time.Now().Add(searchWaits)) // it is not a slow reader, it is a long sum
		found, err = s.search(r, a, nil)
		if r.Context().Err() != nil {
			return nil // the page was left
		}
		if err != nil {
			return err
		}
		there = true
	}
	v := view{URL: a.url()}
	if there {
		v = s.view(a, found)
	}
	return s.Show(w, r, http.StatusOK, f, cheapestPage(v))
}

// line is one line of the answer that comes bit by bit.
type line struct {
	Done int    `json:"done"`
	Of   int    `json:"of"`
	HTML string `json:"html,omitempty"`
	URL  string `json:"url,omitempty"`
}

// beat is how often progress is told.
const beat = 100 * time.Millisecond

// send searches and tells how far it is; who leaves the page or stops it ends the work.
func (s *Pages) send(w http.ResponseWriter, r *http.Request) error {
	a, err := s.asked(r)
	if err != nil {
		return err
	}
	w.Header().Set("Content-Type", "application/x-ndjson")
	out, to := json.NewEncoder(w), http.NewResponseController(w)
	_ = to.SetWriteDeadline(time.Now().Add(searchWaits))
	tell := func(l line) {
		_ = out.Encode(l) // a browser that left ends the context
		_ = to.Flush()
	}
	var last time.Time
	found, err := s.search(r, a, func(done, of int) {
		if now := time.Now(); now.Sub(last) > beat {
			last = now
			tell(line{Done: done, Of: of})
		}
	})
	if err != nil {
		return nil // stopped: what was sent stands
	}
	part, err := page.Rendered(r, results(s.view(a, found)))
	if err != nil {
		return err
	}
	tell(line{Done: found.Tried, Of: max(found.Tried, 1), HTML: string(s.Words.Link(part, true)), URL: a.url()})
	return nil
}

// sendCSV sends the plans of the front.
func (s *Pages) sendCSV(w http.ResponseWriter, r *http.Request) error {
	a, err := s.asked(r)
	if err != nil {
		return err
	}
	found, err := s.search(r, a, nil)
	if err != nil {
		return err
	}
	if len(found.Front) == 0 {
		return page.ErrNotFound
	}
	t := page.SheetOfNumbers{Name: "cheapest", Head: []string{"panels", "blocks", "factor of the store", "tilt, °", "full nights", "of", "full nights, bad year", "cost", "low", "high"}}
	for _, p := range found.Front {
		t.Rows = append(t.Rows, []any{p.Panels, p.Blocks, p.Factor, float64(p.Tilt) * 180 / math.Pi, p.Nights, found.Nights, page.OrNone(p.Bad), page.OrNone(p.Cost), page.OrNone(p.Low), page.OrNone(p.High)})
	}
	return page.SendCSV(w, t)
}

// make makes a plan of the search a new variant, a copy of this one with the plan's panels, stores and list of parts.
func (s *Pages) make(w http.ResponseWriter, r *http.Request) error {
	a, err := s.asked(r)
	if err != nil {
		return err
	}
	if err := page.ParseForm(r); err != nil {
		return err
	}
	c, err := choiceOf(r.PostForm)
	if err != nil {
		return err
	}
	base := document.Clone(a.variant.Value)
	v, ok := search.Made(a.ground, base, c)
	if !ok {
		return page.BadRequest("This plan is not among those that were tried. Open the page Cheapest variant again.")
	}
	for _, st := range v.Stores {
		if k := s.Tables.Stores.Of(st.Kind()); k.Copied != nil {
			k.Copied(st)
		}
	}
	all, err := s.Store.Variants(r.Context(), a.project.ID)
	if err != nil {
		return err
	}
	if v.Name = planName(a.words(c), c); named(all, v.Name) {
		v.Name = page.FreeName(all, v.Name)
	}
	if problems := model.CheckVariant(v); len(problems) > 0 {
		return problems
	}
	saved, err := s.Store.CreateVariant(r.Context(), a.project.ID, v, "Plan made from "+a.variant.Value.Name, s.Now())
	if err != nil {
		return err
	}
	return page.SeeOther(w, r, page.VariantURL(a.project.ID, saved.ID))
}

func named(all []store.Saved[model.Variant], name string) bool {
	for _, v := range all {
		if v.Value.Name == name {
			return true
		}
	}
	return false
}

// choiceOf reads a plan from its button; exact, as its page wrote it.
func choiceOf(typed url.Values) (c search.Choice, err error) {
	number := func(name string) float64 {
		v, e := strconv.ParseFloat(typed.Get(name), 64)
		if e != nil {
			err = page.BadRequest("This page has no such button.")
		}
		return v
	}
	c = search.Choice{Panels: int(number("panels")), Blocks: int(number("blocks")), Factor: number("factor"), Tilt: unit.Angle(number("tilt")), Turned: typed.Get("turned") == "yes"}
	return c, err
}

// exact writes a number so that it is read back to the last bit.
func exact(v float64) string { return fmt.Sprint(v) }
