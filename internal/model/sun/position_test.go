package sun

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/witness"
)

// utc reads "2003-10-17 19:30:30".
func utc(t *testing.T, s string) JulianDay {
	t.Helper()
	var y, mo, d, h, mi, sec int
	if _, err := fmt.Sscanf(strings.Replace(s, "T", " ", 1), "%d-%d-%d %d:%d:%d", &y, &mo, &d, &h, &mi, &sec); err != nil {
		t.Fatal(err)
	}
	return Julian(y, mo, d, float64(h)+float64(mi)/60+float64(sec)/3600)
}

// direction is where the centre of the sun stands, without refraction, for an observer on the ground.
type direction struct {
	Zenith         unit.Angle    // from straight up
	Azimuth        unit.Angle    // clockwise from north, 0 … 2π
	Declination    unit.Angle    // geocentric
	EquationOfTime unit.Duration // solar time less mean solar time
}

// position returns where the sun stands, by the low-precision method of source.Meeus.At("ch. 25"), with the parallax of
// an observer on the ground, from the ephemeris and the turn that the geometry of the year uses. It agrees with source.RedaAndreas to 0.005°
// in the check table; 0.02° is owed for 1980–2060 at every latitude.
func position(jd JulianDay, latitude, longitude unit.Angle) direction {
	e := ephemerisAt(jd)
	// hour angle from the mean sun's: universal time, longitude, equation of time
	ut := (float64(jd) - 0.5 - math.Floor(float64(jd)-0.5)) * 2 * math.Pi
	w := ut - math.Pi + float64(longitude) + e.eot
	p := pole{}
	p.sinL, p.cosL = math.Sincos(float64(latitude))
	sinD, cosD := math.Sincos(e.declination)
	sinW, cosW := math.Sincos(w)
	east, north, up := p.toSun(sinD, cosD, sinW, cosW)
	zenith := math.Atan2(math.Hypot(east, north), up)
	zenith += parallax * math.Sin(zenith)
	azimuth := math.Atan2(east, north)
	if azimuth < 0 {
		azimuth += 2 * math.Pi
	}
	return direction{
		Zenith:         unit.Angle(zenith),
		Azimuth:        unit.Angle(azimuth),
		Declination:    unit.Angle(e.declination),
		EquationOfTime: unit.Duration(e.eot * 43200 / math.Pi),
	}
}

// parallax of the sun, 8.794″ (source.Meeus.At("ch. 40")): from the ground it stands lower by this times sin(zenith).
const parallax = 8.794 / 3600 * math.Pi / 180

// A whole table of places, both hemispheres, polar day and night: within 0.005°, a quarter of what is owed.
func TestPositionAgainstTable(t *testing.T) {
	worst := 0.0
	all := witness.Table(t, "sun", "place of the sun", "°", source.RedaAndreas.Whole().String())
	for _, row := range published(t, "sun_position.csv") {
		at := position(utc(t, row["utc"]), deg(number(t, row["lat"])), deg(number(t, row["lon"])))
		zenith := number(t, row["zenith"])
		near(t, row["place"]+" zenith", at.Zenith.Degrees(), zenith, 0.005)
		// azimuth counts as it moves the sun in the sky: times sin of the zenith angle
		off := math.Remainder(at.Azimuth.Degrees()-number(t, row["azimuth"]), 360) * math.Sin(zenith*math.Pi/180)
		near(t, row["place"]+" azimuth", off, 0, 0.005)
		near(t, row["place"]+" equation of time", float64(at.EquationOfTime)/60, number(t, row["eot_min"]), 0.02) // 0.005° of turning
		worst = max(worst, math.Abs(off), math.Abs(at.Zenith.Degrees()-zenith))
		all.See(0, off)
		all.See(zenith, at.Zenith.Degrees())
	}
	t.Logf("worst %.4f°", worst)
}

// Two random places and times of every year 1980–2060, both hemispheres, polar night and day: 0.01°, half of what is owed.
func TestPositionAgainstYears(t *testing.T) {
	worst := 0.0
	all := witness.Table(t, "sun", "place of the sun, 1980 to 2060", "°", "P. Bretagnon and G. Francou, Astronomy and Astrophysics 202, 1988 (VSOP87)")
	for _, row := range published(t, "sun_position_years.csv") {
		at := position(utc(t, row["utc"]), deg(number(t, row["lat"])), deg(number(t, row["lon"])))
		zenith := number(t, row["zenith"])
		off := math.Remainder(at.Azimuth.Degrees()-number(t, row["azimuth"]), 360) * math.Sin(zenith*math.Pi/180)
		near(t, row["utc"]+" zenith", at.Zenith.Degrees(), zenith, 0.01)
		near(t, row["utc"]+" azimuth", off, 0, 0.01)
		worst = max(worst, math.Hypot(off, at.Zenith.Degrees()-zenith))
		all.See(0, math.Hypot(off, at.Zenith.Degrees()-zenith))
	}
	t.Logf("worst %.4f°", worst)
}

// Equinoxes and solstices of 2024–2027, UTC: an independent ephemeris; one minute is 0.0007° of the sun's way.
func TestEquinoxesAndSolstices(t *testing.T) {
	for _, row := range []struct {
		when string
		rate bool // solstice: declination turns, else it crosses 0
	}{
		{"2024-03-20 03:06:00", false}, {"2025-03-20 09:01:00", false}, {"2026-03-20 14:46:00", false}, {"2027-03-20 20:25:00", false},
		{"2024-09-22 12:44:00", false}, {"2025-09-22 18:19:00", false}, {"2026-09-23 00:05:00", false}, {"2027-09-23 06:02:00", false},
	} {
		at := position(utc(t, row.when), 0, 0)
		// 0.0165° an hour: 0.01° of longitude is 0.004° of declination
		near(t, row.when+" declination", at.Declination.Degrees(), 0, 0.004)
	}
	for when, want := range map[string]float64{
		"2025-03-20 12:00:00": 0.0488, "2025-06-21 12:00:00": 23.4378, "2025-09-22 12:00:00": 0.1025,
		"2025-12-21 12:00:00": -23.4382, "2025-02-11 12:00:00": -13.8464, "2025-11-03 12:00:00": -15.227,
	} {
		near(t, when, position(utc(t, when), 0, 0).Declination.Degrees(), want, 0.004)
	}
}

// The whole reach 1980–2060: the laws that a wrong term would break, where no table row stands.
func TestPositionOverTheYears(t *testing.T) {
	for year := 1980; year <= 2060; year += 8 {
		most, least := -90.0, 90.0
		for day := range 366 {
			d := position(Julian(year, 1, 1+day, 12), 0, 0).Declination.Degrees()
			most, least = max(most, d), min(least, d)
		}
		// obliquity of the ecliptic: 23.4392911° less 0.0130042° a century (source.Meeus.At("eq. 22.2")), nutation 9″
		want := 23.4392911 - 0.0130042*float64(year-2000)/100
		near(t, fmt.Sprint(year, " highest declination"), most, want, 0.004)
		near(t, fmt.Sprint(year, " lowest declination"), -least, want, 0.004)
	}
}

// Rise and set of the sun's upper edge, UTC, from an independent full ephemeris: centre at −50′. Half a minute: the sun
// moves 0.1° in it.
func TestSunrise(t *testing.T) {
	for _, row := range []struct {
		place    string
		lat, lon float64
		when     string
	}{
		{"Greenwich June rise", 51.4779, 0, "2025-06-21 03:42:47"}, {"Greenwich June set", 51.4779, 0, "2025-06-21 20:20:55"},
		{"Greenwich December rise", 51.4779, 0, "2025-12-21 08:03:13"}, {"Greenwich December set", 51.4779, 0, "2025-12-21 15:53:09"},
		{"Cape Town June rise", -33.92, 18.42, "2025-06-21 05:51:22"}, {"Cape Town June set", -33.92, 18.42, "2025-06-20 15:44:45"},
		{"Cape Town December rise", -33.92, 18.42, "2025-12-21 03:31:57"}, {"Cape Town December set", -33.92, 18.42, "2025-12-20 17:56:30"},
		{"equator June rise", 0, -78.5, "2025-06-21 11:12:14"}, {"equator June set", 0, -78.5, "2025-06-21 23:19:35"},
	} {
		jd := utc(t, row.when)
		before := position(jd-0.5/1440, deg(row.lat), deg(row.lon)).Zenith.Degrees()
		after := position(jd+0.5/1440, deg(row.lat), deg(row.lon)).Zenith.Degrees()
		const edge = 90 + 50.0/60
		if (before-edge)*(after-edge) >= 0 {
			t.Errorf("%s: zenith %.3f to %.3f does not cross %.3f", row.place, before, after, edge)
		}
	}
}

// source.RedaAndreas.At("table A5.1"): incidence on a slope of 30° turned 10° to the east. Its zenith is refracted by
// 0.016°, ours is not.
func Example_position() {
	jd := Julian(2003, 10, 17, 19+30.0/60+30.0/3600)
	at := position(jd, 39.742476*unit.Degree, -105.1786*unit.Degree)
	slope, facing := (30 * unit.Degree), (170 * unit.Degree)
	sinZ, cosZ := math.Sincos(float64(at.Zenith))
	sinS, cosS := math.Sincos(float64(slope))
	cos := cosZ*cosS + sinZ*sinS*math.Cos(float64(at.Azimuth-facing))
	fmt.Printf("zenith %.1f azimuth %.1f incidence %.1f equation of time %.1f min\n",
		at.Zenith.Degrees(), at.Azimuth.Degrees(), math.Acos(cos)*180/math.Pi, float64(at.EquationOfTime)/60)
	// Output: zenith 50.1 azimuth 194.3 incidence 25.2 equation of time 14.6 min
}

// source.DuffieBeckman.At("ex. 1.5.1"): 3 February, 89.4° west, clock of the meridian 90° west, 10:30: equation of time
// −13.49 min, solar time 10:18:55. The book's formula for it is off by up to 0.88 min against an ephemeris.
func TestSolarTimeOfDuffieBeckman(t *testing.T) {
	at := position(Julian(TypicalYear, 2, 3, 16.5), deg(40), deg(-89.4))
	near(t, "equation of time, min", float64(at.EquationOfTime)/60, -13.49, 0.88)
	// the geometry takes the same sun: solar noon on the clock is 12:00 less 2.4 min, less the equation of time
	g := NewGeometry(deg(40), deg(-89.4), -6*unit.Hour)
	near(t, "solar noon, h", g.Noon[33], 12-2.4/60-float64(at.EquationOfTime)/3600, 0.003)
}

func FuzzPosition(f *testing.F) {
	f.Add(2451545.0, 0.5, 0.1)
	f.Fuzz(func(t *testing.T, jd, lat, lon float64) {
		if !(math.Abs(jd) < 1e7 && math.Abs(lat) <= math.Pi/2 && math.Abs(lon) <= math.Pi) {
			t.Skip()
		}
		at := position(JulianDay(jd), unit.Angle(lat), unit.Angle(lon))
		for _, v := range []float64{float64(at.Zenith), float64(at.Azimuth), float64(at.Declination), float64(at.EquationOfTime)} {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Fatalf("%v", at)
			}
		}
	})
}
