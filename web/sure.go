package web

import (
	"fmt"
	"net/http"
	"runtime"
	"strconv"
	"time"

	"duskweight/internal/model"
	"duskweight/internal/model/search"
)

// The page How sure: /projects/{project}/sure?v=1&v=2&n=100. Many weather years for up to four variants. Who leaves the
// page stops the work.

const (
	usualYears = 100
	manyYears  = 1000
	fewYears   = 10
)

func (s *Site) showSure(w http.ResponseWriter, r *http.Request) error {
	p, err := s.project(r)
	if err != nil {
		return err
	}
	n, err := yearsAsked(r.URL.Query().Get("n"))
	if err != nil {
		return err
	}
	all, err := s.Store.Variants(r.Context(), p.ID)
	if err != nil {
		return err
	}
	sys, err := s.units(r.Context())
	if err != nil {
		return err
	}
	url := projectURL(p.ID) + "/sure"
	f, err := s.projectFrame(r.Context(), p, "How sure", projectURL(p.ID)+"/compare")
	if err != nil {
		return err
	}
	f.Steps.Back = url
	chosen := chosenVariants(all, r.URL.Query()["v"])
	var variants []model.Variant
	for _, c := range chosen {
		variants = append(variants, c.Value)
	}
	began := time.Now()
	sure, err := search.Years(r.Context(), p.Value, variants, n, runtime.GOMAXPROCS(0), nil)
	if r.Context().Err() != nil {
		return nil // the page was left
	}
	if err != nil {
		return err
	}
	v := sureOf(sure, p.Value, sys)
	v.choose(url, p.ID, n, all, chosen)
	v.timed(n, time.Since(began))
	return s.show(w, r, http.StatusOK, f, surePage(v))
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
