package weather

import (
	"math"
	"strings"
	"testing"

	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// Each part of a stamp has its borders on both sides: months 1 to 12, the days of each month with 29 February, minutes 0 to
// 1440, which is the midnight that ends a day.
func TestStampBorders(t *testing.T) {
	for _, c := range []struct {
		m  moment
		ok bool
	}{
		{moment{month: 0, day: 1}, false}, {moment{month: 1, day: 1}, true}, {moment{month: 12, day: 31}, true}, {moment{month: 13, day: 1}, false},
		{moment{month: 1, day: 0}, false}, {moment{month: 1, day: 31}, true}, {moment{month: 1, day: 32}, false}, {moment{month: 2, day: 29}, true},
		{moment{month: 2, day: 30}, false}, {moment{month: 3, day: 31}, true}, {moment{month: 4, day: 30}, true}, {moment{month: 4, day: 31}, false},
		{moment{month: 5, day: 31}, true}, {moment{month: 6, day: 31}, false}, {moment{month: 7, day: 31}, true}, {moment{month: 8, day: 31}, true},
		{moment{month: 9, day: 31}, false}, {moment{month: 10, day: 31}, true}, {moment{month: 11, day: 31}, false}, {moment{month: 12, day: 32}, false},
		{moment{month: 1, day: 1, minute: -1}, false}, {moment{month: 1, day: 1, minute: 1440}, true}, {moment{month: 1, day: 1, minute: 1441}, false},
	} {
		if got := c.m.wrong(); (got == "") != c.ok {
			t.Errorf("%+v: %q", c.m, got)
		}
	}
}

// Columns of their own: the hour 0 to 24 and the minute 0 to 60, whole numbers from −1 to 9999; of 0100 … 2400 the last two
// digits are minutes.
func TestPartsOfStamps(t *testing.T) {
	s := &sheet{layout: Table, when: stampColumns{date: -1, time: -1, year: 0, month: 1, day: 2, hour: 3, minute: 4, ofYear: -1}}
	for _, c := range []struct {
		row    string
		minute int // −1: refused
	}{
		{"2021,1,31,0,0", 0}, {"2021,1,31,24,0", 1440}, {"2021,1,31,25,0", -1}, {"2021,1,31,-1,0", -1}, {"2021,1,31,7,60", 480}, {"2021,1,31,7,61", -1},
		{"2021,1,31,7,-1", -1}, {"2021,1,31,7,30", 450}, {"2021,1,31,7:30,15", 435}, {"2021.5,1,31,7,0", -1}, {"9999,1,31,7,0", 420}, {"10000,1,31,7,0", -1},
		{"-1,1,31,7,0", 420}, {"-2,1,31,7,0", -1}, {"2021,1,31,7", -1},
	} {
		m, _, reason := s.parts(strings.Split(c.row, ","))
		if (reason == "") != (c.minute >= 0) || reason == "" && m.minute != c.minute {
			t.Errorf("%s: minute %d, %q", c.row, m.minute, reason)
		}
	}
	s.when.minute = -1
	for hour, want := range map[string]int{"0100": 60, "2400": 1440, "0030": 30, "100": 60, "99": -1, "1.00": 60, "24": 1440, "2401": -1, "0": 0} {
		m, _, reason := s.parts([]string{"2021", "1", "31", hour})
		if want == -1 && reason == "" || want >= 0 && (reason != "" || m.minute != want) {
			t.Errorf("hour %s: minute %d, %q", hour, m.minute, reason)
		}
	}
}

// Days of the year: 60 is 29 February in a leap year and 1 March in another; 1900 and 2100 had and will have no leap day, 2000
// had one; a year that is not said has none.
func TestDayOfTheYear(t *testing.T) {
	for _, c := range []struct{ year, of, month, day int }{
		{2021, 1, 1, 1}, {2021, 31, 1, 31}, {2021, 32, 2, 1}, {2021, 59, 2, 28}, {2021, 60, 3, 1}, {2020, 60, 2, 29}, {2020, 61, 3, 1}, {2020, 366, 12, 31},
		{2021, 365, 12, 31}, {2021, 335, 12, 1}, {2021, 334, 11, 30}, {1900, 60, 3, 1}, {2100, 60, 3, 1}, {2000, 60, 2, 29}, {0, 60, 3, 1}, {2021, 366, 12, 32}, {2021, 0, 1, 0},
	} {
		m := moment{year: c.year}
		if m.onDay(c.of); m.month != c.month || m.day != c.day {
			t.Errorf("day %d of %d is %d-%d, want %d-%d", c.of, c.year, m.month, m.day, c.month, c.day)
		}
	}
}

// Counts: 1,000,000,000 s after 1970 were on 9 September 2001 at 01:46:40 UTC (published often), day 44,197 of spreadsheets is
// 1 January 2021, and day 44,197.25 six o'clock of it. What would begin with another year is a date in digits or nothing.
func TestCountedStamps(t *testing.T) {
	for _, c := range []struct {
		text string
		want moment
		ok   bool
	}{
		{"1000000000", moment{2001, 9, 9, 106, 0, true}, true}, {"1000000000000", moment{2001, 9, 9, 106, 0, true}, true},
		{"100000000", moment{1973, 3, 3, 586, 0, true}, true}, {"1899999999", moment{2030, 3, 17, 1066, 0, true}, true}, {"1900000000", moment{}, false},
		{"1899999999999", moment{2030, 3, 17, 1066, 0, true}, true}, {"1900000000000", moment{}, false}, {"12345678", moment{}, false}, {"12345678901", moment{}, false},
		{"44197", moment{2021, 1, 1, 0, 0, false}, true}, {"44197.25", moment{2021, 1, 1, 360, 0, false}, true}, {"10000", moment{1927, 5, 18, 0, 0, false}, true},
		{"9999.5", moment{}, false}, {"79999", moment{2119, 1, 10, 0, 0, false}, true}, {"80000", moment{}, false}, {"4419", moment{}, false}, {"441970", moment{}, false},
	} {
		var m moment
		if ok := m.count(c.text); ok != c.ok || ok && m != c.want {
			t.Errorf("%s: %+v, %v", c.text, m, ok)
		}
	}
}

// Clocks as people and programs write them.
func TestClocks(t *testing.T) {
	for text, want := range map[string]int{
		"14:30": 870, "14:30:59": 870, "1430": 870, "14": 840, "24:00": 1440, "0:00": 0, "00:59": 59, "25:00": -1, "14:60": -1, "14:59": 899, "1:2:3:4": -1, "": -1,
		"2:30 PM": 870, "12:30 AM": 30, "12:30 PM": 750, "12 a.m.": 0, "11:59 p.m.": 1439, "14:30.5": 870, "x": -1, "1:x": -1, "14:30+5:75x": -1,
	} {
		var m moment
		if ok := m.readClock(text); ok != (want >= 0) || ok && m.minute != want {
			t.Errorf("%q: %d, %v", text, m.minute, ok)
		}
	}
	for text, want := range map[string][2]int{"14:30Z": {870, 0}, "14:30 UTC": {870, 0}, "14:30+05:30": {870, 330}, "14:30-03": {870, -180}, "1:00+1": {60, 60}, "14:30-0330": {870, -210}} {
		var m moment
		if ok := m.readClock(text); !ok || m.minute != want[0] || m.zone != want[1] || !m.zoned {
			t.Errorf("%q: %+v, %v", text, m, ok)
		}
	}
}

// Dates: the order matters only where two numbers may be either; a year has four digits or is not told.
func TestDates(t *testing.T) {
	for _, c := range []struct {
		text, order      string
		year, month, day int // month 0: refused
	}{
		{"20210131", "dmy", 2021, 1, 31}, {"2021-01-31", "dmy", 2021, 1, 31}, {"31.01.2021", "dmy", 2021, 1, 31}, {"1/31/2021", "mdy", 2021, 1, 31},
		{"Jan-31-2021", "mdy", 2021, 1, 31}, {"31 January 2021", "dmy", 2021, 1, 31}, {"31/12", "dmy", 0, 12, 31}, {"12/31", "mdy", 0, 12, 31}, {"12/31", "ymd", 0, 0, 0},
		{"31.01.21", "dmy", 0, 1, 31}, {"21-01-31", "ymd", 0, 1, 31}, {"31", "dmy", 0, 0, 0}, {"1.2.3.4", "dmy", 0, 0, 0}, {"31-Dec-2021", "dmy", 2021, 12, 31},
	} {
		var m moment
		ok := m.readDate(c.text, c.order)
		if ok != (c.month > 0) || ok && (m.year != c.year || m.month != c.month || m.day != c.day) {
			t.Errorf("%q as %s: %+v, %v", c.text, c.order, m, ok)
		}
	}
	for text, want := range map[string]string{"13/01/2021": "dmy", "12/01/2021": "dmy", "01/13/2021": "mdy", "2021/13/01": "ymd", "5": "ymd"} {
		s := &sheet{lines: []string{text}, delimiter: ',', when: stampColumns{date: 0, time: -1}}
		if got := s.orderOf(); got != want {
			t.Errorf("%s alone is read as %s, want %s", text, got, want)
		}
	}
}

// Clocks are put forward by night, from one o'clock to five, in March or April in the north and from September to November in
// the south. In a year of 365 days 1 March is day 59, counted from 0, 1 May day 120, 1 September 243 and 1 December 334; in one
// of 366 from March on a day more, so day 120 is still 30 April there and day 334 30 November.
func TestWhenClocksJump(t *testing.T) {
	for _, c := range []struct {
		day, minute int
		want        bool
	}{
		{58, 180, false}, {59, 180, true}, {120, 180, true}, {121, 180, false}, {242, 180, false}, {243, 180, true}, {334, 180, true}, {335, 180, false}, {200, 180, false},
		{90, 0, false}, {90, 29, false}, {90, 30, true}, {90, 60, true}, {90, 300, true}, {90, 329, true}, {90, 330, false}, {90, 360, false},
	} {
		if got := jumps(c.day*dayMinutes+c.minute, 60); got != c.want {
			t.Errorf("day %d, minute %d: %v", c.day, c.minute, got)
		}
	}
	for _, c := range []struct {
		day  int
		days [2]int
		want bool
	}{
		{86, [2]int{87, 300}, false}, {87, [2]int{87, 300}, true}, {299, [2]int{87, 300}, true}, {300, [2]int{87, 300}, false},
		{299, [2]int{300, 87}, false}, {300, [2]int{300, 87}, true}, {86, [2]int{300, 87}, true}, {87, [2]int{300, 87}, false},
	} {
		if got := between(c.day, c.days); got != c.want {
			t.Errorf("day %d of %v: %v", c.day, c.days, got)
		}
	}
}

// The lateness of summer less that of winter, from 35 to 85 minutes on either side, is that of daylight saving time.
func TestSeasonalLateness(t *testing.T) {
	year := func(summer, winter float64) (l lateness) {
		for m := range 12 {
			l.months[m] = winter
			if m >= 4 && m <= 7 {
				l.months[m] = summer
			}
			if m == 2 || m == 3 || m == 8 || m == 9 {
				l.months[m] = 1000 // months of change count for neither
			}
		}
		return l
	}
	for d, want := range map[float64]bool{34.9: false, 35: true, 60: true, 85: true, 85.1: false, -34.9: false, -35: true, -85: true, -85.1: false} {
		if l := year(d+3, 3); math.Abs(l.season()-d) > 1e-9 || l.seasonal() != want {
			t.Errorf("%g minutes: %g, %v", d, l.season(), l.seasonal())
		}
	}
	dark := year(math.NaN(), 3)
	if dark.season() != 0 || dark.seasonal() {
		t.Error("a season without sun tells something")
	}
	if l := year(63, 3); l.standard() != 3 {
		t.Errorf("standard time is late by %g", l.standard())
	}
}

// Steps are even parts of an hour, or the hour.
func TestSteps(t *testing.T) {
	for step, ok := range map[int]bool{60: true, 61: false, 120: false, 45: false, 30: true, 20: true, 15: true, 10: true, 7: false, 5: true, 1: true} {
		var begin []int
		for i := range 50 {
			begin = append(begin, i*step)
		}
		if got, err := stepOf(begin, yearMinutes); (err == nil) != ok || ok && got != step {
			t.Errorf("rows %d minutes apart: %d, %v", step, got, err)
		}
	}
	if got, err := stepOf([]int{0, 60, 120, 150, 180, 180}, yearMinutes); err != nil || got != 30 { // two of each: the shorter
		t.Errorf("%d, %v", got, err)
	}
}

// Minutes of the year as dates: 1 March is day 59 of a year of 365 from 0 on.
func TestLabels(t *testing.T) {
	for minute, want := range map[int]string{0: "1 January 00:00", 58*dayMinutes + 1439: "28 February 23:59", 59 * dayMinutes: "1 March 00:00", 364*dayMinutes + 840: "31 December 14:00",
		yearMinutes: "1 January 00:00", -1: "31 December 23:59", 304 * dayMinutes: "1 November 00:00", 303*dayMinutes + 61: "31 October 01:01"} {
		if got := label(minute); got != want {
			t.Errorf("minute %d: %s, want %s", minute, got, want)
		}
	}
}

// Units of light by their definitions (ISO 80000-5): a langley an hour is 41,840 J/m² in 3600 s, 11.622 W/m²; a British thermal
// unit on a square foot and hour 3.1546 W/m² (ASHRAE Fundamentals, chapter Units and Conversions: 3.155).
func TestUnitsOfLight(t *testing.T) {
	for u, want := range map[string]float64{"W/m2": 1, "kW/m2": 1000, "Wh/m2": 1, "kWh/m2": 1000, "J/m2": 0.00027778, "kJ/m2": 0.27778, "MJ/m2": 277.78, "J/cm2": 2.7778, "cal/cm2": 11.622, "Btu/ft2": 3.1546} {
		if got := radiationUnits[u]; math.Abs(got/want-1) > 3e-5 {
			t.Errorf("%s: %v, want %v", u, got, want)
		}
	}
	for u, energy := range map[string]bool{"W/m2": false, "kW/m2": false, "Wh/m2": true, "J/cm2": true} {
		if energyUnit(u) != energy {
			t.Errorf("%s is an energy: %v", u, !energy)
		}
	}
}

// Air: the coldest and the hottest ever read were −89.2 and 56.7 °C (WMO archive); with some room −90 and 62 °C are still air.
// 32 °F are 0 °C, 212 °F 100 °C, 273.15 K 0 °C.
func TestAirOfTheEarth(t *testing.T) {
	for _, c := range []struct {
		unit    string
		v, want float64
		ok      bool
	}{{"C", -90, -90, true}, {"C", -90.1, 0, false}, {"C", 62, 62, true}, {"C", 62.1, 0, false}, {"F", 32, 0, true}, {"F", 77, 25, true}, {"F", 212, 0, false}, {"K", 273.15, 0, true}, {"K", 298.15, 25, true}, {"K", 20, 0, false}} {
		s := &sheet{thermo: c.unit}
		if got, reason := s.celsius(c.v); (reason == "") != c.ok || c.ok && math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%v %s: %v, %q", c.v, c.unit, got, reason)
		}
	}
}

// Codes for missing: those of the layouts (9999 and 99.9 of EnergyPlus, −9900 of TMY3) and of loggers; next to each is a value.
func TestCodesForMissing(t *testing.T) {
	c, f := &sheet{thermo: "C"}, &sheet{thermo: "F"}
	for _, x := range []struct {
		s      *sheet
		column int
		v      float64
		want   bool
	}{
		{c, ghi, -999, true}, {c, ghi, -998, false}, {c, ghi, -9900, true}, {c, ghi, 9999, true}, {c, ghi, 9998, false}, {c, ghi, 99999, true}, {c, ghi, 999999, true}, {c, ghi, 9999999, true},
		{c, ghi, -99, true}, {c, ghi, -99.9, true}, {c, ghi, -98, false}, {c, ghi, 99.9, false}, {c, ghi, 999, false},
		{c, temp, 99.9, true}, {f, temp, 99.9, false}, {c, temp, -99.9, true}, {c, temp, -99, true}, {c, temp, 999, true}, {c, temp, 998, false}, {c, temp, 9999, true}, {c, temp, -999, true}, {c, temp, 0, false},
	} {
		if got := x.s.missing(x.column, x.v); got != x.want {
			t.Errorf("%v in column %d, °%s: %v", x.v, x.column, x.s.thermo, got)
		}
	}
}

// The head of the fixed-width layout: minutes of an angle end at 59, south and west are negative (User's Manual for TMY2s, table
// 3-1, whose example is Caribou, Maine: N 46 52 W 68 1).
func TestFixedHead(t *testing.T) {
	head := func(place string) string { return strings.Repeat(" ", 37) + place + "   190" }
	for place, want := range map[string][2]float64{"N 46 52 W  68  1": {46 + 52.0/60, -68 - 1.0/60}, "S 33 00 E 151 59": {-33, 151 + 59.0/60}, "N  0 00 E   0 00": {0, 0}} {
		if lat, lon, ok := tmy2Place(head(place)); !ok || math.Abs(lat-want[0]) > 1e-9 || math.Abs(lon-want[1]) > 1e-9 {
			t.Errorf("%s: %v %v %v", place, lat, lon, ok)
		}
	}
	for _, place := range []string{"N 46 60 W  68  1", "N 46 52 W  68 60", "X 46 52 W  68  1", "N 46 52 N  68  1", "N -1 52 W  68  1", "N 46 -1 W  68  1"} {
		if _, _, ok := tmy2Place(head(place)); ok {
			t.Errorf("%s is read", place)
		}
	}
}

// How far a slip flatters a panel is said up to a slip of an hour and a half; for a sun that is early it is the panel to the
// east, which then gains what one to the west loses.
func TestTooWell(t *testing.T) {
	h, g := skyOf(0.5, 10)
	for minutes, told := range map[float64]bool{90: true, 91: false, -90: true, -91: false} {
		if got := tooWell(&h, g, minutes).String(); strings.HasPrefix(got, "about") != told {
			t.Errorf("%g minutes: %s", minutes, got)
		}
	}
	if late, early := tooWell(&h, g, 40).String(), tooWell(&h, g, -40).String(); strings.Contains(late, " 0") || strings.Contains(early, " 0") {
		t.Errorf("40 minutes late %s, early %s", late, early)
	}
}

// A slip is asked about from five minutes on.
func TestSlipIsAskedAbout(t *testing.T) {
	for minutes, want := range map[float64]bool{0: false, 3: false, 8: true, -3: false, -8: true} {
		g := sun.NewGeometry(unit.Angle(40*math.Pi/180), 0, 0)
		off := sun.NewGeometry(unit.Angle(40*math.Pi/180), 0, unit.Duration(minutes*60)) // a clock that is ahead: its sun is late
		var h [columns][]float64
		for _, c := range []int{ghi, dhi} {
			h[c] = make([]float64, sun.YearHours)
			for i := range h[c] {
				h[c][i] = 0.7 * off.Extra[i] / float64(1+c)
			}
		}
		rep := Report{Step: 60 * unit.Minute}
		s := &sheet{stamp: "start", when: stampColumns{date: 0}}
		s.slip(&h, g, &rep)
		asked, _ := warns(&rep, "than the sun of the sky")
		if asked != want || !rep.Slip.Is || math.Abs(float64(rep.Slip.Val)/60-minutes) > 1 {
			t.Errorf("%g minutes: slip of %g, asked %v", minutes, float64(rep.Slip.Val)/60, asked)
		}
		if word, _ := warns(&rep, map[bool]string{true: "earlier than", false: "later than"}[minutes < 0]); want && !word {
			t.Errorf("%g minutes: %v", minutes, rep.Notes)
		}
	}
}
