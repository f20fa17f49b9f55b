package load

import (
	"math"
	"math/rand"
	"testing"

	"duskweight/internal/model/unit"
)

// equinox is a year in which the sun is down from 18:00 to 06:00 and solar noon is at 12:00.
func equinox() ([]bool, []unit.Duration) {
	down := make([]bool, HoursInYear)
	for h := range down {
		down[h] = h%24 >= 18 || h%24 < 6
	}
	noon := make([]unit.Duration, DaysInYear)
	for d := range noon {
		noon[d] = 12 * unit.Hour
	}
	return down, noon
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if math.IsNaN(got) || math.Abs(got-want) > tol {
		t.Errorf("%s = %v, want %v within %v", what, got, want, tol)
	}
}

func lamp(w float64, n int) Appliance {
	return Appliance{Name: "Lamp", Power: unit.Of(unit.Power(w)), Count: unit.Of(unit.Count(n)), Supply: "dc", Priority: "essential", Purpose: "light"}
}

// lampsFromDusk is so many equal lamps of so many watts, straight on the line, from dusk for
// so long.
func lampsFromDusk(lamps unit.Count, each unit.Power, long unit.Duration) Load {
	return Load{Appliances: []Appliance{{
		Name:     "Lamps",
		Power:    unit.Of(each),
		Count:    unit.Of(lamps),
		FromDusk: unit.Of(long),
		Supply:   "dc",
		Priority: "essential",
		Purpose:  "light",
	}}}
}

// Two lamps of 5 W for 4½ hours from dusk: 45 Wh a night, in five hours, the last of them half.
func TestLampsFromDusk(t *testing.T) {
	down, noon := equinox()
	y := Hours(lampsFromDusk(2, 5, 4.5*3600), down, noon)
	near(t, "mean night, Wh", y.MeanNight.WattHours(), 45, 1e-9)
	near(t, "greatest night, Wh", y.MaxNight.WattHours(), 45, 1e-9)
	near(t, "year, Wh", y.ApplianceYear.WattHours(), 365*45, 1e-6)
	for h, want := range map[int]float64{17: 0, 18: 10, 21: 10, 22: 5, 23: 0, 24 + 18: 10} {
		near(t, "power", y.Essential[h], want, 1e-12)
	}
	if y.Nights != 365 || len(y.Missing) != 0 {
		t.Errorf("%d nights, missing %v", y.Nights, y.Missing)
	}
}

// The night before dawn of 1 January belongs to the last night; noon at 12:30 puts the hour from 12 to 13 into the old
// night's half (its middle is 12:30, not before noon), so it begins the new one.
func TestNightOfAnHour(t *testing.T) {
	_, noon := equinox()
	for d := range noon {
		noon[d] = 12.5 * unit.Hour
	}
	for h, want := range map[int]int{0: 364, 11: 364, 12: 0, 13: 0, 24: 0, 24 + 11: 0, 24 + 12: 1, 8759: 364, 8747: 363, 8748: 364} {
		if got := nightOf(h, noon); got != want {
			t.Errorf("hour %d belongs to night %d, want %d", h, got, want)
		}
	}
}

// Where the sun never sets there is no night to count, where it never rises a night has 24 hours.
func TestPolar(t *testing.T) {
	down, noon := equinox()
	for h := range down {
		switch d := h / 24; {
		case d >= 100 && d < 110:
			down[h] = false
		case d >= 200 && d < 210:
			down[h] = true
		}
	}
	y := Hours(lampsFromDusk(1, 1, 5*3600), down, noon)
	// Day 99's night is 18:00 to 24:00 and then light: still a night. The nights 100 … 108 have no dark hour; the
	// night of day 109 ends in the dark morning of day 110.
	if y.Nights != 365-9 {
		t.Errorf("%d nights, want 356", y.Nights)
	}
	count := 0
	for h, d := range y.NightOf {
		if d == 204 {
			count++
			if !y.Night[h] {
				t.Error("an hour of a night that is no night hour")
			}
		}
	}
	if count != 24 {
		t.Errorf("polar night of %d hours", count)
	}
	near(t, "wanted in a polar night, Wh", y.NightWanted[204]/3600, 5, 1e-12)
}

func TestShareOfHour(t *testing.T) {
	for _, c := range []struct {
		hour       int
		from, to   float64
		want       float64
		plainWords string
	}{
		{19, 19.5, 22, 0.5, "half of the first hour"},
		{21, 19.5, 22, 1, "a whole hour"},
		{22, 19.5, 22, 0, "after it"},
		{23, 22.25, 6.75, 1, "over midnight, before"},
		{6, 22.25, 6.75, 0.75, "over midnight, after"},
		{22, 22.25, 6.75, 0.75, "over midnight, the first"},
		{12, 22.25, 6.75, 0, "noon"},
		{12, 8, 8, 1, "the same means all day"},
		{5, 5.25, 5.5, 0.25, "inside one hour"},
		{23, 20, 24, 1, "until midnight"},
		{0, 20, 0, 0, "until midnight, written as 0"},
	} {
		near(t, c.plainWords, shareOfHour(c.hour, c.from*3600, c.to*3600), c.want, 1e-12)
	}
}

// Whatever the times, the shares of a day's hours add up to the time.
func TestShareOfHourAddsUp(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	for range 2000 {
		a, b := r.Float64()*86400, r.Float64()*86400
		sum := 0.0
		for h := range 24 {
			sum += shareOfHour(h, a, b)
		}
		want := math.Mod(b-a+86400, 86400) / 3600
		near(t, "hours a day", sum, want, 1e-9)
	}
}

// Inverter 0.8, two devices of 10 W, half of the time, from 20:00 to 01:00 in January only: 2·10·0.5/0.8 = 12.5 W for
// 5 hours. January has 31 evenings of 4 hours and 31 mornings of 1 hour: 155 hours.
func TestMonthsShareInverter(t *testing.T) {
	down, noon := equinox()
	a := lamp(10, 2)
	a.From, a.To, a.Share, a.Supply, a.Priority = unit.Of(unit.Duration(20*3600)), unit.Of(unit.Duration(3600)), unit.Of(unit.Ratio(0.5)), "inverter", "nice"
	a.Months = []unit.Count{1}
	l := Load{Appliances: []Appliance{a}, Inverter: Inverter{Present: "yes", Idle: unit.Of(unit.Power(6)), Efficiency: unit.Of(unit.Ratio(0.8))},
		Standing: []Standing{{"sensor", unit.Of(unit.Power(0.5))}}}
	y := Hours(l, down, noon)
	near(t, "nice at 21:00", y.Nice[21], 12.5, 1e-12)
	near(t, "essential at 21:00", y.Essential[21], 0, 0)
	near(t, "year, Wh", y.ApplianceYear.WattHours(), 12.5*155, 1e-8)
	near(t, "that appliance", y.Each[0].Year.WattHours(), 12.5*155, 1e-8)
	near(t, "in the mean night", y.Each[0].Night.WattHours(), 12.5*155/365, 1e-8)
	near(t, "mean night", float64(y.MeanNight), float64(y.Each[0].Night), 1e-6)
	near(t, "standing", float64(y.StandingPower), 6.5, 1e-12)
	near(t, "standing in a night, Wh", y.StandingNight.WattHours(), 78, 1e-9)
}

// Only after dusk: from 16:00 to 20:00 is used from 18:00 on. With no times it is the whole night.
func TestAfterDusk(t *testing.T) {
	down, noon := equinox()
	a := lamp(10, 1)
	a.AfterDusk = "yes"
	y := Hours(Load{Appliances: []Appliance{a}}, down, noon)
	near(t, "whole night, Wh", y.MeanNight.WattHours(), 120, 1e-9)
	a.From, a.To = unit.Of(unit.Duration(16*3600)), unit.Of(unit.Duration(20*3600))
	y = Hours(Load{Appliances: []Appliance{a}}, down, noon)
	near(t, "after dusk, Wh", y.MeanNight.WattHours(), 20, 1e-9)
	near(t, "at 16:00", y.Essential[16], 0, 0)
}

func TestOwnNight(t *testing.T) {
	down, noon := equinox()
	l := lampsFromDusk(1, 10, 4*3600)
	l.Night = Night{Own: "own", From: unit.Of(unit.Duration(20 * 3600)), To: unit.Of(unit.Duration(7 * 3600))}
	y := Hours(l, down, noon)
	// The lamps burn from 18:00 to 22:00, the night begins at 20:00.
	near(t, "night, Wh", y.MeanNight.WattHours(), 20, 1e-9)
	near(t, "year, Wh", y.ApplianceYear.WattHours(), 40*365, 1e-6)
	l.Night.To = unit.Known[unit.Duration]{}
	y = Hours(l, down, noon)
	if len(y.Missing) != 1 || y.Missing[0].Path != "night.to_s" {
		t.Errorf("missing %v", y.Missing)
	}
	near(t, "night by the sun, Wh", y.MeanNight.WattHours(), 40, 1e-9)
}

func TestNotKnownIsNamed(t *testing.T) {
	down, noon := equinox()
	l := Load{
		Appliances: []Appliance{{Name: "Radio", Supply: "inverter"}, lamp(5, 1)},
		Standing:   []Standing{{Name: "Sensor"}},
	}
	y := Hours(l, down, noon)
	want := map[string]bool{"standing[0].power_w": true, "inverter.idle_w": true, "appliances[0].power_w": true, "appliances[0].count": true, "appliances[1].from_s": true, "appliances[1].to_s": true}
	for _, m := range y.Missing {
		if !want[m.Path] || m.Wants == "" {
			t.Errorf("not expected: %+v", m)
		}
		delete(want, m.Path)
	}
	if len(want) > 0 {
		t.Errorf("not named: %v", want)
	}
	l = Load{Appliances: []Appliance{lamp(5, 1)}, Inverter: Inverter{Present: "no"}}
	l.Appliances[0].Supply = "inverter"
	l.Appliances[0].AfterDusk = "yes"
	if y := Hours(l, down, noon); len(y.Flags) != 1 {
		t.Errorf("an appliance on an inverter that is not there: %v", y.Flags)
	}
}

func TestRefused(t *testing.T) {
	refused := []Appliance{
		{Name: "Box", Purpose: "medical"}, {Name: "Box", Purpose: "alarm"}, {Name: "Box", Purpose: "animals"},
		{Name: "CPAP machine", Purpose: "other"}, {Name: "Oxygen concentrator"}, {Name: "Fridge for insulin", Purpose: "cooling"},
		{Name: "home dialysis"}, {Name: "Smoke alarm", Purpose: "light"}, {Name: "smoke-detector"}, {Name: "Nebuliser"},
		{Name: "Carbon monoxide sensor"}, {Name: "Alarm system"}, {Name: "Aquarium air pump", Purpose: "pump"},
		{Name: "Pump for the cattle trough", Purpose: "pump"}, {Name: "Ventilator"}, {Name: "Sump pump", Purpose: "pump"}, {Name: "Vaccines, cool box"},
		{Name: "CHICKEN brooder heat lamp", Purpose: "other"},
	}
	for _, a := range refused {
		if why, no := Refused(a); !no || why == "" {
			t.Errorf("%+v is not refused", a)
		}
	}
	fine := []Appliance{
		{Name: "Lamp", Purpose: "light"}, {Name: "Alarm clock"}, {Name: "Radio alarm clock"}, {Name: "Ceiling fan", Purpose: "fan"}, {Name: "Garden pump", Purpose: "pump"},
		{Name: "Lamp in the hen house", Purpose: "light"}, {Name: "Coal bunker light"}, {Name: "Pigment printer"}, {Name: "Router"}, {Name: "Fridge", Purpose: "cooling"}, {Name: ""}, {Name: "Horsehair brush motor"},
	}
	for _, a := range fine {
		if why, no := Refused(a); no {
			t.Errorf("%+v is refused: %s", a, why)
		}
	}
	down, noon := equinox()
	l := lampsFromDusk(1, 5, 3600)
	l.Appliances = append(l.Appliances, Appliance{Name: "CPAP", Power: unit.Of(unit.Power(50)), Count: unit.Of(unit.Count(1)), AfterDusk: "yes", Supply: "inverter"})
	y := Hours(l, down, noon)
	near(t, "a refused load is not counted, Wh", y.MeanNight.WattHours(), 5, 1e-9)
	if y.Each[1].Refused == "" {
		t.Error("a refused load does not say so")
	}
}

// Any load in range: finite, never negative, and the parts add up to the whole.
func TestAnyLoad(t *testing.T) {
	r := rand.New(rand.NewSource(2))
	down, noon := equinox()
	for range 25 {
		for d := range noon {
			noon[d] = unit.Duration(r.Float64() * 86400)
		}
		for h := range down {
			down[h] = r.Intn(3) == 0
		}
		var l Load
		for range r.Intn(5) {
			a := lamp(r.Float64()*1e5, r.Intn(10001))
			a.Supply = Supply([]string{"dc", "inverter"}[r.Intn(2)])
			a.Priority = Priority([]string{"essential", "nice"}[r.Intn(2)])
			if r.Intn(2) == 0 {
				a.FromDusk = unit.Of(unit.Duration(r.Float64() * 86400))
			}
			a.From, a.To = unit.Of(unit.Duration(r.Float64()*86400)), unit.Of(unit.Duration(r.Float64()*86400))
			a.AfterDusk = unit.Answer([]string{"", "yes", "no"}[r.Intn(3)])
			l.Appliances = append(l.Appliances, a)
		}
		l.Inverter.Efficiency = unit.Of(unit.Ratio(1e-3 + r.Float64()*0.999))
		y := Hours(l, down, noon)
		var each, nights, hours float64
		for _, e := range y.Each {
			each += float64(e.Year)
		}
		for h := range HoursInYear {
			p := y.Essential[h] + y.Nice[h]
			if p < 0 || math.IsNaN(p) || math.IsInf(p, 0) {
				t.Fatalf("hour %d: %v W", h, p)
			}
			if y.Night[h] {
				hours += p * 3600
			}
		}
		for _, e := range y.NightWanted {
			nights += e
		}
		near(t, "appliances add up", each, float64(y.ApplianceYear), 1e-9*each)
		near(t, "nights add up", nights, hours, 1e-9*hours)
		near(t, "mean times count", float64(y.MeanNight)*float64(y.Nights), nights, 1e-9*nights)
	}
}

func TestMonthOf(t *testing.T) {
	for h, want := range map[int]int{0: 1, 743: 1, 744: 2, 1415: 2, 1416: 3, 4343: 6, 4344: 7, 8015: 11, 8016: 12, 8759: 12} {
		if got := MonthOf(h); got != want {
			t.Errorf("hour %d is in month %d, want %d", h, got, want)
		}
	}
}
