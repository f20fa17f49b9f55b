package search

import (
	"cmp"
	"container/heap"
	"context"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"golang.org/x/sync/errgroup"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/unit"
)

// Limits of a search through the shelf.
const (
	longestTrain = 4       // stages in a row
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

	Longest int     // stages in a row that were tried: fewer than longestTrain where there were too many
	Left    LeftOut // parts that were left out, as too little is known of them to compute with

	// TooMany says that there are more combinations than are tried: nothing was. Lacks says what must be known first.
	TooMany bool
	Lacks   string
}

// LeftOut are places on the shelf.
type LeftOut struct{ Motors, Stages, Drums, Ropes []int }

// Reason is a first cause, and of how many combinations.
type Reason struct {
	Say   string
	Count int
}

// Fit is a combination that lifts, comes down by itself, stays cool, and in which nothing gives way.
type Fit struct {
	model.Combination
	Orders int // in how many other orders of the same stages it does too, none of them better
	Hoist  *model.HoistResult
	Open   []string                // what is not known of it yet; empty where it is ready
	Gives  unit.Known[unit.Energy] // what one lift gives back at the lamps
	Use    float64                 // of the part that is strained most
}

// FitsOf tries every combination of the shelf's parts in the hoist at place i of a variant: each motor, drum, rope and kind
// of pulley, and every row of up to four stages. Where the shelf has none of a kind, the hoist keeps its own. First every
// combination is tried for whether it lifts and comes down (lift.Screen); then the best of the rest are worked out as the page
// of the hoist does. Ranked by readiness, then by what one lift gives back, then by the use of the tightest part. The same
// answer for any number of workers. The error is that of a context that ended.
func FitsOf(ctx context.Context, g model.Ground, p model.Project, v model.Variant, i, workers int) (Fits, error) {
	s := layout{p: p, v: v, i: i, refused: map[string]int{}}
	if out, ok := s.lay(); !ok {
		out.Left = s.left
		return out, nil
	}
	passed, out, err := s.screen(ctx, workers)
	if err != nil {
		return out, err
	}
	out.Left, out.Longest = s.left, s.longest
	out.Worked = len(passed)
	fits, why := make([]*Fit, len(passed)), make([]string, len(passed))
	group, ctx := errgroup.WithContext(ctx)
	group.SetLimit(workers)
	const some = 16
	for at := 0; at < len(passed); at += some {
		group.Go(func() error {
			for k := at; k < min(at+some, len(passed)); k++ {
				if ctx.Err() != nil {
					return ctx.Err()
				}
				fits[k], why[k] = fitOf(g.Hoist(passed[k].With(p, v, i), i), passed[k].Combination)
			}
			return nil
		})
	}
	if err := group.Wait(); err != nil {
		return out, err
	}
	count := map[string]int{}
	for say, n := range s.refused {
		n *= len(s.motors) * len(s.trains)
		out.Tried, count[sentence(say)] = out.Tried+n, n
	}
	out.rank(fits, why, count)
	return out, nil
}

// fitOf tells whether a combination that lifts and comes down at first sight does, or the first cause why not.
func fitOf(h *model.HoistResult, c model.Combination) (*Fit, string) {
	d := h.Drive
	switch {
	case h.Ready == "no":
		return nil, firstCause(h)
	case d.Lowering.Known && d.Lowering.RunsBack == "nudge":
		return nil, "It comes down only with a push."
	case d.HeatUp.Known && d.HeatUp.TooHot || d.HeatDown.Known && d.HeatDown.TooHot:
		return nil, "One run from cold already makes the motor too hot."
	}
	f := Fit{Combination: c, Hoist: h}
	if h.Ready != "yes" {
		f.Open = h.Reasons
	}
	if d.Lowering.Known && d.Lowering.Steady && !d.Lowering.Short {
		f.Gives = unit.Of(max(0, d.Lowering.EnergyOut))
	}
	for _, c := range h.Checks {
		if c.Word != path.NotKnown && c.ID != "holds" && c.ID != "stops" { // these two are counted, not strained
			f.Use = max(f.Use, float64(c.Use.Or(0)))
		}
	}
	return &f, ""
}

// firstCause is the first sentence of the first reason, without its numbers: "Gives way: the rope."
func firstCause(h *model.HoistResult) string {
	if len(h.Reasons) == 0 {
		return "It may not hang."
	}
	say, _, _ := strings.Cut(h.Reasons[0], ". ")
	return strings.TrimSuffix(numbers.ReplaceAllString(say, "…"), ".") + "."
}

// numbers are those that stand before a unit; a stage keeps its own.
var numbers = regexp.MustCompile(`[\d.,\x{00a0}]*\d(?:[ \x{00a0}](?:A|V|W|kg|N|kN|N·m|MPa|mm|m|s|°C|turns)\b)`)

// sentence is what a check says, as a sentence of its own.
func sentence(say string) string {
	return strings.ToUpper(say[:1]) + strings.TrimSuffix(say[1:], ".") + "."
}

// rank puts those that do in order, and counts for the others why; count holds those that were refused before.
func (f *Fits) rank(fits []*Fit, why []string, count map[string]int) {
	for k, fit := range fits {
		if fit != nil {
			f.Found = append(f.Found, *fit)
		} else {
			count[why[k]]++
		}
	}
	for say, n := range count {
		f.Why = append(f.Why, Reason{say, n})
	}
	slices.SortFunc(f.Why, func(a, b Reason) int {
		return cmp.Or(cmp.Compare(b.Count, a.Count), cmp.Compare(a.Say, b.Say))
	})
	slices.SortStableFunc(f.Found, func(a, b Fit) int {
		return cmp.Or(cmp.Compare(len(a.Open), len(b.Open)), cmp.Compare(b.Gives.Or(0), a.Gives.Or(0)), cmp.Compare(a.Use, b.Use))
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

// layout is the parts laid out: each kind with the hoist's own where the shelf has none, and what each comes to.
type layout struct {
	p model.Project
	v model.Variant
	i int

	motors []int
	trains [][]int
	hung   []hung // drum, rope and pulleys together

	left    LeftOut
	longest int

	refused map[string]int // how many drums, ropes and pulleys cannot stand together, by what is wrong

	turned []lift.Turned   // by motor
	geared [][]lift.Geared // by train
}

type hung struct {
	drum, rope, pulley int
	lift.Hung
}

// tried is one combination that lifts and comes down at first sight.
type tried struct {
	model.Combination
	back float64
	nth  int // in the order in which all are tried
}

// lay lays the parts out. It returns false, and why, where nothing can be tried.
func (s *layout) lay() (Fits, bool) {
	shelf := s.p.Shelf
	own := model.Combination{Motor: model.Own, Drum: model.Own, Rope: model.Own, Pulley: model.Own}
	s.motors = usable(len(shelf.Motors), &s.left.Motors, func(m int) bool {
		c := own
		c.Motor = m
		t, ok := lift.TurnedOf(s.hoist(c))
		if ok {
			s.turned = append(s.turned, t)
		}
		return ok
	})
	if s.motors[0] == model.Own {
		t, ok := lift.TurnedOf(s.hoist(own))
		if !ok {
			return Fits{Lacks: "The motor of the hoist has not the numbers to compute with, nor has one on the shelf: its constants, or those of its label."}, false
		}
		s.turned = []lift.Turned{t}
	}
	one := map[int]lift.Geared{} // a stage is the same wherever it stands
	stages := usable(len(shelf.Stages), &s.left.Stages, func(k int) bool {
		c := own
		c.Stages = []int{k}
		g, ok := lift.GearedOf(s.hoist(c))
		if ok {
			one[k] = g[0]
		}
		return ok
	})
	drums := usable(len(shelf.Drums), &s.left.Drums, func(k int) bool { return shelf.Drums[k].Drum.Diameter.Is })
	ropes := usable(len(shelf.Ropes), &s.left.Ropes, func(k int) bool { return shelf.Ropes[k].Rope.Diameter.Is })
	pulleys := places(len(shelf.Pulleys))
	need := model.PulleysOf(s.v.Stores[s.i].Hoist.Reeving)
	if len(shelf.Pulleys) > 0 {
		pulleys = slices.DeleteFunc(pulleys, func(k int) bool { return int(shelf.Pulleys[k].Count.Or(1)) < need })
		if len(pulleys) == 0 {
			return Fits{Lacks: "Not enough pulleys of one kind lie on the shelf for the way of this rope."}, false
		}
	}
	others := len(s.motors) * len(drums) * len(ropes) * len(pulleys)
	for s.longest = longestTrain; ; s.longest-- {
		var ok bool
		if s.trains, ok = trains(stages, shelf.Stages, s.longest); ok && others*len(s.trains) <= mostTried {
			break
		}
		if s.longest == 1 {
			return Fits{TooMany: true}, false
		}
	}
	for _, d := range drums {
		for _, r := range ropes {
			for _, y := range pulleys {
				v := model.Combination{Motor: model.Own, Drum: d, Rope: r, Pulley: y}.With(s.p, s.v, s.i)
				if ps := model.CheckVariant(v).Under(model.StorePath(s.i, "hoist")); len(ps) > 0 {
					s.refused[ps[0].Say]++
				} else if h, ok := lift.HungOf(v.Lifted(s.i)); ok {
					s.hung = append(s.hung, hung{d, r, y, h})
				}
			}
		}
	}
	if len(s.hung) == 0 && len(s.refused) == 0 {
		return Fits{Lacks: "Mass, travel, rope and drum of the hoist are needed first, and how the rope runs."}, false
	}
	for _, t := range s.trains {
		row := make([]lift.Geared, len(t))
		for k, n := range t {
			row[k] = one[n]
		}
		s.geared = append(s.geared, row)
	}
	if s.trains[0] == nil {
		c := own
		c.Motor = s.motors[0]
		var ok bool
		if s.geared[0], ok = lift.GearedOf(s.hoist(c)); !ok {
			return Fits{Lacks: "The gears of the hoist have not the numbers to compute with, nor has a stage on the shelf: ratio and efficiency."}, false
		}
	}
	return Fits{}, true
}

// hoist is the hoist with those parts, as it is computed.
func (s *layout) hoist(c model.Combination) lift.Hoist { return c.With(s.p, s.v, s.i).Lifted(s.i) }

// screen tries every combination, and keeps the best of those that lift and come down, the best first.
func (s *layout) screen(ctx context.Context, workers int) ([]tried, Fits, error) {
	parts, sums := make([]best, len(s.hung)), make([]Fits, len(s.hung))
	group, ctx := errgroup.WithContext(ctx)
	group.SetLimit(workers)
	for k, h := range s.hung {
		group.Go(func() error {
			nth := k * len(s.motors) * len(s.trains)
			for m, motor := range s.motors {
				if ctx.Err() != nil {
					return ctx.Err()
				}
				for t, train := range s.trains {
					one := lift.Screen(h.Hung, s.geared[t], s.turned[m])
					sums[k].Tried++
					switch {
					case one.Stalls:
						sums[k].Stalls++
					case one.Stuck:
						sums[k].Stuck++
					default:
						sums[k].Passed++
						parts[k].add(tried{model.Combination{Motor: motor, Drum: h.drum, Rope: h.rope, Pulley: h.pulley, Stages: train}, one.Back, nth})
					}
					nth++
				}
			}
			return nil
		})
	}
	if err := group.Wait(); err != nil {
		return nil, Fits{}, err
	}
	var all best
	var out Fits
	for k := range parts {
		for _, t := range parts[k] {
			all.add(t)
		}
		out.Tried, out.Stalls, out.Stuck, out.Passed = out.Tried+sums[k].Tried, out.Stalls+sums[k].Stalls, out.Stuck+sums[k].Stuck, out.Passed+sums[k].Passed
	}
	slices.SortFunc(all, better)
	return all, out, nil
}

// usable are the places of a list of n whose parts can be computed with, or the hoist's own where there are none; the others
// are left out.
func usable(n int, left *[]int, can func(int) bool) (out []int) {
	for i := range n {
		if can(i) {
			out = append(out, i)
		} else {
			*left = append(*left, i)
		}
	}
	if len(out) == 0 {
		return []int{model.Own}
	}
	return out
}

// places are the places of a list of n, or the hoist's own where it is empty.
func places(n int) []int {
	if n == 0 {
		return []int{model.Own}
	}
	out := make([]int, n)
	for i := range out {
		out[i] = i
	}
	return out
}

// trains are all rows of one to so many of the stages, none of them more often than it lies there; nil alone for the hoist's
// own. False where there are more than mostTrains.
func trains(stages []int, shelf []model.SpareStage, longest int) ([][]int, bool) {
	if stages[0] == model.Own {
		return [][]int{nil}, true
	}
	var out [][]int
	left := make([]int, len(shelf))
	for _, i := range stages {
		left[i] = int(shelf[i].Count.Or(1))
	}
	var grow func(row []int) bool
	grow = func(row []int) bool {
		for _, i := range stages {
			if left[i] == 0 {
				continue
			}
			if len(out) == mostTrains {
				return false
			}
			next := append(slices.Clone(row), i)
			out = append(out, next)
			if len(next) == longest {
				continue
			}
			left[i]--
			ok := grow(next)
			left[i]++
			if !ok {
				return false
			}
		}
		return true
	}
	ok := grow(nil)
	return out, ok
}

// best keeps the mostWorked best, as a heap whose worst stands first.
type best []tried

func better(a, b tried) int { return cmp.Or(cmp.Compare(b.back, a.back), cmp.Compare(a.nth, b.nth)) }

func (b *best) add(t tried) {
	switch {
	case len(*b) < mostWorked:
		heap.Push(b, t)
	case better(t, (*b)[0]) < 0:
		(*b)[0] = t
		heap.Fix(b, 0)
	}
}

func (b best) Len() int           { return len(b) }
func (b best) Less(i, j int) bool { return better(b[i], b[j]) > 0 }
func (b best) Swap(i, j int)      { b[i], b[j] = b[j], b[i] }
func (b *best) Push(x any)        { *b = append(*b, x.(tried)) }
func (b *best) Pop() any {
	t := (*b)[len(*b)-1]
	*b = (*b)[:len(*b)-1]
	return t
}
