package search

import (
	"cmp"
	"context"
	"fmt"
	"slices"

	"golang.org/x/sync/errgroup"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
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
)

// Fits is what comes of trying every combination of the parts on the shelf in one hoist.
type Fits struct {
	Tried  int
	Stalls int // the motor does not lift the mass
	Stuck  int // it lifts, and does not come down by itself
	Passed int // the rest; of these the first Worked, by what comes back of the work of lifting, are worked out in full
	Worked int
	Why    []Reason // of those worked out or refused as they stand, why they do not do, the most frequent first
	Do     int      // how many do
	Found  []Fit    // those that do, the best first, and of each set of parts the best order of its stages alone

	Longest int     // stages in a row that were tried: fewer than LongestTrain where there were too many
	Left    LeftOut // parts that were left out, as too little is known of them to compute with

	// TooMany says that there are more combinations than are tried: nothing was. Lacks says what must be known first.
	TooMany bool
	Lacks   string
}

// LeftOut are places on the shelf.
type LeftOut struct{ Motors, Stages, Drums, Ropes []int }

// Reason is a first cause, and of how many combinations. Where they differ in their figures, Say has those of one of them.
type Reason struct {
	Say    say.Sentence
	Differ bool
	Count  int
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

// Fit is a combination that lifts, comes down by itself, stays cool, and in which nothing gives way.
type Fit struct {
	model.Combination
	Orders int // in how many other orders of the same stages it does too, none of them better
	Hoist  *model.HoistResult
	Open   []say.Sentence          // what is not known of it yet; empty where it is ready
	Gives  unit.Known[unit.Energy] // what one lift gives back at the lamps
	Tight  path.Check              // of the part that is strained most; its Use is not known where none is
}

// FitsOf tries every combination of the shelf's parts in the hoist at place i of a variant: each motor, drum, rope and kind
// of pulley, and every row of up to four stages. Where the shelf has none of a kind, the hoist keeps its own. First every
// combination is tried for whether it lifts and comes down (lift.Screen); then the best of the rest are worked out as the page
// of the hoist does. Ranked by readiness, then by what one lift gives back, then by the use of the tightest part. The same
// answer for any number of workers. The error is that of a context that ended.
func FitsOf(ctx context.Context, g model.Ground, p model.Project, v model.Variant, i, workers int) (Fits, error) {
	s := layout{p: p, v: v, i: i}
	if out, ok := s.lay(ctx); !ok {
		out.Left = s.left
		return out, ctx.Err()
	}
	passed, out, err := s.screen(ctx, workers)
	if err != nil {
		return out, err
	}
	out.Left, out.Longest = s.left, s.longest
	out.Worked = len(passed)
	fits, why, err := s.workOut(ctx, g, passed, workers)
	if err != nil {
		return out, err
	}
	for k := range s.refused.list {
		r := &s.refused.list[k]
		r.Count *= len(s.motors) * len(s.trains)
		out.Tried += r.Count
	}
	out.rank(fits, why, s.refused)
	return out, nil
}

// workOut works combinations out in full: for each whether it does, or the first cause why not.
func (s *layout) workOut(ctx context.Context, g model.Ground, passed []tried, workers int) ([]*Fit, []say.Sentence, error) {
	fits, why := make([]*Fit, len(passed)), make([]say.Sentence, len(passed))
	group, ctx := errgroup.WithContext(ctx)
	group.SetLimit(workers)
	const some = 16
	for at := 0; at < len(passed); at += some {
		group.Go(func() error {
			for k := at; k < min(at+some, len(passed)); k++ {
				if ctx.Err() != nil {
					return ctx.Err()
				}
				fits[k], why[k] = fitOf(g.Hoist(passed[k].With(s.p, s.v, s.i), s.i), passed[k].Combination)
			}
			return nil
		})
	}
	return fits, why, group.Wait()
}

// fitOf tells whether a combination that lifts and comes down at first sight does, or the first cause why not.
func fitOf(h *model.HoistResult, c model.Combination) (*Fit, say.Sentence) {
	d := h.Drive
	switch {
	case h.Ready == reason.No:
		return nil, firstCause(h)
	case d.Lowering.Known && d.Lowering.RunsBack == lift.DownNudge:
		return nil, say.That("It comes down only with a push.")
	case d.HeatUp.Known && d.HeatUp.TooHot || d.HeatDown.Known && d.HeatDown.TooHot:
		return nil, say.That("One run from cold already makes the motor too hot.")
	}
	f := Fit{Combination: c, Hoist: h}
	if h.Ready != reason.Yes {
		for _, b := range h.Because {
			f.Open = append(f.Open, b.Text())
		}
	}
	if d.Lowering.Known && d.Lowering.Steady {
		f.Gives = unit.Of(max(0, d.Lowering.EnergyOut))
	}
	for _, c := range h.Checks {
		counted := c.ID == "holds" || c.ID == "stops" // not strained
		if c.Word != path.NotKnown && !counted && c.Use.Is && (!f.Tight.Use.Is || c.Use.Val > f.Tight.Use.Val) {
			f.Tight = c
		}
	}
	return &f, say.Sentence{}
}

// firstCause is the first reason in few words: "Gives way: the rope."
func firstCause(h *model.HoistResult) say.Sentence {
	if len(h.Because) == 0 {
		return say.That("It may not hang.")
	}
	return h.Because[0].Short()
}

// rank puts those that do in order, and counts for the others why; had are those that were refused before.
func (f *Fits) rank(fits []*Fit, why []say.Sentence, had causes) {
	for k, fit := range fits {
		if fit != nil {
			f.Found = append(f.Found, *fit)
		} else {
			had.add(why[k], 1)
		}
	}
	f.Why = had.list
	slices.SortFunc(f.Why, func(a, b Reason) int {
		return cmp.Or(cmp.Compare(b.Count, a.Count), cmp.Compare(a.Say.String(), b.Say.String()))
	})
	slices.SortStableFunc(f.Found, func(a, b Fit) int {
		return cmp.Or(cmp.Compare(len(a.Open), len(b.Open)), cmp.Compare(b.Gives.Or(0), a.Gives.Or(0)), cmp.Compare(a.Tight.Use.Or(0), b.Tight.Use.Or(0)))
	})
	f.Do = len(f.Found)
	f.fold()
}

// fold keeps the best order of each set of parts.
func (f *Fits) fold() {
	first := map[string]int{}
	kept := f.Found[:0]
	for _, fit := range f.Found {
		same := fit.Combination
		same.Stages = slices.Sorted(slices.Values(same.Stages))
		key := fmt.Sprint(same)
		if k, ok := first[key]; ok {
			kept[k].Orders++
			continue
		}
		first[key] = len(kept)
		kept = append(kept, fit)
	}
	f.Found = kept
}
