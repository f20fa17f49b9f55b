package cell

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"duskweight/internal/model/unit"
)

// A history of one rise is one half cycle of its height and mean.
func TestRainflowOfOneRise(t *testing.T) {
	if got := Rainflow([]float64{1, 3}); len(got) != 1 || got[0] != (Cycle{2, 2, 0.5}) {
		t.Errorf("%v", got)
	}
}

// The year of the wear is 8,760 hours: half a year of one cycle a day wears and turns as much a year as a whole one.
func TestHalfAYearWearsAlike(t *testing.T) {
	r := typicalBank("flooded_lead").Resolve()
	full := r.Reduce(Temperature{}, 0).Capacity
	of := func(days int) Life {
		state := make([]float64, 24*days)
		for h := range state {
			if h%24 >= 12 {
				state[h] = float64(full)
			}
		}
		return r.Age(state, make([]float64, len(state)), full, Temperature{})
	}
	one, half := of(365), of(73)
	near(t, "full cycles", half.FullTurn, one.FullTurn, 1e-9, hand)
	near(t, "wear", half.Wear, one.Wear, 1e-9, hand)
	near(t, "shelf", half.Shelf, one.Shelf, 1e-9, hand)
	if l := r.Age(nil, nil, full, Temperature{}); l.Known {
		t.Error("a life without a year")
	}
}

// Never full, half charged all the time and a quarter of the ten-hour current: in its second turn the cells have been off full for
// n + 1 … 2n hours, 1.5 n + 0.5 on the mean, at 1 + (6.614e-5 + 3.307e-3·0.5·f)·Δt, f = 1 and √4.
func TestNeverFull(t *testing.T) {
	const n = 240
	charge, drawn := make([]float64, n), make([]float64, n)
	for h := range charge {
		charge[h], drawn[h] = 0.5, 4
	}
	usual, worst := sulphation(charge, drawn, 16)
	near(t, "usual", usual, 1+(6.614e-5+3.307e-3*0.5)*(1.5*n+0.5), 1e-9, hand)
	near(t, "small currents", worst, 1+(6.614e-5+3.307e-3*0.5*2)*(1.5*n+0.5), 1e-9, hand)
	for h := range charge {
		charge[h] = 0.98
	}
	if usual, worst = sulphation(charge, drawn, 16); usual != 1 || worst != 1 {
		t.Errorf("at 0.98, which counts as full: %g and %g", usual, worst)
	}
	usual, _ = sulphation([]float64{0.5}, []float64{0.1}, 16)
	near(t, "a tenth of a joule is drawn too", usual, 1+(6.614e-5+3.307e-3*0.5)*2, 1e-12, hand)
}

// Crystals make the cycles of lead, and nothing else, wear as much faster, and the life that goes badly is three fifths of what
// shelf and the worst crystals leave. What nothing wears has no end that could be told.
func TestCrystalsShortenTheLife(t *testing.T) {
	const n = 240
	charge, drawn := make([]float64, n), make([]float64, n)
	for h := range charge {
		charge[h], drawn[h] = 0.5, 4800*3600/10/4.0 // a quarter of the ten-hour current of 4800 Wh
	}
	usual, worst := 1+(6.614e-5+3.307e-3*0.5)*(1.5*n+0.5), 1+(6.614e-5+3.307e-3*0.5*2)*(1.5*n+0.5)
	l := Life{Wear: 0.2, Shelf: 0.3}
	l.last(typicalBank("flooded_lead").Resolve(), charge, drawn)
	near(t, "wear", l.Wear, 0.2*usual, 1e-9, hand)
	near(t, "years", float64(l.Years.Val), 1/(0.3+0.2*usual), 1e-9, hand)
	near(t, "if it goes badly", float64(l.YearsLow.Val), 0.6/(0.3+0.2*worst), 1e-9, hand)
	l = Life{Wear: 0.2, Shelf: 0.3}
	l.last(typicalBank("lfp").Resolve(), charge, drawn)
	near(t, "no crystals", float64(l.Years.Val), 2, 1e-9, hand)
	l = Life{}
	if l.last(typicalBank("lfp").Resolve(), charge, drawn); l.Years.Is || l.Capped {
		t.Errorf("what nothing wears lasts %v years", l.Years)
	}
}

// No warranty goes further than so many years, by our own judgement: 10 and 8 for lead, 15, 12, 40 and 15. The loss grows with
// time straight, with its root (Naumann) or with its power 0.75 (Schmalstieg). In the cold lead keeps four fifths of its rate,
// lithium and sodium half of it, and iron all of it.
func TestAgesOfKinds(t *testing.T) {
	for key, want := range map[Chemistry]struct{ years, bend, cold, hours, accept float64 }{
		FloodedLead: {10, 1, 0.8, 20, 0.8}, SealedLead: {8, 1, 0.8, 20, 0.8}, LFP: {15, 0.5, 0.5, 5, 0.95},
		NMC: {12, 0.75, 0.5, 5, 0.95}, NickelIron: {40, 1, 1, 5, 0.9}, SodiumIon: {15, 0.5, 0.5, 5, 0.95},
	} {
		r := typicalBank(string(key)).Resolve()
		l := Life{Wear: 1e-6}
		l.last(r, []float64{1}, []float64{0})
		near(t, r.Kind.Name+", years", float64(l.Years.Val), want.years, 0, hand)
		near(t, r.Kind.Name+", half of its life", r.Left(0.5), 1-0.2*math.Pow(0.5, want.bend), 1e-12, hand)
		near(t, r.Kind.Name+", in the cold", r.Kind.Ages.rate(-60, 0.9), want.cold, 1e-12, hand)
		near(t, r.Kind.Name+", hours of the label", r.Kind.RatedHours.Value, want.hours, 0, hand)
		near(t, r.Kind.Name+", takes less from", r.Kind.AcceptFrom.Value, want.accept, 0, hand)
		// Nine tenths full, at 25 °C where no temperature is known, the shelf takes a year of the kind's life.
		near(t, r.Kind.Name+", shelf", r.shelf([]float64{0.9, 0.9}, nil), 1/r.Kind.Calendar.Value, 1e-9, hand)
		r.Calendar = 0
		near(t, r.Kind.Name+", no life on the shelf", r.shelf([]float64{0.9}, nil), 0, 0, hand)
	}
}

// The voltage at rest of nickel–manganese–cobalt as published (Schmalstieg), in straight lines between; past its ends it stays.
func TestRestVoltage(t *testing.T) {
	for s, v := range map[float64]float64{-1: 3.331, 0: 3.331, 0.1: 3.456, 0.2: 3.581, 0.4: 3.650, 0.45: 3.674, 0.5: 3.698, 0.6: 3.775, 0.8: 3.965, 0.9: 4.0635, 1: 4.162, 2: 4.162} {
		near(t, fmt.Sprintf("at %g", s), restVoltage(s), v, 1e-9, hand)
	}
}

// How cells stand: half charged acid freezes at −24 °C and is near it up to −19 °C; lead is filled from −20 to 50 °C. Hours under
// 0 °C count as cold, 0 °C does not.
func TestHoursOfColdAndHeat(t *testing.T) {
	of := func(kind string, c float64) (l Life) {
		l.stand(typicalBank(kind).Resolve(), []float64{0.5}, []float64{c})
		return l
	}
	for _, c := range []struct {
		temp                          float64
		freezes, near, below, notFill int
	}{{-24.1, 1, 0, 1, 1}, {-24, 1, 0, 1, 1}, {-23.9, 0, 1, 1, 1}, {-19, 0, 1, 1, 0}, {-18.9, 0, 0, 1, 0}, {-0.1, 0, 0, 1, 0}, {0, 0, 0, 0, 0}, {0.5, 0, 0, 0, 0}, {50, 0, 0, 0, 0}, {50.1, 0, 0, 0, 1}} {
		if l := of("flooded_lead", c.temp); l.FreezeHours != c.freezes || l.NearFreeze != c.near || l.BelowZero != c.below || l.NoFillHours != c.notFill {
			t.Errorf("lead at %g °C: %+v", c.temp, l)
		}
	}
	if l := of("lfp", -40); l.FreezeHours != 0 || l.NearFreeze != 0 || l.NoFillHours != 1 {
		t.Errorf("iron phosphate at −40 °C: %+v", l)
	}
}

// The longest time on end: ten hours at the start of the year are ten, and twelve where two at its end go before them; none where
// it never is, and a whole year at most.
func TestLongestRun(t *testing.T) {
	for _, c := range []struct {
		is   func(h int) bool
		want int
	}{
		{func(h int) bool { return h < 10 }, 10}, {func(h int) bool { return h < 10 || h >= 98 }, 12},
		{func(int) bool { return false }, 0}, {func(int) bool { return true }, 100},
	} {
		if got := longest(100, c.is); got != c.want {
			t.Errorf("%d hours, want %d", got, c.want)
		}
	}
}

// Each thing that a year does to the cells is said when it happens in one hour, and not when it happens in none.
func TestYearIsSaid(t *testing.T) {
	b := typicalBank("sealed_lead")
	b.ChargeRate = unit.Of(unit.Ratio(0.4))
	b.Indoors = InBedroom
	for _, c := range []struct {
		what string
		l    Life
		want []string
	}{
		{"nothing", Life{}, nil},
		{"one hour of frost", Life{FreezeHours: 1, NearFreeze: 5}, []string{"It freezes in 1 hour of"}},
		{"frost and crystals", Life{FreezeHours: 1, Sulphates: true, NotFull: 16 * unit.Day, Sulphation: 1.234}, []string{"It freezes in 1 hour of", "16 days", "1.2 times as fast"}},
		{"one hour near frost", Life{NearFreeze: 1}, []string{"close to freezing in 1 hour of"}},
		{"one hour without filling", Life{NoFillHours: 1}, []string{"In 1 hour of the year it is too cold"}},
		{"one hour of cold", Life{BelowZero: 1}, []string{"full charge last about 3 hours"}},
		{"crystals", Life{Sulphates: true, NotFull: 16 * unit.Day, Sulphation: 1.234}, []string{"16 days", "1.2 times as fast"}},
	} {
		c.l.Known = true
		var said []string
		for _, f := range b.Resolve().Cautions(c.l) {
			said = append(said, f.Say.String())
			if (f.ID == "freezes") != strings.Contains(f.Say.String(), "It freezes") {
				t.Errorf("%s: %q is counted as %q", c.what, f.Say, f.ID)
			}
		}
		text := strings.ReplaceAll(strings.Join(said, " "), unit.Space, " ")
		for _, w := range []string{"It freezes in 1 hour of", "close to freezing in 1 hour of", "In 1 hour of the year it is too cold", "full charge last about 3 hours", "16 days", "1.2 times as fast"} {
			want := false
			for _, x := range c.want {
				want = want || x == w
			}
			if strings.Contains(text, w) != want {
				t.Errorf("%s: %q said %v: %s", c.what, w, !want, text)
			}
		}
	}
	for rate, told := range map[unit.Ratio]bool{0.3: false, 0.31: true} {
		b.ChargeRate = unit.Of(rate)
		if got := strings.Contains(fmt.Sprint(b.Resolve().Cautions(Life{Known: true, BelowZero: 9})), "full charge last"); got != told {
			t.Errorf("a charge of %g an hour in the cold: said %v", float64(rate), got)
		}
	}
	b.Kind = LFP
	if strings.Contains(fmt.Sprint(b.Resolve().Cautions(Life{Known: true, BelowZero: 9})), "full charge last") {
		t.Error("the advice for lead is given for iron phosphate")
	}
}

// Three strings of lead are still fine, four are not; two blocks of lithium in a row are asked for, one is not. The air of the
// flooded bank of 24 V and 200 Ah is 0.05·12·20·200/1000 = 2.4 m³/h, 2400 l, through 28·2.4 = 67.2 cm², told as 68; a single cell of 2 V is one
// cell, 0.2 m³/h; nickel–iron of 24 V, twenty cells, 0.05·20·50·200/1000 = 10 m³/h.
func TestBankIsSaid(t *testing.T) {
	says := func(b Bank) string {
		return strings.ReplaceAll(fmt.Sprint(b.Resolve().Cautions(Life{})), unit.Space, " ")
	}
	for n, told := range map[unit.Count]bool{3: false, 4: true} {
		b := typicalBank("flooded_lead")
		b.Parallel = unit.Of(n)
		if strings.Contains(says(b), "weakest dies first") != told {
			t.Errorf("%g strings: said %v", float64(n), !told)
		}
	}
	for n, told := range map[unit.Count]bool{1: false, 2: true} {
		b := typicalBank("lfp")
		b.Series = unit.Of(n)
		if strings.Contains(says(b), "boards in a row") != told {
			t.Errorf("%g blocks in a row: said %v", float64(n), !told)
		}
	}
	if b := typicalBank("flooded_lead"); !strings.Contains(says(b), "2 400 l of air an hour, through an opening of 68 cm²") {
		t.Error(says(b))
	}
	for v, told := range map[unit.Voltage]bool{60: false, 60.1: true} { // IEC 61140
		b := typicalBank("lfp")
		b.Series, b.Voltage = unit.Of[unit.Count](1), unit.Of(v)
		if strings.Contains(says(b), "can kill") != told {
			t.Errorf("%g V: said %v", float64(v), !told)
		}
	}
	one := typicalBank("flooded_lead")
	one.Series, one.Voltage = unit.Of[unit.Count](1), unit.Of[unit.Voltage](2)
	near(t, "one cell", one.Resolve().Ventilation().Boost, 0.2, 1e-12, hand)
	near(t, "nickel–iron", typicalBank("nickel_iron").Resolve().Ventilation().Boost, 10, 1e-12, hand)
}
