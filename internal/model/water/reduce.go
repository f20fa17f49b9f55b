package water

import (
	"duskweight/internal/model/reservoir"
	"duskweight/internal/model/unit"
)

// Reduce makes the store a reservoir; nil where WhyNot says why there is none. Its own joules are ρ·g·h for each m³, so
//
//	a_f = η_p·h/(h + h_f(Q_p))   a_d = h/(η_t·h_n)   leak = 4 mm a day·surface/V where it is open.
//
// mean is the temperature of the air in the mean of 24 hours, °C, hour by hour, and nil where it is not known: below 0 °C
// nothing is filled and everything is locked.
func (r Resolved) Reduce(mean []float64) *reservoir.Reservoir {
	if !r.WhyNot.IsZero() {
		return nil
	}
	w := r.Design
	h := float64(w.Head.Val)
	out := &reservoir.Reservoir{
		Name: w.Name, Capacity: r.Stored,
		FillMax: w.Pump.Rated.Val, FillStep: w.Pump.Step == unit.Yes, FillGain: float64(r.PumpEff) * h / (h + float64(r.PumpLost)),
		DrawMin: r.Least, DrawMax: r.Gives, DrawGain: h / (float64(r.TurbineEff) * float64(r.Net)),
		Standing: w.Standby.Or(0), Leak: float64(r.LeakADay.Or(0)) / 86400,
	}
	if out.FillStep {
		out.FillThreshold = out.FillMax
	}
	out.NoFill, out.Locked = frost(mean)
	return out
}

// frost is the hours in which the water freezes in pipe and tank: nothing is filled, and all of the store is locked.
func frost(mean []float64) (noFill []bool, locked []float64) {
	if mean == nil {
		return nil, nil
	}
	noFill, locked = make([]bool, len(mean)), make([]float64, len(mean))
	for i, t := range mean {
		if t < Freezes {
			noFill[i], locked[i] = true, 1
		}
	}
	return noFill, locked
}
