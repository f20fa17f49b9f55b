package model

import (
	"cmp"
	"slices"

	"duskweight/internal/model/cell"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/source"
	"duskweight/internal/say"
)

// batteryRules are the rules of batteries as the battery itself is computed: place, board, what its cells are, cable, fuse.
func batteryRules() []rule {
	return []rule{{"battery", batteryFlags}, {"fuse", unprotected}}
}

// batteryFlags are the cautions of a battery that forbid its use or leave it open.
func batteryFlags(j judgement) []reason.Reason {
	var out []reason.Reason
	for i, s := range j.result.Stores {
		c := CellsOf(s)
		if c == nil || s.WhyNot != "" {
			continue
		}
		for _, f := range slices.Concat(c.Cautions, c.Line.Flags) {
			if f.Path == "series" {
				continue // said by volts_touch, at the voltage of the full battery
			}
			r := reason.Reason{ID: cmp.Or(f.ID, batteryID(f.Path)), Path: Join(CellsPath(i), f.Path), Say: say.That("%s", f.Say), Source: source.CommonPractice.Whole()}
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

// unprotected are a fuse and a cable that nobody gave, and a fuse that lets its cable burn where the year did not say so.
func unprotected(j judgement) []reason.Reason {
	var out []reason.Reason
	for i, s := range j.result.Stores {
		c := CellsOf(s)
		if c == nil || s.WhyNot != "" {
			continue
		}
		if amps, ok := cell.Ampacity(c.Design.CableArea.Or(0)); ok && c.Design.Fuse.Is && c.Design.Fuse.Val > amps && !flagged(c.Line.Flags, "fuse_a") {
			out = append(out, must("fuse", Join(CellsPath(i), "fuse_a"), source.CommonPractice.Whole(),
				say.That("The fuse of %s lets the cable burn: it carries %s.", say.Current(c.Design.Fuse.Val), say.Current(amps)), say.That("Use a smaller fuse or a thicker cable.")))
		}
		for _, m := range c.unprotected() {
			out = append(out, reason.Reason{ID: batteryID(m.Path), Word: reason.NotKnown, Path: Join(CellsPath(i), m.Path), Clears: reason.Answer,
				Say: say.That("%s is not known.", m.Wants), Source: source.CommonPractice.Whole()})
		}
	}
	return out
}

// flagged reports whether a bad flag of a path is among some.
func flagged(flags []cell.Flag, path string) bool {
	return slices.ContainsFunc(flags, func(f cell.Flag) bool { return f.Bad && f.Path == path })
}
