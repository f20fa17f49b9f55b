package search

import (
	"cmp"
	"container/heap"
	"context"
	"slices"
	"sync"

	"golang.org/x/sync/errgroup"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
)

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

	refused causes // how many drums, ropes and pulleys cannot stand together, by what is wrong

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

// lay lays the parts out. It returns false, and why, where nothing can be tried or the context ended.
func (s *layout) lay(ctx context.Context) (Fits, bool) {
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
	var few []int
	need := model.PulleysOf(s.v.HoistAt(s.i).Reeving)
	pulleys := usable(len(shelf.Pulleys), &few, func(k int) bool { return int(shelf.Pulleys[k].Count.Or(1)) >= need })
	if len(few) > 0 && len(few) == len(shelf.Pulleys) {
		return Fits{Lacks: "Not enough pulleys of one kind lie on the shelf for the way of this rope."}, false
	}
	others := len(s.motors) * len(drums) * len(ropes) * len(pulleys)
	for s.longest = LongestTrain; ; s.longest-- {
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
				if ctx.Err() != nil {
					return Fits{}, false
				}
				v := model.Combination{Motor: model.Own, Drum: d, Rope: r, Pulley: y}.With(s.p, s.v, s.i)
				if ps := model.CheckVariant(v).Under(model.HoistPath(s.i)); len(ps) > 0 {
					s.refused.add(ps[0].Whole(), 1)
				} else if h, ok := lift.HungOf(v.Lifted(s.i)); ok {
					s.hung = append(s.hung, hung{d, r, y, h})
				}
			}
		}
	}
	if len(s.hung) == 0 && len(s.refused.list) == 0 {
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
	var (
		mu  sync.Mutex
		all best
		out Fits
	)
	group, ctx := errgroup.WithContext(ctx)
	group.SetLimit(workers)
	for k, h := range s.hung {
		group.Go(func() error {
			var mine best
			var sum Fits
			nth := k * len(s.motors) * len(s.trains)
			for m, motor := range s.motors {
				if ctx.Err() != nil {
					return ctx.Err()
				}
				for t, train := range s.trains {
					one := lift.Screen(h.Hung, s.geared[t], s.turned[m])
					sum.Tried++
					switch {
					case one.Stalls:
						sum.Stalls++
					case one.Stuck:
						sum.Stuck++
					default:
						sum.Passed++
						mine.add(tried{model.Combination{Motor: motor, Drum: h.drum, Rope: h.rope, Pulley: h.pulley, Stages: train}, one.Back, nth})
					}
					nth++
				}
			}
			mu.Lock() // in any order: which are best does not hang on it
			defer mu.Unlock()
			for _, t := range mine {
				all.add(t)
			}
			out.Tried, out.Stalls, out.Stuck, out.Passed = out.Tried+sum.Tried, out.Stalls+sum.Stalls, out.Stuck+sum.Stuck, out.Passed+sum.Passed
			return nil
		})
	}
	if err := group.Wait(); err != nil {
		return nil, Fits{}, err
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
