package load

// Starting power over running power where nobody gave it (common practice: 3 to 7 for a motor that starts under load).
const (
	pumpSurge = 5
	fanSurge  = 2
)

// SurgePower returns the power in W that one of an appliance takes in the moment it starts; never less than its power.
func (a Appliance) SurgePower() float64 {
	p := float64(a.Running().Or(0))
	if s, ok := a.Surge.Value(); ok {
		return max(p, float64(s))
	}
	switch a.Purpose {
	case ForPump, ForCooling:
		return pumpSurge * p
	case ForFan:
		return fanSurge * p
	}
	return p
}
