package load

import (
	"math"
	"slices"

	"duskweight/internal/model/unit"
)

// leastOn is the least time for which an appliance is on when its end is moved, and what stays off of a whole day.
const leastOn = 5 * unit.Minute

// ownHours reports whether an appliance goes off at a time of its own: not one that is on all day or as long as it is dark.
func (a Appliance) ownHours() bool {
	return !a.MayWait() && (a.FromDusk.Is || a.From.Is && a.To.Is && a.From.Val != a.To.Val)
}

// LitHours is how long the appliance with hours of its own that is on the longest at night is on in the mean night; not
// known where none has.
func (y Year) LitHours(l Load) unit.Known[unit.Duration] {
	out := unit.Known[unit.Duration]{}
	for i, a := range l.Appliances {
		if i < len(y.Each) && y.Each[i].Refused == "" && a.ownHours() && y.Each[i].NightOn > out.Val {
			out = unit.Of(y.Each[i].NightOn)
		}
	}
	return out
}

// Later returns the load with every appliance that has hours of its own going off by so much later, or earlier where by is
// negative. None goes off before it is on, and none is on for a whole day.
func (l Load) Later(by unit.Duration) Load {
	const day = 24 * unit.Hour
	l.Appliances = slices.Clone(l.Appliances)
	for i := range l.Appliances {
		a := &l.Appliances[i]
		switch {
		case !a.ownHours():
		case a.FromDusk.Is:
			a.FromDusk.Val = min(day, max(leastOn, a.FromDusk.Val+by))
		default:
			long := unit.Duration(math.Mod(float64(a.To.Val-a.From.Val+day), float64(day)))
			long = min(day-leastOn, max(leastOn, long+by))
			a.To.Val = unit.Duration(math.Mod(float64(a.From.Val+long), float64(day)))
		}
	}
	return l
}
