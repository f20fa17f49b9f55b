package search

import (
	"cmp"
	"fmt"
	"slices"

	"duskweight/internal/model"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Limits of a search through the shelf.
const (
	LongestTrain = 4       // stages in a row
	mostTrains   = 20000   // rows of stages that are tried
	mostTried    = 5000000 // combinations that are tried
	mostWorked   = 2000    // combinations that are worked out in full
	mostShort    = 200     // combinations kept that nearly lift or nearly come down
)

// Fits is what comes of trying every combination of the parts on the shelf in one hoist. Every combination that was tried is
// counted once: Tried is the sum of Stalls, Stuck, Passed less Worked, Do and the counts of Why and Unsure.
type Fits struct {
	Of     int // combinations there are, in rows of up to LongestTrain stages
	Tried  int
	Stalls int // the motor does not lift the mass
	Stuck  int // it lifts, and does not come down by itself
	Passed int // the rest; of these the first Worked, by what comes back of the work of lifting, are worked out in full
	Worked int
	Why    []Reason // of those worked out or refused as they stand, why they do not do, the most frequent first
	Unsure []Unsure // of those worked out, what is not known of their parts, the most frequent first
	Do     int      // how many do
	Found  []Fit    // those that do, the best first, and of each set of parts the best order of its stages alone

	Apart []reason.Reason // what stands against every combination alike, in a part that is not on the shelf: for the hoist to settle

	Longest int    // stages in a row that were tried: fewer than LongestTrain where there were too many
	Left    []Left // parts that were left out, as too little is known of them to compute with
	Lacks   string // what must be known before anything can be tried
}

// Left is a part of the shelf that was left out: its place in a list, and the inputs that are wanting, by their paths in the
// project. Of a pulley it is the number of them.
type Left struct {
	List  string // "motors"
	At    int
	Wants []string
}

// Reason is a first cause, and of how many combinations. Where they differ in their figures, Say has those of one of them.
type Reason struct {
	Say    say.Sentence
	Differ bool
	Count  int
}

// Unsure is the first thing that is not known of so many combinations: its path in the project where a part of the shelf does
// not say it, else in the variant.
type Unsure struct {
	Path  string
	Say   say.Sentence
	Count int
}

// causes counts first causes: two that differ only in their figures are one.
type causes struct {
	at   map[string]int
	list []Reason
}

func (c *causes) add(why say.Sentence, n int) {
	k, ok := c.at[why.Blank()]
	if !ok {
		if c.at == nil {
			c.at = map[string]int{}
		}
		k = len(c.list)
		c.at[why.Blank()], c.list = k, append(c.list, Reason{Say: why})
	}
	c.list[k].Count += n
	c.list[k].Differ = c.list[k].Differ || !why.Is(c.list[k].Say)
}

// Fit is a combination that lifts, comes down by itself and stays cool, in whose parts nothing gives way and everything is
// known.
type Fit struct {
	model.Combination
	Orders int // in how many other orders of the same stages it does too, none of them better
	Moves
}

// Moves is what a combination does, in few numbers.
type Moves struct {
	Ratio unit.Known[unit.Ratio]    // of all gears
	Up    unit.Known[unit.Speed]    // of the mass, lifting
	Time  unit.Known[unit.Duration] // of one lift
	Gives unit.Known[unit.Energy]   // what one lift gives back at the lamps
	Part  string                    // the part that is strained most of those that do not give way; empty where none is known
	Use   unit.Known[unit.Ratio]    // of that part
}

// rank puts those that do in order, the best first.
func (f *Fits) rank() {
	slices.SortStableFunc(f.Found, func(a, b Fit) int {
		return cmp.Or(cmp.Compare(b.Gives.Or(0), a.Gives.Or(0)), cmp.Compare(a.Use.Or(0), b.Use.Or(0)))
	})
	f.Do = len(f.Found)
	f.fold()
}

// fold keeps the best order of each set of parts.
func (f *Fits) fold() {
	first := map[string]int{}
	kept := f.Found[:0]
	for _, fit := range f.Found {
		key := setOf(fit.Combination)
		if k, ok := first[key]; ok {
			kept[k].Orders++
			continue
		}
		first[key] = len(kept)
		kept = append(kept, fit)
	}
	f.Found = kept
}

// setOf names the parts of a combination, in whatever order its stages stand.
func setOf(c model.Combination) string {
	c.Stages = slices.Sorted(slices.Values(c.Stages))
	return fmt.Sprint(c)
}
