package year

import "math"

// count reads nights, outages and shares out of the hours in which something is missing, in the order of the hours.
type count struct {
	w *Workspace
	d *Demand

	wanted, wantedEssential []float64 // J by night
	appliances              float64   // J in the year

	nice, essential float64 // J missing

	last    int // last hour without essential load that was wanted; −2 before the first
	run     int // hours on end up to it
	longest int
	first   int // length of the run that begins the year; 0 where none does
	opening bool
}

// newCount begins to count.
func newCount(w *Workspace, d *Demand) count {
	w.missed = sized(w.missed, len(d.wanted))
	w.missedEssential = sized(w.missedEssential, len(d.wanted))
	clear(w.missed)
	clear(w.missedEssential)
	return count{w: w, d: d, wanted: d.wanted, wantedEssential: d.wantedEssential, appliances: d.appliances, last: -2}
}

// lacks books that u joules are missing in hour h: the last served first.
func (c *count) lacks(h int, u float64) {
	d := c.d
	m := min(u, d.nice[h]*hour)
	want := d.essential[h] * hour
	c.misses(h, m, min(u-m, want), want)
}

// misses books that m joules of what is nice and e of what is essential are missing in hour h, of want joules that are
// essential.
func (c *count) misses(h int, m, e, want float64) {
	d := c.d
	c.nice += m
	c.essential += e
	if d.night != nil && d.night[h] >= 0 {
		c.w.missed[d.night[h]] += m + e
		c.w.missedEssential[d.night[h]] += e
	}
	if !(e > served*want) {
		return
	}
	if h == c.last+1 {
		c.run++
	} else {
		c.run = 1
		c.opening = h == 0
	}
	c.last = h
	if c.opening {
		c.first = c.run
	}
	if c.run > c.longest {
		c.longest = c.run
	}
}

// close writes the answers for a year of n hours.
func (c *count) close(b *Brief, n int) {
	b.LongestOutage = c.longest
	if c.last == n-1 && c.last >= 0 { // over the turn of the year
		b.LongestOutage = min(n, max(c.longest, c.run+c.first))
	}
	b.UnmetNice, b.UnmetEssential = joules(c.nice), joules(c.essential)
	b.ServedShare = 1
	if c.appliances > 0 {
		b.ServedShare = math.Max(0, 1-(c.nice+c.essential)/c.appliances)
	}
	t := newTally()
	for k, is := range c.d.isNight {
		if !is {
			continue
		}
		whole, essential := lit(c.wanted[k], c.w.missed[k], c.wantedEssential[k], c.w.missedEssential[k])
		b.NightsServed += one(whole)
		b.NightsEssential += one(essential)
		t.add(c.wanted[k], c.w.missed[k], c.wantedEssential[k], c.w.missedEssential[k])
	}
	b.Tally = t.Tally
	b.Gaps = Gaps{}
	if b.NightsFull < b.Nights {
		b.Gaps = gapsOf(len(c.d.isNight), func(k int) bool { return c.d.isNight[k] }, c.full)
	}
}

// full reports whether night k misses at most 1 % of what it wants.
func (c *count) full(k int) bool { return c.w.missed[k] <= Full*c.wanted[k] }

// lit says whether a night that wanted and missed so many joules was served whole, and whether what is essential was. The
// rounding that is allowed to the whole is allowed to its part.
func lit(wanted, missed, wantedEssential, missedEssential float64) (whole, essential bool) {
	whole = missed <= served*wanted
	return whole, whole || missedEssential <= served*wantedEssential
}

// one is 1 where it is so, else 0.
func one(is bool) int {
	if is {
		return 1
	}
	return 0
}
