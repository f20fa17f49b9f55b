package sun

import (
	"math"

	"duskweight/internal/model/unit"
)

// Face is one plane of panels and how the light on it is computed.
type Face struct {
	Tilt    unit.Angle      // from the flat
	ByMonth *[12]unit.Angle // tilts of the months, for panels that are tilted anew; nil is Tilt all year
	Azimuth unit.Angle      // direction it faces, clockwise from north
	Shade   *[12]float64    // share of the light that trees and houses take, by month; nil is none
	Snow    *Snow           // that falls on it; nil is none

	Isotropic bool // an evenly bright sky instead of Hay–Davies, which is brighter round the sun
	Bare      bool // no loss in the glass: Cells is the same as Plane
}

// Light is what falls on a plane, mean of each hour, W/m².
type Light struct {
	Plane []float64 // on the glass, after horizon and shade
	Cells []float64 // of that, what gets through the glass: less at flat angles

	Snow *[12]float64 // share of their power that snow on them takes, by month; nil is none
}

// Plane is the geometry of one face under one way of the sun: an hour of weather then costs a few multiplications.
type Plane struct {
	geometry *Geometry
	// by lit hour, so that the dark half of the year costs nothing
	hours []int32
	rows  []ray

	diffuse   [12]diffuse // by month, with its tilt
	isotropic bool
	light     [12]float64 // share that shade leaves, by month
	months    [13]int     // first lit row of each month, and the end
	snow      *Snow
	tilts     [12]float64 // by month
}

// diffuse is what a plane of one tilt gets of an even sky and of the light from the ground, W/m² for each W/m².
type diffuse struct {
	skyView, ground         float64
	skyThrough, groundGlass float64 // the same, behind the glass
}

// diffuseOn is the diffuse light on a plane with this normal.
func diffuseOn(f Face, albedo float64, s skyline, tilt, nEast, nNorth, nUp float64) diffuse {
	d := diffuse{skyView: (1+nUp)/2 - s.hides(nEast, nNorth, nUp), ground: albedo * (1 - nUp) / 2} // source.DuffieBeckman.At("eq. 2.15.1")
	d.skyThrough, d.groundGlass = d.skyView, d.ground
	if !f.Bare {
		d.skyThrough *= throughFromSky(tilt)
		d.groundGlass *= throughFromGround(tilt)
	}
	return d
}

// tilt is that of a month, 0 for January.
func (f Face) tilt(month int) unit.Angle {
	if f.ByMonth != nil {
		return f.ByMonth[month]
	}
	return f.Tilt
}

// ray is what an hour's sun needs: its limits, the beam on the plane over the beam on the flat, and that behind the glass.
type ray struct {
	most, perExtra float64 // most that can come from the sun's direction, W/m² on the flat; 1/outside
	beam, glass    float64
}

// PlaneOf prepares a face at a place. The place gives the ground's albedo and the horizon. The horizon takes the beam and
// the bright ring round the sun while the sun stands behind it, and its part of the even sky.
func PlaneOf(g *Geometry, place Place, f Face) *Plane {
	sinA, cosA := math.Sincos(float64(f.Azimuth))
	skyline := newSkyline(place.Horizon)
	albedo := float64(place.Albedo.Or(typicalAlbedo))
	p := &Plane{geometry: g, isotropic: f.Isotropic, snow: f.Snow}
	lit := Hours/2 + 300 // polar places have the most, with the short hours of dusk
	p.hours, p.rows = make([]int32, 0, lit), make([]ray, 0, lit)
	air := clearSkies * thinAir(place.Elevation.Or(0))
	hour := 0
	var nEast, nNorth, nUp float64
	for m, days := range monthLength {
		p.tilts[m] = float64(f.tilt(m))
		if m > 0 && p.tilts[m] == p.tilts[m-1] {
			p.diffuse[m] = p.diffuse[m-1]
		} else {
			sinT, cosT := math.Sincos(p.tilts[m])
			nEast, nNorth, nUp = sinT*sinA, sinT*cosA, cosT
			p.diffuse[m] = diffuseOn(f, albedo, skyline, p.tilts[m], nEast, nNorth, nUp)
		}
		p.light[m] = 1
		if f.Shade != nil {
			p.light[m] = 1 - min(max(f.Shade[m], 0), 1)
		}
		p.months[m] = len(p.hours)
		for range days * 24 {
			if g.Extra[hour] > 0 {
				r := ray{most: air * float64(ClearSky(g.Up[hour])) * g.Lit[hour], perExtra: 1 / g.Extra[hour]}
				cos := nEast*g.East[hour] + nNorth*g.North[hour] + nUp*g.Up[hour]
				if cos > 0 && !skyline.behind(g.East[hour], g.North[hour], g.Up[hour]) {
					r.beam = cos / g.Up[hour] // R_b, source.DuffieBeckman.At("eq. 1.8.1")
					r.glass = r.beam
					if !f.Bare {
						r.glass *= throughGlass(cos)
					}
				}
				p.hours = append(p.hours, int32(hour))
				p.rows = append(p.rows, r)
			}
			hour++
		}
	}
	p.months[12] = len(p.hours)
	return p
}

// typicalAlbedo is grass and bare ground: source.DuffieBeckman.At("section 2.19"), common practice.
const typicalAlbedo = 0.2

// Light returns what falls on the plane under a sky over the same geometry.
func (p *Plane) Light(s *Sky) Light {
	l := Light{Plane: make([]float64, Hours), Cells: make([]float64, Hours), Snow: p.SnowRoom()}
	p.Fill(s, l)
	return l
}

// SnowRoom is room for what snow takes in each month; nil where none falls on the plane.
func (p *Plane) SnowRoom() *[12]float64 {
	if p.snow == nil {
		return nil
	}
	return new([12]float64)
}

// Fill writes what falls on the plane into l, whose slices hold 8760 values and are 0 in dark hours, and whose Snow is that of
// SnowRoom; it allocates nothing. Sky: source.HayDavies, as in source.DuffieBeckman.At("eq. 2.16.3" without the horizon's part). What comes from
// the sun's direction is never more than 1.1 times the clear sky; what is above that comes from everywhere. Without this
// the last minutes of sun in an hour would be blown up on a steep plane (source.DuffieBeckman.At("section 2.14")).
func (p *Plane) Fill(s *Sky, l Light) {
	ghi, dhi := s.GHI[:Hours], s.DHI[:Hours]
	plane, cells := l.Plane[:Hours], l.Cells[:Hours]
	ring := 1.0
	if p.isotropic {
		ring = 0
	}
	for m := range 12 {
		share, d := p.light[m], p.diffuse[m]
		from, to := p.months[m], p.months[m+1]
		rows := p.rows[from:to]
		for i, h := range p.hours[from:to] {
			r := &rows[i]
			g := ghi[h]
			beam := g - dhi[h]
			diffuse := dhi[h]
			if beam < 0 {
				beam = 0
			}
			if beam > r.most {
				diffuse += beam - r.most
				beam = r.most
			}
			a := beam * r.perExtra * ring // anisotropy index A_i, source.DuffieBeckman.At("eq. 2.16.2")
			direct := beam + diffuse*a
			if direct > r.most {
				direct = r.most
			}
			even := beam + diffuse - direct
			plane[h] = share * (direct*r.beam + even*d.skyView + g*d.ground)
			cells[h] = share * (direct*r.glass + even*d.skyThrough + g*d.groundGlass)
		}
	}
	if p.snow != nil {
		p.snow.fill(p.tilts, plane, s.TAir, l.Snow)
	}
}

// FacingEquator returns the tilt and direction that a maker without a reason for another would choose: to the equator,
// tilted by the latitude, but from 10° (rain washes it) to 60°. Common practice.
func FacingEquator(latitude unit.Angle) (tilt, azimuth unit.Angle) {
	tilt = min(max(unit.Angle(math.Abs(float64(latitude))), 10*unit.Degree), 60*unit.Degree)
	if latitude < 0 {
		return tilt, 0
	}
	return tilt, math.Pi
}
