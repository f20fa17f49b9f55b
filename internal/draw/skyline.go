package draw

import (
	"fmt"
	"math"
	"strings"

	"duskweight/internal/model/unit"
)

// Skyline is the shading outline of a place with the way of the sun over it on some days.
type Skyline struct {
	Outline []SkyPoint // from −π to π; nothing where it is not known
	Points  []SkyPoint // as they were typed
	Days    []SkyDay
	North   bool // north stands in the middle: the place lies south of the equator
}

// SkyDay is the way of the sun on a day, by the name of its month.
type SkyDay struct {
	Name string
	Path []SkyPoint
}

// Draw draws the outline from one side of the sky to the other.
func (s Skyline) Draw() string {
	var w strings.Builder
	const wide, floor, high = 440.0, 150.0, 138.0
	c := skyPaper{wide, floor, high, wholeSky}
	p := open(&w, "skyline", wide, floor+20, "Shading outline", s.reading())
	for _, up := range []float64{20, 40, 60} {
		y := c.y(up * math.Pi / 180)
		p.line(26, y, wide, y, attrs{"class", "line-grid"})
	}
	for i, day := range s.Days {
		if i == 0 {
			p.sky(c, day.Path, s.Outline)
		} else { // the hill stands once
			p.sun(c, day.Path, s.Outline)
		}
		if top, ok := highest(day.Path); ok {
			p.text(c.x(top.East), c.y(top.Up)-4, day.Name, 11, "middle", 0)
		}
	}
	for _, up := range []float64{20, 40, 60} { // over the hill
		p.text(0, c.y(up*math.Pi/180)+4, unit.Whole(up)+"°", 11, "", 0, attrs{"class", "soft"})
	}
	p.line(0, floor, wide, floor, attrs{"class", "floor"})
	for _, at := range s.Points {
		p.circle(c.x(at.East), c.y(at.Up), 3.2, attrs{"class", "point"})
	}
	words := []string{"north", "east", "south", "west", "north"}
	if s.North { // seen to the north, east is at the right hand
		words = []string{"south", "west", "north", "east", "south"}
	}
	for i, word := range words {
		p.text(wide*float64(i)/4, floor+15, word, 11, []string{"", "middle", "middle", "middle", "end"}[i], 0, attrs{"class", "soft"})
	}
	_ = p.close() // a strings.Builder takes everything
	return w.String()
}

// highest is the highest point of a way.
func highest(path []SkyPoint) (top SkyPoint, ok bool) {
	for i, at := range path {
		if i == 0 || at.Up > top.Up {
			top, ok = at, true
		}
	}
	return top, ok
}

// reading is the text equivalent.
func (s Skyline) reading() string {
	top, ok := highest(s.Points)
	if !ok {
		return "No point of the shading outline is known."
	}
	return fmt.Sprintf("%d points, the highest of %s°.", len(s.Points), unit.Whole(top.Up*180/math.Pi))
}
