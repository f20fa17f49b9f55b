package search

import (
	"context"
	"math"
	"strconv"

	"duskweight/internal/model"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/internal/model/year"
	"duskweight/internal/say"
)

// Sure is what many weather years of one place come to, the same years for every variant.
type Sure struct {
	Years    int          // that were run
	Real     []string     // the years of weather files, by name, that were run as they are; empty where years are made
	Nights   int          // that count, in each year; 0 where nothing is asked of them
	Parts    bool         // inputs were drawn within their tolerances too
	WhyOne   say.Sentence // why there is only one year; nothing where there are many
	Variants []Certain    // in the order asked
	Pairs    [][]Versus   // [a][b]: how often a is better than b; empty against itself, and where a year is not known
}

// Certain is one variant over the years. The slices hold one value for each year, in the order of the years.
type Certain struct {
	Name    string
	WhyNot  say.Sentence // why its year is not known; nothing below holds then
	Without []string     // its stores that give nothing back, each with why
	Unready int          // years that did not end as they began

	Nights  []float64   // that are full
	Outage  []float64   // longest, hours
	Served  []float64   // share of lamps and devices served
	Lit     []float64   // share of what the nights want that is there
	Missing []float64   // J, of all that is wanted
	Gaps    []year.Gaps // runs of nights that are not full
	Skies   []Weather   // of each year, on this variant's panels; empty where nobody asked

	Light  Spread // of Nights
	Longer Spread // of Outage: Bad is the long one
	Share  Spread // of Served
	Dark   Spread // nights of the longest gap: Bad is the long one
	Moves  []Move // with Parts: which input moves Served most, that one first

	Nine int // in 9 of 10 made years at least so many nights are full
}

// Spread is a bad, a usual and a good year, and the two ends.
type Spread struct{ Worst, Bad, Usual, Good, Best float64 }

// Weather is the light of one year.
type Weather struct {
	Year   unit.Known[unit.Count] // of a weather file that says it
	Months [12]unit.Irradiation   // on the flat
	Plane  unit.Irradiation       // on a variant's panels, mean over their power
}

// bad, usual, good are the shares of years below: in one year of ten it is worse than bad.
const bad, usual, good = 0.1, 0.5, 0.9

// Run is many years of a project in the making: it grows by Until and can be looked at in between.
type Run struct {
	Weather bool // asks for the light of every year too, Certain.Skies; it costs a tenth more

	bench  *bench
	files  []*sun.Series // each one year, in their order; nil where years are made
	parts  bool          // inputs differ within their tolerances too
	briefs [][]outcome
}

// outcome is what a weather year comes to for one variant.
type outcome struct {
	year.Brief
	sky Weather
}

// NewRun makes a project ready for many weather years, made year j of the project's seed, the same for all
// variants (common random numbers). parts says that inputs are drawn within their Tolerances too: draw j is weather year j
// with tolerance draw j, and the whole variant is worked out anew. Without it, stores are those of the variant's own
// settled plan year, so that a battery's share for fast drawing is that of the plan year; a motor straight on the
// panels is run anew in each year's light. Weather files are run each as it is, settled by itself; one file of a real year
// is one year only, and one of a typical year has years made from its means.
func NewRun(project model.Project, variants []model.Variant, parts bool) *Run {
	r := &Run{bench: newBench(project, variants), parts: parts}
	if files := project.Files(); project.Place.Sky == sun.SkyFiles && len(files) > 1 {
		r.files = sun.InOrder(files)
	}
	return r
}

// Until runs the years up to n by so many workers side by side; the numbers are the same to the last bit for any number of
// workers and of steps. progress, where given, is told how many years are done, one call at a time. It stops when the
// context ends, and then holds what it held before.
func (r *Run) Until(ctx context.Context, n, workers int, progress func(done int)) error {
	if r.files != nil && !r.parts {
		return r.untilFile(ctx, min(n, len(r.files)), progress)
	}
	if r.bench.climate == nil && !r.parts {
		n = 1
	}
	from := len(r.briefs)
	if n <= from {
		return nil
	}
	more := make([][]outcome, n-from)
	if r.bench.ground.Sky != nil {
		run := (*worker).year
		if r.parts {
			run = (*worker).draw
		}
		if err := r.bench.runAll(ctx, more, from, max(1, workers), r.Weather, run, progress); err != nil {
			return err
		}
	}
	r.briefs = append(r.briefs, more...)
	return nil
}

// untilFile runs the weather files up to n, each as a project with that file alone.
func (r *Run) untilFile(ctx context.Context, n int, progress func(done int)) error {
	for j := len(r.briefs); j < n; j++ {
		p := r.bench.ground.Project
		p.Place.Sky, p.Weather, p.Weathers = sun.SkyFile, r.files[j], nil
		one := Run{Weather: r.Weather, bench: newBench(p, r.bench.variants)}
		one.bench.climate = nil // the file's own year
		if err := one.Until(ctx, 1, 1, nil); err != nil {
			return err
		}
		r.briefs = append(r.briefs, one.briefs[0])
		if progress != nil {
			progress(j + 1)
		}
	}
	return nil
}

// Sure is what the years so far come to; at least one.
func (r *Run) Sure() Sure {
	b := r.bench
	out := Sure{Years: len(r.briefs), Real: r.named(), WhyOne: b.whyOne, Nights: b.ground.Load.Nights, Parts: r.parts}
	if b.ground.Sky != nil && b.ground.Load.ApplianceYear <= 0 { // a night that asks for nothing does not count as lit
		out.Nights, out.WhyOne = 0, say.Sentence{}
	}
	for i, p := range b.plans {
		c := p.over(r.briefs, i)
		if r.Weather && p.demand != nil {
			for _, b := range r.briefs {
				c.Skies = append(c.Skies, b[i].sky)
			}
		}
		out.Variants = append(out.Variants, c)
	}
	out.Pairs = pairs(out.Variants)
	if r.parts && len(r.briefs) > 1 {
		r.move(&out)
	}
	return out
}

// named are the names of the weather files that were run as they are.
func (r *Run) named() (out []string) {
	if r.parts {
		return nil
	}
	for _, f := range r.files[:min(len(r.files), len(r.briefs))] {
		if y, ok := f.Year.Value(); ok {
			out = append(out, strconv.Itoa(int(y)))
		} else {
			out = append(out, f.Name)
		}
	}
	return out
}

// move fills in which input moves each variant's answer most.
func (r *Run) move(out *Sure) {
	factors := map[string][]float64{}
	all := Tolerances()
	for _, t := range all {
		for j := range r.briefs {
			factors[t.Name] = append(factors[t.Name], t.Factor(r.bench.seed, j))
		}
	}
	for i := range out.Variants {
		c := &out.Variants[i]
		if len(c.Served) == 0 {
			continue
		}
		var there []Tolerance
		for _, t := range all {
			if t.touches(r.bench.ground.Project, r.bench.variants[i]) {
				there = append(there, t)
			}
		}
		c.Moves = moves(there, factors, c.Served)
	}
}

// Years runs n weather years of a project for every variant: NewRun, Until and Sure at one go.
func Years(ctx context.Context, project model.Project, variants []model.Variant, n, workers int, progress func(done int)) (Sure, error) {
	r := NewRun(project, variants, false)
	if err := r.Until(ctx, max(1, n), workers, progress); err != nil {
		return Sure{}, err
	}
	return r.Sure(), nil
}

// over gathers the years of plan i.
func (p plan) over(briefs [][]outcome, i int) Certain {
	c := p.certain
	if p.demand == nil {
		return c
	}
	for _, b := range briefs {
		c.Nights = append(c.Nights, float64(b[i].NightsFull))
		c.Outage = append(c.Outage, float64(b[i].LongestOutage))
		c.Served = append(c.Served, b[i].ServedShare)
		c.Lit, c.Missing = append(c.Lit, b[i].NightShare), append(c.Missing, float64(b[i].Unmet))
		c.Gaps = append(c.Gaps, b[i].Gaps)
		if !b[i].Settled {
			c.Unready++
		}
	}
	c.Light, c.Share = SpreadOf(c.Nights), SpreadOf(c.Served)
	c.Longer, c.Dark = SpreadOf(c.Outage).turned(), SpreadOf(c.Of(func(g year.Gaps) int { return g.Longest })).turned()
	c.Nine = int(math.Floor(c.Light.Bad))
	return c
}

// Of is a number of the gaps of every year.
func (c Certain) Of(what func(year.Gaps) int) []float64 {
	out := make([]float64, len(c.Gaps))
	for j, g := range c.Gaps {
		out[j] = float64(what(g))
	}
	return out
}

// DarkMonth is the month in which the longest gap of a year begins most often, 1 to 12, the first of equals; 0 where no
// year has a gap. A night belongs to the evening with which it begins.
func (c Certain) DarkMonth() int {
	var begins [13]int
	for _, g := range c.Gaps {
		if g.Longest > 0 {
			begins[sun.MonthOf((g.From+sun.Days-1)%sun.Days)]++
		}
	}
	most := 0
	for month, n := range begins {
		if n > begins[most] {
			most = month
		}
	}
	return most
}
