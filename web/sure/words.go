package sure

import (
	"fmt"
	"math"

	"duskweight/internal/model/search"
	"duskweight/internal/model/unit"
	"duskweight/web/page"
)

// span names years: the first and the last, of two or more.
func span(years []string) string {
	if len(years) == 1 {
		return years[0]
	}
	return years[0] + " to " + years[len(years)-1]
}

// realSay is the headline of real years. Of n like years a new one is worse than the worst with the chance 1/(n + 1), and
// with nine years and more the k-th worst, k = ⌊(n + 1)/10⌋, is reached in 9 of 10: both are exact where years are alike.
func realSay(c search.Certain, s search.Sure) string {
	first, rest := realSays(c, s)
	if rest == "" {
		return first
	}
	return first + " " + rest
}

// realSays are the worst of real years, and what is to be expected of a new one; that is empty where no night is full.
func realSays(c search.Certain, s search.Sure) (first, rest string) {
	n := len(c.Nights)
	worst := 0
	for j, x := range c.Nights {
		if x < c.Nights[worst] {
			worst = j
		}
	}
	if c.Light.Best == 0 {
		return fmt.Sprintf("in none of %s is a night full.", page.Counted(n, "real year")), ""
	}
	if c.Light.Worst == c.Light.Best {
		first = fmt.Sprintf("in every one of %s %s of %d nights are full.", page.Counted(n, "real year"), unit.Whole(c.Light.Best), s.Nights)
	} else {
		first = fmt.Sprintf("of %s the worst has %s of %d full nights (%s).", page.Counted(n, "real year"), unit.Whole(c.Nights[worst]), s.Nights, s.Real[worst])
	}
	rest = fmt.Sprintf("A worse one comes about once in %d years.", n+1)
	if n >= search.LikeYears {
		rest += fmt.Sprintf(" In 9 of 10 years like these at least %d nights are full.", s.BadNights(c))
	}
	return first, rest
}

// yearSay tells a usual and a bad year: full nights, the share of the nights' energy, and the nights without light on end.
func yearSay(c search.Certain, s search.Sure, lit search.Spread, sys unit.System) string {
	text := fmt.Sprintf("A usual year has %s full nights and %s of the nights' energy", unit.Whole(c.Light.Usual), page.Share(lit.Usual, sys))
	if c.Dark.Best == 0 && c.Dark.Worst == 0 {
		return text + "."
	}
	if c.Dark.Bad == 0 {
		return text + fmt.Sprintf(". A bad year has %d.", s.BadNights(c))
	}
	return text + fmt.Sprintf(". A bad year has %d, and its longest run without a full night is %s.", s.BadNights(c), page.Counted(int(math.Ceil(c.Dark.Bad)), "night"))
}
