package load

import (
	"math"
	"strings"
	"testing"

	"duskweight/internal/model/unit"
)

// What is on together is told with its clock hour and its month: a tool of the summer evening, over midnight and begun at half
// past, in July and on no other day.
func TestMomentHasHourAndMonth(t *testing.T) {
	a := device(300, 900, 22.5, 1, "dc")
	a.Months = []unit.Count{7}
	down, noon := equinox()
	peaks := Hours(Load{Appliances: []Appliance{a}}, down, noon).Peaks
	if len(peaks) != 1 || peaks[0].Month != 7 || peaks[0].Hour != 0 || peaks[0].Starts != 0 || peaks[0].StartAC { // 1 July begins with its last hour of the night
		t.Errorf("%+v", peaks)
	}
	a.To = unit.Of(23 * unit.Hour) // now it is off at midnight
	if peaks := Hours(Load{Appliances: []Appliance{a}}, down, noon).Peaks; len(peaks) != 1 || peaks[0].Hour != 22 || peaks[0].Month != 7 {
		t.Errorf("%+v", peaks)
	}
}

// Each begins in its own second: of two that follow each other by the second none is on with the other, also where the first begins
// at 24:00, which is midnight, and one that begins within the last minute of a day is found.
func TestMomentsWithinAnHour(t *testing.T) {
	down, noon := equinox()
	run := func(list ...Appliance) (most float64, n int) {
		for _, p := range Hours(Load{Appliances: list}, down, noon).Peaks {
			most, n = max(most, p.Run()), n+1
		}
		return most, n
	}
	late := device(10, 0, 24, 1, "dc")
	if most, n := run(late, device(7, 0, 0.5, 2, "dc")); most != 17 || n != 3 {
		t.Errorf("%g W in %d moments", most, n)
	}
	minute := device(10, 0, 0, 0, "dc")
	minute.From, minute.To = unit.Of(unit.Duration(86370)), unit.Of(unit.Duration(0))
	if most, n := run(minute); most != 10 || n != 1 {
		t.Errorf("%g W in %d moments: the last half minute of the day", most, n)
	}
	if most, n := run(device(0, 0, 1, 2, "dc")); most != 0 || n != 0 {
		t.Errorf("%g W in %d moments: what takes nothing is never on", most, n)
	}
	// the same two hours twice are one moment
	if _, n := run(device(3, 0, 5, 7, "dc"), device(4, 0, 5, 7, "dc")); n != 1 {
		t.Errorf("%d moments", n)
	}
}

// Of what goes on together one motor starts: the one with the most beyond its running; through the inverter only what runs there.
func TestOneMotorStarts(t *testing.T) {
	small, large := device(100, 150, 1, 2, "inverter"), device(50, 300, 1, 2, "dc")
	small.PowerFact, small.SurgeTime = unit.Of[unit.Ratio](0.8), unit.Of(unit.Duration(2))
	down, noon := equinox()
	p := Hours(Load{Appliances: []Appliance{small, large}}, down, noon).Peaks[0]
	if p.AC != 100 || p.DC != 50 || p.Apparent != 125 || p.Start != 250 || p.Starts != 1 || p.StartAC || p.ACStart() != 100 || p.StartPower() != 400 || p.StartTime <= 9.9 || p.StartTime > 10 {
		t.Errorf("%+v", p)
	}
	large.Surge = unit.Of(unit.Power(60))
	p = Hours(Load{Appliances: []Appliance{small, large}}, down, noon).Peaks[0]
	if p.Start != 50 || p.Starts != 0 || !p.StartAC || p.ACStart() != 150 || p.StartTime != 2 {
		t.Errorf("%+v", p)
	}
}

// Of three that never run together the largest counts, by the power of all its pieces; one that keeps to no such rule beside it.
func TestNeverTogether(t *testing.T) {
	two, one, free := device(300, 0, 1, 2, "dc"), device(500, 0, 1, 2, "dc"), device(7, 0, 1, 2, "dc")
	two.Count, two.AtOnce, one.AtOnce = unit.Of(unit.Count(2)), unit.No, unit.No
	down, noon := equinox()
	p := Hours(Load{Appliances: []Appliance{one, two, free}}, down, noon).Peaks[0]
	if p.Run() != 607 || len(p.On) != 2 || p.On[0] != 1 || p.On[1] != 2 {
		t.Errorf("%+v", p)
	}
}

// At a place that is not known, what waits for dusk may be on at any hour; what keeps to the clock keeps to it.
func TestPeaksAnywhere(t *testing.T) {
	dusk, night, noon := device(5, 0, 0, 0, "dc"), device(6, 0, 20, 22, "dc"), device(70, 0, 12, 13, "dc")
	dusk.From, dusk.To, dusk.FromDusk = unit.Known[unit.Duration]{}, unit.Known[unit.Duration]{}, unit.Of(unit.Hour)
	night.AfterDusk = unit.Yes
	most := 0.0
	for _, p := range PeaksAnywhere(Load{Appliances: []Appliance{dusk, night, noon}}) {
		most = max(most, p.Run())
	}
	if most != 75 {
		t.Errorf("%g W", most)
	}
}

// A window lies between two clock hours; the same hour twice is the whole day, and what is not known is no window.
func TestWindow(t *testing.T) {
	for _, c := range []struct {
		from, to float64
		want     int
	}{{9, 16, 7}, {22, 3, 5}, {0, 24, 24}, {8, 8, 24}, {9.4, 16.6, 8}, {23, 0, 1}} {
		if got := (Appliance{From: at(c.from), To: at(c.to)}).Window(); got != c.want {
			t.Errorf("from %g to %g: %d hours, want %d", c.from, c.to, got, c.want)
		}
	}
	if (Appliance{From: at(9)}).Window() != 0 || (Appliance{To: at(9)}).Window() != 0 {
		t.Error("half a window is known")
	}
}

// What goes off below a charge goes on again a tenth of full above it, where nothing else is said, and never above full.
func TestBack(t *testing.T) {
	for below, want := range map[float64]float64{0.3: 0.4, 0.95: 1, 0: 0.1} {
		if got := (Appliance{ShedBelow: unit.Of(unit.Ratio(below))}).Back(); math.Abs(float64(got)-want) > 1e-12 {
			t.Errorf("off below %g, on from %v", below, got)
		}
	}
	if got := (Appliance{ShedBelow: unit.Of[unit.Ratio](0.3), BackAbove: unit.Of[unit.Ratio](0.8)}).Back(); got != 0.8 {
		t.Errorf("on from %v", got)
	}
}

// A device that waits and takes nothing while it runs asks what is said of its day, through the inverter too.
func TestWaitsWithoutPower(t *testing.T) {
	a := Appliance{Name: "Pump", Power: unit.Of[unit.Power](0), Count: unit.Of[unit.Count](1), Supply: SupplyInverter, Waits: unit.Yes, DayEnergy: unit.Of(unit.Energy(3600)), From: at(24), To: at(6)}
	y := yearOf(a)
	if len(y.Waiting) != 1 || y.Waiting[0].Energy[100] != 3600 || y.Waiting[0].Power != 0 || y.Waiting[0].From != 0 || y.Waiting[0].To != 6 || y.Waiting[0].Carry != 0 || y.Waiting[0].Must {
		t.Errorf("%+v", y.Waiting)
	}
}

// The first and the last hour of the user's own night count where their middle lies in it.
func TestOwnNightByTheMiddleOfItsHours(t *testing.T) {
	down, noon := equinox()
	for _, c := range []struct {
		from, to float64
		want     string // the clock hours of the night
	}{{21, 23, "21 22"}, {20.5, 23, "20 21 22"}, {20.6, 22.5, "21"}, {22, 2, "0 1 22 23"}} {
		y := Hours(Load{Night: Night{Own: NightOwn, From: at(c.from), To: at(c.to)}}, down, noon)
		var got []string
		for h := range 24 {
			if y.Night[48+h] {
				got = append(got, clockOf(h))
			}
		}
		if s := strings.Join(got, " "); s != c.want {
			t.Errorf("from %g to %g: %s, want %s", c.from, c.to, s, c.want)
		}
	}
}

func clockOf(h int) string {
	if h < 10 {
		return string(rune('0' + h))
	}
	return string([]rune{rune('0' + h/10), rune('0' + h%10)})
}

// A painted piece that is as large as another keeps the first of them; one that was on in neither does so too.
func TestPaintKeepsTheFirst(t *testing.T) {
	night := winterDay()
	a, more := night.Paint(Appliance{From: at(9), To: at(14)}, hoursOf(9, 11, 12, 14))
	if told(a) != "from 9 to 11 " || len(more) != 1 || more[0] != (Run{12, 2}) {
		t.Errorf("%s and %v", told(a), more)
	}
	a, more = night.Paint(Appliance{}, hoursOf(3, 4, 9, 14))
	if told(a) != "from 3 to 4 " || len(more) != 1 || more[0] != (Run{9, 5}) {
		t.Errorf("%s and %v", told(a), more)
	}
}

// What has no name is spoken of as a device without one.
func TestUncountedWithoutAName(t *testing.T) {
	if s := (Appliance{Priority: PriorityEssential}).uncounted().String(); !strings.Contains(s, "a device without a name") {
		t.Error(s)
	}
	if s := (Appliance{Name: "Lamp", Priority: PriorityEssential}).uncounted().String(); !strings.Contains(s, "“Lamp”") || strings.Contains(s, "without a name") {
		t.Error(s)
	}
}

// Whatever the nights are, what keeps to the clock uses the same in a year: 10 W from 18 to 22 are 10·4·365 Wh.
func TestByClock(t *testing.T) {
	if got := float64(ByClock(Load{Appliances: []Appliance{device(10, 0, 18, 22, "dc")}})) / 3600; math.Abs(got-10*4*365) > 1e-9 {
		t.Errorf("%g Wh", got)
	}
}

// What is not known adds nothing: without its number or its power a device is on for no time, without its time in no moment; one that
// only says that it waits for dusk is on in the whole night, and one of which half the time is known in no moment.
func TestNotKnownAddsNothing(t *testing.T) {
	none := unit.Known[unit.Duration]{}
	for name, change := range map[string]func(a *Appliance){
		"no number": func(a *Appliance) { a.Count = unit.Known[unit.Count]{} }, "no power": func(a *Appliance) { a.Power = unit.Known[unit.Power]{} },
		"no time": func(a *Appliance) { a.From, a.To = none, none }, "no end": func(a *Appliance) { a.To = none }, "dusk and a beginning": func(a *Appliance) { a.To, a.AfterDusk = none, unit.Yes },
		"dusk and an end": func(a *Appliance) { a.From, a.AfterDusk = none, unit.Yes },
	} {
		a := device(10, 0, 20, 22, "dc")
		change(&a)
		y := yearOf(a)
		if y.ApplianceYear != 0 || y.Each[0].NightOn != 0 || y.Each[0].Year != 0 || len(y.Peaks) != 0 || len(y.Missing) == 0 {
			t.Errorf("%s: %v J, on for %v s a night, %d moments, missing %v", name, y.ApplianceYear, y.Each[0].NightOn, len(y.Peaks), y.Missing)
		}
	}
	a := device(10, 0, 20, 22, "dc")
	a.From, a.To, a.AfterDusk = none, none, unit.Yes
	if y := yearOf(a); y.Each[0].NightOn != 12*unit.Hour || len(y.Peaks) != 1 || y.Essential[12] != 0 || y.Essential[20] != 10 {
		t.Errorf("the whole night: on for %v s, %d moments", y.Each[0].NightOn, len(y.Peaks))
	}
}

// Three times the use and five times what is always on, in every figure: 10 W for two hours of the evening are 20 Wh a night and
// 7,300 Wh a year, 2 W all the time are 24 Wh in a night of twelve hours.
func TestScaledInEveryFigure(t *testing.T) {
	down, noon := equinox()
	y := Hours(Load{Appliances: []Appliance{device(10, 0, 20, 22, "dc")}, Standing: []Standing{{Power: unit.Of[unit.Power](2)}}}, down, noon)
	for _, s := range []struct {
		y         Year
		use, idle float64
	}{{y, 1, 1}, {y.Scaled(3, 5), 3, 5}, {y.Scaled(0.5, 1), 0.5, 1}, {y.Scaled(1, 0), 1, 0}} {
		for what, v := range map[string][2]float64{
			"mean night": {float64(s.y.MeanNight) / 3600, 20 * s.use}, "greatest night": {float64(s.y.MaxNight) / 3600, 20 * s.use}, "year": {float64(s.y.ApplianceYear) / 3600, 7300 * s.use},
			"an hour": {s.y.Essential[20], 10 * s.use}, "a night": {s.y.NightWanted[100] / 3600, 20 * s.use}, "always on": {s.y.Standing[7], 2 * s.idle}, "its night": {float64(s.y.StandingNight) / 3600, 24 * s.idle},
			"its power": {float64(s.y.StandingPower), 2 * s.idle},
		} {
			near(t, what, v[0], v[1], 1e-9*max(1, v[1]))
		}
	}
}
