package panel

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"duskweight/internal/model/unit"
)

// bare is one array of a circuit, series × strings panels, nothing lost.
func bare(d Diode, series, strings float64) group {
	return group{diode: d, series: series, strings: strings, clean: 1, equal: 1, wireShare: 1}
}

// The same tables as for a single curve: voltage at half the short current, power at the best point. Cells at 25 °C,
// where the table's reference light is; the cells' own warming is left out.
func TestStraightAgainstTable(t *testing.T) {
	n := 0
	for _, row := range published(t, "panel_singlediode.csv") {
		v := func(name string) float64 { return number(t, row[name]) }
		if v("E") != 1000 || v("Tc") != 25 {
			continue
		}
		n++
		d := Diode{Curve: curveOf(t, row)}
		one := (&Straight{groups: []group{bare(d, 1, 1)}}).Sunlit()
		one.SetEven(1000, 25)
		half, ok := one.Voltage(unit.Current(v("i_sc") / 2))
		near(t, row["module"]+" V at half", float64(half), v("v_at_half_isc"), 1e-6*v("v_oc"))
		p, _ := one.Best()
		near(t, row["module"]+" best W", float64(p), v("p_mp"), 2e-7*v("p_mp"))
		if !ok {
			t.Error("half the short current is refused")
		}
		// two in series, three strings; and the same three strings as arrays of their own
		many := (&Straight{groups: []group{bare(d, 2, 3)}}).Sunlit()
		apart := (&Straight{groups: []group{bare(d, 2, 1), bare(d, 2, 1), bare(d, 2, 1)}}).Sunlit()
		for _, x := range []*Sunlit{many, apart} {
			x.SetEven(1000, 25)
			u, _ := x.Voltage(unit.Current(3 * v("i_sc") / 2))
			near(t, row["module"]+" six panels, V", float64(u), 2*v("v_at_half_isc"), 4e-6*v("v_oc"))
			near(t, row["module"]+" six panels, A", float64(x.Current(u)), 3*v("i_sc")/2, 1e-5)
			p, volts := x.Best()
			near(t, row["module"]+" six panels, W", float64(p), 6*v("p_mp"), 12e-7*v("p_mp"))
			near(t, row["module"]+" six panels, best V", float64(volts), 2*v("v_mp"), 1e-4*v("v_mp")) // flat top
		}
	}
	if n < 3 {
		t.Errorf("only %d rows", n)
	}
}

// The losses of an array, by hand: dirt takes a tenth of the light, unequal panels a tenth of the current, wires a tenth
// of the voltage. At the short circuit of a circuit without resistance the current is 5.9·0.9·0.9 A, whatever the wires.
func TestStraightLosses(t *testing.T) {
	d := Diode{Curve: Curve{IL: 5.9, I0: 1e-9, A: 1}}
	g := bare(d, 1, 1)
	g.clean, g.equal, g.wireShare = 0.9, 0.9, 0.9
	x := (&Straight{groups: []group{g}}).Sunlit()
	x.SetEven(1000, 25)
	near(t, "short", float64(x.Current(0)), 5.9*0.81, 1e-12)
	// half of that current: the panel carries 2.655 A, its diode takes the rest: v = ln(1 + 2.655/1e-9), 0.9 of it comes
	v, _ := x.Voltage(5.9 * 0.81 / 2)
	near(t, "volts", float64(v), 0.9*math.Log1p(2.655/1e-9), 1e-9)
	x.SetEven(0, 25)
	if v, ok := x.Voltage(1e-9); ok || v != 0 || x.Current(0) != 0 {
		t.Error("something comes in the dark")
	}
	if p, v := x.Best(); p != 0 || v != 0 {
		t.Error("power in the dark")
	}
}

func TestStraightSays(t *testing.T) {
	a := plain(100)
	says := func(want string, arrays ...Array) {
		t.Helper()
		if s, ps := NewStraight(arrays); s != nil || len(ps) == 0 || !strings.Contains(fmt.Sprint(ps[0].Path, ": ", ps[0].Say), want) {
			t.Errorf("%v, want %q", ps, want)
		}
	}
	says("no panel yet")
	says("panels[0].sheet.voc_v: the curve of the panel needs its data sheet", a)
	s := sheetFrom(5.96, 22.4, 5.56, 18.0, 0.0005, -0.0031, 36)
	s.Series = unit.Of(unit.Count(2))
	a.Sheet, a.Count = &s, unit.Of(unit.Count(3))
	says("3 panels do not make whole strings of 2", a)
	a.Count = unit.Known[unit.Count]{}
	says("panels[0].count", a)
	a.Count = unit.Of(unit.Count(4))
	if _, ps := NewStraight([]Array{a, a}); ps != nil {
		t.Error(ps)
	}
}

// Whatever is asked, the voltage found gives that current.
func FuzzStraight(f *testing.F) {
	f.Add(5.9, 1e-9, 0.3, 0.002, 1.2, 700.0, 20.0, 3.0, true)
	f.Fuzz(func(t *testing.T, il, i0, rs, leak, a, g, air, i float64, two bool) {
		if !(il > 1e-3 && il < 100 && i0 > 1e-15 && i0 < il/1e3 && rs >= 0 && rs < 10 && leak >= 0 && leak < 1 && a > 0.1 && a < 20 &&
			g >= 0 && g <= 1400 && air > -60 && air < 80 && i > 0 && i < 200) {
			t.Skip()
		}
		s := &Straight{groups: []group{bare(Diode{Curve: Curve{IL: il, I0: i0, Rs: rs, Leak: leak, A: a}}, 1, 1)}}
		if two {
			s.groups = append(s.groups, bare(Diode{Curve: Curve{IL: il / 2, I0: i0, Rs: rs, A: a}}, 2, 1))
		}
		x := s.Sunlit()
		x.SetEven(unit.Irradiance(g), unit.Celsius(air))
		v, ok := x.Voltage(unit.Current(i))
		if p, at := x.Best(); !(p >= 0 && at >= 0) || math.IsInf(float64(p), 0) {
			t.Fatalf("best %v W at %v V", p, at)
		}
		if !ok {
			return
		}
		if !(v >= 0) {
			t.Fatalf("%v V", v)
		}
		// the current may jump by its slope times the voltage's rounding
		back, below := float64(x.Current(v)), float64(x.Current(v*(1-1e-9)))
		if math.Abs(back-i) > 1e-6*i+math.Abs(below-back)*10+1e-9 {
			t.Errorf("%v A asked, %v A at %v V", i, back, v)
		}
	})
}
