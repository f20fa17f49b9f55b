package draw

import (
	"math"
	"strings"
)

// Sum is the power of all lamps and devices in each clock hour of a day, W, from 8 to 8 like the strips over it: what is always on
// at the bottom, the rest above it. Dark tells the hours without sun.
type Sum struct {
	Always, Rest [24]float64
	Dark         [24]bool
}

// sumStart is the clock hour at which the picture begins.
const sumStart = 8

// standsOut is how many times the next largest hour the largest may be; a larger one is drawn past the scale, with a break mark.
// Our own judgement: at three times, the others still fill a third of the picture.
const standsOut = 3

// Scale is the power at the upper end of the picture, W, and the clock hour that is past it; -1 for none.
func (s Sum) Scale() (top float64, past int) {
	most, next := 0.0, 0.0
	past = -1
	for h := range 24 {
		switch w := s.at(h); {
		case w > most:
			most, next, past = w, most, h
		case w > next:
			next = w
		}
	}
	if next > 0 && most > standsOut*next {
		return 1.25 * next, past
	}
	return most, -1
}

// at is the whole power in a clock hour, W.
func (s Sum) at(h int) float64 { return finite(s.Always[h]) + finite(s.Rest[h]) }

// Draw writes the picture; it has no words of its own.
func (s Sum) Draw() string {
	var out strings.Builder
	const wide, high, step = 240.0, 60.0, 10.0
	p := openSmall(&out, "sum", "none", wide, high)
	top, past := s.Scale()
	for k := range 24 {
		h := (sumStart + k) % 24
		x := step * float64(k)
		if s.Dark[h] {
			p.rect(x, 0, step, high, attrs{"class", "dark"})
		}
		if top <= 0 {
			continue
		}
		all, always := high*math.Min(1, s.at(h)/top), high*math.Min(1, finite(s.Always[h])/top)
		if all > always {
			p.rect(x, high-all, step, all-always, attrs{"fill", loadColour, "shape-rendering", "crispEdges"})
		}
		if always > 0 {
			p.rect(x, high-always, step, always, attrs{"class", "always", "shape-rendering", "crispEdges"})
		}
		if h == past {
			p.path([]float64{x, 12, x + step, 8, x + step, 12, x, 16}, true, attrs{"class", "gap"})
		}
	}
	p.close()
	return out.String()
}
