package load

import (
	"math"
	"slices"

	"duskweight/internal/model/unit"
)

// Grows is what the appliances are multiplied by, (1 + g)^y; 1 while growth or years are not known.
func (l Load) Grows() float64 {
	if !l.Growth.Is || !l.GrowthYears.Is {
		return 1
	}
	return math.Pow(1+float64(l.Growth.Val), float64(l.GrowthYears.Val))
}

// grown is the load after the years of its growth: each appliance with that much more power, as if there were more of it. What
// uses power all the time stays. What may be on together in one moment is asked of the load as it is listed.
func (l Load) grown() Load {
	f := l.Grows()
	if f == 1 {
		return l
	}
	l.Appliances = slices.Clone(l.Appliances)
	for i := range l.Appliances {
		a := &l.Appliances[i]
		if a.MayWait() { // what its water tells grows too
			a.Power, a.DayEnergy = a.Running(), a.Daily()
		}
		a.Power.Val *= unit.Power(f)
		a.DayEnergy.Val *= unit.Energy(f)
		a.Surge.Val *= unit.Power(f)
		a.Label.Val *= unit.Energy(f)
		a.Measured.Val *= unit.Energy(f)
	}
	return l
}
