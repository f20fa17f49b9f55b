package lift

import "duskweight/internal/model/unit"

// OnShunt is voltage and speed of coming down with only those loads on the motor that nothing can open; false where there
// is none, or where they do not hold the speed.
func OnShunt(h Hoist) (unit.Voltage, unit.Speed, bool) {
	var kept []DCLoad
	for _, l := range h.Lower.Loads {
		if l.Permanent == unit.Yes {
			kept = append(kept, l)
		}
	}
	if len(kept) == 0 {
		return 0, 0, false
	}
	h.Lower.Loads = kept
	lo := Compute(h).Lowering
	return lo.Voltage, lo.Speed, lo.Known && lo.Steady && lo.Speed > 0
}
