package draw

import (
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
)

// States is how full a store was on each day of a year: the least and the most, as shares of full.
type States struct {
	Name        string
	Least, Most []float64 // 365 values each
	Look        string    // of its kind: "mass"
}

// Draw draws a band from each day's least to its most, over the months.
func (s States) Draw(out io.Writer) error {
	const left, top, floor = 34.0, 22.0, 122.0 // a day is one unit wide and a hundredth of full one high
	const w, h = left + 365 + 6, floor + 22
	p := open(out, "states", w, h, s.Name+", charge level through the year", s.reading())
	x, y := axis{lo: 0, hi: 365, a: left, b: left + 365}, axis{lo: 0, hi: 100, a: floor, b: top}
	p.text(2, 12, "% of full", small, "start", 0)
	p.levels(x, y, 4)
	colour := lookOf(s.Look).colour
	if d := s.band(left, floor); d != "" {
		p.tag("path", attrs{"d", d, "fill", colour, "fill-opacity", ".35"}, stroke(colour, 1, ""))
	}
	day := 0
	for m, n := range monthDays {
		p.line(x.at(float64(day)), floor, x.at(float64(day)), floor+4, stroke(ink, narrow, ""))
		p.text(x.at(float64(day)+float64(n)/2), floor+15, monthNames[m], 9.5, "middle", 0)
		day += n
	}
	return p.close()
}

// band is the path round the band: along the most, and back along the least. It is written in whole units from point to
// point, which keeps a page small.
func (s States) band(left, floor float64) string {
	n := min(len(s.Least), len(s.Most), 365)
	if n == 0 {
		return ""
	}
	at := func(v float64) int { return int(math.Round(100 * math.Min(1, math.Max(0, finite(v))))) }
	var b strings.Builder
	y := at(s.Most[0])
	fmt.Fprintf(&b, "M%g %g", left, floor-float64(y))
	run := 0
	step := func(dx, next int) {
		if next == y {
			run += dx
			return
		}
		if run != 0 {
			b.WriteString("h" + strconv.Itoa(run))
		}
		fmt.Fprintf(&b, "l%d %d", dx, y-next)
		run, y = 0, next
	}
	for d := 1; d < n; d++ {
		step(1, at(s.Most[d]))
	}
	step(1, y)
	if run != 0 {
		b.WriteString("h" + strconv.Itoa(run))
		run = 0
	}
	last := at(s.Least[n-1])
	fmt.Fprintf(&b, "v%d", y-last)
	y = last
	step(-1, y)
	for d := n - 2; d >= 0; d-- {
		step(-1, at(s.Least[d]))
	}
	if run != 0 {
		b.WriteString("h" + strconv.Itoa(run))
	}
	return b.String() + "Z"
}

// reading is the text equivalent.
func (s States) reading() string {
	full, empty := 0, 0
	for d := range min(len(s.Least), len(s.Most)) {
		if s.Most[d] >= 0.995 {
			full++
		}
		if s.Least[d] <= 0.005 {
			empty++
		}
	}
	return fmt.Sprintf("The store gets full on %d days of the year and empty on %d.", full, empty)
}
