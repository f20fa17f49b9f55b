package overview

import (
	"fmt"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web/form"
	"duskweight/web/page"
)

// variantCard is one variant at a glance.
type variantCard struct {
	ID, URL, SheetURL, Name string
	Sign, Verdict, Say      string
	State                   page.BandView
	By                      string          // the store from which nearly everything came
	Is                      []page.PairView // its stores: name, and what each is in numbers
	Nights                  page.PairView
	Looks                   []page.PairView // when each store is to be looked at again
	Rows                    []page.PairView // what breaks first, what it costs
}

// Word is the verdict, with the store that nearly all of it is due to.
func (c variantCard) Word() string {
	if c.By == "" {
		return c.Verdict
	}
	return c.Verdict + ", nearly all by “" + c.By + "”"
}

// cardOf prints one variant.
func (s *Pages) cardOf(r model.VariantResult, p store.Saved[model.Project], id int64, sys unit.System) variantCard {
	u := page.VariantURL(p.ID, id)
	c := variantCard{ID: fmt.Sprint(id), URL: u, SheetURL: u + "/sheet", Name: r.Name}
	c.Sign, c.Verdict = page.VerdictSigned(r.Verdict)
	c.Say = page.GivenBy(r, sys)
	if _, more := page.HeadlineOf(r, sys); len(more) > 0 {
		c.Say = strings.TrimSpace(c.Say + " " + more[0])
	}
	for _, st := range r.Stores {
		c.Is = append(c.Is, s.Tables.Stores.StoreIs(st, sys))
	}
	nights, cost := "not known", fmt.Sprintf("%d of %d parts priced", r.Cost.Priced, r.Cost.Parts)
	if r.YearKnown && r.Open.IsZero() {
		nights = fmt.Sprintf("%d of %d", r.Last.NightsFull, r.Last.Nights)
	}
	if all, ok := r.Cost.Capital.Value(); ok {
		cost = page.MoneyText(all, p.Value.Currency)
	} else if r.Cost.Parts == 0 {
		cost = "no parts yet"
	}
	c.Nights = page.PairView{Name: "Full nights", Value: nights}
	c.Rows = []page.PairView{{Name: "Breaks first", Value: page.BreaksFirst(r)}, {Name: "Cost of the listed parts", Value: cost}}
	for _, st := range r.Stores {
		if look, ok := s.Tables.Stores.Due(st, reason.Today(s.Now())); ok {
			c.Looks = append(c.Looks, look)
		}
	}
	c.State, c.By = page.VariantBand(r, sys, nil), form.Clip(page.NearlyAllBy(r), page.PaperName)
	return c
}
