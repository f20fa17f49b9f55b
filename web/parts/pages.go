// Package parts shows the page Buy and make (…/parts below a variant): the list of parts with their prices, what it costs
// over the years, and the lists for the market and the workshop as sheets of paper.
package parts

import (
	"context"
	"io"
	"net/http"
	"strings"
	"sync"

	"github.com/a-h/templ"
	"github.com/go-chi/chi/v5"

	"duskweight/internal/model"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/unit"
	"duskweight/web/page"
)

// Pages are the pages of this room.
type Pages struct{ *page.Site }

// OfVariant hangs the pages below the address of the variant.
func (s *Pages) OfVariant(r chi.Router) {
	page.EditorAt(r, s.Site, "/parts", s.partsEditor)
	r.Get("/parts/costs.csv", s.Page(s.sendPartsCSV))
	r.Get("/parts/market", s.Page(s.showMarket))
	r.Get("/parts/making", s.Page(s.showMaking))
}

// The page Buy and make: /projects/{project}/variants/{variant}/parts.

func (s *Pages) partsEditor(r *http.Request) (page.Editor[model.Variant], error) {
	p, v, sys, err := s.VariantIn(r)
	if err != nil {
		return page.Editor[model.Variant]{}, err
	}
	url := page.VariantURL(p.ID, v.ID) + "/parts"
	e := s.VariantEditor(r.Context(), p, v, sys, url, "Buy and make")
	g := s.Grounds.Of(p)
	result := sync.OnceValue(func() model.VariantResult { return s.Results.Of(p, v) }) // the form changes parts alone
	needs := sync.OnceValue(func() []model.Need { return model.Needs(v.Value, result()) })
	e.Form.Parts = PartsForm()
	e.Form.Press = func(v *model.Variant, do string) { pressParts(v, needs, do) }
	e.Below = templ.ComponentFunc(func(ctx context.Context, w io.Writer) error {
		return askedParts(askedOf(v.Value, needs(), sys)).Render(ctx, w)
	})
	e.Answer = func(typed model.Variant) (page.Answer, error) {
		view, err := partsViewOf(g.Priced(result(), typed.Parts), typed, needs(), p, page.VariantURL(p.ID, v.ID), sys)
		bands := []page.BandView{page.VariantBand(result(), sys, s.LinksOf(p, v.Value, v.ID).To)}
		return page.Answer{First: view.Headline, Facts: view.Facts, Bands: bands, Body: partsResults(view)}, err
	}
	return e, nil
}

// Buttons of this page: a part that the plan asks for goes on the list, or all of them; what is there already costs
// nothing.
const (
	allOfThem = "all"
)

func pressParts(v *model.Variant, asked func() []model.Need, do string) {
	verb, what, _ := strings.Cut(do, ":")
	switch verb {
	case page.PressNeed:
		needs := asked()
		_, open := model.Matched(v.Parts, needs)
		for _, n := range open {
			if len(v.Parts) < mostParts && (what == allOfThem || string(needs[n].As) == what) {
				v.Parts = append(v.Parts, needs[n].Part())
				if what != allOfThem {
					return
				}
			}
		}
	case page.PressFree:
		for i, part := range v.Parts {
			if (part.Get == cost.GetHave || part.Get == cost.GetBorrow) && !part.Price.Is {
				v.Parts[i].Price = unit.Of[unit.Money](0)
			}
		}
	}
}
