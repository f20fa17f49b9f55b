package weather

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"duskweight/internal/model/unit"
)

// One year of a place in the west, in further ways in which people have it, is read as the same year of the same place.
func TestFilesOfPeople(t *testing.T) {
	m := makeYear(39.83, -104.65, -7)
	const where = "Latitude: 39.83\nLongitude: -104.65\nTime zone: -7\n"
	const head = "time,GHI,DHI,temperature\n"
	rows := func(stamp func(int) string) string { return m.plain(head, ",", 60, stamp, false) }
	old := func(s string) string { // ISO 8859-1
		var b []byte
		for _, r := range s {
			b = append(b, byte(r))
		}
		return string(b)
	}
	for name, text := range map[string]string{
		"letters behind degrees":    "Latitude: 39.83 N\nLongitude: 104.65 W\nTime zone: UTC-7\n" + rows(iso(0)),
		"letters at degrees":        "Latitude: 39.83N\nLongitude: 104.65W\nTime zone: GMT-07:00\n" + rows(iso(0)),
		"degrees, minutes, seconds": "Latitude: 39°49'48\"N\nLongitude: 104°39'W\nTime zone: -7\n" + rows(iso(0)),
		"remarks with equal signs":  "# latitude = 39.83\n# longitude = -104.65\n# utc offset = -7\n" + rows(iso(0)),
		"longitude from 0 to 360":   "Latitude: 3.98300E+01\nLongitude: 2.5535E+02\nTime zone: -7\n" + rows(iso(0)),
		"line of units":             where + strings.Replace(rows(iso(0)), head, "time,GHI,DHI,temperature\n,W/m2,W/m2,degC\n", 1),
		"old letters":               old("latitude;39,83\nlongitude;-104,65\ntz;-7\n" + m.plain("Datum;Globalstrahlung (W/m²);Diffusstrahlung (W/m²);Temperatur (°C)\n", ";", 60, german, true)),
		"date and time apart":       "lat;39,83\nlon;-104,65\ntz;-7\n" + m.plain("Datum;Zeit;GHI;DHI;Lufttemperatur\n", ";", 60, func(n int) string { return strings.Replace(german(n), " ", ";", 1) }, true),
		"French":                    "latitude;39,83\nlongitude;-104,65\ntz;-7\n" + m.plain("date;rayonnement global (W/m²);diffuse;température\n", ";", 60, german, true),
		"quoted decimal commas":     where + m.quoted(),
		"blanks":                    where + m.plain("date time GHI DHI temperature\n", "  ", 60, iso(0), false),
		"a.m. and p.m.":             where + rows(func(n int) string { return strings.NewReplacer("AM", "a.m.", "PM", "p.m.").Replace(american(n)) }),
		"intervals": "# Latitude (positive North, ISO 19115): 39.83\n# Longitude (positive East, ISO 19115): -104.65\n# Time reference: Universal time (UT)\n" + m.plain("Observation period;GHI;DHI;temperature\n", ";", 60, func(n int) string {
			return strings.Replace(iso(420)(n), " ", "T", 1) + ":00.0/" + strings.Replace(iso(480)(n), " ", "T", 1) + ":00.0"
		}, false),
		"date and hour that ends":      where + m.plain("Date,Hour Ending,GHI,DHI,temperature\n", ",", 60, func(n int) string { return fmt.Sprintf("%s,%d", iso(0)(n)[:10], n/60%24+1) }, false),
		"month, day, hour from 1":      where + m.plain("Month,Day,Hour,GHI,DHI,temperature\n", ",", 60, func(n int) string { return fmt.Sprintf("%s,%s,%d", iso(0)(n)[5:7], iso(0)(n)[8:10], n/60%24+1) }, false),
		"month, day, hour from 0":      where + m.plain("Month,Day,Hour,GHI,DHI,temperature\n", ",", 60, func(n int) string { return fmt.Sprintf("%s,%s,%d", iso(0)(n)[5:7], iso(0)(n)[8:10], n/60%24) }, false),
		"hours 0100 to 2400":           where + m.plain("Month,Day,Hour,GHI,DHI,temperature\n", ",", 60, func(n int) string { return fmt.Sprintf("%s,%s,%02d00", iso(0)(n)[5:7], iso(0)(n)[8:10], n/60%24+1) }, false),
		"place in columns":             m.plain("time,lat,lon,GHI,DHI,temperature\n", ",", 60, func(n int) string { return iso(0)(n) + ",39.83,-104.65" }, false),
		"energyplus, hours 0 to 23":    strings.ReplaceAll(m.hoursFrom0(), "?", ""),
		"July first":                   where + head + rotated(rows(iso(0)), 181*24),
		"an index before, one bar end": where + m.plain(",time,GHI,DHI,temperature\n", ",", 60, func(n int) string { return fmt.Sprintf("%d,%s", n, iso(0)(n)) }, false),
	} {
		t.Run(name, func(t *testing.T) {
			s, _ := read(t, text, Mapping{})
			m.same(t, s, 1e-9)
			if math.Abs(s.Latitude.Degrees()-39.83) > 1e-9 || math.Abs(s.Longitude.Degrees()+104.65) > 1e-9 || s.UTCOffset != -7*unit.Hour {
				t.Errorf("place %v %v %v", s.Latitude.Degrees(), s.Longitude.Degrees(), s.UTCOffset)
			}
		})
	}
}

func (m made) quoted() string {
	var b strings.Builder
	b.WriteString("\"time\",\"GHI\",\"DHI\",\"temperature\"\n")
	for i := range m.g {
		fmt.Fprintf(&b, "\"%s\",\"%.1f\",\"%.1f\",\"%.1f\"\n", iso(0)(i*60), m.g[i], m.d[i], m.t[i])
	}
	return strings.ReplaceAll(b.String(), ".", ",")
}

// hoursFrom0 is the EnergyPlus format with the hour that begins.
func (m made) hoursFrom0() string {
	l := lines(m.energyPlus())
	for i := range m.g {
		f := strings.SplitN(l[8+i], ",", 5)
		f[3] = fmt.Sprint(i % 24)
		l[8+i] = strings.Join(f, ",")
	}
	return strings.Join(l, "\n")
}

// rotated is the rows below the first line, from a row on and round.
func rotated(text string, from int) string {
	l := lines(text)[1:]
	return strings.Join(append(append([]string(nil), l[from:]...), l[:from]...), "\n")
}

// What would be read wrong in silence is refused or warned about.
func TestWrongOfPeople(t *testing.T) {
	m := makeYear(39.83, -104.65, -7)
	const where = "Latitude: 39.83\nLongitude: -104.65\nTime zone: -7\n"
	text := m.plain("time,GHI,DHI,temperature\n", ",", 60, iso(0), false)
	faults(t, where+strings.Replace(text, "GHI,DHI", "GHI (kWh/m2),DHI (W/m2)", 1), Mapping{}, `"kWh/m2 and W/m2" are the units of the columns of light`)
	faults(t, where+strings.ReplaceAll(strings.ReplaceAll(m.quoted(), `"`, ""), "time,GHI", "time,GHI"), Mapping{}, "The rows have 7 fields and there are 4 names")
	faults(t, "Latitude: 39.83 E\nLongitude: -104.65\n"+text, Mapping{}, "does not say where it is from")
	thousand := strings.Replace(text, ",GHI,", ",GHI,", 1)
	thousand = strings.Replace(thousand, "2021-06-01 12:00,", "2021-06-01 12:00,\"1,013\",0,20\n2021-06-01 12:00,", 1)
	faults(t, where+thousand, Mapping{}, `"1,013" is not a number.`)

	south := strings.Replace(where, "39.83", "-39.83", 1) + text
	if _, rep := read(t, south, Mapping{}); !says(rep, "Is the sign of the latitude wrong") {
		t.Errorf("the other half of the Earth: %v", rep.Notes)
	}
	bare := m.plain("n,GHI,DHI,temperature\n", ",", 60, func(n int) string { return "1" }, false)
	if _, rep := read(t, where+"n,GHI,DHI,temperature\n"+rotated(bare, 181*24), Mapping{}); !says(rep, "does the year begin in another month") {
		t.Errorf("rows from July on without dates: %v", rep.Notes)
	}
	if _, rep := read(t, where+strings.Replace(text, "GHI,DHI", "DHI,GHI", 1), Mapping{}); !says(rep, "columns were changed over") {
		t.Errorf("columns changed over: %v", rep.Notes)
	}
	hot := m
	hot.t = make([]float64, len(m.t))
	for i := range hot.t {
		hot.t[i] = 50
	}
	if _, rep := read(t, where+hot.plain("time,GHI,DHI,temperature\n", ",", 60, iso(0), false), Mapping{}); !says(rep, "more than places at this latitude have") {
		t.Errorf("50 °C all year: %v", rep.Notes)
	}
}
