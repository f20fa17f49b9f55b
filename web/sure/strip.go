package sure

import (
	"fmt"
	"math"
	"strings"

	"duskweight/internal/model/search"
	"duskweight/web/page"
)

// sureStrip is one variant's years on an axis of full nights: a grey dot a made year, a dark stroke a weather file, and
// bad, usual and good as lines with their figures. All variants of a page have the same axis.
type sureStrip struct {
	Name, Say string
	Drawn     bool
	Made      string // path of the dots
	Real      string // path of the strokes
	Ring      string // where the year of a typical file lies; empty for none
	Marks     string // path of bad, usual and good
	Figures   string
	Ticks     []stripTick
}

// beside is what a strip shows beside its years; each nil where there is none.
type beside struct {
	band    *search.Sure // made years behind weather files
	typical *search.Sure // the own year of a typical file
}

type stripTick struct{ X, Anchor, Text string }

// The paper of a strip, in its own units.
const (
	stripWide   = 318.0
	stripLeft   = 6.0
	stripTop    = 26.0  // of the lines of bad, usual and good
	stripGround = 108.0 // the lowest dots
	stripAxis   = 114.0
	stripDot    = 4.4 // from dot to dot
	stripDots   = 300 // most dots; with more years a dot stands for several
)

// stripsOf draws the years of each variant.
func stripsOf(s search.Sure, by beside) []sureStrip {
	low, high := stripScale(s, by)
	var out []sureStrip
	for i, c := range s.Variants {
		made, real := c.Nights, []float64(nil)
		if len(s.Real) > 0 {
			made, real = nil, c.Nights
			if by.band != nil {
				made = by.band.Variants[i].Nights
			}
		}
		t := sureStrip{Name: page.OrUnnamed(c.Name)}
		switch {
		case len(c.Nights) < 2:
			continue
		case c.Light.Best == 0:
			t.Say = "In no year is a night full."
		case c.Light.Worst == c.Light.Best:
			t.Say = fmt.Sprintf("%.0f full nights in every one of %s years.", c.Light.Best, page.Thousands(len(c.Nights)))
		default:
			t.draw(c, s.BadNights(c), made, real, low, high)
			if by.typical != nil && len(by.typical.Variants[i].Nights) == 1 {
				n := by.typical.Variants[i].Nights[0]
				t.Ring = fmt.Sprintf("%.1f", stripLeft+(n-low)/(high-low)*stripWide)
				t.Say += fmt.Sprintf(" The ring is the file’s own year, %.0f nights: its months were chosen as ordinary.", n)
			}
		}
		out = append(out, t)
	}
	return out
}

// stripScale is the part of the axis that the variants need: tens, and at least twenty nights, so that one night more is no
// leap.
func stripScale(s search.Sure, by beside) (low, high float64) {
	low, high = math.Inf(1), 0
	see := func(cs []search.Certain) {
		for _, c := range cs {
			if c.Light.Worst < c.Light.Best || len(c.Nights) == 1 && c.Light.Best > 0 {
				low, high = min(low, c.Light.Worst), max(high, c.Light.Best)
			}
		}
	}
	see(s.Variants)
	for _, more := range []*search.Sure{by.band, by.typical} {
		if more != nil {
			see(more.Variants)
		}
	}
	low, high = math.Floor(low/10)*10, math.Ceil(high/10)*10
	if high-low < 20 {
		low = max(0, high-20)
	}
	return low, max(min(high, float64(s.Nights)), low+1)
}

// draw fills in a strip from low to high full nights.
func (t *sureStrip) draw(c search.Certain, badNights int, made, real []float64, low, high float64) {
	x := func(nights float64) float64 { return stripLeft + (nights-low)/(high-low)*stripWide }
	t.Drawn = true
	t.Say = fmt.Sprintf("From %.0f full nights in the worst of %s years to %.0f in the best.", c.Light.Worst, page.Thousands(len(c.Nights)), c.Light.Best)
	t.Made = dotsOf(made, low, x)
	if len(made) > 0 {
		t.Say += " " + dotSay(len(made), len(real) > 0)
	}
	for _, n := range real {
		t.Real += fmt.Sprintf("M%.1f %.0fv12", x(n), stripAxis+3)
	}
	for _, n := range []float64{float64(badNights), c.Light.Usual, c.Light.Good} {
		t.Marks += fmt.Sprintf("M%.1f %.0fV%.0f", x(n), stripAxis, stripTop)
	}
	t.Figures = fmt.Sprintf("bad %d · usual %.0f · good %.0f", badNights, math.Round(c.Light.Usual), math.Floor(c.Light.Good))
	for i, n := range []float64{low, math.Round((low + high) / 2), high} {
		t.Ticks = append(t.Ticks, stripTick{fmt.Sprintf("%.1f", x(n)), [...]string{"start", "middle", "end"}[i], fmt.Sprintf("%.0f", n)})
	}
}

// dotSay says what a dot is; behind says that the made years stand behind weather files.
func dotSay(n int, behind bool) string {
	say := "A grey dot is one made year"
	if per := yearsADot(n); per > 1 {
		say = fmt.Sprintf("A grey dot stands for up to %d made years", per)
	}
	if behind {
		return say + " from the means of the files, a dark stroke one file."
	}
	return say + "."
}

// yearsADot is how many years a dot stands for.
func yearsADot(n int) int { return max(1, (n+stripDots-1)/stripDots) }

// dotsOf stacks a dot a year over its nights, in columns as wide as a dot; a stack that is too high is drawn closer.
func dotsOf(nights []float64, low float64, x func(float64) float64) string {
	if len(nights) == 0 {
		return ""
	}
	wide := math.Ceil(stripDot / (x(low+1) - x(low))) // nights in a column
	stacks, most, last := map[int]int{}, 0, 0
	for _, n := range nights {
		k := int((n - low) / wide)
		stacks[k]++
		most, last = max(most, stacks[k]), max(last, k)
	}
	per := yearsADot(len(nights))
	rise := min(stripDot, (stripGround-stripTop-6)/float64((most+per-1)/per))
	var path strings.Builder
	for k := range last + 1 {
		for i := range (stacks[k] + per - 1) / per {
			fmt.Fprintf(&path, "M%.1f %.1fh0", x(low+(float64(k)+0.5)*wide-0.5), stripGround-float64(i)*rise)
		}
	}
	return path.String()
}
