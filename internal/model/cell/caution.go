package cell

import (
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
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
	tell := func(path string, bad bool, words string, values ...any) {
		out = append(out, Flag{Path: path, Say: say.That(words, values...), Bad: bad})
	}
	ask := func(path, what, more string) {
		out = append(out, Flag{Path: path, Head: say.Words(what).Capital(), Say: say.That("%s is not known%s", say.Words(what).Capital(), more), Open: true})
	}
	r.bankCautions(tell, ask)
	r.fireCautions(tell, ask)
	before := len(out)
	r.yearCautions(l, tell)
	for i := before; i < len(out); i++ {
		if f := &out[i]; f.Bad && f.Path == "place" {
			f.ID = "freezes"
		}
	}
	for _, n := range r.Kind.Notes {
		tell("kind", false, "%s", n)
	}
	return out
}

type sayer func(path string, bad bool, words string, values ...any)

// asker tells a question of safety that nobody has answered, "the place of the battery", and what follows it.
type asker func(path, what, more string)

func (r Resolved) bankCautions(tell sayer, ask asker) {
	if r.Kind.Lead && r.Parallel > StringsMost {
		tell("parallel", false, "%s strings side by side: they do not share the current equally and the weakest dies first. Use larger blocks and three strings at most.", int(r.Parallel))
	}
	if r.Kind.Ion && r.Series > 1 {
		tell("series", false, "Blocks with their own management boards in a row: ask the maker whether the boards allow it.")
	}
	if r.Parallel > 1 {
		tell("parallel", false, "Bring blocks to the same voltage before you join them side by side.")
	}
	if r.Voltage > SafeVoltage {
		tell("series", true, "%s can kill. Stay at or below 60 V.", say.Voltage(r.Voltage))
	}
	switch r.bank.Origin {
	case BlocksSecondHand:
		tell("cells_are", false, "Second-hand cells: test each for capacity and self-discharge, and use only those of one kind and age.")
	case BlocksMixed:
		tell("cells_are", true, "Mixed or unknown cells must not be joined: one of them is overcharged, and that can start a fire.")
	case "":
		ask("cells_are", "whether the cells are new and matched", ".")
	}
}

func (r Resolved) fireCautions(tell sayer, ask asker) {
	if r.Kind.Ion {
		switch r.bank.Board {
		case unit.No:
			tell("management_board", true, "Without a management board that stops charging in the cold, these cells can burn. Do not use them.")
		case "":
			ask("management_board", "whether a board stops charging in the cold", ". Use a management board that stops it.")
		}
	}
	switch r.bank.Indoors {
	case InBedroom, InEscapeRoute:
		tell("place", true, "A battery may not be in a bedroom or on the way out: if it burns, nobody gets out.")
	case InLoft:
		tell("place", true, "A battery may not be in a loft: it is hot there, and a fire is seen too late.")
	case "":
		ask("place", "the place of the battery", ". It may not be in a bedroom, on the way out or in a loft. Put a smoke alarm beside it.")
	case InOwnRoom, InShed:
		tell("place", false, "Put a smoke alarm where the battery is, and nothing that burns beside it.")
	}
	if r.Kind.Lead {
		tell("kind", false, "Acid: wear goggles, keep water for 15 minutes at hand, wear no rings or chains. Keep sparks away while it charges.")
	}
	if v := r.Ventilation(); v.Boost > 0 {
		tell("place", false, "This battery gives off hydrogen when it charges. It needs %s of air an hour, through an opening of %s low down and one near the top.", say.Of(unit.Volumes, float64(v.Boost)).To(2).Up(), say.Opening(v.Opening).To(2).Up())
	}
}

func hours(n int) say.Sentence { return say.Plural(n, "hour", "hours") }

func (r Resolved) yearCautions(l Life, tell sayer) {
	if !l.Known {
		return
	}
	if l.Sulphates {
		tell("", false, "It is not full for %s without a break. Lead–acid that is seldom full forms hard crystals: cycles wear it %s times as fast.", say.Time(l.NotFull).To(0), say.Times(unit.Ratio(l.Sulphation)).To(2))
	}
	switch {
	case l.FreezeHours > 0:
		tell("place", true, "It freezes in %s of the year, because its charge is low in the cold, and frozen cells burst. Keep it fuller or warmer.", hours(l.FreezeHours))
	case l.NearFreeze > 0:
		tell("place", false, "It is close to freezing in %s of the year. Keep it fuller or warmer.", hours(l.NearFreeze))
	}
	if l.NoFillHours > 0 {
		tell("charge_min_c", false, "In %s of the year it is too cold or too hot to charge.", hours(l.NoFillHours))
	}
	if r.Kind.Lead && r.bank.ChargeRate.Is && r.bank.ChargeRate.Val > 0.3 && l.BelowZero > 0 {
		tell("charge_rate_per_h", false, "Below %s let a full charge last about 3 hours or more (source: BU-410).", say.Temperature(0))
	}
}
