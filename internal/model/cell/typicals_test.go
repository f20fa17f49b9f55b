package cell

import (
	"math"
	"testing"

	"duskweight/internal/model/unit"
)

// Kinds of cells by the table of typical values that the project began with: V, usable share, round trip, Peukert's exponent,
// filling and drawing in 1/h, °C of filling, leak a month, cycles at a depth, slope, years.
func TestTypicalKinds(t *testing.T) {
	want := map[Chemistry][]float64{
		FloodedLead: {2, 0.5, 0.78, 1.20, 0.13, 0.2, -20, 50, 0.05, 750, 0.5, 2.0, 6},
		SealedLead:  {2, 0.5, 0.83, 1.12, 0.2, 0.3, -20, 50, 0.02, 500, 0.5, 1.8, 7},
		LFP:         {3.2, 0.8, 0.93, 1.03, 0.5, 1, 0, 45, 0.025, 4000, 0.8, 1.2, 12},
		NMC:         {3.65, 0.8, 0.94, 1.03, 0.5, 1, 0, 45, 0.02, 1500, 0.8, 1.5, 9},
		NickelIron:  {1.2, 0.8, 0.60, 1.15, 0.2, 0.25, 0, 45, 0.20, 8000, 0.8, 1, 25},
		SodiumIon:   {3.0, 0.9, 0.90, 1.03, 0.5, 1, -20, 45, 0.03, 2500, 0.8, 1.3, 10},
	}
	for _, k := range kinds {
		got := []float64{k.CellVoltage.Value, k.Depth.Value, k.RoundTrip.Value, k.Peukert.Value, k.ChargeRate.Value, k.DrawRate.Value, k.ChargeMin.Value, k.ChargeMax.Value, k.Leak.Value, k.CycleLife.Value, k.CycleDepth.Value, k.CycleSlope.Value, k.Calendar.Value}
		for i, w := range want[k.Key] {
			if math.Abs(got[i]-w) > 1e-12 {
				t.Errorf("%s, number %d: %g, want %g", k.Name, i+1, got[i], w)
			}
		}
		if k.Lead != (k.Key == FloodedLead || k.Key == SealedLead) || k.Ion != (k.Key == LFP || k.Key == NMC || k.Key == SodiumIon) {
			t.Errorf("%s: lead %v, ion %v", k.Name, k.Lead, k.Ion)
		}
	}
	// Gas in mA for each Ah (IEC 62485-2, table 1): vented lead 20 and 5, valve-regulated 8 and 1, vented nickel 50 and 5.
	for key, gas := range map[Chemistry][2]float64{FloodedLead: {20, 5}, SealedLead: {8, 1}, LFP: {}, NMC: {}, NickelIron: {50, 5}, SodiumIon: {}} {
		for _, k := range kinds {
			if k.Key == key && (k.Gas.Boost != gas[0] || k.Gas.Float != gas[1]) {
				t.Errorf("%s: gas %g and %g, want %v", k.Name, k.Gas.Boost, k.Gas.Float, gas)
			}
		}
	}
}

// Cables by IEC 60364-5-52, table of two loaded wires in a house: each section carries its own and no more, the next larger is
// taken for more; what the table does not have is bounded by its ends.
func TestSectionsCarry(t *testing.T) {
	amps := map[float64]float64{1.5: 17.5, 2.5: 24, 4: 32, 6: 41, 10: 57, 16: 76, 25: 96, 35: 119}
	order := []float64{1.5, 2.5, 4, 6, 10, 16, 25, 35}
	for i, mm := range order {
		if got, ok := Ampacity(unit.Area(mm * 1e-6)); !ok || float64(got) != amps[mm] {
			t.Errorf("%g mm² carries %g A, want %g", mm, got, amps[mm])
		}
		if got, ok := AreaFor(unit.Current(amps[mm])); !ok || math.Abs(float64(got)*1e6-mm) > 1e-9 {
			t.Errorf("%g A want %g mm², not %g", amps[mm], mm, float64(got)*1e6)
		}
		got, ok := AreaFor(unit.Current(amps[mm] + 0.1))
		if i+1 < len(order) && (!ok || math.Abs(float64(got)*1e6-order[i+1]) > 1e-9) || i+1 == len(order) && (ok || got != 0) {
			t.Errorf("a little over %g A: %g mm², %v", amps[mm], float64(got)*1e6, ok)
		}
	}
	for mm, want := range map[float64][2]float64{1.4: {0, 17.5}, 1.49: {0, 17.5}, 1.5: {17.5, 17.5}, 35: {119, 119}, 36: {119, 119}, 50: {119, math.Inf(1)}} {
		if least, most := AmpacityEnds(unit.Area(mm * 1e-6)); float64(least) != want[0] || float64(most) != want[1] {
			t.Errorf("%g mm²: %g to %g A, want %v", mm, least, most, want)
		}
	}
	// 5 m of 4 mm² with 10 A at 20 °C, there and back: 2·5·10·0.017241/4 = 0.4310 V; at 40 °C 7.86 % more.
	for temp, want := range map[unit.Celsius]float64{20: 0.431025, 40: 0.464904} {
		if got := Drop(5, 10, 4e-6, temp); math.Abs(float64(got)-want) > 1e-6 {
			t.Errorf("a drop of %g V at %g °C, want %g", got, temp, want)
		}
	}
	if a, ok := NextFuse(600.1); ok || a != 0 {
		t.Errorf("a fuse of %g A", a)
	}
}

// Ageing on the shelf, by the laws that the kinds name: lead–acid lives half as long for every 8 K or 10 K more and never twice as
// long as at 25 °C less its least; a life with an activation follows Arrhenius. At 25 °C all are what the kind says.
func TestShelfRate(t *testing.T) {
	for _, k := range kinds {
		if got := k.Ages.rate(25, 0.9) / k.Ages.Charge.of(0.9); math.Abs(got-1) > 1e-12 {
			t.Errorf("%s: %g times at 25 °C", k.Name, got)
		}
		if k.Ages.Halves.Value > 0 {
			if got := k.Ages.rate(25+k.Ages.Halves.Value, 0.9) / k.Ages.rate(25, 0.9); math.Abs(got-2) > 1e-12 {
				t.Errorf("%s: %g times %g K warmer", k.Name, got, k.Ages.Halves.Value)
			}
		} else if k.Ages.Activation > 0 {
			if got, want := k.Ages.rate(45, 0.9)/k.Ages.rate(25, 0.9), math.Exp(k.Ages.Activation*20/(298.15*318.15)); math.Abs(got/want-1) > 1e-12 {
				t.Errorf("%s: %g times at 45 °C, want %g", k.Name, got, want)
			}
		}
		if got := k.Ages.rate(-40, 0.9) / k.Ages.Charge.of(0.9); got < k.Ages.Least-1e-12 || got > 1 {
			t.Errorf("%s: %g times at −40 °C, its least is %g", k.Name, got, k.Ages.Least)
		}
	}
}
