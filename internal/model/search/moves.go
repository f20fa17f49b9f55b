package search

import (
	"math"
	"slices"
	"sort"
)

// Move is how much of a variant's answer goes with one input over the draws.
type Move struct {
	Input     string  // the tolerance's name
	Say       string  // its words; empty for what all variants have
	Range     string  // its range in words, where that is not Low to High
	Low, High float64 // its range, as factors
	Share     float64 // squared rank correlation with the share of lamps and devices served, 0 to 1
	More      bool    // more of the input serves more
}

// moves works out which of the inputs that a variant has moves its answer most; that one stands first.
func moves(there []Tolerance, factors map[string][]float64, served []float64) (out []Move) {
	for _, t := range there {
		r := RankCorrelation(factors[t.Name], served)
		out = append(out, Move{t.Name, t.Say, t.Range, t.Low, t.High, r * r, r > 0})
	}
	slices.SortStableFunc(out, func(a, b Move) int {
		switch {
		case a.Share > b.Share:
			return -1
		case a.Share < b.Share:
			return 1
		}
		return 0
	})
	return out
}

// ByChance is the squared rank correlation that 5 of 100 pairs of rows with nothing in common pass: 1.96²/(n − 1), since
// the correlation of chance has variance 1/(n − 1) (source.Hotelling).
func ByChance(n int) float64 { return min(1, 1.96*1.96/float64(max(1, n-1))) }

// RankCorrelation returns Spearman's ρ of two rows of equal length: the correlation of their ranks, equal values sharing
// the mean of theirs (source.Spearman). 0 where a row is all the same.
func RankCorrelation(a, b []float64) float64 {
	x, y := ranks(a), ranks(b)
	mean := float64(len(a)+1) / 2
	var xy, xx, yy float64
	for i := range x {
		dx, dy := x[i]-mean, y[i]-mean
		xy, xx, yy = xy+dx*dy, xx+dx*dx, yy+dy*dy
	}
	if xx == 0 || yy == 0 {
		return 0
	}
	return xy / math.Sqrt(xx*yy)
}

// ranks counts from 1; equal values share the mean of theirs.
func ranks(v []float64) []float64 {
	at := make([]int, len(v))
	for i := range at {
		at[i] = i
	}
	sort.SliceStable(at, func(i, j int) bool { return v[at[i]] < v[at[j]] })
	out := make([]float64, len(v))
	for i := 0; i < len(at); {
		j := i
		for j < len(at) && v[at[j]] == v[at[i]] {
			j++
		}
		for k := i; k < j; k++ {
			out[at[k]] = float64(i+j+1) / 2
		}
		i = j
	}
	return out
}
