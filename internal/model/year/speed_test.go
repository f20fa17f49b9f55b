package year

import (
	"math"
	"math/rand/v2"
	"testing"
)

func demoYear(seed uint64) (bus []float64, essential []float64, night []int) {
	r := rand.New(rand.NewPCG(seed, 1))
	bus, essential, night = make([]float64, Hours), make([]float64, Hours), make([]int, Hours)
	for h := range bus {
		c := float64(h % 24)
		day := h / 24
		if c == 0 {
			r.Float64()
		}
		night[h] = -1
		bus[h] = math.Max(0, math.Sin((c-6)/12*math.Pi)) * (100 + 250*r.Float64())
		if c >= 18 || c < 6 {
			night[h] = day
			essential[h] = 5
			if c >= 18 && c < 22 {
				essential[h] = 60
			}
		}
	}
	return
}

func BenchmarkStraight(b *testing.B) {
	bus, ess, _ := demoYear(1)
	d := NewDemand(Hours, nil, ess, nil, nil)
	k := straight{X: 600 * 3600, pf: 200, pd: 300, gain: 0.95 * hour, cost: hour / 0.95, perGain: 1 / 0.95, perCost: 0.95, keep: 1}
	state := make([]float64, Hours)
	short := make([]lack, Hours)
	b.ReportAllocs()
	for b.Loop() {
		k.run(bus, d.total, state, short, k.X)
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/Hours, "ns/step")
}
