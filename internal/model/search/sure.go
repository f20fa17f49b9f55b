package search

import (
	"context"
	"math"
	"reflect"
	"slices"
	"strconv"
	"sync"
	"sync/atomic"

	"golang.org/x/sync/errgroup"

	"duskweight/internal/model"
	"duskweight/internal/model/load"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/reservoir"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/internal/model/year"
	"duskweight/internal/say"
)

// Sure is what many weather years of one place come to, the same years for every variant.
type Sure struct {
	Years    int          // that were run
	Real     []string     // the years of weather files, by name, that were run as they are; empty where years are made
	Nights   int          // that count, in each year; 0 where nothing is asked of them
	Parts    bool         // inputs were drawn within their tolerances too
	WhyOne   say.Sentence // why there is only one year; nothing where there are many
	Variants []Certain    // in the order asked
	Pairs    [][]Versus   // [a][b]: how often a is better than b; empty against itself, and where a year is not known
}

// Certain is one variant over the years. The slices hold one value for each year, in the order of the years.
type Certain struct {
	Name    string
	WhyNot  say.Sentence // why its year is not known; nothing below holds then
	Without []string     // its stores that give nothing back, each with why
	Unready int          // years that did not end as they began

	Nights  []float64   // that are full
	Outage  []float64   // longest, hours
	Served  []float64   // share of lamps and devices served
	Lit     []float64   // share of what the nights want that is there
	Missing []float64   // J, of all that is wanted
	Gaps    []year.Gaps // runs of nights that are not full
	Skies   []Weather   // of each year, on this variant's panels; empty where nobody asked

	Light  Spread // of Nights
	Longer Spread // of Outage: Bad is the long one
	Share  Spread // of Served
	Dark   Spread // nights of the longest gap: Bad is the long one
	Moves  []Move // with Parts: which input moves Served most, that one first

	Nine int // in 9 of 10 made years at least so many nights are full
}

// Spread is a bad, a usual and a good year, and the two ends.
type Spread struct{ Worst, Bad, Usual, Good, Best float64 }

// Weather is the light of one year.
type Weather struct {
	Year   unit.Known[unit.Count] // of a weather file that says it
	Months [12]unit.Irradiation   // on the flat
	Plane  unit.Irradiation       // on a variant's panels, mean over their power
}

// bad, usual, good are the shares of years below: in one year of ten it is worse than bad.
const bad, usual, good = 0.1, 0.5, 0.9

// Run is many years of a project in the making: it grows by Until and can be looked at in between.
type Run struct {
	Weather bool // asks for the light of every year too, Certain.Skies; it costs a tenth more

	bench  *bench
	files  []*sun.Series // each one year, in their order; nil where years are made
	parts  bool          // inputs differ within their tolerances too
	briefs [][]outcome
}

// outcome is what a weather year comes to for one variant.
type outcome struct {
	year.Brief
	sky Weather
}

// NewRun makes a project ready for many weather years, made year j of the project's seed, the same for all
// variants (common random numbers). parts says that inputs are drawn within their Tolerances too: draw j is weather year j
// with tolerance draw j, and the whole variant is worked out anew. Without it, stores are those of the variant's own
// settled plan year, so that a battery's share for fast drawing is that of the plan year; a motor straight on the
// panels is run anew in each year's light. Weather files are run each as it is, settled by itself; one file of a real year
// is one year only, and one of a typical year has years made from its means.
func NewRun(project model.Project, variants []model.Variant, parts bool) *Run {
	r := &Run{bench: newBench(project, variants), parts: parts}
	if files := project.Files(); project.Place.Sky == sun.SkyFiles && len(files) > 1 {
		r.files = sun.InOrder(files)
	}
	return r
}

// Until runs the years up to n by so many workers side by side; the numbers are the same to the last bit for any number of
// workers and of steps. progress, where given, is told how many years are done, one call at a time. It stops when the
// context ends, and then holds what it held before.
func (r *Run) Until(ctx context.Context, n, workers int, progress func(done int)) error {
	if r.files != nil && !r.parts {
		return r.untilFile(ctx, min(n, len(r.files)), progress)
	}
	if r.bench.climate == nil && !r.parts {
		n = 1
	}
	from := len(r.briefs)
	if n <= from {
		return nil
	}
	more := make([][]outcome, n-from)
	if r.bench.ground.Sky != nil {
		run := (*worker).year
		if r.parts {
			run = (*worker).draw
		}
		if err := r.bench.runAll(ctx, more, from, max(1, workers), r.Weather, run, progress); err != nil {
			return err
		}
	}
	r.briefs = append(r.briefs, more...)
	return nil
}

// untilFile runs the weather files up to n, each as a project with that file alone.
func (r *Run) untilFile(ctx context.Context, n int, progress func(done int)) error {
	for j := len(r.briefs); j < n; j++ {
		p := r.bench.ground.Project
		p.Place.Sky, p.Weather, p.Weathers = sun.SkyFile, r.files[j], nil
		one := Run{Weather: r.Weather, bench: newBench(p, r.bench.variants)}
		one.bench.climate = nil // the file's own year
		if err := one.Until(ctx, 1, 1, nil); err != nil {
			return err
		}
		r.briefs = append(r.briefs, one.briefs[0])
		if progress != nil {
			progress(j + 1)
		}
	}
	return nil
}

// Sure is what the years so far come to; at least one.
func (r *Run) Sure() Sure {
	b := r.bench
	out := Sure{Years: len(r.briefs), Real: r.named(), WhyOne: b.whyOne, Nights: b.ground.Load.Nights, Parts: r.parts}
	if b.ground.Sky != nil && b.ground.Load.ApplianceYear <= 0 { // a night that asks for nothing does not count as lit
		out.Nights, out.WhyOne = 0, say.Sentence{}
	}
	for i, p := range b.plans {
		c := p.over(r.briefs, i)
		if r.Weather && p.demand != nil {
			for _, b := range r.briefs {
				c.Skies = append(c.Skies, b[i].sky)
			}
		}
		out.Variants = append(out.Variants, c)
	}
	out.Pairs = pairs(out.Variants)
	if r.parts && len(r.briefs) > 1 {
		r.move(&out)
	}
	return out
}

// named are the names of the weather files that were run as they are.
func (r *Run) named() (out []string) {
	if r.parts {
		return nil
	}
	for _, f := range r.files[:min(len(r.files), len(r.briefs))] {
		if y, ok := f.Year.Value(); ok {
			out = append(out, strconv.Itoa(int(y)))
		} else {
			out = append(out, f.Name)
		}
	}
	return out
}

// move fills in which input moves each variant's answer most.
func (r *Run) move(out *Sure) {
	factors := map[string][]float64{}
	all := Tolerances()
	for _, t := range all {
		for j := range r.briefs {
			factors[t.Name] = append(factors[t.Name], t.Factor(r.bench.seed, j))
		}
	}
	for i := range out.Variants {
		c := &out.Variants[i]
		if len(c.Served) == 0 {
			continue
		}
		var there []Tolerance
		for _, t := range all {
			if t.touches(r.bench.ground.Project, r.bench.variants[i]) {
				there = append(there, t)
			}
		}
		c.Moves = moves(there, factors, c.Served)
	}
}

// Years runs n weather years of a project for every variant: NewRun, Until and Sure at one go.
func Years(ctx context.Context, project model.Project, variants []model.Variant, n, workers int, progress func(done int)) (Sure, error) {
	r := NewRun(project, variants, false)
	if err := r.Until(ctx, max(1, n), workers, progress); err != nil {
		return Sure{}, err
	}
	return r.Sure(), nil
}

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
	of     model.Variant
	planes []*sun.Plane
	plant  *panel.Plant
}

// plan is a variant made ready.
type plan struct {
	certain  Certain // what is known without the years
	field    int
	demand   *year.Demand // nil: its year is not known
	standing []float64    // W by hour, of load and controller
	stores   []reservoir.Reservoir
	beside   []model.Beside // by store: its own source beside the line, or nil
}

func newBench(project model.Project, variants []model.Variant) *bench {
	b := &bench{ground: model.Prepare(project), seed: project.Seed, variants: variants}
	if b.ground.Sky == nil {
		b.whyOne = say.Words("the place is not known")
	} else if why := oneYear(project); !why.IsZero() {
		b.whyOne = why
	} else if _, climate, problems := sun.ClimateOf(project.Place, project.Files()); len(problems) == 0 {
		b.climate = climate
	} else {
		b.whyOne = say.That("no years can be made from this weather file: %s", problems[0].Say)
	}
	for _, v := range variants {
		b.plans = append(b.plans, b.plan(v))
	}
	b.groups = sideBySide(b.plans)
	return b
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
func (b *bench) plan(v model.Variant) plan {
	r := b.ground.Evaluate(v)
	p := plan{certain: Certain{Name: v.Name, WhyNot: r.WhyNoYear}}
	for _, s := range r.Stores {
		if s.Reservoir == nil {
			p.certain.Without = append(p.certain.Without, s.Name+": "+s.WhyNot)
			continue
		}
		p.stores = append(p.stores, *s.Reservoir)
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
	p.standing = standing
	p.demand = b.demandOf(standing)
	return p
}

// demandOf finds the load with this standing power, W by hour, among those of the plans before, or makes it ready.
func (b *bench) demandOf(standing []float64) *year.Demand {
	for _, p := range b.plans {
		if p.demand != nil && slices.Equal(p.standing, standing) {
			return p.demand
		}
	}
	l := b.ground.Load
	return year.NewDemand(len(standing), standing, l.Essential, l.Nice, l.NightOf)
}

// field finds the panels among those of the variants before, or makes them ready.
func (b *bench) field(v model.Variant) int {
	for i, f := range b.fields {
		if reflect.DeepEqual(f.of.Panels, v.Panels) && reflect.DeepEqual(f.of.Controller, v.Controller) {
			return i
		}
	}
	f := field{of: v}
	f.plant, _ = panel.Prepare(v.Panels, v.Controller) // its year is known, so nothing stands against it
	for _, a := range v.Panels {
		f.planes = append(f.planes, sun.PlaneOf(b.ground.Sky.Geometry, b.ground.Project.Place, sun.Face{Tilt: a.Tilt.Val, Azimuth: a.Azimuth.Val, Shade: a.Shade}))
	}
	b.fields = append(b.fields, f)
	return len(b.fields) - 1
}

// runAll shares the years from … on out among the workers. Each year is a matter of its own, so it does not matter who runs it.
func (b *bench) runAll(ctx context.Context, briefs [][]outcome, from, workers int, weather bool, run func(*worker, int) []outcome, progress func(int)) error {
	var next atomic.Int64
	var mu sync.Mutex
	done := 0
	group, ctx := errgroup.WithContext(ctx)
	for range min(workers, len(briefs)) {
		group.Go(func() error {
			w := b.worker()
			w.weather = weather
			for {
				j := int(next.Add(1)) - 1
				if j >= len(briefs) {
					return nil
				}
				if err := ctx.Err(); err != nil {
					return err
				}
				briefs[j] = run(w, from+j)
				mu.Lock()
				done++
				if progress != nil {
					progress(from + done)
				}
				mu.Unlock()
			}
		})
	}
	return group.Wait()
}

// worker is the room of one goroutine.
type worker struct {
	*bench
	sky    *sun.Sky
	lights [][]panel.Light // by field and array
	bus    [][]float64     // by field
	space  year.Workspace
	stores []reservoir.Reservoir

	weather bool // is noted
}

func (b *bench) worker() *worker {
	w := &worker{bench: b, sky: b.ground.Sky}
	if b.climate != nil {
		w.sky = b.climate.Sky(b.seed)
	}
	hours := len(w.sky.TAir)
	for _, f := range b.fields {
		lights := make([]panel.Light, len(f.planes))
		for i := range lights {
			lights[i] = panel.Light{Plane: make([]float64, hours), Cells: make([]float64, hours)}
		}
		w.lights = append(w.lights, lights)
		w.bus = append(w.bus, make([]float64, hours))
	}
	return w
}

// year runs weather year j for all variants.
func (w *worker) year(j int) []outcome {
	if w.climate != nil {
		w.climate.Fill(w.sky, w.seed, j)
	}
	for i, f := range w.fields {
		for k, p := range f.planes {
			p.Fill(w.sky, sun.Light(w.lights[i][k]))
		}
		f.plant.Fill(w.lights[i], w.sky.TAir, w.bus[i])
	}
	out := make([]outcome, len(w.plans))
	if w.weather {
		w.skies(out)
	}
	for _, group := range w.groups {
		p := w.plans[group[0]]
		if len(group) == 1 {
			out[group[0]].Brief = w.alone(p)
			continue
		}
		w.stores = w.stores[:0]
		for _, i := range group {
			w.stores = append(w.stores, w.plans[i].stores...)
		}
		for k, b := range w.space.Sweep(nil, w.bus[p.field], p.demand, w.stores) {
			out[group[k]].Brief = b
		}
	}
	return out
}

// skies notes the light of the year that is filled in.
func (w *worker) skies(out []outcome) {
	months := w.sky.Months()
	for i, p := range w.plans {
		if p.demand != nil {
			out[i].sky = Weather{w.fileYear(), months, w.plane(p.field)}
		}
	}
}

// fileYear is the year of the weather file whose own hours are run.
func (w *worker) fileYear() (none unit.Known[unit.Count]) {
	if p := w.ground.Project; w.climate == nil && p.Place.Sky == sun.SkyFile && p.Weather != nil {
		return p.Weather.Year
	}
	return none
}

// plane returns the light of the year on a field's panels, mean over their power.
func (w *worker) plane(field int) unit.Irradiation {
	var weighted, power float64
	for i, a := range w.fields[field].of.Panels {
		light := 0.0
		for _, v := range w.lights[field][i].Plane {
			light += v * 3600
		}
		weighted += float64(a.Nominal().Or(0)) * light
		power += float64(a.Nominal().Or(0))
	}
	if power == 0 {
		return 0
	}
	return unit.Irradiation(weighted / power)
}

// alone runs the year of one plan whose sun is already filled in.
func (w *worker) alone(p plan) year.Brief {
	w.stores = append(w.stores[:0], p.stores...)
	for k, own := range p.beside {
		if own != nil {
			w.stores[k].Own = own(w.lights[p.field], w.sky.TAir)
		}
	}
	return w.space.Quick(w.bus[p.field], p.demand, w.stores)
}

// draw works out all variants anew in weather year j with every input as draw j has it. A store that gives nothing back
// then, a hoist that no longer lifts, gives nothing in that year.
func (w *worker) draw(j int) []outcome {
	p, variants := drawn(w.ground.Project, w.variants, j)
	g := model.PrepareMade(p, j)
	out := make([]outcome, len(variants))
	for i, v := range variants {
		if w.plans[i].demand == nil {
			continue
		}
		r := g.Evaluate(v)
		y := &r.Year
		if w.weather {
			out[i].sky = Weather{Months: g.Sky.Months(), Plane: r.Plane.Or(0)}
		}
		out[i].Brief = year.Brief{Settled: y.Settled, Unmet: y.Unmet, NightsFull: y.NightsFull(), NightsServed: y.NightsServed, NightShare: y.NightShare(),
			Gaps: y.Gaps(), LongestOutage: y.LongestOutage.Hours, ServedShare: float64(y.ServedShare.Or(0))}
	}
	return out
}

// over gathers the years of plan i.
func (p plan) over(briefs [][]outcome, i int) Certain {
	c := p.certain
	if p.demand == nil {
		return c
	}
	for _, b := range briefs {
		c.Nights = append(c.Nights, float64(b[i].NightsFull))
		c.Outage = append(c.Outage, float64(b[i].LongestOutage))
		c.Served = append(c.Served, b[i].ServedShare)
		c.Lit, c.Missing = append(c.Lit, b[i].NightShare), append(c.Missing, float64(b[i].Unmet))
		c.Gaps = append(c.Gaps, b[i].Gaps)
		if !b[i].Settled {
			c.Unready++
		}
	}
	c.Light, c.Share = spread(c.Nights), spread(c.Served)
	c.Longer, c.Dark = spread(c.Outage).turned(), spread(c.Of(func(g year.Gaps) int { return g.Longest })).turned()
	c.Nine = int(math.Floor(c.Light.Bad))
	return c
}

// Of is a number of the gaps of every year.
func (c Certain) Of(what func(year.Gaps) int) []float64 {
	out := make([]float64, len(c.Gaps))
	for j, g := range c.Gaps {
		out[j] = float64(what(g))
	}
	return out
}

// DarkMonth is the month in which the longest gap of a year begins most often, 1 to 12, the first of equals; 0 where no
// year has a gap. A night belongs to the evening with which it begins.
func (c Certain) DarkMonth() int {
	var begins [13]int
	for _, g := range c.Gaps {
		if g.Longest > 0 {
			begins[sun.MonthOf((g.From+sun.Days-1)%sun.Days)]++
		}
	}
	most := 0
	for month, n := range begins {
		if n > begins[most] {
			most = month
		}
	}
	return most
}
