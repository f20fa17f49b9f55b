package year

// Gaps are the runs of nights in a row that are not full, over the turn of the year too.
type Gaps struct {
	Runs    int // how many there are
	Long    int // of these, of three nights or more
	Longest int // nights of the longest; 0: there is none
	From    int // the night with which the longest begins, the first of equals; 0 where there is none
}

// long is from how many dark nights on end a gap counts as long.
const long = 3

// gapsOf counts the gaps among n nights. counts says whether night k is one of the year, full whether it is full.
func gapsOf(n int, counts, full func(k int) bool) (g Gaps) {
	start := 0 // behind a full night, so that no run is cut in two
	for k := range n {
		if counts(k) && full(k) {
			start = k + 1
			break
		}
	}
	run, from := 0, 0
	closeRun := func() {
		if run == 0 {
			return
		}
		g.Runs++
		g.Long += one(run >= long)
		if run > g.Longest || run == g.Longest && from < g.From {
			g.Longest, g.From = run, from
		}
		run = 0
	}
	for i := range n {
		k := (start + i) % n
		switch {
		case !counts(k):
		case full(k):
			closeRun()
		default:
			if run == 0 {
				from = k
			}
			run++
		}
	}
	closeRun()
	return g
}

// Gaps returns the runs of nights that are not full.
func (out *Result) Gaps() Gaps {
	return gapsOf(len(out.NightLog), func(k int) bool { return out.NightLog[k].Counted }, func(k int) bool { return out.NightLog[k].full() })
}

// full reports whether the night misses at most 1 % of what it wants.
func (n Night) full() bool { return float64(n.Unmet) <= Full*float64(n.Wanted) }
