// Package hoist shows the page Lifted mass (…/hoist/{i} below a variant): mass, rope, drum, gears, motor, lowering, heat
// and what breaks first, with the pictures, the motor from its plate or bench, and the rows of the catalog. What was
// tried on the built hoist is the room trials.
package hoist

import (
	"net/http"
	"sync"

	"github.com/go-chi/chi/v5"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// Pages are the pages of this room.
type Pages struct{ *page.Site }

// OfVariant hangs the pages below the address of the variant. Without a number it is the first hoist.
func (s *Pages) OfVariant(r chi.Router) {
	page.EditorAt(r, s.Site, "/hoist", s.hoistEditor)
	page.EditorAt(r, s.Site, "/hoist/{i}", s.hoistEditor)
	r.Get("/hoist/{i}/pictures", s.Page(s.showPictures))
	r.Post("/hoist/{i}/pictures", s.Page(s.tryPictures))
	r.Get("/hoist/{i}/motor", s.Page(s.showMotor))
	r.Get("/hoist/{i}/{picture}.csv", s.Page(s.sendHoistCSV))
	r.Get("/hoist/{i}/rows", s.Page(s.showRows))
	r.Post("/hoist/{i}/take", s.Page(s.takeRow))
	r.Post("/hoist/{i}/gear", s.Page(s.putGear))
}

// The page Lifted mass: /projects/{p}/variants/{v}/hoist/{i}, where i is the store's place in the variant.

// hoistPage is the editor of a hoist with what its answer and the parts that follow it are made from.
type hoistPage struct {
	page.Editor[model.Variant]
	i      int // the store's place in its variant
	sys    unit.System
	labels map[string]string // of the inputs, by path
	ground model.Ground
}

// result computes the hoist of a design alone.
func (p hoistPage) result(v model.Variant) *model.HoistResult { return p.ground.Hoist(v, p.i) }

func (s *Pages) hoistEditor(r *http.Request) (page.Editor[model.Variant], error) {
	h, err := s.hoistOf(r)
	return h.Editor, err
}

func (s *Pages) hoistOf(r *http.Request) (hoistPage, error) {
	p, v, i, sys, err := s.StoreOf(r, page.IsHoist)
	if err != nil {
		return hoistPage{}, err
	}
	url := page.StoreURL(p.ID, v.ID, i, "hoist")
	e := s.VariantEditor(r.Context(), p, v, sys, url, "Lifted mass")
	e.Form.Parts = form.Within(model.HoistPath(i), func(v *model.Variant) *lift.Hoist { return v.Stores[i].Hoist }, hoistInputs()...)
	linkRows(e.Form.Parts, url)
	for _, p := range e.Form.Parts {
		if p.Group != nil && p.Group.Title == "Motor" {
			p.Group.Other = []form.LinkView{{Text: "The plate tells watts, volts, turns and amps at full load", URL: url + "/motor#plate"}}
		}
	}
	h := hoistPage{e, i, sys, e.Form.Labels(v.Value), s.Grounds.Of(p)}
	h.Answer = func(v model.Variant) (page.Answer, error) {
		result, links := h.ground.Evaluate(v), s.LinksOf(p, v, e.Saved.ID)
		view := hoistViewOf(result, i, sys, h.labels, url)
		view.Against = page.ReasonsOf(result.Stores[i].Because, sys, links.To)
		view.Against.Answered = page.AnsweredOf(e.Form, v)
		view.Fits = page.ProjectURL(p.ID) + "/shelf/fits?" + page.HoistAt{Variant: e.Saved, I: i}.Query()
		return page.Answer{First: view.Headline, Facts: view.Facts, Bands: page.StoreBands(result, i, sys, links.To), Body: hoistResults(view)}, nil
	}
	return h, nil
}

// hoistInputs is the form of a hoist, made once: its page asks for it with every key that is typed.
var hoistInputs = sync.OnceValue(HoistForm)
