package trials

import (
	"net/http"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// The record form: /projects/{p}/variants/{v}/trials/{i}/record. One empty page for the yard, to be filled in by hand and typed in
// afterwards. What the plan knows is printed in.

// recordView is the record form, ready to print.
type recordView struct {
	page.PaperTop
	Back   string
	Letter bool
	Bar    string // why nothing may hang; empty where something may
	Why    string
	Keep   string
	Off    string // how far off the ground
	Steps  []recordStep
	Units  recordUnits
	Up     string // what the plan expects
	Down   string
	Looks  []string // what is looked at after a fall
}

// recordStep is a load step with what was written down of it before.
type recordStep struct{ Mass, Share, Hung, Day, Tick string }

// recordUnits are the symbols of what is measured.
type recordUnits struct{ Mass, Volts, Amps, Length, Time, Heat string }

func (s *Pages) showRecord(w http.ResponseWriter, r *http.Request) error {
	p, v, i, sys, err := s.StoreOf(r, page.IsHoist)
	if err != nil {
		return err
	}
	top, err := s.PaperTop(p, v)
	if err != nil {
		return err
	}
	h := model.HoistOf(s.Results.Of(p, v).Stores[i])
	view := recordOf(h, sys)
	view.PaperTop, view.Letter, view.Back = top, r.URL.Query().Get("paper") == "letter", page.StoreURL(p.ID, v.ID, i, "trials")
	return s.Show(w, r, http.StatusOK, page.Frame{Title: "Record form: " + v.Value.Name, Paper: true}, recordPage(view))
}

// recordOf prints the form of a hoist. Of one that must not hang it has no load steps, of one that is not ready the first.
func recordOf(h *model.HoistResult, sys unit.System) recordView {
	s := stairsOf(h)
	view := recordView{Keep: page.Known(s.keep, unit.Heights, sys), Off: page.FirstLift(sys), Looks: looksAsked(), Units: unitsOf(sys)}
	if !s.keep.Is {
		view.Keep = "the keep-out, which is not known yet"
	}
	steps := s.climb()
	switch {
	case s.barred:
		view.Bar, steps = "DO NOT HANG.", nil
	case s.ready == reason.NotKnown:
		view.Bar, steps = "NOT READY: the first load step only.", steps[:1]
	}
	if view.Bar != "" && len(h.Because) > 0 {
		view.Why = h.Because[0].Text().In(sys)
	}
	for _, one := range steps {
		row := recordStep{Mass: testMass(one.need, sys), Share: one.Name}
		if one.passed && one.Step.Mass.Is {
			row.Hung, row.Day, row.Tick = unit.Masses.Number(float64(one.Step.Mass.Val), sys), form.Clip(one.Step.Date, 12), "✓"
		}
		view.Steps = append(view.Steps, row)
	}
	view.expect(h, sys)
	return view
}

// expect prints what the plan says of a lift and a way down, beside the boxes for what is measured.
func (v *recordView) expect(h *model.HoistResult, sys unit.System) {
	up, down := h.Drive.Raising, h.Drive.Lowering
	if up.Current > 0 {
		v.Up = unit.Currents.Format(float64(up.Current), sys) + " planned"
	}
	if down.Current > 0 {
		v.Down = unit.Currents.Format(float64(down.Current), sys) + " planned"
	}
}

func unitsOf(sys unit.System) recordUnits {
	return recordUnits{Mass: unit.Masses.Symbol(sys), Volts: unit.Voltages.Symbol(sys), Amps: unit.Currents.Symbol(sys), Length: unit.Lengths.Symbol(sys), Time: "s", Heat: unit.Temperatures.Symbol(sys)}
}

// looksAsked are the parts that are looked at after a fall, as the records call them.
func looksAsked() []string {
	rows := lift.Trials{Failures: make([]lift.Failure, 1)}
	h := lift.Hoist{Trials: rows}
	var out []string
	form.Form[lift.Hoist]{}.Walk(TrialsForm(), &h, func(in *form.Input[lift.Hoist]) {
		if strings.Contains(in.Path, ".looked.") && in.Kind == form.AsChoice {
			out = append(out, strings.TrimSuffix(in.Label, ", looked at"))
		}
	})
	return out
}
