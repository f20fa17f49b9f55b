package draw

import (
	"html"
	"io"
	"math"

	"duskweight/internal/model/lift/path"
)

// CircuitSketch is the motor between day and night: one switch, its middle off.
type CircuitSketch struct {
	Foot  string // a line under it: "Up 24 V 2.2 A, 2.9 min. Down 11.7 V 0.71 A, 5.2 min."
	Spots []Spot
}

// Draw draws what feeds the motor by day, what it feeds by night, and what stays on it, with the parts as links.
func (s CircuitSketch) Draw(w io.Writer) error {
	const h = 226.0
	p := openTouch(w, driveW, h, "By day and by night: one switch, centre off. Every part is a link that opens its card.")
	p.raw(`<text class="s" x="8" y="18">By day and by night: one switch, centre off</text>`)
	line := stroke(ink, 1.2, "")
	p.path([]float64{86, 64, 150, 64, 187, 64}, false, line)
	p.path([]float64{225, 64, 318, 64}, false, line)
	p.line(206, 84, 206, 138, line)
	p.circle(206, 64, 21, attrs{"class", "paperf"})
	p.line(206, 80, 206, 52, stroke(ink, 2, ""))
	for _, x := range []float64{190, 222} {
		p.circle(x, 64, 3, attrs{"fill", ink})
	}
	p.raw(`<text class="s" x="206" y="36" text-anchor="middle">off</text>`)
	p.circle(206, 158, 20, attrs{"class", "steel"})
	p.raw(`<text class="nm" x="206" y="163" text-anchor="middle">M</text>`)
	p.path([]float64{18, 88, 34, 44, 88, 44, 72, 88}, true, attrs{"class", "sunf"})
	for _, x := range []float64{330, 352, 374} {
		p.circle(x, 64, 9, attrs{"class", "nightl"})
	}
	p.path([]float64{226, 158, 248, 158, 248, 186, 206, 186, 206, 178}, false, line)
	p.rect(236, 164, 24, 11, attrs{"class", "paperf"})
	if s.Foot != "" {
		p.raw(`<text class="s" x="8" y="%s">%s</text>`, num(h-12), html.EscapeString(s.Foot))
	}
	boxes := map[string]struct {
		b    box
		x, y float64
	}{
		"feed": {box{5, 102, 160, 102 + spotHigh}, 60, 88}, "lamps": {box{266, 102, 400, 102 + spotHigh}, 340, 74}, "clamp": {box{266, 162, 400, 162 + spotHigh}, 260, 172},
	}
	for _, one := range s.Spots {
		if at, ok := boxes[one.ID]; ok {
			p.spot(placed{Spot: one, box: at.b, x: at.x, y: at.y, own: true})
		}
	}
	return p.close()
}

// Progress draws a square a part, the settled ones first. say is the sentence that it shows.
func Progress(settled, tight, bad, all int, say string, w io.Writer) error {
	n := float64(max(all, 1))
	p := newPen(w)
	p.raw(`<svg class="squares" viewBox="0 0 %s 16" role="img" aria-label="%s" preserveAspectRatio="xMinYMid meet">`, num(17*n), html.EscapeString(say))
	for i := range all {
		class := "q0"
		switch {
		case i < settled:
			class = "q1"
		case i >= all-bad:
			class = "q2"
		}
		p.rect(17*float64(i)+0.5, 0.5, 15, 15, attrs{"class", class})
		if i >= settled-tight && i < settled || i >= all-bad {
			x := 17*float64(i) + 8
			d := wordSigns[path.Tight].d
			if i >= all-bad {
				d = wordSigns[path.GivesWay].d
			}
			p.raw(`<path class="qs" transform="translate(%s 8) scale(.8)" d="%s"/>`, num(math.Round(x)), d)
		}
	}
	return p.close()
}
