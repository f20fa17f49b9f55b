package sure

import (
	"fmt"
	"math"
	"net/url"
	"slices"
	"strings"
	"time"

	"duskweight/internal/model"
	"duskweight/internal/model/search"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/internal/model/year"
	"duskweight/internal/say"
	"duskweight/web/form"
	"duskweight/web/page"
)

// sureView is what many years come to, ready to print.
type sureView struct {
	Say      string
	In       string // what years they are, as a heading
	URL      string // of this page without the question
	Years    string // as asked, for the form
	Choices  []page.CompareChoice
	Compare  string
	Empty    string // instead of everything below
	Rows     []sureRow
	Lacks    []string // variants without a year, and stores that give nothing back
	Pairs    []string
	Lead     leadView
	Picture  picture
	Moves    []sureMoves
	Later    string // where the moves come from, when the page has none of its own
	Place    string // of the project, and its load
	Load     string
	Parts    bool
	Real     bool   // years of weather files, as they were
	CSV      string // address of all years
	Took     string
	NotKnown string
	Other    form.LinkView // the same years with or without parts that differ
	More     form.LinkView // the same with another number of years
}

type sureRow struct {
	Name, Bad, Usual, Good string
	Share, Missing         string
	Dark, Gaps, Month      string
	Nine, Year             string
}

// sureOf prints what the years come to.
func sureOf(s search.Sure, by beside, p model.Project, sys unit.System) sureView {
	v := sureView{In: "In many years"}
	for _, c := range s.Variants {
		if !c.WhyNot.IsZero() {
			v.Lacks = append(v.Lacks, fmt.Sprintf("%s: no year can be run, because %s.", page.OrUnnamed(c.Name), c.WhyNot.In(sys)))
		}
		for _, w := range c.Without {
			v.Lacks = append(v.Lacks, fmt.Sprintf("%s counts without one of its stores, which gives nothing back. %s.", page.OrUnnamed(c.Name), strings.Trim(w, " :.")))
		}
		if c.Unready > 0 {
			v.Lacks = append(v.Lacks, fmt.Sprintf("%s: %s did not end as they began. Their numbers are rough.", page.OrUnnamed(c.Name), page.Counted(c.Unready, "year")))
		}
	}
	switch {
	case len(s.Variants) == 0:
		v.Empty = "There is no variant to try yet."
		return v
	case !s.WhyOne.IsZero() && s.Years == 1 && s.Nights > 0:
		v.Empty = "There is one year only: " + s.WhyOne.In(sys) + ". So there is no bad and no good year. The numbers of that one year are on the page Compare."
		return v
	case s.Nights == 0:
		v.Empty = "No year can be run yet: " + s.WhyOne.Or(say.Words("no night has lamps or devices")).In(sys) + "."
		return v
	}
	v.Parts, v.Real = s.Parts, len(s.Real) > 0
	v.In = fmt.Sprintf("In %s made years", unit.Thousands(s.Years))
	if v.Real {
		v.In = "In " + page.Counted(s.Years, "real year")
	}
	v.Say = fmt.Sprintf("%s made years of weather, from the same monthly means and the same for every variant. Each has %d nights that count.", unit.Thousands(s.Years), s.Nights)
	switch typical := p.Place.Sky == sun.SkyFile; {
	case len(s.Real) > 0:
		v.Say = fmt.Sprintf("%s of weather files, %s, each as it was. Each has %d nights that count.", page.Counted(s.Years, "real year"), span(s.Real), s.Nights)
	case typical && s.WhyOne.IsZero():
		v.Say = fmt.Sprintf("%s made years of weather, from the means of a typical year, which hides bad ones. Each has %d nights that count.", unit.Thousands(s.Years), s.Nights)
	}
	if !s.WhyOne.IsZero() {
		v.Say = fmt.Sprintf("%s draws of the parts, all with the same weather: %s. Each has %d nights that count.", unit.Thousands(s.Years), s.WhyOne.In(sys), s.Nights)
	}
	if s.Parts {
		v.Say += " Sunlight, parts and use are drawn anew for each year, within the ranges below."
	}
	if p.Place.Sky == sun.SkyDescribed {
		v.Say += " Rough: the sky is only described in words."
	}
	for _, c := range s.Variants {
		if c.WhyNot.IsZero() {
			v.Rows = append(v.Rows, sureRowOf(c, s, sys))
		}
	}
	v.Pairs = pairsSaid(s)
	v.NotKnown = notKnown(s)
	v.Picture = pictureOf(s, by)
	v.lead(s, by, sys)
	return v
}

// notKnown is what no number of years tells, and how far their range was found to hold.
func notKnown(s search.Sure) string {
	switch {
	case s.Parts:
		return "how good the means are, haze and dirt, snow on the panel, the next decades. The strength of parts is never varied."
	case len(s.Real) > 0:
		return "haze and dirt, snow on the panel, the next decades. These are past years of this place; parts count exactly as typed."
	}
	return "how good the means are, haze and dirt, snow on the panel, the next decades. Tested on 450 real years: the range held about 8 of 10, at some places only half. Parts count exactly as you typed them."
}

// pairsSaid compares every pair of variants whose years are known, in words.
func pairsSaid(s search.Sure) []string {
	var out []string
	for a := range s.Variants {
		for b := a + 1; b < len(s.Variants); b++ {
			if s.Pairs[a][b].Years > 0 && s.Variants[a].WhyNot.IsZero() && s.Variants[b].WhyNot.IsZero() {
				out = append(out, pairSay(s.Variants[a].Name, s.Variants[b].Name, s.Pairs[a][b]))
			}
		}
	}
	return out
}

// sureRowOf prints a bad year rounded down, so that what is promised is reached.
func sureRowOf(c search.Certain, s search.Sure, sys unit.System) sureRow {
	whole := unit.Whole
	share := func(x float64) string { return page.Share(x, sys) }
	lit, missing, gaps := search.SpreadOf(c.Lit), search.SpreadOf(c.Missing), search.SpreadOf(c.Of(func(g year.Gaps) int { return g.Runs }))
	row := sureRow{
		Name: page.OrUnnamed(c.Name), Bad: fmt.Sprint(s.BadNights(c)), Usual: whole(c.Light.Usual), Good: whole(c.Light.Good),
		Share:   fmt.Sprintf("%s, %s, %s", share(lit.Bad), share(lit.Usual), share(lit.Good)),
		Missing: fmt.Sprintf("%s, %s", unit.BigEnergies.Format(missing.Usual, sys), unit.BigEnergies.Format(missing.Good, sys)),
		Dark:    fmt.Sprintf("%s, %s", whole(c.Dark.Usual), whole(math.Ceil(c.Dark.Bad))),
		Gaps:    fmt.Sprintf("%s, %s", whole(gaps.Usual), whole(math.Ceil(gaps.Good))),
		Month:   "–",
	}
	if m := c.DarkMonth(); m > 0 {
		row.Month = form.MonthNames[m-1]
	}
	row.Nine = row.Name + ": " + nineSay(c, s.Nights)
	if len(s.Real) > 0 {
		row.Nine = row.Name + ": " + realSay(c, s)
	}
	if c.Light.Best > 0 {
		row.Year = yearSay(c, s, lit, sys)
	}
	return row
}

// nineSay is the headline of a variant: how many nights are full in 9 of 10 made years.
func nineSay(c search.Certain, nights int) string {
	switch {
	case c.Light.Best == 0:
		return "no night is full in any year."
	case c.Light.Worst == c.Light.Best:
		return fmt.Sprintf("in every made year %s of %d nights are full.", unit.Whole(c.Light.Best), nights)
	case c.Nine == 0:
		return fmt.Sprintf("a bad year may have no full night; a good one has %s of %d.", unit.Whole(c.Light.Good), nights)
	case c.Nine == nights:
		return "in 9 of 10 made years every night is full."
	}
	return fmt.Sprintf("in 9 of 10 made years at least %d of %d nights are full.", c.Nine, nights)
}

// pairSay tells how often one variant has more full nights than another, the better one first.
func pairSay(a, b string, v search.Versus) string {
	a, b = page.OrUnnamed(a), page.OrUnnamed(b)
	if v.Less > v.More {
		a, b = b, a
		v.More, v.Less = v.Less, v.More
	}
	n := unit.Thousands(v.Years)
	switch {
	case v.Same == v.Years:
		return fmt.Sprintf("In every one of %s years, %s and %s have the same number of full nights.", n, a, b)
	case v.More == v.Years:
		return fmt.Sprintf("In all %s years, %s has more full nights than %s: a chance above %s.", n, a, b, unit.Rounded(100*(1-v.Bound()), 3)+unit.Space+"%")
	case v.More == v.Less:
		return fmt.Sprintf("Neither is better: in %s of %s years, %s has more full nights than %s, in as many it has fewer, and in %s the same.", unit.Thousands(v.More), n, a, b, unit.Thousands(v.Same))
	}
	return fmt.Sprintf("In %s of %s years, %s has more full nights than %s. In %s of the years both have the same number, and in %s the first has fewer. The chance is %s, plus or minus %s.",
		unit.Thousands(v.More), n, a, b, unit.Thousands(v.Same), unit.Thousands(v.Less), unit.PercentTo(v.Chance(), v.Places()), unit.PercentTo(v.Error(), v.Places()))
}

// choose fills in what can be chosen, and the links to the other number of years and to the other kind.
func (v *sureView) choose(here string, a sureAsked) {
	base := page.ProjectURL(a.project.ID)
	v.URL, v.Years, v.Compare, v.Parts = here, page.Itoa(a.n), base+"/compare", a.parts
	v.Place, v.Load = base+"/place", base+"/load"
	q := a.query(a.n)
	if len(q["v"]) > 0 {
		v.Compare += "?" + url.Values{"v": q["v"]}.Encode()
	}
	for _, c := range a.all {
		v.Choices = append(v.Choices, page.CompareChoice{ID: fmt.Sprint(c.ID), Name: c.Value.Name, Chosen: slices.Contains(q["v"], fmt.Sprint(c.ID))})
	}
	usual := a.project.Value.MadeYears()
	other := manyYears
	if a.n == manyYears {
		other = usual
	}
	v.More = form.LinkView{Text: "Try " + unit.Thousands(other) + " years", URL: here + "?" + a.query(other).Encode()}
	a.parts = !a.parts
	v.Other = form.LinkView{Text: "Let sunlight, parts and use differ too", URL: here + "?" + a.query(usual).Encode()}
	if v.Parts {
		v.Other.Text = "Only the weather differs"
	}
}

// timed says how long it took, and about how long the other number will take.
func (v *sureView) timed(n int, took time.Duration) {
	v.Took = fmt.Sprintf("These %s years took %s.", unit.Thousands(n), seconds(took))
	if n < manyYears && n > 0 {
		v.More.Text += ", about " + seconds(took*manyYears/time.Duration(n))
	}
}

func seconds(d time.Duration) string {
	return unit.Rounded(max(0.01, d.Seconds()), 2) + " s"
}
