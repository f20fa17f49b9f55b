package year

import (
	"math/rand/v2"
	"strings"
	"testing"
)

// By hand: F is a full night, - a dark one, and a dot an evening that no night follows, as in a polar summer. A run goes on
// over such evenings and over the turn of the year.
func TestGapsByHand(t *testing.T) {
	for nights, want := range map[string]Gaps{
		"":            {},
		"FFFF":        {},
		"F--F-F":      {Runs: 2, Longest: 2, From: 1},
		"--FF---F-":   {Runs: 2, Long: 2, Longest: 3, From: 4}, // the last and the first two are one run of three
		"-FFFF---":    {Runs: 1, Long: 1, Longest: 4, From: 5},
		"----":        {Runs: 1, Long: 1, Longest: 4, From: 0},
		"F-..--F":     {Runs: 1, Long: 1, Longest: 3, From: 1},
		".F-F--.":     {Runs: 2, Longest: 2, From: 4},
		"....":        {},
		"FF-F-F-F-FF": {Runs: 4, Longest: 1, From: 2},
	} {
		got := gapsOf(len(nights), func(k int) bool { return nights[k] != '.' }, func(k int) bool { return nights[k] == 'F' })
		if got != want {
			t.Errorf("%q: %+v, want %+v", nights, got, want)
		}
	}
}

// Against another way to count them: the year written twice and taken apart at its full nights.
func TestGapsAgainstWords(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 0))
	for range 2000 {
		b := make([]byte, 1+r.IntN(40))
		for i := range b {
			b[i] = "FFF--"[r.IntN(5)]
		}
		if b[0] = 'F'; r.IntN(2) == 0 {
			b[len(b)-1] = '-'
		}
		nights := string(b)
		runs, long, longest := 0, 0, 0
		for _, run := range strings.FieldsFunc(nights, func(c rune) bool { return c == 'F' }) {
			runs++
			long += one(len(run) >= 3)
			longest = max(longest, len(run))
		}
		for turn := range len(nights) { // the same year begun on another day
			turned := nights[turn:] + nights[:turn]
			got := gapsOf(len(turned), func(int) bool { return true }, func(k int) bool { return turned[k] == 'F' })
			if got.Runs != runs || got.Long != long || got.Longest != longest {
				t.Fatalf("%q: %+v, want %d %d %d", turned, got, runs, long, longest)
			}
			if longest > 0 && !strings.HasPrefix((turned + turned)[got.From:], strings.Repeat("-", longest)) {
				t.Fatalf("%q: no gap of %d at %d", turned, longest, got.From)
			}
		}
	}
}

// The short answer of a sweep and the log of all nights say the same.
func TestBriefNightsAreThoseOfTheLog(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 0))
	for range 200 {
		in := anyYear(r, 24*(2+r.IntN(20)), 1+r.IntN(2))
		in.Keep = false
		out := run(in)
		d := NewDemand(len(in.Bus), in.Standing, in.Essential, in.Nice, in.Night)
		var w Workspace
		bus := make([]float64, len(in.Bus))
		for h, v := range in.Bus {
			bus[h] = tame(v)
		}
		b := w.Quick(bus, d, in.Stores)
		if g := out.Gaps(); g != b.Gaps || out.Tally().NightsFull != b.NightsFull {
			t.Fatalf("%+v, %d full; the brief has %+v, %d", g, out.Tally().NightsFull, b.Gaps, b.NightsFull)
		}
		if a := out.Tally().NightShare; a != b.NightShare && !(a-b.NightShare < 1e-9 && b.NightShare-a < 1e-9) {
			t.Fatalf("share of the nights %v, %v", a, b.NightShare)
		}
	}
}
