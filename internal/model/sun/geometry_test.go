package sun

import (
	"fmt"
	"math"
	"testing"

	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
)

// cooper is the declination that the books' examples use: source.DuffieBeckman.At("eq. 1.6.1a").
func cooper(n int) unit.Angle {
	return deg(23.45 * math.Sin(2*math.Pi*float64(284+n)/365))
}

// source.FAO56.At("ex. 8, p. 80"): 20° south, 3 September: Ra 32.2 MJ/m², sunset hour angle 1.527; ex. 9: 11.7 h of day.
func Example_outsideTheAtmosphere() {
	declination := unit.Angle(0.409 * math.Sin(2*math.Pi/365*246-1.39)) // source.FAO56.At("eq. 24")
	ws := SunsetHourAngle(-20*unit.Degree, declination)
	ra := extraterrestrial(-20*unit.Degree, declination, 0.0820e6/60, eccentricity(246))
	fmt.Printf("dr %.3f δ %.3f ωs %.3f Ra %.1f N %.1f\n", eccentricity(246), declination, ws, ra/1e6, 24/math.Pi*ws)
	// Output: dr 0.985 δ 0.120 ωs 1.527 Ra 32.2 N 11.7
}

// Examples of Duffie & Beckman with the book's own declination.
func TestExtraterrestrialOfDuffieBeckman(t *testing.T) {
	h0 := func(lat float64, n int) float64 {
		return float64(extraterrestrial(deg(lat), cooper(n), SolarConstant, eccentricity(n))) / 1e6
	}
	book(t, "sun outside the air, 43° north, 15 April, MJ/m²", h0(43, 105), 33.8, 0.06, source.DuffieBeckman.At("ex. 1.10.1"))
	book(t, "sun outside the air, 38.6° north, 3 September, MJ/m²", h0(38.6, 246), 33.25, 0.02, source.DuffieBeckman.At("ex. 2.11.1"))
	book(t, "sun outside the air, 43° north, 11 June, MJ/m²", h0(43, 162), 41.78, 0.02, source.DuffieBeckman.At("ex. 2.12.1"))
	book(t, "sun outside the air, 43° north, January, MJ/m²", h0(43, 17), 13.36, 0.02, source.DuffieBeckman.At("table of H0"))
	near(t, "table of H0: 70° N, December", h0(70, 344), 0, 0)
	hour := extraterrestrialBetween(deg(43), cooper(105), SolarConstant, eccentricity(105), deg(-30), deg(-15))
	book(t, "sun outside the air, 10 to 11 o’clock, MJ/m²", float64(hour)/1e6, 3.79, 0.01, source.DuffieBeckman.At("ex. 1.10.2"))
	hour = extraterrestrialBetween(deg(40), cooper(51), SolarConstant, eccentricity(51), deg(-45), deg(-30))
	book(t, "sun outside the air, 9 to 10 o’clock, MJ/m²", float64(hour)/1e6, 2.335, 0.005, source.DuffieBeckman.At("ex. 2.15.1"))
}

// The year's geometry is Position at the middle of each hour: what it takes in straight lines within a day stays within
// 0.005° of it (0.002° of this is the parallax that the geometry leaves out).
func TestGeometryFollowsPosition(t *testing.T) {
	for _, place := range []struct {
		lat, lon float64
		offset   unit.Duration
	}{{62.4, 25.67, 2 * unit.Hour}, {-33.9, 18.4, 2 * unit.Hour}, {0, -78.5, -5 * unit.Hour}, {28.6, 77.2, 5.5 * unit.Hour}, {-17.8, 179.9, 12 * unit.Hour}, {78.2, 15.6, 1 * unit.Hour}} {
		g := NewGeometry(deg(place.lat), deg(place.lon), place.offset)
		worst := 0.0
		for h := range Hours {
			at := position(Julian(TypicalYear, 1, 1, float64(h)+0.5-float64(place.offset)/3600), deg(place.lat), deg(place.lon))
			if g.Lit[h] < 1 {
				if g.Lit[h] == 0 && at.Zenith.Degrees() < 89.99 && at.Zenith.Degrees() > 0 {
					t.Errorf("%v hour %d: dark with the sun at %.2f°", place, h, at.Zenith.Degrees())
				}
				continue
			}
			sinZ, cosZ := math.Sincos(float64(at.Zenith))
			sinA, cosA := math.Sincos(float64(at.Azimuth))
			de, dn, du := g.East[h]-sinZ*sinA, g.North[h]-sinZ*cosA, g.Up[h]-cosZ
			worst = max(worst, math.Sqrt(de*de+dn*dn+du*du)*180/math.Pi)
			if down := at.Zenith.Degrees() > 90+50.0/60; down != g.Down[h] {
				t.Errorf("%v hour %d: down %v at zenith %.3f", place, h, g.Down[h], at.Zenith.Degrees())
			}
		}
		near(t, fmt.Sprint(place, " off by"), worst, 0, 0.005)
	}
}

// Sums of the hours against the formula of the whole day, with the declination of the day's noon: it moves by up to
// 0.2° between noon and either end, first order even, so that the sums differ by little.
func TestHoursAddUpToTheDay(t *testing.T) {
	for _, lat := range []float64{-66, -34, 0, 20, 45, 62} {
		g := NewGeometry(deg(lat), 0, 0)
		for _, d := range []int{0, 45, 79, 120, 171, 230, 265, 300, 354} {
			e := ephemerisAt(Julian(TypicalYear, 1, d+1, 12))
			want := float64(extraterrestrial(deg(lat), unit.Angle(e.declination), SolarConstant, e.nearness))
			near(t, fmt.Sprint("latitude ", lat, " day ", d), g.Day[d]/1e6, want/1e6, 0.02)
			sun := 0.0
			for h := d * 24; h < d*24+24; h++ {
				sun += g.Lit[h]
			}
			near(t, fmt.Sprint("latitude ", lat, " day ", d, " hours of sun"), sun, g.Sunset[d]*24/math.Pi, 0.06)
		}
	}
}

// At any latitude and clock the geometry is finite, lit hours have the sun above, and half of the year is light:
// the sun's centre is above the horizon 4380 h a year at the equator, a little more in the north, whose summer is longer.
func TestGeometryAnywhere(t *testing.T) {
	for lat := -90.0; lat <= 90; lat += 7.5 {
		for _, offset := range []unit.Duration{-14 * unit.Hour, 0, 5.75 * unit.Hour, 14 * unit.Hour} {
			g := NewGeometry(deg(lat), deg(lat*2), offset)
			lit := 0.0
			for d, noon := range g.Noon {
				// the sun is higher round noon than nine hours later (at the poles it only rises and sinks with the season)
				if !(noon >= 0 && noon < 24) || math.Abs(lat) < 80 && g.Up[d*24+int(noon)] < g.Up[d*24+(int(noon)+9)%24]-1e-9 {
					t.Fatalf("latitude %v, clock %v, day %d: noon at %v", lat, offset, d, noon)
				}
			}
			for h := range Hours {
				sum := g.East[h]*g.East[h] + g.North[h]*g.North[h] + g.Up[h]*g.Up[h]
				if g.Lit[h] > 0 && (math.Abs(sum-1) > 1e-9 || g.Up[h] <= 0 || g.Extra[h] <= 0 || g.Lit[h] > 1) {
					t.Fatalf("latitude %v hour %d: %v %v %v lit %v", lat, h, g.East[h], g.North[h], g.Up[h], g.Lit[h])
				}
				lit += g.Lit[h]
			}
			near(t, fmt.Sprint("latitude ", lat, " hours of sun a year"), lit, 4380+92*math.Sin(lat*math.Pi/180), 60)
		}
	}
}

func BenchmarkGeometryAndPlane(b *testing.B) {
	place := Place{}
	for b.Loop() {
		g := NewGeometry(deg(48), deg(8), unit.Hour)
		PlaneOf(g, place, Face{Tilt: deg(35), Azimuth: deg(180)})
	}
}
