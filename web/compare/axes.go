package compare

import (
	"fmt"
	"math"
	"strings"

	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/search"
	"duskweight/internal/model/unit"
	"duskweight/web/page"
)

// The first thing on the page: a row for each variant, its main numbers on the same axes.

// The columns, in their order.
const (
	nightsAxis = iota
	shareAxis
	costAxis
	lifeAxis
	useAxis
)

// axis is one column, with the words at its ends.
type axis struct{ Name, Note, Top string }

// measure is one number of one variant.
type measure struct {
	Picture, Value, Note string
	Best                 bool
}

// onScale is a number before it is drawn; it is drawn when the axis is known.
type onScale struct {
	draw.Span
	value, note string
}

// axesView are the variants on the same axes.
type axesView struct {
	Headline, Say string
	Axes          []axis
	Rows          [][]measure // of each variant
	Verdicts      []string    // of each variant
}

// axesOf draws the variants beside one another.
func axesOf(names []string, rs []model.VariantResult, years []search.Sure, currency string) axesView {
	columns := [][]onScale{nightSpans(rs, years), shareSpans(rs), costSpans(rs, currency), lifeSpans(rs), useSpans(rs)}
	v := axesView{Axes: []axis{{Name: "Full nights", Note: "of 365"}, {Name: "Energy", Note: "share of the energy that the nights need"}, {Name: "Parts", Note: strings.TrimPrefix(currency+", all that are listed", ", ")}, {Name: "Life", Note: "years of the store that wears out first"}, {Name: "Breaks first", Note: "the dashed line is the limit"}},
		Rows: make([][]measure, len(rs))}
	for c, column := range columns {
		top := topOf(c, column)
		v.Axes[c].Top = []string{"365", "100" + unit.Space + "%", page.MoneyText(unit.Money(top), currency), page.Counted(int(math.Ceil(top)), "year"), unit.Rounded(top, 2) + unit.Space + "×"}[c]
		best := bestOf(column, c == nightsAxis || c == shareAxis || c == lifeAxis)
		for i, m := range column {
			m.Top = top
			v.Rows[i] = append(v.Rows[i], measure{Picture: m.Draw(), Value: m.value, Note: m.note, Best: i == best && c != useAxis})
		}
	}
	for _, r := range rs {
		v.Verdicts = append(v.Verdicts, r.Verdict)
	}
	v.Headline, v.Say = bestInWords(names, columns[nightsAxis], columns[costAxis])
	return v
}

// topOf is the end of a column's axis.
func topOf(column int, all []onScale) float64 {
	top := []float64{365, 1, 0, 0, 1.25}[column]
	if column == nightsAxis || column == shareAxis {
		return top
	}
	const most = 2.5 // times the limit: what is past it has a break mark
	for _, m := range all {
		if m.Known {
			top = math.Max(top, m.High)
		}
	}
	if column == useAxis {
		top = math.Min(top, most)
	}
	if column == lifeAxis {
		top = math.Ceil(top)
	}
	if top <= 0 {
		top = 1
	}
	return top
}

// bestOf is the place of the best that is known; −1 where fewer than two are known or the best are equal.
func bestOf(all []onScale, highest bool) int {
	best, n, equal := -1, 0, false
	for i, m := range all {
		if !m.Known {
			continue
		}
		n++
		switch {
		case best < 0 || highest && m.Usual > all[best].Usual || !highest && m.Usual < all[best].Usual:
			best, equal = i, false
		case m.Usual == all[best].Usual:
			equal = true
		}
	}
	if n < 2 || equal {
		return -1
	}
	return best
}

// bestInWords names the best for a purpose, only of those whose number is known.
func bestInWords(names []string, nights, cost []onScale) (headline, more string) {
	light, cheap := bestOf(nights, true), bestOf(cost, false)
	if light < 0 {
		headline = "None of them is better at night than the others"
	} else {
		headline = "For lamps at night: “" + names[light] + "”, " + nights[light].value + " full nights"
	}
	priced := 0
	for _, m := range cost {
		if m.Known {
			priced++
		}
	}
	switch {
	case cheap >= 0 && cheap == light:
		more = fmt.Sprintf("It costs least of the %d that have a price.", priced)
	case cheap >= 0:
		more = fmt.Sprintf("“%s” costs least of the %d that have a price.", names[cheap], priced)
	case priced < 2:
		more = "Which variant costs least is not known: fewer than two have a price for every part."
	}
	return headline + ".", more
}

// nightSpans are the full nights of a bad, a usual and a good year, or those of the average year where no other was worked out.
func nightSpans(rs []model.VariantResult, years []search.Sure) []onScale {
	out := make([]onScale, len(rs))
	for i, r := range rs {
		usual, bad, _, is := page.NightsOf(years[i])
		switch {
		case is:
			good := int(math.Floor(years[i].Variants[0].Light.Good))
			out[i] = onScale{draw.Span{Low: float64(bad), Usual: float64(usual), High: float64(max(usual, good)), Known: true}, fmt.Sprint(usual), fmt.Sprintf("bad year %d, good year %d", bad, good)}
		case r.YearKnown && r.Open.IsZero():
			n := float64(r.Last.NightsFull)
			out[i] = onScale{draw.Span{Low: n, Usual: n, High: n, Known: true}, fmt.Sprint(r.Last.NightsFull), "average year"}
		default:
			out[i] = onScale{value: "not known"}
		}
	}
	return out
}

func shareSpans(rs []model.VariantResult) []onScale {
	out := make([]onScale, len(rs))
	for i, r := range rs {
		out[i] = onScale{value: "not known"}
		if s, ok := r.Year.ServedShare.Value(); ok && r.YearKnown && r.Open.IsZero() {
			out[i] = onScale{draw.Span{Low: float64(s), Usual: float64(s), High: float64(s), Known: true}, page.Share(float64(s), unit.Metric), "average year"}
		}
	}
	return out
}

func costSpans(rs []model.VariantResult, currency string) []onScale {
	out := make([]onScale, len(rs))
	for i, r := range rs {
		out[i] = onScale{value: "not known", note: fmt.Sprintf("%d of %d priced", r.Cost.Priced, r.Cost.Parts)}
		if c, ok := r.Cost.Capital.Value(); ok {
			out[i] = onScale{draw.Span{Low: float64(c), Usual: float64(c), High: float64(c), Known: true}, page.MoneyText(c, currency), ""}
		}
	}
	return out
}

// lifeSpans are the years until the store that wears out first is replaced: of the stores for which a life is worked out, the
// one with the shortest. One life that is not known leaves the shortest not known.
func lifeSpans(rs []model.VariantResult) []onScale {
	out := make([]onScale, len(rs))
	for i, r := range rs {
		out[i] = onScale{value: "not known", note: "no store here has a life that is worked out"}
		var first *cost.Lifetime
		name, open := "", ""
		for _, s := range r.Stores {
			for _, l := range s.Part.Lives() {
				switch {
				case !l.Usual.Is:
					open = page.OrUnnamed(s.Name)
				case first == nil || l.Usual.Val < first.Usual.Val:
					first, name = &l, page.OrUnnamed(s.Name)
				}
			}
		}
		switch {
		case open != "":
			out[i].note = open
		case first != nil:
			in := func(d unit.Known[unit.Duration]) float64 {
				return float64(d.Or(first.Usual.Val)) / float64(365*unit.Day)
			}
			low, usual, high := in(first.Low), in(first.Usual), in(first.High)
			out[i] = onScale{draw.Span{Low: low, Usual: page.RoundTo(usual, 2), High: math.Max(high, page.RoundTo(usual, 2)), Known: true}, unit.Rounded(usual, 2) + " years", unit.Rounded(low, 2) + " to " + unit.Rounded(high, 2) + ": " + name}
		}
	}
	return out
}

// useSpans are what is asked of the part that breaks first over what it has.
func useSpans(rs []model.VariantResult) []onScale {
	out := make([]onScale, len(rs))
	for i, r := range rs {
		out[i] = onScale{Span: draw.Span{Known: true, Limit: 1}, value: "nothing hangs"}
		for _, s := range r.Stores {
			c, ok := s.Part.First()
			if !ok {
				continue
			}
			out[i] = onScale{value: "not known", note: c.Part}
			if u, ok := c.Use.Value(); ok {
				out[i] = onScale{draw.Span{Low: float64(u), Usual: float64(u), High: float64(u), Limit: 1, Bad: c.Word == path.GivesWay, Known: true}, page.UseText(float64(u)), c.Part}
			}
			break
		}
	}
	return out
}
