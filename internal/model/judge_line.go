package model

import (
	"fmt"
	"math"

	"duskweight/internal/model/reason"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// lineRules are the rules of line, panels, peak and loads, in the order of the rule book.
func lineRules() []rule {
	return []rule{
		{"volts_line", voltsLine}, {"panels_mixed", panelsMixed}, {"volts_string", voltsString}, {"volts_touch", voltsTouch},
		{"mains_out", mainsOut}, {"strings_fuse", stringsFuse}, {"panel_cable", panelCable}, {"panel_input", panelInput},
		{"peak_fuse", peakFuse},
		{"board_current", boardCurrent}, {"low_voltage", lowVoltage}, {"lamp_volts", lampVolts}, {"load_open", loadOpen},
		{"inverter", inverter}, {"bare_volts", bareVolts}, {"harm", harm},
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
