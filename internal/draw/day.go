package draw

import (
	"fmt"
	"io"
	"math"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// TypicalDay is a day of 24 hours: what the panels give and what is wanted, W, hour by hour, and what is stored at the
// end of each hour, J, before it 24 values. Stored may be empty. Look is the look of the one kind that stores it, empty for several.
type TypicalDay struct {
	Name   string // "A usual day in March"
	Sun    []float64
	Load   []float64
	Stored []float64
	Look   string
}

// Day draws sun and load as steps over the hours and, in a strip below on an axis of its own, what is stored.
func Day(d TypicalDay, out io.Writer) error {
	const w, left, right = 380.0, 46.0, 22.0
	h, floor := 216.0, 170.0
	if len(d.Stored) > 0 {
		h = 312
	}
	p := open(out, "day", w, h, d.Name, d.reading())
	x := axis{lo: 0, hi: 24, a: left, b: w - right}
	most := niceTop(math.Max(peak(d.Sun), peak(d.Load)))
	y := axis{lo: 0, hi: most, a: floor, b: 30}
	p.text(left-6, 16, "W", small, "end", 0)
	p.levels(x, y, 4)
	sun := steps(d.Sun, x, y)
	p.path(append(append([]float64{x.a, y.a}, sun...), x.b, y.a), true, attrs{"fill", sunColour, "fill-opacity", ".5"}, stroke(ink, 0.9, ""))
	p.path(steps(d.Load, x, y), false, stroke(loadColour, 2.4, ""))
	p.hours(x, floor)
	p.dayKey(left, 16)
	if len(d.Stored) > 0 {
		p.stored(d, x, axis{lo: 0, hi: niceTop(peak(d.Stored) / 3600), a: 278, b: 216})
	}
	return p.close()
}

// stored draws the strip of what is stored.
func (p *pen) stored(d TypicalDay, x, y axis) {
	l := lookOf(d.Look)
	p.text(x.a-6, y.b-10, "Wh", small, "end", 0)
	p.text(x.a, y.b-10, "stored", small, "start", 0, attrs{"font-weight", "600"})
	p.levels(x, y, 3)
	pts := []float64{}
	n := float64(len(d.Stored))
	before := finite(d.Stored[len(d.Stored)-1])
	pts = append(pts, x.at(0), y.at(before/3600))
	for i, v := range d.Stored {
		pts = append(pts, x.at(24*float64(i+1)/n), y.at(finite(v)/3600))
	}
	p.path(append(append([]float64{x.a, y.a}, pts...), x.b, y.a), true, attrs{"fill", l.colour, "fill-opacity", ".15"})
	p.path(pts, false, stroke(l.colour, 2.2, l.dash))
	p.hours(x, y.a)
}

// levels draws the lines of a straight upright axis with their values.
func (p *pen) levels(x, y axis, n int) {
	for _, v := range y.ticks(n) {
		p.line(x.a, y.at(v), x.b, y.at(v), stroke(ink, 0.6, ""), attrs{"stroke-opacity", ".25"})
		p.text(x.a-5, y.at(v)+4, tick(v), small, "end", 0)
	}
	p.path([]float64{x.a, y.b, x.a, y.a, x.b, y.a}, false, stroke(ink, 1, ""))
}

// hours writes the hours of the day under an axis.
func (p *pen) hours(x axis, y float64) {
	for t := 0; t <= 24; t += 3 {
		v := x.at(float64(t))
		p.line(v, y, v, y+4, stroke(ink, narrow, ""))
		anchor := "middle"
		if t == 24 {
			anchor = "end"
			v += 8
		}
		if t%6 == 0 {
			p.text(v, y+16, fmt.Sprintf("%02d:00", t), small, anchor, 0)
		}
	}
}

func (p *pen) dayKey(x, y float64) {
	p.rect(x, y-8, 14, 9, attrs{"fill", sunColour, "fill-opacity", ".5"}, stroke(ink, 0.9, ""))
	p.text(x+19, y, "sun on the panels, after losses", small, "start", 0)
	x += 44 + TextWidth("sun on the panels, after losses", small)
	p.line(x, y-4, x+16, y-4, stroke(loadColour, 2.4, ""))
	p.text(x+21, y, "what is needed", small, "start", 0)
}

// steps is a line that holds each value for its hour.
func steps(v []float64, x, y axis) []float64 {
	var out []float64
	n := float64(len(v))
	for i, w := range v {
		h := y.at(math.Max(0, finite(w)))
		out = append(out, x.at(24*float64(i)/n), h, x.at(24*float64(i+1)/n), h)
	}
	return out
}

func finite(v float64) float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return 0
	}
	return v
}

func peak(v []float64) float64 {
	m := 0.0
	for _, w := range v {
		m = math.Max(m, finite(w))
	}
	return m
}

// niceTop is a round value of at least v.
func niceTop(v float64) float64 {
	if v <= 0 {
		return 1
	}
	step := niceStep(v / 4)
	return step * math.Ceil(v/step-1e-9)
}

// reading is the text equivalent.
func (d TypicalDay) reading() string {
	mean := func(v []float64) float64 {
		sum := 0.0
		for _, w := range v {
			sum += finite(w)
		}
		return sum / math.Max(1, float64(len(v))) * 24
	}
	watts := func(v []float64) say.Amount { return say.Power(unit.Power(peak(v))) }
	day := func(v []float64) say.Amount { return say.Energy(unit.Energy(mean(v)) * unit.WattHour) }
	s := say.That("The sun gives up to %s and %s in the day; up to %s and %s are needed.", watts(d.Sun), day(d.Sun), watts(d.Load), day(d.Load))
	if len(d.Stored) > 0 {
		s = say.Join(s, say.That("At most %s are stored.", say.Energy(unit.Energy(peak(d.Stored)))))
	}
	return s.String()
}
