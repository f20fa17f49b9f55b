package compare

import (
	"fmt"
	"net/http"

	"duskweight/internal/model"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// The page Years and interest: /projects/{project}/money.

// moneyEditor shows, beside the form, what the first variants of the project come to.
func (s *Pages) moneyEditor(r *http.Request) (page.Editor[model.Project], error) {
	e, sys, err := s.ProjectEditor(r, "/money", "Years and interest")
	if err != nil {
		return e, err
	}
	all, err := s.Store.Variants(r.Context(), e.Saved.ID)
	if err != nil {
		return e, err
	}
	e.Form.Parts = MoneyForm()
	some := page.ChosenVariants(all, nil)
	ground := s.Grounds.Of(e.Saved)
	e.Answer = func(p model.Project) (page.Answer, error) {
		g := ground
		g.Project.Money = p.Money
		results := make([]model.VariantResult, len(some))
		for i, v := range some {
			results[i] = g.Priced(s.Results.Of(e.Saved, v), v.Value.Parts)
		}
		costs, err := page.CostsOf(page.BillsOf(results, some, p.Currency), e.Saved.ID, sys)
		first := termsSay(p.Money)
		return page.Answer{First: first, Body: moneyResults(first, costs)}, err
	}
	return e, nil
}

// termsSay tells what is counted.
func termsSay(t cost.Terms) string {
	c := cost.Reckon(cost.Input{Terms: t})
	return fmt.Sprintf("%s count, at %s %% interest a year above inflation.", page.Counted(c.Horizon, "year"), unit.Rounded(100*c.Rate, 3))
}

// MoneyForm is what counts for all variants of a project, and what the cheapest of them has to reach.
func MoneyForm() []form.Part[model.Project] {
	type p = model.Project
	terms := form.Within("money", func(p *p) *cost.Terms { return &p.Money }, termsForm()...)
	return append(terms, form.Heading("The cheapest plan", "",
		form.Number("target_share", "Share of full nights to reach", unit.Percents, func(p *p) *unit.Known[unit.Ratio] { return &p.Target }, form.Hint[p]("if empty: 95 %"))))
}

func termsForm() []form.Part[cost.Terms] {
	type t = cost.Terms
	return []form.Part[t]{
		form.Heading("Years and interest", "These count for every variant.",
			form.Number("horizon_years", "Years to count", unit.Counts, func(t *t) *unit.Known[unit.Count] { return &t.Horizon }, form.Hint[t]("if empty: 20")),
			form.Number("real_rate", "Interest above inflation, a year", unit.Percents, func(t *t) *unit.Known[unit.Ratio] { return &t.Rate }, form.Hint[t]("if empty: 3 %")),
			form.Number("upkeep_per_year", "Upkeep of the store a year", unit.Prices, func(t *t) *unit.Known[unit.Money] { return &t.Upkeep }, form.Hint[t]("in addition to the upkeep of single parts"))),
	}
}
