package model

import (
	"math"

	"duskweight/internal/model/cost"
	"duskweight/internal/model/load"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/reservoir"
	"duskweight/internal/model/unit"
	"duskweight/internal/model/year"
	"duskweight/internal/say"
)

// Result is everything a document comes to.
type Result struct {
	Ground   Ground
	Variants []VariantResult
}

// VariantResult is everything a variant comes to. Figures of the year hold only where YearKnown.
type VariantResult struct {
	Name      string
	backup    Backup
	waits     []string // names of the devices that wait
	YearKnown bool
	WhyNoYear say.Sentence // without a full stop

	Plane unit.Known[unit.Irradiation] // on the panels, mean over their power
	Snow  []*[12]float64               // by array: share of its power that snow takes in each month; nil where none falls on it
	Bus   *panel.Bus                   // nil where the year is not known; shared, so read only
	Year  year.Result

	Last year.Brief // the same year with batteries in the last year of their life; of this the verdict speaks
	Worn []Worn     // from new to the last year; empty where nothing ages

	Peak   Peak   // of the line, with everything on that may be on together
	Wiring Wiring // strings, cables and voltages

	StandingPower unit.Power // project, variant, controller and stores together

	Verdict   string       // a word of the closed list, or "" where nothing is wanted, or the year or what a store gives is not known
	Open      say.Sentence // why there is no verdict although the year is known, without a full stop; nothing where there is one
	uncounted bool         // that is an essential appliance that counts as nothing
	Headline  []say.Sentence
	Facts     Facts

	Stores  []StoreResult
	Cost    cost.Result
	Ready   reason.Word
	Because []reason.Reason // the worst first; paths inside the variant, or behind "load." inside the project
	Missing []Missing
}

// StoreResult is one store of a variant: what the table of kinds makes of it, and its year.
type StoreResult struct {
	Name      string
	Kind      *Kind
	Part      Part
	Reservoir *reservoir.Reservoir
	WhyNot    string         // why there is no reservoir
	Year      year.StoreYear // zero without a reservoir
	InYear    bool           // it took part in the year
	Capacity  unit.Known[unit.Energy]
	RoundTrip unit.Known[unit.Ratio]
	Ready     reason.Word
	Because   []reason.Reason // those of the variant that lie in this store's design
}

// Missing is an input that is not known, by its path in the variant, and what it would let be computed.
type Missing struct {
	Path  string
	Wants say.Sentence
}

// Evaluate computes a whole document, judged on a day. The document must have passed Check.
func Evaluate(doc Document, on reason.Day) Result {
	g := Prepare(doc.Project).At(on)
	r := Result{Ground: g, Variants: make([]VariantResult, len(doc.Variants))}
	for i, v := range doc.Variants {
		r.Variants[i] = g.Evaluate(v)
	}
	return r
}

// Evaluate computes one variant on prepared ground.
func (g Ground) Evaluate(v Variant) VariantResult {
	r := g.Run(v)
	r.Peak = g.peak(v, r.Stores)
	r.finish(g, v)
	return r
}

// Run returns the years of a variant, with its batteries new to worn, and nothing that is judged of them: no verdict and what
// withholds it, no readiness, no peak, no cost, no facts. It is for searches that try many variants; the answer of each is that
// of Evaluate, whose first step it is.
func (g Ground) Run(v Variant) VariantResult {
	r := VariantResult{Name: v.Name, backup: v.Backup, Stores: reduce(v)}
	g.year(v, &r)
	return r
}

// reduce computes what each store is without a year.
func reduce(v Variant) []StoreResult {
	out := make([]StoreResult, len(v.Stores))
	env := Env{Variant: v}
	for i, s := range v.Stores {
		d := s.Design()
		env.At = i
		out[i] = StoreResult{Name: d.Name(), Kind: s.Kind(), Part: d.Reduce(&env)}
		out[i].Reservoir, out[i].WhyNot = out[i].Part.Reservoir()
	}
	return out
}

// year runs the settled year, if the place is known and the panels can be computed.
func (g Ground) year(v Variant, r *VariantResult) {
	if g.Sky == nil {
		r.WhyNoYear = say.Words("the place is not known")
		if len(g.WhyNot) > 0 {
			r.WhyNoYear = g.WhyNot[0].Say
		}
		return
	}
	harvest := g.harvest(v)
	if len(harvest.problems) > 0 {
		r.WhyNoYear = harvest.problems[0].Say
		for _, p := range harvest.problems {
			r.Missing = append(r.Missing, Missing{p.Path, p.Say})
		}
		return
	}
	r.Bus, r.Plane, r.YearKnown = harvest.bus, harvest.plane, true
	for _, l := range harvest.lights {
		r.Snow = append(r.Snow, l.Snow)
	}
	in := g.input(v, r, harvest.lights, r.Bus.Power)
	for _, w := range g.Load.Waiting {
		r.waits = append(r.waits, w.Name)
	}
	draft := year.Begin(in)
	g.settle(draft, r)
	r.account(draft)
	r.wear(in)
}

// input makes the year's series from what panels and controller bring to the line, W, and begins the stores.
func (g Ground) input(v Variant, r *VariantResult, lights []panel.Light, power []float64) year.Input {
	for i := range r.Stores {
		r.Stores[i].Part.Begin(g, lights)
	}
	variant, missing := load.StandingPower(v.Standing)
	for _, m := range missing {
		r.Missing = append(r.Missing, Missing{m.Path, say.Words(m.Wants)})
	}
	standing := variant + v.Controller.Standing()
	r.StandingPower = g.Load.StandingPower + standing
	return year.Input{Bus: power, Standing: plus(g.Load.Standing, float64(standing)), Essential: g.Load.Essential, Nice: g.Load.Nice, Night: g.Load.NightOf,
		Managed: g.Managed(v), Keep: true}
}

// Brief runs the year of a variant, its batteries in the last year of their life, for what a sweep needs of it alone: lights by array, and the power that they and the
// controller bring to the line, W by hour. It uses the room of draft.
func (g Ground) Brief(draft *year.Draft, v Variant, lights []panel.Light, power []float64) year.Brief {
	r := VariantResult{Stores: reduce(v)}
	in := g.input(v, &r, lights, power)
	in.Keep, in.Brief = false, true
	draft.Begin(in)
	g.settle(draft, &r)
	if stores, ages := r.aged(1); ages {
		draft.Settle(stores)
	}
	return draft.Brief()
}

// settle runs the year in rounds: a store that depends on how fast it is drawn (Peukert, rated form) is reduced for the
// mean draw of the round before, two times at most.
func (g Ground) settle(draft *year.Draft, r *VariantResult) {
	const rounds = 2
	for round := range rounds + 1 {
		stores, at := r.reservoirs()
		draft.Settle(stores)
		if changed := r.again(draft, at); !changed || round == rounds {
			break
		}
	}
}

// account books the settled year, to each store its part.
func (r *VariantResult) account(draft *year.Draft) {
	r.Year = draft.Result()
	n := 0
	for i := range r.Stores {
		s := &r.Stores[i]
		if s.Reservoir == nil {
			continue
		}
		s.Year, s.InYear = r.Year.Stores[n], true
		r.StandingPower += s.Reservoir.Standing
		n++
	}
}

// reservoirs reduces the stores with what is known by now and returns, for each that can be reduced, its place in r.Stores.
func (r *VariantResult) reservoirs() (stores []reservoir.Reservoir, at []int) {
	for i := range r.Stores {
		s := &r.Stores[i]
		if s.Reservoir, s.WhyNot = s.Part.Reservoir(); s.Reservoir != nil {
			stores = append(stores, *s.Reservoir)
			at = append(at, i)
		}
	}
	return stores, at
}

// again tells each store how fast it was drawn in the year that was run, in the mean of the hours in which it was, and
// reports whether a reservoir changes by it.
func (r *VariantResult) again(draft *year.Draft, at []int) (changed bool) {
	for n, i := range at {
		if drawn, ok := draft.MeanDraw(n).Value(); ok {
			changed = r.Stores[i].Part.Again(drawn) || changed
		}
	}
	return changed
}

// nightCurrent is the current that the mean night load draws at a voltage.
func (g Ground) nightCurrent(v unit.Voltage) unit.Current {
	hours := 0
	for _, n := range g.Load.NightOf {
		if n >= 0 {
			hours++
		}
	}
	if hours == 0 || v <= 0 {
		return 0
	}
	nights := float64(g.Load.Nights)
	w := float64(g.Load.MeanNight+g.Load.StandingNight) * nights / (float64(hours) * 3600)
	return unit.Current(w / float64(v))
}

func total(v []float64) float64 {
	sum := 0.0
	for _, x := range v {
		sum += x
	}
	return sum
}

func plus(v []float64, w float64) []float64 {
	out := make([]float64, len(v))
	for i, x := range v {
		out[i] = x + w
	}
	return out
}

// cosTurn is the cosine of a part of a turn.
func cosTurn(x float64) float64 { return math.Cos(2 * math.Pi * x) }
