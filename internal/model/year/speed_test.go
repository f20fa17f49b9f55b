package year

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"duskweight/internal/model/reservoir"
	"duskweight/internal/model/unit"
)

// benchYear is a year of sun by day, cloudy days and clear ones, and of a night load.
func benchYear(seed uint64) (bus []float64, d *Demand) {
	r := rand.New(rand.NewPCG(seed, 1))
	bus = make([]float64, Hours)
	essential, nice, night := make([]float64, Hours), make([]float64, Hours), make([]int, Hours)
	cloud := 0.0
	for h := range bus {
		c := h % 24
		if c == 0 {
			cloud = r.Float64()
		}
		night[h] = -1
		bus[h] = math.Max(0, math.Sin((float64(c)-6)/12*math.Pi)) * 120 * cloud * (0.7 + 0.3*r.Float64())
		if c >= 18 || c < 6 {
			night[h] = (h + 6) / 24 % 365
			essential[h] = 5
			if c >= 18 && c < 22 {
				nice[h] = 40
			}
		}
	}
	return bus, NewDemand(Hours, nil, essential, nice, night)
}

// straightStore has straight curves, and twoStores is the general case: a hoist with a threshold and cells whose
// acceptance falls near full.
func straightStore() reservoir.Reservoir {
	return reservoir.Reservoir{Capacity: 500 * 3600, FillMax: 100, FillGain: 0.95, DrawMax: 80, DrawGain: 1.05}
}

func twoStores() []reservoir.Reservoir {
	return []reservoir.Reservoir{
		{Capacity: 5 * 3600, FillThreshold: 40, FillMax: 60, FillGain: 0.8, FillLoss: 20, DrawMin: 2, DrawMax: 6, DrawGain: 1.6, DrawLoss: 1, Standing: 0.3},
		{Capacity: 500 * 3600, FillMax: 100, FillGain: 0.95, DrawMax: 80, DrawGain: 1.05, Leak: 1e-8, AcceptFrom: 0.8, AcceptEnd: 0.05},
	}
}

// clocked runs f until the benchmark has seen enough, and reports the best time of a step: the machine is shared, and
// the best of many runs is the one that nobody disturbed.
func clocked(b *testing.B, steps int, f func()) {
	best := math.Inf(1)
	b.ReportAllocs()
	for b.Loop() {
		best = min(best, timed(f)*Hours/float64(steps))
	}
	b.ReportMetric(best, "ns/step")
}

// timed is how long f takes for each hour of a year, ns.
func timed(f func()) float64 {
	begin := time.Now()
	f()
	return float64(time.Since(begin).Nanoseconds()) / Hours
}

// One store with straight curves, one pass over one year: the hour's sum and clamp, the hours that lack.
func BenchmarkStraightPass(b *testing.B) {
	bus, d := benchYear(1)
	s := ready(straightStore())
	k, _ := straighten(&s, 0)
	short := make([]lack, Hours)
	clocked(b, Hours, func() { k.run(bus, d.total, 0, short, k.X) })
}

// The general pass, two stores.
func BenchmarkGeneralPass(b *testing.B) {
	bus, d := benchYear(1)
	var stores []store
	for _, r := range twoStores() {
		stores = append(stores, ready(r))
	}
	unmet := make([]float64, Hours)
	clocked(b, Hours, func() {
		for k := range stores {
			stores[k].x, stores[k].sum = stores[k].X, sums{}
		}
		for h := 0; h < Hours; h += piece {
			hours(bus, d.total, 0.3, stores, unmet, nil, h, h+piece)
		}
	})
}

// The settled year as a page wants it, hour by hour.
func BenchmarkRun(b *testing.B) {
	bus, d := benchYear(1)
	in := Input{Bus: bus, Essential: d.essential, Nice: d.nice, Night: d.night, Stores: twoStores(), Keep: true}
	clocked(b, Hours, func() { run(in) })
}

// The settled year as a sweep wants it.
func BenchmarkQuick(b *testing.B) {
	bus, d := benchYear(1)
	for name, stores := range map[string][]reservoir.Reservoir{"straight": {straightStore()}, "general": twoStores()} {
		b.Run(name, func(b *testing.B) {
			var w Workspace
			w.Quick(bus, d, stores)
			clocked(b, Hours, func() { w.Quick(bus, d, stores) })
		})
	}
}

// Four straight stores side by side, one pass: the time of one step of one store.
func BenchmarkFourPass(b *testing.B) {
	bus, d := benchYear(1)
	var f four
	for j := range f.store {
		s := ready(straightStore())
		s.X *= float64(j+1) / 2
		f.store[j], _ = straighten(&s, 0)
		f.short[j] = make([]lack, Hours)
	}
	clocked(b, 4*Hours, func() {
		for j := range f.store {
			f.x[j] = f.store[j].X
		}
		f.run(bus, d.total, 0)
	})
}

// A sweep over sizes of one store, straight or with a fall near full, four at a time: the time of one step of one store,
// settling included.
func BenchmarkSweep(b *testing.B) {
	bus, d := benchYear(1)
	for name, s := range map[string]reservoir.Reservoir{"straight": straightStore(), "bends": twoStores()[1]} {
		b.Run(name, func(b *testing.B) {
			var stores []reservoir.Reservoir
			for j := range 32 {
				one := s
				one.Capacity *= unit.Energy(j+1) / 8
				stores = append(stores, one)
			}
			var w Workspace
			out := w.Sweep(nil, bus, d, stores)
			clocked(b, len(stores)*Hours, func() { out = w.Sweep(out[:0], bus, d, stores) })
		})
	}
}
