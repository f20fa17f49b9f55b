package model

import (
	"duskweight/internal/model/load"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// peakFuse is a battery's fuse that blows at the peak or in a start.
func peakFuse(j judgement) []reason.Reason {
	habit, mend := source.CommonPractice.Whole(), thickerFuse()
	return append(failing(j.result.Peak.Checks, "fuse", "peak_fuse", mend, habit), failing(j.result.Peak.Checks, "fuse_start", "peak_fuse", mend, habit)...)
}

// thickerFuse is what mends a fuse that blows.
func thickerFuse() say.Sentence {
	return say.That("Use a thicker cable and then a larger fuse, or less load.")
}

// boardCurrent is a management board that cuts off at the peak.
func boardCurrent(j judgement) []reason.Reason {
	from, mend := source.Judgement.Whole(), say.That("Use less at once, or a battery whose board lets more through.")
	out := failing(j.result.Peak.Checks, "board", "board", mend, from)
	for _, c := range j.result.Peak.Checks {
		if c.ID == "board" && c.Word == NotKnown {
			out = append(out, ask("board", c.Path, from, c.Say, say.That("Read the most current of the board on its label.")))
		}
	}
	return out
}

// lowVoltage is an inverter that switches off because the voltage falls at the peak.
func lowVoltage(j judgement) []reason.Reason {
	if !throughInverter(j) {
		return nil
	}
	return failing(j.result.Peak.Checks, "low_voltage", "low_voltage", say.That("Use a thicker or shorter cable, a larger battery, or less at once."), source.CommonPractice.Whole())
}

// lampVolts is a lamp or device on the line whose own cable loses more than a twentieth of the line's voltage: it is dim, or does
// not work. A cable of which length or cross-section is not known is a remark.
func lampVolts(j judgement) []reason.Reason {
	return failing(j.result.Peak.Checks, "lamp_volts", "lamp_volts", say.That("Use a thicker or shorter cable."), source.CommonPractice.Whole())
}

// inverter is one that is wanted and not there, or too weak, or of which nobody says what it gives.
func inverter(j judgement) []reason.Reason {
	if !throughInverter(j) {
		return nil
	}
	habit := source.CommonPractice.Whole()
	p, v := j.result.Peak, j.ground.Project.Load.Inverter
	need := say.That("Use one of at least %s.", say.Power(unit.Power(inverterReserve*p.VA)).To(2).Up())
	if v.Present == unit.No {
		return []reason.Reason{must("inverter", "load.inverter.present", habit, say.That("Devices of %s run through an inverter, and there is none.", say.Power(unit.Power(p.AC))), need)}
	}
	checks := j.result.Peak.Checks
	text := func(c LineCheck) say.Sentence {
		return say.Join(c.Say, say.That("It gives %s.", say.Power(unit.Power(c.Capacity))))
	}
	var out []reason.Reason
	for _, c := range checks {
		if c.ID != "inverter_run" && c.ID != "inverter_start" {
			continue
		}
		mend := need
		if c.ID == "inverter_start" {
			mend = say.That("Use one that gives at least %s for a start.", say.Power(unit.Power(p.ACMost)).To(2).Up())
		}
		switch c.Word {
		case GivesWay:
			r := must("inverter", c.Path, habit, text(c), mend)
			r.Use = c.Use
			out = append(out, r)
		case NotKnown:
			out = append(out, ask("inverter", c.Path, habit, say.Join(c.Say, say.That("What it withstands is not known.")), mend))
		}
	}
	return out
}

// mainsOut is an inverter whose wiring at mains voltage nobody answers for.
func mainsOut(j judgement) []reason.Reason {
	v := j.ground.Project.Load.Inverter
	if !throughInverter(j) || v.Present == unit.No || v.OwnSockets == unit.Yes || j.variant.Controller.Licensed == unit.Yes {
		return nil
	}
	r := ask("mains_out", "load.inverter.own_sockets", source.CommonPractice.Whole(), say.That("Who wires the mains side of the inverter is not known. Its voltage kills."),
		say.That("Plug the devices into the inverter itself, or leave its wiring to a licensed person."))
	r.Clears = reason.Person
	return []reason.Reason{r}
}

// bareVolts is a device on the line that needs another voltage.
func bareVolts(j judgement) []reason.Reason {
	var out []reason.Reason
	line := j.variant.Controller.Line()
	for i, a := range j.ground.Project.Load.Appliances {
		v, ok := a.Volts.Value()
		if !ok || a.Supply != load.SupplyDc || !off(v, line, classOff) {
			continue
		}
		out = append(out, worded(reason.YesNo(a.Converter, unit.No), reason.Reason{ID: "bare_volts", Path: atAppliance(i, "own_converter"), Source: source.CommonPractice.Whole(),
			Say: say.That("%s needs %s, and the line has %s.", capital(nameOf(a)), say.Voltage(v), say.Voltage(line)), Mend: say.That("Use its converter.")})...)
	}
	return out
}

// mayHarm are the purposes of which somebody has to say that nobody is harmed when they stop. A purpose that nobody gave may
// be any.
var mayHarm = map[string]bool{"": true, "other": true, "pump": true, "cooling": true, "fan": true}

// harm is a device of which nobody says whether anyone is harmed when it stops. A yes is refused as a load.
func harm(j judgement) []reason.Reason {
	var out []reason.Reason
	for i, a := range j.ground.Project.Load.Appliances {
		if !mayHarm[string(a.Purpose)] || a.StopsHarm != "" {
			continue
		}
		r := ask("harm", atAppliance(i, "stops_harm"), source.Judgement.Whole(), say.That("Is a person or an animal harmed when %s stops?", harmName(a)), say.That("Answer this question. If yes, the device needs a supply that does not stop."))
		r.Forbids = true
		out = append(out, r)
	}
	return out
}

func harmName(a load.Appliance) string {
	if a.Name == "" {
		return "this"
	}
	return a.Name
}
