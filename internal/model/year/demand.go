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
}

// NewDemand reads the load of n hours. Series that are nil or short are nothing where they are missing; values below
// zero, and values that are not numbers, count as zero.
func NewDemand(n int, standing, essential, nice []float64, night []int) *Demand {
	d := &Demand{
		standing:  tamed(standing, n),
		essential: tamed(essential, n),
		nice:      tamed(nice, n),
		total:     make([]float64, n),
	}
	for h := range d.total {
		d.total[h] = d.standing[h] + d.essential[h] + d.nice[h]
		d.appliances += (d.essential[h] + d.nice[h]) * hour
	}
	d.countNights(night, n)
	return d
}

// most is one more nights than a year can have hours: a night number at or above it is no night.
const most = Hours

func (d *Demand) countNights(night []int, n int) {
	if len(night) == 0 {
		return
	}
	d.night = make([]int, n)
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

// tamed copies n values of v, each tamed.
func tamed(v []float64, n int) []float64 {
	out := make([]float64, n)
	for i := range min(n, len(v)) {
		out[i] = tame(v[i])
	}
	return out
}
