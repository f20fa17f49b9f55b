// Package trials shows the page Tests and repairs (…/trials/{i} below a variant): what was measured or broke on the
// built hoist, what the plan says of it, and the load steps. What was measured can be taken into the plan.
package trials

import (
	"crypto/rand"
	"net/http"
	"net/url"

	"github.com/a-h/templ"
	"github.com/go-chi/chi/v5"

	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web/form"
	"duskweight/web/page"
)

// Pages are the pages of this room.
type Pages struct{ *page.Site }

// OfVariant hangs the pages below the address of the variant. Without a number it is the first hoist.
func (s *Pages) OfVariant(r chi.Router) {
	page.EditorAt(r, s.Site, "/trials", s.trialsEditor)
	page.EditorAt(r, s.Site, "/trials/{i}", s.trialsEditor)
	r.Get("/trials/{i}/record", s.Page(s.showRecord))
	r.Post("/trials/{i}/measured", s.Page(s.useMeasured))
	r.Get("/trials/{i}/records.csv", s.Page(s.sendTrialsCSV))
}

// The page Tests and repairs: /projects/{p}/variants/{v}/trials/{i}, where i is the store's place in the variant.

func (s *Pages) trialsEditor(r *http.Request) (page.Editor[model.Variant], error) {
	p, v, i, sys, err := s.StoreOf(r, page.IsHoist)
	if err != nil {
		return page.Editor[model.Variant]{}, err
	}
	at := trialsAtOf(r.URL.Query(), page.StoreURL(p.ID, v.ID, i, "trials"))
	e := s.VariantEditor(r.Context(), p, v, sys, at.url, "Tests and repairs")
	today := reason.Today(s.Now())
	e.Form.Parts = form.Within(model.HoistPath(i), func(v *model.Variant) *lift.Hoist { return v.Stores[i].Hoist }, trialsFormOn(today)...)
	had := len(v.Value.Stores[i].Hoist.Trials.Failures)
	e.Tidy = func(v *model.Variant) { // after a failure the load steps begin again
		if t := &v.Stores[i].Hoist.Trials; len(t.Failures) > had {
			t.Steps = lift.LoadSteps{}
		}
	}
	also := form.FormView{Revision: page.Itoa(int(v.Revision)), Page: rand.Text(), Units: form.UnitsWords[sys]}
	e.Answer = func(w model.Variant) (page.Answer, error) {
		now := s.Results.Typed(p, v, w)
		view, err := trialsViewOf(s.Grounds.Of(p), w, now, i, at, also, today, sys)
		a := page.Answer{First: view.Headline, Bands: page.StoreBands(now, i, sys, s.LinksOf(p, w, v.ID).To), Body: trialsWhole(view)}
		if !at.all {
			a.Body, a.Also = trialsResults(view), []page.Piece{{ID: "rungs", Body: rungList(view)}, {ID: "records", Body: recordList(view)}, {ID: "after", Body: afterwards(view)}}
		}
		return a, err
	}
	if !at.all {
		onCards(&e, at, sys)
	}
	return e, nil
}

// onCards makes the editor show the load steps and the card of one group of records.
func onCards(e *page.Editor[model.Variant], at trialsAt, sys unit.System) {
	whole := e.Form.Parts
	e.Form.Shown = func(refused []string) []form.Part[model.Variant] {
		g := at.open(refused)
		if g == nil {
			return nil
		}
		mine := func(path string) bool { return keyOf(path) == g.Key }
		return form.Pick(whole, mine, mine)
	}
	e.Card = at.query
	e.Next = func(url.Values) string { return at.query() }
	e.Where = func(path string) string { return page.FieldURL(at.url, path) }
	e.Lay = func(v page.EditorView, refused []string) templ.Component {
		var c *page.CardView
		if g := at.open(refused); g != nil {
			c = cardOf(*g, at, v, sys)
		}
		return trialsPage(v, c, at)
	}
}

// useMeasured makes a new variant with the measured values of the saved records; the one they belong to stays.
func (s *Pages) useMeasured(w http.ResponseWriter, r *http.Request) error {
	p, v, i, _, err := s.StoreOf(r, page.IsHoist)
	if err != nil {
		return err
	}
	_, revision, err := page.PostedForm(r)
	if err != nil {
		return err
	}
	if revision != v.Revision {
		return store.ErrStale
	}
	next, ok := model.AsMeasured(document.Clone(v.Value), i)
	if !ok {
		return page.BadRequest("The records do not determine any value of the plan yet.")
	}
	if problems := model.CheckVariant(next); len(problems) > 0 {
		return problems
	}
	all, err := s.Store.Variants(r.Context(), p.ID)
	if err != nil {
		return err
	}
	doc := model.Document{Edition: 1, Project: p.Value}
	for _, one := range all {
		doc.Variants = append(doc.Variants, one.Value)
	}
	doc.Variants = append(doc.Variants, next)
	if problems := model.Check(doc); len(problems) > 0 {
		return problems
	}
	made, err := s.Store.CreateVariant(r.Context(), p.ID, next, "Made from the records of "+v.Value.Name, s.Now())
	if err != nil {
		return err
	}
	return page.SeeOther(w, r, page.VariantURL(p.ID, made.ID))
}

// sendTrialsCSV sends the records beside the plan.
func (s *Pages) sendTrialsCSV(w http.ResponseWriter, r *http.Request) error {
	_, v, i, sys, err := s.StoreOf(r, page.IsHoist)
	if err != nil {
		return err
	}
	return page.SendCSV(w, trialsNumbers(v.Value.Measured(i), sys))
}

// trialsNumbers is the table of the records in the reader's units.
func trialsNumbers(m model.Measured, sys unit.System) page.SheetOfNumbers {
	mass, amps, time := page.ScaleOf(unit.Masses, sys), page.ScaleOf(unit.Currents, sys), page.ScaleOf(unit.Durations, sys)
	t := page.SheetOfNumbers{Name: "trials", Head: []string{"way", "date", mass.Axis("mass"), amps.Axis("current measured"), amps.Axis("current planned"), time.Axis("time measured"), time.Axis("time planned")}}
	for _, r := range m.Runs {
		t.Rows = append(t.Rows, []any{wayOf(r), r.Date, cellOf(r.Mass, mass), cellOf(r.Current, amps), cellOf(r.PlanCurrent, amps), cellOf(r.Time, time), cellOf(r.PlanTime, time)})
	}
	return t
}

// cellOf is a number, or an empty text where it is not known.
func cellOf[T ~float64](k unit.Known[T], s page.Scaled) any {
	if v, ok := k.Value(); ok {
		return s.Of(float64(v))
	}
	return ""
}

func wayOf(r model.TrialRun) string {
	if r.Down {
		return "down"
	}
	return "up"
}
