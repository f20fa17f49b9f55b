package cell

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"duskweight/internal/model/unit"
)

// What a bank does not know is the typical value of its kind in SI: hours are 3600 s, years 365 days of 86 400 s.
func TestTypicalValuesInSI(t *testing.T) {
	for _, k := range kinds {
		r := typicalBank(string(k.Key)).Resolve()
		for _, c := range []struct {
			what      string
			got, want float64
		}{
			{"hours of the label", float64(r.RatedTime), k.RatedHours.Value * 3600}, {"depth", r.Depth, k.Depth.Value}, {"exponent", r.Peukert, k.Peukert.Value},
			{"filling, W", float64(r.ChargeMost), 4800 * k.ChargeRate.Value}, {"drawing, W", float64(r.DrawMost), 4800 * k.DrawRate.Value},
			{"coldest", float64(r.ChargeMin), k.ChargeMin.Value}, {"hottest", float64(r.ChargeMax), k.ChargeMax.Value},
			{"round trip", r.ChargeEff * r.DrawEff, k.RoundTrip.Value}, {"life", float64(r.Calendar), k.Calendar.Value * 365 * 86400},
			{"left after a month of standing", math.Exp(-r.Leak * 365.25 / 12 * 86400), 1 - k.Leak.Value},
			{"cycles", r.CycleLife, k.CycleLife.Value}, {"depth of cycles", r.CycleDepth, k.CycleDepth.Value}, {"slope", r.CycleSlope, k.CycleSlope.Value},
		} {
			if math.Abs(c.got-c.want) > 1e-9*max(1, math.Abs(c.want)) {
				t.Errorf("%s, %s: %g, want %g", k.Name, c.what, c.got, c.want)
			}
		}
	}
}

// Both efficiencies are taken where both are known; one alone is none, and the round trip is halved between them.
func TestOneEfficiencyIsNone(t *testing.T) {
	b := typicalBank("lfp")
	for _, c := range []struct{ in, out, wantIn, wantOut float64 }{{0.9, 0.8, 0.9, 0.8}, {0.9, 0, math.Sqrt(0.93), math.Sqrt(0.93)}, {0, 0.8, math.Sqrt(0.93), math.Sqrt(0.93)}} {
		b.ChargeEff, b.DrawEff = unit.Of(unit.Ratio(c.in)), unit.Of(unit.Ratio(c.out))
		b.ChargeEff.Is, b.DrawEff.Is = c.in > 0, c.out > 0
		near(t, "in", b.Resolve().ChargeEff, c.wantIn, 1e-12, hand)
		near(t, "out", b.Resolve().DrawEff, c.wantOut, 1e-12, hand)
	}
}

// Which number of the label is missing is said by its name.
func TestLabelThatIsMissing(t *testing.T) {
	for _, c := range []struct {
		charge, voltage bool
		want            string
		missing         []string
	}{
		{true, true, "", nil},
		{false, true, "The capacity on the label is not known.", []string{"block_capacity_c"}},
		{true, false, "The voltage on the label is not known.", []string{"block_voltage_v"}},
		{false, false, "The capacity and the voltage on the label are not known.", []string{"block_capacity_c", "block_voltage_v"}},
	} {
		b := typicalBank("lfp")
		b.Capacity.Is, b.Voltage.Is = c.charge, c.voltage
		r := b.Resolve()
		var paths []string
		for _, m := range r.Missing {
			paths = append(paths, m.Path)
		}
		if r.WhyNot != c.want || !slices.Equal(paths, c.missing) {
			t.Errorf("charge %v, voltage %v: %q, %v", c.charge, c.voltage, r.WhyNot, paths)
		}
	}
}

// 24 V: hours of 12, 0.5 and 35.5 W are 48 W in three hours, 16 W or two thirds of an ampere; hours without a draw do not count.
func TestMeanCurrentOfDrawnHours(t *testing.T) {
	r := typicalBank("lfp").Resolve()
	near(t, "mean", float64(r.MeanCurrent([]float64{0, 12, 0, 0.5, 35.5, 0})), 2.0/3, 1e-12, hand)
	near(t, "nothing drawn", float64(r.MeanCurrent([]float64{0, 0})), 0, 0, hand)
	r.Voltage = 0
	near(t, "no voltage", float64(r.MeanCurrent([]float64{5})), 0, 0, hand)
}

// Peukert's law has no unit of its own: the share depends on capacity over current times hours alone, so that a bank of half a
// coulomb over half a second does as one of 100 Ah over 20 h.
func TestPeukertHasNoUnit(t *testing.T) {
	want := RatedShare(100*unit.AmpereHour, 20*unit.Hour, 1.2, 10)
	near(t, "small capacity", float64(RatedShare(0.5, 0.5, 1.2, 2)), float64(want), 1e-12, hand)
	near(t, "small current", float64(RatedShare(5*unit.AmpereHour, 20*unit.Hour, 1.2, 0.5)), float64(want), 1e-12, hand)
}

// The voltages of a cell at rest, as a share of the nominal one, and full, from memory, as the kinds' comment says: lead 2.034
// and 2.4 V, iron phosphate 3.2 and 3.6, nickel–manganese–cobalt 3.504 and 4.2, nickel–iron 1.2 and 1.65, sodium-ion 2.88 and 3.95.
func TestVoltagesOfACell(t *testing.T) {
	for key, want := range map[Chemistry][2]float64{FloodedLead: {2.034, 2.4}, SealedLead: {2.034, 2.4}, LFP: {3.2, 3.6}, NMC: {3.504, 4.2}, NickelIron: {1.2, 1.65}, SodiumIon: {2.88, 3.95}} {
		k, _ := KindOf(key)
		b := typicalBank(string(key))
		b.Series, b.Voltage = unit.Of[unit.Count](1), unit.Of(unit.Voltage(k.CellVoltage.Value))
		near(t, k.Name+" at rest", float64(b.Resolve().Rest()), want[0], 1e-9, hand)
		near(t, k.Name+" full", float64(b.Resolve().Full()), want[1], 1e-9, hand)
		b.Series = unit.Of[unit.Count](4)
		near(t, k.Name+" full, four in a row", float64(b.Resolve().Full()), 4*want[1], 1e-9, hand)
	}
}

// A source without resistance sags nowhere. One that cannot carry the power stands at half its voltage and gives V/2R: 12 V
// behind 0.1 Ω 60 A at 6 V. A cable of which the length or the section is not known has no resistance.
func TestSagAtItsEnds(t *testing.T) {
	if i, v, ok := Sag(12, 0, 60); !ok || i != 5 || v != 12 {
		t.Errorf("no resistance: %g A at %g V", float64(i), float64(v))
	}
	if i, v, ok := Sag(12, 0.1, 500); ok || math.Abs(float64(i)-60) > 1e-9 || v != 6 {
		t.Errorf("too much: %g A at %g V", float64(i), float64(v))
	}
	b := typicalBank("lfp")
	near(t, "no cable", float64(b.Resolve().CableOhm()), 0, 0, hand)
	b.CableLength = unit.Of[unit.Length](2)
	near(t, "no section", float64(b.Resolve().CableOhm()), 0, 0, hand)
}

// The trade asks for so much a day by depth of a single day: 2000 Wh at 24 V and a fifth of the charge are 416.67 Ah, and the
// largest of the three counts.
func TestSizingByTheDay(t *testing.T) {
	s := Sizing{DailyLoad: 2000 * unit.WattHour, Voltage: 24, Days: 1, Depth: 0.8, DailyDepth: 0.2, EndOfLife: 0.8, Cold: 1, Margin: 1}
	near(t, "by the day", s.Size().ByDailyDepth.AmpereHours(), 2000.0/24/0.2, 1e-9, hand)
	near(t, "taken", s.Size().Taken.AmpereHours(), 2000.0/24/0.2, 1e-9, hand)
	s.DailyDepth = 0
	near(t, "not asked", s.Size().Taken.AmpereHours(), 2000.0/24/0.8, 1e-9, hand)
	b := typicalBank("lfp")
	b.Autonomy, b.Voltage = unit.Of(unit.Ratio(2)), unit.Known[unit.Voltage]{}
	if _, ok := b.Resolve().TradeSizing(1e6, Temperature{}); ok {
		t.Error("sized without a voltage")
	}
}

// The words stand where the year and the trade differ, and nowhere else; the cold is blamed from a day of hours on.
func TestWhereTradeAndYearDiffer(t *testing.T) {
	r := typicalBank("lfp").Resolve() // 200 Ah
	for _, c := range []struct {
		trade  float64 // Ah
		carry  bool
		noFill int
		want   string
	}{
		{400, true, 0, "did not come"}, {400, false, 0, ""}, {100, true, 0, ""}, {100, false, 0, "more panel would."}, {100, false, 23, "more panel would."},
		{100, false, 24, "24 hours it is too cold"}, {100, true, 24, ""}, {211, true, 0, "did not come"}, {210, true, 0, ""}, {210, false, 0, "more panel would."}, {211, false, 0, ""},
	} {
		said := Sizing{AfterMargin: unit.Charge(c.trade) * unit.AmpereHour, Days: 3}.Differ(r, c.carry, c.noFill)
		text := strings.ReplaceAll(fmt.Sprint(said), unit.Space, " ")
		if n := len(said); (n == 5) != (c.want != "") || n != 4 && n != 5 || !strings.Contains(text, c.want) {
			t.Errorf("%g Ah, carries %v, %d h: %s", c.trade, c.carry, c.noFill, text)
		}
		if c.trade == 211 && !strings.Contains(text, "0.95 times") {
			t.Errorf("200 of 211 Ah: %s", text)
		}
	}
	r.Charge = 190 * unit.AmpereHour
	for trade, asLarge := range map[unit.Charge]bool{199.9: true, 200: true, 200.1: false} { // 190 of 200 Ah are 0.95, which is as large
		large := Sizing{AfterMargin: trade * unit.AmpereHour, Days: 3}.Differ(r, true, 0)
		short := Sizing{AfterMargin: trade * unit.AmpereHour, Days: 3}.Differ(r, false, 30)
		if (len(large) == 5) == asLarge || (len(short) == 5) != asLarge {
			t.Errorf("190 of %g Ah: %v, %v", float64(trade), large, short)
		}
	}
	if said := (Sizing{}).Differ(r, true, 0); said != nil {
		t.Errorf("nothing asked for: %v", said)
	}
	r.Charge = 0
	if said := (Sizing{AfterMargin: 1}).Differ(r, true, 0); said != nil {
		t.Errorf("nothing there: %v", said)
	}
}

// The fuse of a circuit without a current is not known, nor that of one beyond the largest rating; half an ampere wants one of 1 A.
func TestFuseOfACircuit(t *testing.T) {
	r := typicalBank("lfp").Resolve()
	for most, want := range map[unit.Current]unit.Known[unit.Current]{0: {}, 0.5: unit.Of[unit.Current](1), 480: unit.Of[unit.Current](600), 481: {}} {
		if got := r.Line(most).FuseTake; got != want {
			t.Errorf("up to %g A: %v, want %v", float64(most), got, want)
		}
	}
	// 50 mm² is not in the table of currents: its fuse cannot be said to be too large, but that its rating is not known.
	b := typicalBank("lfp")
	b.Fuse, b.CableArea = unit.Of[unit.Current](60), unit.Of[unit.Area](50e-6)
	if l := b.Resolve().Line(10); l.Drop.Is || len(l.Flags) != 1 || !strings.Contains(fmt.Sprint(l.Flags), "the table has no current") {
		t.Errorf("a cable without length: %v, %v", l.Drop, l.Flags)
	}
	b.CableLength, b.Voltage = unit.Of[unit.Length](1), unit.Known[unit.Voltage]{}
	if l := b.Resolve().Line(10); l.Drop.Is {
		t.Errorf("a share of no voltage: %v", l.DropShare)
	}
	for key, want := range map[Role]bool{RoleElectronics: false, RoleNight: true, "": true} {
		if (Bank{Role: key}).ForNight() != want {
			t.Errorf("%q for the night: %v", key, !want)
		}
	}
}
