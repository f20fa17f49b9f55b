package search

import (
	"context"
	"reflect"
	"slices"
	"sync"

	"duskweight/internal/model"
	"duskweight/internal/model/load"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/reservoir"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/year"
	"duskweight/internal/say"
)

// bench is all that does not change from year to year. It is only read once it is made.
type bench struct {
	ground   model.Ground
	climate  *sun.Climate // nil: one year only
	whyOne   say.Sentence
	seed     uint64
	variants []model.Variant
	fields   []field
	plans    []plan
	groups   [][]int // plans that share panels and load and have one store each, by place in plans; every plan is in one group
}

// field is panels and controller that one or more variants have.
type field struct {
	of      model.Variant
	variant int // its place among the variants
	planes  []*sun.Plane
	plant   *panel.Plant
}

// plan is a variant made ready.
type plan struct {
	certain  Certain // what is known without the years
	field    int
	demand   *year.Demand // nil: its year is not known
	standing []float64    // W by hour, of load and controller
	backup   model.Backup
	stores   []reservoir.Reservoir
	beside   []model.Beside // by store: its own source beside the line, or nil
}

func newBench(project model.Project, variants []model.Variant) *bench {
	b := &bench{ground: model.Prepare(project), seed: project.Seed, variants: variants}
	b.prepare()
	for _, v := range variants {
		b.plans = append(b.plans, b.plan(v))
	}
	b.groups = sideBySide(b.plans)
	return b
}

// prepare finds the climate that years are made from, or why there is one year only.
func (b *bench) prepare() {
	project := b.ground.Project
	if b.ground.Sky == nil {
		b.whyOne = say.Words("the place is not known")
	} else if why := oneYear(project); !why.IsZero() {
		b.whyOne = why
	} else if _, climate, problems := sun.ClimateOf(project.Place, project.Files()); len(problems) == 0 {
		b.climate = climate
	} else {
		b.whyOne = say.That("no years can be made from this weather file: %s", problems[0].Say)
	}
}

// oneYear says why a project has one weather year only; nothing where it has many.
func oneYear(p model.Project) say.Sentence {
	files := p.Files()
	if p.Place.Sky != sun.SkyFile && p.Place.Sky != sun.SkyFiles || len(files) == 0 || p.Place.Sky == sun.SkyFiles && len(files) > 1 {
		return say.Sentence{}
	}
	switch typical, known := files[0].IsTypical(); {
	case typical:
		return say.Sentence{}
	case known:
		return say.Words("the sky of this project is one real year of a weather file")
	}
	return say.Words("the sky of this project is a weather file that does not say whether it is a real year or a typical one")
}

// sideBySide gathers plans whose years can be run side by side: the same panels and load, one store, not fed straight by
// the panels. Every other plan with a load is a group of its own.
func sideBySide(plans []plan) [][]int {
	var groups [][]int
	for i, p := range plans {
		if p.demand == nil {
			continue
		}
		k := slices.IndexFunc(groups, func(g []int) bool {
			o := plans[g[0]]
			return p.single() && o.single() && o.field == p.field && o.demand == p.demand
		})
		if k < 0 {
			groups = append(groups, []int{i})
		} else {
			groups[k] = append(groups[k], i)
		}
	}
	return groups
}

// single reports whether the plan has one store, the same in every year.
func (p plan) single() bool { return len(p.stores) == 1 && p.beside[0] == nil }

// plan evaluates the variant's own year and keeps what every other year needs.
func (b *bench) plan(v model.Variant) plan { return b.planOf(v, b.ground.Evaluate(v)) }

// planOf keeps what every other year needs of a variant whose own year is r.
func (b *bench) planOf(v model.Variant, r model.VariantResult) plan {
	p := plan{certain: Certain{Name: v.Name, WhyNot: r.WhyNoYear}}
	for _, s := range r.Stores {
		if s.Reservoir == nil {
			p.certain.Without = append(p.certain.Without, s.Name+": "+s.WhyNot)
			continue
		}
		p.stores = append(p.stores, s.Aged(1))
		p.beside = append(p.beside, s.Part.Beside())
	}
	if !r.YearKnown {
		return p
	}
	if p.certain.WhyNot = r.Open; !r.Open.IsZero() {
		return p
	}
	p.field = b.field(v)
	l := b.ground.Load
	own, _ := load.StandingPower(v.Standing)
	standing := slices.Clone(l.Standing)
	for h := range standing {
		standing[h] += float64(own + v.Controller.Standing())
	}
	p.standing, p.backup = standing, v.Backup
	p.demand = b.demandOf(standing, v)
	return p
}

// demandOf finds the load with this standing power, W by hour, and the backup of a variant among those of the plans before, or
// makes it ready.
func (b *bench) demandOf(standing []float64, v model.Variant) *year.Demand {
	for _, p := range b.plans {
		if p.demand != nil && p.backup == v.Backup && slices.Equal(p.standing, standing) {
			return p.demand
		}
	}
	l := b.ground.Load
	return year.NewManagedDemand(len(standing), standing, l.Essential, l.Nice, l.NightOf, b.ground.Managed(v))
}

// field finds the panels among those of the variants before, or makes them ready.
func (b *bench) field(v model.Variant) int {
	for i, f := range b.fields {
		if reflect.DeepEqual(f.of.Panels, v.Panels) && reflect.DeepEqual(f.of.Controller, v.Controller) {
			return i
		}
	}
	f := field{of: v, variant: len(b.plans)}
	f.plant, _ = panel.Prepare(v.Panels, v.Controller) // its year is known, so nothing stands against it
	for _, a := range v.Panels {
		f.planes = append(f.planes, b.ground.PlaneOf(a))
	}
	b.fields = append(b.fields, f)
	return len(b.fields) - 1
}

// runAll shares the years from … on out among the workers. Each year is a matter of its own, so it does not matter who runs it.
func (b *bench) runAll(ctx context.Context, briefs [][]outcome, from, workers int, weather bool, run func(*worker, int) []outcome, progress func(int)) error {
	var mu sync.Mutex
	done := 0
	room := make([]*worker, min(workers, len(briefs)))
	return shareJobs(ctx, len(briefs), workers, func(at, j int) error {
		if room[at] == nil {
			room[at] = b.worker()
			room[at].weather = weather
		}
		briefs[j] = run(room[at], from+j)
		mu.Lock()
		defer mu.Unlock()
		done++
		if progress != nil {
			progress(from + done)
		}
		return nil
	})
}
