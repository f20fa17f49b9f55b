package search_test

import (
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/search"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// The definition worked by hand, source.HyndmanFan: definition 7 puts x_(k) at p_k = (k − 1)/(n − 1), and goes straight
// between. For 15, 20, 35, 40, 50 the p_k are 0, ¼, ½, ¾, 1. So 0.4 lies 0.6 of the way from 20 to 35, at 29; 0.1 lies
// 0.4 of the way from 15 to 20, at 17; 0.9 lies 0.6 of the way from 40 to 50, at 46.
func TestQuantileOfDefinitionSeven(t *testing.T) {
	v := []float64{15, 20, 35, 40, 50}
	for _, tc := range []struct{ p, want float64 }{{0, 15}, {0.1, 17}, {0.25, 20}, {0.4, 29}, {0.5, 35}, {0.75, 40}, {0.9, 46}, {1, 50}} {
		if got := search.Quantile(v, tc.p); math.Abs(got-tc.want) > 1e-12 { // rounding of a few operations
			t.Errorf("quantile %v: %v, want %v", tc.p, got, tc.want)
		}
	}
	if got := search.Quantile([]float64{7}, 0.9); got != 7 {
		t.Errorf("of one value: %v", got)
	}
}

// By hand: p = 93/100, √(0.93·0.07/100) = 0.02551, so whole percents; 931 of 1,000: √(0.931·0.069/1000) = 0.00801, one
// digit behind the point; 5 of 10: 0.158, not even whole percents. In all of 100: nearer than 3/100 to certain.
func TestChanceAndItsDigits(t *testing.T) {
	for _, tc := range []struct {
		more, years int
		e           float64
		places      int
	}{{93, 100, 0.02551, 0}, {931, 1000, 0.00801, 1}, {5, 10, 0.15811, -1}, {100, 100, 0, 0}} {
		v := search.Versus{More: tc.more, Less: tc.years - tc.more, Years: tc.years}
		if math.Abs(v.Error()-tc.e) > 5e-6 || v.Places() != tc.places { // half of the last digit worked by hand
			t.Errorf("%d of %d: error %.5f, %d places; want %.5f, %d", tc.more, tc.years, v.Error(), v.Places(), tc.e, tc.places)
		}
	}
	if b := (search.Versus{More: 100, Years: 100}).Bound(); b != 0.03 {
		t.Errorf("bound of 100 of 100: %v", b)
	}
}

// A year of the many is that made year by the page's own way: the sums of the whole chain. Nights are full nights, so
// they are counted anew from the night log: at most 1 % missing. The hoist alone: a battery's share for fast drawing is
// that of the plan year.
func TestYearIsItsMadeYear(t *testing.T) {
	doc := catalog.Sample()
	weak := doc.Variants[0] // another field of panels, so that no variant is run in another's light
	weak.Panels = slices.Clone(weak.Panels)
	weak.Panels[0].Power.Val /= 4
	weak.Panels[0].Sheet = nil // it makes four times that
	vs := []model.Variant{doc.Variants[0], weak}
	for i := range vs {
		vs[i].Stores = vs[i].Stores[:1] // the hoist alone
	}
	s, err := search.Years(t.Context(), doc.Project, vs, 4, 2, nil)
	if err != nil {
		t.Fatal(err)
	}
	if a, b := s.Variants[0].Served[0], s.Variants[1].Served[0]; a == b {
		t.Errorf("a quarter of the panels serves as much, %v: it proves nothing", a)
	}
	for j := range 4 {
		g := model.PrepareMade(doc.Project, j)
		for i, v := range vs {
			y, c, full := g.Evaluate(v).Year, s.Variants[i], 0
			for _, n := range y.NightLog {
				if n.Counted && n.Unmet <= 0.01*n.Wanted {
					full++
				}
			}
			if c.Nights[j] != float64(full) || c.Outage[j] != float64(y.LongestOutage.Hours) || math.Abs(c.Served[j]-float64(y.ServedShare.Val)) > 1e-12 { // two ways of adding up
				t.Errorf("year %d, %s: %v nights, %v h, %v; by its page %d, %d, %v", j, c.Name, c.Nights[j], c.Outage[j], c.Served[j], full, y.LongestOutage.Hours, y.ServedShare.Val)
			}
		}
	}
}

// Variants with the same panels and load run side by side: each comes to the same years as alone.
func TestSideBySideIsAlone(t *testing.T) {
	doc := catalog.Sample()
	vs := slices.Clone(doc.Variants)
	for k := range 6 { // the mass alone, without the battery beside it
		v := search.Grown(doc.Variants[0], "mass", float64(100*(k+2)))
		v.Stores = v.Stores[:1]
		vs = append(vs, v)
	}
	together, err := search.Years(t.Context(), doc.Project, vs, 8, 2, nil)
	if err != nil {
		t.Fatal(err)
	}
	for i, v := range vs {
		alone, err := search.Years(t.Context(), doc.Project, []model.Variant{v}, 8, 1, nil)
		if err != nil {
			t.Fatal(err)
		}
		if got, want := together.Variants[i].Nights, alone.Variants[0].Nights; !slices.Equal(got, want) {
			t.Errorf("variant %d: %v nights, alone %v", i, got, want)
		}
		if got, want := together.Variants[i].Served, alone.Variants[0].Served; !slices.Equal(got, want) {
			t.Errorf("variant %d: %v served, alone %v", i, got, want)
		}
	}
}

// The same numbers to the last bit for any number of workers.
func TestAnyNumberOfWorkers(t *testing.T) {
	doc := catalog.Sample()
	var first [32]byte
	for workers := 1; workers <= 3; workers++ {
		told := 0
		s, err := search.Years(t.Context(), doc.Project, doc.Variants, 12, workers, func(done int) {
			if told++; done != told {
				t.Errorf("%d workers: told %d after %d", workers, done, told-1)
			}
		})
		if err != nil {
			t.Fatal(err)
		}
		h := sha256.Sum256(fmt.Appendf(nil, "%#v", s)) // it writes as many digits as tell a number from every other
		if workers == 1 {
			first = h
		} else if h != first {
			t.Errorf("%d workers: not the numbers of one", workers)
		}
		if told != 12 {
			t.Errorf("%d workers: told of %d years", workers, told)
		}
	}
}

// Laws: more, same and less are all the years; what A is over B, B is under A; a variant ties with its own copy in every
// year; bad ≤ usual ≤ good; and at least nine years of ten reach the number that is told.
func TestLawsOfManyYears(t *testing.T) {
	doc := catalog.Sample()
	vs := append(slices.Clone(doc.Variants), doc.Variants[0])
	s, err := search.Years(t.Context(), doc.Project, vs, 40, 2, nil)
	if err != nil {
		t.Fatal(err)
	}
	for a := range vs {
		for b := range vs {
			v, w := s.Pairs[a][b], s.Pairs[b][a]
			if a != b && (v.More+v.Same+v.Less != 40 || v.More != w.Less || v.Same != w.Same) {
				t.Errorf("%d against %d: %+v and %+v", a, b, v, w)
			}
		}
		c := s.Variants[a]
		reached := 0
		for _, n := range c.Nights {
			if n >= float64(c.Nine) {
				reached++
			}
		}
		if reached < 36 || c.Light.Bad > c.Light.Usual || c.Light.Usual > c.Light.Good || c.Light.Best > float64(s.Nights) {
			t.Errorf("%s: %d of 40 years reach %d; %+v of %d", c.Name, reached, c.Nine, c.Light, s.Nights)
		}
	}
	if v := s.Pairs[0][len(vs)-1]; v.Same != 40 || v.Chance() != 0 {
		t.Errorf("a variant against its copy: %+v", v)
	}
}

func TestStopsWithTheContext(t *testing.T) {
	doc := catalog.Sample()
	ctx, stop := context.WithCancel(t.Context())
	_, err := search.Years(ctx, doc.Project, doc.Variants, 100000, 2, func(done int) {
		if done == 3 {
			stop()
		}
	})
	if !errors.Is(err, context.Canceled) {
		t.Errorf("stopped after three years: %v", err)
	}
}

// A weather file is one year, a place that is not known is none, and a hoist that gives nothing back says why.
func TestFewerThanManyYears(t *testing.T) {
	doc := catalog.Sample()
	file := doc.Project
	sky := model.Prepare(doc.Project).Sky
	file.Place.Sky = "file"
	file.Weather = &sun.Series{Name: "ours", Latitude: file.Place.Latitude.Val, Longitude: file.Place.Longitude.Val,
		UTCOffset: file.Place.UTCOffset.Val, Hours: sun.Hours, GHI: sky.GHI, DHI: sky.DHI, TAir: sky.TAir}
	s, err := search.Years(t.Context(), file, doc.Variants, 100, 2, nil)
	if err != nil || s.Years != 1 || s.WhyOne.IsZero() || len(s.Variants[0].Nights) != 1 {
		t.Errorf("a file: %d years, %q, %v", s.Years, s.WhyOne, err)
	}
	nowhere := doc.Project
	nowhere.Place.Latitude = unit.Known[unit.Angle]{}
	s, err = search.Years(t.Context(), nowhere, doc.Variants, 100, 2, nil)
	if err != nil || s.WhyOne.IsZero() || s.Variants[0].WhyNot.IsZero() || len(s.Variants[0].Nights) != 0 {
		t.Errorf("nowhere: %+v, %v", s, err)
	}
	bare := doc.Variants[0]
	bare.Stores = []model.Store{{Hoist: &lift.Hoist{Name: "Empty"}}}
	s, err = search.Years(t.Context(), doc.Project, []model.Variant{bare}, 2, 1, nil)
	if err != nil || len(s.Variants[0].Without) != 1 || len(s.Variants[0].Nights) != 0 || !strings.Contains(s.Variants[0].WhyNot.String(), "too little is known") {
		t.Errorf("an empty hoist: %+v, %v", s, err)
	}
}

func BenchmarkYears(b *testing.B) {
	doc := catalog.Sample()
	vs := slices.Clone(doc.Variants)
	for len(vs) < 4 {
		vs = append(vs, search.Grown(doc.Variants[0], "mass", 2))
	}
	for b.Loop() {
		if _, err := search.Years(b.Context(), doc.Project, vs[:4], 100, 2, nil); err != nil {
			b.Fatal(err)
		}
	}
}
