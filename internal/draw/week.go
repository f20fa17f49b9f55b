package draw

import (
	"io"
	"math"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Week is the first seven days of a weather file, hour by hour: light on the flat and its diffuse part in W/m², air in °C,
// which is drawn in the reader's units.
type Week struct {
	Global, Diffuse, Air []float64
	Units                unit.System
}

var firstDays = [7]string{"1 Jan", "2 Jan", "3 Jan", "4 Jan", "5 Jan", "6 Jan", "7 Jan"}

// Draw draws the light as steps over the days and, in a strip below on an axis of its own, the air.
func (d Week) Draw(out io.Writer) error {
	const w, left, right, floor = 380.0, 46.0, 12.0, 160.0
	p := open(out, "week", w, 292, "The first week", d.reading())
	x := axis{lo: 0, hi: 24, a: left, b: w - right} // steps spreads its values over 24
	y := axis{lo: 0, hi: niceTop(peak(d.Global)), a: floor, b: 34}
	p.text(left-6, 16, "W/m²", small, "end", 0)
	p.levels(x, y, 4)
	light := steps(d.Global, x, y)
	p.path(append(append([]float64{x.a, y.a}, light...), x.b, y.a), true, attrs{"fill", sunColour, "fill-opacity", ".5"})
	p.path(light, false, stroke(ink, 0.9, ""))
	p.path(steps(d.Diffuse, x, y), false, stroke(loadColour, 1.4, "3 2"))
	p.named(x, floor, firstDays[:])
	p.rect(left, 8, 14, 9, attrs{"fill", sunColour, "fill-opacity", ".5"}, stroke(ink, 0.9, ""))
	p.text(left+19, 16, "light on the flat", small, "start", 0)
	key := left + 34 + TextWidth("light on the flat", small)
	p.line(key, 12, key+16, 12, stroke(loadColour, 1.4, "3 2"))
	p.text(key+21, 16, "of it diffuse", small, "start", 0)
	p.air(d.Air, x, d.Units)
	return p.close()
}

// air draws the temperature, given in °C, as a line.
func (p *pen) air(celsius []float64, x axis, sys unit.System) {
	scale := unit.Temperatures.Scale(sys)
	v := make([]float64, len(celsius))
	for i, t := range celsius {
		v[i] = scale.Of(t)
	}
	low, high := math.Inf(1), math.Inf(-1)
	for _, t := range v {
		low, high = math.Min(low, finite(t)), math.Max(high, finite(t))
	}
	if len(v) == 0 {
		return
	}
	y := axis{lo: 5 * math.Floor(low/5), hi: 5*math.Floor(high/5) + 5, a: 262, b: 204}
	p.text(x.a-6, y.b-12, unit.Temperatures.Symbol(sys), small, "end", 0)
	p.text(x.a, y.b-12, "air", small, "start", 0, attrs{"font-weight", "600"})
	for _, t := range []float64{y.lo, y.hi} {
		p.line(x.a, y.at(t), x.b, y.at(t), stroke(ink, 0.6, ""), attrs{"stroke-opacity", ".25"})
		p.text(x.a-5, y.at(t)+4, tick(t), small, "end", 0)
	}
	p.path([]float64{x.a, y.b, x.a, y.a, x.b, y.a}, false, stroke(ink, 1, ""))
	pts := make([]float64, 0, 2*len(v))
	for i, t := range v {
		pts = append(pts, x.at(24*(float64(i)+0.5)/float64(len(v))), y.at(finite(t)))
	}
	p.path(pts, false, stroke(ink, 1.4, ""))
	p.named(x, y.a, firstDays[:])
}

// reading is the text equivalent.
func (d Week) reading() string {
	return say.That("1 to 7 January: at most %s on the flat, of it diffuse at most %s.", say.Light(unit.Irradiance(peak(d.Global))), say.Light(unit.Irradiance(peak(d.Diffuse)))).String()
}
