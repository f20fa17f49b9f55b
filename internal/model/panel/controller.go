package panel

import (
	"cmp"
	"slices"

	"duskweight/internal/model/unit"
)

// Typical values of controllers.
const (
	typicalBus      unit.Voltage = 12.8 // four lithium iron phosphate cells, near a lead block's; common practice
	pulseEfficiency float64      = 0.98 // source.FromMemory
	bestOverLine    float64      = 1.4  // best-point voltage of the panel made for a line over the line's: 18 V over 12.8 V (36 cells); common practice
	bestOverShort   float64      = 0.94 // current at the best point over short-circuit current, crystalline silicon; source.FromMemory
)

// typicalCurve is the efficiency of a tracking controller over its load; source.FromMemory.
var typicalCurve = [...]Efficiency{{0.05, 0.80}, {0.10, 0.88}, {0.20, 0.93}, {0.50, 0.965}, {1, 0.96}}

// Standing returns what the controller takes from the line in every hour, by day and night. It is part of what the
// variant uses all the time, and is not in the power of BusPower. Not known counts as 15 mA (tracking) or 7 mA (pulse
// width) at the line's voltage (source.FromMemory), and none for direct.
func (c Controller) Standing() unit.Power {
	line := unit.Power(c.BusVolts.Or(typicalBus))
	switch c.Kind {
	case ControllerTracking:
		return c.Night.Or(0.015 * line)
	case ControllerPulseWidth:
		return c.Night.Or(0.007 * line)
	}
	return c.Night.Or(0)
}

// tracker is a tracking controller made ready.
type tracker struct {
	rated    float64
	perRated float64
	loads    []float64
	eff      []float64
	rise     []float64 // from point i to point i+1
}

func newTracker(points []Efficiency, rated float64) tracker {
	if len(points) == 0 {
		points = typicalCurve[:]
	}
	points = slices.Clone(points)
	slices.SortStableFunc(points, func(a, b Efficiency) int { return cmp.Compare(a.Load, b.Load) })
	t := tracker{rated: rated}
	if rated > 0 {
		t.perRated = 1 / rated
	}
	for i, p := range points {
		if i > 0 {
			rise := 0.0 // of a step, where two points have one load
			if w := p.Load - points[i-1].Load; w > 0 {
				rise = (p.Efficiency - points[i-1].Efficiency) / w
			}
			t.rise = append(t.rise, rise)
		}
		t.loads = append(t.loads, p.Load)
		t.eff = append(t.eff, min(max(p.Efficiency, 0), 1))
	}
	t.rise = append(t.rise, 0)
	return t
}

// efficiency at input power p: in a straight line between the points, level before the first and after the last.
func (t *tracker) efficiency(p float64) float64 {
	x := p * t.perRated
	if x <= t.loads[0] {
		return t.eff[0]
	}
	i := 0
	for i+1 < len(t.loads) && t.loads[i+1] < x {
		i++
	}
	return t.eff[i] + t.rise[i]*(x-t.loads[i])
}

// out returns the power at the line for input power p: never above the rating.
func (t *tracker) out(p float64) float64 {
	q := p * t.efficiency(p)
	if q > t.rated {
		return t.rated
	}
	return q
}
