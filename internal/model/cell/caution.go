package cell

import (
	"fmt"

	"duskweight/internal/model/unit"
)

// StringsMost is the number of parallel strings of lead–acid that is usually still fine (common practice: three or
// four).
const StringsMost = 3

// SafeVoltage is the voltage above which a shock can kill: extra-low voltage ends at 60 V of ripple-free direct current
// (IEC 61140, from memory).
const SafeVoltage = unit.Voltage(60)

// Cautions says what to beware of, in words: strings, voltage, fire, place, origin, and what the year does to the cells.
func (r Resolved) Cautions(l Life) []Flag {
	if r.Kind.Key == "" {
		return nil
	}
	var out []Flag
	say := func(path string, bad bool, format string, args ...any) {
		out = append(out, Flag{Path: path, Say: fmt.Sprintf(format, args...), Bad: bad})
	}
	ask := func(path, what string) { out = append(out, Flag{Path: path, Say: "Not known " + what, Open: true}) }
	r.bankCautions(say, ask)
	r.fireCautions(say, ask)
	before := len(out)
	r.yearCautions(l, say)
	for i := range out[before:] {
		if f := &out[before+i]; f.Bad && f.Path == "place" {
			f.ID = "freezes"
		}
	}
	for _, n := range r.Kind.Notes {
		say("kind", false, "%s", n)
	}
	return out
}

type sayer func(path string, bad bool, format string, args ...any)

// asker tells a question of safety that nobody has answered: "where the battery stands".
type asker func(path, what string)

func (r Resolved) bankCautions(say sayer, ask asker) {
	if r.Kind.Lead && r.Parallel > StringsMost {
		say("parallel", false, "%d strings side by side: they do not share the current equally and the weakest dies first. Take larger blocks and three strings at most.", r.Parallel)
	}
	if r.Kind.Ion && r.Series > 1 {
		say("series", false, "Blocks with their own management boards in a row: ask the maker whether the boards allow it.")
	}
	if r.Parallel > 1 {
		say("parallel", false, "Bring blocks to the same voltage before you join them side by side.")
	}
	if r.Voltage > SafeVoltage {
		say("series", true, "%.3g V can kill. Stay at or below 60 V.", float64(r.Voltage))
	}
	switch r.bank.Origin {
	case "second_hand":
		say("cells_are", false, "Second-hand cells: test each for capacity and self-discharge, and use only those of one kind and age.")
	case "mixed":
		say("cells_are", true, "Mixed or unknown cells must not be joined: one of them is overcharged, and that can start a fire.")
	case "":
		ask("cells_are", "whether the cells are new and matched.")
	}
}

func (r Resolved) fireCautions(say sayer, ask asker) {
	if r.Kind.Ion {
		switch r.bank.Board {
		case "no":
			say("management_board", true, "Without a management board that stops charging in the cold, these cells can burn. Do not use them.")
		case "":
			ask("management_board", "whether a board stops cold charging: a management board with a cold-charge cut.")
		}
	}
	switch r.bank.Indoors {
	case "bedroom", "escape_route":
		say("place", true, "Not in a bedroom and not on the way out: if it burns, nobody gets out.")
	case "loft":
		say("place", true, "Not in a loft: it is hot there, and a fire is seen too late.")
	case "":
		ask("place", "where the battery stands. Not in a bedroom, on the way out or in a loft; a smoke alarm beside it.")
	case "own_room", "shed":
		say("place", false, "A smoke alarm where the battery stands, and nothing that burns beside it.")
	}
	if r.Kind.Lead {
		say("kind", false, "Acid: goggles on, water for 15 minutes at hand, no rings or chains, no sparks near while it charges.")
	}
	if v := r.Ventilation(); v.Boost > 0 {
		say("place", false, "It makes hydrogen when it charges. It wants %.2g m³ of air an hour, through an opening of %.2g cm² low down and one near the top.", v.Boost, float64(v.Opening)*1e4)
	}
}

func (r Resolved) yearCautions(l Life, say sayer) {
	if !l.Known {
		return
	}
	if l.Sulphates {
		say("", false, "It is never full for %.0f days on end. Lead–acid that is seldom full goes hard and loses its capacity; that loss is not in the life shown.", float64(l.NotFull/unit.Day))
	}
	switch {
	case l.FreezeHours > 0:
		say("place", true, "It freezes in %d hours of the year, because it stands low in the cold, and frozen cells burst. Keep it fuller or warmer.", l.FreezeHours)
	case l.NearFreeze > 0:
		say("place", false, "It comes near freezing in %d hours of the year. Keep it fuller or warmer.", l.NearFreeze)
	}
	if l.NoFillHours > 0 {
		say("charge_min_c", false, "In %d hours of the year it is too cold or too hot to charge.", l.NoFillHours)
	}
	if r.Kind.Lead && r.bank.ChargeRate.Is && r.bank.ChargeRate.Val > 0.3 && l.BelowZero > 0 {
		say("charge_rate_per_h", false, "Below 0 °C charge it in no less than about 3 hours (source: BU-410).")
	}
}
