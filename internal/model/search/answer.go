package search

import (
	"math"
	"slices"

	"duskweight/internal/model"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/internal/model/year"
)

// Answers turns many years, with their Weather, into what other programs read: one for each variant in their order, nil
// where a variant's year is not known.
func (s Sure) Answers(p model.Project) []*model.YearsAnswer {
	out := make([]*model.YearsAnswer, len(s.Variants))
	for i, c := range s.Variants {
		if len(c.Skies) > 0 && s.Nights > 0 {
			out[i] = c.answer(p)
		}
	}
	return out
}

// year is the year of a weather file that says it.
func (w Weather) year() *int {
	if y, ok := w.Year.Value(); ok {
		return new(int(y))
	}
	return nil
}

func (c Certain) answer(p model.Project) *model.YearsAnswer {
	longest := c.Of(func(g year.Gaps) int { return 24 * g.Longest })
	gaps := c.Of(func(g year.Gaps) int { return g.Runs })
	long := c.Of(func(g year.Gaps) int { return g.Long })
	whole := func(x float64) float64 { return x }
	nights := func(x float64) float64 { return 24 * math.Ceil(x/24) }
	of, basis := basisOf(p)
	a := &model.YearsAnswer{
		Of: of, N: len(c.Nights), Basis: basis,
		Nights:     quantiles(c.Nights, math.Floor),
		NightShare: quantiles(c.Lit, whole),
		Unmet:      quantiles(c.Missing, whole),
		LongestGap: quantiles(longest, nights),
		Gaps:       quantiles(gaps, math.Ceil),
		Gaps3:      quantiles(long, math.Ceil),
	}
	if m := c.DarkMonth(); m > 0 {
		a.FirstMonth = &m
	}
	for j := range c.Nights {
		a.Each = append(a.Each, model.YearAnswer{
			Year: c.Skies[j].year(),
			GHI:  c.Skies[j].Months, Plane: c.Skies[j].Plane, Nights: int(c.Nights[j]), NightShare: c.Lit[j], Unmet: unit.Energy(c.Missing[j]),
			LongestGap: int(longest[j]), Gaps: int(gaps[j]), Gaps3: int(long[j]),
		})
	}
	return a
}

// basisOf says what the years of a project are and what they rest on.
func basisOf(p model.Project) (model.YearsOf, model.YearsBasis) {
	files := p.Files()
	switch p.Place.Sky {
	case sun.SkyDescribed:
		return model.YearsMade, model.BasisDescribed
	case sun.SkyFile, sun.SkyFiles:
		if len(files) > 0 && oneYear(p).IsZero() && (p.Place.Sky == sun.SkyFile || len(files) == 1) {
			return model.YearsMade, model.BasisTypical
		}
		return model.YearsFiles, model.BasisReal
	}
	return model.YearsMade, model.BasisMeans
}

// quantiles of values, rounded to what can be counted.
func quantiles(values []float64, rounded func(float64) float64) model.Quantiles {
	v := slices.Sorted(slices.Values(values))
	at := func(p float64) float64 { return rounded(Quantile(v, p)) }
	return model.Quantiles{P10: at(bad), P50: at(usual), P90: at(good), Least: v[0], Most: v[len(v)-1]}
}
