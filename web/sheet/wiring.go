package sheet

import (
	"net/http"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/web/page"
)

// More pages for the yard, on demand: …/sheet/wiring and …/sheet/checks.

func (s *Pages) showWiring(w http.ResponseWriter, r *http.Request) error {
	view, h, sys, err := s.yard(r, "Wiring and switching")
	if err != nil {
		return err
	}
	here := wiringPage(view, page.WiringOf(h), hoistSettings(h, sys), h.Hazards.SwitchOrder, h.Drive.Lowering.MayOpen, wiringCautions)
	return s.Show(w, r, http.StatusOK, page.Frame{Title: view.Title, Paper: true}, here)
}

func (s *Pages) showCheckList(w http.ResponseWriter, r *http.Request) error {
	view, h, sys, err := s.yard(r, "Every check")
	if err != nil {
		return err
	}
	return s.Show(w, r, http.StatusOK, page.Frame{Title: view.Title, Paper: true}, checkListPage(view, page.CheckViews(h.Checks, "", sys, nil, ""), page.RoundOf(h, sys)))
}

// yardTop is the head of a page for the yard, with the band of the plan sheet.
type yardTop struct {
	page.PaperTop
	Back  string
	State sheetState
}

// yard is the head of a page for the yard and the hoist that it is about, the first of its variant, told in the units of
// the settings.
func (s *Pages) yard(r *http.Request, title string) (yardTop, *model.HoistResult, unit.System, error) {
	p, v, sys, err := s.VariantIn(r)
	if err != nil {
		return yardTop{}, nil, sys, err
	}
	top, err := s.PaperTop(p, v)
	if err != nil {
		return yardTop{}, nil, sys, err
	}
	top.Title = title + ": " + top.Title
	result := s.Grounds.Of(p).Evaluate(v.Value)
	if h, _ := drawnHoist(result); h != nil {
		return yardTop{top, page.VariantURL(p.ID, v.ID) + "/sheet", stateOf(result, sys)}, h, sys, nil
	}
	return yardTop{}, nil, sys, page.ErrNotFound
}

// wiringCautions stand on the page of the wiring.
var wiringCautions = []string{
	"Set the mass on its blocks before anyone touches drive, rope, brake or wires.",
	"Panels cannot be switched off by day: cover them or open the isolator first. An arc of direct current does not go out by itself.",
	"Fuses and switches rated for direct current, each fuse close to its source.",
	"Braking resistors and motors burn skin and wood: on metal, clear of everything, guarded.",
	"Nothing here feeds house wiring. Local rules and a licensed person come first.",
	"No medical device and no alarm hangs on this. Nobody under the mass, nobody rides, nobody tests it with a person.",
}
