package model

import (
	"strings"
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/unit"
	"duskweight/internal/model/year"
	"duskweight/internal/say"
)

// Each border of the closed list, from both sides: 0.95 of 365 nights are 346.75, three quarters 273.75, a half 182.5.
func TestVerdictAtItsBorders(t *testing.T) {
	for _, c := range []struct {
		full, essential, most int
		share                 float64
		nice                  bool
		want                  string
	}{
		{347, 347, 350, 0.995, false, CarriesNight},
		{346, 346, 350, 0.991, false, CarriesMost},
		{342, 342, 348, 0.991, false, CarriesMost},
		{300, 352, 330, 0.97, true, CarriesEssentials},
		{300, 347, 330, 0.97, true, CarriesEssentials},
		{300, 346, 330, 0.97, true, CarriesMost},
		{300, 352, 330, 0.97, false, CarriesMost},
		{270, 300, 274, 0.9, false, CarriesMost},
		{270, 300, 273, 0.9, false, CarriesPart},
		{183, 183, 300, 0.9, false, CarriesMost},
		{182, 182, 300, 0.9, false, CarriesPart},
		{0, 0, 0, 0.1, false, CarriesPart},
		{0, 0, 0, 0.0999, false, LearningPiece},
	} {
		n := year.Tally{Nights: 365, NightsFull: c.full, NightsEssentialFull: c.essential, NightsMost: c.most, NightShare: c.share}
		if got := verdict(n, c.nice); got != c.want {
			t.Errorf("%+v: %q", c, got)
		}
	}
	r := VariantResult{Last: year.Brief{Tally: year.Tally{Nights: 365, NightsFull: 342}}}
	if more := r.ToFull(); more != 5 {
		t.Errorf("%d nights short, want 347 − 342", more)
	}
}

// A hoist of 10 kg over 1 m holds 98.0665 J. Against a night of 980.665 J that is a tenth: it might carry part, so nothing
// is said before its parts are known. Against 1 J more it cannot, and the verdict may stand. Two such hoists can again.
func TestOpenAtATenth(t *testing.T) {
	open := func(need unit.Energy, units float64) bool {
		h := &HoistResult{Design: lift.Hoist{Units: unit.Of(unit.Count(units))}, whyNot: lift.NotEnough}
		h.Drive.RaiseEnergyMech = unit.Of(unit.Energy(98.0665))
		return h.Open(need)
	}
	if !open(980.665, 1) || open(981.665, 1) || !open(981.665, 2) {
		t.Errorf("a tenth: %v, less: %v, two: %v", open(980.665, 1), open(981.665, 1), open(981.665, 2))
	}
}

// Every month's mean day leaves 1 W over, that of one month 1 W in every second hour: 24 Wh and 12 Wh. That month is the
// poorest, by its number on the calendar.
func TestMonthOfLeastSun(t *testing.T) {
	for poorest := range 12 {
		r := VariantResult{Bus: &panel.Bus{Arrays: make([]panel.Yield, 1)}}
		for m := range r.Year.Typical {
			for h := range r.Year.Typical[m] {
				if m != poorest || h%2 == 0 {
					r.Year.Typical[m][h] = year.Clock{Bus: 3, Load: 2}
				}
			}
		}
		r.surplus()
		if f := r.Facts; f.SurplusMonth != poorest+1 || f.SurplusWorst.Val != 12*unit.WattHour {
			t.Errorf("month %d: %v in %d, want 12 Wh in %d", poorest+1, f.SurplusWorst.Val, f.SurplusMonth, poorest+1)
		}
	}
}

// 365 days on which 100 kJ were taken and 46 kJ spilled leave 400 J a day.
func TestSurplusOfAMeanDay(t *testing.T) {
	r := VariantResult{Bus: &panel.Bus{Arrays: make([]panel.Yield, 1)}}
	r.Year.Taken, r.Year.Spilled = 100000, 46000
	if r.surplus(); r.Facts.SurplusDay.Val != 400 {
		t.Errorf("%v J a day, want 400", r.Facts.SurplusDay.Val)
	}
}

// Two digits of a share, under one percent too: 0.4567 % is 0.46 %.
func TestPercentKeepsTwoDigits(t *testing.T) {
	for x, want := range map[float64]string{0.004567: "0.46", 0.0005549: "0.055", 0.0999: "10", 0.5: "50", 0.12345: "12"} {
		if got := say.Share(unit.Ratio(x)).String(); got != want+unit.Space+"%" {
			t.Errorf("%v is %q, want %s %%", x, got, want)
		}
	}
	r := VariantResult{Verdict: CarriesPart, Last: year.Brief{Tally: year.Tally{Nights: 365, NightsFull: 31, NightShare: 0.1049}}}
	if s := say.Join(headline(&r)...).String(); !strings.Contains(s, "10"+unit.Space+"% of the night") || !strings.Contains(s, "31 of 365") {
		t.Error(s)
	}
}

// What is said of a night's worth, worked by hand: 720 J a lift against a night of 7,200 J and lamps of 2 W is 6 minutes,
// ten lifts, so ten times the mass of 50 kg and the height of 3 m; in a battery at 12.8 V of which 0.8 is used
// 720/0.8/12.8 = 70.3125 C.
func TestWhatOneLiftComesTo(t *testing.T) {
	f := Facts{OneLiftOut: unit.Of[unit.Energy](720), LampPower: unit.Of[unit.Power](2), NightAppliances: unit.Of[unit.Energy](6000), NightStanding: unit.Of[unit.Energy](1200)}
	f.fillLift(unit.Of[unit.Mass](50), unit.Of[unit.Length](3))
	if f.LiftMinutes.Val != 360 || f.TimesMore.Val != 10 || f.MassForNight.Val != 500 || f.HeightFor.Val != 30 {
		t.Errorf("%+v", f)
	}
	within(t, "the same in a battery, C", float64(f.SameBattery.Val), 70.3125, 1e-12)
	if s := strings.ReplaceAll(liftSentence(f).String(), unit.Space, " "); !strings.Contains(s, "0.2 Wh") || !strings.Contains(s, "6 minutes") || !strings.Contains(s, "10 times") {
		t.Error(s)
	}
	for times, word := range map[float64]string{1.06: "times as much", 1.04: "enough"} {
		if f.TimesMore = unit.Of(unit.Ratio(times)); !strings.Contains(liftSentence(f).String(), word) {
			t.Errorf("%v times: %s", times, liftSentence(f))
		}
	}
	if f.OneLiftOut.Val = 0; !strings.Contains(liftSentence(f).String(), "nothing back") {
		t.Error(liftSentence(f))
	}
}
