package model

import (
	"fmt"
	"math"

	"duskweight/internal/model/cell"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// lineRules are the rules of line, panels, peak and loads, in the order of the rule book.
func lineRules() []rule {
	return []rule{
		{"volts_line", voltsLine}, {"volts_feed", voltsFeed}, {"volts_string", voltsString}, {"volts_touch", voltsTouch},
		{"mains_out", mainsOut}, {"strings_fuse", stringsFuse}, {"panel_cable", panelCable}, {"panel_input", panelInput},
		{"fuse_breaks", fuseBreaks}, {"batteries_joined", batteriesJoined}, {"peak_fuse", peakFuse}, {"cable", supplyCable},
		{"supply_fuse", supplyFuse}, {"board_current", boardCurrent}, {"low_voltage", lowVoltage}, {"charge_current", chargeCurrent}, {"charge_open", chargeOpen}, {"charge_ungoverned", chargeUngoverned}, {"load_open", loadOpen},
		{"inverter", inverter}, {"bare_volts", bareVolts}, {"contacts", contacts}, {"air", air}, {"harm", harm},
	}
}

// classOff is how far two voltages of one class may differ: 12 and 12.8 V are one class, our own judgement.
const classOff = 0.12

// off reports whether v is more than a share off the line.
func off(v, line unit.Voltage, share float64) bool {
	return math.Abs(float64(v-line)) > share*float64(line)*(1+1e-9)
}

// voltsLine is a battery or an inverter of another voltage than the line.
func voltsLine(j judgement) []reason.Reason {
	var out []reason.Reason
	line := j.variant.Controller.Line()
	for i, s := range j.result.Stores {
		if c := CellsOf(s); c != nil && c.Resolved.WhyNot == "" && off(c.Resolved.Voltage, line, classOff) {
			out = append(out, must("volts_line", Join(CellsPath(i), "block_voltage_v"), source.Judgement.Whole(),
				say.That("The battery has %s, and the line %s.", say.Voltage(c.Resolved.Voltage), say.Voltage(line)), say.That("Use one voltage.")))
		}
	}
	l := j.ground.Project.Load
	if !l.HasInverter() || !throughInverter(j) {
		return out
	}
	switch in := l.Inverter.Input; {
	case !in.Is:
		out = append(out, ask("volts_line", "load.inverter.input_v", source.Judgement.Whole(),
			say.That("Which battery voltage the inverter needs is not known."), say.That("Read it on its label: it must fit the line of %s.", say.Voltage(line))))
	case off(in.Val, line, classOff):
		out = append(out, must("volts_line", "load.inverter.input_v", source.Judgement.Whole(),
			say.That("The inverter needs %s, and the line has %s.", say.Voltage(in.Val), say.Voltage(line)), say.That("Use one voltage.")))
	}
	return out
}

// throughInverter reports whether anything runs through the inverter.
func throughInverter(j judgement) bool { return j.result.Peak.AC > 0 }

// relayOff is how far the voltage of a relay's motor may be off the line, our own judgement.
const relayOff = 0.15

// voltsFeed is a motor whose supply the line cannot give.
func voltsFeed(j judgement) []reason.Reason {
	var out []reason.Reason
	line := j.variant.Controller.Line()
	for i, s := range j.result.Stores {
		h := HoistOf(s)
		if h == nil || !h.Design.Raise.Voltage.Is {
			continue
		}
		raise := h.Design.Raise
		v, word := raise.Voltage.Val, reason.Yes
		switch {
		case raise.Feed == lift.FeedRelay:
			word = reason.Tried(off(v, line, relayOff), off(v, line, relayOff))
		case raise.Feed == lift.FeedDrive && v > line && raise.Converter != lift.ConversionStepUp:
			word = reason.YesNo(raise.Converter, lift.ConversionStepDown)
		}
		out = append(out, worded(word, reason.Reason{ID: "volts_feed", Path: Join(HoistPath(i), "raise.voltage_v"), Source: source.Judgement.Whole(),
			Say:  say.That("The line of %s cannot give the motor's supply %s.", say.Voltage(line), say.Voltage(v)),
			Mend: say.That("Use the line's voltage, or a converter that steps it up.")})...)
	}
	return out
}

// batteriesJoined is two kinds of cells on one line.
func batteriesJoined(j judgement) []reason.Reason {
	var first cell.Chemistry
	for i, s := range j.result.Stores {
		c := CellsOf(s)
		if c == nil || c.Resolved.WhyNot != "" {
			continue
		}
		if first == "" {
			first = c.Resolved.Kind.Key
		}
		if c.Resolved.Kind.Key != first {
			return []reason.Reason{must("batteries_joined", Join(CellsPath(i), "kind"), source.CommonPractice.Whole(),
				say.That("Batteries of two kinds on one line charge each other: their voltages differ at every charge level."), say.That("Use one kind."))}
		}
	}
	return nil
}

// fuseBreaks is a fuse that may not end the battery's short circuit.
func fuseBreaks(j judgement) []reason.Reason {
	const blade = unit.Current(1000) // a blade fuse, from memory
	var out []reason.Reason
	for i, s := range j.result.Stores {
		c := CellsOf(s)
		if c == nil || c.Resolved.WhyNot != "" {
			continue
		}
		if short := c.Resolved.ShortCircuit(); short > c.Design.Breaking.Or(blade) {
			out = append(out, ask("fuse_breaks", Join(CellsPath(i), "breaking_a"), source.FromMemory.At("IEC 60269"),
				say.That("A short circuit of this battery makes up to %s, and its fuse may not end it: %s are counted for it.", say.Current(short).Up(), say.Current(c.Design.Breaking.Or(blade))),
				say.That("Use a type of fuse whose breaking capacity is at least %s.", say.Current(short).To(2).Up())))
		}
	}
	return out
}

// air is a kind of cells that gives off hydrogen indoors, without an opening for it.
func air(j judgement) []reason.Reason {
	var out []reason.Reason
	for i, s := range j.result.Stores {
		c := CellsOf(s)
		if c == nil || c.Resolved.WhyNot != "" || c.Design.Indoors == cell.InOutsideAir {
			continue
		}
		v := c.Resolved.Ventilation()
		if v.Opening <= 0 {
			continue
		}
		vent := c.Design.Vent
		small := vent.Is && vent.Val < v.Opening
		out = append(out, worded(reason.Tried(small, small || !vent.Is), reason.Reason{ID: "air", Path: Join(CellsPath(i), "vent_area_m2"), Source: source.IEC62485.Whole(),
			Say:  say.That("Hydrogen gathers where this battery is charged."),
			Mend: say.That("Make an opening of %s cm² to the outside low down, and the same again high up.", say.Of(unit.Ratios, float64(v.Opening)*1e4).To(2).Up())})...)
	}
	return out
}

// supplyCable is a wire of the motor's supply, or of a battery at its peak, that carries less than flows. What a battery's cable
// carries in the year is a caution of the battery.
func supplyCable(j judgement) []reason.Reason {
	var out []reason.Reason
	for i, s := range j.result.Stores {
		h := HoistOf(s)
		if h == nil || !h.onLine() {
			continue
		}
		path := Join(HoistPath(i), "raise.wire_area_m2")
		amps, known := h.supplyCurrent()
		area, ok := h.Design.Raise.WireArea.Value()
		if !ok {
			out = append(out, ask("cable", path, source.IEC60364.Whole(), say.That("How thick the wires between line and motor are is not known."), say.That("Measure their cross-section.")))
			continue
		}
		least, most := cell.AmpacityEnds(area)
		out = append(out, worded(reason.Tried(known && amps > most, !known || amps > least), reason.Reason{ID: "cable", Path: path, Source: source.IEC60364.Whole(),
			Say: say.That("The wires to the motor carry %s, and up to %s flow.", say.Current(least).Down(), say.Current(amps)), Mend: say.That("Use thicker wires.")})...)
	}
	return out
}

// onLine reports whether the line feeds the motor.
func (r *HoistResult) onLine() bool {
	f := r.Design.Raise.Feed
	return f == lift.FeedDrive || f == lift.FeedRelay
}

// supplyFuse is a fuse of the motor's supply that lets its wires burn.
func supplyFuse(j judgement) []reason.Reason {
	var out []reason.Reason
	for i, s := range j.result.Stores {
		h := HoistOf(s)
		if h == nil || !h.onLine() {
			continue
		}
		path, raise := Join(HoistPath(i), "raise.fuse_a"), h.Design.Raise
		if !raise.Fuse.Is {
			out = append(out, ask("fuse", path, source.CommonPractice.Whole(), say.That("Which fuse protects the wires to the motor is not known."), say.That("Put one at the line that its wires withstand.")))
			continue
		}
		if !raise.WireArea.Is {
			continue // said by cable
		}
		least, most := cell.AmpacityEnds(raise.WireArea.Val)
		out = append(out, worded(reason.Tried(raise.Fuse.Val > most, raise.Fuse.Val > least), reason.Reason{ID: "fuse", Path: path, Source: source.IEC60364.Whole(),
			Say: say.That("The fuse of %s lets the motor's wires burn: they carry %s.", say.Current(raise.Fuse.Val), say.Current(least).Down()), Mend: say.That("Use a smaller fuse or thicker wires.")})...)
	}
	return out
}

// contacts is a switch that cannot break the motor's current.
func contacts(j judgement) []reason.Reason {
	var out []reason.Reason
	for i, s := range j.result.Stores {
		h := HoistOf(s)
		if h == nil || !h.onLine() {
			continue
		}
		amps, known := h.supplyCurrent()
		rated := h.Design.Raise.Switch
		small := rated.Is && known && rated.Val < amps
		out = append(out, worded(reason.Tried(small, small || !rated.Is || !known), reason.Reason{ID: "contacts", Path: Join(HoistPath(i), "raise.switch_a"), Source: source.FromMemory.At("IEC 60947-3"),
			Say:  say.That("The switch must break the current of the held motor, %s of direct current.", say.Current(amps)),
			Mend: say.That("Use a switch or relay rated for it at direct current; the rating for alternating current does not count.")})...)
	}
	return out
}

// must is a reason that a change of the plan clears.
func must(id, path string, from source.Ref, text, mend say.Sentence) reason.Reason {
	return reason.Reason{ID: id, Word: reason.No, Path: path, Say: text, Mend: mend, Clears: reason.Change, Source: from}
}

// ask is a reason that an answer clears.
func ask(id, path string, from source.Ref, text, mend say.Sentence) reason.Reason {
	return reason.Reason{ID: id, Word: reason.NotKnown, Path: path, Say: text, Mend: mend, Clears: reason.Answer, Source: from}
}

// worded is r with a word and what clears it, none for Yes.
func worded(w reason.Word, r reason.Reason) []reason.Reason {
	r.Word, r.Clears = w, reason.Change
	switch w {
	case reason.Yes:
		return nil
	case reason.NotKnown:
		r.Clears = reason.Answer
	}
	return []reason.Reason{r}
}

func atAppliance(i int, field string) string { return fmt.Sprintf("load.appliances[%d].%s", i, field) }
