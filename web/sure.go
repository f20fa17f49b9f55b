package web

import (
	"encoding/json"
	"fmt"
	"math"
	"net/http"
	"net/url"
	"runtime"
	"strconv"
	"time"

	"duskweight/internal/model"
	"duskweight/internal/model/search"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
)

// The page How sure: /projects/{project}/sure?v=1&v=2&n=100&parts=yes. Many weather years for up to four variants. With
// scripts the numbers come as they are made, from …/sure/many, and a button stops them; without, the page comes when all
// is done. Who leaves the page stops the work.

const (
	usualYears = 100
	manyYears  = 1000
	fewYears   = 10
)

// sureAsked is what the address asks for, and what is needed to answer.
type sureAsked struct {
	project     store.Saved[model.Project]
	all, chosen []store.Saved[model.Variant]
	n           int
	parts       bool
	sys         unit.System
	run         *search.Run
}

func (s *Site) sureAsked(r *http.Request) (a sureAsked, err error) {
	if a.project, a.all, a.chosen, err = s.chosen(r); err != nil {
		return a, err
	}
	q := r.URL.Query()
	if a.n, err = yearsAsked(q.Get("n")); err != nil {
		return a, err
	}
	a.parts = q.Get("parts") == "yes"
	if a.sys, err = s.units(r.Context()); err != nil {
		return a, err
	}
	var variants []model.Variant
	for _, c := range a.chosen {
		variants = append(variants, c.Value)
	}
	a.run = search.NewRun(a.project.Value, variants, a.parts)
	return a, nil
}

// view is what the years so far come to.
func (a sureAsked) view(took time.Duration) sureView {
	sure := a.run.Sure()
	v := sureOf(sure, a.project.Value, a.sys)
	v.choose(projectURL(a.project.ID)+"/sure", a)
	v.CSV = projectURL(a.project.ID) + "/sure/years.csv?" + a.query(a.n).Encode()
	v.timed(sure.Years, took)
	return v
}

func (s *Site) showSure(w http.ResponseWriter, r *http.Request) error {
	a, err := s.sureAsked(r)
	if err != nil {
		return err
	}
	address := projectURL(a.project.ID) + "/sure"
	f, err := s.projectFrame(r.Context(), a.project, "How sure", projectURL(a.project.ID)+"/compare")
	if err != nil {
		return err
	}
	f.Steps.Back = address
	began := time.Now()
	_ = http.NewResponseController(w).SetWriteDeadline(began.Add(sureWaits)) // it is not a slow reader, it is a long sum
	err = a.run.Until(r.Context(), a.n, runtime.GOMAXPROCS(0), nil)
	if r.Context().Err() != nil {
		return nil // the page was left
	}
	if err != nil {
		return err
	}
	return s.show(w, r, http.StatusOK, f, surePage(a.view(time.Since(began))))
}

// sendYearsCSV sends every year of the variants of the address, in the order in which they were made.
func (s *Site) sendYearsCSV(w http.ResponseWriter, r *http.Request) error {
	a, err := s.sureAsked(r)
	if err != nil {
		return err
	}
	_ = http.NewResponseController(w).SetWriteDeadline(time.Now().Add(sureWaits))
	if err := a.run.Until(r.Context(), a.n, runtime.GOMAXPROCS(0), nil); err != nil {
		return leftOr(r, err)
	}
	t := sheetOfNumbers{Name: "years", Head: []string{"year"}}
	sure := a.run.Sure()
	for _, c := range sure.Variants {
		name := orUnnamed(c.Name)
		t.Head = append(t.Head, name+": nights with light", name+": longest without, h", name+": share served")
	}
	for i := range sure.Years {
		row := []any{i + 1}
		for _, c := range sure.Variants {
			row = append(row, nth(c.Nights, i), nth(c.Outage, i), nth(c.Served, i))
		}
		t.Rows = append(t.Rows, row)
	}
	return sendCSV(w, t)
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
func (s *Site) sendSure(w http.ResponseWriter, r *http.Request) error {
	a, err := s.sureAsked(r)
	if err != nil {
		return err
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
	for _, n := range sureSteps(a.n) {
		if err := a.run.Until(r.Context(), n, runtime.GOMAXPROCS(0), progress); err != nil {
			return nil // stopped: what was sent stands
		}
		part, err := rendered(r, sureResults(a.view(time.Since(began))))
		if err != nil {
			return err
		}
		l := sureLine{Done: n, Of: a.n, HTML: string(s.words.link(part, true))}
		if n == a.n {
			l.URL = projectURL(a.project.ID) + "/sure?" + a.query(a.n).Encode()
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
	q := url.Values{}
	for _, c := range a.chosen {
		q.Add("v", fmt.Sprint(c.ID))
	}
	q.Set("n", itoa(n))
	if a.parts {
		q.Set("parts", "yes")
	}
	return q
}

// yearsAsked reads how many years are asked for; 100 where the address does not say.
func yearsAsked(typed string) (int, error) {
	if typed == "" {
		return usualYears, nil
	}
	n, err := strconv.Atoi(typed)
	if err != nil || n < fewYears || n > manyYears {
		return 0, badRequest(fmt.Sprintf("Ask for %d to 1,000 years.", fewYears))
	}
	return n, nil
}

// showVariantSure leads from the variant to the page How sure with this variant alone.
func (s *Site) showVariantSure(w http.ResponseWriter, r *http.Request) error {
	p, v, err := s.variant(r)
	if err != nil {
		return err
	}
	return seeOther(w, r, fmt.Sprintf("%s/sure?v=%d&n=100&parts=yes", projectURL(p.ID), v.ID))
}

// tryVariantSure is the second answer that follows typing: 100 years of the variant as it is typed.
func (s *Site) tryVariantSure(w http.ResponseWriter, r *http.Request) error {
	p, saved, sys, err := s.variantIn(r)
	if err != nil {
		return err
	}
	e, err := s.editVariant(r, p, saved, sys)
	if err != nil {
		return err
	}
	more := fmt.Sprintf("%s/sure?v=%d", projectURL(p.ID), saved.ID)
	e.answer = func(v model.Variant) (answer, error) {
		sure, err := search.Years(r.Context(), p.Value, []model.Variant{v}, usualYears, runtime.GOMAXPROCS(0), nil)
		if err != nil {
			return answer{}, err
		}
		return answer{body: variantSure(sureOf(sure, p.Value, sys), more)}, nil
	}
	return tryEditor(s, w, r, e)
}
