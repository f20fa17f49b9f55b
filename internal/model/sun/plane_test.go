package sun

import (
	"fmt"
	"math"
	"testing"

	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/witness"
)

// oneHour is a geometry whose hour 0 has the sun at a zenith angle and an azimuth and all others are dark.
func oneHour(zenith, azimuth, outside float64) *Geometry {
	g := &Geometry{East: make([]float64, Hours), North: make([]float64, Hours), Up: make([]float64, Hours), Extra: make([]float64, Hours), Lit: make([]float64, Hours)}
	g.Lit[0] = 1
	sinZ, cosZ := math.Sincos(zenith * math.Pi / 180)
	sinA, cosA := math.Sincos(azimuth * math.Pi / 180)
	g.East[0], g.North[0], g.Up[0] = sinZ*sinA, sinZ*cosA, cosZ
	g.Extra[0] = outside * cosZ
	return g
}

func hourOf(global, diffuse float64) *Sky {
	s := &Sky{GHI: make([]float64, Hours), DHI: make([]float64, Hours)}
	s.GHI[0], s.DHI[0] = global, diffuse
	return s
}

// Twenty hours of all kinds, sun behind the plane and at the horizon included. The table's beam and global are rounded,
// so that global − diffuse misses the beam by up to 0.05 W/m²; here the beam is the table's.
func TestPlaneAgainstTable(t *testing.T) {
	onto := witness.Table(t, "sun", "light on a tilted panel, even sky", " W/m²", source.LiuJordan.Whole().String())
	bright := witness.Table(t, "sun", "light on a tilted panel, brighter round the sun", " W/m²", source.HayDavies.Whole().String())
	clear := witness.Table(t, "sun", "light of a clear sky", " W/m²", source.Haurwitz.Whole().String())
	for _, row := range published(t, "sun_irradiance.csv") {
		v := func(name string) float64 { return number(t, row[name]) }
		g := oneHour(v("zenith"), v("sun_az"), v("dni_extra_1367"))
		place := Place{Albedo: unit.Of(unit.Ratio(v("albedo")))}
		s := hourOf(v("dni")*g.Up[0]+v("dhi"), v("dhi"))
		face := Face{Tilt: deg(v("tilt")), Azimuth: deg(v("surf_az")), Isotropic: true, Bare: true}
		name := "row " + row["id"]
		near(t, name+" isotropic", PlaneOf(g, place, face).Light(s).Plane[0], v("poa_iso"), 0.06)
		onto.See(v("poa_iso"), PlaneOf(g, place, face).Light(s).Plane[0])
		face.Isotropic = false
		near(t, name+" Hay–Davies", PlaneOf(g, place, face).Light(s).Plane[0], v("poa_haydavies"), 0.06)
		bright.See(v("poa_haydavies"), PlaneOf(g, place, face).Light(s).Plane[0])
		near(t, name+" clear sky", float64(ClearSky(g.Up[0])), v("haurwitz_ghi"), 0.01)
		clear.See(v("haurwitz_ghi"), float64(ClearSky(g.Up[0])))
		near(t, name+" glass", throughGlass(math.Cos(v("aoi")*math.Pi/180)), v("iam_physical_n1526"), 2e-5)
		if k := v("kt"); v("zenith") < 87 {
			near(t, name+" Erbs", DiffuseOfHour(k), v("erbs_df"), 2e-5)
		}
	}
}

// Duffie & Beckman with the book's declination: ex. 2.15.1 (isotropic, 1.171 MJ) and 2.16.1 (the Hay–Davies part,
// 1.251 MJ): 40° N, 20 February, 9 to 10 o'clock, global 1.04 MJ of which 0.796 diffuse, albedo 0.6, tilt 60° south.
func TestPlaneOfDuffieBeckman(t *testing.T) {
	lat, d, w := deg(40), cooper(51), deg(-37.5)
	sinL, cosL := math.Sincos(float64(lat))
	sinD, cosD := math.Sincos(float64(d))
	sinW, cosW := math.Sincos(float64(w))
	up := sinL*sinD + cosL*cosD*cosW
	g := oneHour(0, 0, 0)
	g.East[0], g.North[0], g.Up[0] = -cosD*sinW, cosL*sinD-sinL*cosD*cosW, up
	g.Extra[0] = 2.335e6 / 3600
	place := Place{Albedo: unit.Of(unit.Ratio(0.6))}
	s := hourOf(1.04e6/3600, 0.796e6/3600)
	face := Face{Tilt: deg(60), Azimuth: deg(180), Isotropic: true, Bare: true}
	p := PlaneOf(g, place, face)
	near(t, "R_b", p.rows[0].beam, 1.713, 0.002)
	book(t, "light on a panel of 60°, 9 to 10 o’clock, MJ/m²", p.Light(s).Plane[0]*3600/1e6, 1.171, 0.002, source.DuffieBeckman.At("ex. 2.15.1"))
	face.Isotropic = false
	near(t, "Hay–Davies", PlaneOf(g, place, face).Light(s).Plane[0]*3600/1e6, 1.251, 0.003)
}

// Exact limits: a flat plane sees what falls on the flat; shade and horizon take what they say; the glass takes some,
// and nothing makes light.
func TestPlaneLimits(t *testing.T) {
	g := NewGeometry(deg(-30), deg(30), 2*unit.Hour)
	c, ps := NewClimate(g, describe(g, skies["mixed"], 0), 0)
	if ps != nil {
		t.Fatal(ps)
	}
	s := c.Sky(3)
	flat := PlaneOf(g, Place{}, Face{Bare: true}).Light(s)
	for h := range Hours {
		near(t, fmt.Sprint("flat, hour ", h), flat.Plane[h], s.GHI[h], 1e-9*(1+s.GHI[h]))
	}
	face := Face{Tilt: deg(30), Azimuth: 0}
	open := PlaneOf(g, Place{}, face).Light(s)
	half := new([12]float64)
	for m := range half {
		half[m] = 0.25
	}
	face.Shade = half
	shaded := PlaneOf(g, Place{}, face).Light(s)
	walls := Place{Horizon: []Horizon{{Azimuth: 0, Altitude: deg(20)}}}
	face.Shade = nil
	walled := PlaneOf(g, walls, face).Light(s)
	for h := range Hours {
		near(t, fmt.Sprint("shaded, hour ", h), shaded.Plane[h], 0.75*open.Plane[h], 1e-9)
		if open.Cells[h] > open.Plane[h]+1e-9 || open.Cells[h] < 0 {
			t.Fatalf("hour %d: %v through the glass of %v", h, open.Cells[h], open.Plane[h])
		}
		if walled.Plane[h] > open.Plane[h]+1e-9 {
			t.Fatalf("hour %d: a horizon of 20° adds light", h)
		}
	}
	// A horizon of altitude a all round hides sin²a of an even sky from a flat plane.
	ring := newSkyline(walls.Horizon)
	near(t, "hidden sky", ring.hides(0, 0, 1), math.Pow(math.Sin(20*math.Pi/180), 2), 2e-4)
	// and all of the half sky that an upright plane sees when it reaches up to the zenith
	all := newSkyline([]Horizon{{0, math.Pi / 2}})
	near(t, "all hidden", all.hides(0, 1, 0), 0.5, 2e-3)
}

// Between two directions in a straight line, round through north.
func TestSkylineAltitude(t *testing.T) {
	s := newSkyline([]Horizon{{deg(270), deg(10)}, {deg(90), deg(30)}})
	for az, want := range map[float64]float64{90: 30, 180: 20, 270: 10, 0: 20, 315: 15, 45: 25} {
		near(t, fmt.Sprint("direction ", az), s.altitude(az*math.Pi/180)*180/math.Pi, want, 1e-9)
	}
}

func TestFacingEquator(t *testing.T) {
	for lat, want := range map[float64][2]float64{50: {50, 180}, -34: {34, 0}, 3: {10, 180}, 70: {60, 180}} {
		tilt, azimuth := FacingEquator(deg(lat))
		near(t, "tilt", tilt.Degrees(), want[0], 1e-9)
		near(t, "azimuth", azimuth.Degrees(), want[1], 1e-9)
	}
}

func BenchmarkPlaneFill(b *testing.B) {
	g := NewGeometry(deg(48), deg(8), unit.Hour)
	c, _ := NewClimate(g, describe(g, skies["mixed"], 0), 0)
	s := c.Sky(1)
	p := PlaneOf(g, Place{}, Face{Tilt: deg(35), Azimuth: deg(180)})
	l := p.Light(s)
	for b.Loop() {
		p.Fill(s, l)
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/Hours, "ns/hour")
}

func BenchmarkClimateFill(b *testing.B) {
	g := NewGeometry(deg(48), deg(8), unit.Hour)
	c, _ := NewClimate(g, describe(g, skies["mixed"], 0), 0)
	s := c.Sky(1)
	seed := uint64(0)
	for b.Loop() {
		seed++
		c.Fill(s, seed, 0)
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/Hours, "ns/hour")
}
