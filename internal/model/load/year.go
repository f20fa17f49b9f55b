// Package load works out what the night wants: the appliances hour by hour at the line, what uses power all the time,
// which hours are night and to which night they belong (model, section 3).
//
// Hours are standard clock time. Hour i of the year is the time from i to i+1 hours after the start of the first of
// January of a year of 365 days. What is left out: summer time, twilight, and the warming up of lamps and inverters;
// the inverter's losses follow the load only where its rated power is known.
package load

import (
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// The length of the year in hours and days.
const (
	HoursInYear = 8760
	DaysInYear  = 365
)

// Year is the load of a project hour by hour, and its nights.
type Year struct {
	Standing  []float64 // W at the line, 8760: what uses power all the time in all variants, inverter idle included
	Essential []float64 // W at the line, 8760: essential appliances
	Nice      []float64 // W at the line, 8760: nice-to-have appliances

	Levels  []Level   // what is switched off while the stores hold little
	Waiting []Waiting // what may wait for the sun; in no hour of the above

	Night       []bool    // 8760: night hours
	NightOf     []int     // 8760: the night an hour belongs to, 0 … 364; -1 for an hour that is not a night hour
	Nights      int       // nights that have night hours
	NightWanted []float64 // J, 365: what the appliances want in the night hours of night d

	ApplianceYear unit.Energy // all appliances, the whole year, day hours and those that wait too
	MeanNight     unit.Energy // appliances, mean of the nights that count
	MaxNight      unit.Energy // appliances, greatest night
	StandingNight unit.Energy // standing of the project in the mean night, beside MeanNight
	StandingPower unit.Power  // standing of the project

	air    []float64  // °C by hour; nil where it is not known
	Peaks  []Together // what may be on together, each combination of the year once
	Losses Losses     // of the inverter

	Each    []ApplianceYear // in the order of the appliances; a refused one has zero energy and its reason
	Missing []Missing       // inputs that are not known: what they would add is not in the figures
	Flags   []Flag          // what contradicts itself, in words
}

// ApplianceYear is one appliance over the year, at the line.
type ApplianceYear struct {
	Name    string
	Year    unit.Energy
	Night   unit.Energy   // in the mean night
	NightOn unit.Duration // how long it is on in the mean night
	Winter  [24]float64   // W at the line in each clock hour of 21 December
	Summer  [24]float64   // the same on 21 June
	Waits   bool          // for the sun: when it runs depends on the year
	Refused string        // why it is refused as a load of this store; empty if it is not
}

// Missing is an input that is not known, by its path inside the load, and what it keeps from being counted.
type Missing struct {
	Path  string
	Wants string
}

// Flag is something said in words, with the path of the field it is about.
type Flag struct {
	Path string
	Say  say.Sentence
}

// Hours works the load out for a year. sunDown tells for each of the 8760 hours whether the sun's centre is below
// −0.833° at the hour's middle; solarNoon is the standard clock time of solar noon of each of the 365 days, from the
// midnight that begins the day. Both must have their full length; Hours panics otherwise, as that is a caller's bug.
func Hours(l Load, sunDown []bool, solarNoon []unit.Duration) Year {
	return HoursIn(l, sunDown, solarNoon, nil)
}

// HoursIn is Hours in air of this temperature, °C by hour, which decides how long what cools runs; 24 °C all year where air is nil.
func HoursIn(l Load, sunDown []bool, solarNoon []unit.Duration, air []float64) Year {
	if len(sunDown) != HoursInYear || len(solarNoon) != DaysInYear {
		panic("load: Hours wants 8760 hours and 365 solar noons")
	}
	today := l
	l = l.grown()
	y := Year{
		Standing:    make([]float64, HoursInYear),
		Essential:   make([]float64, HoursInYear),
		Nice:        make([]float64, HoursInYear),
		NightWanted: make([]float64, DaysInYear),
		air:         air,
	}
	y.markNights(l.Night, sunDown, solarNoon)
	y.addStanding(l)
	y.Losses, _ = l.Inverter.Losses() // what does not fit together is refused by the check of the document
	dusk := duskHours(sunDown, solarNoon)
	factor := y.inverterFactor(l, sunDown, dusk)
	for i, a := range l.Appliances {
		y.addAppliance(l, i, a, sunDown, dusk, factor)
	}
	y.Peaks = Peaks(today, sunDown, dusk)
	y.sum()
	return y
}

// Scaled returns the load with every appliance taking use times its power and all that uses power all the time idle times,
// in the figures of the hours and nights. It is that of appliances of so much power where Losses are not Curved.
func (y Year) Scaled(use, idle float64) Year {
	y.Essential, y.Nice, y.NightWanted = times(y.Essential, use), times(y.Nice, use), times(y.NightWanted, use)
	y.MeanNight *= unit.Energy(use)
	y.MaxNight *= unit.Energy(use)
	y.ApplianceYear *= unit.Energy(use)
	y.scaleManaged(use)
	if idle != 1 {
		y.Standing = times(y.Standing, idle)
		y.StandingNight *= unit.Energy(idle)
		y.StandingPower *= unit.Power(idle)
	}
	return y
}

func times(v []float64, f float64) []float64 {
	out := make([]float64, len(v))
	for i, x := range v {
		out[i] = f * x
	}
	return out
}

// addStanding books what uses power all the time.
func (y *Year) addStanding(l Load) {
	p, missing := StandingPower(l.Standing)
	y.Missing = append(y.Missing, missing...)
	if l.HasInverter() {
		if idle, ok := l.Inverter.Idle.Value(); ok {
			p += idle
		} else {
			y.Missing = append(y.Missing, Missing{"inverter.idle_w", "what the inverter uses with nothing plugged in"})
		}
	}
	y.StandingPower = p
	for h := range y.Standing {
		y.Standing[h] = float64(p)
	}
}

// StandingPower adds up a list of what uses power all the time. A power that is not known adds nothing and is named.
func StandingPower(list []Standing) (unit.Power, []Missing) {
	var p unit.Power
	var missing []Missing
	for i, s := range list {
		if v, ok := s.Power.Value(); ok {
			p += v
		} else {
			missing = append(missing, Missing{path("standing", i, "power_w"), "what " + called(s.Name, "this") + " uses all the time"})
		}
	}
	return p, missing
}

// HasInverter reports whether an inverter idles: there is one, or nothing is said and an appliance needs it.
func (l Load) HasInverter() bool {
	if l.Inverter.Present != "" {
		return l.Inverter.Present == unit.Yes
	}
	for _, a := range l.Appliances {
		if _, no := Refused(a); a.Supply == SupplyInverter && !no {
			return true
		}
	}
	return false
}

// sum fills in what follows from the hours.
func (y *Year) sum() {
	for h := range HoursInYear {
		w := (y.Essential[h] + y.Nice[h]) * 3600
		y.ApplianceYear += unit.Energy(w)
		if d := y.NightOf[h]; d >= 0 {
			y.NightWanted[d] += w
			y.StandingNight += unit.Energy(y.Standing[h] * 3600)
		}
	}
	for _, w := range y.Waiting {
		for _, e := range w.Energy {
			y.ApplianceYear += unit.Energy(e)
		}
	}
	var all float64
	for _, e := range y.NightWanted {
		all += e
		y.MaxNight = max(y.MaxNight, unit.Energy(e))
	}
	if y.Nights == 0 {
		return
	}
	n := unit.Energy(y.Nights)
	y.MeanNight = unit.Energy(all) / n
	y.StandingNight /= n
	for i := range y.Each {
		y.Each[i].Night /= n
		y.Each[i].NightOn /= unit.Duration(n)
	}
}

// WaitForDusk names the appliances whose time depends on the sun: its paths inside the load, and their names.
func WaitForDusk(l Load) (out []Missing) {
	for i, a := range l.Appliances {
		if _, refused := Refused(a); refused || a.MayWait() {
			continue
		}
		switch {
		case a.FromDusk.Is:
			out = append(out, Missing{path("appliances", i, "from_dusk_s"), called(a.Name, "an appliance")})
		case a.AfterDusk == unit.Yes:
			out = append(out, Missing{path("appliances", i, "after_dusk"), called(a.Name, "an appliance")})
		}
	}
	return out
}

// ByClock returns what appliances use in a year that all keep to the clock, at any place.
func ByClock(l Load) unit.Energy {
	return Hours(l, make([]bool, HoursInYear), make([]unit.Duration, DaysInYear)).ApplianceYear // any nights will do, and none
}
