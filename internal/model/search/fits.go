package search

import (
	"cmp"
	"container/heap"
	"context"
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
	Found  []Fit    // those that do, the best first

	// TooMany says that there are more combinations than are tried: nothing was. Lacks says what must be known first.
	TooMany bool
	Lacks   string
}

// Reason is a first cause, and of how many combinations.
type Reason struct {
	Say   string
	Count int
}

// Fit is a combination that lifts, comes down by itself, stays cool, and in which nothing gives way.
type Fit struct {
	model.Combination
	Hoist *model.HoistResult
	Open  []string                // what is not known of it yet; empty where it is ready
	Gives unit.Known[unit.Energy] // what one lift gives back at the lamps
	Use   float64                 // of the part that is strained most
}

// FitsOf tries every combination of the shelf's parts in the hoist at place i of a variant: each motor, drum, rope and kind
// of pulley, and every row of up to four stages. Where the shelf has none of a kind, the hoist keeps its own. First every
// combination is tried for whether it lifts and comes down (lift.Screen); then the best of the rest are worked out as the page
// of the hoist does. Ranked by readiness, then by what one lift gives back, then by the use of the tightest part. The same
// answer for any number of workers. The error is that of a context that ended.
func FitsOf(ctx context.Context, g model.Ground, p model.Project, v model.Variant, i, workers int) (Fits, error) {
	s := layout{p: p, v: v, i: i, refused: map[string]int{}}
	if out, ok := s.lay(); !ok {
		return out, nil
	}
	passed, out, err := s.screen(ctx, workers)
	if err != nil {
		return out, err
	}
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

// firstCause is the first reason in few words: "Gives way: the rope", without its numbers.
func firstCause(h *model.HoistResult) string {
	if len(h.Reasons) == 0 {
		return "It may not hang."
	}
	say, _, cut := strings.Cut(h.Reasons[0], ". ")
	if say, _, _ = strings.Cut(say, ":"); say == "Gives way" {
		say, _, _ = strings.Cut(h.Reasons[0], ". ")
	}
	if cut || !strings.HasSuffix(say, ".") {
		say += "."
	}
	return say
}

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
}

// layout is the parts laid out: each kind with the hoist's own where the shelf has none, and what each comes to.
type layout struct {
	p model.Project
	v model.Variant
	i int

	motors []int
	trains [][]int
	hung   []hung // drum, rope and pulleys together

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
	shelf, own := s.p.Shelf, s.v.Stores[s.i].Hoist
	s.motors = places(len(shelf.Motors))
	var ok bool
	if s.trains, ok = trains(shelf.Stages); !ok {
		return Fits{TooMany: true}, false
	}
	drums, ropes, pulleys := places(len(shelf.Drums)), places(len(shelf.Ropes)), places(len(shelf.Pulleys))
	need := model.PulleysOf(own.Reeving)
	if len(shelf.Pulleys) > 0 {
		pulleys = slices.DeleteFunc(pulleys, func(k int) bool { return int(shelf.Pulleys[k].Count.Or(1)) < need })
		if len(pulleys) == 0 {
			return Fits{Lacks: "Not enough pulleys of one kind lie on the shelf for the way of this rope."}, false
		}
	}
	if n := len(s.motors) * len(s.trains) * len(drums) * len(ropes) * len(pulleys); n > mostTried {
		return Fits{TooMany: true}, false
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
	s.motors = slices.DeleteFunc(s.motors, func(m int) bool {
		t, ok := lift.TurnedOf(s.hoist(model.Combination{Motor: m, Drum: model.Own, Rope: model.Own, Pulley: model.Own}))
		if ok {
			s.turned = append(s.turned, t)
		}
		return !ok
	})
	if len(s.motors) == 0 {
		return Fits{Lacks: "No motor has the numbers to compute with: its constants, or those of its label."}, false
	}
	s.trains = slices.DeleteFunc(s.trains, func(t []int) bool {
		g, ok := lift.GearedOf(s.hoist(model.Combination{Motor: s.motors[0], Drum: model.Own, Rope: model.Own, Pulley: model.Own, Stages: t}))
		if ok {
			s.geared = append(s.geared, g)
		}
		return !ok
	})
	if len(s.trains) == 0 {
		return Fits{Lacks: "No gear stage has the numbers to compute with: its ratio and efficiency."}, false
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

// trains are all rows of one to longestTrain stages, none of them more often than it lies there; nil alone where the shelf
// has none. False where there are more than mostTrains.
func trains(stages []model.SpareStage) ([][]int, bool) {
	if len(stages) == 0 {
		return [][]int{nil}, true
	}
	var out [][]int
	left := make([]int, len(stages))
	for i, s := range stages {
		left[i] = int(s.Count.Or(1))
	}
	var grow func(row []int) bool
	grow = func(row []int) bool {
		for i := range stages {
			if left[i] == 0 {
				continue
			}
			if len(out) == mostTrains {
				return false
			}
			next := append(slices.Clone(row), i)
			out = append(out, next)
			if len(next) == longestTrain {
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
