package draw

import (
	"fmt"
	"io"
	"math"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Burn is one lamp or device over the clock hours of a day: the power it takes in each, W.
type Burn struct {
	Name  string
	Hours [24]float64
}

// Burns is what burns when, from noon to noon, so that the night stands in the middle. Dark tells the hours without sun.
type Burns struct {
	Name string // "21 December"
	Dark [24]bool
	Each []Burn
}

// mostBurns is how many rows stand in the picture; the rest are drawn together.
const mostBurns = 10

// Draw draws a row of bars for each, full where it takes the most, over the hours without sun, with the power at its
// end.
func (b Burns) Draw(out io.Writer) error {
	const right, top, row = 36.0, 20.0, 22.0
	each := b.gathered()
	left := 98.0 // the longest name, up to a little under half of the picture
	for _, one := range each {
		left = math.Max(left, math.Min(180, TextWidth(one.Name, small)/0.86+10))
	}
	w := left + 232
	floor := top + row*float64(max(len(each), 1))
	p := open(out, "burns", w, floor+38, "What is switched on, hour by hour, "+b.Name, b.reading())
	x := axis{lo: 0, hi: 24, a: left, b: w - right}
	for i := 0; i < 24; i++ {
		from := i
		for i < 24 && b.Dark[(i+12)%24] {
			i++
		}
		if i > from {
			p.rect(x.at(float64(from)), top-6, x.at(float64(i))-x.at(float64(from)), floor-top+6, attrs{"fill", ink, "fill-opacity", ".12"})
		}
	}
	p.text(w-2, 12, "W", small, "end", 0)
	for i, one := range each {
		p.burn(one, x, top+row*float64(i), row, w)
	}
	p.line(x.a, floor, x.b, floor, stroke(ink, 1, ""))
	for t := 0; t <= 24; t += 6 {
		v := x.at(float64(t))
		p.line(v, floor, v, floor+4, stroke(ink, narrow, ""))
		p.text(v, floor+16, fmt.Sprintf("%02d:00", (t+12)%24), small, "middle", 0)
	}
	p.text((x.a+x.b)/2, floor+32, "clock time; grey: sun down", small, "middle", 0)
	return p.close()
}

// burn draws one row.
func (p *pen) burn(b Burn, x axis, y, row, w float64) {
	most := peak(b.Hours[:])
	p.text(x.a-6, y+row/2+3, fitted(b.Name, 0.86*(x.a-8), small), small, "end", 0)
	for i := range 24 {
		v := finite(b.Hours[(i+12)%24])
		if v <= 0 {
			continue
		}
		h := math.Max(3, (row-8)*v/most)
		p.rect(x.at(float64(i)), y+row-4-h, x.at(1)-x.at(0)+0.4, h, attrs{"fill", loadColour, "shape-rendering", "crispEdges"})
	}
	if most > 0 {
		p.text(w-2, y+row/2+3, tick(round3(most)), small, "end", 0)
	}
}

// round3 keeps three digits.
func round3(v float64) float64 {
	if v == 0 {
		return 0
	}
	s := math.Pow(10, 2-math.Floor(math.Log10(math.Abs(v))))
	return math.Round(v*s) / s
}

// gathered puts the rows that have no room into one.
func (b Burns) gathered() []Burn {
	if len(b.Each) <= mostBurns {
		return b.Each
	}
	out := append([]Burn{}, b.Each[:mostBurns-1]...)
	rest := Burn{Name: fmt.Sprintf("%d more", len(b.Each)-mostBurns+1)}
	for _, one := range b.Each[mostBurns-1:] {
		for h, v := range one.Hours {
			rest.Hours[h] += finite(v)
		}
	}
	return append(out, rest)
}

// fitted cuts a text to a width.
func fitted(s string, width, size float64) string {
	if TextWidth(s, size) <= width {
		return s
	}
	r := []rune(s)
	for len(r) > 1 && TextWidth(string(r)+"…", size) > width {
		r = r[:len(r)-1]
	}
	return string(r) + "…"
}

// reading is the text equivalent.
func (b Burns) reading() string {
	var most float64
	var when int
	for h := range 24 {
		sum := 0.0
		for _, one := range b.Each {
			sum += finite(one.Hours[h])
		}
		if sum > most {
			most, when = sum, h
		}
	}
	if most == 0 {
		return "Nothing burns."
	}
	return say.That("Most at %s: %s.", fmt.Sprintf("%02d:00", when), say.Power(unit.Power(most))).String()
}
