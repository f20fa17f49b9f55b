package weather

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// made is a year of our own making: seven tenths of the light outside the air on clear days, less on others, a third of
// it diffuse, and a temperature that swings by day and season.
type made struct {
	lat, lon, zone float64 // degrees, hours
	g, d, b, t     []float64
}

func makeYear(lat, lon, zone float64) made {
	geo := sun.NewGeometry(unit.Angle(lat)*unit.Degree, unit.Angle(lon)*unit.Degree, unit.Duration(zone)*unit.Hour)
	m := made{lat: lat, lon: lon, zone: zone}
	for i := range sun.YearHours {
		day := i / 24
		k := 0.7 - 0.1*float64((day*7)%5)
		g := math.Round(geo.Extra[i] * k)
		d := math.Round(g / 3)
		b := 0.0
		if up := geo.Up[i] * geo.Lit[i]; up > 0.05 {
			b = math.Round((g - d) / up)
		}
		m.g, m.d, m.b = append(m.g, g), append(m.d, d), append(m.b, b)
		t := 12 - 10*math.Cos(2*math.Pi*float64(day-20)/365) + 5*math.Cos(2*math.Pi*float64(i%24-15)/24)
		m.t = append(m.t, math.Round(t*10)/10)
	}
	return m
}

// day and month of hour i of the year.
func date(i int) (month, day int) {
	month = 12
	for before(month, false)*24 > i {
		month--
	}
	return month, i/24 - before(month, false) + 1
}

func (m made) energyPlus() string {
	var b strings.Builder
	fmt.Fprintf(&b, "LOCATION,Made Harbour,-,NWH,of our own making,000000,%v,%v,%v,12.0\n", m.lat, m.lon, m.zone)
	b.WriteString("DESIGN CONDITIONS,0\nTYPICAL/EXTREME PERIODS,0\nGROUND TEMPERATURES,0\nHOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0\nCOMMENTS 1,invented\nCOMMENTS 2,\nDATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31\n")
	for i := range m.g {
		month, day := date(i)
		fmt.Fprintf(&b, "%d,%d,%d,%d,60,flags,%v,5.0,70,101300,0,0,300,%v,%v,%v,0,0,0,0,180,2.0,5,5,20.0,77777,9,999999999,20,0.1,0,88,0.2,0.0,0.0\n",
			1990+month, month, day, i%24+1, m.t[i], m.g[i], m.b[i], m.d[i])
	}
	return b.String()
}

func (m made) tmy3() string {
	var b strings.Builder
	fmt.Fprintf(&b, "000001,\"MADE HARBOUR, OLD PIER\",NW,%v,%v,%v,12\n", m.zone, m.lat, m.lon)
	b.WriteString("Date (MM/DD/YYYY),Time (HH:MM),ETR (W/m^2),GHI (W/m^2),GHI source,DNI (W/m^2),DHI (W/m^2),Dry-bulb (C),Wspd (m/s)\n")
	for i := range m.g {
		month, day := date(i)
		fmt.Fprintf(&b, "%02d/%02d/%d,%02d:00,0,%v,1,%v,%v,%v,2.0\n", month, day, 1980+month, i%24+1, m.g[i], m.b[i], m.d[i], m.t[i])
	}
	return b.String()
}

// plain writes a table: head, then rows of stamp and values. step is in minutes; every row of an hour has its values.
func (m made) plain(head, delimiter string, step int, stamp func(minute int) string, comma bool) string {
	var b strings.Builder
	b.WriteString(head)
	for minute := 0; minute < yearMinutes; minute += step {
		i := minute / 60
		cells := []string{stamp(minute), fmt.Sprint(m.g[i]), fmt.Sprint(m.d[i]), fmt.Sprint(m.t[i])}
		row := strings.Join(cells, delimiter)
		if comma {
			row = strings.Join([]string{cells[0], cells[1], cells[2], strings.Replace(cells[3], ".", ",", 1)}, delimiter)
		}
		b.WriteString(row + "\n")
	}
	return b.String()
}

// iso is a stamp at a minute of the year 2021, shifted.
func iso(shift int) func(int) string {
	return func(minute int) string {
		minute = ((minute+shift)%yearMinutes + yearMinutes) % yearMinutes
		month, day := date(minute / 60)
		return fmt.Sprintf("2021-%02d-%02d %02d:%02d", month, day, minute/60%24, minute%60)
	}
}

var here = Mapping{Latitude: unit.Of(40 * unit.Degree), Longitude: unit.Of(12 * unit.Degree), UTCOffset: unit.Of(unit.Hour)}

const harbour = 40.0

func read(t testing.TB, text string, hint Mapping) (sun.Series, Report) {
	t.Helper()
	s, rep, err := Read(strings.NewReader(text), hint, nil)
	if err != nil {
		t.Fatalf("refused: %v", err)
	}
	return s, rep
}

// same compares a series with the year it was made from.
func (m made) same(t *testing.T, s sun.Series, tolerance float64) {
	t.Helper()
	for i := range m.g {
		if math.Abs(s.GHI[i]-m.g[i]) > tolerance || math.Abs(s.DHI[i]-m.d[i]) > tolerance || math.Abs(s.TAir[i]-m.t[i]) > tolerance {
			t.Fatalf("%s: %v, %v, %v; want %v, %v, %v", label(i*60), s.GHI[i], s.DHI[i], s.TAir[i], m.g[i], m.d[i], m.t[i])
		}
	}
}
