package draw

import (
	"io"
	"math"
	"strings"

	"duskweight/internal/model/unit"
)

// Bar is one energy on a scale that several bars share.
type Bar struct {
	Title string
	Is    unit.Energy
	Top   unit.Energy // the end of the scale
	Piece unit.Energy // the bar is cut into pieces of this size; 0: it is whole
	Look  string      // "night", "sun", or the look of a kind
}

// The paper of a bar.
const (
	barW = 400.0
	barH = 26.0
)

// leastBar is how wide a bar is drawn that is there but too short to see.
const leastBar = 1.2

// mostCuts is how many cuts a bar has at the most: with more they would run together.
const mostCuts = 140

// Draw draws the bar. One that is longer than the scale goes to its end and has a break mark there.
func (b Bar) Draw(w io.Writer) error {
	p := open(w, "bar", barW, barH, b.Title, "")
	x := axis{lo: 0, hi: math.Max(float64(b.Top), 1), a: 0, b: barW}
	for i := range 5 {
		at := barW * float64(i) / 4
		p.line(at, 0, at, barH, stroke(ink, 0.6, ""), attrs{"stroke-opacity", ".25"})
	}
	is := finite(float64(b.Is))
	if is <= 0 {
		return p.close()
	}
	long := math.Max(leastBar, x.at(math.Min(is, float64(b.Top))))
	p.rect(0, 2, long, barH-4, attrs{"fill", b.colour()})
	if cuts := b.cuts(x, long); cuts != "" {
		p.tag("path", attrs{"class", "cut", "d", cuts, "stroke-width", num(math.Min(0.8, 0.3*(x.at(float64(b.Piece))-x.a)))})
	}
	if is > float64(b.Top)*(1+1e-9) {
		p.breakMark(barW - 34)
	}
	return p.close()
}

// cuts are the lines between the pieces.
func (b Bar) cuts(x axis, long float64) string {
	n := float64(b.Is) / float64(b.Piece)
	if b.Piece <= 0 || n > mostCuts*float64(b.Is)/math.Min(float64(b.Is), float64(b.Top)) {
		return ""
	}
	var d strings.Builder
	for at := float64(b.Piece); x.at(at) < long-0.3; at += float64(b.Piece) {
		d.WriteString("M" + num(x.at(at)) + " 2V" + num(barH-2))
	}
	return d.String()
}

func (b Bar) colour() string {
	switch b.Look {
	case "night":
		return loadColour
	case "sun":
		return sunColour
	}
	return lookOf(b.Look).colour
}

// breakMark cuts a bar that goes on past the paper.
func (p *pen) breakMark(x float64) {
	for _, dx := range []float64{0, 8} {
		p.path([]float64{x + dx, barH, x + dx + 8, 0}, false, stroke(ink, 1.2, ""))
	}
	p.path([]float64{x + 1, barH, x + 9, 0, x + 15, 0, x + 7, barH}, true, attrs{"class", "mark"})
}

// PiecesOf is how many lifts one piece of a bar of so many stands for, so that the cuts stay apart: 1, 10, 100 …
func PiecesOf(lifts float64) float64 {
	each := 1.0
	for lifts/each > mostCuts {
		each *= 10
	}
	return each
}
