package draw

import (
	"math"
	"strings"
)

// A Span is a number on an axis from nothing to Top: solid to Low, pale on to High, a line at Usual. All three may be the same.
// At Limit stands a dashed line; 0 for none.
type Span struct {
	Low, Usual, High, Top, Limit float64
	Bad                          bool // past what may be
	Known                        bool
}

// Draw writes the bar. What is not known is a dashed line, never a short bar; what ends past the axis has a break at its end.
func (s Span) Draw() string {
	var w strings.Builder
	const wideAt, high, mid = 200.0, 22.0, 11.0
	p := openSmall(&w, "span", "none", wideAt, high)
	hair := attrs{"class", "hair"}
	for i := range 5 {
		x := math.Min(0.5+wideAt*float64(i)/4, wideAt-0.5)
		p.line(x, 0, x, high, hair)
	}
	if !s.Known || s.Top <= 0 {
		p.line(0, mid, wideAt, mid, stroke(ink, 1.4, "5 4"))
		p.close()
		return w.String()
	}
	at := func(v float64) float64 { return wideAt * math.Min(math.Max(v/s.Top, 0), 1) }
	colour := loadColour
	if s.Bad {
		colour = failColour
	}
	if s.High > s.Low {
		p.rect(at(s.Low), 3, at(s.High)-at(s.Low), high-6, attrs{"fill", colour, "fill-opacity", "0.45"})
	}
	p.rect(0, 3, at(s.Low), high-6, attrs{"fill", colour})
	if s.High > s.Low {
		p.line(at(s.Usual), 0, at(s.Usual), high, stroke(ink, 2.4, ""))
	}
	if s.High > s.Top {
		p.path([]float64{wideAt - 10, high, wideAt - 6, 0, wideAt - 3, 0, wideAt - 7, high}, true, attrs{"class", "gap"})
	}
	if s.Limit > 0 {
		p.line(at(s.Limit), 0, at(s.Limit), high, stroke(ink, 1.6, "4 3"))
	}
	p.close()
	return w.String()
}
