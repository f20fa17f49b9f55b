package search

import (
	"cmp"
	"context"
	"maps"
	"slices"
	"sync/atomic"

	"golang.org/x/sync/errgroup"

	"duskweight/internal/model"
	"duskweight/internal/say"
)

// FitsRun is a search through the shelf in the making: every combination was tried at first sight, Until works more of them
// out, and Fits tells what comes of it so far.
type FitsRun struct {
	g      model.Ground
	s      layout
	counts Fits    // of the screen
	passed []tried // that are to be worked out, the best first
	short  []tried // that nearly lift or nearly come down, the nearest first
	done   []judged
	own    *model.HoistResult // with its own parts
}

// NewFits lays the shelf out in the hoist at place i of a variant and tries every combination for whether it lifts and comes
// down: each motor, drum, rope and kind of pulley, and every row of up to four stages. Where the shelf has none of a kind, the
// hoist keeps its own. Until then works out the best of the rest as the page of the hoist does. What stands against all of them
// alike, in a part that is not on the shelf, is told apart and counts against none. The same answer for any number of workers.
// The error is that of a context that ended.
func NewFits(ctx context.Context, g model.Ground, p model.Project, v model.Variant, i, workers int) (*FitsRun, error) {
	r := &FitsRun{g: g, s: layout{p: p, v: v, i: i}}
	if out, ok := r.s.lay(ctx); !ok {
		r.counts = out
		return r, ctx.Err()
	}
	var err error
	if r.passed, r.short, r.counts, err = r.s.screen(ctx, workers); err != nil {
		return nil, err
	}
	r.own = g.Hoist(v, i)
	return r, nil
}

// Size is how many combinations are to be worked out in full.
func (r *FitsRun) Size() int { return len(r.passed) }

// Until works the first n of those out that lift and come down. progress, where given, is told how many are done. It stops
// when the context ends, and then holds what it held before.
func (r *FitsRun) Until(ctx context.Context, n, workers int, progress func(done int)) error {
	from, n := len(r.done), min(n, len(r.passed))
	if n <= from {
		return ctx.Err()
	}
	more := make([]judged, n-from)
	group, ctx := errgroup.WithContext(ctx)
	group.SetLimit(max(1, workers))
	var done atomic.Int64
	const some = 16
	for at := 0; at < len(more); at += some {
		group.Go(func() error {
			for k := at; k < min(at+some, len(more)); k++ {
				if ctx.Err() != nil {
					return ctx.Err()
				}
				more[k] = r.judge(r.passed[from+k].Combination)
				done.Add(1)
			}
			return nil
		})
		if progress != nil {
			progress(from + int(done.Load()))
		}
	}
	if err := group.Wait(); err != nil {
		return err
	}
	r.done = append(r.done, more...)
	return nil
}

// judge works a combination out as the page of the hoist does.
func (r *FitsRun) judge(c model.Combination) judged {
	return judgeFit(r.hoist(c), c, r.s.i)
}

func (r *FitsRun) hoist(c model.Combination) *model.HoistResult {
	return r.g.Hoist(c.With(r.s.p, r.s.v, r.s.i), r.s.i)
}

// Fits is what comes of those worked out so far.
func (r *FitsRun) Fits() Fits {
	out := r.counts
	out.Of, out.Left, out.Longest, out.Worked = r.s.of, slices.Clone(r.s.left), r.s.longest, len(r.done)
	if out.Lacks != "" {
		return out
	}
	apart := apartOf(r.done)
	if len(r.done) > 0 {
		out.Apart = apart.reasons(r.own.Because, r.hoist(r.done[0].Combination).Because)
	}
	each := len(r.s.motors) * len(r.s.trains)
	why := causes{at: maps.Clone(r.s.refused.at), list: slices.Clone(r.s.refused.list)}
	for k := range why.list {
		why.list[k].Count *= each
		out.Tried += why.list[k].Count
	}
	unsure := map[string]*Unsure{}
	open := func(path string, s say.Sentence, n int) {
		if unsure[path] == nil {
			unsure[path] = &Unsure{Path: path, Say: s}
		}
		unsure[path].Count += n
	}
	if n := r.s.unlaid * each; n > 0 {
		open(model.HoistPath(r.s.i), say.That("Too little is known of drum, rope and mass together."), n)
		out.Tried += n
	}
	for _, j := range r.done {
		no, not := j.counted(apart)
		switch {
		case len(no) > 0:
			why.add(no[0].short, 1)
		case len(not) > 0:
			open(not[0].at, not[0].short, 1)
		default:
			out.Found = append(out.Found, Fit{Combination: j.Combination, Moves: j.moves})
		}
	}
	out.Why = why.list
	slices.SortFunc(out.Why, func(a, b Reason) int {
		return cmp.Or(cmp.Compare(b.Count, a.Count), cmp.Compare(a.Say.String(), b.Say.String()))
	})
	for _, u := range unsure {
		out.Unsure = append(out.Unsure, *u)
	}
	slices.SortFunc(out.Unsure, func(a, b Unsure) int { return cmp.Or(cmp.Compare(b.Count, a.Count), cmp.Compare(a.Path, b.Path)) })
	out.rank()
	return out
}
