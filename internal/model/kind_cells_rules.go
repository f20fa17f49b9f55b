package model

import (
	"cmp"
	"slices"

	"duskweight/internal/model/cell"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Rules are those of one battery: place, board, what its cells are, cable, fuse, air, and what the panels charge.
func (c *CellsResult) Rules(j judgement, i int) []rule {
	known, inYear := c.Resolved.WhyNot == "", j.result.Stores[i].WhyNot == ""
	of := func(name string, asked bool, look func(judgement, *CellsResult) []reason.Reason) rule {
		return rule{name, func(j judgement) []reason.Reason {
			if !asked {
				return nil
			}
			return look(j, c)
		}}
	}
	return []rule{
		{"not_computed", func(j judgement) []reason.Reason { return bankOpen(j.result.Stores[i].WhyNot) }},
		{"batteries_joined", func(j judgement) []reason.Reason { return batteriesJoined(j.result.Stores[:i], c) }},
		of("battery", inYear, batteryFlags), of("fuse", inYear, fuseOpen),
		of("bank_volts", known, bankVolts), of("fuse_breaks", known, fuseBreaks), of("carries", known, carriesPeak), of("charge_fuse", known, chargeFuse), of("charge_current", known, chargeCurrent),
		of("charge_open", known, chargeOpen), of("charge_ungoverned", known, chargeUngoverned), of("backup_charge", known, backupCharge), of("air", known, air),
	}
}

// bankOpen is a battery of which too little is known.
func bankOpen(whyNot string) []reason.Reason {
	if whyNot == "" {
		return nil
	}
	return []reason.Reason{{ID: "not_computed", Word: reason.NotKnown, Clears: reason.Answer, Say: say.That("%s", whyNot), Source: source.Derivation.Whole()}}
}

// bankVolts is a battery of another voltage than the line.
func bankVolts(j judgement, c *CellsResult) []reason.Reason {
	line := j.variant.Controller.Line()
	if !off(c.Resolved.Voltage, line, classOff) {
		return nil
	}
	return []reason.Reason{must("volts_line", "block_voltage_v", source.Judgement.Whole(),
		say.That("The battery has %s, and the line %s.", say.Voltage(c.Resolved.Voltage), say.Voltage(line)), say.That("Use one voltage."))}
}

// batteriesJoined is cells of another kind than those of the first battery on the line.
func batteriesJoined(before []StoreResult, c *CellsResult) []reason.Reason {
	if c.Resolved.WhyNot != "" {
		return nil
	}
	for _, s := range before {
		first := CellsOf(s)
		if first == nil || first.Resolved.WhyNot != "" {
			continue
		}
		if first.Resolved.Kind.Key == c.Resolved.Kind.Key {
			return nil
		}
		return []reason.Reason{must("batteries_joined", "kind", source.CommonPractice.Whole(),
			say.That("Batteries of two kinds on one line charge each other: their voltages differ at every charge level."), say.That("Use one kind."))}
	}
	return nil
}

// fuseBreaks is a fuse that may not end the battery's short circuit.
func fuseBreaks(_ judgement, c *CellsResult) (out []reason.Reason) {
	const blade = unit.Current(1000) // a blade fuse, from memory
	if short := c.Resolved.ShortCircuit(); short > c.Design.Breaking.Or(blade) {
		out = append(out, ask("fuse_breaks", "breaking_a", source.FromMemory.At("IEC 60269"),
			say.That("A short circuit of this battery makes up to %s, and its fuse may not end it: %s are counted for it.", say.Current(short).Up(), say.Current(c.Design.Breaking.Or(blade))),
			say.That("Use a type of fuse whose breaking capacity is at least %s.", say.Current(short).To(2).Up())))
	}
	return out
}

// carriesPeak is a battery that cannot give the power of the peak at any current: its voltage breaks down, and what flows then
// says nothing about fuse and cable. Where one of them, the board or the inverter gives way all the same, that says it.
func carriesPeak(j judgement, c *CellsResult) []reason.Reason {
	told := func(k LineCheck) bool { // some other rule makes a reason of it
		ofInverter := k.ID == "low_voltage" || k.ID == "inverter_run" || k.ID == "inverter_start"
		return k.Word == GivesWay && k.ID != "lamp_volts" && k.ID != breaksDown && (!ofInverter || throughInverter(j))
	}
	if slices.ContainsFunc(j.result.Peak.Checks, told) {
		return nil
	}
	for _, b := range j.result.Peak.Banks {
		if b.part == Part(c) && !b.Carries {
			return []reason.Reason{must("low_voltage", "internal_ohm", source.Derivation.Whole(),
				say.That("This battery cannot give the %s that may be on at once: its voltage breaks down.", say.Power(j.result.Peak.Line)),
				say.That("Use a larger battery, a thicker or shorter cable, or less at once."))}
		}
	}
	return nil
}

// air is a kind of cells that gives off hydrogen indoors, without an opening for it.
func air(_ judgement, c *CellsResult) []reason.Reason {
	if c.Design.Indoors == cell.InOutsideAir {
		return nil
	}
	v := c.Resolved.Ventilation()
	if v.Opening <= 0 {
		return nil
	}
	vent := c.Design.Vent
	small := vent.Is && vent.Val < v.Opening
	return worded(reason.Tried(small, small || !vent.Is), reason.Reason{ID: "air", Path: "vent_area_m2", Source: source.IEC62485.Whole(),
		Say:  say.That("Hydrogen gathers where this battery is charged."),
		Mend: say.That("Make an opening of %s to the outside low down, and the same again high up.", say.Opening(v.Opening).To(2).Up())})
}

// batteryFlags are the cautions of a battery that forbid its use or leave it open.
func batteryFlags(_ judgement, c *CellsResult) (out []reason.Reason) {
	for _, f := range slices.Concat(c.Cautions, c.Line.Flags) {
		if f.Path == "series" {
			continue // said by volts_touch, at the voltage of the full battery
		}
		r := reason.Reason{ID: cmp.Or(f.ID, batteryID(f.Path)), Path: f.Path, Head: f.Head, Say: say.That("%s", f.Say), Source: source.CommonPractice.Whole()}
		switch {
		case f.Bad:
			r.Word, r.Clears = reason.No, reason.Change
		case f.Open:
			r.Word, r.Clears = reason.NotKnown, reason.Answer
		default:
			continue
		}
		out = append(out, r)
	}
	return out
}

// batteryID is the id of a caution by the field that it is about.
func batteryID(path string) string {
	switch path {
	case "management_board":
		return "board"
	case "cells_are":
		return "cells_mixed"
	case "fuse_a":
		return "fuse"
	case "cable_area_m2", "cable_length_m":
		return "cable"
	}
	return "place"
}

// fuseOpen is a fuse and a cable that nobody gave, and a fuse that lets its cable burn where the year did not say so.
func fuseOpen(_ judgement, c *CellsResult) (out []reason.Reason) {
	if amps, ok := cell.Ampacity(c.Design.CableArea.Or(0)); ok && c.Design.Fuse.Is && c.Design.Fuse.Val > amps && !flagged(c.Line.Flags, "fuse_a") {
		out = append(out, must("fuse", "fuse_a", source.CommonPractice.Whole(),
			say.That("The fuse of %s lets the cable burn: it carries %s.", say.Current(c.Design.Fuse.Val), say.Current(amps)), say.That("Use a smaller fuse or a thicker cable.")))
	}
	for _, m := range c.unprotected() {
		out = append(out, reason.Reason{ID: batteryID(m.Path), Word: reason.NotKnown, Path: m.Path, Clears: reason.Answer,
			Say: say.That("%s is not known.", m.Wants), Source: source.CommonPractice.Whole()})
	}
	return out
}

// flagged reports whether a bad flag of a path is among some.
func flagged(flags []cell.Flag, path string) bool {
	return slices.ContainsFunc(flags, func(f cell.Flag) bool { return f.Bad && f.Path == path })
}
