package weather

import (
	"math"
	"testing"

	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// movedSky is a sky of k times the light outside the air, of which each hour gives a share of its light to the hour after
// it, or for a sun that is early to the one before: its middle moves by that share of an hour.
func movedSky(g *sun.Geometry, k, minutes float64) []float64 {
	whole := math.Floor(minutes / 60)
	f := minutes/60 - whole
	out := make([]float64, sun.YearHours)
	for i := range out {
		out[i] = k * ((1-f)*g.Extra[around(i-int(whole))] + f*g.Extra[around(i-int(whole)-1)])
	}
	return out
}

// The light of every day moved by 4.5 and by 5.5 minutes, early and late: the slip is that, told in seconds, and from five
// minutes on it is asked about, naming the side that is judged too well.
func TestSlipAtItsBorder(t *testing.T) {
	for _, minutes := range []float64{4.5, 5.5, -4.5, -5.5} {
		h, g := skyOf(0.5, 10)
		h[ghi] = movedSky(g, 0.5, minutes)
		var rep Report
		new(sheet).slip(&h, g, &rep)
		if got := float64(rep.Slip.Val) / 60; math.Abs(got-minutes) > 0.2 {
			t.Errorf("moved by %v minutes: %v", minutes, got)
		}
		side := map[bool]string{true: "minutes later than", false: "minutes earlier than"}[minutes > 0]
		if told, _ := warns(&rep, side); rep.Asks("slip") != (math.Abs(minutes) > 5) || told != rep.Asks("slip") {
			t.Errorf("moved by %v minutes: asked %v, %s %v", minutes, rep.Asks("slip"), side, told)
		}
		h[ghi] = movedSky(g, 0.5, minutes)
		rep = Report{}
		(&sheet{move: unit.Of(unit.Duration(0))}).slip(&h, g, &rep)
		if rep.Asks("slip") || !rep.Slip.Is {
			t.Errorf("moved by %v minutes and left so by the reader: asked %v", minutes, rep.Asks("slip"))
		}
	}
}

// A light that is hours off is found too, as where the rows are in UTC: the whole hours are looked for first.
func TestLateByHours(t *testing.T) {
	for _, lat := range []float64{-34, 5, 52} {
		g := sun.NewGeometry(unit.Angle(lat)*unit.Degree, -120*unit.Degree, -8*unit.Hour)
		for _, minutes := range []float64{0, 60, -60, 90, 480, -470, 660} {
			l, ok := lateOf(movedSky(g, 0.6, minutes), g)
			if !ok || math.Abs(l.year-minutes) > 0.5 {
				t.Errorf("%v°, late by %v minutes: %.1f, %v", lat, minutes, l.year, ok)
			}
			for m, x := range l.months {
				if math.Abs(x-minutes) > 5 { // noon wanders by so much within a month
					t.Errorf("%v°, month %d, late by %v minutes: %.1f", lat, m+1, minutes, x)
				}
			}
		}
	}
}

// Clouds that come every afternoon darken its light, and are not taken for a slip: of each hour the brightest of the month
// count. By hand: a sky that is clear till noon and half as bright after it has its middle more than half an hour too early.
func TestAfternoonClouds(t *testing.T) {
	g := sun.NewGeometry(40*unit.Degree, 0, 0)
	light := make([]float64, sun.YearHours)
	for i := range light {
		light[i] = 0.7 * g.Extra[i]
		if i%24 >= 12 && i/24%7 > 1 { // five days of seven
			light[i] /= 2
		}
	}
	if l, ok := lateOf(light, g); !ok || math.Abs(l.year) > 1 {
		t.Errorf("five cloudy afternoons a week: %.1f minutes", l.year)
	}
}

// Without sun there is nothing to tell; in the polar night the other months tell it.
func TestLateWithoutSun(t *testing.T) {
	g := sun.NewGeometry(70*unit.Degree, 0, 0)
	l, ok := lateOf(movedSky(g, 0.5, 20), g)
	if !ok || math.Abs(l.year-20) > 1 || !math.IsNaN(l.months[11]) {
		t.Errorf("polar night: %.1f, %v, December %v", l.year, ok, l.months[11])
	}
	if _, ok := lateOf(make([]float64, sun.YearHours), g); ok {
		t.Error("no light at all has a slip")
	}
}

// The measured years beside the repository run within five minutes of the sun, so that none is asked about; those whose
// values belong to a quarter past the hour, as their head says, are late by 15.
func TestMeasuredYears(t *testing.T) {
	n := 0
	for name, want := range map[string]float64{"DeBilt_NL.hourly": 0, "Eelde_NL.hourly": 0, "Vlissingen_NL.hourly": 0, "Clearlake_CA.1998-2009.hourly": 15} {
		for year, m := range measured(t, name) {
			l, ok := lateOf(m.g, sun.NewGeometry(unit.Angle(m.lat)*unit.Degree, unit.Angle(m.lon)*unit.Degree, unit.Duration(m.zone)*unit.Hour))
			if !ok || math.Abs(l.year-want) >= late {
				t.Errorf("%s %d: %.1f minutes, want %v", name, year, l.year, want)
			}
			n++
		}
	}
	t.Logf("%d years", n)
}
