package model

import (
	"math"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/load"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/reservoir"
	"duskweight/internal/model/unit"
)

// DirectYear is a year of the motor on the panels, hour by hour in the project's own light: what it gains if the mass
// could go on rising. The year run takes of it what the travel has room for.
type DirectYear struct {
	HeightDay unit.Length     // gained on a mean day
	LiftsDay  unit.Ratio      // the same in whole travels
	Months    [12]unit.Length // gained on a mean day of each month
	Hours     int             // in which it turns
	Day       int             // a real day, from 0: the one whose gain is nearest to the mean
	Light     [24]unit.Irradiance
	Gain      [24]unit.Length

	own *reservoir.Source
}

// through runs the motor through the hours. It goes on from hour to hour down to the light in which it stalls, and
// starts again only in light that gives the first push. each returns the feed of an hour, nil in the dark.
func (m *motor) through(hours int, each func(h int) feed) (speed, power []float64) {
	speed, power = make([]float64, hours), make([]float64, hours)
	turning := false
	for h := range hours {
		f := each(h)
		turning = f != nil && (f.gives(m.start) || turning && f.gives(m.run))
		if turning {
			speed[h], power[h] = m.climb(f)
		}
	}
	return speed, power
}

// year runs the project's light through panels and motor, and once more with the converter between.
func (r *Direct) year(lights []panel.Light, air []float64) {
	if !r.Known || len(lights) == 0 {
		return
	}
	x := r.panels.Sunlit()
	straight := straightOn{x, &r.motor}
	lit := func(h int) bool {
		for _, l := range lights {
			if l.Cells[h] > 0 {
				x.Set(lights, air, h)
				return true
			}
		}
		return false
	}
	speed, power := r.motor.through(len(air), func(h int) feed {
		if !lit(h) {
			return nil
		}
		return straight
	})
	step := &stepDown{motor: &r.motor, efficiency: float64(r.Converter.Efficiency)}
	cured, _ := r.motor.through(len(air), func(h int) feed {
		if !lit(h) {
			return nil
		}
		step.under(x)
		return step
	})
	r.Converter.HeightDay = unit.Of(unit.Length(total(cured) * 3600 / load.DaysInYear))
	r.Year = r.account(speed, power, lights)
}

// Source runs another year's light through panels and motor and returns what it brings to the store; nil where the motor
// cannot be run. It changes nothing of r.
func (r *Direct) Source(lights []panel.Light, air []float64) *reservoir.Source {
	if !r.Known || len(lights) == 0 {
		return nil
	}
	x := r.panels.Sunlit()
	straight := straightOn{x, &r.motor}
	speed, power := r.motor.through(len(air), func(h int) feed {
		for _, l := range lights {
			if l.Cells[h] > 0 {
				x.Set(lights, air, h)
				return straight
			}
		}
		return nil
	})
	return r.motor.own(speed, power)
}

// own is what a year of speeds brings to the store, in own watts.
func (m *motor) own(speed, power []float64) *reservoir.Source {
	s := &reservoir.Source{Power: power, Fill: make([]float64, len(speed))}
	for h, v := range speed {
		s.Fill[h] = min(m.weight*v, power[h]) // rounding apart it is less by itself
	}
	return s
}

// account sums a year of speeds up.
func (r *Direct) account(speed, power []float64, lights []panel.Light) *DirectYear {
	y := &DirectYear{HeightDay: unit.Length(total(speed) * 3600 / load.DaysInYear)}
	if r.motor.travel > 0 {
		y.LiftsDay = unit.Ratio(float64(y.HeightDay) / r.motor.travel)
	}
	y.own = r.motor.own(speed, power)
	days := make([]float64, len(speed)/24)
	for h, v := range speed {
		if v > 0 {
			y.Hours++
		}
		if d := h / 24; d < len(days) {
			days[d] += v * 3600
		}
	}
	best := math.Inf(1)
	for d, gain := range days {
		y.Months[monthOf(d)] += unit.Length(gain / float64(monthDays[monthOf(d)]))
		if off := math.Abs(gain - float64(y.HeightDay)); off < best {
			best, y.Day = off, d
		}
	}
	for c := range 24 {
		if h := 24*y.Day + c; h < len(speed) {
			y.Light[c], y.Gain[c] = unit.Irradiance(lights[0].Plane[h]), unit.Length(speed[h]*3600)
		}
	}
	return y
}

// store is the hoist as a store that the panels fill beside the line: m·g·v of own watts in each hour. A motor that must
// rest between lifts in full sun lifts only so often a day.
func (r *Direct) store(h lift.Hoist, d lift.Drive) *reservoir.Reservoir {
	if r.Year == nil || d.Draining == nil {
		return nil
	}
	out := *d.Draining
	out.Own = r.Year.own
	one := unit.Energy(r.motor.weight * float64(h.Travel.Val))
	units := unit.Energy(h.Units.Or(1))
	switch heat := d.HeatUp; {
	case heat.TooHot:
		out.FillCap = units * one
	case heat.PerDay.Is && heat.Rest.Val > 0:
		out.FillCap = units * unit.Energy(heat.PerDay.Val) * one
	}
	return &out
}

var monthDays = [12]int{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}

// monthOf is the month of a day of the year, both from 0.
func monthOf(day int) int {
	for m, n := range monthDays {
		if day < n {
			return m
		}
		day -= n
	}
	return 11
}
