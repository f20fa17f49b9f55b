package model

import (
	"fmt"

	"duskweight/internal/model/cell"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

func atPanels(i int, field string) string { return fmt.Sprintf("panels[%d].%s", i, field) }

// voltsString is a string of panels whose open voltage in frost passes what the controller withstands.
func voltsString(j judgement) []reason.Reason {
	var out []reason.Reason
	c := j.variant.Controller
	if c.Kind == panel.ControllerDirect {
		return nil
	}
	for _, s := range j.result.Wiring.Strings {
		switch most, known := c.MaxInput.Value(); {
		case !s.Known:
			out = append(out, ask("volts_string", atPanels(s.At, seriesField(j.variant.Panels[s.At])), source.NEC690.At("690.7"), say.That("How many panels are in series, and so which voltage they make, is not known."), say.That("Give the panel's data sheet, or the number of strings.")))
		case !known:
			out = append(out, ask("volts_string", "controller.max_input_v", source.NEC690.At("690.7"), say.That("In the coldest hour the string makes up to %s, and what the controller withstands is not known.", say.Voltage(s.ColdWorst).Up()), say.That("Read it on the controller's label.")))
		default:
			word := reason.Tried(s.Cold > most, s.ColdWorst > most)
			out = append(out, worded(word, reason.Reason{ID: "volts_string", Path: atPanels(s.At, "sheet.panels_in_series"), Source: source.NEC690.At("690.7"),
				Say:  say.That("In the coldest hour the string makes %s, and the controller withstands %s.", say.Voltage(worstOf(word, s)).Up(), say.Voltage(most).Down()),
				Mend: fewer(word)})...)
		}
	}
	return out
}

// seriesField is the field that tells how many panels stand in series.
func seriesField(a panel.Array) string {
	if a.Sheet == nil {
		return "sheet"
	}
	return "sheet.panels_in_series"
}

// worstOf is the voltage that a word rests on.
func worstOf(w reason.Word, s StringVolts) unit.Voltage {
	if w == reason.No {
		return s.Cold
	}
	return s.ColdWorst
}

func fewer(w reason.Word) say.Sentence {
	if w == reason.NotKnown {
		return say.That("Give the lowest temperature ever measured there, or put fewer panels in series.")
	}
	return say.That("Put fewer panels in series.")
}

// stringMost is the voltage of a string, V, that only a licensed person may join at all (our own border, from the low-voltage
// rooms of IEC 60364-4-41, from memory).
const stringMost = 120

// voltsTouch is a voltage that can kill where a hand may come.
func voltsTouch(j judgement) []reason.Reason {
	var out []reason.Reason
	from := source.FromMemory.At("IEC 60364-4-41")
	for _, x := range liveVolts(j.variant, j.result.Stores) {
		if x.volts > touchable {
			out = append(out, must("volts_touch", x.path, from, say.That("%s: %s can kill.", x.what, say.Voltage(x.volts)), say.That("Stay at or below 60 V.")))
		}
	}
	licensed := j.variant.Controller.Licensed == unit.Yes
	for _, s := range j.result.Wiring.Strings {
		path := atPanels(s.At, "sheet.panels_in_series")
		text := say.That("This string reaches %s on a cold morning, and panels cannot be switched off.", say.Voltage(s.ColdWorst).Up())
		switch {
		case s.Cold > stringMost:
			out = append(out, must("volts_touch", path, from, text, say.That("Put fewer panels in series.")))
		case s.ColdWorst > stringMost:
			out = append(out, ask("volts_touch", path, from, text, fewer(reason.NotKnown)))
		case s.ColdWorst > touchable && !licensed:
			r := ask("volts_touch", path, from, text, say.That("Let a licensed person join it, or use fewer panels in series."))
			r.Clears = reason.Person
			out = append(out, r)
		}
	}
	return out
}

// stringsFuse is strings side by side that can push more through a shaded one than its panels withstand.
func stringsFuse(j judgement) []reason.Reason {
	var out []reason.Reason
	fused := j.variant.Controller.StringFuses
	if fused == unit.Yes {
		return nil
	}
	for _, s := range j.result.Wiring.Strings {
		a := j.variant.Panels[s.At]
		most, known := a.Short(s.Most - 1)
		if s.Most <= 1 || known && most <= a.SeriesFuse() {
			continue
		}
		text := say.That("The current of the other strings flows into a shaded one: how much is not known.")
		if known {
			text = say.That("The current of the other strings flows into a shaded one: up to %s, and its panels withstand %s.", say.Current(most), say.Current(a.SeriesFuse()))
		}
		out = append(out, ask("strings_fuse", "controller.string_fuses", source.FromMemory.At("IEC 62548"), text, say.That("Give each string its own fuse.")))
	}
	return out
}

// panelCable is a cable of the panels that is too thin for bright sun. Where nobody says how many strings share it, they may
// all.
func panelCable(j judgement) []reason.Reason {
	var out []reason.Reason
	for _, s := range j.result.Wiring.Strings {
		a := j.variant.Panels[s.At]
		best, known := a.Short(s.Side)
		worst, _ := a.Short(s.Most)
		if !known {
			continue // without a sheet the current is not known; volts_string asks for it
		}
		least, most := cell.AmpacityEnds(a.Lead())
		word := reason.Tried(best > most, worst > least)
		amps := worst
		if word == reason.No {
			amps = best
		}
		out = append(out, worded(word, reason.Reason{ID: "panel_cable", Path: atPanels(s.At, "cable_area_m2"), Source: source.FromMemory.At("IEC 60364-7-712"),
			Say:  say.That("The panels' cable of %s carries %s, and up to %s can flow in it.", say.WireArea(a.Lead()), say.Current(least).Down(), say.Current(amps)),
			Mend: thicker(amps)})...)
	}
	return out
}

// thicker says which cable carries a current.
func thicker(i unit.Current) say.Sentence {
	if a, ok := cell.AreaFor(i); ok {
		return say.That("Use a cable of %s, or a cable for each string.", say.WireArea(a))
	}
	return say.That("Use a cable for each string.")
}

// panelInput is more current from the panels than the controller withstands.
func panelInput(j judgement) []reason.Reason {
	return failing(j.result.Wiring.Checks, "panel_input", "panel_input", say.That("Use a larger controller, or fewer strings."), source.FromMemory.At("IEC 62548"))
}

// failing are the reasons of those checks of an id that give way.
func failing(checks []LineCheck, id, as string, mend say.Sentence, from source.Ref) []reason.Reason {
	var out []reason.Reason
	for _, c := range checks {
		if c.ID == id && c.Word == GivesWay {
			r := must(as, c.Path, from, c.Say, mend)
			r.Use = c.Use
			out = append(out, r)
		}
	}
	return out
}
