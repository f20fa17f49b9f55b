package draw

import (
	"fmt"
	"io"
	"math"
	"strings"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// WorstWeek is a week hour by hour: what the panels give, what is wanted and what of it is not there, W, and what is
// stored at the end of each hour, J. Stored may be empty. Days names each day. Look is the look of the one kind that stores it, empty for several.
type WorstWeek struct {
	Name               string
	Days               []string
	Sun, Load, Missing []float64
	Stored             []float64
	Look               string
}

// Draw draws sun and load as steps, the hours without light dark, and in a strip below what is stored.
func (d WorstWeek) Draw(out io.Writer) error {
	const left, right, floor = 46.0, 12.0, 170.0
	const w = left + 2*168 + right // an hour is two units wide
	h := 216.0
	if len(d.Stored) > 0 {
		h = 312
	}
	p := open(out, "worst-week", w, h, d.Name, d.reading())
	x := axis{lo: 0, hi: 24, a: left, b: w - right} // steps spreads its values over 24
	y := axis{lo: 0, hi: niceTop(math.Max(peak(d.Sun), peak(d.Load))), a: floor, b: 34}
	p.text(left-6, 20, "W", small, "end", 0)
	p.levels(x, y, 4)
	p.tag("path", attrs{"d", stairs(d.Sun, 2, left, y), "fill", sunColour, "fill-opacity", ".5"}, stroke(ink, 0.9, ""))
	p.tag("path", attrs{"d", stairs(d.Missing, 2, left, y), "fill", failColour, "fill-opacity", ".85"})
	p.tag("path", attrs{"d", stairs(d.Load, 2, left, y), "fill", "none"}, stroke(loadColour, 1.6, ""))
	p.named(x, floor, d.Days)
	p.rect(left, 4, 14, 9, attrs{"fill", sunColour, "fill-opacity", ".5"}, stroke(ink, 0.9, ""))
	p.text(left+19, 12, "sun on the panels", small, "start", 0)
	next := left + 32 + TextWidth("sun on the panels", small)
	p.line(next, 8, next+16, 8, stroke(loadColour, 1.6, ""))
	p.text(next+21, 12, "needed", small, "start", 0)
	next += 34 + TextWidth("needed", small)
	p.rect(next, 4, 14, 9, attrs{"fill", failColour, "fill-opacity", ".85"})
	p.text(next+19, 12, "missing", small, "start", 0)
	if len(d.Stored) > 0 {
		below := axis{lo: 0, hi: niceTop(peak(d.Stored) / 3600), a: 278, b: 216}
		p.held(d, left, x, below)
		p.named(x, below.a, d.Days)
	}
	return p.close()
}

// stairs is the path of values that each hold for some units to the right, from the floor up and back to it, in whole units:
// what keeps a page small.
func stairs(v []float64, wide int, left float64, y axis) string {
	var b strings.Builder
	fmt.Fprintf(&b, "M%g %g", left, y.a)
	at, run := int(y.a), 0
	rise := func(to int) {
		if to == at {
			return
		}
		if run > 0 {
			fmt.Fprintf(&b, "h%d", run)
		}
		fmt.Fprintf(&b, "v%d", to-at)
		at, run = to, 0
	}
	for _, one := range v {
		rise(int(math.Round(y.at(math.Max(0, finite(one))))))
		run += wide
	}
	rise(int(y.a))
	if run > 0 {
		fmt.Fprintf(&b, "h%d", run)
	}
	return b.String()
}

// named writes the names of days under an axis.
func (p *pen) named(x axis, y float64, days []string) {
	n := float64(len(days))
	for i := range len(days) + 1 {
		v := x.at(24 * float64(i) / max(n, 1))
		p.line(v, y, v, y+4, stroke(ink, narrow, ""))
		if i < len(days) {
			p.text(x.at(24*(float64(i)+0.5)/n), y+16, days[i], small, "middle", 0)
		}
	}
}

// held draws the strip of what is stored at the end of each hour.
func (p *pen) held(d WorstWeek, left float64, x, y axis) {
	colour := lookOf(d.Look).colour
	p.text(x.a-6, y.b-10, "Wh", small, "end", 0)
	p.text(x.a, y.b-10, "stored", small, "start", 0, attrs{"font-weight", "600"})
	p.levels(x, y, 3)
	stored := make([]float64, len(d.Stored))
	for i, v := range d.Stored {
		stored[i] = v / 3600
	}
	p.tag("path", attrs{"d", stairs(stored, 2, left, y), "fill", colour, "fill-opacity", ".35"}, stroke(colour, 1, ""))
}

// reading is the text equivalent.
func (d WorstWeek) reading() string {
	whole := func(v []float64) say.Amount {
		sum := 0.0
		for _, w := range v {
			sum += finite(w)
		}
		return say.Energy(unit.Energy(sum * 3600))
	}
	return say.That("The sun gives %s in the week, %s are needed, %s of them are missing.", whole(d.Sun), whole(d.Load), whole(d.Missing)).String()
}
