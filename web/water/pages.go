// Package water shows the page Lifted water (…/water/{i} below a variant): what the tank holds and the turbine gives, what may
// hurt somebody, and a drawing to scale.
package water

import (
	"net/http"

	"github.com/go-chi/chi/v5"

	"duskweight/internal/model"
	"duskweight/internal/model/water"
	"duskweight/web/form"
	"duskweight/web/page"
)

// Pages are the pages of this room.
type Pages struct{ *page.Site }

// Routes hangs the page that weighs rocks, water and cells.
func (s *Pages) Routes(r chi.Router) {
	r.Get("/projects/{project}/rocks", s.Page(s.showRocks))
	r.Get("/projects/{project}/rocks/rocks.csv", s.Page(s.sendRocks))
}

// OfVariant hangs the page below the address of the variant. Without a number it is the first store of water.
func (s *Pages) OfVariant(r chi.Router) {
	page.EditorAt(r, s.Site, "/water", s.waterEditor)
	page.EditorAt(r, s.Site, "/water/{i}", s.waterEditor)
	r.Get("/water/{i}/{picture}.csv", s.Page(s.sendCSV))
}

// The page Lifted water: /projects/{p}/variants/{v}/water/{i}.

func (s *Pages) waterEditor(r *http.Request) (page.Editor[model.Variant], error) {
	p, v, i, sys, err := s.StoreOf(r, model.WaterKind().Is)
	if err != nil {
		return page.Editor[model.Variant]{}, err
	}
	url := page.StoreURL(p.ID, v.ID, i, "water")
	e := s.VariantEditor(r.Context(), p, v, sys, url, "Lifted water")
	e.Form.Parts = form.Within(model.WaterPath(i), func(v *model.Variant) *water.Water { return v.Stores[i].Water }, WaterForm()...)
	labels := e.Form.Labels(v.Value)
	e.Answer = func(w model.Variant) (page.Answer, error) {
		result, links := s.Results.Typed(p, v, w), s.LinksOf(p, w, v.ID)
		to := func(path string) form.LinkView {
			if labels[path] != "" {
				return page.FieldLink(path, labels, url)
			}
			return links.To(path)
		}
		view := viewOf(result, i, sys, labels, url)
		view.Rocks = page.ProjectURL(p.ID) + "/rocks"
		view.Against = page.ReasonsOf(result.Stores[i].Because, sys, to)
		view.Against.Answered = page.AnsweredOf(e.Form, w)
		return page.Answer{First: view.Headline, Facts: view.Facts, Bands: page.StoreBands(result, i, sys, to), Body: waterResults(view)}, nil
	}
	return e, nil
}

// sendCSV sends the numbers of the drawing.
func (s *Pages) sendCSV(w http.ResponseWriter, r *http.Request) error {
	p, v, i, sys, err := s.StoreOf(r, model.WaterKind().Is)
	if err != nil {
		return err
	}
	picture, ok := drawing(s.Results.Of(p, v).Stores[i], page.StoreURL(p.ID, v.ID, i, "water"), sys)
	if !ok {
		return page.ErrNotFound
	}
	return page.SendPicture(w, r, []page.PictureView{picture})
}
