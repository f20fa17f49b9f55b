package model

import (
	"duskweight/internal/model/unit"
)

// PeakAnswer is the line with everything on that may be on together, while every hoist lifts. With names the appliances of that
// moment. current_a and voltage_v are those of the battery that sags most; null without one, and where it cannot give that
// power at any current.
type PeakAnswer struct {
	Run     unit.Power               `json:"run_w"`
	Start   unit.Power               `json:"start_w"`
	Hour    unit.Known[unit.Count]   `json:"hour"`
	With    []string                 `json:"with"`
	Line    unit.Power               `json:"line_w"`
	Current unit.Known[unit.Current] `json:"current_a"`
	Voltage unit.Known[unit.Voltage] `json:"voltage_v"`
	Checks  []LineCheckAnswer        `json:"checks"`
}

// WiringAnswer is strings, cables and voltages. VocCold and VmpHot are those of the string with the most and the least; null
// without a panel, or where its data sheet is not known.
type WiringAnswer struct {
	VocCold unit.Known[unit.Voltage] `json:"voc_cold_v"`
	VmpHot  unit.Known[unit.Voltage] `json:"vmp_hot_v"`
	Highest unit.Voltage             `json:"highest_v"`
	Over60  bool                     `json:"over_60"`
	Clipped unit.Known[unit.Power]   `json:"clipped_w"`
	Cables  []CableAnswer            `json:"cables"`
	Checks  []LineCheckAnswer        `json:"checks"`
}

// CableAnswer is one cable at full power.
type CableAnswer struct {
	Path    string       `json:"path"`
	Current unit.Current `json:"current_a"`
	Drop    unit.Voltage `json:"drop_v"`
	Share   unit.Ratio   `json:"share"`
}

// LineCheckAnswer is one check: what is asked over what is there.
type LineCheckAnswer struct {
	ID       string                 `json:"id"`
	Path     string                 `json:"path"`
	Unit     string                 `json:"unit"`
	Demand   float64                `json:"demand"`
	Capacity unit.Known[unit.Ratio] `json:"capacity"`
	Use      unit.Known[unit.Ratio] `json:"use"`
	Word     string                 `json:"word"`
	Say      string                 `json:"say"`
}

// answer tells the peak; names are those of the appliances of the project.
func (p Peak) answer(names []string) PeakAnswer {
	a := PeakAnswer{Run: unit.Power(p.Run.Run()), Start: unit.Power(p.Start.StartPower()), Line: p.Line, With: []string{}, Checks: lineCheckAnswers(p.Checks)}
	if len(p.Run.On) > 0 {
		a.Hour = unit.Of(unit.Count(p.Run.Hour))
	}
	for _, i := range p.Run.On {
		a.With = append(a.With, names[i])
	}
	if b := p.worst(); b != nil && b.Carries {
		a.Current, a.Voltage = unit.Of(b.Current), unit.Of(b.Voltage)
	}
	return a
}

func (w Wiring) answer() WiringAnswer {
	a := WiringAnswer{Highest: w.Highest, Over60: w.Over60, Clipped: w.Clipped, Cables: make([]CableAnswer, len(w.Cables)), Checks: lineCheckAnswers(w.Checks)}
	for _, s := range w.Strings {
		if s.Known && (!a.VocCold.Is || s.ColdWorst > a.VocCold.Val) {
			a.VocCold = unit.Of(s.ColdWorst)
		}
		if s.Hot.Is && (!a.VmpHot.Is || s.Hot.Val < a.VmpHot.Val) {
			a.VmpHot = s.Hot
		}
	}
	for i, c := range w.Cables {
		a.Cables[i] = CableAnswer{c.Path, c.Current, c.Drop, c.Share}
	}
	return a
}

func lineCheckAnswers(checks []LineCheck) []LineCheckAnswer {
	out := make([]LineCheckAnswer, len(checks))
	for i, c := range checks {
		out[i] = LineCheckAnswer{ID: c.ID, Path: c.Path, Unit: c.Quantity.Symbol(unit.Metric), Demand: c.Demand, Use: c.Use, Word: c.Word, Say: c.Say.String()}
		if c.Use.Is {
			out[i].Capacity = unit.Of(unit.Ratio(c.Capacity))
		}
	}
	return out
}
