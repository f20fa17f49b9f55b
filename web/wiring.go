package web

import (
	"net/http"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
)

// More pages for the yard, on demand: …/sheet/wiring and …/sheet/checks.

func (s *Site) showWiring(w http.ResponseWriter, r *http.Request) error {
	view, h, sys, err := s.yard(r, "Wiring and switching")
	if err != nil {
		return err
	}
	page := wiringPage(view, wiringOf(h), hoistSettings(h, sys), h.Hazards.SwitchOrder, h.Drive.Lowering.MayOpen, wiringCautions)
	return s.show(w, r, http.StatusOK, frame{Title: view.Title, Paper: true}, page)
}

func (s *Site) showCheckList(w http.ResponseWriter, r *http.Request) error {
	view, h, sys, err := s.yard(r, "Every check")
	if err != nil {
		return err
	}
	return s.show(w, r, http.StatusOK, frame{Title: view.Title, Paper: true}, checkListPage(view, checkViews(h.Checks, "", sys, nil, ""), roundOf(h)))
}

// yardTop is the head of a page for the yard, with the band of the plan sheet.
type yardTop struct {
	paperTop
	Back  string
	State sheetState
}

// yard is the head of a page for the yard and the hoist that it is about, the first of its variant, told in the units of
// the settings.
func (s *Site) yard(r *http.Request, title string) (yardTop, *model.HoistResult, unit.System, error) {
	p, v, sys, err := s.variantIn(r)
	if err != nil {
		return yardTop{}, nil, sys, err
	}
	top, err := s.paperTop(p, v)
	if err != nil {
		return yardTop{}, nil, sys, err
	}
	top.Title = title + ": " + top.Title
	result := retold(s.grounds.of(p).Evaluate(v.Value), sys)
	for _, st := range result.Stores {
		if st.Hoist != nil {
			return yardTop{top, variantURL(p.ID, v.ID) + "/sheet", stateOf(result)}, st.Hoist, sys, nil
		}
	}
	return yardTop{}, nil, sys, errNotFound
}

// wiringOf names what stands on both sides of the switch.
func wiringOf(h *model.HoistResult) wiringView {
	v := wiringView{Supply: "supply", Loads: "lamps"}
	if h.Direct != nil {
		v.Supply = "panel"
	}
	for _, load := range h.Design.Lower.Loads {
		switch {
		case load.Permanent == "yes" && load.Kind != "":
			v.Shunt = permanentWords[load.Kind]
		case load.Kind == "cell":
			v.Loads = "diode, battery"
		}
	}
	if v.Shunt == "" && h.Design.Lower.Shunt == "yes" {
		v.Shunt = "resistor or clamp"
	}
	return v
}

// permanentWords name what is wired for good, short enough for the drawing.
var permanentWords = map[string]string{"resistor": "a resistor", "string": "lamps in a row", "cell": "a battery", "constant_power": "a converter", "governed": "a converter", "clamp": "a clamp"}

// wiringAlt is the drawing in words.
func wiringAlt(v wiringView) string {
	say := "One changeover switch with off in the middle. To one side, through a fuse, the " + v.Supply + " by day. To the other side what it drives at night: " + v.Loads + ". Its blade goes to the motor, which has a brake on its shaft. "
	if v.Shunt == "" {
		return say + "A resistor that stays on the motor for good is missing."
	}
	return say + "Straight on the motor, without fuse, switch or plug: " + v.Shunt + "."
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
