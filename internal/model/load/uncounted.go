package load

import "duskweight/internal/say"

// uncounted tells of an essential appliance that counts as nothing, because its time, its power or its number is not known; the
// empty sentence for one that counts, that is refused or that is only nice to have. A power or a number of zero is known.
func (a Appliance) uncounted() say.Sentence {
	_, refused := Refused(a)
	name := "“" + a.Name + "”"
	if a.Name == "" {
		name = "a device without a name"
	}
	switch {
	case refused || a.Priority == PriorityNice:
		return say.Sentence{}
	case !a.timeKnown():
		return say.That("when %s runs is not known, so it is not counted", name)
	case a.MayWait() && !a.Daily().Is:
		return say.That("what %s needs in a day is not known, so it is not counted", name)
	case !a.Running().Is:
		return say.That("the power of %s is not known, so it is not counted", name)
	case !a.Count.Is:
		return say.That("how many of %s there are is not known, so they are not counted", name)
	}
	return say.Sentence{}
}

// Uncounted tells of each essential appliance that counts as nothing. A verdict without them would promise too much.
func (l Load) Uncounted() (out []say.Sentence) {
	for _, a := range l.Appliances {
		if s := a.uncounted(); !s.IsZero() {
			out = append(out, s)
		}
	}
	return out
}

// Counts reports whether time, power and number of an appliance are known.
func (a Appliance) Counts() bool {
	return a.timeKnown() && a.Running().Is && a.Count.Is && (!a.MayWait() || a.Daily().Is)
}
