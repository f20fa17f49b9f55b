package draw

import (
	"fmt"
	"io"
	"math"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// perMM is how many units of the viewBox are a millimetre of paper on the plan sheet.
const perMM = 3.2

// Measures of the plan's drawing, in units of the viewBox.
const (
	noteSize  = 9.3 // letters of 2.9 mm: no letter on the sheet is under 8 pt, 2.82 mm
	noteLine  = 10.6
	noteWide  = 108.0 // the column of names left of the view
	rightWide = 82.0  // and right of it
	boxWide   = 168.0 // the boxes of drive and switch
	edge      = 6.0
	dimRoom   = 24.0 // for an upright dimension
	underView = 24.0 // under the ground
)

// Paper is the drawing of the plan sheet: the side view to a round scale with every part named, the drive larger, the switch.
// It is made for paper of Wide × High mm, at that size exactly.
type Paper struct {
	Scene      Scene
	Wide, High float64 // mm
	Notes      []Note
	Drive      DriveBox
	Switch     SwitchBox
	Foot       []Line   // at the lower right, such as the keep-out
	Numbers    []string // of the marks: the numbers of their reasons in the list of the sheet
}

// Line is a line of text.
type Line struct {
	Text string
	Bold bool
}

// scales are the round scales, in the order of the size of the drawing: ISO 5455's 1, 2, 5 and what lies between them.
var scales = []float64{1, 1.5, 2, 2.5, 3, 4, 5, 6, 7.5, 8}

// leastPaperMass is the least side of the mass, in units, before the travel is cut on a sheet.
const leastPaperMass = 12.0

// view is the place of the side view on the paper, dimensions included.
func (p Paper) view() box {
	top := edge + 2
	if p.spanOver() {
		top += dimRoom
	}
	return box{edge + noteWide + 4, top, p.Wide*perMM - edge - boxWide - rightWide - 10, p.High*perMM - underView}
}

// spanOver reports whether the span is measured over the beam: where two posts stand it is measured between them.
func (p Paper) spanOver() bool { return len(p.Scene.Posts) != 2 }

// frame fits the side view into its place at the largest round scale.
func (p Paper) frame() (frame, float64) {
	b, v := p.Scene.bounds(), p.view()
	s := p.Scene
	bw, bh := math.Max(b.X1-b.X0, 1), math.Max(b.Y1-b.Y0, 1)
	w, h := v.x1-v.x0-dimRoom, v.y1-v.y0
	n := roundScale(math.Max(bw/w, bh/h) * perMM)
	if !s.travelInside(perMM / n) { // one more dimension stands beside it
		w -= dimRoom
		n = roundScale(math.Max(bw/w, bh/h) * perMM)
	}
	f := frame{scale: perMM / n}
	small := math.Max(1, math.Min(s.Mass.X1-s.Mass.X0, s.Mass.Y1-s.Mass.Y0))
	lo, hi := math.Max(s.Mass.Y1-s.Travel+0.6*small, s.baseTop()), s.Mass.Y0-0.6*small
	if f.scale*small < leastPaperMass && hi > lo {
		const gap = 14
		for m := roundScale(math.Max(bw/w, small/leastPaperMass) * perMM); m < n; m = roundScale(m * 1.01) {
			if need := bh - (h-gap)*m/perMM; need > 0 && need <= hi-lo {
				mid := (lo + hi) / 2
				f, n = frame{scale: perMM / m, cutFrom: mid - need/2, cutTo: mid + need/2, cutPaper: gap}, m
				break
			}
		}
	}
	f.x0 = v.x0 + (w-bw*f.scale)/2 - b.X0*f.scale
	f.y0 = v.y1 + b.Y0*f.scale
	return f, n
}

// travelInside reports whether the travel is measured between the mass and the next post at that scale, units a mm.
func (s Scene) travelInside(scale float64) bool {
	for _, r := range s.Posts {
		if r.X0 > s.Mass.X1 && (r.X0-s.Mass.X1)*scale < dimRoom+5 {
			return false
		}
	}
	return len(s.Posts) > 0
}

// roundScale is the first round n that is at least n.
func roundScale(n float64) float64 {
	ten := math.Pow(10, math.Floor(math.Log10(math.Max(n, 1))))
	for _, s := range scales {
		if s*ten >= n-1e-9*n {
			return s * ten
		}
	}
	return 10 * ten
}

// Draw draws it.
func (p Paper) Draw(out io.Writer) error {
	w, h := p.Wide*perMM, p.High*perMM
	f, n := p.frame()
	c := &sheet{pen: open(out, "plan", w, h, p.Scene.Title, p.Scene.Desc), w: w, s: p.Scene, f: f}
	c.rect(0.5, 0.5, w-1, h-1, stroke(ink, 0.8, ""))
	v := p.view()
	c.ground(v.x0-8, v.x1+6, f.y(0))
	c.markLine(v.x0-8, f.y(0), v.x1, f.y(0))
	c.scenery()
	c.paperDims(p)
	c.where()
	left, right, keyed := p.lay(f)
	c.notes(left, right, keyed)
	c.keepMarks()
	c.stops()
	c.failMarks()
	c.marksPart(func(i int) string { return at(p.Numbers, i) })
	y := p.Drive.draw(c.pen, w-edge-boxWide, edge, p.most())
	y = p.Switch.draw(c.pen, w-edge-boxWide, y+edge)
	for _, line := range fold(p.Foot, boxWide) {
		y += noteLine
		c.written(w-edge-boxWide, y+4, line, "start")
	}
	c.scaleBar(v.x1+8, h-edge-1, n, f)
	return c.close()
}

// most is how many lines the box of the drive has room for.
func (p Paper) most() int {
	left := p.High*perMM - 3*edge - driveLines - p.Switch.high() - noteLine*float64(len(fold(p.Foot, boxWide))) - 6
	return max(0, int(left/noteLine))
}

// at is the i-th of a list, "" behind its end.
func at(list []string, i int) string {
	if i < len(list) {
		return list[i]
	}
	return ""
}

// scaleWords is the room beside the bar for its length in words.
const scaleWords = 34

// scaleBar says the scale and draws a bar of a round length, by which a print of another size is told.
func (c *sheet) scaleBar(x, y, n float64, f frame) {
	long, text := 1.0, ""
	steps := []float64{0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100}
	foot := 1000.0
	if c.s.units == unit.Imperial {
		steps, foot = []float64{0.25, 0.5, 1, 2, 3, 5, 10, 25, 50, 100, 300}, 304.8
	}
	for _, s := range steps {
		if s*foot*f.scale <= rightWide-16-scaleWords {
			long = s
		}
	}
	if text = say.Length(unit.Length(long * foot / 1000)).In(c.s.units); foot != 1000 {
		text = unit.Tape(unit.Length(long*foot/1000), unit.TapeSixteenth, unit.Nearest)
	}
	if f.cutTo > f.cutFrom {
		c.written(x, y-2*noteLine-7, Line{"height is cut", false}, "start")
	}
	wide := long * foot * f.scale
	c.written(x, y-noteLine-6, Line{fmt.Sprintf("scale 1 : %s", unit.Rounded(n, 3)), true}, "start")
	c.line(x, y-3, x+wide, y-3, attrs{"class", "scale-bar"}, stroke(ink, 2, ""))
	for _, e := range []float64{x, x + wide} {
		c.line(e, y-7, e, y+1, stroke(ink, 1, ""))
	}
	c.written(x+wide+4, y, Line{text, false}, "start")
}

// written writes a line of a note.
func (p *pen) written(x, y float64, l Line, anchor string) {
	weight := ""
	if l.Bold {
		weight = "600"
	}
	p.text(x, y, l.Text, noteSize, anchor, 0, attrs{"font-weight", weight})
}

// boldWider is how much wider bold letters are.
const boldWider = 1.1

// fold breaks lines into lines of a width.
func fold(lines []Line, width float64) (out []Line) {
	for _, l := range lines {
		room := width
		if l.Bold {
			room /= boldWider
		}
		for _, part := range wrap([]string{l.Text}, noteSize, room) {
			out = append(out, Line{shorten(part, noteSize, room), l.Bold})
		}
	}
	return out
}
