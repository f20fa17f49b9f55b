package model

import (
	"math"

	"duskweight/internal/model/panel"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// How far the label and the data sheet of a panel may disagree, and what no panel's voltage does (our own judgement).
const (
	sheetOverLabel = 1.25    // power of the sheet's best point over that of the label
	leastCellVolts = 0.3     // open voltage of one cell in series
	mostCellVolts  = 1.5     // the same
	flattestBeta   = -0.0005 // change of open voltage with temperature, a share for each kelvin: every cell loses in warmth
)

// panelsMixed are numbers of a panel that no panel has together: its voltages and currents in the wrong order, more power at
// the best point than on its label, cells that cannot make its voltage, and strings that are not all of the panels.
func panelsMixed(j judgement) []reason.Reason {
	var out []reason.Reason
	for i, a := range j.variant.Panels {
		if a.Sheet == nil || a.Count.Is && a.Count.Val == 0 {
			continue
		}
		for _, x := range sheetClashes(a) {
			out = append(out, reason.Reason{ID: "contradiction", Word: reason.NotKnown, Path: atPanels(i, x.path), Beside: atPanels(i, x.beside), Clears: reason.Answer, Say: x.say,
				Mend: say.That("Look at the panel's data sheet again, and correct the wrong one."), Source: source.Judgement.Whole()})
		}
	}
	return out
}

// sheetClash is two fields of an array that cannot both be true.
type sheetClash struct {
	path, beside string
	say          say.Sentence
}

func sheetClashes(a panel.Array) (out []sheetClash) {
	s := a.Sheet
	add := func(path, beside string, text say.Sentence) { out = append(out, sheetClash{path, beside, text}) }
	if s.Voc.Is && s.Vmp.Is && s.Voc.Val <= s.Vmp.Val {
		add("sheet.voc_v", "sheet.vmp_v", say.That("Two answers contradict each other: the open voltage of a panel, %s, is more than its voltage at the best point, %s.", say.Voltage(s.Voc.Val), say.Voltage(s.Vmp.Val)))
	}
	if s.Isc.Is && s.Imp.Is && s.Isc.Val <= s.Imp.Val {
		add("sheet.isc_a", "sheet.imp_a", say.That("Two answers contradict each other: the short-circuit current of a panel, %s, is more than its current at the best point, %s.", say.Current(s.Isc.Val), say.Current(s.Imp.Val)))
	}
	if s.Imp.Is && s.Vmp.Is && a.Power.Is && float64(s.Imp.Val)*float64(s.Vmp.Val) > sheetOverLabel*float64(a.Power.Val) {
		add("panel_w", "sheet.imp_a", say.That("Two answers contradict each other: %s on the panel's label, and %s at the best point of its data sheet.", say.Power(a.Power.Val), say.Power(unit.Power(float64(s.Imp.Val)*float64(s.Vmp.Val)))))
	}
	if s.Voc.Is && s.Cells.Is {
		if per := float64(s.Voc.Val) / float64(s.Cells.Val); per < leastCellVolts || per > mostCellVolts {
			add("sheet.cells_in_series", "sheet.voc_v", say.That("Two answers contradict each other: %s cells in series, and %s of open voltage: a cell makes 0.5 to 0.8 V.", s.Cells.Val, say.Voltage(s.Voc.Val)))
		}
	}
	if s.Beta.Is && s.Beta.Val > flattestBeta {
		add("sheet.beta_voc_per_k", "sheet.voc_v", say.That("The open voltage of every panel falls in warmth and rises in frost; this one's is said not to."))
	}
	if n, ok := a.Count.Value(); ok && s.Series.Is && a.Strings.Is && math.Abs(float64(s.Series.Val*a.Strings.Val-n)) > 0 {
		add("strings", "sheet.panels_in_series", say.That("Two answers contradict each other: %s strings of %s panels, and %s panels in all.", a.Strings.Val, s.Series.Val, n))
	}
	return out
}
