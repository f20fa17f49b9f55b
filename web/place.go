package web

import (
	"fmt"
	"net/http"

	"duskweight/internal/catalog"
	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
)

// The page Place and sun: /projects/{project}/place.

func (s *Site) placeEditor(r *http.Request) (editor[model.Project], error) {
	e, sys, err := s.projectEditor(r, "/place", "Place and sun")
	if err != nil {
		return e, err
	}
	e.form.parts = placeForm(&e.saved.Value)
	e.below = climatePicker(e.url, fmt.Sprint(e.saved.Revision), climateOptions(), e.saved.Value.Place.Monthly == nil)
	e.answer = func(p model.Project) (answer, error) {
		v := placeViewOf(model.Prepare(p), sys, e.url)
		return answer{first: v.Headline, facts: v.Facts, body: placeResults(v)}, nil
	}
	return e, nil
}

// sendPlaceCSV sends the numbers of the picture of the place as it is saved.
func (s *Site) sendPlaceCSV(w http.ResponseWriter, r *http.Request) error {
	p, err := s.project(r)
	if err != nil {
		return err
	}
	var pictures []pictureView
	if one := placeViewOf(s.grounds.of(p), unit.Metric, "").Picture; one != nil {
		pictures = append(pictures, *one)
	}
	return sendPicture(w, r, pictures)
}

// climateOptions lists the starter climates by name.
func climateOptions() []option {
	var out []option
	for _, c := range catalog.Climates() {
		out = append(out, option{c.Name, c.Name + ", " + c.Country})
	}
	return out
}

// takeClimate copies the means of a starter climate into the project, or those of the described sky, to be typed over.
func (s *Site) takeClimate(w http.ResponseWriter, r *http.Request) error {
	p, err := s.project(r)
	if err != nil {
		return err
	}
	typed, revision, err := postedForm(r)
	if err != nil {
		return err
	}
	v, said := document.Clone(p.Value), ""
	if name := typed.Get("climate"); name != "" {
		place, ok := catalog.Climate(name)
		if !ok {
			return badRequest("There is no starter climate of that name.")
		}
		v.Place, said = place, "Starter climate: "+name
	} else {
		monthly, ok := sun.DescribedMeans(v.Place)
		if !ok {
			return badRequest("Give the latitude and say how your sky is first; then its twelve means can be typed over.")
		}
		v.Place.Monthly, v.Place.Sky, said = &monthly, "monthly", "Twelve means opened for typing"
	}
	_, err = s.Store.SaveProject(r.Context(), p.ID, v, store.Edit{Revision: revision, Said: said}, s.Now())
	if err != nil {
		return err
	}
	return seeOther(w, r, projectURL(p.ID)+"/place")
}
