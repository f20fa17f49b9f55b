package draw

import (
	"io"
	"math"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// SunMonths draws the sun of twelve months as pairs of bars, in kWh/m² a day: on the flat open, on the panel filled.
func SunMonths(flat, panel [12]float64, out io.Writer) error {
	const w, h, left, right, floor, top = 380.0, 232.0, 40.0, 6.0, 186.0, 34.0
	p := open(out, "sunmonths", w, h, "Sun month by month", sunReading(panel))
	x := axis{lo: 0, hi: 12, a: left, b: w - right}
	y := axis{lo: 0, hi: niceTop(math.Max(peak(flat[:]), peak(panel[:]))), a: floor, b: top}
	p.text(2, 12, "kWh/m² a day", small, "start", 0)
	p.levels(x, y, 4)
	unit := x.at(1) - x.at(0)
	for m := range 12 {
		at := x.at(float64(m))
		a, b := y.at(finite(flat[m])), y.at(finite(panel[m]))
		p.rect(at+0.12*unit, a, 0.36*unit, floor-a, stroke(ink, 1, ""))
		p.rect(at+0.5*unit, b, 0.36*unit, floor-b, attrs{"fill", sunColour}, stroke(ink, 1, ""))
		p.text(at+unit/2, floor+15, monthNames[m], 9.5, "middle", 0)
	}
	p.text((x.a+x.b)/2, floor+32, "month", small, "middle", 0)
	key := left + 92
	p.rect(key, 4, 12, 9, stroke(ink, 1, ""))
	p.text(key+17, 12, "on the flat", small, "start", 0)
	key += 32 + TextWidth("on the flat", small)
	p.rect(key, 4, 12, 9, attrs{"fill", sunColour}, stroke(ink, 1, ""))
	p.text(key+17, 12, "on the panel", small, "start", 0)
	return p.close()
}

// sunReading is the text equivalent.
func sunReading(panel [12]float64) string {
	sun := func(kilowattHours float64) say.Amount {
		return say.Of(unit.Irradiations, finite(kilowattHours)*3.6e6)
	}
	low, high := 0, 0
	for m, v := range panel {
		if finite(v) < finite(panel[low]) {
			low = m
		}
		if finite(v) > finite(panel[high]) {
			high = m
		}
	}
	return say.That("On the panel: least in %s with %s a day, most in %s with %s.", monthNames[low], sun(panel[low]), monthNames[high], sun(panel[high])).String()
}
