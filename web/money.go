package web

import (
	"fmt"
	"net/http"

	"duskweight/internal/model"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/unit"
)

// The page Years and interest: /projects/{project}/money.

// moneyEditor shows, beside the form, what the first variants of the project come to.
func (s *Site) moneyEditor(r *http.Request) (editor[model.Project], error) {
	e, sys, err := s.projectEditor(r, "/money", "Years and interest")
	if err != nil {
		return e, err
	}
	all, err := s.Store.Variants(r.Context(), e.saved.ID)
	if err != nil {
		return e, err
	}
	e.form.parts = within("money", func(p *model.Project) *cost.Terms { return &p.Money }, moneyForm()...)
	some := chosenVariants(all, nil)
	ground := s.grounds.of(e.saved)
	e.answer = func(p model.Project) (answer, error) {
		g := ground
		g.Project.Money = p.Money
		results := make([]model.VariantResult, len(some))
		for i, v := range some {
			results[i] = g.Evaluate(v.Value)
		}
		costs, err := costsOf(billsOf(results, some, p.Currency), e.saved.ID, sys)
		first := termsSay(p.Money)
		return answer{first: first, body: moneyResults(first, costs)}, err
	}
	return e, nil
}

// termsSay tells what is counted.
func termsSay(t cost.Terms) string {
	c := cost.Reckon(cost.Input{Terms: t})
	return fmt.Sprintf("%s are counted, at %s %% a year above inflation.", counted(c.Horizon, "year"), unit.Rounded(100*c.Rate, 3))
}
