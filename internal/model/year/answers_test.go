package year

import (
	"math/rand/v2"
	"testing"

	"duskweight/internal/model/reservoir"
	"duskweight/internal/model/unit"
)

// run runs the settled year: from full stores, then again from the state it ended in, until start and end agree to
// 1e-9 of the capacity or 20 passes are done; the last pass is the one that counts.
func run(in Input) Result {
	d := Begin(in)
	d.Settle(in.Stores)
	return d.Result()
}

// Three days of six hours each way, by hand. Sun 10 W in the first half of the day, load 4 W essential and 2 W nice in
// the second; a store of 20 W·h; no sun on the second day.
func TestHandMadeDays(t *testing.T) {
	in := Input{Keep: true}
	for d := range 3 {
		for c := range 12 {
			sun, e, w, night := 0.0, 0.0, 0.0, -1
			if c < 6 {
				if d != 1 {
					sun = 10
				}
			} else {
				e, w, night = 4, 2, d
			}
			in.Bus = append(in.Bus, sun)
			in.Essential = append(in.Essential, e)
			in.Nice = append(in.Nice, w)
			in.Night = append(in.Night, night)
		}
	}
	in.Stores = []reservoir.Reservoir{{Name: "s", Capacity: 20 * 3600, FillMax: 5, FillGain: 1, DrawMax: 100, DrawGain: 1}}
	out := run(in)
	wh := func(v float64) float64 { return v * 3600 }
	// The night wants 36 W·h, the store holds 20: nights 0 and 2 miss 16, night 1 misses all 36.
	// Each sunny day puts 5 W for 4 h in, of 60 W·h 40 are left over.
	near(t, "bus", float64(out.Bus), wh(120))
	near(t, "taken", float64(out.Taken), wh(40))
	near(t, "spilled", float64(out.Spilled), wh(80))
	near(t, "delivered", float64(out.Delivered), wh(40))
	near(t, "unmet", float64(out.Unmet), wh(16+36+16))
	// 20 W·h last 3 h 20 min at 6 W: in hour 3 of the night 2 of 6 W·h come, all to the essential; then nothing.
	// Essential missing: 4 − 2 = 2, then 2·4 in nights 0 and 2, and 24 in night 1.
	near(t, "essential missing", float64(out.Essential.Unmet), wh(10+24+10))
	near(t, "nice missing", float64(out.Nice.Unmet), wh(6+12+6))
	near(t, "served share", float64(out.ServedShare.Val), 40.0/108)
	near(t, "essential share", float64(out.EssentialShare.Val), (72.0-44)/72)
	if out.Nights != 3 || out.NightsServed != 0 || out.NightsEssential != 0 {
		t.Errorf("nights %d served %d essential %d", out.Nights, out.NightsServed, out.NightsEssential)
	}
	// Night 1 is six hours long and the hours of day have no load: six hours on end.
	if out.LongestOutage.From != 18 || out.LongestOutage.Hours != 6 {
		t.Errorf("longest outage %+v", out.LongestOutage)
	}
	near(t, "outage missing", float64(out.LongestOutage.Unmet), wh(24))
	s := out.Stores[0]
	near(t, "cycles", s.Cycles, 2)
	near(t, "most fills", s.MostFills, 1)
	// Full from the fifth hour of the sun to the first of the night, two days: 2·2 h.
	near(t, "hours full", s.HoursFull, 4)
	if !out.Settled || s.Start != 0 || s.End != 0 {
		t.Errorf("settled %v in %d passes, from %g to %g", out.Settled, out.Passes, s.Start, s.End)
	}
}

// The longest outage and the worst week go over the turn of the year.
func TestOverTheTurnOfTheYear(t *testing.T) {
	in := Input{Bus: make([]float64, Hours), Essential: make([]float64, Hours)}
	for h := range in.Bus {
		in.Bus[h], in.Essential[h] = 10, 5
		if h < 50 || h >= Hours-20 {
			in.Bus[h] = 0
		}
		if h >= 4000 && h < 4060 {
			in.Bus[h] = 0
		}
	}
	out := run(in)
	if out.LongestOutage.From != Hours-20 || out.LongestOutage.Hours != 70 {
		t.Errorf("longest outage %+v", out.LongestOutage)
	}
	near(t, "worst week", float64(out.WorstWeek.Unmet), 70*5*3600)
	if f := out.WorstWeek.From; f > Hours-20 || f < Hours-118 {
		t.Errorf("worst week from %d", f)
	}
	var w Workspace
	b := w.Quick(in.Bus, NewDemand(Hours, nil, in.Essential, nil, nil), nil)
	if b.LongestOutage != 70 {
		t.Errorf("longest outage %d", b.LongestOutage)
	}
}

// Nothing at all, and everything missing, are answers too.
func TestEdges(t *testing.T) {
	out := run(Input{})
	if !out.Settled || out.ServedShare.Is || out.Nights != 0 {
		t.Errorf("empty year: %+v", out)
	}
	in := Input{Bus: make([]float64, 48), Essential: make([]float64, 48), Night: make([]int, 48)}
	for h := range in.Essential {
		in.Essential[h] = 1
	}
	out = run(in)
	if out.LongestOutage.Hours != 48 || out.NightsServed != 0 || out.ServedShare.Val != 0 {
		t.Errorf("nothing served: %+v", out)
	}
	// A night in which nothing is wanted is served.
	in.Essential = nil
	if out = run(in); out.NightsServed != 1 || out.ServedShare.Is {
		t.Errorf("nothing wanted: %+v", out)
	}
}

// A store that loses a little each year and is too large to be emptied in 20 of them is said not to settle.
func TestNotSettled(t *testing.T) {
	in := Input{Bus: make([]float64, 48), Essential: make([]float64, 48)}
	for h := range in.Essential {
		in.Essential[h] = 1
	}
	in.Stores = []reservoir.Reservoir{{Capacity: 1e9, FillMax: 1, FillGain: 1, DrawMax: 10, DrawGain: 1}}
	out := run(in)
	if out.Settled || out.Passes != 20 {
		t.Errorf("settled %v after %d passes", out.Settled, out.Passes)
	}
	near(t, "change", float64(out.Stores[0].Change), -48*3600)
}

// Two stores serve in their order, and what one leaves the next is asked for.
func TestTwoStores(t *testing.T) {
	in := Input{Keep: true, Bus: []float64{100, 0}, Essential: []float64{0, 50}}
	in.Stores = []reservoir.Reservoir{
		{Capacity: 18e3, FillMax: 100, FillGain: 1, DrawMax: 100, DrawGain: 1},
		{Capacity: 360e3, FillMax: 1000, FillThreshold: 60, FillGain: 0.5, DrawMax: 30, DrawGain: 2, Standing: 0},
	}
	out := run(in)
	// By day the first takes 18 kJ, 342 kJ = 95 W are left for the second: 171 kJ of its own.
	near(t, "second takes", out.Hourly.Taken[1][0], 342e3)
	// By night the first is asked 50 W: its 18 kJ last 360 s, the hour still wants 162 kJ = 45 W in the mean; the
	// second could give 30 W for an hour, 108 kJ for 216 kJ of its own, but holds 171 kJ: 85.5 kJ; 76.5 kJ are missing.
	near(t, "first", out.Hourly.Delivered[0][1], 18e3)
	near(t, "second", out.Hourly.Delivered[1][1], 85.5e3)
	near(t, "missing", out.Hourly.Unmet[1], 76.5e3)
}

// The typical day is the mean of each month's clock hours.
func TestTypicalDay(t *testing.T) {
	in := Input{Bus: make([]float64, Hours), Nice: make([]float64, Hours)}
	r := rand.New(rand.NewPCG(1, 1))
	sum := 0.0
	for h := range in.Bus {
		in.Bus[h] = 50 * r.Float64()
		if h >= 31*24 && h < 59*24 && h%24 == 12 { // February
			sum += in.Bus[h]
		}
		in.Nice[h] = float64(h % 24)
	}
	in.Stores = []reservoir.Reservoir{{Capacity: 100, FillMax: 1, FillGain: 1}}
	out := run(in)
	near(t, "bus", float64(out.Typical[1][12].Bus), sum/28)
	near(t, "load", float64(out.Typical[6][17].Load), 17)
	near(t, "state", float64(out.Typical[6][17].State[0]), 100)
	total := 0.0
	for m, days := range monthDays {
		for _, c := range out.Typical[m] {
			total += float64(c.Bus) * 3600 * float64(days)
		}
	}
	near(t, "whole year", total, float64(out.Bus))
}

// Quick says the same as Run.
func TestQuickIsRun(t *testing.T) {
	var w Workspace
	for seed := range uint64(600) {
		r := rand.New(rand.NewPCG(seed, 21))
		in := anyYear(r, 24*(2+r.IntN(30)), r.IntN(4))
		if seed%3 == 0 && len(in.Stores) > 0 {
			s := plain(r)
			s.DrawLoss, s.AcceptFrom = 0, 1
			if seed%2 == 0 {
				s.Leak = 0
			}
			in.Stores = append(in.Stores[:0], s)
		}
		d := NewDemand(len(in.Bus), in.Standing, in.Essential, in.Nice, in.Night)
		a, b := run(in), w.Quick(in.Bus, d, in.Stores)
		same := func(what string, got, want float64) {
			t.Helper()
			// sums in another order over at most a thousand hours; the energies that pass are their scale
			if diff := got - want; diff > 1e-12*float64(a.Load+a.Bus) || -diff > 1e-12*float64(a.Load+a.Bus) {
				t.Fatalf("seed %d: %s: quick %.17g, run %.17g", seed, what, got, want)
			}
		}
		same("taken", float64(b.Taken), float64(a.Taken))
		same("delivered", float64(b.Delivered), float64(a.Delivered))
		same("spilled", float64(b.Spilled), float64(a.Spilled))
		same("unmet", float64(b.Unmet), float64(a.Unmet))
		same("nice", float64(b.UnmetNice), float64(a.Nice.Unmet))
		same("essential", float64(b.UnmetEssential), float64(a.Essential.Unmet))
		if b.Nights != a.Nights || b.NightsServed != a.NightsServed || b.NightsEssential != a.NightsEssential ||
			b.LongestOutage != a.LongestOutage.Hours || b.Settled != a.Settled {
			t.Fatalf("seed %d: quick %+v, run %d/%d/%d nights, outage %d, settled %v", seed, b, a.NightsServed, a.NightsEssential, a.Nights, a.LongestOutage.Hours, a.Settled)
		}
	}
}

// Sweep says the same as Quick to the last bit, four at a time or alone, whenever its neighbours settle.
func TestSweepIsQuick(t *testing.T) {
	var w, alone Workspace
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 31))
		in := anyYear(r, 24*(2+r.IntN(30))+r.IntN(24), 0)
		d := NewDemand(len(in.Bus), in.Standing, in.Essential, in.Nice, in.Night)
		fall := seed%2 == 0
		var stores []reservoir.Reservoir
		for range 1 + r.IntN(12) {
			s := plain(r)
			s.DrawLoss, s.AcceptFrom = 0, 1
			if r.IntN(6) > 0 {
				s.Leak = 0
			}
			if r.IntN(8) == 0 {
				s.Standing = 2
			}
			if r.IntN(5) == 0 {
				s.Capacity *= 1e6
			}
			if fall {
				falls(r, &s, len(in.Bus))
			}
			stores = append(stores, s)
		}
		got := w.Sweep(nil, in.Bus, d, stores)
		if len(got) != len(stores) {
			t.Fatalf("%d answers for %d stores", len(got), len(stores))
		}
		for j := range stores {
			want := alone.Quick(in.Bus, d, stores[j:j+1])
			if got[j] != want {
				t.Fatalf("seed %d, store %d: sweep %+v, quick %+v", seed, j, got[j], want)
			}
		}
	}
}

// falls makes s a store whose filling falls, as cells are, now and then with hours too cold to fill or to give all.
func falls(r *rand.Rand, s *reservoir.Reservoir, hours int) {
	s.FillLoss, s.Leak = 0, 1e-7*r.Float64()*float64(r.IntN(2))
	s.AcceptFrom, s.AcceptEnd = 0.1+0.8*r.Float64(), 0.5*r.Float64()
	if r.IntN(3) > 0 {
		return
	}
	s.NoFill, s.Locked = make([]bool, hours), make([]float64, hours)
	for h := range hours {
		s.NoFill[h], s.Locked[h] = r.IntN(5) == 0, 0.5*r.Float64()-0.2
	}
}

// Where the energy went: what uses power all the time is served first, by the sun and by each store in its order.
func TestWhereItWent(t *testing.T) {
	in := Input{Keep: true, Bus: []float64{100, 3}, Standing: []float64{4, 4}, Essential: []float64{0, 10}, Nice: []float64{0, 20}}
	in.Stores = []reservoir.Reservoir{
		{Capacity: 6 * 3600, FillMax: 100, FillGain: 1, DrawMax: 100, DrawGain: 1, Standing: 2},
		{Capacity: 17 * 3600, FillMax: 100, FillGain: 1, DrawMax: 100, DrawGain: 1, Standing: 1},
	}
	out := run(in)
	wh := func(e unit.Energy) float64 { return e.WattHours() }
	// By night 37 W·h are wanted: 3 by the stores, 4 by the project, 10 and 20 by appliances. The sun's 3 go to the
	// stores; the first store's 6 to the project (4) and the essential (2); the second's 17 to the essential (8) and
	// the nice (9); 11 of the nice are missing.
	near(t, "stores' standing, direct", wh(out.StoreStanding.Direct), 3+3)
	near(t, "standing, delivered", wh(out.Standing.Delivered), 4)
	near(t, "first to standing", wh(out.Stores[0].ToStanding), 4)
	near(t, "first to appliances", wh(out.Stores[0].ToAppliances), 2)
	near(t, "second to standing", wh(out.Stores[1].ToStanding), 0)
	near(t, "second to appliances", wh(out.Stores[1].ToAppliances), 17)
	near(t, "essential missing", wh(out.Essential.Unmet), 0)
	near(t, "nice missing", wh(out.Nice.Unmet), 11)
	// Of the day's 100 W·h, 7 are used, 23 go in, 70 are left over.
	near(t, "not used", wh(out.Spilled), 70)
	near(t, "second's standing", wh(out.Stores[1].Standing), 2)
}

// What a mean hour leaves over is the mean of what the days leave. By hand: at noon of one day of January the sun brings
// 31 W and 5 W are wanted, on the other 30 days it brings nothing: 26/31 W are left over in the mean, although the mean
// sun, 1 W, is less than the mean wish. Over the year it is all that stores take and nobody uses.
func TestSurplusOfTypicalDay(t *testing.T) {
	in := Input{Bus: make([]float64, Hours), Essential: make([]float64, Hours)}
	for h := range in.Essential {
		in.Essential[h] = 5
	}
	in.Bus[12] = 31
	out := run(in)
	near(t, "noon of January", float64(out.Typical[0][12].Surplus()), 26.0/31)
	near(t, "noon of February", float64(out.Typical[1][12].Surplus()), 0)

	r := rand.New(rand.NewPCG(5, 5))
	for h := range in.Bus {
		in.Bus[h] = 12 * r.Float64()
	}
	in.Stores = []reservoir.Reservoir{
		{Capacity: 9e3, FillMax: 3, FillGain: 0.9, DrawMax: 2, DrawGain: 1.2, Standing: 0.5},
		{Capacity: 5e4, FillMax: 9, FillGain: 0.5, DrawMax: 9, DrawGain: 2},
	}
	out = run(in)
	sum := 0.0
	for m, days := range monthDays {
		for _, c := range out.Typical[m] {
			sum += float64(c.Surplus()) * 3600 * float64(days)
		}
	}
	near(t, "a year", sum, float64(out.Taken+out.Spilled))
}

// The mean current of drawing is that of the hours in which something is drawn. What rounding leaves of a wish that the
// store before it met is none: by hand (10 + 20)/2 = 15 W, and not 30/3 W.
func TestMeanDraw(t *testing.T) {
	d := Draft{rec: &record{stores: []trace{{flow: []float64{-10, 0, 40, -20, -4e-15}}, {flow: []float64{0, 3}}}}}
	if w, ok := d.MeanDraw(0).Value(); !ok || w != 15 {
		t.Errorf("mean draw %v, %v; want 15 W", w, ok)
	}
	if d.MeanDraw(1).Is {
		t.Error("a store that never gave has a mean draw")
	}
}
