package web

import (
	"net/http"

	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
)

// The page Tests and repairs: /projects/{p}/variants/{v}/trials/{i}, where i is the store's place in the variant.

func (s *Site) trialsEditor(r *http.Request) (editor[model.Variant], error) {
	p, v, i, sys, err := s.storeOf(r, isHoist)
	if err != nil {
		return editor[model.Variant]{}, err
	}
	url := storeURL(p.ID, v.ID, i, "trials")
	e := s.variantEditor(r.Context(), p, v, url, "Tests and repairs")
	e.form.parts = within(model.StorePath(i, "hoist"), func(v *model.Variant) *lift.Hoist { return v.Stores[i].Hoist }, trialsForm()...)
	had := len(v.Value.Stores[i].Hoist.Trials.Failures)
	e.tidy = func(v *model.Variant) { // after a failure the load steps begin again
		if t := &v.Stores[i].Hoist.Trials; len(t.Failures) > had {
			t.Steps = lift.LoadSteps{}
		}
	}
	e.answer = func(w model.Variant) (answer, error) {
		view, err := trialsViewOf(s.grounds.of(p), w, i, url, sys)
		view.Revision = itoa(int(v.Revision))
		return answer{first: view.Headline, body: trialsResults(view)}, err
	}
	return e, nil
}

// useMeasured makes a new variant with the measured values of the saved records; the one they belong to stays.
func (s *Site) useMeasured(w http.ResponseWriter, r *http.Request) error {
	p, v, i, _, err := s.storeOf(r, isHoist)
	if err != nil {
		return err
	}
	_, revision, err := postedForm(r)
	if err != nil {
		return err
	}
	if revision != v.Revision {
		return store.ErrStale
	}
	next, ok := model.AsMeasured(document.Clone(v.Value), i)
	if !ok {
		return badRequest("The records do not determine any value of the plan yet.")
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
	return seeOther(w, r, variantURL(p.ID, made.ID))
}

// sendTrialsCSV sends the records beside the plan.
func (s *Site) sendTrialsCSV(w http.ResponseWriter, r *http.Request) error {
	_, v, i, sys, err := s.storeOf(r, isHoist)
	if err != nil {
		return err
	}
	return sendCSV(w, trialsNumbers(v.Value.Measured(i), sys))
}

// trialsNumbers is the table of the records in the reader's units.
func trialsNumbers(m model.Measured, sys unit.System) sheetOfNumbers {
	mass, amps, time := scaleOf(unit.Masses, sys), scaleOf(unit.Currents, sys), scaleOf(unit.Durations, sys)
	t := sheetOfNumbers{Name: "trials", Head: []string{"way", "date", mass.axis("mass"), amps.axis("current measured"), amps.axis("current planned"), time.axis("time measured"), time.axis("time planned")}}
	for _, r := range m.Runs {
		t.Rows = append(t.Rows, []any{wayOf(r), r.Date, cellOf(r.Mass, mass), cellOf(r.Current, amps), cellOf(r.PlanCurrent, amps), cellOf(r.Time, time), cellOf(r.PlanTime, time)})
	}
	return t
}

// cellOf is a number, or an empty text where it is not known.
func cellOf[T ~float64](k unit.Known[T], s scaled) any {
	if v, ok := k.Value(); ok {
		return s.of(float64(v))
	}
	return ""
}

func wayOf(r model.TrialRun) string {
	if r.Down {
		return "down"
	}
	return "up"
}
