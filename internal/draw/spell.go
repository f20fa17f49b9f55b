package draw

import "strings"

// mostSpell is how many nights a Spell draws.
const mostSpell = 14

// Spell draws a run of nights that are not full, a filled square each, in a row of so many; what does not fit has a break at its
// end. The number stands in words beside it.
func Spell(nights, of int) string {
	var w strings.Builder
	const step, side = 24.0, 18.0
	of = min(max(of, nights, 1), mostSpell)
	p := openSmall(&w, "spell", "xMinYMid", float64(of)*step, side+4)
	for i := range of {
		look := attrs{"class", "lit"}
		if i < nights {
			look = attrs{"class", "out"}
		}
		p.rect(float64(i)*step+2, 2, side, side, attrs{"rx", "2"}, look)
	}
	if nights > mostSpell {
		end := float64(of) * step
		p.path([]float64{end - 14, side + 4, end - 8, 0, end - 4, 0, end - 10, side + 4}, true, attrs{"class", "gap"})
	}
	_ = p.close() // a strings.Builder takes everything
	return w.String()
}
