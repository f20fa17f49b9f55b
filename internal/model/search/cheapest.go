package search

import (
	"cmp"
	"context"
	"math"
	"slices"
	"sync"

	"duskweight/internal/model"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/reservoir"
	"duskweight/internal/model/unit"
	"duskweight/internal/model/year"
	"duskweight/internal/say"
)

// Cheapest is what a variant costs against its full nights, over other numbers of panels, sizes of its stores and tilts.
type Cheapest struct {
	WhyNot say.Sentence // why nothing could be tried, without a full stop

	Front  []Plan // from the cheapest on, each with more full nights than every cheaper one; without costs, see Lacks
	Best   int    // in Front: the cheapest with so many nights as are Needed; −1 for none
	Today  Plan   // the variant as it is
	Tried  int    // plans
	Nights int    // that count
	Needed int    // full ones
	Most   int    // full nights of the best of all plans that were tried
	Lacks  []Lack // why no cost is known; then Front is what has the nights that are needed with the fewest panels

	Panels, Blocks [2]int      // least and most that were tried
	Counted        *model.Kind // whose blocks are counted; nil for none
	Sized          *model.Kind // of which a half, all and twice the size was tried, and none of it
	Tilts          int         // how many were tried
}

// badYears is on how many made years the plans of the front are run again, for the bad year in ten (home questions 5.2).
const badYears = 20

// CheapestOf tries all plans, so many workers side by side; the numbers are the same for any number of them. progress, where
// given, is told how many plans are done, one call at a time. It stops when the context ends.
//
// The power at the line is computed once for each tilt and grows with the panels. Nights are first those of batteries in the
// last year of their life, drawn with the current of the mean night; every plan that may stand on the front is then run like
// any other variant.
func CheapestOf(ctx context.Context, g model.Ground, v model.Variant, workers int, progress func(done, of int)) (Cheapest, error) {
	if g.Sky == nil {
		return Cheapest{Best: -1, WhyNot: say.Words("the place is not known")}, nil
	}
	now := g.Evaluate(v)
	if open := openNow(now); !open.IsZero() {
		return Cheapest{Best: -1, WhyNot: open}, nil
	}
	t := gridOf(g, v, now)
	if t.total == 0 {
		return Cheapest{Best: -1, WhyNot: say.Words("there is no panel yet")}, nil
	}
	if now.Last.Nights == 0 {
		return Cheapest{Best: -1, WhyNot: say.Words("nothing is asked of the night")}, nil
	}
	h := &hunt{grid: t, workers: max(1, workers), progress: progress}
	out := t.told(now)
	if err := h.light(ctx); err != nil {
		return Cheapest{}, err
	}
	if err := h.nights(ctx); err != nil {
		return Cheapest{}, err
	}
	out.Tried = len(h.plans)
	if err := h.settle(ctx, &out); err != nil {
		return Cheapest{}, err
	}
	return out, nil
}

// told is what is known of the search before it.
func (t *grid) told(now model.VariantResult) Cheapest {
	out := Cheapest{Best: -1, Nights: now.Last.Nights, Needed: needed(float64(t.ground.Project.Target.Or(Target)), now.Last.Nights), Lacks: t.lacks(),
		Panels: [2]int{t.panels[0], t.panels[len(t.panels)-1]}, Blocks: [2]int{t.blocks[0], t.blocks[len(t.blocks)-1]}, Tilts: len(t.tilts)}
	if t.counted >= 0 {
		out.Counted = t.v.Stores[t.counted].Kind()
	}
	if t.sized >= 0 {
		out.Sized = t.v.Stores[t.sized].Kind()
	}
	return out
}

// Made is the variant with a choice of its search, and whether the search has it.
func Made(g model.Ground, v model.Variant, c Choice) (model.Variant, bool) {
	if g.Sky == nil {
		return v, false
	}
	t := gridOf(g, v, g.Evaluate(v))
	if t.total == 0 || !t.has(c) {
		return v, false
	}
	made := t.variant(c)
	made.Origins = t.origins(c)
	return made, true
}

// hunt is a search in the making.
type hunt struct {
	*grid
	workers  int
	progress func(done, of int)

	lit   []lit // by tilt
	plans []Plan
}

// lit is the light on the arrays at one tilt, and what the panels of today bring to the line there.
type lit struct {
	lights []panel.Light
	bus    *panel.Bus
}

// side runs n jobs, several at a time. job is told which worker it is.
func (h *hunt) side(ctx context.Context, n int, job func(worker, i int) error) error {
	return cmp.Or(shareJobs(ctx, n, h.workers, job), ctx.Err())
}

// light works out the sun at each tilt.
func (h *hunt) light(ctx context.Context) error {
	h.lit = make([]lit, len(h.tilts))
	c := h.now()
	return h.side(ctx, len(h.tilts), func(_, i int) error {
		c := c
		c.Tilt, c.Turned = h.tilts[i].angle, h.tilts[i].turned
		h.lit[i].lights, h.lit[i].bus, _ = h.ground.Harvest(h.variant(c)) // nothing stands against them: the variant's own year is known
		return nil
	})
}

// nights finds the full nights of every plan, a tilt and a number of panels at a time.
func (h *hunt) nights(ctx context.Context) error {
	fields, sizes := len(h.tilts)*len(h.panels), len(h.blocks)*len(h.factors)
	h.plans = make([]Plan, fields*sizes)
	tanks, err := h.tanks(ctx)
	if err != nil {
		return err
	}
	var mu sync.Mutex
	done := 0
	spaces, power := make([]year.Workspace, h.workers), make([][]float64, h.workers)
	return h.side(ctx, fields, func(w, i int) error {
		tilt, panels := i/len(h.panels), h.panels[i%len(h.panels)]
		power[w] = times(power[w], h.lit[tilt].bus.Power, float64(panels)/float64(h.total))
		for k := range sizes {
			c := Choice{Panels: panels, Blocks: h.blocks[k%len(h.blocks)], Factor: h.factors[k/len(h.blocks)], Tilt: h.tilts[tilt].angle, Turned: h.tilts[tilt].turned}
			own := tanks[k]
			if own.beside {
				stores, _, _ := h.ground.Tanks(h.variant(c), h.lit[tilt].lights)
				own.stores = stores
			}
			h.plans[i*sizes+k] = Plan{Choice: c, Nights: spaces[w].Quick(power[w], own.demand, own.stores).NightsFull}
			if ctx.Err() != nil {
				return ctx.Err()
			}
		}
		if h.progress != nil {
			mu.Lock()
			defer mu.Unlock()
			done += sizes
			h.progress(done, len(h.plans))
		}
		return nil
	})
}

// tanks are the stores of one size, the same under every sun unless one has a source of its own beside the line.
type tanks struct {
	stores []reservoir.Reservoir
	demand *year.Demand
	beside bool
}

func (h *hunt) tanks(ctx context.Context) ([]tanks, error) {
	out := make([]tanks, len(h.blocks)*len(h.factors))
	c := h.now()
	err := h.side(ctx, len(out), func(_, k int) error {
		c := c
		c.Blocks, c.Factor = h.blocks[k%len(h.blocks)], h.factors[k/len(h.blocks)]
		stores, in, beside := h.ground.Tanks(h.variant(c), h.lit[0].lights)
		out[k] = tanks{stores: stores, beside: beside}
		if k == 0 {
			out[0].demand = year.NewManagedDemand(year.Hours, in.Standing, in.Essential, in.Nice, in.Night, in.Managed)
		}
		return nil
	})
	for k := range out { // what is used all the time does not hang on the size of a store: its own stands in the reservoir
		out[k].demand = out[0].demand
	}
	return out, err
}

// times writes v times f into room.
func times(room, v []float64, f float64) []float64 {
	room = slices.Grow(room[:0], len(v))[:len(v)]
	for h, x := range v {
		room[h] = f * x
	}
	return room
}

// tried runs a plan like any other variant and tells its nights and its money.
func (h *hunt) tried(draft *year.Draft, c Choice) Plan {
	i := slices.Index(h.tilts, turn{c.Tilt, c.Turned})
	bus := *h.lit[i].bus
	bus.Power = times(nil, bus.Power, float64(c.Panels)/float64(h.total))
	r := h.ground.Tried(draft, h.variant(c), h.lit[i].lights, &bus)
	return Plan{Choice: c, Nights: r.Last.NightsFull, Low: r.Cost.Low.Whole, Cost: r.Cost.Whole, High: r.Cost.High.Whole}
}

// settle finds the front and runs its plans in bad years.
func (h *hunt) settle(ctx context.Context, out *Cheapest) (err error) {
	for _, p := range h.plans {
		out.Most = max(out.Most, p.Nights)
	}
	var known []Plan
	if len(out.Lacks) > 0 {
		known, err = h.allTried(ctx, fewest(h.plans, out.Needed))
	} else {
		known, err = h.candidates(ctx)
	}
	if err != nil {
		return err
	}
	out.Today = h.tried(&year.Draft{}, h.now())
	if len(out.Lacks) > 0 {
		out.Today.Low, out.Today.Cost, out.Today.High = unit.Known[unit.Money]{}, unit.Known[unit.Money]{}, unit.Known[unit.Money]{}
		out.Front = known
		for i := range known {
			known[i].Low, known[i].Cost, known[i].High = out.Today.Low, out.Today.Cost, out.Today.High
		}
	} else {
		out.Front = front(known)
		out.Best = firstWith(out.Front, float64(h.ground.Project.Target.Or(Target)), out.Nights)
	}
	return h.badYears(ctx, out)
}

// allTried runs plans side by side.
func (h *hunt) allTried(ctx context.Context, plans []Plan) ([]Plan, error) {
	out, drafts := make([]Plan, len(plans)), make([]year.Draft, h.workers)
	err := h.side(ctx, len(plans), func(w, i int) error {
		out[i] = h.tried(&drafts[w], plans[i].Choice)
		return nil
	})
	return out, err
}

// candidates runs every plan that may stand on the front. What a plan costs at the least, with everything lasting as long as it
// can, rules out those that another one beats that was run already.
func (h *hunt) candidates(ctx context.Context) (known []Plan, err error) {
	left := slices.Clone(h.plans)
	least := map[Choice]unit.Money{}
	for i := range left {
		p := &left[i]
		same := Choice{Panels: p.Panels, Blocks: p.Blocks, Factor: p.Factor}
		if _, there := least[same]; !there {
			least[same] = h.least(p.Choice)
		}
		p.Cost = unit.Of(least[same])
	}
	slices.SortStableFunc(left, order)
	const batch = 16
	for len(left) > 0 {
		var now []Plan
		for len(left) > 0 && len(now) < batch {
			p := left[0]
			left = left[1:]
			beaten := func(q Plan) bool { return q.Nights >= p.Nights && q.Cost.Val < p.Cost.Val }
			if !slices.ContainsFunc(known, beaten) {
				now = append(now, p)
			}
		}
		tried, err := h.allTried(ctx, now)
		if err != nil {
			return nil, err
		}
		known = append(known, tried...)
	}
	return known, nil
}

// least is what a plan costs where everything that wears lasts as long as it can. At a rate below zero what is bought later
// costs more, and nothing is ruled out.
func (h *hunt) least(c Choice) unit.Money {
	terms := h.ground.Project.Money
	if terms.Rate.Or(0) < 0 {
		return unit.Money(math.Inf(-1))
	}
	v := h.variant(c)
	in := cost.Input{Parts: v.Parts, Terms: terms}
	for i, s := range v.Stores {
		if k := s.Kind(); k.Lasts != nil {
			most := k.Lasts(s.Design().Reduce(&model.Env{Variant: v, At: i}))
			in.Batteries = append(in.Batteries, cost.Lifetime{Usual: most})
		}
	}
	return cost.Present(in).Val
}

// badYears runs the plans of the front on made years.
func (h *hunt) badYears(ctx context.Context, out *Cheapest) error {
	variants := []model.Variant{h.v}
	for _, p := range out.Front {
		variants = append(variants, h.variant(p.Choice))
	}
	run := NewRun(h.ground.Project, variants, false)
	if !run.bench.whyOne.IsZero() {
		return nil
	}
	if err := run.Until(ctx, badYears, h.workers, nil); err != nil {
		return err
	}
	for i, c := range run.Sure().Variants {
		if len(c.Nights) == 0 {
			continue
		}
		nights := unit.Of(unit.Count(math.Floor(Quantile(slices.Sorted(slices.Values(c.Nights)), bad))))
		if i == 0 {
			out.Today.Bad = nights
		} else {
			out.Front[i-1].Bad = nights
		}
	}
	return nil
}
