package path

import "duskweight/internal/model/lift"

// namedHolds are the named things that hold by themselves; motor, gears, joined wires, lamps and belts are none.
func namedHolds(h lift.Hoist) []lift.Hold {
	var out []lift.Hold
	for _, x := range h.Holds.Holds {
		if holdName(x.Kind) != "" {
			out = append(out, x)
		}
	}
	return out
}

func orElse(s, otherwise string) string {
	if s == "" {
		return otherwise
	}
	return s
}

func capital(s string) string {
	if s == "" || s[0] < 'a' || s[0] > 'z' {
		return s
	}
	return string(s[0]-32) + s[1:]
}
