package year

import (
	"duskweight/internal/model/reservoir"
	"duskweight/internal/model/unit"
)

// Draft is a year that is not accounted for yet: it can be settled again with its stores changed by what it asked of
// them.
type Draft struct {
	in      Input
	demand  *Demand
	w       Workspace
	rec     *record
	passes  int
	settled bool
	spill   float64 // J
	miss    float64 // J
}

// Begin makes a draft of a year; Settle runs it.
func Begin(in Input) *Draft {
	d := &Draft{}
	d.Begin(in)
	return d
}

// Begin makes the draft one of another year, in the room of the year before. What was read from it must not be used any
// more, but for its Brief.
func (d *Draft) Begin(in Input) {
	d.in = in
	if d.demand == nil {
		d.demand = &Demand{}
	}
	d.demand.read(len(in.Bus), in.Standing, in.Essential, in.Nice, in.Night)
	d.demand.manage(in.Managed, len(in.Bus))
}

// Settle runs the settled year with these stores.
func (d *Draft) Settle(stores []reservoir.Reservoir) {
	d.in.Stores = stores
	n := len(d.in.Bus)
	standing := d.w.ready(stores, n)
	if d.rec == nil || len(d.rec.spilled) != n || len(d.rec.stores) != len(stores) {
		d.rec = newRecord(n, len(stores))
	}
	if d.in.Brief {
		d.w.untime()
	}
	if d.demand.managed != nil {
		d.rec.dealt.size(n, len(d.demand.managed.Waiting))
	}
	d.passes, d.settled, d.spill, d.miss = d.w.settle(d.in.Bus, d.demand, standing, d.rec)
}

// drawTrace is the share of the greatest power that a store gave: less is what rounding leaves, and no hour of drawing.
const drawTrace = 1e-9

// MeanDraw is the mean power that store k gave in the hours in which it gave more than a trace; not known where it never
// did.
func (d *Draft) MeanDraw(k int) unit.Known[unit.Power] {
	most := 0.0
	for _, f := range d.rec.stores[k].flow {
		most = max(most, -f)
	}
	sum, hours := 0.0, 0
	for _, f := range d.rec.stores[k].flow {
		if -f > drawTrace*most {
			sum -= f
			hours++
		}
	}
	if hours == 0 {
		return unit.Known[unit.Power]{}
	}
	return unit.Of(unit.Power(sum / float64(hours)))
}

// Brief is what a sweep needs of the year as it was settled last.
func (d *Draft) Brief() Brief { return d.w.brief(d.demand, d.passes, d.settled, d.spill, d.miss) }

// Result accounts for the year as it was settled last.
func (d *Draft) Result() Result {
	out := Result{Passes: d.passes, Settled: d.settled}
	account(&out, d.in, d.demand, &d.w, d.rec)
	if d.in.Keep {
		out.Hourly = d.rec.hourly(d.w.unmet)
		out.Hourly.managed(d.demand, &d.rec.dealt)
	}
	return out
}

func newRecord(n, stores int) *record {
	rec := &record{spilled: make([]float64, n)}
	for range stores {
		rec.stores = append(rec.stores, trace{flow: make([]float64, n), state: make([]float64, n)})
	}
	return rec
}

// hourly turns the record into what is handed out.
func (rec *record) hourly(unmet []float64) *Hourly {
	out := &Hourly{Unmet: unmet, Spilled: rec.spilled}
	for _, tr := range rec.stores {
		taken, delivered := make([]float64, len(tr.flow)), make([]float64, len(tr.flow))
		for h, f := range tr.flow {
			taken[h], delivered[h] = positive(f)*hour, positive(-f)*hour
		}
		out.Taken = append(out.Taken, taken)
		out.Delivered = append(out.Delivered, delivered)
		out.State = append(out.State, tr.state)
	}
	return out
}
