package model

import (
	"fmt"
	"math"
	"slices"

	"duskweight/internal/model/cell"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Wiring is what strings, cables and voltages come to.
type Wiring struct {
	Strings  []StringVolts // one for each array
	Highest  unit.Voltage  // anywhere a hand may come; of the strings their worst end
	Over60   bool
	Clipped  unit.Known[unit.Power] // of the panels' labels, beyond the controller's most current
	Charge   unit.Current           // what the panels bring to the line in full sun
	Limited  bool                   // a limit of the controller is named
	Cables   []CableRun
	Checks   []LineCheck
	ColdEnds [2]float64 // the coldest night, °C: best and worst end of what is known
}

// StringVolts is the voltage of the strings of one array.
type StringVolts struct {
	At         int
	InSeries   int
	Known      bool // how many panels stand in series
	Cold       unit.Voltage
	ColdWorst  unit.Voltage // where the coldest night is not known: at its worst end
	Hot        unit.Known[unit.Voltage]
	Side, Most int // strings on one cable, least and most
}

// CableRun is one cable and what it loses at full power.
type CableRun struct {
	Path    string
	Name    string
	Current unit.Current
	Drop    unit.Voltage
	Share   unit.Ratio
}

// touchable is the voltage that a hand may touch, V: extra-low voltage of ripple-free direct current (IEC 61140, from memory).
const touchable = 60

// trackerOver is how far above the battery's full voltage a tracking controller needs its panels (common practice).
const trackerOver = 1.05

// wiring works out strings, cables and voltages of a variant.
func (g Ground) wiring(v Variant, stores []StoreResult) Wiring {
	w := Wiring{Clipped: panel.Clipped(v.Panels, v.Controller)}
	w.Charge, w.Limited = panel.Charge(v.Panels, v.Controller, v.Controller.Line())
	w.ColdEnds[0], w.ColdEnds[1] = g.coldest()
	for i, a := range v.Panels {
		if a.Count.Is && a.Count.Val == 0 {
			continue
		}
		w.addString(i, a, v.Controller)
		w.addPanelCable(i, a)
	}
	w.hot(v, stores)
	w.otherCables(g, stores)
	for _, x := range liveVolts(v, stores) {
		w.Highest = max(w.Highest, x.volts)
	}
	w.Over60 = w.Highest > touchable
	return w
}

// coldest are the best and the worst end of the lowest temperature at the panels: the record; else from the lowest mean daily
// minimum less 10 K to the same less 20 K, 27 K where it is under −15 °C; with a weather file its coldest hour less 10 K
// (measured on the places of the reference years). Where the place is not known, the whole accepted range.
func (g Ground) coldest() (best, worst float64) {
	place := g.Project.Place
	if t, ok := place.RecordLow.Value(); ok {
		return float64(t), float64(t)
	}
	switch {
	case (place.Sky == sun.SkyFile || place.Sky == sun.SkyFiles) && g.Sky != nil:
		t := slices.Min(g.Sky.TAir)
		if place.Sky == sun.SkyFiles {
			for _, w := range g.Project.Files() {
				t = min(t, slices.Min(w.TAir))
			}
		}
		return t - 10, t - 10
	case place.Sky == sun.SkyMonthly && place.Monthly != nil:
		low := math.Inf(1)
		for _, t := range place.Monthly.TMin {
			low = min(low, float64(t))
		}
		if low < -15 {
			return low - 10, low - 27
		}
		return low - 10, low - 20
	}
	return 40, -70
}

func (w *Wiring) addString(i int, a panel.Array, c panel.Controller) {
	s := StringVolts{At: i}
	s.InSeries, s.Known = a.InSeries()
	s.Cold, s.ColdWorst = a.OpenCold(s.InSeries, unit.Celsius(w.ColdEnds[0])), a.OpenCold(s.InSeries, unit.Celsius(w.ColdEnds[1]))
	s.Side, s.Most = a.SideBySide()
	if hot, ok := a.BestHot(s.InSeries); ok {
		s.Hot = unit.Of(hot)
	}
	w.Strings = append(w.Strings, s)
	w.Highest = max(w.Highest, s.ColdWorst)
	if c.Kind == panel.ControllerDirect {
		return
	}
	k := lineCheck("volts_string", "controller.max_input_v", unit.Voltages, float64(s.ColdWorst), float64(c.MaxInput.Or(0)), usualNearly)
	if !s.Known {
		k.Word, k.Use = NotKnown, unit.Known[unit.Ratio]{}
	} else if k.Word == GivesWay && s.Cold <= c.MaxInput.Val {
		k.Word = NotKnown // bad only at the worst end of how cold it gets
	}
	k.Say = say.That("On the coldest morning a string reaches %s.", say.Voltage(s.ColdWorst))
	w.Checks = append(w.Checks, k)
	if short, ok := a.Short(s.Most); ok && c.MaxInputA.Is {
		in := lineCheck("panel_input", "controller.max_input_a", unit.Currents, float64(short), float64(c.MaxInputA.Val), usualNearly)
		in.Say = say.That("In bright sun the panels can push %s into the controller.", say.Current(short))
		w.Checks = append(w.Checks, in)
	}
}

func (w *Wiring) addPanelCable(i int, a panel.Array) {
	drop, share, ok := a.CableDrop()
	if !ok {
		return
	}
	path := fmt.Sprintf("panels[%d].cable_area_m2", i)
	_, n := a.SideBySide()
	amps := a.Sheet.Imp.Val * unit.Current(n)
	w.addCable(CableRun{path, "panel cable", amps, drop, unit.Ratio(share)}, cell.DropMost)
}

// addCable keeps a cable and checks its drop against the share that is fine. Losing more wastes energy and forbids nothing.
func (w *Wiring) addCable(c CableRun, most float64) {
	w.Cables = append(w.Cables, c)
	k := lineCheck("drop", c.Path, unit.Ratios, float64(c.Share), most, usualNearly)
	k.Say = say.That("The %s loses %s, %s of the voltage.", c.Name, say.Voltage(c.Drop), say.Share(c.Share))
	w.Checks = append(w.Checks, k)
}

// hot checks whether the panels still charge the battery full on a hot day: about energy alone, it forbids nothing.
func (w *Wiring) hot(v Variant, stores []StoreResult) {
	need := unit.Voltage(0)
	_, all := banks(stores)
	for _, b := range all {
		need = max(need, b.Full)
	}
	if v.Controller.Kind == panel.ControllerTracking {
		need *= trackerOver
	}
	for _, s := range w.Strings {
		if !s.Hot.Is || need <= 0 || v.Controller.Kind == panel.ControllerDirect {
			continue
		}
		k := lineCheck("string_hot", fmt.Sprintf("panels[%d].sheet.panels_in_series", s.At), unit.Voltages, float64(need), float64(s.Hot.Val), usualNearly)
		k.Say = say.That("On a hot day the panels give %s, and a full charge needs %s.", say.Voltage(s.Hot.Val), say.Voltage(need))
		w.Checks = append(w.Checks, k)
	}
}

// otherCables are those of batteries and inverter.
func (w *Wiring) otherCables(g Ground, stores []StoreResult) {
	for i, s := range stores {
		for _, run := range s.Part.Wires().Cables {
			run.Path = Join(s.Kind.Path(i), run.Path)
			w.addCable(run, cell.DropMost)
		}
	}
	inv := g.Project.Load.Inverter
	if !inv.CableLen.Is || !inv.CableArea.Is || !inv.Rated.Is {
		return
	}
	line := inv.Input
	if _, all := banks(stores); len(all) > 0 && !line.Is {
		line = unit.Of(all[0].Nominal)
	}
	if !line.Is {
		return
	}
	full := g.Load.Losses.Line(inv.Rated.Val, 0) + inv.Idle.Or(0)
	amps := unit.Current(full / unit.Power(line.Val))
	drop := cell.Drop(inv.CableLen.Val, amps, inv.CableArea.Val, cell.HotCable)
	w.addCable(CableRun{"load.inverter.cable_area_m2", "inverter cable", amps, drop, unit.Ratio(drop / line.Val)}, cell.DropMost)
}

// liveVolts lists the voltages of a variant but those of its strings.
func liveVolts(v Variant, stores []StoreResult) []live {
	out := []live{{"controller.line_voltage_v", "The line", v.Controller.Line()}}
	for i, s := range stores {
		for _, l := range s.Part.Wires().Lives {
			l.path = Join(s.Kind.Path(i), l.path)
			out = append(out, l)
		}
	}
	return out
}
