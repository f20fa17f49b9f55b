package draw

import (
	"io"
	"math"
	"strings"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Energies are lines of equal energy in the picture of mass against height.
type Energies struct {
	Energy unit.Energy // m·g·h
	Name   string      // "a night: 74 Wh"
	Strong bool        // the one that matters
}

// MassAgainstHeight is what the picture of mass against height is made of. Its axes are kg and m, or lb and ft.
type MassAgainstHeight struct {
	Mass   unit.Known[unit.Mass]   // today's design
	Height unit.Known[unit.Length] // today's design
	Lines  []Energies
	Units  unit.System
}

// units is one unit of either axis.
func (m MassAgainstHeight) units() (unit.Mass, unit.Length) {
	if m.Units == unit.Imperial {
		return unit.Pound, unit.Foot
	}
	return 1, 1
}

// product is mass times height on a line, in units of the axes.
func (m MassAgainstHeight) product(l Energies) float64 {
	mass, height := m.units()
	return float64(l.Energy) / (unit.G * float64(mass) * float64(height))
}

// MassHeight draws mass against height with both axes logarithmic, the lines of equal energy and today's design.
func MassHeight(m MassAgainstHeight, out io.Writer) error {
	const w, h = 380.0, 300.0
	oneMass, oneHeight := m.units()
	p := open(out, "massheight", w, h, "Mass against height", m.reading())
	x := axis{lo: 0.5, hi: 200, a: 58, b: w - 16, log: true}
	y := axis{lo: 10, hi: 1e5, a: h - 44, b: 14, log: true}
	x.cover(float64(m.Height.Val), m.Height.Is, float64(oneHeight))
	y.cover(float64(m.Mass.Val), m.Mass.Is, float64(oneMass))
	p.logGrid(x, y)
	p.text((x.a+x.b)/2, h-8, "height of travel, "+unit.Lengths.Symbol(m.Units), letter, "middle", 0)
	p.text(14, (y.a+y.b)/2, "mass, "+unit.Masses.Symbol(m.Units), letter, "middle", 90)
	lines := m.apart()
	var taken []box
	mass, massIs := m.Mass.Value()
	height, heightIs := m.Height.Value()
	here := massIs && heightIs && mass > 0 && height > 0
	if here {
		taken = append(taken, m.today(p, x, y, lines)...)
	}
	for _, l := range lines {
		p.energyLine(l, x, y, m, &taken)
	}
	return p.close()
}

// apart returns the lines without those that run so close to a strong one that neither could be read.
func (m MassAgainstHeight) apart() []Energies {
	var out []Energies
	for _, l := range m.Lines {
		near := false
		for _, o := range m.Lines {
			near = near || !l.Strong && o.Strong && math.Abs(math.Log(float64(l.Energy/o.Energy))) < 0.6
		}
		if !near {
			out = append(out, l)
		}
	}
	return out
}

// cover widens an axis, decade by decade, until a value lies well inside it.
func (x *axis) cover(v float64, ok bool, one float64) {
	v /= one
	if !ok || !(v > 0) || math.IsInf(v, 0) {
		return
	}
	for v < x.lo*1.5 {
		x.lo /= 10
	}
	for v > x.hi/1.5 {
		x.hi *= 10
	}
}

// logGrid draws the decades of both axes as lines, and what lies between them as ticks in one path.
func (p *pen) logGrid(x, y axis) {
	var ticks strings.Builder
	for _, v := range x.decades() {
		p.line(x.at(v), y.a, x.at(v), y.b, stroke(ink, 0.6, ""), attrs{"stroke-opacity", ".25"})
		p.text(x.at(v), y.a+15, tick(v), small, "middle", 0)
		for k := 2.0; k < 10; k++ {
			if u := k * v; u > x.lo && u < x.hi {
				ticks.WriteString("M" + num(x.at(u)) + " " + num(y.a) + "v-3")
			}
		}
	}
	for _, v := range y.decades() {
		p.line(x.a, y.at(v), x.b, y.at(v), stroke(ink, 0.6, ""), attrs{"stroke-opacity", ".25"})
		p.text(x.a-5, y.at(v)+4, tick(v), small, "end", 0)
		for k := 2.0; k < 10; k++ {
			if u := k * v; u > y.lo && u < y.hi {
				ticks.WriteString("M" + num(x.a) + " " + num(y.at(u)) + "h3")
			}
		}
	}
	p.tag("path", attrs{"d", ticks.String()}, stroke(ink, 0.6, ""))
	p.path([]float64{x.a, y.b, x.a, y.a, x.b, y.a}, false, stroke(ink, 1, ""))
}

// energyLine draws mass·g·height = energy, with its name along it.
func (p *pen) energyLine(l Energies, x, y axis, m MassAgainstHeight, taken *[]box) {
	e := m.product(l) // mass·height in axis units
	if !(e > 0) || math.IsInf(e, 0) {
		return
	}
	lo, hi := math.Max(x.lo, e/y.hi), math.Min(x.hi, e/y.lo)
	if lo >= hi {
		return
	}
	look := stroke(ink, narrow, "6 3")
	if l.Strong {
		look = stroke(massColour, 2, "")
	}
	x0, y0, x1, y1 := x.at(lo), y.at(e/lo), x.at(hi), y.at(e/hi)
	p.line(x0, y0, x1, y1, look)
	turn := math.Atan2(y0-y1, x1-x0) * 180 / math.Pi
	w := TextWidth(l.Name, small)
	dx, dy := math.Cos(turn*math.Pi/180), -math.Sin(turn*math.Pi/180)
	for _, t := range []float64{0.5, 0.7, 0.3, 0.82, 0.18} {
		cx, cy := x0+t*(x1-x0), y0+t*(y1-y0)
		if math.Hypot(x1-x0, y1-y0)*math.Min(t, 1-t) < w/2+4 {
			continue
		}
		b := box{cx - w/2*dx, cy - math.Abs(w/2*dy) - 6, cx + w/2*dx, cy + math.Abs(w/2*dy)}
		clash := false
		for _, o := range *taken {
			clash = clash || b.meets(o)
		}
		if clash {
			continue
		}
		*taken = append(*taken, b)
		p.text(cx+4*dy, cy-4*dx, l.Name, small, "middle", turn)
		return
	}
}

// today marks the design, a cross in a ring, with its name where no line runs through it; it returns what it takes.
func (m MassAgainstHeight) today(p *pen, x, y axis, lines []Energies) []box {
	oneMass, oneHeight := m.units()
	px, py := x.at(float64(m.Height.Val/oneHeight)), y.at(float64(m.Mass.Val/oneMass))
	p.circle(px, py, 6, stroke(massColour, 2, ""), attrs{"fill", massColour, "fill-opacity", ".25"})
	p.line(px-10, py, px+10, py, stroke(massColour, 1, ""))
	p.line(px, py-10, px, py+10, stroke(massColour, 1, ""))
	const name = "today"
	w := TextWidth(name, letter)
	crossed := func(b box) bool {
		for _, l := range lines {
			e := m.product(l)
			if x.value(b.x0)*y.value(b.y1) < e && e < x.value(b.x1)*y.value(b.y0) {
				return true
			}
		}
		return false
	}
	best := box{}
	for i, at := range [][2]float64{{px + 13, py - 6}, {px - 13 - w, py - 6}, {px + 13, py + 18}, {px - 13 - w, py + 18}, {px + 13, py + 4}, {px - w - 13, py + 4}} {
		b := box{at[0], at[1] - 10, at[0] + w, at[1] + 3}
		inside := b.x0 > x.a+3 && b.x1 < x.b && b.y0 > y.b && b.y1 < y.a
		if i == 0 || inside && best.x1 == 0 {
			best = b
		}
		if inside && !crossed(b) {
			best = b
			break
		}
	}
	p.text(best.x0, best.y1-3, name, letter, "start", 0, attrs{"font-weight", "600"})
	return []box{best, {px - 11, py - 11, px + 11, py + 11}}
}

// reading is the text equivalent.
func (m MassAgainstHeight) reading() string {
	mass, massIs := m.Mass.Value()
	height, heightIs := m.Height.Value()
	lines := say.That("Lines of equal energy fall from a heavy mass at a small height to a light mass at a great height.")
	today := say.Sentence{}
	if massIs && heightIs {
		today = say.That("Today's design is %s lifted %s: %s before losses.", say.Mass(mass), say.Taped(height), say.Energy(unit.Energy(float64(mass)*unit.G*float64(height))))
	}
	names := make([]say.Sentence, len(m.Lines))
	for i, l := range m.Lines {
		names[i] = say.That("%s.", l.Name)
	}
	return say.Join(today, lines, say.Join(names...)).In(m.Units)
}
