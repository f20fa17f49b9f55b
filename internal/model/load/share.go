package load

import "duskweight/internal/model/unit"

// The length of a day and of a year of 365 days, s.
const (
	daySeconds  = 86400.0
	yearSeconds = DaysInYear * daySeconds
)

// share returns the share of its time in which an appliance is really on, 0 to 1: what a meter or the label says over what its
// power gives in that time, else the share that is given, else all of it.
func (a Appliance) share() float64 {
	if told, ok := a.toldShare(); ok {
		return min(1, told)
	}
	return float64(a.Share.Or(1))
}

// toldShare is the share that a measured day or the label tells: E/(P·t). It is false where there is neither, or no power.
func (a Appliance) toldShare() (float64, bool) {
	p := float64(a.Power.Val)
	switch {
	case p <= 0:
		return 0, false
	case a.Measured.Is:
		return float64(a.Measured.Val) / (p * daySeconds), true
	case a.Label.Is:
		return float64(a.Label.Val) / (p * yearSeconds), true
	}
	return 0, false
}

// OverLabel reports whether the measured day or the label says more than the power of the appliance gives when it never stops.
func (a Appliance) OverLabel() bool {
	told, ok := a.toldShare()
	return ok && told > 1
}

// What cools runs longer where it is warm. Source: the two test rooms of IEC 62552, 16 and 32 °C, of which the warm one takes
// about double, from memory.
const (
	heatSlope     = 0.042 // of the share at heatReference, for each kelvin
	heatReference = 24.0  // °C
	heatLeast     = 0.1   // of the time
)

// heatShare returns the share of its time in which what cools is on in air of t °C, from its share at 24 °C.
// What is never on stays off.
func heatShare(share, t float64) float64 {
	if share <= 0 {
		return 0
	}
	return min(1, max(heatLeast, share*(1+heatSlope*(t-heatReference))))
}

// heatOn is the same in hour h of the year; in air that is not known, as at 24 °C.
func (y *Year) heatOn(a Appliance, h int) float64 {
	if y.air == nil {
		return a.share()
	}
	return heatShare(a.share(), y.air[h])
}

// ShareOn is the share of its time in which an appliance is really on, at 24 °C where it follows the heat.
func (a Appliance) ShareOn() unit.Ratio { return unit.Ratio(a.share()) }
