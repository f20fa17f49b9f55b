// Package place shows the page Place and sun (/projects/{project}/place): where it is, its twelve months or a starter
// climate, and the weather of a file (…/place/file), which is read, mapped and taken here.
package place

import (
	"fmt"
	"net/http"
	"net/url"
	"reflect"

	"github.com/a-h/templ"
	"github.com/go-chi/chi/v5"

	"duskweight/internal/catalog"
	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web/page"
)

// Pages are the pages of this room.
type Pages struct {
	*page.Site
	desk *desk // weather files that wait to be taken
}

// New makes the pages, with an empty desk for the files that are read in.
func New(s *page.Site) *Pages { return &Pages{s, &desk{}} }

// Routes hangs the pages at their addresses.
func (s *Pages) Routes(r chi.Router) {
	page.EditorAt(r, s.Site, "/projects/{project}/place", s.placeEditor)
	r.Post("/projects/{project}/place/climate", s.Page(s.takeClimate))
	r.Post("/projects/{project}/place/typical", s.Page(s.answerTypical))
	r.Get("/projects/{project}/place/file", s.Page(s.showWeather))
	r.Get("/projects/{project}/place/file/reading", s.Page(s.showReading))
	r.Post("/projects/{project}/place/file/columns", s.Page(s.mapWeather))
	r.Post("/projects/{project}/place/file/slip", s.Page(s.answerSlip))
	r.Post("/projects/{project}/place/file/use", s.Page(s.useWeather))
	r.Get("/projects/{project}/place/{picture}.csv", s.Page(s.sendPlaceCSV))
}

// Uploads hangs what reads in a weather file, which may be larger than a form.
func (s *Pages) Uploads(r chi.Router) {
	r.With(page.InLine(readAtOnce)).Post("/projects/{project}/place/file", s.Page(s.readWeather))
}

// The page Place and sun: /projects/{project}/place.

func (s *Pages) placeEditor(r *http.Request) (page.Editor[model.Project], error) {
	e, sys, err := s.ProjectEditor(r, "/place", "Place and sun")
	if err != nil {
		return e, err
	}
	e.Form.Parts = PlaceForm(&e.Saved.Value)
	at := placeAtOf(r.URL.Query(), e.Url)
	at.known = door(e.Saved.Value) != ""
	picker := pickerView{URL: e.Url, Revision: fmt.Sprint(e.Saved.Revision), Climates: page.ClimateOptions(), TypeOwn: e.Saved.Value.Place.Monthly == nil}
	if at.all {
		e.Below = climatePicker(picker)
	}
	e.Answer = func(p model.Project) (page.Answer, error) {
		if reflect.DeepEqual(p, e.Saved.Value) {
			return placeAnswer(s.Grounds.Of(e.Saved), sys, at), nil
		}
		return placeAnswer(model.Prepare(p), sys, at), nil
	}
	if at.all {
		e.Query = at.query()
		e.Card, e.Next = at.query, func(url.Values) string { return at.query() }
		return e, nil
	}
	files := filesViewOf(e.Saved, at, sys)
	doors := doorsOf(e.Saved.Value, at)
	onCards(&e, at, func(v page.EditorView, c *page.CardView, part string) templ.Component {
		return placePage(v, layView{Card: c, Part: part, Files: files, Doors: doors, Rows: rowsOf(e.Saved.Value, at, part, sys), Picker: picker, Whole: e.Url + "?" + nameAll + "=1"})
	})
	e.Style = "place.css"
	return e, nil
}

// placeAnswer is what the page says of a place.
func placeAnswer(g model.Ground, sys unit.System, at placeAt) page.Answer {
	light := onPanel(g)
	v := placeViewOf(g, light, sys, at.url)
	a := page.Answer{First: v.Headline, Facts: v.Facts, Body: placeResults(v)}
	if !at.all {
		year, outline := yearViewOf(g, light, sys, at), outlineViewOf(g, light, sys, at)
		a.First = year.Headline
		a.Body = placeNotes(v)
		a.Also = []page.Piece{{ID: "year", Body: yearPart(year)}, {ID: "outline", Body: outlinePart(outline)}, {ID: "tilt-place", Body: tiltPart(outline.Season)}}
	}
	return a
}

// sendPlaceCSV sends the numbers of the picture of the place as it is saved.
func (s *Pages) sendPlaceCSV(w http.ResponseWriter, r *http.Request) error {
	p, err := s.Project(r)
	if err != nil {
		return err
	}
	g := s.Grounds.Of(p)
	if g.Sky == nil {
		return page.ErrNotFound
	}
	return page.SendPicture(w, r, []page.PictureView{*placeViewOf(g, onPanel(g), unit.Metric, "").Picture, {ID: "outline", Numbers: func() page.SheetOfNumbers { return outlineNumbers(g) }}, {ID: "season", Numbers: func() page.SheetOfNumbers { return seasonNumbers(g) }}})
}

// takeClimate copies the means of a starter climate into the project, or those of the described sky, to be typed over.
func (s *Pages) takeClimate(w http.ResponseWriter, r *http.Request) error {
	p, err := s.Project(r)
	if err != nil {
		return err
	}
	typed, revision, err := page.PostedForm(r)
	if err != nil {
		return err
	}
	v, said := document.Clone(p.Value), ""
	if name := typed.Get("climate"); name != "" {
		place, ok := catalog.Climate(name)
		if !ok {
			return page.BadRequest("There is no starter climate of that name.")
		}
		v.Place, said = place, "Starter climate: "+name
	} else {
		monthly, ok := sun.DescribedMeans(v.Place)
		if !ok {
			return page.BadRequest("Give the latitude and say how your sky is first; then its twelve means can be typed over.")
		}
		v.Place.Monthly, v.Place.Sky, said = &monthly, sun.SkyMonthly, "Twelve means opened for typing"
	}
	_, err = s.Store.SaveProject(r.Context(), p.ID, v, store.Edit{Revision: revision, Said: said}, s.Now())
	if err != nil {
		return err
	}
	return page.SeeOther(w, r, page.ProjectURL(p.ID)+"/place")
}
