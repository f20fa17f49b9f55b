package cell

import (
	"math"

	"duskweight/internal/model/unit"
)

// At returns the share of capacity at temperature t: 1 from 25 °C up, and never under 0. Colder than −20 °C it is
// outside its data and a guess.
func (c Capacity) At(t unit.Celsius) float64 {
	if c == (Capacity{}) || t >= 25 {
		return 1
	}
	x := float64(t)
	return math.Max(0, math.Min(1, c.A+c.B*x+c.C*x*x))
}

// RunningMean is the mean of each hour and the 23 before it, wrapping round the year: cells are slow to warm.
func RunningMean(air []float64) []float64 {
	n := len(air)
	out := make([]float64, n)
	for h := range n {
		var sum float64
		if h >= 23 {
			for day, j := air[h-23:h+1:h+1], 23; j >= 0; j-- {
				sum += day[j]
			}
		} else {
			for j := range 24 {
				sum += air[((h-j)%n+n)%n] // the year goes round
			}
		}
		out[h] = sum / 24
	}
	return out
}

// Temperature is that of the cells hour by hour, °C. The zero value is not known: no hour is cold or hot then.
type Temperature struct{ hours []float64 }

// TemperatureIn is the temperature of cells that stand in air of these temperatures: its RunningMean.
func TemperatureIn(air []float64) Temperature { return Temperature{RunningMean(air)} }

// cold returns the hours in which nothing may be filled, and the share of the usable state that is locked by cold.
func (r Resolved) cold(cells Temperature) (noFill []bool, locked []float64) {
	t := cells.hours
	noFill = make([]bool, len(t))
	locked = make([]float64, len(t))
	for h := range t {
		noFill[h] = t[h] < float64(r.ChargeMin) || t[h] > float64(r.ChargeMax)
		locked[h] = 1 - r.Kind.Cold.At(unit.Celsius(t[h]))
	}
	return noFill, locked
}
