package search

import (
	"cmp"
	"context"
	"math"
	"slices"
	"strings"

	"golang.org/x/sync/errgroup"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// CureWithin is how far one number may be changed to cure a combination that nearly does. Our own judgement.
const CureWithin = 0.25

const (
	mostNear  = 3  // misses that are told
	mostCured = 12 // sets of parts that a cure is looked for
)

// Miss is a combination against which exactly one reason stands, and which one changed number cures.
type Miss struct {
	model.Combination
	Moves
	Why   say.Sentence           // in few words
	Use   unit.Known[unit.Ratio] // of the part that gives way
	Cures []Cure                 // one or two, each alone: of the part that fails first
}

// Cure is one number of the hoist and what it would have to be; the combination was worked out again with it.
type Cure struct {
	What     What
	Path     string // inside the hoist
	Nth      int    // in its list
	Of       unit.Quantity
	From, To float64 // SI
	Buy      bool    // a strength, to be read on the label of another part
}

// Nearest are the misses that come nearest, of those worked out and of those that nearly lift or come down, the nearest
// first and each set of parts once. The error is that of a context that ended.
func (r *FitsRun) Nearest(ctx context.Context, workers int) ([]Miss, error) {
	apart := apartOf(r.done)
	seen, tried := map[string]bool{}, 0
	var out []Miss
	for _, j := range r.nearly(ctx, apart) {
		set := setOf(j.Combination)
		if seen[set] || tried == mostCured || len(out) == mostNear {
			continue
		}
		seen[set] = true
		if j.against == nil { // seen at first sight alone
			j = r.judge(j.Combination)
		}
		no, not := j.counted(apart)
		if len(no) != 1 || len(not) > 0 {
			continue
		}
		tried++
		cures, err := r.cures(ctx, j.Combination, no[0], apart, workers)
		if err != nil {
			return nil, err
		}
		if len(cures) > 0 {
			out = append(out, Miss{Combination: j.Combination, Moves: j.moves, Why: no[0].short, Use: no[0].use, Cures: cures})
		}
	}
	return out, ctx.Err()
}

// nearly are the combinations that may be near, the nearest first: those worked out against which one reason stands, by how
// far it is off, then those that nearly lift or come down, which are not worked out yet.
func (r *FitsRun) nearly(ctx context.Context, apart apart) []judged {
	type far struct {
		judged
		off float64
	}
	var all []far
	for _, j := range r.done {
		if ctx.Err() != nil {
			return nil
		}
		if no, not := j.counted(apart); len(no) == 1 && len(not) == 0 {
			off := 1 + CureWithin
			if no[0].use.Is {
				off = float64(no[0].use.Val)
			}
			all = append(all, far{j, off})
		}
	}
	for _, t := range r.short {
		all = append(all, far{judged{Combination: t.Combination}, 1 / t.back})
	}
	slices.SortStableFunc(all, func(a, b far) int { return cmp.Compare(a.off, b.off) })
	out := make([]judged, len(all))
	for i, f := range all {
		out[i] = f.judged
	}
	return out
}

// cures looks for the smallest change of one number that leaves nothing against a combination: one in the part that fails,
// and the mass that hangs; where neither does, the smallest of all others.
func (r *FitsRun) cures(ctx context.Context, c model.Combination, why against, apart apart, workers int) ([]Cure, error) {
	v := c.With(r.s.p, r.s.v, r.s.i)
	h := *v.HoistAt(r.s.i)
	numbers := numbersOf(&h)
	found := make([]Cure, 2*len(numbers))
	group, ctx := errgroup.WithContext(ctx)
	group.SetLimit(max(1, workers))
	for k, n := range numbers {
		for side, f := range []float64{1 + CureWithin, 1 - CureWithin} {
			if n.buy && f < 1 {
				continue
			}
			group.Go(func() error {
				found[2*k+side] = r.cure(ctx, v, h, n, f, c, apart)
				return ctx.Err()
			})
		}
	}
	if err := group.Wait(); err != nil {
		return nil, err
	}
	found = slices.DeleteFunc(found, func(c Cure) bool { return c.What == "" })
	slices.SortStableFunc(found, func(a, b Cure) int { return cmp.Compare(a.change(), b.change()) })
	part, _, _ := strings.Cut(strings.TrimPrefix(why.path, model.HoistPath(r.s.i)+"."), ".")
	part, _, _ = strings.Cut(part, "[")
	of := func(is func(Cure) bool) []Cure {
		if k := slices.IndexFunc(found, is); k >= 0 {
			return found[k : k+1 : k+1]
		}
		return nil
	}
	out := append(of(func(c Cure) bool { return strings.HasPrefix(c.Path, part) && c.What != WhatMass }), of(func(c Cure) bool { return c.What == WhatMass })...)
	if len(out) == 0 {
		return of(func(Cure) bool { return true }), nil
	}
	return out, nil
}

// change is by how much of itself the number changes.
func (c Cure) change() float64 { return math.Abs(c.To/c.From - 1) }

// cure is the smallest change of a number towards f times as much that leaves nothing against the combination, rounded away
// from what it is and worked out again; none where f times as much does not do.
func (r *FitsRun) cure(ctx context.Context, v model.Variant, h lift.Hoist, n number, f float64, c model.Combination, apart apart) (none Cure) {
	from, _ := n.get(&h)
	does := func(x float64) bool {
		if ctx.Err() != nil {
			return false
		}
		w := v.WithHoist(r.s.i, n.with(h, x))
		if len(model.CheckVariant(w).Under(model.HoistPath(r.s.i))) > 0 {
			return false
		}
		no, not := judgeFit(r.g.Hoist(w, r.s.i), c, r.s.i).counted(apart)
		return len(no)+len(not) == 0
	}
	if !does(from * f) {
		return none
	}
	near, far := 1.0, f
	for range 5 {
		if mid := (near + far) / 2; does(from * mid) {
			far = mid
		} else {
			near = mid
		}
	}
	to := rounded(from*far, f > 1)
	if math.Abs(to/from-1) > CureWithin+1e-9 || !does(to) {
		to = from * f
	}
	return Cure{What: n.what, Path: n.field, Nth: n.nth, Of: n.of, From: from, To: to, Buy: n.buy}
}

// rounded is x to one and a half digits more than its first, up or down: 109 down is 105, 0.0763 up is 0.0765.
func rounded(x float64, up bool) float64 {
	step := math.Pow(10, math.Floor(math.Log10(x))-1) / 2
	if up {
		return math.Ceil(x/step) * step
	}
	return math.Floor(x/step) * step
}
