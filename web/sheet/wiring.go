package sheet

import (
	"net/http"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web/page"
)

// More pages for the yard, on demand: …/sheet/wiring and …/sheet/checks.

func (s *Pages) showWiring(w http.ResponseWriter, r *http.Request) error {
	p, v, sys, err := s.VariantIn(r)
	if err != nil {
		return err
	}
	result := s.Results.Of(p, v)
	if len(result.Stores) == 0 {
		return page.ErrNotFound
	}
	view := wiringView{Circuit: page.CircuitOf(v.Value, result, sys), Cautions: lineCautions}
	if view.yardTop, err = s.yardTop(p, v, result, "Wiring and switching", sys); err != nil {
		return err
	}
	if h, _ := drawnHoist(result); h != nil {
		drawing := page.WiringOf(h)
		view.Drawing, view.Set, view.Order, view.Opens = &drawing, hoistSettings(h, sys), h.Hazards.SwitchOrder, h.Drive.Lowering.MayOpen
		view.Cautions = wiringCautions
	}
	return s.Show(w, r, http.StatusOK, page.Frame{Title: view.Title, Paper: true}, wiringPage(view))
}

func (s *Pages) showCheckList(w http.ResponseWriter, r *http.Request) error {
	view, h, sys, err := s.yard(r, "Every check")
	if err != nil {
		return err
	}
	return s.Show(w, r, http.StatusOK, page.Frame{Title: view.Title, Paper: true}, checkListPage(view, page.CheckViews(h.Lines(), "", sys, nil, ""), page.RoundOf(h, sys)))
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
	result := s.Results.Of(p, v)
	h, _ := drawnHoist(result)
	if h == nil {
		return yardTop{}, nil, sys, page.ErrNotFound
	}
	top, err := s.yardTop(p, v, result, title, sys)
	return top, h, sys, err
}

// yardTop is the head of a page for the yard about a variant.
func (s *Pages) yardTop(p store.Saved[model.Project], v store.Saved[model.Variant], r model.VariantResult, title string, sys unit.System) (yardTop, error) {
	top, err := s.PaperTop(p, v)
	top.Title = title + ": " + top.Title
	return yardTop{top, page.VariantURL(p.ID, v.ID) + "/sheet", stateOf(r, sys)}, err
}

// wiringView is the page for the yard about wiring and switching. What a hoist has beside the circuit is empty without one.
type wiringView struct {
	yardTop
	Circuit  page.CircuitView
	Drawing  *page.WiringView // its changeover switch; nil without a hoist
	Set      []page.PairView
	Order    []string
	Opens    []string
	Cautions []string
}

// lineCautions stand on the page of the wiring of a plan without a hoist.
var lineCautions = []string{
	"Panels cannot be switched off by day: cover them or open the isolator first. An arc of direct current does not go out by itself.",
	"Use fuses and switches rated for direct current, and put each fuse close to its source.",
	"Nothing here feeds house wiring. Local rules and a licensed person come first.",
	"Connect no medical device and no alarm to this store.",
}

// wiringCautions stand on the page of the wiring.
var wiringCautions = []string{
	"Set the mass on its blocks before anyone touches drive, rope, brake or wires.",
	"Panels cannot be switched off by day: cover them or open the isolator first. An arc of direct current does not go out by itself.",
	"Use fuses and switches rated for direct current, and put each fuse close to its source.",
	"Braking resistors and motors get so hot that they burn skin and wood. Mount them on metal, guarded, clear of everything.",
	"Nothing here feeds house wiring. Local rules and a licensed person come first.",
	"Connect no medical device and no alarm to this store. Let nobody be under the mass or ride on it. Never test it with a person.",
}
