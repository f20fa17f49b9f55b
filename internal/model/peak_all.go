package model

import (
	"cmp"
	"slices"

	"duskweight/internal/model/load"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// AllAtOnce are the checks of the moment in which everything is on that may be on together and every motor lifts, the worst
// first: inverter; fuse, cable, board and voltage of each battery; cables of lamps; wires and switch of each motor that the
// line feeds.
func (r VariantResult) AllAtOnce() []LineCheck {
	out := slices.Clone(r.Peak.Checks)
	for i, s := range r.Stores {
		for _, c := range s.Part.Wires().Checks {
			c.Path = Join(s.Kind.Path(i), c.Path)
			out = append(out, c)
		}
	}
	slices.SortStableFunc(out, WorseCheck)
	return out
}

// checkRank orders the words of a check from best to worst.
var checkRank = map[string]int{Holds: 0, Tight: 1, NotKnown: 2, GivesWay: 3}

// WorseCheck orders two checks, the worse first: by word, then by use.
func WorseCheck(a, b LineCheck) int {
	return cmp.Or(cmp.Compare(checkRank[b.Word], checkRank[a.Word]), cmp.Compare(b.Use.Or(0), a.Use.Or(0)))
}

// MendOf is what the judge says to do about a check that gives way or is not known; nothing where it holds, and where the
// judge does not count it.
func (r VariantResult) MendOf(c LineCheck) say.Sentence {
	word := map[string]reason.Word{GivesWay: reason.No, NotKnown: reason.NotKnown}[c.Word]
	for _, b := range r.Because {
		if b.Path == c.Path && b.Word == word {
			return b.Mend
		}
	}
	return say.Sentence{}
}

// PeakOfLoad is the peak of the lamps and devices alone, without a variant.
func (g Ground) PeakOfLoad() Peak { return g.peak(Variant{}, nil) }

// SayLoad tells the moments in which lamps and devices ask the most, running and at a start.
func (p Peak) SayLoad(l load.Load) []say.Sentence {
	if len(p.Run.On) == 0 {
		return []say.Sentence{say.That("No lamp or device has hours and watts that are known.")}
	}
	out := []say.Sentence{say.That("From %s %s: %s.", clock(p.Run.Hour), mayRun(l, p.Run.On), say.Power(unit.Power(p.Run.Run())))}
	if t := p.Start; t.Starts >= 0 && t.Start > 0 {
		out = append(out, say.That("When %s starts at %s, that is up to %s.", nameOf(l.Appliances[t.Starts]), clock(t.Hour), say.Power(unit.Power(t.StartPower()))))
	}
	return out
}

// SayLine tells what the line of a variant must give in those moments.
func (p Peak) SayLine() []say.Sentence {
	gives := say.That("With what uses power all the time and what the inverter loses, the line must give %s.", say.Power(p.Line))
	if p.LineStart > p.Line {
		gives = say.That("With what uses power all the time and what the inverter loses, the line must give %s, and %s at a start.", say.Power(p.Line), say.Power(p.LineStart))
	}
	if p.Hoists > 0 {
		return []say.Sentence{gives, say.That("%s of that are for motors that begin to lift at the same time.", say.Power(p.Hoists))}
	}
	return []say.Sentence{gives}
}

// Say tells what a battery gives, by its name, if it must carry the peak alone.
func (b PeakBank) Say(name string) say.Sentence {
	switch {
	case !b.Carries:
		return say.That("“%s” cannot give that: its voltage breaks down. At most %s flow out of it.", name, say.Current(b.Current))
	case b.Start > b.Current:
		return say.That("“%s” gives %s, and %s at a start. %s", name, say.Current(b.Current), say.Current(b.Start), sag(b.Rest, b.Voltage))
	}
	return say.That("“%s” gives %s. %s", name, say.Current(b.Current), sag(b.Rest, b.Voltage))
}

// sag says how far a battery's voltage falls under load, or that it stays where both read the same.
func sag(rest, loaded unit.Voltage) say.Sentence {
	from, to := say.Voltage(rest), say.Voltage(loaded)
	if from.String() == to.String() {
		return say.That("Its voltage stays at %s.", from)
	}
	return say.That("Its voltage falls from %s to %s.", from, to)
}

func clock(hour int) say.Amount {
	return say.Of(unit.ClockTimes, float64(unit.Hour)*float64(hour))
}

// mostNamed is how many appliances a sentence names; more are counted.
const mostNamed = 4

// mayRun names what may run together: "Kettle and Fridge may run together", "Lamp may run alone".
func mayRun(l load.Load, on []int) say.Sentence {
	if len(on) == 1 {
		return say.That("%s may run alone", nameOf(l.Appliances[on[0]]))
	}
	named := on[:min(len(on), mostNamed)]
	var names []say.Sentence
	for _, i := range named {
		names = append(names, say.Words(nameOf(l.Appliances[i])))
	}
	last := names[len(names)-1]
	if more := len(on) - len(named); more > 0 {
		names, last = append(names, last), say.That("%s more", more)
	}
	return say.That("%s and %s may run together", say.List(", ", names[:len(names)-1]...), last)
}
