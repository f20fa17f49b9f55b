package sure

import (
	"cmp"
	"fmt"
	"math"

	"duskweight/internal/model/search"
	"duskweight/web/page"
)

// sureMoves is which input moves the answer of one variant most, as bars and as a table.
type sureMoves struct {
	Name, Say string
	Height    string
	Bars      []moveBar
	Rows      [][]string
}

type moveBar struct{ Y, TextY, Width, TextX, Label, Text string }

// moveWords say an input, and which way its more goes.
var moveWords = map[string]string{
	"sun":    "Light of the twelve means",
	"panels": "Power of the panels",
	"lamps":  "What lamps and devices take",
	"idle":   "What uses power all the time",
}

// moveName says the input of a move.
func moveName(m search.Move) string { return cmp.Or(m.Say, moveWords[m.Input]) }

// The paper of the bars, in its own units: labels stand over their bars.
const (
	moveRow  = 40.0
	moveWide = 250.0
)

func movesOf(s search.Sure) (out []sureMoves) {
	for _, c := range s.Variants {
		if len(c.Moves) > 0 {
			out = append(out, movesView(c, s.Years))
		}
	}
	return out
}

func movesView(c search.Certain, years int) sureMoves {
	chance := search.ByChance(years)
	v := sureMoves{Name: page.OrUnnamed(c.Name)}
	switch top := c.Moves[0]; {
	case c.Share.Best == c.Share.Worst:
		v.Say = "The answer is the same in every year, so nothing moves it."
	case top.Share <= chance:
		v.Say = fmt.Sprintf("No input stands out: the weather decides, or %s years are too few to tell.", page.Thousands(years))
	default:
		way := "More of it serves less."
		if top.More {
			way = "More of it serves more."
		}
		v.Say = fmt.Sprintf("%s moves the answer most: %s of the order of the years goes with it. %s", moveName(top), wholePercent(top.Share), way)
	}
	at := func(x float64) string { return fmt.Sprintf("%.1f", x) }
	for i, m := range c.Moves {
		y := float64(i) * moveRow
		v.Bars = append(v.Bars, moveBar{Y: at(y + 18), TextY: at(y + 13), Width: at(max(1, m.Share*moveWide)), TextX: at(max(1, m.Share*moveWide) + 6), Label: moveName(m), Text: wholePercent(m.Share)})
		sign := "less"
		if m.More {
			sign = "more"
		}
		if m.Share <= chance {
			sign = "cannot be told"
		}
		v.Rows = append(v.Rows, []string{moveName(m), moveRange(m), wholePercent(m.Share), sign})
	}
	v.Height = at(float64(len(c.Moves)) * moveRow)
	return v
}

// moveRange is an input's range in words; a mass has the range of how each piece was weighed.
func moveRange(m search.Move) string {
	if m.Range != "" {
		return m.Range
	}
	return fmt.Sprintf("−%.0f to +%.0f %%", 100*(1-m.Low), 100*(m.High-1))
}

func wholePercent(x float64) string { return fmt.Sprintf("%.0f %%", math.Round(100*x)) }
