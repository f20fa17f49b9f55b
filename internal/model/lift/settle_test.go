package lift

import (
	"math"
	"strings"
	"testing"

	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
)

func resistor(r float64) DCLoad {
	return DCLoad{Kind: "resistor", Resistance: known(unit.Resistance(r)), Permanent: "yes"}
}

func row12(u0, r float64) DCLoad {
	return DCLoad{Kind: "string", Threshold: known(unit.Voltage(u0)), Slope: known(unit.Resistance(r))}
}

func converter(p float64) DCLoad {
	return DCLoad{Kind: "constant_power", Power: known(unit.Power(p))}
}

// with is the worked hoist with other things on its terminals. It makes 1.9198 A: (0.073778 N·m)/0.0327 − 0.3364.
func with(loads ...DCLoad) Hoist {
	h := worked()
	h.Lower.Loads = loads
	return h
}

// What several loads do together, by hand for I = 1.9198 A.
func TestLoadsTogether(t *testing.T) {
	i := float64(Compute(worked()).Lowering.Current)
	if math.Abs(i-1.9198) > 1e-4 {
		t.Fatalf("the hoist makes %.4f A", i)
	}
	clamp := DCLoad{Kind: "clamp", Threshold: known[unit.Voltage](10), Slope: known[unit.Resistance](0.5)}
	cell := DCLoad{Kind: "cell", Threshold: known[unit.Voltage](12.8), Slope: known[unit.Resistance](0.05), Diode: known[unit.Voltage](0.4)}
	lit := resistor(5)
	lit.Efficiency = known[unit.Ratio](1)
	cases := []struct {
		what       string
		loads      []DCLoad
		u, g, pays float64
	}{
		{"resistor", []DCLoad{lit}, 5 * i, 0.2, 5 * i * i},
		{"braking resistor", []DCLoad{resistor(5)}, 5 * i, 0.2, 0},
		{"row of lamps", []DCLoad{row12(8, 2)}, 8 + 2*i, 0.5, (8 + 2*i) * i},
		{"two rows", []DCLoad{row12(8, 2), row12(8, 2)}, 8 + i, 1, (8 + i) * i},
		{"cell behind a diode", []DCLoad{cell}, 13.2 + 0.05*i, 20, (12.8 + 0.05*i) * i},
		// U/5 + (U − 8)/2 = I: U = (I + 4)/0.7; the lamps get (U − 8)/2
		{"row and resistor", []DCLoad{row12(8, 2), resistor(5)}, (i + 4) / 0.7, 0.7, (i + 4) / 0.7 * ((i+4)/0.7 - 8) / 2},
		// a clamp that does not conduct yet
		{"row under a clamp", []DCLoad{row12(5, 1), clamp}, 5 + i, 1, (5 + i) * i},
		// 5 W and a clamp: U·I = 5 + U·(U − 10)/0.5: 2U² − (20 + I)U + 5 = 0, the greater root
		{"converter and clamp", []DCLoad{converter(5), clamp}, (20 + i + math.Sqrt((20+i)*(20+i)-40)) / 4, 0, 5},
		// 5 W and 20 Ω: U² /20 − I·U + 5 = 0, the greater root
		{"converter and resistor", []DCLoad{converter(5), resistor(20)}, (i + math.Sqrt(i*i-1)) * 10, 0, 5},
	}
	for _, c := range cases {
		d := Compute(with(c.loads...))
		if !d.Lowering.Steady {
			t.Errorf("%s: not steady: %s", c.what, d.Lowering.Say)
			continue
		}
		check(t, []row{
			{c.what + ", volts", float64(d.Lowering.Voltage), c.u, 1e-9, source.Derivation.At("by hand")},
			{c.what + ", at the lamps", float64(d.Lowering.SteadyPower), c.pays, 1e-9, source.Derivation.At("by hand")},
		})
		if c.g > 0 {
			check(t, []row{{c.what + ", slope", d.Lowering.Slope, c.g, 1e-9, source.Derivation.At("by hand")}})
		}
	}
}

// fall turns the machine for a while: J_t·dω/dt = K·(I* − I(U)), U from K·ω = U + I(U)·R by bisection. Nothing of the
// settling test is in it.
func fall(w *work, bs []branch, star, jt, omega, seconds float64) float64 {
	const steps = 20000
	h := seconds / steps
	for range steps {
		rate := func(o float64) float64 {
			lo, hi := 1e-6, w.kk*o
			for range 60 { // K·ω − U − I(U)·R falls with U near the greater root
				mid := (lo + hi) / 2
				if i, _ := sumAt(bs, mid); w.kk*o-mid-i*w.r > 0 {
					lo = mid
				} else {
					hi = mid
				}
			}
			i, _ := sumAt(bs, (lo+hi)/2)
			return w.kk * (star - i) / jt
		}
		k1 := rate(omega)
		omega += h * rate(omega+h/2*k1)
	}
	return omega
}

// A constant power leaves its balance at the rate that is told: turned by hand from 1e-4 beside it. With a resistor
// that burns more than it takes the same push dies away.
func TestGrowthByTurning(t *testing.T) {
	for _, c := range []struct {
		what  string
		loads []DCLoad
	}{{"alone", []DCLoad{converter(10)}}, {"with 60 Ω", []DCLoad{converter(10), resistor(60)}}} {
		h := with(c.loads...)
		d := Compute(h)
		w := &work{kk: float64(d.Machine.K.Val), r: float64(d.Machine.R.Val)}
		star := float64(d.Lowering.Current)
		bs := []branch{{kind: "constant_power", power: 10}}
		u := 10 / star
		if len(c.loads) > 1 {
			bs = append(bs, branch{kind: "resistor", slope: 60})
			u = float64(d.Lowering.Voltage)
		}
		qd := float64(d.QDown.Val * d.Backward.Val)
		cc := float64(d.RotorPerMetre.Val)
		jt := 2.1e-5 + 80*qd/(cc*cc)
		_, g := sumAt(bs, u)
		rate := Growth(d.Machine.K.Val, g, d.Machine.R.Val, unit.Inertia(jt))
		balance := (u + star*w.r) / w.kk
		const t0 = 0.05
		end := fall(w, bs, star, jt, balance*(1+1e-4), t0)
		seen := math.Log((end/balance-1)/1e-4) / t0
		if math.Abs(seen/float64(rate.Val)-1) > 2e-3 { // the push is not quite nothing
			t.Errorf("%s: it moves away at %.5g /s, told %.5g", c.what, seen, float64(rate.Val))
		}
		if steady := len(c.loads) > 1; d.Lowering.Steady != steady || (rate.Val < 0) != steady {
			t.Errorf("%s: steady %v, rate %g", c.what, d.Lowering.Steady, float64(rate.Val))
		}
		if len(c.loads) == 1 {
			check(t, []row{{"as written", float64(d.Lowering.Growth.Val), w.kk * w.kk * 10 / ((u*u - 10*w.r) * jt), 1e-9, source.Derivation.Whole()}})
		}
	}
}

// Each cure that is named cures, and burns what is told.
func TestCuresCure(t *testing.T) {
	d := Compute(with(converter(10)))
	lo := d.Lowering
	if lo.Steady || len(lo.Cures) != 3 {
		t.Fatalf("%+v", lo)
	}
	i := float64(lo.Current)
	r := float64(lo.Cures[0].Resistance.Val)
	cured := Compute(with(converter(10), resistor(r*1.0001)))
	if !cured.Lowering.Steady {
		t.Error("the resistor does not cure")
	}
	if short := Compute(with(converter(10), resistor(r*0.999))); short.Lowering.Steady {
		t.Error("a smaller resistor takes too much, and is called steady")
	}
	u := float64(cured.Lowering.Voltage)
	check(t, []row{{"the resistor burns", u * u / (r * 1.0001), float64(lo.Cures[0].Burns), 0.03, source.Derivation.At("at the least resistor, where the root is double")}})
	clamp := DCLoad{Kind: "clamp", Threshold: lo.Cures[1].Voltage, Slope: known[unit.Resistance](0)}
	cured = Compute(with(converter(10), clamp))
	if !cured.Lowering.Steady || !cured.Lowering.Stiff {
		t.Error("the clamp does not cure")
	}
	check(t, []row{{"the clamp burns", float64(cured.Lowering.Voltage)*i - 10, float64(lo.Cures[1].Burns), 1e-9, source.Derivation.Whole()}})
	governed := DCLoad{Kind: "governed", Speed: known[unit.AngularSpeed](400)}
	if !Compute(with(governed)).Lowering.Steady {
		t.Error("the governed converter does not cure")
	}
	if !strings.Contains(plain(lo.Say), "10 W") || !strings.Contains(plain(lo.Say), "Cure 3") {
		t.Error(lo.Say)
	}
}

// A converter for little power that works from any voltage on: U = I·R and U²/R = U·I − P have one root, not two, at
// R = 4·P/I², where U = 2·P/I, under a volt here; a clamp at 1.15·P/I burns 0.15·P.
func TestCuresOfLittlePower(t *testing.T) {
	const power = 0.1
	lo := Compute(with(converter(power))).Lowering
	i := float64(lo.Current)
	if 2*power/i >= 1/1.15 || len(lo.Cures) != 3 {
		t.Fatalf("%g A, %d cures: the case is none of a low voltage", i, len(lo.Cures))
	}
	check(t, []row{
		{"the least resistor", 4 * power / (i * i), float64(lo.Cures[0].Resistance.Val), 1e-9, source.Derivation.Whole()},
		{"it burns as much as the converter", power, float64(lo.Cures[0].Burns), 1e-9, source.Derivation.Whole()},
		{"the clamp", 1.15 * power / i, float64(lo.Cures[1].Voltage.Val), 1e-9, source.Derivation.Whole()},
		{"the clamp burns", 0.15 * power, float64(lo.Cures[1].Burns), 1e-9, source.Derivation.Whole()},
	})
}

// Three things that hold nothing: each says so, and none becomes a store.
func TestWhatDoesNotSettle(t *testing.T) {
	late := converter(10)
	late.MinVoltage = known[unit.Voltage](9) // above the balance of 5.2 V
	slow := DCLoad{Kind: "governed", Speed: known[unit.AngularSpeed](5)}
	for what, c := range map[string]struct {
		loads []DCLoad
		say   string
	}{
		"constant power":             {[]DCLoad{converter(10)}, "It never settles"},
		"under its least voltage":    {[]DCLoad{late}, "and the mass runs away"},
		"row that wants too much":    {[]DCLoad{converter(40), row12(3, 0.5)}, "more current than the mass gives"},
		"a speed that is too low":    {[]DCLoad{slow}, "cannot be kept"},
		"constant power and a row 2": {[]DCLoad{converter(12), row12(20, 1), resistor(3)}, "more current than the mass gives"},
	} {
		d := Compute(with(c.loads...))
		if d.Lowering.Steady || d.Reservoir != nil || !strings.Contains(plain(d.Lowering.Say), c.say) {
			t.Errorf("%s: steady %v, store %v: %s", what, d.Lowering.Steady, d.Reservoir != nil, d.Lowering.Say)
		}
		bad := false
		for _, f := range d.Flags {
			bad = bad || f.Bad && f.Say.Is(d.Lowering.Say)
		}
		if !bad {
			t.Errorf("%s: the sheet must say do not hang", what)
		}
	}
}

// The cures do cure: with the resistor or the clamp that is named hung beside it, a converter that works from 9 V on gets
// at least that and the mass comes down steadily.
func TestCuresReachTheConverter(t *testing.T) {
	for _, least := range []float64{0, 3, 9, 20} {
		h := worked()
		h.Lower.Loads = []DCLoad{{Kind: "constant_power", Power: known[unit.Power](4), MinVoltage: known(unit.Voltage(least))}}
		cures := Compute(h).Lowering.Cures
		if len(cures) != 3 {
			t.Fatalf("least %g V: %d cures", least, len(cures))
		}
		for i, l := range []DCLoad{{Kind: "resistor", Resistance: known(1.001 * cures[0].Resistance.Val)}, {Kind: "clamp", Threshold: cures[1].Voltage, Slope: known[unit.Resistance](0.01)}} {
			with := worked()
			with.Lower.Loads = append([]DCLoad{l}, h.Lower.Loads...)
			lo := Compute(with).Lowering
			if !lo.Steady || float64(lo.Voltage) < least {
				t.Errorf("least %g V, cure %d: steady %v at %v V. %s", least, i+1, lo.Steady, lo.Voltage, cures[i].Say)
			}
			// a thousandth past a double root moves U by √.001 = 3 %, and what burns by twice that
			if burnt := float64(lo.Voltage)*float64(lo.Current) - 4; math.Abs(burnt-float64(cures[i].Burns)) > 0.08*burnt {
				t.Errorf("least %g V, cure %d burns %g W, it says %v", least, i+1, burnt, cures[i].Burns)
			}
		}
	}
}
