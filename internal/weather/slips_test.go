package weather

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// place3 is a place and its standard clock, degrees and hours.
type place3 struct{ lat, lon, zone float64 }

// light is the light of a made sky at a minute of the year on the place's clock: the height of the sun by the declination
// and the equation of time of Spencer (1971), which share nothing with the program, days of different clearness, and clouds
// that pass within the hour. Global and diffuse on the flat, direct facing the sun, W/m².
func (p place3) light(minute float64) (g, d, b float64) {
	day := math.Floor(minute / 1440)
	x := 2 * math.Pi * day / 365
	decl := 0.006918 - 0.399912*math.Cos(x) + 0.070257*math.Sin(x) - 0.006758*math.Cos(2*x) + 0.000907*math.Sin(2*x) - 0.002697*math.Cos(3*x) + 0.00148*math.Sin(3*x)
	eot := 0.000075 + 0.001868*math.Cos(x) - 0.032077*math.Sin(x) - 0.014615*math.Cos(2*x) - 0.040849*math.Sin(2*x) // rad
	solar := (minute-day*1440)/1440*2*math.Pi + (p.lon-15*p.zone)*math.Pi/180 + eot
	lat := p.lat * math.Pi / 180
	up := math.Sin(lat)*math.Sin(decl) - math.Cos(lat)*math.Cos(decl)*math.Cos(solar)
	if up <= 0 {
		return 0, 0, 0
	}
	clear := 0.75 - 0.6*math.Pow(math.Mod(day*0.6180339887, 1), 2) + 0.1*math.Sin(minute*0.037)*math.Sin(day*1.7)
	g = 1361 * up * clear
	d = g * min(1, 1.15-1.2*clear)
	return g, d, (g - d) / up
}

// rows are the means of intervals of so many minutes of a year, on a clock on which the light runs late.
func (p place3) rows(step int, late float64) made {
	m := made{lat: p.lat, lon: p.lon, zone: p.zone}
	for from := 0; from < yearMinutes; from += step {
		var g, d, b float64
		const parts = 12
		for k := range parts {
			at := math.Mod(float64(from)-late+(float64(k)+0.5)*float64(step)/parts+yearMinutes, yearMinutes)
			x, y, z := p.light(at)
			g, d, b = g+x/parts, d+y/parts, b+z/parts
		}
		m.g, m.d, m.b = append(m.g, math.Round(g)), append(m.d, math.Round(d)), append(m.b, math.Round(b))
		m.t = append(m.t, math.Round(10*(12-8*math.Cos(2*math.Pi*float64(from)/yearMinutes)-5*math.Cos(2*math.Pi*float64(from)/1440)))/10)
	}
	return m
}

// west is what a year brings on planes that face west, 30° from the flat and upright, kWh/m².
func west(s sun.Series) (sloped, upright float64) {
	g := sun.NewGeometry(s.Latitude, s.Longitude, s.UTCOffset)
	on := func(tilt unit.Angle) (sum float64) {
		for _, x := range sun.PlaneOf(g, sun.Place{}, sun.Face{Tilt: tilt * unit.Degree, Azimuth: 270 * unit.Degree}).Light(&sun.Sky{GHI: s.GHI, DHI: s.DHI}).Plane {
			sum += x / 1000
		}
		return sum
	}
	return on(30), on(90)
}

// table writes rows of a table with the stamps so many minutes past the beginning of their interval.
func (m made) table(head string, step, past int) string {
	var b strings.Builder
	b.WriteString(head)
	for i := range m.g {
		fmt.Fprintf(&b, "%s,%v,%v,%v\n", iso(past)(i*step), m.g[i], m.d[i], m.t[i])
	}
	return b.String()
}

// Eleven files with known slips in seven ways to write them: what is read without a question is within 1 % of the truth on
// planes to the west, and where a question is asked, the best fit beside it leads there.
func TestKnownSlips(t *testing.T) {
	north, south, tropic := place3{48.2, 16.4, 1}, place3{-33.9, 18.4, 2}, place3{7.2, 79.9, 5.5}
	const head = "time,GHI (W/m2),DHI (W/m2),temperature (°C)\n"
	where := func(p place3) string {
		return fmt.Sprintf("Latitude: %v\nLongitude: %v\nTime zone: %v\n", p.lat, p.lon, p.zone)
	}
	for _, c := range []struct {
		name string
		at   place3
		late float64
		asks bool
		text func(p place3, late float64) string
	}{
		{"stamps at the start", north, -60, true, func(p place3, late float64) string { return where(p) + p.rows(60, late).table(head, 60, 0) }},
		{"stamps at the start", south, -30, true, func(p place3, late float64) string { return where(p) + p.rows(60, late).table(head, 60, 0) }},
		{"stamps at the start", tropic, 10, true, func(p place3, late float64) string { return where(p) + p.rows(60, late).table(head, 60, 0) }},
		{"stamps in the middle", south, -10, true, func(p place3, late float64) string { return where(p) + p.rows(60, late).table(head, 60, 30) }},
		{"stamps at the end", north, 15, true, func(p place3, late float64) string { return where(p) + p.rows(60, late).table(head, 60, 60) }},
		{"stamps at the end", south, 0, false, func(p place3, late float64) string { return where(p) + p.rows(60, late).table(head, 60, 60) }},
		{"energyplus", north, -30, true, func(p place3, late float64) string { return p.rows(60, late).energyPlus() }},
		{"energyplus", south, -60, true, func(p place3, late float64) string { return p.rows(60, late).energyPlus() }},
		{"tmy3", north, 10, true, func(p place3, late float64) string { return p.rows(60, late).tmy3() }},
		{"half-hours in UTC", tropic, -10, true, func(p place3, late float64) string {
			return where(p) + "Time reference: Universal time\n" + p.rows(30, late-p.zone*60).table(head, 30, 0)
		}},
		{"half-hours", south, 15, false, func(p place3, late float64) string { return where(p) + p.rows(30, late).table(head, 30, 0) }},
		{"quarter-hours", north, -10, true, func(p place3, late float64) string { return where(p) + p.rows(15, late).table(head, 15, 0) }},
	} {
		t.Run(fmt.Sprintf("%s, %v minutes", c.name, c.late), func(t *testing.T) {
			right := c.at.rows(60, 0)
			sloped, upright := west(sun.Series{GHI: right.g, DHI: right.d, Latitude: unit.Angle(c.at.lat) * unit.Degree, Longitude: unit.Angle(c.at.lon) * unit.Degree, UTCOffset: unit.Duration(c.at.zone) * unit.Hour})
			near := func(how string, s sun.Series) {
				a, b := west(s)
				t.Logf("%s: %+.2f %% and %+.2f %%", how, 100*(a/sloped-1), 100*(b/upright-1))
				if math.Abs(a/sloped-1) > 0.01 || math.Abs(b/upright-1) > 0.01 {
					t.Errorf("%s: %+.2f %% sloped, %+.2f %% upright", how, 100*(a/sloped-1), 100*(b/upright-1))
				}
			}
			text := c.text(c.at, c.late)
			s, rep := read(t, text, Mapping{})
			if rep.Asks("slip") != c.asks || s.Slip.Is != c.asks {
				t.Errorf("asked %v, left open %v; slip %.1f minutes, %v", rep.Asks("slip"), s.Slip.Is, float64(rep.Slip.Val)/60, rep.Notes)
			}
			if !c.asks {
				near("as it is", s)
				return
			}
			if a, _ := west(s); math.Abs(c.late) >= 10 && math.Abs(a/sloped-1) < 0.005 {
				t.Errorf("%v minutes off and %+.2f %%: something was moved without a question", c.late, 100*(a/sloped-1))
			}
			hint := rep.Mapping
			hint.Move = unit.Of(-rep.Slip.Val)
			s, rep = read(t, text, hint)
			near("moved by minutes", s)
			if rep.Asks("slip") || s.Slip.Is {
				t.Errorf("asked again: %v", rep.Notes)
			}
			if best := rep.Fits[0]; math.Abs(float64(best.Late)) < late*60 { // another place of the stamps tells it all
				hint.Stamp, hint.StampZone, hint.Move = best.Stamp, best.Zone, unit.Known[unit.Duration]{}
				s, rep = read(t, text, hint)
				near("with "+best.Way(hint.StampZone, rep.Step), s)
				if rep.Asks("slip") {
					t.Errorf("asked again: %v", rep.Notes)
				}
			}
		})
	}
}
