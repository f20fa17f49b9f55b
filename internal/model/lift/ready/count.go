package ready

import (
	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
)

// Counted returns how many of the named holds surely hold a mass that moves: a prop and a pin hold one that stands and count
// as none, and a ratchet or a catch counts where it is said to act on the drum.
func Counted(h lift.Hoist) int {
	_, worst := Case{Hoist: h}.tally(counts)
	return worst
}

// FallZone is the word of the closed fall zone: yes where a mass that may fall does so where nobody can be, no where nobody
// says that it may fall.
func (c Case) FallZone() reason.Word {
	word, _ := c.fallZone()
	return word
}
