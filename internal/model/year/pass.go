package year

import "math"

// runs is the most often that a year is run before it is called not settled.
const runs = 20

// settledTo is how close a store's last state must come to its first, as a share of its capacity.
const settledTo = 1e-9

// piece is the length of the pieces that a year is run in: whole days, so that a day's cap begins anew with a piece.
// A pass that comes to a piece in a state in which an earlier pass began it need not run it again: the rest of the year
// is the same to the last bit. So the passes after the first mostly cost a few pieces.
const piece = 120

// record is where a pass writes what happened hour by hour.
type record struct {
	spilled []float64 // J
	stores  []trace
	dealt   dealtHours // of a managed year
}

// pieces is a year in pieces: how each began and what it came to. by piece, or by piece and store.
type pieces struct {
	begin []float64 // by piece and store; NaN before the first pass
	sum   []sums    // by piece and store
	spill []float64 // J
	miss  []float64 // J
}

// settle runs passes until the year repeats itself. It leaves the totals of the last pass in the stores' sums, their
// last state in their x, and the state in which the last pass began in start.
func (w *Workspace) settle(bus []float64, d *Demand, standing float64, rec *record) (passes int, settled bool, spill, miss float64) {
	if d.managed != nil {
		return w.settleManaged(bus, d, standing, rec)
	}
	n := (len(bus) + piece - 1) / piece
	m := len(w.stores)
	w.year.size(n, m)
	for k := range w.stores {
		w.start[k] = w.stores[k].X
		w.stores[k].x = w.stores[k].X
	}
	for passes = 1; ; passes++ {
		w.pass(bus, d, standing, rec, n)
		if settled = w.together(); settled || passes == runs {
			break
		}
		for k := range w.stores {
			w.start[k] = w.stores[k].x
		}
	}
	for k := range w.stores {
		w.stores[k].sum = sums{}
		for i := range n {
			w.stores[k].sum.add(w.year.sum[i*m+k])
		}
	}
	for i := range n {
		spill += w.year.spill[i]
		miss += w.year.miss[i]
	}
	return passes, settled, spill, miss
}

// pass runs the pieces of the year from the stores' states, as far as they differ from the pass before: from
// there on the year ends as that pass did, which is where this one began.
func (w *Workspace) pass(bus []float64, d *Demand, standing float64, rec *record, n int) {
	m := len(w.stores)
	for i := range n {
		begin := w.year.begin[i*m : (i+1)*m]
		same := true
		for k := range w.stores {
			same = same && w.stores[k].x == begin[k]
			begin[k] = w.stores[k].x
			w.stores[k].sum = sums{}
		}
		if same && m > 0 {
			for k := range w.stores {
				w.stores[k].x = w.start[k]
			}
			return
		}
		from := i * piece
		to := min(from+piece, len(bus))
		w.year.spill[i], w.year.miss[i] = hours(bus, d.total, standing, w.stores, w.unmet, rec, from, to)
		for k := range w.stores {
			w.year.sum[i*m+k] = w.stores[k].sum
		}
	}
}

// hours runs the hours from…to of the year over the stores, a piece at most, and writes each hour's unmet joules; rec
// may be nil. standing is that of all the stores together. It returns the joules spilled, those of the stores' own
// sources included, and unmet. The sums of the stores begin at nothing.
//
// What a store leaves of an hour hangs on no later hour, so each store runs the whole piece before the next.
func hours(bus, total []float64, standing float64, stores []store, unmet []float64, rec *record, from, to int) (spill, miss float64) {
	var room [piece]float64
	idle := 0.0 // J of the stores' own sources
	net := room[:to-from]
	bus, total, unmet = bus[from:to], total[from:to], unmet[from:to]
	for i, b := range bus {
		net[i] = tame(b) - (total[i] + standing)
	}
	for k := range stores {
		tr := trace{}
		if rec != nil {
			tr = trace{flow: rec.stores[k].flow[from:to], state: rec.stores[k].state[from:to]}
		}
		if stores[k].own != nil {
			stores[k].overOwn(net, from, tr)
			idle += stores[k].sum.idle
		} else {
			stores[k].over(net, from, tr)
		}
	}
	for i, n := range net { // by the sign bit: a branch would be guessed wrong at every dusk and dawn
		bits := math.Float64bits(n)
		below := uint64(int64(bits) >> 63)
		spill += math.Float64frombits(bits &^ below)
		lack := 0 - math.Float64frombits(bits&below)
		miss += lack
		unmet[i] = lack * hour
	}
	if rec != nil {
		for i, n := range net {
			rec.spilled[from+i] = positive(n * hour)
		}
		rec.idle(stores, from, to)
	}
	return spill*hour + idle, miss * hour
}

// idle adds what the stores' own sources brought and nobody took to the sun not used.
func (rec *record) idle(stores []store, from, to int) {
	for k := range stores {
		if stores[k].own == nil {
			continue
		}
		for h := from; h < to; h++ {
			if power, _ := stores[k].given(h); power > 0 {
				rec.spilled[h] += positive(power-rec.stores[k].flow[h]) * hour
			}
		}
	}
}

// together reports whether every store ended where it began.
func (w *Workspace) together() bool {
	for k := range w.stores {
		if math.Abs(w.stores[k].x-w.start[k]) > settledTo*w.stores[k].X {
			return false
		}
	}
	return true
}

// size makes room for n pieces of m stores, none of them run yet.
func (p *pieces) size(n, m int) {
	p.begin = sized(p.begin, n*m)
	for i := range p.begin {
		p.begin[i] = math.NaN()
	}
	if cap(p.sum) < n*m {
		p.sum = make([]sums, n*m)
	}
	p.sum = p.sum[:n*m]
	p.spill = sized(p.spill, n)
	p.miss = sized(p.miss, n)
}
