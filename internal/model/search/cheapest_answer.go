package search

import (
	"fmt"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
)

// CheapestAnswer is what other programs read of a search for the cheapest plan of one variant. Every key is always there; what
// is not known is null.
type CheapestAnswer struct {
	Name   string          `json:"name"`
	WhyNot *string         `json:"why_not"` // why nothing could be tried; null where it could
	Nights int             `json:"nights"`  // that count
	Needed int             `json:"nights_needed"`
	Tried  int             `json:"plans_tried"`
	Lacks  []MissingAnswer `json:"missing_prices"` // while there are any, no cost is known and none is best
	Front  []PlanAnswer    `json:"front"`          // from the cheapest on
	Best   *PlanAnswer     `json:"best"`
	Today  *PlanAnswer     `json:"today"` // the variant as it is
}

// PlanAnswer is one plan. Cost is in the project's currency, over the years with what is replaced; nights_p10 is a bad year, one
// of ten.
type PlanAnswer struct {
	Panels int                    `json:"panels"`
	Blocks int                    `json:"blocks"`
	Factor float64                `json:"factor"`
	Tilt   unit.Angle             `json:"tilt_rad"`
	Low    unit.Known[unit.Money] `json:"cost_low"`
	Cost   unit.Known[unit.Money] `json:"cost"`
	High   unit.Known[unit.Money] `json:"cost_high"`
	Nights int                    `json:"nights_full"`
	Bad    unit.Known[unit.Count] `json:"nights_p10"`
}

// MissingAnswer is a price that is not known: the path of its part in the variant, or the part that the list does not have.
type MissingAnswer struct {
	Path string `json:"path"`
	As   string `json:"as"`
}

// Answer is the search as other programs read it, for a variant of this name.
func (c Cheapest) Answer(v model.Variant) CheapestAnswer {
	a := CheapestAnswer{Name: v.Name, Nights: c.Nights, Needed: c.Needed, Tried: c.Tried, Lacks: []MissingAnswer{}, Front: []PlanAnswer{}}
	if !c.WhyNot.IsZero() {
		a.WhyNot = new(c.WhyNot.String())
		return a
	}
	for _, l := range c.Lacks {
		if l.Path != "" {
			a.Lacks = append(a.Lacks, MissingAnswer{Path: l.Path})
		} else if l.Part >= 0 {
			a.Lacks = append(a.Lacks, MissingAnswer{fmt.Sprintf("parts[%d].price", l.Part), string(v.Parts[l.Part].As)})
		} else {
			a.Lacks = append(a.Lacks, MissingAnswer{"parts", string(l.As)})
		}
	}
	for _, p := range c.Front {
		a.Front = append(a.Front, p.answer())
	}
	if c.Best >= 0 {
		a.Best = new(c.Front[c.Best].answer())
	}
	a.Today = new(c.Today.answer())
	return a
}

func (p Plan) answer() PlanAnswer {
	return PlanAnswer{p.Panels, p.Blocks, p.Factor, p.Tilt, p.Low, p.Cost, p.High, p.Nights, p.Bad}
}
