package search_test

import (
	"crypto/sha256"
	"fmt"
	"math"
	"testing"
	"time"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/search"
	"duskweight/internal/model/unit"
)

// eightDesigns are eight sizes of one battery on one field of panels.
func eightDesigns() (model.Project, []model.Variant) {
	doc := catalog.Sample()
	var out []model.Variant
	for i := range 8 {
		v := doc.Variants[1]
		b := *v.Stores[0].Cells
		b.Capacity = unit.Of(b.Capacity.Val * unit.Charge(i+1) / 4)
		v.Stores = []model.Store{{Cells: &b}}
		out = append(out, v)
	}
	return doc.Project, out
}

// A thousand years of eight designs on one core and on two: the best of the runs of each, how many times faster two are,
// and whether the numbers are the same to the last bit.
func BenchmarkThousandYears(b *testing.B) {
	project, designs := eightDesigns()
	const years = 1000
	best := [3]float64{0, math.Inf(1), math.Inf(1)}
	var hash [3][32]byte
	for b.Loop() {
		for workers := 1; workers <= 2; workers++ {
			begin := time.Now()
			s, err := search.Years(b.Context(), project, designs, years, workers, nil)
			if err != nil {
				b.Fatal(err)
			}
			best[workers] = min(best[workers], float64(time.Since(begin).Milliseconds()))
			hash[workers] = sha256.Sum256(fmt.Appendf(nil, "%#v", s))
		}
		if hash[1] != hash[2] {
			b.Fatal("two workers come to other numbers than one")
		}
	}
	b.ReportMetric(best[1], "ms-one")
	b.ReportMetric(best[2], "ms-two")
	b.ReportMetric(best[1]/best[2], "times")
}

// One of many years of eight designs, and one of many draws of a battery, the least of each times a thousand: on a machine
// that others use, a short piece that nobody disturbed says most.
func BenchmarkLeastYear(b *testing.B) {
	project, designs := eightDesigns()
	for name, of := range map[string]struct {
		designs []model.Variant
		parts   bool
	}{"eight": {designs, false}, "parts": {designs[:1], true}} {
		b.Run(name, func(b *testing.B) {
			least := math.Inf(1)
			for b.Loop() {
				run, last := search.NewRun(project, of.designs, of.parts), time.Time{}
				if err := run.Until(b.Context(), 200, 1, func(int) {
					now := time.Now()
					if !last.IsZero() {
						least = min(least, float64(now.Sub(last).Microseconds()))
					}
					last = now
				}); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(least, "ms-thousand") // µs of one are ms of a thousand
		})
	}
}

// What it would take and panel and store together, for each variant of the worked example.
func BenchmarkTakes(b *testing.B) {
	doc := catalog.Sample()
	g := model.Prepare(doc.Project)
	for b.Loop() {
		for _, v := range doc.Variants {
			if _, _, err := search.WhatItTakes(b.Context(), g, v, g.Evaluate(v)); err != nil {
				b.Fatal(err)
			}
			if _, err := search.SweepOf(b.Context(), g, v); err != nil {
				b.Fatal(err)
			}
		}
	}
}
