package hoist

import (
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// Kind is what the pages about all stores need of lifted masses. trials is the table of what was tried on one: the room
// trials has it.
func Kind(trials func() []form.Part[lift.Hoist]) page.Kind {
	return page.Kind{
		Row: model.HoistKind(), Add: "Add a lifted mass",
		New:    func() model.Store { return model.Store{Hoist: &lift.Hoist{Name: "Lifted mass"}} },
		Also:   []page.Tab{{Text: "In motion", URL: "motion"}, {Text: "Tests and repairs", URL: "trials"}},
		Inputs: page.InputsOf(func(st model.Store) *lift.Hoist { return st.Hoist }, usual, HoistForm, trials),
		Copied: copied,
		Idea:   page.IdeaOf{Is: inNumbers, Day: day, Due: due, Try: tryable},
		Year:   page.YearOf{Wasted: wasted, Today: today, Picture: massPicture},
	}
}

// due is when the load path is to be looked at again, once somebody has looked at it.
func due(st model.StoreResult, on reason.Day) (page.PairView, bool) {
	return page.NextLook(model.HoistOf(st).Design, on)
}

// copied leaves what was tried to the hoist that was tried; what fell and what was found damaged stay.
func copied(st model.Store) { st.Hoist.Trials = st.Hoist.Trials.Kept() }

// wasted says why a lifted mass gave back less than half of what it gives from full: it comes down at its own power, and
// what was wanted was less.
func wasted(s model.StoreResult, sys unit.System) string {
	if s.Reservoir == nil || !s.InYear || !s.RoundTrip.Is || s.Reservoir.DrawMin <= 0 || float64(s.Year.Delivered) >= 0.5*float64(s.RoundTrip.Val)*float64(s.Year.Taken) {
		return ""
	}
	return "“" + page.OrUnnamed(s.Name) + "” comes down at " + unit.Powers.Format(float64(s.Reservoir.DrawMin), sys) + " or more. It cannot give less, so small devices waste most of it."
}
