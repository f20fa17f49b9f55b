package weather

import (
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode/utf16"

	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// One year, written in all the ways in which people have it, is read as the same year.
func TestSameYear(t *testing.T) {
	m := makeYear(harbour, 12, 1)
	ep, tm := m.energyPlus(), m.tmy3()
	const head = "time,GHI,DHI,temperature\n"
	where := "Latitude (decimal degrees): 40.0\nLongitude (decimal degrees): 1.20000E+01\nElevation (m): 12\n"
	semis := strings.NewReplacer(",", ";", ".", ",").Replace(tm[strings.Index(tm, "\n")+1:])
	for name, c := range map[string]struct {
		text string
		hint Mapping
	}{
		"energyplus":                    {ep, Mapping{}},
		"energyplus, CRLF":              {strings.ReplaceAll(ep, "\n", "\r\n"), Mapping{}},
		"energyplus, old line ends":     {strings.ReplaceAll(ep, "\n", "\r"), Mapping{}},
		"energyplus, mark":              {"\ufeff" + ep, Mapping{}},
		"energyplus, UTF-16":            {utf16le(ep), Mapping{}},
		"energyplus, semicolons":        {strings.NewReplacer(",", ";", ".", ",").Replace(ep), Mapping{}},
		"energyplus, exponents":         {strings.Replace(strings.Replace(ep, ",40,12,1,", ",4.00000E+01,1.20000E+01,1.0,", 1), "LOCATION", "Location", 1), Mapping{}},
		"energyplus, quotes":            {strings.Replace(ep, "Made Harbour", `"Made Harbour"`, 1), Mapping{}},
		"energyplus, lines after":       {ep + "\n\n\n", Mapping{}},
		"tmy3":                          {tm, Mapping{}},
		"tmy3, semicolons and commas":   {"000001;\"MADE HARBOUR; OLD PIER\";NW;1,0;40,0;12,0;12\n" + semis, Mapping{}},
		"start stamps":                  {m.plain(head, ",", 60, iso(0), false), here},
		"end stamps":                    {m.plain(head, ",", 60, iso(60), false), with(here, func(h *Mapping) { h.Stamp = "end" })},
		"middle stamps":                 {m.plain(head, ",", 60, iso(30), false), here},
		"UTC stamps":                    {m.plain("time(UTC),G(h),Gd(h),T2m\n", ",", 60, iso(-60), false), here},
		"UTC stamps with Z":             {m.plain(head, ",", 60, func(n int) string { return strings.Replace(iso(-60)(n), " ", "T", 1) + ":00Z" }, false), here},
		"stamps with an offset":         {m.plain(head, ",", 60, func(n int) string { return iso(120)(n) + "+03:00" }, false), here},
		"half-hours":                    {m.plain(head, ",", 30, iso(0), false), here},
		"quarter-hours":                 {m.plain(head, ",", 15, iso(0), false), here},
		"half-hours, energy":            {m.halfEnergy(), here},
		"semicolons and decimal commas": {m.plain("Datum;GHI [W/m²];DHI [W/m²];Temperatur\n", ";", 60, german, true), here},
		"tabs":                          {m.plain("Date/time\tGHI\tDHI\tT2m\n", "\t", 60, iso(0), false), here},
		"dates as month/day":            {m.plain(head, ",", 60, american, false), here},
		"digits":                        {m.plain(where+"\n\n"+"time(UTC),G(h),Gd(h),T2m\n", ",", 60, digits, false) + "\nT2m: temperature, two metres\n", with(Mapping{}, func(h *Mapping) { h.UTCOffset = unit.Of(unit.Hour) })},
		"names over values":             {names(m), Mapping{}},
		"no stamps":                     {m.plain("n,GHI,DHI,temp\n", ",", 60, func(n int) string { return fmt.Sprint(n) }, false), here},
		"no names":                      {m.plain("", ",", 60, iso(0), false), with(here, func(h *Mapping) { h.Date, h.GHI, h.DHI, h.Temperature = 1, 2, 3, 4 })},
		"leap year":                     {leap(m.plain(head, ",", 60, iso(0), false)), here},
		"leap year, end stamps":         {leapEnd(m), with(here, func(h *Mapping) { h.Stamp = "end" })},
		"rows in any order":             {turned(m.plain(head, ",", 60, iso(0), false)), here},
		"years mixed by month":          {strings.NewReplacer("2021-03", "2005-03", "2021-11", "1999-11").Replace(m.plain(head, ",", 60, iso(0), false)), here},
	} {
		t.Run(name, func(t *testing.T) {
			s, rep := read(t, c.text, c.hint)
			m.same(t, s, 1e-9)
			if rep.Slip.Is && math.Abs(float64(rep.Slip.Val)) > 3*60 {
				t.Errorf("slip %v s", rep.Slip.Val)
			}
			if math.Abs(float64(s.Latitude.Degrees())-40) > 1e-9 || math.Abs(s.Longitude.Degrees()-12) > 1e-9 || s.UTCOffset != unit.Hour {
				t.Errorf("place %v %v %v", s.Latitude, s.Longitude, s.UTCOffset)
			}
			if strings.HasPrefix(name, "leap") != rep.LeapDay {
				t.Errorf("leap day: %v", rep.LeapDay)
			}
		})
	}
}

func with(m Mapping, change func(*Mapping)) Mapping {
	change(&m)
	return m
}

func utf16le(s string) string {
	b := []byte{0xff, 0xfe}
	for _, u := range utf16.Encode([]rune(s)) {
		b = binary.LittleEndian.AppendUint16(b, u)
	}
	return string(b)
}

func german(minute int) string {
	s := iso(0)(minute)
	return s[8:10] + "." + s[5:7] + "." + s[:4] + " " + s[11:]
}

func american(minute int) string {
	s := iso(0)(minute)
	h := minute / 60 % 24
	half := "AM"
	if h >= 12 {
		half = "PM"
	}
	return fmt.Sprintf("%s/%s/%s %d:00 %s", s[5:7], s[8:10], s[:4], (h+11)%12+1, half)
}

// digits stamps in UTC, one hour behind the place's clock.
func digits(minute int) string {
	s := iso(-60)(minute)
	return strings.NewReplacer("-", "", " ", ":").Replace(s[:11]) + s[11:13] + s[14:]
}

// names writes facts about the place as a row of names over a row of values, in UTC, with the local clock beside it.
func names(m made) string {
	head := "Source,City,Latitude,Longitude,Time Zone,Elevation,Local Time Zone\nmade,Harbour,40,12,0,12,1\nYear,Month,Day,Hour,Minute,GHI,DHI,Temperature\n"
	return m.plain(head, ",", 30, func(n int) string {
		s := iso(-60)(n)
		return s[:4] + "," + s[5:7] + "," + s[8:10] + "," + s[11:13] + "," + s[14:]
	}, false)
}

// halfEnergy writes half-hours in Wh/m², each half of the hour's.
func (m made) halfEnergy() string {
	h := m
	h.g, h.d = nil, nil
	for i := range m.g {
		h.g, h.d = append(h.g, m.g[i]/2), append(h.d, m.d[i]/2)
	}
	return h.plain("time,GHI (Wh/m2),DHI (Wh/m2),temperature (°C)\n", ",", 30, iso(0), false)
}

func leap(text string) string {
	text = strings.ReplaceAll(text, "2021-", "2020-")
	i := strings.Index(text, "2020-03-01 00:00")
	var extra strings.Builder
	for h := range 24 {
		fmt.Fprintf(&extra, "2020-02-29 %02d:00,900,100,40\n", h)
	}
	return text[:i] + extra.String() + text[i:]
}

// leapEnd has stamps at the end of the hour: midnight of 29 February ends the 28th, and midnight of 1 March the 29th.
func leapEnd(m made) string {
	text := m.plain("time,GHI,DHI,temperature\n", ",", 60, iso(60), false)
	text = strings.Replace(strings.ReplaceAll(text, "2021-", "2020-"), "2020-03-01 00:00", "2020-02-29 00:00", 1)
	var extra strings.Builder
	for h := 1; h < 24; h++ {
		fmt.Fprintf(&extra, "2020-02-29 %02d:00,900,100,40\n", h)
	}
	extra.WriteString("2020-03-01 00:00,900,100,40\n")
	i := strings.Index(text, "2020-03-01 01:00")
	return text[:i] + extra.String() + text[i:]
}

func turned(text string) string {
	l := lines(text)
	rows := l[1:]
	for i, j := 0, len(rows)-1; i < j; i, j = i+1, j-1 {
		rows[i], rows[j] = rows[j], rows[i]
	}
	return strings.Join(l, "\n")
}

// A clock half an hour off the stamps shares each row out to two hours: it keeps the sum, and gives each hour the light that
// the day's clearness leaves of the sun of that hour, to the rounding of the two rows.
func TestHalfHourZone(t *testing.T) {
	m := makeYear(harbour, 82.5, 5)
	text := m.plain("time(UTC),GHI,DHI,temperature\n", ",", 60, iso(-300), false)
	s, rep := read(t, text, Mapping{Latitude: here.Latitude, Longitude: unit.Of(82.5 * unit.Degree), UTCOffset: unit.Of(unit.Duration(5.5 * 3600))})
	if !rep.Shifted {
		t.Error("not told that the rows were shared out")
	}
	g := sun.NewGeometry(s.Latitude, s.Longitude, s.UTCOffset)
	var sum, want float64
	for i := range s.GHI {
		sum += s.GHI[i]
		want += m.g[i]
		if k := 0.7 - 0.1*float64((i/24*7)%5); math.Abs(s.GHI[i]-k*g.Extra[i]) > 1 {
			t.Fatalf("hour %d: %v, want %v", i, s.GHI[i], k*g.Extra[i])
		}
		j := (i + sun.YearHours - 1) % sun.YearHours
		if math.Abs(s.TAir[i]-(m.t[i]+m.t[j])/2) > 1e-9 { // half of this row, half of the row before
			t.Fatalf("air of hour %d: %v", i, s.TAir[i])
		}
	}
	if math.Abs(sum-want) > 1e-6*want {
		t.Errorf("sum %v, want %v", sum, want)
	}
	if math.Abs(float64(rep.Slip.Val)) > 180 {
		t.Errorf("slip %v", rep.Slip.Val)
	}
}

// Stamps taken for another place in the hour, and a wrong zone, are found by the light of clear days.
func TestSlipIsFound(t *testing.T) {
	m := makeYear(harbour, 12, 1)
	text := m.plain("time,GHI,DHI,temperature\n", ",", 60, iso(60), false)
	for stamp, want := range map[string]float64{"end": 0, "middle": 30, "start": 60} { // minutes
		_, rep := read(t, text, with(here, func(h *Mapping) { h.Stamp = stamp }))
		if got := float64(rep.Slip.Val) / 60; math.Abs(got-want) > 3 {
			t.Errorf("%s: %.1f minutes, want %v", stamp, got, want)
		}
		if warned := says(rep, "On clear days the sun of this file runs"); warned != (want != 0) {
			t.Errorf("%s: warned %v", stamp, warned)
		}
	}
	_, rep := read(t, text, with(here, func(h *Mapping) {
		h.Stamp, h.UTCOffset, h.StampZone = "end", unit.Of(unit.Duration(4*3600)), unit.Known[unit.Duration]{}
	}))
	if !says(rep, "hours away from what its longitude gives") || !says(rep, "On clear days") {
		t.Errorf("a zone three hours off: %v", rep.Notes)
	}
	_, _, err := Read(strings.NewReader(text), with(here, func(h *Mapping) { h.Longitude = unit.Of(-150 * unit.Degree) }), nil)
	if err == nil || !strings.Contains(err.Error(), "while the sun is down") {
		t.Errorf("another side of the earth: %v", err)
	}
}

func says(r Report, words string) bool {
	for _, n := range r.Notes {
		if strings.Contains(n.Say.String(), words) {
			return true
		}
	}
	return false
}

// What the file lacks is worked out, and said.
func TestDiffuseAndGlobal(t *testing.T) {
	m := makeYear(harbour, 12, 1)
	table := func(head string, cols ...[]float64) string {
		var b strings.Builder
		b.WriteString(head + "\n")
		for i := range m.g {
			b.WriteString(iso(0)(i * 60))
			for _, c := range cols {
				fmt.Fprintf(&b, ",%v", c[i])
			}
			b.WriteString("\n")
		}
		return b.String()
	}
	s, rep := read(t, table("time,GHI,DNI,temp", m.g, m.b, m.t), here)
	if rep.Diffuse != "direct" {
		t.Errorf("diffuse from %q", rep.Diffuse)
	}
	var sum, want float64
	for i := range s.DHI {
		sum, want = sum+s.DHI[i], want+m.d[i]
	}
	// The sun in the edge hours was left without direct light in making the year: 1 %.
	if math.Abs(sum/want-1) > 0.01 {
		t.Errorf("diffuse sum %v, want %v", sum, want)
	}
	s, rep = read(t, table("time,DHI,DNI,temp", m.d, m.b, m.t), here)
	sum, want = 0, 0
	for i := range s.GHI {
		sum, want = sum+s.GHI[i], want+m.g[i]
	}
	if rep.Global != "direct" || math.Abs(sum/want-1) > 0.01 {
		t.Errorf("global from %q, sum %v, want %v", rep.Global, sum, want)
	}
	s, rep = read(t, table("time,GHI,temp", m.g, m.t), here)
	if rep.Diffuse != "estimated" || !says(rep, "estimated") {
		t.Errorf("diffuse from %q", rep.Diffuse)
	}
	for i := range s.DHI {
		if s.DHI[i] < 0 || s.DHI[i] > s.GHI[i] {
			t.Fatalf("hour %d: diffuse %v of %v", i, s.DHI[i], s.GHI[i])
		}
	}
}

func TestUnits(t *testing.T) {
	m := makeYear(harbour, 12, 1)
	scaled := func(factor float64) made {
		n := m
		n.g, n.d = nil, nil
		for i := range m.g {
			n.g, n.d = append(n.g, m.g[i]*factor), append(n.d, m.d[i]*factor)
		}
		return n
	}
	for head, factor := range map[string]float64{"time,GHI (kW/m2),DHI,t": 1e-3, "time,GHI [kJ/m²],DHI,t": 3.6, "time,GHI [MJ/m^2],DHI,t": 3.6e-3, "time,GHI (J/cm²),DHI,t": 0.36, "time,GHI (W/m2),DHI,t": 1} {
		s, _ := read(t, scaled(factor).plain(head+"\n", ",", 60, iso(0), false), here)
		m.same(t, s, 1e-9)
	}
	f := m
	f.t = nil
	for _, c := range m.t {
		f.t = append(f.t, c*9/5+32)
	}
	s, _ := read(t, f.plain("time,GHI,DHI,Temp (°F)\n", ",", 60, iso(0), false), here)
	m.same(t, s, 1e-9)
}

// Up to three missing hours are filled in a straight line; one more is refused, and every gap is named.
func TestGaps(t *testing.T) {
	m := makeYear(harbour, 12, 1)
	text := m.plain("time,GHI,DHI,temperature\n", ",", 60, iso(0), false)
	without := func(stamps ...string) string {
		out := text
		for _, s := range stamps {
			i := strings.Index(out, s)
			j := i + strings.Index(out[i:], "\n") + 1
			out = out[:i] + out[j:]
		}
		return out
	}
	s, rep := read(t, without("2021-06-10 10:00", "2021-06-10 11:00", "2021-12-31 23:00"), here)
	// Six columns of gaps: two runs in each of global, diffuse and temperature.
	if len(rep.Gaps) != 6 || rep.Gaps[0].From != "10 June 10:00" || rep.Gaps[0].Hours != 2 {
		t.Errorf("gaps %+v", rep.Gaps)
	}
	i := (before(6, false) + 9) * 24
	if want := m.g[i+9] + (m.g[i+12]-m.g[i+9])/3; math.Abs(s.GHI[i+10]-want) > 1e-9 {
		t.Errorf("filled %v, want %v", s.GHI[i+10], want)
	}
	last := sun.YearHours - 1
	if want := (m.t[last-1] + m.t[0]) / 2; math.Abs(s.TAir[last]-want) > 1e-9 { // over the turn of the year
		t.Errorf("filled %v, want %v", s.TAir[last], want)
	}
	faults(t, without("2021-06-10 10:00", "2021-06-10 11:00", "2021-12-31 23:00", "2021-03-01 00:00"), here,
		"global radiation is missing for 1 hour from 1 March 00:00 on", "global radiation is missing for 2 hours from 10 June 10:00 on",
		"Up to 3 missing hours of temperature are filled from their neighbours; here 4 hours are missing.")
	coded := strings.Replace(m.energyPlus(), ",60,flags,"+fmt.Sprint(m.t[5])+",", ",60,flags,99.9,", 1)
	if _, rep := read(t, coded, Mapping{}); len(rep.Gaps) != 1 || rep.Gaps[0].What != "temperature" {
		t.Errorf("a code for missing: %+v", rep.Gaps)
	}
}

func faults(t *testing.T, text string, hint Mapping, want ...string) {
	t.Helper()
	s, _, err := Read(strings.NewReader(text), hint, nil)
	var r *Refused
	if !errors.As(err, &r) || s.GHI != nil {
		t.Fatalf("not refused: %v", err)
	}
	for _, w := range want {
		if !strings.Contains(r.Error(), w) {
			t.Errorf("%q is not said in:\n%s", w, short2(r.Error()))
		}
	}
}

func short2(s string) string { return s[:min(len(s), 1500)] }

func TestRefusals(t *testing.T) {
	m := makeYear(harbour, 12, 1)
	text := m.plain("time,GHI,DHI,temperature\n", ",", 60, iso(0), false)
	l := lines(text)
	change := func(line int, to string) string {
		n := append([]string(nil), l...)
		n[line-1] = to
		return strings.Join(n, "\n")
	}
	faults(t, strings.Replace(change(12, "2021-01-01 10:00,abc,12,4.5"), "2021-01-01 12:00,", "2021-01-32 12:00,", 1), here,
		`line 12, column 2 (GHI): "abc" is not a number.`, `line 14, column 1 (time): "2021-01-32 12:00" is not a day of its month.`)
	faults(t, change(12, "2021-01-01 10:00,5,5,77"), here, `line 12, column 4 (temperature): "77" is no air temperature`)
	faults(t, change(12, "2021-01-01 10:00,NaN,5,1e999"), here, `line 12, column 4 (temperature): "1e999" is not a number.`)
	faults(t, change(12, "2021-01-01 10:00,0x10,5,4"), here, `"0x10" is not a number.`)
	faults(t, change(12, "2021-01-01 10:00,2500,5,4"), here, `line 12, column 2 (GHI): "2500" is 2`+unit.Space+`500`+unit.Space+`W/m² of global radiation, more than any sky gives`)
	faults(t, change(12, "2021-01-01 10:00,5"), here, "line 12, column 3 (DHI): This row ends before its diffuse radiation (column 3).")
	faults(t, change(12, "2021-01-01 09:00,1,1,1"), here, "line 12: This row is for the same time as line 11 (1 January 09:00)")
	faults(t, change(12, "2021-01-01 10:17,1,1,1"), here, "line 12: This row stands off the beat of the others")
	faults(t, text+strings.ReplaceAll(text[strings.Index(text, "\n")+1:], "2021-", "2022-"), here, "more than one year?")
	faults(t, strings.Join(l[:4000], "\n"), here, "global radiation is missing for")
	faults(t, text, Mapping{}, "The file does not say where it is from.")
	faults(t, "time,wind\n2021-01-01 00:00,3\n2021-01-01 01:00,4\n", Mapping{}, "No column of air temperature", "No column of global radiation", "where it is from")
	faults(t, text, with(here, func(h *Mapping) { h.Latitude = unit.Of(120 * unit.Degree) }), "is not a latitude")
	faults(t, text, with(here, func(h *Mapping) { h.RadiationUnit = "lux" }), "is not a unit of radiation")
	faults(t, text, with(here, func(h *Mapping) { h.RadiationUnit = "kW/m2" }), "more than any sky gives")
	if _, rep := read(t, text, with(here, func(h *Mapping) { h.RadiationUnit = "kJ/m2" })); !says(rep, "That is unusual. Is the unit right?") {
		t.Errorf("another unit: %v", rep.Notes)
	}
	faults(t, strings.NewReplacer(",GHI,DHI,", ",GHI (J/m2),DHI,").Replace(tenth(m).plain("time,GHI,DHI,temperature\n", ",", 60, iso(0), false)), here, "The unit or the column is wrong.")
	faults(t, text, with(here, func(h *Mapping) { h.Layout = "sheet" }), "is not a layout")
	faults(t, m.plain("n,GHI,DHI,temp\n", ",", 60, func(n int) string { return "x" }, false)+"1,2,3,4\n", here, "8\u00a0760 or 8\u00a0784 rows")
	zero := m
	zero.g, zero.d = make([]float64, 8760), make([]float64, 8760)
	faults(t, zero.plain("time,GHI,DHI,temperature\n", ",", 60, iso(0), false), here, "There is no sun in the whole year")
	faults(t, "PK\x03\x04 anything", here, "zip archive")
	faults(t, "%PDF-1.7", here, "PDF document")
	faults(t, "<!DOCTYPE html><title>Log in</title>", here, "web page")
	faults(t, "\x1f\x8b\x08", here, "packed")
	faults(t, "a\x00b", here, "not a text file")
	faults(t, "", here, "empty")
	faults(t, " \r\n ", here, "empty")
	faults(t, "\xff\xfe", here, "empty")
	faults(t, "one line", here)
	faults(t, strings.Replace(m.energyPlus(), ",40,12,1,12.0", ",forty,12,1,12.0", 1), Mapping{}, `line 1, column 7 (latitude): "forty" is not a number.`)
	faults(t, "LOCATION,a,b\nDESIGN CONDITIONS,0\n", Mapping{}, "ten fields")
	faults(t, strings.Replace(m.energyPlus(), "DATA PERIODS", "DATA", 1), Mapping{}, "DATA PERIODS")
	_, _, err := Read(strings.NewReader(strings.Repeat("2021-01-01 00:00,1x,1x,1x\n", 9000)), with(here, func(h *Mapping) { h.Date, h.GHI, h.DHI, h.Temperature = 1, 2, 3, 4 }), nil)
	var r *Refused
	if !errors.As(err, &r) || len(r.Faults) != most || r.More != 3*9000-most {
		t.Errorf("many faults: %d told, %d more", len(r.Faults), r.More)
	}
}

// tenth is a year with a tenth of the light.
func tenth(m made) made {
	n := m
	n.g, n.d = nil, nil
	for i := range m.g {
		n.g, n.d = append(n.g, m.g[i]/10), append(n.d, m.d[i]/10)
	}
	return n
}

// A file of 200 MB is refused long before its end, and a reader's own error comes through.
func TestLargeAndBroken(t *testing.T) {
	file := &endless{limit: 200 << 20}
	_, _, err := Read(file, here, nil)
	if err == nil || !strings.Contains(err.Error(), "larger than 32 MB") || file.n > Largest+1<<20 {
		t.Errorf("after %d bytes: %v", file.n, err)
	}
	broken := errors.New("the line broke")
	if _, _, err := Read(io.MultiReader(strings.NewReader("time,GHI\n"), failing{broken}), here, nil); !errors.Is(err, broken) {
		t.Errorf("error %v", err)
	}
}

type failing struct{ err error }

func (f failing) Read([]byte) (int, error) { return 0, f.err }

type endless struct{ n, limit int }

func (e *endless) Read(p []byte) (int, error) {
	if e.n >= e.limit {
		return 0, io.EOF
	}
	for i := range p {
		p[i] = "2021-01-01 00:00,1,1,1\n"[(e.n+i)%23]
	}
	e.n += len(p)
	return len(p), nil
}

// Values below zero, above the sky and more diffuse than global are counted and said.
func TestOddValues(t *testing.T) {
	m := makeYear(harbour, 12, 1)
	m.g[0], m.g[1] = -2, -1
	noon := 180*24 + 12
	m.g[noon], m.g[noon+1] = 1500, 1490
	m.d[noon+24] = m.g[noon+24] + 20
	s, rep := read(t, m.plain("time,GHI,DHI,temperature\n", ",", 60, iso(0), false), here)
	if rep.Negative != 2 || rep.AboveSky != 2 || rep.DiffuseOver != 1 {
		t.Errorf("%d below zero, %d above the sky, %d diffuse over", rep.Negative, rep.AboveSky, rep.DiffuseOver)
	}
	if s.GHI[0] != 0 || s.GHI[noon] != 1500 || s.DHI[noon+24] != s.GHI[noon+24] {
		t.Errorf("%v %v %v", s.GHI[0], s.GHI[noon], s.DHI[noon+24])
	}
	if !says(rep, "2 values of light were below zero; they were set to zero") || !says(rep, "2 hours have more than 1.1 times the light outside the air. They were kept") {
		t.Errorf("notes %v", rep.Notes)
	}
}

func TestLook(t *testing.T) {
	p, err := Look(strings.NewReader(makeYear(harbour, 12, 1).plain("Station: Harbour\n\nDatum;GHI [W/m²];DHI [W/m²];Temperatur\n", ";", 60, german, true)), Mapping{})
	if err != nil {
		t.Fatal(err)
	}
	if p.Refused == nil || !strings.Contains(p.Refused.Error(), "where it is from") {
		t.Errorf("refused: %v", p.Refused)
	}
	if p.Mapping.Delimiter != ";" || p.Mapping.DecimalComma != "yes" || p.Mapping.FirstLine != 4 || p.Mapping.GHI != 2 || p.Mapping.Temperature != 4 || p.Mapping.DNI != -1 || p.Mapping.Order != "dmy" {
		t.Errorf("mapping %+v", p.Mapping)
	}
	if len(p.Top) != 3 || len(p.Cells) != previewRows || len(p.Rows) != previewRows || p.Rows[9].When != "1 January 09:00" || p.Rows[9].GHI.Val < 10 {
		t.Errorf("rows %+v", p.Rows)
	}
	if _, err := Look(strings.NewReader("PK\x03\x04"), Mapping{}); err == nil {
		t.Error("a zip is looked at")
	}
}

// The samples in testdata are files as people have them.
func TestSamples(t *testing.T) {
	dir := filepath.Join("..", "..", "testdata", "weather")
	for name, want := range map[string]string{
		"harbour-semicolons.csv": "", "two-wrong-cells.csv": "line 5, column 2 (GHI [W/m²]): \"12,x\" is not a number.", "wind-only.csv": "No column of global radiation",
	} {
		b, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil {
			t.Fatal(err)
		}
		_, rep, err := Read(strings.NewReader(string(b)), Mapping{}, nil)
		if want == "" && (err != nil || rep.Rows != 8760) || want != "" && (err == nil || !strings.Contains(err.Error(), want)) {
			t.Errorf("%s: %v, %d rows", name, err, rep.Rows)
		}
	}
}

func FuzzRead(f *testing.F) {
	m := makeYear(harbour, 12, 1)
	for _, s := range []string{m.energyPlus()[:2000], m.tmy3()[:1000], m.tmy2()[:1000], "Irradiance Time Offset (h): 0.2\nSlope: 0 deg.\n" + m.civil(60, 0, 60, true)[:900], m.plain("time,GHI,DHI,temp\n", ",", 60, iso(0), false)[:800], names(m)[:700], "\xff\xfea\x00", "lat: 5\n", "a;b\n1,5;2\n"} {
		f.Add(s, 0, "", "")
	}
	f.Fuzz(func(t *testing.T, text string, column int, stamp, order string) {
		hint := with(here, func(h *Mapping) { h.GHI, h.Date, h.Stamp, h.Order = column%6, (column/6)%6, stamp, order })
		s, _, err := Read(strings.NewReader(text), hint, nil)
		if err == nil {
			for _, v := range [][]float64{s.GHI, s.DHI, s.TAir} {
				if len(v) != sun.YearHours {
					t.Fatalf("%d hours", len(v))
				}
				for _, x := range v {
					if math.IsNaN(x) || math.IsInf(x, 0) {
						t.Fatal(x)
					}
				}
			}
		} else if err.Error() == "" {
			t.Fatal("refused without a word")
		}
		years, _, _, err := ReadYears(strings.NewReader(text), hint, nil)
		if (len(years) == 0) != (err != nil) {
			t.Fatalf("%d years, %v", len(years), err)
		}
		_, _ = Look(strings.NewReader(text), Mapping{})
	})
}

func BenchmarkRead(b *testing.B) {
	text := makeYear(harbour, 12, 1).energyPlus()
	b.SetBytes(int64(len(text)))
	for b.Loop() {
		if _, _, err := Read(strings.NewReader(text), Mapping{}, nil); err != nil {
			b.Fatal(err)
		}
	}
}

// Who waits is told the bytes of the rows worked through: every 4,096 lines what these lines hold with their ends.
func TestProgressCountsBytes(t *testing.T) {
	m := makeYear(harbour, 12, 1)
	text := m.plain("time,GHI,DHI,temperature\n", ",", 60, iso(0), false)
	var told []int64
	if _, _, err := Read(strings.NewReader(text), here, func(done int64) { told = append(told, done) }); err != nil {
		t.Fatal(err)
	}
	rows := strings.SplitAfter(text, "\n")[1:]
	var want []int64
	sum := int64(0)
	for i, l := range rows[:8760] {
		if sum += int64(len(l)); (i+1)%4096 == 0 {
			want = append(want, sum)
		}
	}
	if !slices.Equal(told, want) {
		t.Errorf("told %v, want %v", told, want)
	}
}
