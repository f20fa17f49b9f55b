package web

import (
	"net/http"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
)

// The page Buy and make: /projects/{project}/variants/{variant}/parts.

func (s *Site) partsEditor(r *http.Request) (editor[model.Variant], error) {
	p, v, sys, err := s.variantIn(r)
	if err != nil {
		return editor[model.Variant]{}, err
	}
	url := variantURL(p.ID, v.ID) + "/parts"
	e := s.variantEditor(r.Context(), p, v, url, "Buy and make")
	g := s.grounds.of(p)
	result := g.Evaluate(v.Value)
	needs := model.Needs(v.Value, result)
	e.form.parts = partsForm()
	e.form.press = func(v *model.Variant, do string) { pressParts(v, needs, do) }
	e.below = askedParts(askedOf(v.Value, needs, sys))
	e.answer = func(typed model.Variant) (answer, error) {
		view, err := partsViewOf(g.Evaluate(typed), typed, needs, p, variantURL(p.ID, v.ID), sys)
		return answer{first: view.Headline, facts: view.Facts, body: partsResults(view)}, err
	}
	return e, nil
}

// Buttons of this page: a part that the plan asks for goes on the list, or all of them; what is there already costs
// nothing.
const (
	pressNeed = "need"
	pressFree = "free"
	allOfThem = "all"
)

func pressParts(v *model.Variant, needs []model.Need, do string) {
	verb, what, _ := strings.Cut(do, ":")
	switch verb {
	case pressNeed:
		_, open := model.Matched(v.Parts, needs)
		for _, n := range open {
			if len(v.Parts) < mostParts && (what == allOfThem || needs[n].As == what) {
				v.Parts = append(v.Parts, needs[n].Part())
				if what != allOfThem {
					return
				}
			}
		}
	case pressFree:
		for i, part := range v.Parts {
			if (part.Get == "have" || part.Get == "borrow") && !part.Price.Is {
				v.Parts[i].Price = unit.Of[unit.Money](0)
			}
		}
	}
}
