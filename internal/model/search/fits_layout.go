package search

import (
	"cmp"
	"container/heap"
	"context"
	"fmt"
	"math"
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

	left    []Left
	longest int
	of      int // combinations there are
	most    int // drums, ropes and pulleys that are laid out together
	unlaid  int // of them, those of which too little is known together

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
	s.motors = s.usable("motors", len(shelf.Motors), func(m int) []string {
		c := own
		c.Motor = m
		h := s.hoist(c)
		t, ok := lift.TurnedOf(h)
		if ok {
			s.turned = append(s.turned, t)
			return nil
		}
		return wantingMotor(h, m)
	})
	if s.motors[0] == model.Own {
		t, ok := lift.TurnedOf(s.hoist(own))
		if !ok {
			return Fits{Lacks: "Neither the motor of the hoist nor one on the shelf has enough numbers. Give its constants, or those of its label."}, false
		}
		s.turned = []lift.Turned{t}
	}
	one := map[int]lift.Geared{} // a stage is the same wherever it stands
	stages := s.usable("stages", len(shelf.Stages), func(k int) []string {
		c := own
		c.Stages = []int{k}
		h := s.hoist(c)
		g, ok := lift.GearedOf(h)
		if ok {
			one[k] = g[0]
			return nil
		}
		return wanting(h, c, "train.stages[0]")
	})
	drums := s.usable("drums", len(shelf.Drums), func(k int) []string {
		return lacks(shelf.Drums[k].Drum.Diameter.Is, fmt.Sprintf("shelf.drums[%d].drum.diameter_m", k))
	})
	ropes := s.usable("ropes", len(shelf.Ropes), func(k int) []string {
		return lacks(shelf.Ropes[k].Rope.Diameter.Is, fmt.Sprintf("shelf.ropes[%d].rope.diameter_m", k))
	})
	need := model.PulleysOf(s.v.HoistAt(s.i).Reeving)
	pulleys := s.usable("pulleys", len(shelf.Pulleys), func(k int) []string {
		return lacks(int(shelf.Pulleys[k].Count.Or(1)) >= need, fmt.Sprintf("shelf.pulleys[%d].count", k))
	})
	if len(shelf.Pulleys) > 0 && pulleys[0] == model.Own {
		return Fits{Lacks: "Not enough pulleys of one kind lie on the shelf for the way of this rope."}, false
	}
	others := len(s.motors) * len(drums) * len(ropes) * len(pulleys)
	s.of = others * rows(stages, shelf.Stages, LongestTrain)
	for s.longest = LongestTrain; ; s.longest-- {
		var ok bool
		if s.trains, ok = trains(stages, shelf.Stages, s.longest); ok && others*len(s.trains) <= mostTried || s.longest == 1 {
			break
		}
	}
	s.most = max(1, mostTried/(len(s.motors)*len(s.trains)))
	for _, d := range drums {
		for _, r := range ropes {
			for _, y := range pulleys {
				if ctx.Err() != nil {
					return Fits{}, false
				}
				if s.most--; s.most < 0 {
					continue
				}
				v := model.Combination{Motor: model.Own, Drum: d, Rope: r, Pulley: y}.With(s.p, s.v, s.i)
				if ps := model.CheckVariant(v).Under(model.HoistPath(s.i)); len(ps) > 0 {
					s.refused.add(ps[0].Whole(), 1)
				} else if h, ok := lift.HungOf(v.Lifted(s.i)); ok {
					s.hung = append(s.hung, hung{d, r, y, h})
				} else {
					s.unlaid++
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

// screen tries every combination, and keeps the best of those that lift and come down, the best first, and those that nearly
// do.
func (s *layout) screen(ctx context.Context, workers int) (passed, short []tried, out Fits, err error) {
	var mu sync.Mutex
	all, nearly := best{most: mostWorked}, best{most: mostShort}
	group, ctx := errgroup.WithContext(ctx)
	group.SetLimit(workers)
	for k, h := range s.hung {
		group.Go(func() error {
			mine, almost := best{most: mostWorked}, best{most: mostShort}
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
						mine.add(tried{h.with(motor, train), one.Back, nth})
					}
					if one.Short > 1-CureWithin {
						almost.add(tried{h.with(motor, train), one.Short, nth})
					}
					nth++
				}
			}
			mu.Lock() // in any order: which are best does not hang on it
			defer mu.Unlock()
			for _, t := range mine.list {
				all.add(t)
			}
			for _, t := range almost.list {
				nearly.add(t)
			}
			out.Tried, out.Stalls, out.Stuck, out.Passed = out.Tried+sum.Tried, out.Stalls+sum.Stalls, out.Stuck+sum.Stuck, out.Passed+sum.Passed
			return nil
		})
	}
	if err := group.Wait(); err != nil {
		return nil, nil, Fits{}, err
	}
	slices.SortFunc(all.list, better)
	slices.SortFunc(nearly.list, better)
	return all.list, nearly.list, out, nil
}

// with is a combination with that drum, rope and pulley.
func (h hung) with(motor int, train []int) model.Combination {
	return model.Combination{Motor: motor, Drum: h.drum, Rope: h.rope, Pulley: h.pulley, Stages: train}
}

// usable are the places of a list of n parts of which nothing is wanting, or the hoist's own where there are none; the others
// are left out, with what is wanting.
func (s *layout) usable(list string, n int, wants func(int) []string) (out []int) {
	for i := range n {
		if w := wants(i); w == nil {
			out = append(out, i)
		} else {
			s.left = append(s.left, Left{List: list, At: i, Wants: w})
		}
	}
	if len(out) == 0 {
		return []int{model.Own}
	}
	return out
}

// wanting are the inputs that keep a part of the shelf from being computed with, by their paths in the project.
func wanting(h lift.Hoist, c model.Combination, part string) []string {
	out := []string{}
	for _, m := range lift.Compute(h).Missing {
		if at, ok := c.Shelved(m.Path); ok && model.Within(m.Path, part) {
			out = append(out, at)
		}
	}
	return out
}

// wantingMotor are those of the three numbers of a motor that neither it nor its label nor a measurement tells.
func wantingMotor(h lift.Hoist, m int) []string {
	out, c := []string{}, lift.Compute(h).Machine
	for _, x := range []struct {
		is   bool
		path string
	}{{c.R.Is, "r_ohm"}, {c.I0.Is, "i0_a"}, {c.K.Is, "k_vs_rad"}} {
		if !x.is {
			out = append(out, fmt.Sprintf("shelf.motors[%d].%s", m, x.path))
		}
	}
	return out
}

// lacks is a path where its input is not there.
func lacks(is bool, path string) []string {
	if is {
		return nil
	}
	return []string{path}
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

// rows is how many rows of one to so many of the stages there are, counted and not listed: of each length, its factorial times
// the sum over what may lie in it of 1 over the factorials of how often each stage does (exponential generating functions).
func rows(stages []int, shelf []model.SpareStage, longest int) int {
	if stages[0] == model.Own {
		return 1
	}
	ways := make([]float64, longest+1)
	ways[0] = 1
	for _, i := range stages {
		next := make([]float64, longest+1)
		for have, w := range ways {
			each := 1.0
			for n := 0; n <= int(shelf[i].Count.Or(1)) && have+n <= longest; n++ {
				if n > 0 {
					each /= float64(n)
				}
				next[have+n] += w * each
			}
		}
		ways = next
	}
	all, factorial := 0.0, 1.0
	for n := 1; n <= longest; n++ {
		factorial *= float64(n)
		all += factorial * ways[n]
	}
	return int(math.Round(all))
}

// best keeps the best, at most so many, as a heap whose worst stands first.
type best struct {
	list []tried
	most int
}

func better(a, b tried) int { return cmp.Or(cmp.Compare(b.back, a.back), cmp.Compare(a.nth, b.nth)) }

func (b *best) add(t tried) {
	switch {
	case len(b.list) < b.most:
		heap.Push(b, t)
	case better(t, b.list[0]) < 0:
		b.list[0] = t
		heap.Fix(b, 0)
	}
}

func (b *best) Len() int           { return len(b.list) }
func (b *best) Less(i, j int) bool { return better(b.list[i], b.list[j]) > 0 }
func (b *best) Swap(i, j int)      { b.list[i], b.list[j] = b.list[j], b.list[i] }
func (b *best) Push(x any)         { b.list = append(b.list, x.(tried)) }
func (b *best) Pop() any {
	t := b.list[len(b.list)-1]
	b.list = b.list[:len(b.list)-1]
	return t
}
