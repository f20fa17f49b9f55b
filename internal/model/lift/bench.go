package lift

import (
	"math"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// noLoadCurrent is the current of one reading with the shaft free.
func noLoadCurrent(b Bench) (float64, bool) { return math.Abs(float64(b.Current.Val)), b.Current.Is }

// meanBench returns the mean of a quantity over the readings that can be used. Readings that lie far apart are said.
func (w *work) meanBench(readings []Bench, field string, q unit.Quantity, value func(Bench) (float64, bool)) (float64, bool) {
	sum, count, least, most := 0.0, 0, math.Inf(1), math.Inf(-1)
	for _, b := range readings {
		v, ok := value(b)
		if !ok || !finite(v) {
			continue
		}
		sum += v
		count++
		least, most = math.Min(least, v), math.Max(most, v)
	}
	if count == 0 {
		return 0, false
	}
	mean := sum / float64(count)
	if most-least > 0.2*math.Abs(mean) {
		w.caution("machine."+field, "These readings lie far apart, from %s to %s. Measure again.", say.Of(q, least), say.Of(q, most))
	}
	return mean, true
}

// checkMeasured says where a bench test was cut short.
func (w *work) checkMeasured(m Machine) {
	if n := len(m.BenchR); n > 0 && n < 5 {
		w.caution("machine.bench_resistance", "Resistance was read in %s positions of the shaft. Five are needed: brushes and windings differ.", n)
	}
	if w.d.Machine.From != FromBench {
		return
	}
	var forward, back bool
	for _, b := range m.BenchK {
		forward = forward || b.Speed.Val > 0 && b.Speed.Is
		back = back || b.Speed.Val < 0 && b.Speed.Is
	}
	if !forward || !back {
		w.caution("machine.bench_driven", "The machine was driven in one direction only. Drive it both ways: brushes can sit off the middle.")
	}
}
