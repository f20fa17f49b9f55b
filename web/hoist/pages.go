// Package hoist shows the page Lifted mass (…/hoist/{i} below a variant): mass, rope, drum, gears, motor, lowering, heat
// and what breaks first, with the pictures, the motor from its plate or bench, and the rows of the catalog. What was
// tried on the built hoist is the room trials.
package hoist

import (
	"net/http"
	"net/url"
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
	r.Get("/motion", s.Page(s.showMotion))
	r.Get("/motion/{i}", s.Page(s.showMotion))
	r.Get("/motion/{i}/motion.csv", s.Page(s.sendMotion))
	r.Get("/hoist/{i}/rows", s.Page(s.showRows))
	r.Post("/hoist/{i}/take", s.Page(s.takeRow))
	r.Post("/hoist/{i}/gear", s.Page(s.putGear))
}

// The page Lifted mass: /projects/{p}/variants/{v}/hoist/{i}, where i is the store's place in the variant.

// hoistPage is the editor of a hoist with what its answer and the parts that follow it are made from.
type hoistPage struct {
	page.Editor[model.Variant]
	i        int // the store's place in its variant
	sys      unit.System
	labels   map[string]string // of the inputs, by path
	ground   func() model.Ground
	filled   func() map[string]bool                  // which inputs inside the hoist hold something
	whole    func() model.VariantResult              // what the saved variant comes to
	evaluate func(model.Variant) model.VariantResult // what a typed one comes to
	links    func(model.Variant) func(path string) form.LinkView
	project  int64
}

// result computes the hoist of a design alone.
func (p hoistPage) result(v model.Variant) *model.HoistResult { return p.ground().Hoist(v, p.i) }

func (s *Pages) hoistEditor(r *http.Request) (page.Editor[model.Variant], error) {
	h, err := s.hoistOf(r)
	return h.Editor, err
}

func (s *Pages) hoistOf(r *http.Request) (hoistPage, error) {
	p, v, i, sys, err := s.StoreOf(r, page.IsHoist)
	if err != nil {
		return hoistPage{}, err
	}
	here := page.StoreURL(p.ID, v.ID, i, "hoist")
	e := s.VariantEditor(r.Context(), p, v, sys, here, "Lifted mass")
	e.Form.Parts = form.Within(model.HoistPath(i), func(v *model.Variant) *lift.Hoist { return v.Stores[i].Hoist }, hoistInputs()...)
	linkRows(e.Form.Parts, here)
	for _, p := range e.Form.Parts {
		if p.Group != nil && p.Group.Title == "Motor" {
			p.Group.Other = []form.LinkView{{Text: "The plate tells watts, volts, turns and amps at full load", URL: here + "/motor#plate"}}
		}
	}
	h := hoistPage{Editor: e, i: i, sys: sys, labels: e.Form.Labels(v.Value), ground: func() model.Ground { return s.Grounds.Of(p) }}
	h.filled = sync.OnceValue(func() map[string]bool { return filledOf(v.Value.Stores[i].Hoist) })
	h.whole = func() model.VariantResult { return s.Results.Of(p, v) }
	h.evaluate = func(w model.Variant) model.VariantResult { return s.Results.Typed(p, v, w) }
	h.links = func(v model.Variant) func(string) form.LinkView { return s.LinksOf(p, v, e.Saved.ID).To }
	h.project = p.ID
	at := benchAtOf(r, here, model.HoistPath(i))
	if !at.whole {
		h.onCards(at)
		return h, nil
	}
	h.Card = func() string { return at.query() }
	h.Next = func(url.Values) string { return at.query() }
	h.Answer = func(v model.Variant) (page.Answer, error) {
		result, to := h.evaluate(v), h.links(v)
		view := h.view(result, v, h.Url+at.query())
		return page.Answer{First: view.Headline, Facts: view.Facts, Bands: page.StoreBands(result, i, sys, to), Body: hoistResults(view)}, nil
	}
	return h, nil
}

// view prints the answer of a variant; fields is the address of the page on which its inputs stand.
func (h hoistPage) view(result model.VariantResult, v model.Variant, fields string) hoistView {
	view := hoistViewOf(result, h.i, h.sys, h.labels, h.Url, fields)
	view.Against = page.ReasonsOf(result.Stores[h.i].Because, h.sys, h.links(v))
	view.Against.Answered = page.AnsweredOf(h.Form, v)
	view.Fits = page.ProjectURL(h.project) + "/shelf/fits?" + page.HoistAt{Variant: h.Saved, I: h.i}.Query()
	return view
}

// hoistInputs is the form of a hoist, made once: its page asks for it with every key that is typed.
var hoistInputs = sync.OnceValue(HoistForm)
