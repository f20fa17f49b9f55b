package year

// Shares of what a night wants that may be missing while it counts as mostly there, and from which on it counts as dark: our own
// judgement.
const (
	mostly = 0.10
	dark   = 0.90
)

// Tally counts the nights of a year by what each misses of what its appliances want.
type Tally struct {
	Nights              int     // that count: they have night hours
	NightsFull          int     // at most 1 % is missing
	NightsEssentialFull int     // at most 1 % of what is essential is missing
	NightsMost          int     // at most a tenth is missing
	NightsDark          int     // nine tenths or more are missing
	NightShare          float64 // of what all nights want; 1 where they want nothing
}

// tally adds nights up.
type tally struct {
	Tally
	wanted, missed float64 // J
}

func newTally() tally { return tally{Tally: Tally{NightShare: 1}} }

// add counts a night that wanted so many joules and missed some of them, and of these what is essential.
func (t *tally) add(wanted, missed, wantedEssential, missedEssential float64) {
	t.Nights++
	t.NightsFull += one(missed <= Full*wanted)
	t.NightsEssentialFull += one(missedEssential <= Full*wantedEssential)
	t.NightsMost += one(missed <= mostly*wanted)
	t.NightsDark += one(wanted > 0 && missed >= dark*wanted)
	if t.wanted, t.missed = t.wanted+wanted, t.missed+missed; t.wanted > 0 {
		t.NightShare = max(0, 1-t.missed/t.wanted)
	}
}

// Brief is what a sweep would have of the year.
func (out *Result) Brief() Brief {
	b := Brief{Settled: out.Settled, Passes: out.Passes, Taken: out.Taken, Delivered: out.Delivered, Spilled: out.Spilled, Unmet: out.Unmet,
		UnmetEssential: out.Essential.Unmet, UnmetNice: out.Nice.Unmet, ServedShare: float64(out.ServedShare.Or(1)),
		NightsServed: out.NightsServed, NightsEssential: out.NightsEssential, Tally: out.Tally(), Gaps: out.Gaps(), LongestOutage: out.LongestOutage.Hours, Backup: out.Backup}
	if len(out.Stores) > 0 {
		b.End = out.Stores[0].End
	}
	return b
}

// Tally counts the nights of the year.
func (out *Result) Tally() Tally {
	t := newTally()
	for _, n := range out.NightLog {
		if n.Counted {
			t.add(float64(n.Wanted), float64(n.Unmet), float64(n.WantedEssential), float64(n.UnmetEssential))
		}
	}
	return t.Tally
}
