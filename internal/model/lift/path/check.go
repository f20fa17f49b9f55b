// Package path follows the load from the mass down to the ground and says what breaks first, what may happen when it
// goes wrong, and whether the plan is ready to hang.
//
// Strength is always the user's own statement; a check with a missing input is not known, unless the most favourable
// value of what is missing already gives way. Loads are static tensions of the drive times the factor for jerks φ, and
// events on lines of their own.
//
// Left out: fatigue but for the endurance of printed teeth; contact stress of teeth; local crushing and sideways
// tipping of steel beams; joints between beam and post; wind and earthquake on the frame; creep of rope; the twist of
// the gear train when the drum stops dead.
package path

import (
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Word is the verdict on one check.
type Word string

// The closed list of words.
const (
	Holds    Word = "holds"
	Tight    Word = "tight"
	GivesWay Word = "gives_way"
	NotKnown Word = "not_known"
)

// Check is one line of "what breaks first". Demand, Capacity, Had and Use are not known when an input is missing.
type Check struct {
	ID       string                 // from the closed list of model.md section 6
	Part     string                 // what it is, in plain words
	Of       string                 // where the hoist names it, where the ID alone does not tell: "structure.posts[1]"; see About
	Case     string                 // the load case that decides: "at rest", "lifting", "upper stop missed", …
	Demand   unit.Amount            // what is asked of it
	Capacity unit.Amount            // what it has, in the same measure
	Had      unit.Known[unit.Ratio] // Capacity/Demand
	Wanted   unit.Ratio
	OK       unit.Ratio             // had at or above this: holds
	Use      unit.Known[unit.Ratio] // Wanted/Had
	Word     Word
	Missing  []string     // paths inside the hoist of the inputs that are not known
	Say      say.Sentence // one plain sentence: what happens, and what would mend it
	Formula  string       // the formula in symbols
	Inputs   []Input      // the inputs with units
	Source   source.Ref
	Also     []source.Ref // further sources of its numbers
	Cases    []Case       // every load case that was looked at
}

// Case is one load case of a check, with its own unit and borders. Use is not known where the capacity is nothing.
type Case struct {
	Name     string
	Demand   unit.Amount
	Capacity unit.Amount
	Wanted   unit.Ratio
	OK       unit.Ratio
	Use      unit.Known[unit.Ratio]
}

// Input is one input of a check, ready to be shown behind "how".
type Input struct {
	Name  string
	Value unit.Amount
}

// forget takes the figures of a check back, where its word comes from what was seen and not from them.
func (c *Check) forget() {
	c.Demand, c.Capacity = unit.Amount{In: c.Demand.In}, unit.Amount{In: c.Capacity.In}
	c.Had, c.Use = unit.Known[unit.Ratio]{}, unit.Known[unit.Ratio]{}
}
