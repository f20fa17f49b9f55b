package year

// Demand is the load of a year made ready for the steps: the same for every weather year and every variant with the
// same load. Make it once with NewDemand; it is only read after that.
type Demand struct {
	standing, essential, nice []float64 // W by hour, each of length n
	total                     []float64 // their sum
	night                     []int     // nil: no nights
	wanted                    []float64 // appliance joules by night
	wantedEssential           []float64 // of these, essential
	counted                   int       // nights that have night hours
	isNight                   []bool    // by night: it has night hours
	appliances                float64   // joules in the year

	managed *Managed // nil for none
	levels  []Level  // of it, tamed and of length n
}

// NewManagedDemand is NewDemand for a managed load; m may be nil.
func NewManagedDemand(n int, standing, essential, nice []float64, night []int, m *Managed) *Demand {
	d := NewDemand(n, standing, essential, nice, night)
	d.manage(m, n)
	return d
}

// manage makes the load one that is managed by m, or by nobody where m is nil.
func (d *Demand) manage(m *Managed, n int) {
	d.managed, d.levels = m, nil
	if m == nil {
		return
	}
	for _, l := range m.Levels {
		d.levels = append(d.levels, Level{Essential: tamed(nil, l.Essential, n), Nice: tamed(nil, l.Nice, n)})
	}
}

// NewDemand reads the load of n hours. Series that are nil or short are nothing where they are missing; values below
// zero, and values that are not numbers, count as zero.
func NewDemand(n int, standing, essential, nice []float64, night []int) *Demand {
	d := &Demand{}
	d.read(n, standing, essential, nice, night)
	return d
}

// read reads another load in the room of the one before.
func (d *Demand) read(n int, standing, essential, nice []float64, night []int) {
	d.standing, d.essential, d.nice = tamed(d.standing, standing, n), tamed(d.essential, essential, n), tamed(d.nice, nice, n)
	d.total, d.appliances = sized(d.total, n), 0
	for h := range d.total {
		d.total[h] = d.standing[h] + d.essential[h] + d.nice[h]
		d.appliances += (d.essential[h] + d.nice[h]) * hour
	}
	d.countNights(night, n)
}

// most is one more nights than a year can have hours: a night number at or above it is no night.
const most = Hours

func (d *Demand) countNights(night []int, n int) {
	d.counted = 0
	if len(night) == 0 {
		d.night, d.wanted, d.wantedEssential, d.isNight = nil, nil, nil, nil
		return
	}
	if cap(d.night) < n {
		d.night = make([]int, n)
	}
	d.night = d.night[:n]
	last := -1
	for h := range d.night {
		d.night[h] = -1
		if h < len(night) && night[h] >= 0 && night[h] < most {
			d.night[h] = night[h]
			last = max(last, night[h])
		}
	}
	d.wanted = make([]float64, last+1)
	d.wantedEssential = make([]float64, last+1)
	d.isNight = make([]bool, last+1)
	for h, k := range d.night {
		if k < 0 {
			continue
		}
		d.wanted[k] += (d.essential[h] + d.nice[h]) * hour
		d.wantedEssential[k] += d.essential[h] * hour
		if !d.isNight[k] {
			d.isNight[k] = true
			d.counted++
		}
	}
}

// tamed copies n values of v into the room of out, each tamed.
func tamed(out, v []float64, n int) []float64 {
	out = sized(out, n)
	for i := range min(n, len(v)) {
		out[i] = tame(v[i])
	}
	clear(out[min(n, len(v)):])
	return out
}
