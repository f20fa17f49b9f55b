package sure

import (
	"fmt"
	"math"

	"duskweight/internal/draw"
	"duskweight/internal/model/search"
	"duskweight/internal/model/unit"
	"duskweight/web/page"
)

// beside is what the picture shows beside the years; each nil where there is none.
type beside struct {
	band    *search.Sure // made years behind weather files
	typical *search.Sure // the own year of a typical file
}

// picture is every variant on one axis of full nights, drawn twice: for a wide screen and for a narrow one.
type picture struct {
	Wide, Narrow string
	Key          []keyLine
}

// keyLine says what a sign of the picture is.
type keyLine struct{ Sign, Say string }

// pictureOf draws the years of each variant.
func pictureOf(s search.Sure, by beside) picture {
	n := nightsOf(s, by)
	if len(n.Each) == 0 {
		return picture{}
	}
	v := picture{Wide: n.Draw(false), Narrow: n.Draw(true)}
	made, real, ring := 0, 0, false
	for _, one := range n.Each {
		made, real, ring = max(made, len(one.Made)), max(real, len(one.Real)), ring || one.Ring > 0
	}
	if made > 0 {
		v.Key = append(v.Key, keyLine{"dot", dotSay(made)})
	}
	if real > 0 {
		v.Key = append(v.Key, keyLine{"stroke", "one weather file"})
	}
	if ring {
		v.Key = append(v.Key, keyLine{"ring", "the file’s own year; its months were chosen as ordinary"})
	}
	return v
}

// dotSay says what a dot is.
func dotSay(years int) string {
	if per := draw.YearsADot(years); per > 1 {
		return fmt.Sprintf("up to %d made years", per)
	}
	return "one made year"
}

// nightsOf are the years of each variant that has any, ready to draw.
func nightsOf(s search.Sure, by beside) draw.YearNights {
	var n draw.YearNights
	n.Low, n.High = nightsScale(s, by)
	for i, c := range s.Variants {
		one := draw.NightsOfYears{Name: page.OrUnnamed(c.Name)}
		switch {
		case len(c.Nights) < 2:
			continue
		case c.Light.Best == 0:
			one.Say = "No night is full in any year."
		case c.Light.Worst == c.Light.Best && !differ(by.band, i):
			one.Say = fmt.Sprintf("%s full nights in every one of %s years.", unit.Whole(c.Light.Best), unit.Thousands(len(c.Nights)))
		default:
			one.Drawn = true
			one.Say = fmt.Sprintf("From %s full nights in the worst of %s years to %s in the best.", unit.Whole(c.Light.Worst), unit.Thousands(len(c.Nights)), unit.Whole(c.Light.Best))
			one.Bad, one.Usual, one.Good = float64(s.BadNights(c)), math.Round(c.Light.Usual), c.Light.Good
			one.Made = c.Nights
			if len(s.Real) > 0 {
				one.Made, one.Real, one.RealNames = nil, c.Nights, s.Real
				if by.band != nil {
					one.Made = by.band.Variants[i].Nights
				}
			}
			if by.typical != nil && len(by.typical.Variants[i].Nights) == 1 {
				one.Ring = by.typical.Variants[i].Nights[0]
				one.Say += fmt.Sprintf(" The ring is the file’s own year, %s nights.", unit.Whole(one.Ring))
			}
		}
		n.Each = append(n.Each, one)
	}
	return n
}

// differ reports whether the made years behind weather files differ for a variant.
func differ(band *search.Sure, i int) bool {
	return band != nil && band.Variants[i].Light.Worst < band.Variants[i].Light.Best
}

// nightsScale is the part of the axis that the variants need: tens, and at least twenty nights, so that one night more is no
// leap.
func nightsScale(s search.Sure, by beside) (low, high float64) {
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
