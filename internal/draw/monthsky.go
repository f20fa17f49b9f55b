package draw

import (
	"math"
	"strings"
)

// SkyPoint is a direction in the sky as it is drawn: East is the angle from the middle of the picture, −π to π, rad, and Up the
// height over the flat.
type SkyPoint struct{ East, Up float64 }

// MonthSky is one month: the way of the sun over the shading outline, what a panel has a day, and how long the night is.
type MonthSky struct {
	Path    []SkyPoint // of its middle day; nothing where the sun stays down
	Outline []SkyPoint // from −π to π; nothing where it is not known
	Mean    float64    // of what the panel has on a day
	Low     float64    // eight of ten days lie from Low
	High    float64    // to High; 0 where the weather does not tell
	Top     float64    // of the scale, the same for all months
	Value   string     // the mean, ready to print
	Night   float64    // hours
	Sky     SkyScale
	Known   bool // false: frames alone, dashed
}

// SkyScale is how much of the sky a picture shows: to both sides of its middle, and up, rad.
type SkyScale struct{ Half, Up float64 }

// wholeSky is all of it.
var wholeSky = SkyScale{math.Pi, math.Pi / 2}

// The paper of a month.
const (
	monthWide                    = 100.0
	skyFloor, skyHigh            = 58.0, 50.0 // 90° stand skyHigh over the floor
	lightFloor, lightHigh        = 124.0, 54.0
	valueLine                    = 139.0
	nightTop, nightHigh, allHigh = 145.0, 9.0, 156.0
)

// skyPaper is a piece of paper that shows a piece of the sky.
type skyPaper struct {
	wide, floor, high float64
	sky               SkyScale
}

func (c skyPaper) x(east float64) float64 { return c.wide/2 + east/c.sky.Half*c.wide/2 }
func (c skyPaper) y(up float64) float64   { return c.floor - up/c.sky.Up*c.high }

// Draw draws the month, stretched to its place.
func (m MonthSky) Draw() string {
	var w strings.Builder
	p := openSmall(&w, "month-sky", "xMidYMid", monthWide, allHigh)
	if !m.Known {
		for _, box := range [][2]float64{{8, skyFloor - 8}, {lightFloor - lightHigh, lightHigh}, {nightTop, nightHigh}} {
			p.rect(2, box[0], monthWide-4, box[1], attrs{"class", "unknown"})
		}
		_ = p.close() // a strings.Builder takes everything
		return w.String()
	}
	if m.Sky.Half <= 0 || m.Sky.Up <= 0 {
		m.Sky = wholeSky
	}
	p.sky(skyPaper{monthWide, skyFloor, skyHigh, m.Sky}, m.Path, m.Outline)
	p.line(0, skyFloor, monthWide, skyFloor, attrs{"class", "floor"})
	y := func(v float64) float64 { return lightFloor - lightHigh*math.Min(math.Max(v/m.Top, 0), 1) }
	if m.Top > 0 && m.Mean > 0 {
		p.rect(30, y(m.Mean), 40, lightFloor-y(m.Mean), attrs{"class", "sun"})
	}
	if m.Top > 0 && m.High > 0 {
		low, high := num(y(m.Low)), num(y(m.High))
		p.tag("path", attrs{"d", "M50 " + low + "V" + high + "M44 " + low + "h12M44 " + high + "h12", "class", "spread"})
	}
	p.line(0, lightFloor, monthWide, lightFloor, attrs{"class", "floor"})
	p.text(50, valueLine, m.Value, 13, "middle", 0, attrs{"font-weight", "600"})
	p.rect(2, nightTop, monthWide-4, nightHigh, attrs{"class", "whole-day"})
	night := (monthWide - 4) * math.Min(math.Max(m.Night/24, 0), 1)
	p.rect(50-night/2, nightTop, night, nightHigh, attrs{"class", "night"})
	_ = p.close() // a strings.Builder takes everything
	return w.String()
}

// sky draws a way of the sun, dashed as a whole and strong where it stands over the outline, and the outline before it.
func (p *pen) sky(c skyPaper, path, outline []SkyPoint) {
	if len(outline) > 0 {
		hill := []float64{c.x(-math.Pi), c.floor}
		for _, o := range outline {
			hill = append(hill, c.x(o.East), c.y(o.Up))
		}
		p.path(append(hill, c.x(math.Pi), c.floor), true, attrs{"class", "hill"})
	}
	p.sun(c, path, outline)
}

// sun draws a way of the sun alone.
func (p *pen) sun(c skyPaper, path, outline []SkyPoint) {
	if len(outline) > 0 {
		p.way(c, runs(path, nil), "behind")
	}
	p.way(c, runs(path, outline), "seen")
}

// way draws parts of a way as one path.
func (p *pen) way(c skyPaper, parts [][]SkyPoint, class string) {
	var d strings.Builder
	for _, part := range parts {
		for i, at := range part {
			d.WriteString(map[bool]string{true: "M", false: "L"}[i == 0] + num(round1(c.x(at.East))) + " " + num(round1(c.y(at.Up))))
		}
	}
	if d.Len() > 0 {
		p.tag("path", attrs{"d", d.String(), "class", class})
	}
}

// runs are the parts of a way over the outline, cut where it leaves the picture at one side and comes again at the other.
func runs(path, outline []SkyPoint) (out [][]SkyPoint) {
	var run []SkyPoint
	end := func() {
		if len(run) > 1 {
			out = append(out, run)
		}
		run = nil
	}
	for _, at := range path {
		if at.Up < upAt(outline, at.East) {
			end()
			continue
		}
		if n := len(run); n > 0 && math.Abs(run[n-1].East-at.East) > math.Pi {
			end()
		}
		run = append(run, at)
	}
	end()
	return out
}

// upAt is the height of an outline in a direction, in a straight line between its points.
func upAt(outline []SkyPoint, east float64) float64 {
	for i := 1; i < len(outline); i++ {
		a, b := outline[i-1], outline[i]
		if east >= a.East && east <= b.East && b.East > a.East {
			return a.Up + (east-a.East)/(b.East-a.East)*(b.Up-a.Up)
		}
	}
	return 0
}
