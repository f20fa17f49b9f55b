package draw

import (
	"fmt"
	"math"
	"strings"

	"duskweight/internal/model/unit"
)

// YearNights are the years of some variants over one axis of full nights.
type YearNights struct {
	Low, High float64 // of the axis
	Each      []NightsOfYears
}

// NightsOfYears are the full nights of the years of one variant: a grey dot a made year, a dark stroke a weather file, one ring
// the own year of a typical file.
type NightsOfYears struct {
	Name, Say        string
	Drawn            bool // false: Say alone stands there
	Made             []float64
	Real             []float64
	RealNames        []string // of the strokes
	Ring             float64  // 0 for none
	Bad, Usual, Good float64
}

// mostDots is how many dots a variant has at most: with more years a dot stands for several.
const mostDots = 300

// YearsADot is how many made years a dot stands for.
func YearsADot(n int) int { return max(1, (n+mostDots-1)/mostDots) }

// nightsPaper is one of the two sizes in which the years are drawn.
type nightsPaper struct {
	class            string
	wide, inset      float64 // of the axis from both edges: room for the words of its first and last mark
	letters, figures float64 // sizes
	dot, most        float64 // from dot to dot, and how high a stack is at most
	ticks            int
	nameAbove        bool
}

var nightsPapers = map[bool]nightsPaper{
	false: {class: "years-wide", wide: 1000, inset: 84, letters: 12, figures: 14, dot: 5.6, most: 58, ticks: 8},
	true:  {class: "years-narrow", wide: 360, inset: 70, letters: 11, figures: 12, dot: 3.6, most: 46, ticks: 4, nameAbove: true},
}

// Draw draws the years for a wide or a narrow screen.
func (n YearNights) Draw(narrow bool) string {
	var w strings.Builder
	paper := nightsPapers[narrow]
	var drawn, said []NightsOfYears // those without a strip come last
	high, words := 0.0, 0.0
	for _, one := range n.Each {
		if one.Drawn {
			drawn = append(drawn, one)
			high += paper.rowHigh(one)
		} else {
			said = append(said, one)
			words += paper.rowHigh(one)
		}
	}
	foot := 0.0 // of the axis
	if len(drawn) > 0 {
		foot = paper.letters + 10
	}
	p := open(&w, paper.class, paper.wide, high+foot+words, "Full nights of each year", n.reading())
	x := axis{lo: n.Low, hi: n.High, a: paper.inset, b: paper.wide - paper.inset}
	if len(drawn) > 0 {
		for _, v := range x.ticks(paper.ticks) {
			p.line(x.at(v), paper.figures, x.at(v), high, attrs{"class", "line-grid"})
			p.text(x.at(v), high+paper.letters+2, tick(v), paper.letters, "middle", 0, attrs{"class", "soft"})
		}
	}
	top := 0.0
	for _, one := range drawn {
		paper.row(p, one, x, top)
		top += paper.rowHigh(one)
	}
	top += foot
	for _, one := range said {
		paper.row(p, one, x, top)
		top += paper.rowHigh(one)
	}
	_ = p.close() // a strings.Builder takes everything
	return w.String()
}

// head is the room over the dots: the line of the usual year, that of bad and good, and the name where it has its own line.
func (c nightsPaper) head() float64 {
	h := 2*c.figures + 10
	if c.nameAbove {
		h += c.figures + 6
	}
	return h
}

// rowHigh is the height of one variant.
func (c nightsPaper) rowHigh(one NightsOfYears) float64 {
	if !one.Drawn {
		return 2*c.figures + 12
	}
	h := c.head() + c.most + 6
	if len(one.Real) > 0 || one.Ring > 0 {
		h += 18
	}
	if len(one.Real) > 1 {
		h += c.letters
	}
	return h
}

// row draws one variant from top down.
func (c nightsPaper) row(p *pen, one NightsOfYears, x axis, top float64) {
	bold := attrs{"font-weight", "600"}
	name := shorten(one.Name, c.figures, c.wide-8)
	if !one.Drawn {
		p.text(4, top+c.figures+2, name, c.figures, "", 0, bold)
		p.text(4, top+2*c.figures+6, one.Say, c.letters, "", 0)
		return
	}
	ground := top + c.head() + c.most
	low, mid := ground-c.most-6, ground-c.most-10-c.figures // baselines of the figures
	p.tag("path", attrs{"d", c.dots(one.Made, x, ground-4), "class", "made", "stroke-width", num(c.dot - 0.6)})
	p.line(4, ground, c.wide-4, ground, attrs{"class", "line-ink"})
	for _, v := range []float64{one.Bad, one.Good} {
		p.line(x.at(v), ground, x.at(v), low-c.figures+3, attrs{"class", "level"})
	}
	p.line(x.at(one.Usual), ground, x.at(one.Usual), mid+3, attrs{"class", "level"})
	p.text(x.at(one.Bad)-4, low, "bad "+unit.Whole(one.Bad), c.figures, "end", 0, bold)
	p.text(x.at(one.Good)+4, low, unit.Whole(math.Floor(one.Good))+" good", c.figures, "", 0, bold)
	p.text(x.at(one.Usual), mid, unit.Whole(one.Usual)+" usual", c.figures, "middle", 0, bold)
	at, anchor, line := 4.0, "", mid
	switch room := TextWidth(name, c.figures) + 16; {
	case c.nameAbove:
		line = top + c.figures + 2
	case x.at(one.Bad)-TextWidth("bad 365", c.figures) > room:
	case c.wide-x.at(one.Good)-TextWidth("365 good", c.figures) > room:
		at, anchor = c.wide-4, "end"
	default: // as far as the usual year leaves room
		name = shorten(one.Name, c.figures, x.at(one.Usual)-TextWidth("365 usual", c.figures)/2-12)
	}
	p.text(at, line, name, c.figures, anchor, 0, bold)
	c.files(p, one, x, ground)
}

// files draws the weather files under the axis: a stroke each, the worst and the best with their names, and a ring for the own
// year of a typical one.
func (c nightsPaper) files(p *pen, one NightsOfYears, x axis, ground float64) {
	if one.Ring > 0 {
		p.circle(x.at(one.Ring), ground+9, 5, attrs{"class", "line-ink", "stroke-width", "2"})
	}
	var d strings.Builder
	worst, best := 0, 0
	for i, v := range one.Real {
		fmt.Fprintf(&d, "M%s %sv12", num(round1(x.at(v))), num(ground+4))
		if v < one.Real[worst] {
			worst = i
		}
		if v > one.Real[best] {
			best = i
		}
	}
	if len(one.Real) == 0 {
		return
	}
	p.tag("path", attrs{"d", d.String(), "class", "line-ink", "stroke-width", "2.6"})
	if len(one.Real) < 2 || len(one.RealNames) != len(one.Real) {
		return
	}
	y, room := ground+18+c.letters, x.at(one.Real[best])-x.at(one.Real[worst])
	p.text(x.at(one.Real[worst]), y, shorten(one.RealNames[worst], c.letters, c.wide/4), c.letters, "middle", 0)
	if room > TextWidth(one.RealNames[best], c.letters)+12 {
		p.text(x.at(one.Real[best]), y, shorten(one.RealNames[best], c.letters, c.wide/4), c.letters, "middle", 0)
	}
}

func round1(v float64) float64 { return math.Round(v*10) / 10 }

// dots stacks a dot a year over its nights from the ground up, in columns as wide as a dot; a stack that would be too high is
// drawn closer.
func (c nightsPaper) dots(nights []float64, x axis, ground float64) string {
	if len(nights) == 0 {
		return ""
	}
	wide := math.Ceil(c.dot / (x.at(x.lo+1) - x.at(x.lo))) // nights in a column
	stacks, most, last := map[int]int{}, 0, 0
	for _, n := range nights {
		k := int((n - x.lo) / wide)
		stacks[k]++
		most, last = max(most, stacks[k]), max(last, k)
	}
	per := YearsADot(len(nights))
	rise := math.Floor(100*math.Min(c.dot, (c.most-c.dot)/float64((most+per-1)/per))) / 100
	var path strings.Builder
	for k := range last + 1 {
		for i := range (stacks[k] + per - 1) / per {
			if i == 0 {
				fmt.Fprintf(&path, "M%s %sh0", num(round1(x.at(x.lo+(float64(k)+0.5)*wide-0.5))), num(ground))
				continue
			}
			fmt.Fprintf(&path, "m0-%sh0", num(rise))
		}
	}
	return path.String()
}

// reading is the text equivalent.
func (n YearNights) reading() string {
	var all []string
	for _, one := range n.Each {
		say := one.Name + ": " + one.Say
		if one.Drawn {
			say += fmt.Sprintf(" Bad %s, usual %s, good %s.", unit.Whole(one.Bad), unit.Whole(one.Usual), unit.Whole(math.Floor(one.Good)))
		}
		all = append(all, say)
	}
	return strings.Join(all, " ")
}
