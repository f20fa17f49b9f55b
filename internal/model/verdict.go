package model

import (
	"math"
	"slices"

	"duskweight/internal/model/unit"
	"duskweight/internal/model/year"
	"duskweight/internal/say"
)

// The closed list of verdicts, the best first.
const (
	CarriesNight      = "carries the night"
	CarriesEssentials = "carries the essentials"
	CarriesMost       = "carries most nights"
	CarriesPart       = "carries part"
	LearningPiece     = "a learning piece"
)

// RankOf orders the verdicts: 0 where there is none, more for the better.
func RankOf(verdict string) int {
	return slices.Index([]string{"", LearningPiece, CarriesPart, CarriesMost, CarriesEssentials, CarriesNight}, verdict)
}

// The borders of the verdict, all our own judgement. What a full night and one with most of it are, year.Tally says.
const (
	NightsForWhole = 0.95 // of the nights are full, or have all that is essential; a search aims at it too
	nightsMost     = 0.75 // of the nights have most of what they want, and
	nightsFullMost = 0.50 // of the nights are full
	energyForPart  = 0.10 // of the energy of the nights: the least that deserves the word
)

// carries reports whether so many of the nights are enough.
func carries(nights, full int) bool { return float64(full) >= NightsForWhole*float64(nights) }

// verdict returns the word for the nights of a year; nice says that something in it is not essential.
func verdict(t year.Tally, nice bool) string {
	n := float64(t.Nights)
	switch {
	case carries(t.Nights, t.NightsFull):
		return CarriesNight
	case nice && carries(t.Nights, t.NightsEssentialFull):
		return CarriesEssentials
	case float64(t.NightsMost) >= nightsMost*n && float64(t.NightsFull) >= nightsFullMost*n:
		return CarriesMost
	case t.NightShare >= energyForPart:
		return CarriesPart
	}
	return LearningPiece
}

// verdict finds the word for the last year of the batteries; none where nothing is wanted at night.
func (r *VariantResult) verdict(panels int) {
	wanted := unit.Energy(0)
	for _, n := range r.Year.NightLog {
		wanted += n.Wanted
	}
	if wanted <= 0 || r.Last.Nights == 0 {
		return
	}
	r.Verdict = verdict(r.Last.Tally, r.Year.Nice.Wanted > 0)
	if r.Open = r.openPart(panels); !r.Open.IsZero() {
		r.Verdict = ""
	}
}

// ToFull is how many more nights would have to be full for a variant to carry the night; 0 where it does.
func (r *VariantResult) ToFull() int {
	return max(0, int(math.Ceil(NightsForWhole*float64(r.Last.Nights)))-r.Last.NightsFull)
}

// openPart says what is missing or not known well enough for a verdict that it could still mend; nothing where all is known.
func (r *VariantResult) openPart(panels int) say.Sentence {
	if r.Verdict == "" || r.Verdict == CarriesNight {
		return say.Sentence{}
	}
	if panels == 0 {
		return say.Words("there is no panel yet. Add the panels that fill the stores")
	}
	if len(r.Stores) == 0 {
		return say.Words("nothing is there that stores energy. Add a lifted mass or a battery")
	}
	need, _ := r.Facts.nightNeed()
	for _, s := range r.Stores {
		if s.Part.Open(need) {
			return say.That("too little is known of “%s” to say what it gives", s.Name)
		}
	}
	return say.Sentence{}
}

// Facts are the plain answers beside a verdict. What is not known is not known.
type Facts struct {
	NightAppliances unit.Known[unit.Energy] // mean night, appliances only
	NightStanding   unit.Known[unit.Energy] // what uses power all the time, over the night's hours
	NightLongest    unit.Known[unit.Energy] // greatest night, appliances and standing
	LampPower       unit.Known[unit.Power]  // mean of the hours in which appliances are wanted at night
	SurplusDay      unit.Known[unit.Energy] // sun left over after all loads, mean day
	SurplusWorst    unit.Known[unit.Energy] // the same, mean day of the poorest month
	SurplusMonth    int                     // that month, 1 to 12

	Lifts        bool                      // a store of the variant is a lifted mass
	OneLiftOut   unit.Known[unit.Energy]   // what one full lift gives back
	OneLiftIn    unit.Known[unit.Energy]   // what it takes
	LiftMinutes  unit.Known[unit.Duration] // how long one lift runs the lamps
	TimesMore    unit.Known[unit.Ratio]    // the night over one lift
	MassForNight unit.Known[unit.Mass]     // at this height, everything grown along
	HeightFor    unit.Known[unit.Length]   // with this mass
	SameBattery  unit.Known[unit.Charge]   // at 12.8 V and 80 % depth: the battery of the same energy as one lift
	NightBattery unit.Known[unit.Charge]   // the same for a whole night
	NoMass       say.Sentence              // why no mass or height carries the night with this drive; empty where one may

	CellsHold   unit.Known[unit.Energy] // what all cells of the variant give from full
	CellsForAux bool                    // the only cells are those the electronics need
	banks       int                     // how many batteries were counted
}

// Holds is what the stores give from full that are of the kind of the first one of which that is told, and that kind; the
// first of the table where there is no such store.
func (r VariantResult) Holds() (k *Kind, gives unit.Known[unit.Energy]) {
	k = kinds[0]
	for _, s := range r.Stores {
		if s.Kind.Holds.Say != "" {
			k = s.Kind
			break
		}
	}
	for _, s := range r.Stores {
		if s.Kind == k && s.Capacity.Is {
			gives = unit.Of(gives.Val + s.Capacity.Val)
		}
	}
	return k, gives
}

// BatteryBeside is the battery that would hold a whole night, where the variant has none; false where it has one or where the
// night is not known.
func (f Facts) BatteryBeside() (unit.Charge, bool) {
	return f.NightBattery.Val, f.NightBattery.Is && f.banks == 0
}

// nightNeed is appliances and standing together.
func (f Facts) nightNeed() (unit.Energy, bool) {
	if !f.NightAppliances.Is {
		return 0, false
	}
	return f.NightAppliances.Val + f.NightStanding.Val, true
}

// fillLift adds what one lift comes to against a night.
func (f *Facts) fillLift(mass unit.Known[unit.Mass], travel unit.Known[unit.Length]) {
	out := f.OneLiftOut
	if !out.Is || out.Val <= 0 {
		return
	}
	f.SameBattery = unit.Of(batteryFor(out.Val))
	if f.LampPower.Is && f.LampPower.Val > 0 {
		f.LiftMinutes = unit.Of(unit.Duration(float64(out.Val) / float64(f.LampPower.Val)))
	}
	need, ok := f.nightNeed()
	if !ok || need <= 0 {
		return
	}
	times := float64(need) / float64(out.Val)
	f.TimesMore = unit.Of(unit.Ratio(times))
	if mass.Is {
		f.MassForNight = unit.Of(unit.Mass(float64(mass.Val) * times))
	}
	if travel.Is {
		f.HeightFor = unit.Of(unit.Length(float64(travel.Val) * times))
	}
}

// headline says the verdict and the two numbers that matter, in short sentences.
func headline(r *VariantResult) []say.Sentence {
	var out []say.Sentence
	switch r.Verdict {
	case "":
		if r.uncounted {
			return []say.Sentence{say.That("%s.", r.Open.Capital())}
		}
		if !r.Open.IsZero() {
			return []say.Sentence{say.That("Not known yet: %s.", r.Open)}
		}
		if r.YearKnown {
			return []say.Sentence{say.That("Nothing is asked of the night yet: add your lamps on the page Night load.")}
		}
		return []say.Sentence{say.That("Not known yet: %s.", r.WhyNoYear)}
	default:
		out = append(out, r.verdictSentences()...)
	}
	if s := liftSentence(r.Facts); !s.IsZero() {
		out = append(out, s)
	}
	return append(append(out, cellsSentence(r)...), frostSentence(r)...)
}

// verdictSentences say the verdict with the figures that it rests on.
func (r *VariantResult) verdictSentences() []say.Sentence {
	t, share := r.Last.Tally, say.Share(unit.Ratio(r.Last.NightShare))
	out := []say.Sentence{{}}
	switch r.Verdict {
	case CarriesNight:
		out[0] = say.That("Carries the night: %s.", fullOf(t.NightsFull, t.Nights))
	case CarriesEssentials:
		out[0] = say.That("Carries the essentials: they have power in %s of %s nights; %s full.", t.NightsEssentialFull, t.Nights, say.Plural(t.NightsFull, "night is", "nights are"))
	case CarriesMost:
		out[0] = say.That("Carries most nights: %s of %s are full, with %s of the energy.", t.NightsFull, t.Nights, share)
		if more := r.ToFull(); more == 1 {
			out = append(out, say.That("“Carries the night” needs one more full night."))
		} else {
			out = append(out, say.That("“Carries the night” needs %s more full nights.", more))
		}
	case CarriesPart:
		out[0] = say.That("Carries part: %s of the night's energy; %s.", share, fullOf(t.NightsFull, t.Nights))
	default:
		out[0] = say.That("A learning piece: it gives %s of the night's energy.", share)
	}
	if len(r.Worn) > 0 && r.Worn[0].NightsFull != t.NightsFull {
		out = append(out, say.That("That is in the last year of the battery; when new, %s full.", say.Plural(r.Worn[0].NightsFull, "night is", "nights are")))
	}
	return out
}

// fullOf says how many of a year's nights are full.
func fullOf(n, of int) say.Sentence {
	if n == 1 {
		return say.That("%s of %s nights is full", n, of)
	}
	return say.That("%s of %s nights are full", n, of)
}

// frostSentence says of a store for the night that some days cannot fill it, where not every night has light.
func frostSentence(r *VariantResult) []say.Sentence {
	if at, hours := r.Uncharged(); hours > 0 {
		return []say.Sentence{say.That("In %s of the year %s.", say.Plural(hours, "hour", "hours"), say.Words(r.Stores[at].Kind.Idle))}
	}
	return nil
}

// Uncharged is a store for the night, by its place among the stores, that is too cold or too hot to charge in a day's
// hours of the year or more, where not the whole night is carried; 0 hours where there is none.
func (r *VariantResult) Uncharged() (store, hours int) {
	if r.Verdict == CarriesNight || r.Verdict == "" {
		return 0, 0
	}
	for i, s := range r.Stores {
		if hours := s.Part.Uncharged(); hours >= 24 {
			return i, hours
		}
	}
	return 0, 0
}

func liftSentence(f Facts) say.Sentence {
	if !f.OneLiftOut.Is {
		return say.Sentence{}
	}
	if f.OneLiftOut.Val <= 0 {
		return say.That("A full lift gives nothing back.")
	}
	gives, lamps, night := say.Energy(f.OneLiftOut.Val).To(2), say.Sentence{}, say.Sentence{}
	if f.LiftMinutes.Is {
		lamps = say.That(", what your lamps use in %s", say.Time(f.LiftMinutes.Val).To(2))
	}
	switch t := f.TimesMore; {
	case t.Is && t.Val >= 1.05:
		night = say.That("; a night needs %s times as much", say.Times(t.Val).To(2))
	case t.Is:
		night = say.That(", enough for a usual night")
	}
	return say.That("One full lift gives back %s%s%s.", gives, lamps, night)
}

// cellsSentence names the battery that is there already.
func cellsSentence(r *VariantResult) []say.Sentence {
	f := r.Facts
	if !f.CellsHold.Is || !f.OneLiftOut.Is {
		return nil
	}
	holds := say.Energy(f.CellsHold.Val).To(2)
	if !f.CellsForAux {
		return []say.Sentence{say.That("The battery beside the hoist holds %s.", holds)}
	}
	if f.CellsHold.Val > f.OneLiftOut.Val {
		return []say.Sentence{say.That("The small battery for your electronics already holds %s, more than one lift.", holds),
			say.That("Put the lamps on a battery; build the hoist to learn.")}
	}
	return []say.Sentence{say.That("The small battery for your electronics already holds %s.", holds)}
}
