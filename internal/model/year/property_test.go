package year

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"duskweight/internal/model/reservoir"
	"duskweight/internal/model/unit"
)

// lot draws a value that is often an edge: nothing, or far more than anything else.
func lot(r *rand.Rand, scale float64) float64 {
	switch r.IntN(8) {
	case 0:
		return 0
	case 1:
		return scale * 1e6
	}
	return scale * r.Float64()
}

// anyStore draws a store of any kind, edges and nonsense included.
func anyStore(r *rand.Rand, n int) reservoir.Reservoir {
	s := reservoir.Reservoir{
		Capacity:      unit.Energy(lot(r, 2e6)),
		FillThreshold: unit.Power(lot(r, 50) * float64(r.IntN(2))),
		FillMax:       unit.Power(lot(r, 200)),
		FillStep:      r.IntN(3) == 0,
		FillGain:      lot(r, 1),
		FillLoss:      unit.Power(lot(r, 20) * float64(r.IntN(2))),
		DrawMin:       unit.Power(lot(r, 10) * float64(r.IntN(2))),
		DrawMax:       unit.Power(lot(r, 100)),
		DrawGain:      1 + lot(r, 1),
		DrawLoss:      unit.Power(lot(r, 5) * float64(r.IntN(2))),
		Standing:      unit.Power(lot(r, 3) * float64(r.IntN(2))),
		Leak:          lot(r, 1e-6) * float64(r.IntN(2)),
		AcceptFrom:    r.Float64() * 1.2,
		AcceptEnd:     r.Float64() * 1.2,
		FillCap:       unit.Energy(lot(r, 1e6) * float64(r.IntN(2))),
	}
	if s.FillGain > 1 {
		s.FillGain = 1
	}
	if r.IntN(3) == 0 {
		s.NoFill = make([]bool, n)
		s.Locked = make([]float64, n)
		for h := range n {
			s.NoFill[h] = r.IntN(4) == 0
			s.Locked[h] = math.Round(r.Float64()*3) / 2
		}
	}
	if r.IntN(4) == 0 {
		s.Own = anySource(r, n)
	}
	return s
}

// anySource draws a source of a store's own, nonsense included: more comes of it than it gives, no numbers, too short.
func anySource(r *rand.Rand, n int) *reservoir.Source {
	s := &reservoir.Source{}
	for h := range n - r.IntN(2)*r.IntN(n) {
		p := lot(r, 100) * math.Max(0, math.Sin(float64(h%24-6)/12*math.Pi))
		s.Power, s.Fill = append(s.Power, p), append(s.Fill, p*(1.1*r.Float64()-0.05))
	}
	if r.IntN(5) == 0 {
		s.Power[r.IntN(len(s.Power))] = math.NaN()
		s.Fill[r.IntN(len(s.Fill))] = math.Inf(1)
	}
	return s
}

// anyYear draws a year of n hours with sun by day and load by night, and now and then something wild.
func anyYear(r *rand.Rand, n, stores int) Input {
	in := Input{Keep: true}
	sun, use := lot(r, 300), lot(r, 40)
	for h := range n {
		c := float64(h % 24)
		in.Bus = append(in.Bus, math.Max(0, math.Sin((c-6)/12*math.Pi))*sun*r.Float64())
		night := -1
		e, w := 0.0, 0.0
		if c < 6 || c >= 18 {
			night = (h + 6) / 24
			e, w = use*r.Float64(), use*r.Float64()*float64(r.IntN(2))
		}
		in.Night = append(in.Night, night)
		in.Essential = append(in.Essential, e)
		in.Nice = append(in.Nice, w)
		in.Standing = append(in.Standing, 1.5)
	}
	for range stores {
		in.Stores = append(in.Stores, anyStore(r, n))
	}
	return in
}

// closes fails when the parts do not add up to the whole within 1e-9 of the largest of them.
func closes(whole float64, parts ...float64) error {
	sum, most := 0.0, math.Abs(whole)
	for _, p := range parts {
		sum += p
		most = math.Max(most, math.Abs(p))
		if math.IsNaN(p) || math.IsInf(p, 0) {
			return fmt.Errorf("a part is no number: %v", parts)
		}
	}
	if !(math.Abs(whole-sum) <= 1e-9*most) {
		return fmt.Errorf("%.17g is not the sum of %v", whole, parts)
	}
	return nil
}

// balances checks every balance of a result.
func balances(in Input, out Result) error {
	f := func(e unit.Energy) float64 { return float64(e) }
	errs := []error{
		closes(f(out.Bus), f(out.Direct), f(out.Taken), f(out.Spilled)),
		closes(f(out.Load), f(out.Direct), f(out.Delivered), f(out.Unmet)),
		closes(f(out.Load), f(out.StoreStanding.Wanted), f(out.Standing.Wanted), f(out.Essential.Wanted), f(out.Nice.Wanted)),
		closes(f(out.Unmet), f(out.StoreStanding.Unmet), f(out.Standing.Unmet), f(out.Essential.Unmet), f(out.Nice.Unmet)),
	}
	for _, p := range []Part{out.StoreStanding, out.Standing, out.Essential, out.Nice} {
		// A small part beside one a million times larger carries the larger one's rounding.
		errs = append(errs, closes(f(out.Load)+f(p.Wanted), f(out.Load), f(p.Direct), f(p.Delivered), f(p.Unmet)))
	}
	var taken, delivered, standing float64
	for k, s := range out.Stores {
		errs = append(errs,
			closes(f(s.Change), f(s.Taken), -f(s.Delivered), -f(s.Loss)),
			closes(f(s.Loss), f(s.FillLoss), f(s.DrawLoss), f(s.Leaked)),
			closes(f(s.Delivered), f(s.ToStanding), f(s.ToAppliances)))
		taken += f(s.Taken)
		delivered += f(s.Delivered)
		standing += f(s.Standing)
		trace := 1e-9 * math.Max(f(s.Taken), f(s.Capacity))
		if f(s.FillLoss) < -trace || f(s.DrawLoss) < -trace || f(s.Leaked) < -trace {
			errs = append(errs, fmt.Errorf("store %d makes energy: %+v", k, s))
		}
		sumTaken, sumDelivered := 0.0, 0.0
		for h, x := range out.Hourly.State[k] {
			if !(x >= 0 && x <= f(s.Capacity)) {
				errs = append(errs, fmt.Errorf("store %d holds %g of %g in hour %d", k, x, s.Capacity, h))
			}
			sumTaken += out.Hourly.Taken[k][h]
			sumDelivered += out.Hourly.Delivered[k][h]
		}
		errs = append(errs, closes(f(s.Taken), sumTaken), closes(f(s.Delivered), sumDelivered))
		if s.HoursFull < 0 || s.HoursFull > float64(len(in.Bus))+1e-6 || math.IsNaN(s.Cycles) || math.IsInf(s.Cycles, 0) {
			errs = append(errs, fmt.Errorf("store %d: %+v", k, s))
		}
	}
	errs = append(errs, closes(f(out.Taken), taken), closes(f(out.Delivered), delivered), closes(f(out.StoreStanding.Wanted), standing))
	if out.NightsServed > out.NightsEssential || out.NightsEssential > out.Nights {
		errs = append(errs, fmt.Errorf("nights %d served, %d essentially, %d counted", out.NightsServed, out.NightsEssential, out.Nights))
	}
	if s := out.ServedShare; s.Is && !(s.Val >= 0 && s.Val <= 1+1e-12) {
		errs = append(errs, fmt.Errorf("served share %g", s.Val))
	}
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

// Every balance closes for any input, energy is never made, and no state leaves its store.
func TestBalancesOfAnything(t *testing.T) {
	for seed := range uint64(1500) {
		r := rand.New(rand.NewPCG(seed, 7))
		in := anyYear(r, 24*(3+r.IntN(20))+r.IntN(24), r.IntN(4))
		if err := balances(in, run(in)); err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
	}
}

// What a fuzzer finds still balances.
func FuzzBalances(f *testing.F) {
	f.Add(uint64(1), 1e6, 100.0, 0.9, 20.0, 1.1, 1e-7, 0.8, 0.05)
	f.Add(uint64(2), 0.0, 0.0, 0.0, 0.0, 0.0, 1e9, 0.0, 0.0)
	f.Add(uint64(3), 1e-300, 1e300, 1.0, 1e-300, 1.0, 0.0, 0.999999, 0.0)
	f.Add(uint64(4), math.Inf(1), math.NaN(), -1.0, math.Inf(-1), math.NaN(), -1.0, math.NaN(), math.Inf(1))
	// of what a night lacks, rounding is more than a trace of the essential part and less than one of the whole
	f.Add(uint64(80), 333333.3333333333, 86.11111111111111, 0.6000000000000001, 72.0, 1.1, 5e-08, 37.114285714285714, -88.95)
	// x + (X − x) rounds above X
	f.Add(uint64(155), 1787.5714285714287, 86.11111111111111, 0.6000000000000001, 432.0, -70.9, 28.0000001, 0.1, -125.95)
	f.Fuzz(func(t *testing.T, seed uint64, X, pf, af, pd, ad, leak, from, end float64) {
		r := rand.New(rand.NewPCG(seed, 3))
		in := anyYear(r, 24*5, 1)
		s := reservoir.Reservoir{
			Capacity: unit.Energy(X), FillMax: unit.Power(pf), FillGain: math.Min(af, 1), DrawMax: unit.Power(pd),
			DrawGain: math.Max(ad, 1), Leak: leak, AcceptFrom: from, AcceptEnd: end,
		}
		in.Stores = append(in.Stores, s)
		if err := balances(in, run(in)); err != nil {
			t.Fatal(err)
		}
	})
}

// plain draws one store without threshold, step, least draw or daily cap: the kind for which the true properties hold.
func plain(r *rand.Rand) reservoir.Reservoir {
	return reservoir.Reservoir{
		Capacity: unit.Energy(1e6 * r.Float64()), FillMax: unit.Power(20 + 200*r.Float64()), FillGain: 0.5 + 0.5*r.Float64(),
		DrawMax: unit.Power(5 + 100*r.Float64()), DrawGain: 1 + r.Float64(), DrawLoss: unit.Power(2 * r.Float64()),
		Leak: 1e-7 * r.Float64(), AcceptFrom: 0.5 + 0.6*r.Float64(), AcceptEnd: r.Float64(),
	}
}

// More sun never means fewer nights or less served, and more capacity never less, with one store without threshold.
// Pointwise: the state with more of either is never below the other, so neither is what it gives.
func TestMoreIsNeverLess(t *testing.T) {
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 11))
		in := anyYear(r, 24*40, 0)
		s := plain(r)
		in.Stores = []reservoir.Reservoir{s}
		was := run(in)
		more := in
		more.Bus = make([]float64, len(in.Bus))
		for h, b := range in.Bus {
			more.Bus[h] = b * (1 + 0.3*r.Float64())
		}
		bigger := in
		s.Capacity *= unit.Energy(1 + r.Float64())
		bigger.Stores = []reservoir.Reservoir{s}
		for say, now := range map[string]Result{"more sun": run(more), "more capacity": run(bigger)} {
			if now.NightsServed < was.NightsServed || now.NightsEssential < was.NightsEssential {
				t.Errorf("seed %d: %s: %d nights, before %d", seed, say, now.NightsServed, was.NightsServed)
			}
			// rounding of sums over a year
			if float64(now.Unmet) > float64(was.Unmet)*(1+1e-9) {
				t.Errorf("seed %d: %s: %g J missing, before %g", seed, say, now.Unmet, was.Unmet)
			}
			for h := range in.Bus {
				if now.Hourly.State[0][h] < was.Hourly.State[0][h]*(1-1e-9) {
					t.Fatalf("seed %d: %s: hour %d holds %g, before %g", seed, say, h, now.Hourly.State[0][h], was.Hourly.State[0][h])
				}
			}
		}
	}
}

// A lossless store gives back exactly what it took, and its year ends as it began.
func TestLossless(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 5))
	in := anyYear(r, 24*60, 0)
	in.Stores = []reservoir.Reservoir{{Capacity: 4e5, FillMax: 100, FillGain: 1, DrawMax: 100, DrawGain: 1}}
	out := run(in)
	if !out.Settled || out.Delivered == 0 {
		t.Fatalf("settled %v, delivered %g", out.Settled, out.Delivered)
	}
	near(t, "delivered", float64(out.Delivered), float64(out.Taken))
	near(t, "loss", float64(out.Stores[0].Loss), 0)
}

// Round trip of a settled store is the product of its two efficiencies: 0.9/1.25.
func TestRoundTripOfYear(t *testing.T) {
	in := anyYear(rand.New(rand.NewPCG(6, 6)), 24*60, 0)
	in.Stores = []reservoir.Reservoir{{Capacity: 4e5, FillMax: 100, FillGain: 0.9, DrawMax: 100, DrawGain: 1.25}}
	out := run(in)
	near(t, "round trip", float64(out.Delivered/out.Taken), 0.9/1.25)
}
