package search

import "slices"

// LikeYears is from how many real years on one year in ten can be told.
const LikeYears = 9

// BadNights is the full nights of a bad year of one of the variants: of made years one in ten is worse; of n real ones the
// k-th worst, k = ⌊(n + 1)/10⌋, and of few of them the worst. It needs at least one year.
func (s Sure) BadNights(c Certain) int {
	if len(s.Real) == 0 {
		return c.Nine
	}
	sorted := slices.Sorted(slices.Values(c.Nights))
	return int(sorted[max(1, (len(sorted)+1)/10)-1])
}

// Alone is what the years come to for variant i by itself.
func (s Sure) Alone(i int) Sure {
	s.Variants, s.Pairs = s.Variants[i:i+1:i+1], nil
	return s
}
