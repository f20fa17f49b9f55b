// Package sure shows the page How sure (/projects/{project}/sure): a hundred and more years of weather, what is promised
// of them and what moves it; and the range that stands beside other answers (…/sure/said).
package sure

import (
	"context"
	"encoding/json"
	"fmt"
	"math"
	"net/http"
	"net/url"
	"runtime"
	"strconv"
	"time"

	"github.com/go-chi/chi/v5"

	"duskweight/internal/model"
	"duskweight/internal/model/search"
	"duskweight/internal/model/unit"
	"duskweight/internal/model/year"
	"duskweight/internal/store"
	"duskweight/web/page"
)

// Pages are the pages of this room.
type Pages struct {
	*page.Site
	// EditVariant makes the editor of a variant that was read already.
	EditVariant func(r *http.Request, p store.Saved[model.Project], v store.Saved[model.Variant], sys unit.System) (page.Editor[model.Variant], error)

	known page.Shared[string, sureKnown]
}

// sureKnown is what some years of some variants come to. It is shared and not changed.
type sureKnown struct {
	search.Sure
	beside
}

// Routes hangs the pages of a project at their addresses.
func (s *Pages) Routes(r chi.Router) {
	r.Get("/projects/{project}/sure", s.Page(s.showSure))
	r.Get("/projects/{project}/sure/years.csv", s.Page(s.sendYearsCSV))
	r.With(page.InLine(1)).Get("/projects/{project}/sure/many", s.Page(s.sendSure))
	r.Get("/projects/{project}/sure/said", s.Page(s.sendRange))
	r.With(page.InLine(1)).Get("/projects/{project}/sure/moves", s.Page(s.sendMoves))
}

// OfVariant hangs the second answer of a variant below the address of the variant.
func (s *Pages) OfVariant(r chi.Router) {
	r.Get("/sure", s.Page(s.showVariantSure))
	r.Post("/sure", s.Page(s.tryVariantSure))
}

// The page How sure: /projects/{project}/sure?v=1&v=2&n=200&parts=yes. Many weather years for up to four variants. With
// scripts the numbers come as they are made, from …/sure/many, and a button stops them; without, the page comes when all
// is done. Who leaves the page stops the work.

const (
	manyYears = 1000
	fewYears  = 10
)

// sureAsked is what the address asks for, and what is needed to answer.
type sureAsked struct {
	project     store.Saved[model.Project]
	all, chosen []store.Saved[model.Variant]
	n           int
	parts       bool
	sys         unit.System
}

func (s *Pages) sureAsked(r *http.Request) (a sureAsked, err error) {
	if a.project, a.all, a.chosen, err = s.Chosen(r); err != nil {
		return a, err
	}
	q := r.URL.Query()
	if a.n, err = yearsAsked(q.Get("n"), a.project.Value.MadeYears()); err != nil {
		return a, err
	}
	a.parts = q.Get("parts") == "yes"
	a.sys, err = s.Units(r.Context())
	return a, err
}

// besides are the years that stand beside those asked for: the made ones, or those behind the files.
func (a sureAsked) besides(ctx context.Context) (b beside, err error) {
	if a.parts {
		return b, nil
	}
	if b.band, err = search.Band(ctx, a.project.Value, values(a.chosen), runtime.GOMAXPROCS(0)); err != nil {
		return b, err
	}
	b.typical, err = search.Typical(ctx, a.project.Value, values(a.chosen))
	return b, err
}

// key names all that the answer depends on.
func (s *Pages) key(a sureAsked) string {
	key := fmt.Sprint(a.n, a.parts)
	for _, v := range a.chosen {
		key += fmt.Sprint(s.Results.Key(a.project, v))
	}
	return key
}

// years works all the years out that are asked for, or has them from whoever asked the same before.
func (s *Pages) years(ctx context.Context, a sureAsked) (sureKnown, error) {
	return s.known.Of(ctx, s.key(a), func(ctx context.Context) (k sureKnown, err error) {
		if k.beside, err = a.besides(ctx); err != nil {
			return k, err
		}
		run := search.NewRun(a.project.Value, values(a.chosen), a.parts)
		err = run.Until(ctx, a.n, runtime.GOMAXPROCS(0), nil)
		k.Sure = run.Sure()
		return k, err
	})
}

// keep keeps the years for other pages, where they are all of the project's and parts are exactly as typed.
func (s *Pages) keep(a sureAsked, sure search.Sure) {
	if !a.parts && a.n == a.project.Value.MadeYears() {
		s.Years.Keep(a.project, a.chosen, sure)
	}
}

// view is what the years so far come to.
func (a sureAsked) view(k sureKnown, took time.Duration) sureView {
	sure := k.Sure
	v := sureOf(sure, k.beside, a.project.Value, a.sys)
	v.choose(page.ProjectURL(a.project.ID)+"/sure", a)
	v.Moves = a.moves(sure)
	if at, ok := leadOf(sure); ok && !a.parts && len(v.Rows) > 0 {
		v.Later = fmt.Sprintf("%s/sure/moves?v=%d", page.ProjectURL(a.project.ID), a.chosen[at].ID)
	}
	v.CSV = page.ProjectURL(a.project.ID) + "/sure/years.csv?" + a.query(a.n).Encode()
	v.timed(sure.Years, took)
	return v
}

func (s *Pages) showSure(w http.ResponseWriter, r *http.Request) error {
	a, err := s.sureAsked(r)
	if err != nil {
		return err
	}
	address := page.ProjectURL(a.project.ID) + "/sure"
	f, err := s.ProjectFrame(r.Context(), a.project, "How sure", page.ProjectURL(a.project.ID)+"/compare")
	if err != nil {
		return err
	}
	f.Steps.Back, f.Style, f.Script = address, "sure.css", "many.js"
	began := time.Now()
	_ = http.NewResponseController(w).SetWriteDeadline(began.Add(sureWaits)) // it is not a slow reader, it is a long sum
	known, err := s.years(r.Context(), a)
	if err != nil {
		return page.LeftOr(r, err)
	}
	s.keep(a, known.Sure)
	return s.Show(w, r, http.StatusOK, f, surePage(a.view(known, time.Since(began))))
}

// sendYearsCSV sends every year of the variants of the address, in the order in which they were made.
func (s *Pages) sendYearsCSV(w http.ResponseWriter, r *http.Request) error {
	a, err := s.sureAsked(r)
	if err != nil {
		return err
	}
	_ = http.NewResponseController(w).SetWriteDeadline(time.Now().Add(sureWaits))
	known, err := s.years(r.Context(), a)
	if err != nil {
		return page.LeftOr(r, err)
	}
	t := page.SheetOfNumbers{Name: "years", Head: []string{"year"}}
	sure := known.Sure
	for _, c := range sure.Variants {
		name := page.OrUnnamed(c.Name)
		t.Head = append(t.Head, name+": full nights", name+": share of the nights' energy", name+": missing, Wh", name+": runs of nights not full", name+": nights in the longest", name+": longest without, h", name+": share served")
	}
	for i := range sure.Years {
		row := []any{i + 1}
		if i < len(sure.Real) {
			row[0] = sure.Real[i]
		}
		for _, c := range sure.Variants {
			row = append(row, nth(c.Nights, i), nth(c.Lit, i), nth(c.Missing, i)/3600, nth(c.Of(func(g year.Gaps) int { return g.Runs }), i),
				nth(c.Of(func(g year.Gaps) int { return g.Longest }), i), nth(c.Outage, i), nth(c.Served, i))
		}
		t.Rows = append(t.Rows, row)
	}
	return page.SendCSV(w, t)
}

// nth is a value of a list, not a number where the list has none.
func nth(v []float64, i int) float64 {
	if i < len(v) {
		return v[i]
	}
	return math.NaN()
}

// sureWaits is the longest that the years of one page may take.
const sureWaits = 10 * time.Minute

// sureLine is one line of the answer that comes bit by bit: how many years are done, and now and then what they come to.
type sureLine struct {
	Done int    `json:"done"`
	Of   int    `json:"of"`
	HTML string `json:"html,omitempty"`
	URL  string `json:"url,omitempty"` // with the last line: the address of the same page
}

// sendSure sends the years as they come, one line of JSON each time.
func (s *Pages) sendSure(w http.ResponseWriter, r *http.Request) error {
	a, err := s.sureAsked(r)
	if err != nil {
		return err
	}
	next, err := a.besides(r.Context())
	if err != nil {
		return page.LeftOr(r, err)
	}
	began := time.Now()
	w.Header().Set("Content-Type", "application/x-ndjson")
	out, to := json.NewEncoder(w), http.NewResponseController(w)
	_ = to.SetWriteDeadline(began.Add(sureWaits))
	send := func(l sureLine) {
		_ = out.Encode(l) // a browser that left ends the context
		_ = to.Flush()
	}
	var last time.Time
	progress := func(done int) {
		if now := time.Now(); now.Sub(last) > sureBeat {
			last = now
			send(sureLine{Done: done, Of: a.n})
		}
	}
	send(sureLine{Of: a.n})
	run := search.NewRun(a.project.Value, values(a.chosen), a.parts)
	for _, n := range sureSteps(a.n) {
		if err := run.Until(r.Context(), n, runtime.GOMAXPROCS(0), progress); err != nil {
			return nil // stopped: what was sent stands
		}
		known := sureKnown{run.Sure(), next}
		part, err := page.Rendered(r, sureResults(a.view(known, time.Since(began))))
		if err != nil {
			return err
		}
		l := sureLine{Done: n, Of: a.n, HTML: string(s.Words.Link(part, true))}
		if n == a.n {
			s.keep(a, known.Sure)
			s.known.Keep(s.key(a), known)
			l.URL = page.ProjectURL(a.project.ID) + "/sure?" + a.query(a.n).Encode()
		}
		send(l)
	}
	return nil
}

// sureBeat is how often progress is told.
const sureBeat = 100 * time.Millisecond

// sureSteps are the numbers of years after which the results so far are shown: 25, 100, 250, 500, and all of them.
func sureSteps(n int) (steps []int) {
	for _, k := range []int{25, 100, 250, 500} {
		if k < n {
			steps = append(steps, k)
		}
	}
	return append(steps, n)
}

// query asks for the same variants with another number of years.
func (a sureAsked) query(n int) url.Values {
	q := page.NamingChosen(a.chosen)
	q.Set("n", page.Itoa(n))
	if a.parts {
		q.Set("parts", "yes")
	}
	return q
}

// yearsAsked reads how many years are asked for; the usual number where the address does not say.
func yearsAsked(typed string, usual int) (int, error) {
	if typed == "" {
		return usual, nil
	}
	n, err := strconv.Atoi(typed)
	if err != nil || n < fewYears || n > manyYears {
		return 0, page.BadRequest(fmt.Sprintf("Ask for %d to 1,000 years.", fewYears))
	}
	return n, nil
}

// showVariantSure leads from the variant to the page How sure with this variant alone.
func (s *Pages) showVariantSure(w http.ResponseWriter, r *http.Request) error {
	p, v, err := s.Variant(r)
	if err != nil {
		return err
	}
	return page.SeeOther(w, r, fmt.Sprintf("%s/sure?v=%d&n=%d&parts=yes", page.ProjectURL(p.ID), v.ID, p.Value.MadeYears()))
}

// tryVariantSure is the second answer that follows typing: the years of the variant as it is typed.
func (s *Pages) tryVariantSure(w http.ResponseWriter, r *http.Request) error {
	p, saved, sys, err := s.VariantIn(r)
	if err != nil {
		return err
	}
	e, err := s.EditVariant(r, p, saved, sys)
	if err != nil {
		return err
	}
	more := fmt.Sprintf("%s/sure?v=%d", page.ProjectURL(p.ID), saved.ID)
	e.Answer = func(v model.Variant) (page.Answer, error) {
		sure, err := search.Years(r.Context(), p.Value, []model.Variant{v}, p.Value.MadeYears(), runtime.GOMAXPROCS(0), nil)
		if err != nil {
			return page.Answer{}, err
		}
		return page.Answer{Body: variantSure(sureOf(sure, beside{}, p.Value, sys), more)}, nil
	}
	return page.TryEditor(s.Site, w, r, e)
}
