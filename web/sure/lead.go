package sure

import (
	"fmt"
	"math"

	"duskweight/internal/draw"
	"duskweight/internal/model/search"
	"duskweight/internal/model/unit"
	"duskweight/internal/model/year"
	"duskweight/web/form"
	"duskweight/web/page"
)

// leadOf is the variant that the page speaks of first: the one with the most full nights in a bad year, of equals the one with
// more in a usual year, then the first. ok is false where no variant has a year.
func leadOf(s search.Sure) (at int, ok bool) {
	at = -1
	for i, c := range s.Variants {
		if !c.WhyNot.IsZero() || len(c.Nights) == 0 {
			continue
		}
		if at < 0 || s.BadNights(c) > s.BadNights(s.Variants[at]) ||
			s.BadNights(c) == s.BadNights(s.Variants[at]) && c.Light.Usual > s.Variants[at].Light.Usual {
			at = i
		}
	}
	return max(at, 0), at >= 0
}

// leadView is what stands first on the page: a sentence, what follows it, four figures and the longest dark spell.
type leadView struct {
	Name   string // where there are several variants
	Title  string
	More   []string
	Facts  []page.FactView
	Spells []spellView
	Bright string // instead of spells
}

// spellView is the longest run of nights that are not full.
type spellView struct{ When, Say, Picture string }

// leadView prints the variant that the page speaks of first.
func (v *sureView) lead(s search.Sure, by beside, sys unit.System) {
	at, ok := leadOf(s)
	if !ok {
		return
	}
	c := s.Variants[at]
	var l leadView
	say := nineSay(c, s.Nights)
	if len(s.Real) > 0 {
		var rest string
		say, rest = realSays(c, s)
		if rest != "" {
			l.More = append(l.More, rest)
		}
	}
	l.Title = form.SentenceCase(say)
	if len(v.Rows) > 1 {
		l.Name = page.OrUnnamed(c.Name)
		l.Title = l.Name + ": " + say
	}
	lit := search.SpreadOf(c.Lit)
	if c.Light.Best > 0 {
		l.More = append(l.More, yearSay(c, s, lit, sys))
	}
	if by.band != nil && by.band.Variants[at].WhyNot.IsZero() {
		l.More = append(l.More, fmt.Sprintf("Of %s made years from the means of the files one in ten has fewer than %d.", unit.Thousands(by.band.Years), by.band.Variants[at].Nine))
	}
	l.Facts = figuresOf(c, s, lit, sys)
	l.spells(c)
	v.Lead = l
}

// figuresOf are four figures of one variant, each of a bad, a usual and a good year.
func figuresOf(c search.Certain, s search.Sure, lit search.Spread, sys unit.System) []page.FactView {
	missing := search.SpreadOf(c.Missing)
	percent := func(x float64) string { return unit.Percents.Number(x, sys) }
	bad := int(math.Ceil(c.Dark.Bad))
	dark := page.FactView{ID: "dark", Label: "Longest run of nights not full", Value: page.Counted(int(math.Round(c.Dark.Usual)), "night"), Note: "one year in ten: " + page.Itoa(bad)}
	if m := c.DarkMonth(); m > 0 && bad > 0 {
		dark.Note += ", most often in " + monthNames[m-1]
	}
	return []page.FactView{
		{ID: "full", Label: "Full nights of " + page.Itoa(s.Nights), Value: fmt.Sprintf("%d · %s · %s", s.BadNights(c), unit.Whole(c.Light.Usual), unit.Whole(math.Floor(c.Light.Good))), Note: "bad, usual, good year"},
		{ID: "energy", Label: "Energy of the nights", Value: fmt.Sprintf("%s · %s · %s %%", percent(lit.Bad), percent(lit.Usual), percent(lit.Good)), Note: "bad, usual, good year"},
		{ID: "missing", Label: "Missing energy a year", Value: unit.BigEnergies.Format(missing.Usual, sys), Note: "one year in ten: over " + unit.BigEnergies.Format(missing.Good, sys)},
		dark,
	}
}

var monthNames = [12]string{"January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"}

// spells are the longest dark spell of a usual and of a bad year.
func (l *leadView) spells(c search.Certain) {
	runs := search.SpreadOf(c.Of(func(g year.Gaps) int { return g.Runs }))
	if c.Dark.Worst == 0 && runs.Best == 0 {
		l.Bright = "Every night of every year is full."
		return
	}
	usual, bad := int(math.Round(c.Dark.Usual)), int(math.Ceil(c.Dark.Bad))
	for _, one := range []struct {
		when   string
		nights int
	}{{"Usual year", usual}, {"One year in ten", bad}} {
		say := page.Counted(one.nights, "night") + " in a row not full"
		if one.nights == 0 {
			say = "every night is full"
		}
		l.Spells = append(l.Spells, spellView{one.when, say, draw.Spell(one.nights, max(bad, usual)+1)})
	}
}
