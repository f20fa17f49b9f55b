package cell

import (
	"fmt"
	"math"
	"math/rand"
	"reflect"
	"slices"
	"strings"
	"testing"

	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
)

func near(t *testing.T, what string, got, want, tol float64, from source.Ref) {
	t.Helper()
	if math.IsNaN(got) || math.Abs(got-want) > tol {
		t.Errorf("%s = %.10g, want %.10g within %g (%s)", what, got, want, tol, from)
	}
}

var hand = source.Derivation.At("by hand, in the comment")

// typicalBank is four 12 V blocks of 100 Ah: two in a row, two strings; 24 V, 200 Ah, 4800 Wh.
func typicalBank(kind string) Bank {
	return Bank{
		Name: "Bank", Kind: Chemistry(kind),
		Capacity: unit.Of(100 * unit.AmpereHour), Voltage: unit.Of(unit.Voltage(12)),
		Series: unit.Of(unit.Count(2)), Parallel: unit.Of(unit.Count(2)), Standing: unit.Of(unit.Power(0)),
	}
}

// The example of the standard, figure 6 and its table: the history -2 1 -3 5 -1 3 -4 4 -2.
func ExampleRainflow() {
	counts := map[float64]float64{}
	for _, c := range Rainflow([]float64{-2, 1, -3, 5, -1, 3, -4, 4, -2}) {
		fmt.Printf("range %g mean %g count %g\n", c.Range, c.Mean, c.Count)
		counts[c.Range] += c.Count
	}
	for r := 1.0; r < 11; r++ {
		fmt.Print(counts[r], " ")
	}
	// Output:
	// range 3 mean -0.5 count 0.5
	// range 4 mean -1 count 0.5
	// range 4 mean 1 count 1
	// range 8 mean 1 count 0.5
	// range 9 mean 0.5 count 0.5
	// range 8 mean 0 count 0.5
	// range 6 mean 1 count 0.5
	// 0 0 0.5 1.5 0 0.5 0 1 0.5 0
}

func TestRainflow(t *testing.T) {
	// By hand: 0 2 1 3 0 has the small cycle 2-1 inside, and 0-3-0 as two halves.
	got := Rainflow([]float64{0, 2, 1, 3, 0})
	if want := []Cycle{{1, 1.5, 1}, {3, 1.5, 0.5}, {3, 1.5, 0.5}}; !reflect.DeepEqual(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
	// The standard's history taken as repeating: between its highest peak 5 and the next it runs -1 3 -4 4 -2 1 -3
	// (the join -2 -2 is one point). By hand: 4 (-1 3), then 3 (-2 1), 7 (4 -3), and 9 (5 -4) as two halves.
	sum := map[float64]float64{}
	for _, c := range RainflowRepeating([]float64{-2, 1, -3, 5, -1, 3, -4, 4, -2}) {
		sum[c.Range] += c.Count
	}
	if want := map[float64]float64{4: 1, 3: 1, 7: 1, 9: 1}; !reflect.DeepEqual(sum, want) {
		t.Errorf("repeating: %v, want %v", sum, want)
	}
	for _, flat := range [][]float64{nil, {1}, {1, 1, 1}} {
		if c := RainflowRepeating(flat); len(c) != 0 {
			t.Errorf("%v has cycles: %v", flat, c)
		}
	}
}

// A law: the ranges of all cycles, each there and back, are the whole way that a closed history goes; it does not
// matter where it begins, and flat or in-between points change nothing.
func TestRainflowKeepsTheWay(t *testing.T) {
	r := rand.New(rand.NewSource(3))
	for range 300 {
		h := make([]float64, 2+r.Intn(60))
		for i := range h {
			h[i] = float64(r.Intn(20))
		}
		way := 0.0
		for i := range h {
			way += math.Abs(h[i] - h[(i+1)%len(h)])
		}
		counted := func(h []float64) (sum float64, all []float64) {
			for _, c := range RainflowRepeating(h) {
				sum += 2 * c.Range * c.Count
				all = append(all, c.Range)
			}
			slices.Sort(all)
			return sum, all
		}
		sum, _ := counted(h)
		near(t, "way", sum, way, 1e-9, hand)
		turn := r.Intn(len(h))
		again, _ := counted(append(slices.Clone(h[turn:]), h[:turn]...))
		near(t, "way of the turned history", again, way, 1e-9, hand)
	}
}

// The cycles of the kinds, as they stand in the list of typical values: so many at that depth. Where more or less is used
// than that, by hand N = N_ref·(D/D_ref)^−k: sodium-ion, 2500 at 0.8, k 1.3, used to 0.9, has 2500·1.125^−1.3 = 2145.
func TestCyclesOfKinds(t *testing.T) {
	for _, want := range []struct {
		key      string
		n, depth float64
		used, at float64
	}{
		{"flooded_lead", 750, 0.5, 0.25, 3000}, {"sealed_lead", 500, 0.5, 0.25, 1741.10}, {"lfp", 4000, 0.8, 0.4, 9189.59},
		{"nmc", 1500, 0.8, 0.4, 4242.64}, {"nickel_iron", 8000, 0.8, 0.4, 16000}, {"sodium_ion", 2500, 0.8, 0.9, 2145.07},
	} {
		r := typicalBank(want.key).Resolve()
		near(t, want.key, r.CyclesTo(want.depth), want.n, 1e-9, source.TypicalCells.Whole())
		near(t, want.key, r.CyclesTo(want.used), want.at, 0.01, hand)
	}
}

// runTime is how long current i lasts: the share of capacity c that can be drawn at it, over the current.
func runTime(c unit.Charge, h unit.Duration, k float64, i unit.Current) unit.Duration {
	return unit.Duration(float64(c) * float64(RatedShare(c, h, k, i)) / float64(i))
}

func TestPeukert(t *testing.T) {
	// Rated form: 100 Ah at 20 h, k 1.2, drawn at 10 A lasts 20·(5/10)^1.2 = 8.7055 h and gives 87.055 Ah.
	c := 100 * unit.AmpereHour
	near(t, "time, h", float64(runTime(c, 20*unit.Hour, 1.2, 10)/unit.Hour), 8.7055, 5e-5, source.Peukert.Whole())
	near(t, "share", float64(RatedShare(c, 20*unit.Hour, 1.2, 10)), 0.870551, 5e-7, source.Peukert.Whole())
	// At the label's own current it is the label's own time, and slower never gives more than the label.
	near(t, "label", float64(runTime(c, 20*unit.Hour, 1.2, 5)/unit.Hour), 20, 1e-12, hand)
	near(t, "label", float64(RatedShare(c, 20*unit.Hour, 1.2, 5)), 1, 1e-15, hand)
	near(t, "slow", float64(RatedShare(c, 20*unit.Hour, 1.2, 0.01)), 1, 0, hand)
	near(t, "nothing", float64(RatedShare(c, 20*unit.Hour, 1.2, 0)), 1, 0, hand)
	// The one-ampere form t = Cp/I^k of the tutorials is the rated form with H = Cp/1 A: 100 Ah, 1.2, 5 A give 14.496 h;
	// 250 Ah, 1.3, 20 A give 5.088631644 h.
	near(t, "one ampere", float64(runTime(c, 100*unit.Hour, 1.2, 5)/unit.Hour), 14.496, 0.01, source.FromMemory.At("tutorial figures, one-ampere form"))
	near(t, "one ampere", float64(runTime(250*unit.AmpereHour, 250*unit.Hour, 1.3, 20)/unit.Hour), 5.088631644, 1e-6, source.FromMemory.At("tutorial figures, one-ampere form"))
	// Two tests, 20 A for 3 h and 5 A for 20 h, have the exponent ln(20/3)/ln(20/5) = 1.368482797083103: with it, a label
	// of 100 Ah at 20 h gives 20 A for 3 h.
	near(t, "exponent", float64(runTime(c, 20*unit.Hour, 1.368482797083103, 20)/unit.Hour), 3, 1e-6, source.FromMemory.At("a battery monitor's handbook, two-test exponent"))
}

func TestCold(t *testing.T) {
	lead, lfp := leadCold, ionCold
	for i, temp := range []float64{-10, 0, 10, 20} {
		near(t, "lead", lead.At(unit.Celsius(temp)), []float64{0.563, 0.711, 0.8403, 0.951}[i], 1e-4, lead.Source)
		near(t, "iron phosphate", lfp.At(unit.Celsius(temp)), []float64{0.7048, 0.848, 0.946, 0.9988}[i], 2e-4, lfp.Source)
	}
	// Factors by which the standard makes cells larger in the cold; the fit agrees within 1.5 % up to 25 °C.
	temps := []float64{-3.9, -1.1, 1.7, 4.4, 7.2, 10, 12.8, 15.6, 18.3, 21.1, 25}
	for i, f := range []float64{1.52, 1.43, 1.35, 1.30, 1.25, 1.19, 1.156, 1.11, 1.08, 1.04, 1.00} {
		near(t, fmt.Sprintf("factor at %g °C", temps[i]), 1/lead.At(unit.Celsius(temps[i])), f, 0.02, source.IEEE485.At("table 1, from memory"))
	}
	for _, k := range kinds {
		last := 0.0
		for c := -60.0; c <= 60; c += 0.5 {
			f := k.Cold.At(unit.Celsius(c))
			if f < last || f < 0 || f > 1 {
				t.Errorf("%s: %g at %g °C after %g", k.Name, f, c, last)
			}
			last = f
		}
		if last != 1 {
			t.Errorf("%s: warm cells have %g", k.Name, last)
		}
	}
}

func TestRunningMean(t *testing.T) {
	air := make([]float64, 48)
	air[0], air[30] = 24, 48
	m := RunningMean(air)
	near(t, "with the hour itself", m[0], 1+2, 1e-12, hand) // hours 25 … 47 of the round before, and 0
	near(t, "23 hours later", m[23], 1, 1e-12, hand)
	near(t, "24 hours later", m[24], 0, 1e-12, hand)
	near(t, "wraps", m[5], 1+2, 1e-12, hand) // 30 is 23 hours before 5 of the next round
	near(t, "wraps no more", m[6], 1, 1e-12, hand)
}

// 24 V, 200 Ah, lead: X = 4800 Wh, half of it used; η = √0.78 each way; charge 0.13 of 4800 W; the mean current of 20 A is
// twice the 20-hour current: f_P = (200/(20·20))^0.2 = 0.870551.
func TestReduce(t *testing.T) {
	r := typicalBank("flooded_lead").Resolve()
	air := make([]float64, 8760)
	for h := range air {
		switch {
		case h < 1000:
			air[h] = 10
		case h < 2000:
			air[h] = -25
		default:
			air[h] = 25
		}
	}
	v := r.Reduce(TemperatureIn(air), 20)
	near(t, "capacity, Wh", v.Capacity.WattHours(), 4800*0.5*math.Pow(0.5, 0.2), 1e-9, hand)
	near(t, "fill", float64(v.FillMax), 624, 1e-9, hand)
	near(t, "draw", float64(v.DrawMax), 960, 1e-9, hand)
	near(t, "gain", v.FillGain, math.Sqrt(0.78), 1e-12, hand)
	near(t, "gain", v.DrawGain, 1/math.Sqrt(0.78), 1e-12, hand)
	near(t, "round trip", v.RoundTrip(100), 0.78, 1e-12, hand)
	near(t, "leak of a month", 1-math.Exp(-v.Leak*365.25/12*86400), 0.05, 1e-12, hand)
	// From 80 % charge on, of which 50 … 100 % are used: from 60 % of the usable part on.
	near(t, "acceptance", v.AcceptFrom, 0.6, 1e-12, hand)
	near(t, "acceptance", v.AcceptEnd, 0.05, 1e-12, hand)
	near(t, "locked at 10 °C", v.Locked[500], 1-0.8403, 1e-4, leadCold.Source)
	near(t, "locked at 25 °C", v.Locked[5000], 0, 1e-3, leadCold.Source)
	if v.NoFill[500] || !v.NoFill[1500] || v.NoFill[5000] {
		t.Error("charging stops under −20 °C only")
	}
	if near := v.Locked[1023]; near <= v.Locked[1000] {
		t.Error("cells are slow to cool")
	}
	b := typicalBank("lfp")
	b.Depth, b.ChargeEff, b.DrawEff = unit.Of(unit.Ratio(0.02)), unit.Of(unit.Ratio(0.99)), unit.Of(unit.Ratio(0.9))
	v = b.Resolve().Reduce(Temperature{}, 0)
	near(t, "both efficiencies known", v.RoundTrip(10), 0.99*0.9, 1e-12, hand)
	// 98 % charge at the bottom: 1 − 0.95·0.03/0.05 = 0.43 of P_f, and 0.05 of P_f at the top.
	near(t, "begins on the falling line", float64(v.FillMax), 0.43*2400, 1e-6, hand)
	near(t, "ends at a twentieth", float64(v.FillMax)*v.AcceptEnd, 0.05*2400, 1e-9, hand)
}

func TestNotKnown(t *testing.T) {
	b := typicalBank("lfp")
	b.Capacity = unit.Known[unit.Charge]{}
	r := b.Resolve()
	if r.WhyNot == "" || r.Reduce(Temperature{}, 0) != nil || r.Age(make([]float64, 8760), make([]float64, 8760), 0, Temperature{}).Known {
		t.Error("a bank without a capacity is computed")
	}
	if r := (Bank{}).Resolve(); r.WhyNot == "" || len(r.Cautions(Life{})) != 0 || r.Ventilation().Boost != 0 {
		t.Error("a bank of no kind is computed")
	}
	if r := typicalBank("nmc").Resolve(); len(r.Typical) != 13 {
		t.Errorf("%d typical values: %v", len(r.Typical), r.Typical)
	}
}

// One whole cycle of half the label every day: 365 cycles of depth 0.5 at 750 cycles is 0.48667 a year; the shelf takes
// 1/6 at 25 °C, twice as much at 35 °C. Lead–acid.
func TestAge(t *testing.T) {
	r := typicalBank("flooded_lead").Resolve()
	full := r.Reduce(Temperature{}, 0).Capacity
	state := make([]float64, 8760)
	air := make([]float64, 8760)
	for h := range state {
		air[h] = 25
		if h%24 >= 6 && h%24 < 18 {
			state[h] = float64(full)
		}
	}
	still := make([]float64, 8760) // nothing is drawn, so no crystals count
	l := r.Age(state, still, full, TemperatureIn(air))
	near(t, "wear", l.Wear, 365.0/750, 1e-12, hand)
	near(t, "full cycles", l.FullTurn, 365*0.5, 1e-9, hand)
	near(t, "shelf", l.Shelf, 1.0/6, 1e-12, hand)
	near(t, "years", float64(l.Years.Val), 1/(365.0/750+1.0/6), 1e-12, hand)
	near(t, "deepest", float64(l.Deepest), 0.5, 1e-12, hand)
	near(t, "never long under full, h", float64(l.NotFull/unit.Hour), 12, 0, hand)
	for h := range air {
		air[h] = 35
	}
	near(t, "shelf in the heat", r.Age(state, still, full, TemperatureIn(air)).Shelf, 2.0/6, 1e-12, hand)
	// Depth of 0.25 wears a quarter as much: k = 2.
	near(t, "cycles to 0.25", r.CyclesTo(0.25), 3000, 1e-9, hand)
	near(t, "cycles to 0.5", r.CyclesTo(0.5), 750, 1e-9, hand)
}

func TestSulphationAndFrost(t *testing.T) {
	r := typicalBank("sealed_lead").Resolve()
	full := r.Reduce(Temperature{}, 0).Capacity
	state := make([]float64, 8760)
	air := make([]float64, 8760)
	for h := range state {
		state[h] = float64(full)
		// Low and cold over the end of the year, for 16 days.
		if h < 200 || h >= 8760-184 {
			state[h], air[h] = 0, -30
		}
	}
	l := r.Age(state, state, full, TemperatureIn(air))
	if !l.Sulphates || l.NotFull != 384*unit.Hour {
		t.Errorf("not full for %v, flagged %v", l.NotFull/unit.Hour, l.Sulphates)
	}
	// Half charged acid freezes at −24 °C; the cells follow the air over 24 hours.
	if l.FreezeHours == 0 || l.FreezeHours > 384 {
		t.Errorf("freezes in %d hours", l.FreezeHours)
	}
	said := strings.ReplaceAll(fmt.Sprint(r.Cautions(l)), unit.Space, " ")
	for _, word := range []string{"freezes", "16 days", "Acid", "hydrogen"} {
		if !strings.Contains(said, word) {
			t.Errorf("no word of %q in %s", word, said)
		}
	}
	if l := typicalBank("lfp").Resolve().Age(state, state, full, TemperatureIn(air)); l.Sulphates || l.Sulphation != 1 || l.FreezeHours != 0 {
		t.Error("lithium does not freeze and does not sulphate")
	}
	for i, c := range []float64{0, 0.25, 0.5, 0.75, 1} {
		near(t, "freezing", float64(FreezesAt(c)), freezing[i], 0, source.TypicalFreeze.Whole())
	}
	near(t, "freezing between", float64(FreezesAt(0.375)), -20, 1e-12, hand)
}

// 380 W for 4 h over a factor 0.648 at 12 V: 2345.68 Wh, 195.47 Ah. 2000 Wh a day, 24 V, 3 days, half depth, end of life
// 0.8, cold 1.11, margin 1.1: 250, 500, 312.5, taken 500, 555, 610.5 Ah.
func TestSizing(t *testing.T) {
	night := Sizing{DailyLoad: 1520 * unit.WattHour, Voltage: 12, Days: 1, Depth: 0.648, EndOfLife: 1, Cold: 1, Margin: 1}.Size()
	near(t, "night, Ah", night.ByDepth.AmpereHours(), 195.47, 0.2, source.FromMemory.At("a worked example, factor 0.8·0.9·0.9"))
	near(t, "night, Wh", night.ByDepth.AmpereHours()*12, 2345.68, 2, source.FromMemory.At("a worked example, factor 0.8·0.9·0.9"))
	s := Sizing{DailyLoad: 2000 * unit.WattHour, Voltage: 24, Days: 3, Depth: 0.5, EndOfLife: 0.8, Cold: 1.11, Margin: 1.1}.Size()
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"unadjusted", s.Unadjusted.AmpereHours(), 250}, {"by depth", s.ByDepth.AmpereHours(), 500}, {"by end of life", s.ByEndOfLife.AmpereHours(), 312.5},
		{"taken", s.Taken.AmpereHours(), 500}, {"after cold", s.AfterCold.AmpereHours(), 555}, {"after margin", s.AfterMargin.AmpereHours(), 610.5},
	} {
		near(t, c.what, c.got, c.want, 1e-9, source.IEEE1013.At("section 6.3, procedure from memory"))
	}
	b := typicalBank("flooded_lead")
	if _, ok := b.Resolve().TradeSizing(1e6, Temperature{}); ok {
		t.Error("sized without days of autonomy")
	}
	b.Autonomy = unit.Of(unit.Ratio(3))
	got, ok := b.Resolve().TradeSizing(2000*unit.WattHour, Temperature{})
	near(t, "trade sizing", got.AfterMargin.AmpereHours(), 550, 1e-9, hand)
	if !ok || len(got.Differ(b.Resolve(), false, 0)) < 4 {
		t.Error("no words on the difference")
	}
}

// 24 cells of 200 Ah.
func TestVentilation(t *testing.T) {
	for _, c := range []struct {
		gas              Gas
		boost, float, cm float64
	}{
		{kinds[0].Gas, 4.8, 1.2, 134.4}, {kinds[1].Gas, 1.92, 0.24, 53.76},
	} {
		v := Air(24, c.gas, 200*unit.AmpereHour)
		near(t, "boost, m³/h", v.Boost, c.boost, 1e-12, c.gas.Source)
		near(t, "float, m³/h", v.Float, c.float, 1e-12, c.gas.Source)
		near(t, "opening, cm²", float64(v.Opening)*1e4, c.cm, 1e-9, c.gas.Source)
	}
	// Six cells of 100 Ah of vented lead: 0.05·6·20·100/1000 = 0.60 m³/h, and 28·0.60 = 16.8 cm².
	six := Air(6, kinds[0].Gas, 100*unit.AmpereHour)
	near(t, "six cells, m³/h", six.Boost, 0.60, 1e-12, hand)
	near(t, "six cells, cm²", float64(six.Opening)*1e4, 16.8, 1e-9, hand)
	// The bank: 24 V is 12 cells of 2 V, strings of 100 Ah add up to 200 Ah.
	near(t, "bank", typicalBank("flooded_lead").Resolve().Ventilation().Boost, 2.4, 1e-12, hand)
	near(t, "lithium", typicalBank("lfp").Resolve().Ventilation().Boost, 0, 0, hand)
}

func TestConductors(t *testing.T) {
	// No section of the table of greatest resistances, Ω/km, is under what the metal itself would have: sections are
	// nominal, and the makers' copper is up to 2 % better.
	areas := []float64{1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120, 150, 185, 240, 300}
	for i, ohm := range []float64{12.1, 7.41, 4.61, 3.08, 1.83, 1.15, 0.727, 0.524, 0.387, 0.268, 0.193, 0.153, 0.124, 0.0991, 0.0754, 0.0601} {
		if ohm/1000 < resistivity(20)/(areas[i]*1e-6)*0.98 {
			t.Errorf("%g mm² conducts better than copper (%s)", areas[i], source.IEC60228.At("class 2, plain copper"))
		}
	}
	near(t, "4 mm² at 40 °C", 4.61*resistivity(40)/resistivity(20), 4.9723, 1e-3, source.CopperIEC.Whole())
	near(t, "4 mm² at 70 °C", 4.61*resistivity(70)/resistivity(20), 5.5159, 1e-3, source.CopperIEC.Whole())
	gauges := []float64{53.475, 33.631, 21.151, 13.302, 8.366, 5.261, 3.309, 2.081, 1.309, 0.823} // 0, 2, 4 … 18
	for i, ohm := range []float64{0.3224, 0.5127, 0.8152, 1.2961, 2.0609, 3.277, 5.2107, 8.2853, 13.1742, 20.9478} {
		near(t, "gauge, Ω/km", resistivity(20)/(gauges[i]*1e-6)*1000, ohm, 5e-3*ohm, source.ASTMB258.Whole())
	}
	// 3 m, 3 A, 1.5 mm²: 2·3·3·0.017241/1.5 = 0.206892 V at 20 °C.
	near(t, "drop", float64(Drop(3, 3, 1.5e-6, 20)), 0.206892, 1e-9, hand)
}

func TestFuses(t *testing.T) {
	near(t, "panel", float64(PanelFuse(9.5)), 14.84, 0.01, source.NEC690.At("690.8, 690.9"))
	f, _ := NextFuse(PanelFuse(9.5))
	near(t, "next", float64(f), 15, 0, source.NEC690.At("240.6"))
	b := typicalBank("lfp")
	b.CableLength, b.CableArea, b.Fuse = unit.Of(unit.Length(2)), unit.Of(unit.Area(6e-6)), unit.Of(unit.Current(60))
	l := b.Resolve().Line(40)
	// 40 A wants a fuse of 50 A; 6 mm² carries 41 A; 10 mm² carries 57 A and loses 2·2·40·0.017241·1.0786/10 = 0.2975 V of 24.
	near(t, "fuse", float64(l.FuseTake.Val), 50, 0, hand)
	near(t, "section", float64(l.AreaTake.Val)*1e6, 10, 1e-9, hand)
	near(t, "ampacity", float64(l.Ampacity.Val), 41, 0, source.IEC60364.Whole())
	if len(l.Flags) != 1 || !l.Flags[0].Bad || l.Flags[0].Path != "fuse_a" {
		t.Errorf("a fuse above its cable: %v", l.Flags)
	}
	// A long cable is chosen by its drop: 20 m, 10 A: 2·20·10·0.018596/A ≤ 0.72 V wants 10.3 mm²: 16 mm².
	b.CableLength = unit.Of(unit.Length(20))
	near(t, "section by drop", float64(b.Resolve().Line(10).AreaTake.Val)*1e6, 16, 1e-9, hand)
	if l := typicalBank("lfp").Resolve().Line(10); len(l.Missing) != 3 || l.Ampacity.Is || l.Drop.Is {
		t.Errorf("not known is not named: %+v", l)
	}
}

// The kinds stay within what handbooks give: figures that disagree among themselves are taken as ranges.
func TestKinds(t *testing.T) {
	if len(kinds) != 6 {
		t.Fatal("six kinds")
	}
	for _, k := range kinds {
		for name, v := range map[string]Typical{"voltage": k.CellVoltage, "depth": k.Depth, "round trip": k.RoundTrip, "peukert": k.Peukert, "cycles": k.CycleLife, "calendar": k.Calendar, "accept": k.AcceptFrom} {
			if v.Value <= 0 || v.Source.Source.Title == "" {
				t.Errorf("%s: %s has no value or no source", k.Name, name)
			}
		}
		lo, hi := 0.0, 45.0
		if k.Lead {
			lo, hi = -20, 50
		}
		if k.Key != "sodium_ion" {
			near(t, k.Name+" coldest charge", k.ChargeMin.Value, lo, 0, bu410)
			near(t, k.Name+" hottest charge", k.ChargeMax.Value, hi, 0, bu410)
		}
	}
	nife, _ := KindOf("nickel_iron")
	if rt, leak, years := nife.RoundTrip.Value, nife.Leak.Value, nife.Calendar.Value; rt > 0.65 || leak < 0.1 || leak > 0.3 || years < 20 || years > 50 || nife.CellVoltage.Value != 1.2 {
		t.Error("nickel–iron is outside the published ranges")
	}
}

// Any bank in range and any state: finite figures, no panic.
func TestAnyBank(t *testing.T) {
	r := rand.New(rand.NewSource(4))
	pick := func(lo, hi float64) float64 { return lo + (hi-lo)*math.Pow(r.Float64(), 3) }
	air, state := make([]float64, 8760), make([]float64, 8760)
	for range 60 {
		b := Bank{Kind: kinds[r.Intn(6)].Key,
			Capacity: unit.Of(unit.Charge(pick(1e-9, 1e9))), Voltage: unit.Of(unit.Voltage(pick(1e-9, 1000))),
			Series: unit.Of(unit.Count(1 + r.Intn(200))), Parallel: unit.Of(unit.Count(1 + r.Intn(100))),
			Depth: unit.Of(unit.Ratio(pick(1e-6, 1))), RoundTrip: unit.Of(unit.Ratio(pick(1e-6, 1))), Peukert: unit.Of(unit.Ratio(pick(1, 2))),
			CycleSlope: unit.Of(unit.Ratio(pick(0, 5))), CycleLife: unit.Of(unit.Ratio(pick(1, 1e7))), Leak: unit.Of(unit.Ratio(pick(0, 0.9))),
			CableLength: unit.Of(unit.Length(pick(1e-6, 200))), CableArea: unit.Of(unit.Area(pick(1e-9, 1e-3))), Fuse: unit.Of(unit.Current(pick(1e-3, 5000))),
			Autonomy: unit.Of(unit.Ratio(pick(1e-3, 30)))}
		d := b.Resolve()
		for h := range air {
			air[h] = -60 + 120*r.Float64()
		}
		v := d.Reduce(TemperatureIn(air), unit.Current(pick(0, 1e6)))
		for h := range state {
			state[h] = r.Float64() * float64(v.Capacity)
		}
		l := d.Age(state, state, v.Capacity, TemperatureIn(air))
		s, _ := d.TradeSizing(unit.Energy(pick(0, 1e10)), TemperatureIn(air))
		line := d.Line(unit.Current(pick(0, 1e6)))
		for _, x := range []float64{float64(v.Capacity), float64(v.FillMax), v.FillGain, v.DrawGain, v.Leak, v.AcceptFrom, v.AcceptEnd, v.RoundTrip(1), l.Wear, l.Shelf, float64(l.Years.Val), l.FullTurn, float64(s.AfterMargin), float64(line.Drop.Val), d.Ventilation().Boost} {
			if math.IsNaN(x) || math.IsInf(x, 0) || x < 0 {
				t.Fatalf("%v in %+v", x, b)
			}
		}
		for h := range air {
			if q := v.Locked[h]; q < 0 || q > 1 {
				t.Fatalf("locked %v", q)
			}
		}
		for _, f := range append(d.Cautions(l), line.Flags...) {
			if strings.Contains(f.Say.String(), "NaN") || strings.Contains(f.Say.String(), "Inf") || strings.Contains(f.Say.String(), "%!") {
				t.Fatal(f.Say)
			}
		}
	}
}

func TestCautionWords(t *testing.T) {
	b := typicalBank("lfp")
	b.Series, b.Parallel, b.Board, b.Origin, b.Indoors = unit.Of(unit.Count(6)), unit.Of(unit.Count(6)), "no", "mixed", "bedroom"
	bad := map[string]bool{}
	for _, f := range b.Resolve().Cautions(Life{}) {
		if f.Bad {
			bad[f.Path] = true
		}
	}
	if want := map[string]bool{"series": true, "management_board": true, "cells_are": true, "place": true}; !reflect.DeepEqual(bad, want) {
		t.Errorf("bad: %v, want %v", bad, want)
	}
	b = typicalBank("flooded_lead")
	b.Parallel = unit.Of(unit.Count(4))
	if said := fmt.Sprint(b.Resolve().Cautions(Life{})); !strings.Contains(said, "4 strings") {
		t.Errorf("four strings: %s", said)
	}
}
