package draw

import (
	"fmt"
	"math"
	"strings"
)

// Front is what plans cost against their full nights.
type Front struct {
	Plans  []FrontPlan // from the cheapest on
	Today  FrontPlan   // the design as it is
	Needed int         // full nights that are aimed at
	Nights int         // that count
	Unit   string      // of the costs
	Say    string      // what the picture tells, in a sentence
}

// FrontPlan is one plan: its nights, and its cost with a low and a high end.
type FrontPlan struct {
	Name            string
	Nights          float64
	Low, Cost, High float64
	Best            bool
}

// frontPaper is one of the two sizes in which the plans are drawn.
type frontPaper struct {
	class                            string
	wide, high, left, right, letters float64
	ticks                            int
	names                            bool // the cheapest plan has its name too
}

var frontPapers = map[bool]frontPaper{
	false: {class: "front-wide", wide: 880, high: 380, left: 64, right: 24, letters: 12, ticks: 8, names: true},
	true:  {class: "front-narrow", wide: 280, high: 230, left: 47, right: 10, letters: 12, ticks: 4},
}

// Draw draws the plans for a wide or a narrow screen: cost upwards, full nights across.
func (f Front) Draw(narrow bool) string {
	c := frontPapers[narrow]
	var w strings.Builder
	p := open(&w, c.class, c.wide, c.high, "Cost against full nights", f.Say)
	x, y := f.axes(c)
	for _, v := range y.ticks(4) {
		p.line(c.left, y.at(v), c.wide-c.right, y.at(v), attrs{"class", "line-grid"})
		p.text(c.left-6, y.at(v)+4, tick(v), c.letters, "end", 0, attrs{"class", "soft"})
	}
	for _, v := range x.ticks(c.ticks) {
		p.text(x.at(v), c.high-6, tick(v), c.letters, "middle", 0, attrs{"class", "soft"})
	}
	p.line(c.left, y.a, c.wide-c.right, y.a, attrs{"class", "line-ink"})
	if at := x.at(float64(f.Needed)); at <= c.wide-c.right+1 {
		p.line(at, y.a, at, c.letters+2, attrs{"class", "goal"})
		p.text(at-5, c.letters+2, fmt.Sprintf("%d nights", f.Needed), c.letters, "end", 0, attrs{"class", "soft"})
	}
	var stair []float64
	for _, one := range f.Plans {
		stair = append(stair, x.at(one.Nights), y.at(one.Cost))
	}
	p.path(stair, false, attrs{"class", "line-grid"})
	for _, one := range f.Plans {
		p.plan(one, x, y)
	}
	f.today(p, x, y, c)
	f.names(p, x, y, c)
	_ = p.close() // a strings.Builder takes everything
	return w.String()
}

// axes hold every plan and its bar. Costs begin at nothing.
func (f Front) axes(c frontPaper) (x, y axis) {
	low, high, dear := f.Today.Nights, f.Today.Nights, f.Today.High
	for _, one := range f.Plans {
		low, high, dear = min(low, one.Nights), max(high, one.Nights), max(dear, one.High)
	}
	low, high = math.Floor(low/10)*10, max(math.Ceil(high), float64(f.Needed))
	if high-low < 20 {
		low = max(0, high-20)
	}
	return axis{lo: low, hi: max(high, low+1), a: c.left + 10, b: c.wide - c.right - 6},
		axis{lo: 0, hi: max(dear, 1), a: c.high - c.letters - 12, b: c.letters + 10}
}

// plan draws a plan and its bar.
func (p *pen) plan(one FrontPlan, x, y axis) {
	at, bar, r := x.at(one.Nights), "line-soft", 4.5
	if one.Best {
		bar, r = "line-ink", 8
	}
	p.line(at, y.at(one.Low), at, y.at(one.High), attrs{"class", bar})
	for _, end := range []float64{one.Low, one.High} {
		p.line(at-5, y.at(end), at+5, y.at(end), attrs{"class", bar})
	}
	p.circle(at, y.at(one.Cost), r, attrs{"class", "cells"})
}

// today draws the design as it is, as a ring.
func (f Front) today(p *pen, x, y axis, c frontPaper) {
	at, up := x.at(f.Today.Nights), y.at(f.Today.Cost)
	p.circle(at, up, 7, attrs{"class", "line-ink"})
	anchor, off := "", 10.0
	if at > c.wide*0.6 {
		anchor, off = "end", -10
	}
	p.text(at+off, min(up+c.letters+8, y.a-3), "today", c.letters, anchor, 0)
}

// names writes the name of the best plan, and on a wide screen that of the cheapest.
func (f Front) names(p *pen, x, y axis, c frontPaper) {
	for i, one := range f.Plans {
		if !one.Best && !(c.names && i == 0) {
			continue
		}
		name, look, up := one.Name, attrs{"class", "soft"}, y.at(one.Cost)-8
		if one.Best { // over its bar, where those of the cheaper plans do not reach
			name, look, up = "Best: "+name, attrs{"font-weight", "600"}, y.at(one.High)-7
			if !c.names { // no room: the heading under the picture names it
				name = "Best"
			}
		}
		at, anchor, room := x.at(one.Nights)-12, "end", x.at(one.Nights)-c.left
		if room < c.wide/2-c.left {
			at, anchor, room = x.at(one.Nights)+12, "", c.wide-x.at(one.Nights)-14
		}
		p.text(at, up, shorten(name, c.letters, room-12), c.letters, anchor, 0, look)
	}
}
