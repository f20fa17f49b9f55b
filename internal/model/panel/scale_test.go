package panel

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

func share(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	near(t, what, got/want, 1, within)
}

// The equation of the diode has no unit of its own: with k times the current and m times the voltage of everything all currents
// are k times and all voltages m times as large. So a thousandth of an ampere at a hundredth of a volt is found as well as ten
// amperes at hundreds of volts, by one panel and by several on a load.
func TestCurvesScale(t *testing.T) {
	base := Curve{IL: 9, I0: 1e-9, Rs: 0.3, Leak: 0.002, A: 1.6}
	voc, isc := float64(base.OpenVoltage()), float64(base.ShortCurrent())
	vmp, imp := base.Best()
	near(t, "open: no current", base.current(voc), 0, 1e-9)
	near(t, "short: no voltage", float64(base.Voltage(unit.Current(isc*(1-1e-12)))), 0, 1e-6)
	for _, k := range []float64{1e-4, 0.03, 1, 50} {
		for _, m := range []float64{1e-3, 0.02, 1, 30} {
			c := Curve{IL: k * base.IL, I0: k * base.I0, Rs: m / k * base.Rs, Leak: k / m * base.Leak, A: m * base.A}
			name := fmt.Sprintf("currents × %g, voltages × %g: ", k, m)
			share(t, name+"open", float64(c.OpenVoltage()), m*voc, 1e-12)
			share(t, name+"short", float64(c.ShortCurrent()), k*isc, 1e-12)
			v, i := c.Best()
			share(t, name+"best V", float64(v), m*float64(vmp), 1e-7)
			share(t, name+"best A", float64(i), k*float64(imp), 1e-7)
			for _, part := range []float64{-2, -0.3, 0.01, 0.5, 0.97} {
				v := float64(c.Voltage(unit.Current(part * c.IL)))
				near(t, name+"the current at its voltage", c.current(v)/c.IL, part, 1e-9)
			}
			near(t, name+"more than it drives", float64(c.Voltage(unit.Current(1.1*c.IL))), 0, 0)
			for _, groups := range [][]group{{bare(Diode{Curve: c}, 2, 3)}, {bare(Diode{Curve: c}, 2, 1), bare(Diode{Curve: c}, 2, 2)}} {
				x := (&Straight{groups: groups}).Sunlit()
				x.SetEven(1000, 25)
				p, at := x.Best()
				share(t, name+"six panels, W", float64(p), 6*k*m*float64(vmp)*float64(imp), 1e-9)
				share(t, name+"six panels, V", float64(at), 2*m*float64(vmp), 1e-3)
				half, ok := x.Voltage(unit.Current(3 * k * isc / 2))
				if !ok {
					t.Error(name + "half of the short current is refused")
				}
				share(t, name+"six panels, half of the current", float64(x.Current(half)), 3*k*isc/2, 1e-9)
				if _, ok := x.Voltage(unit.Current(3.01 * k * isc)); ok {
					t.Error(name + "more than the short current is driven")
				}
			}
		}
	}
}

// Without a resistance in series the equation stands as it is written; a thousandth of a milliohm changes nothing.
func TestCurveWithoutResistance(t *testing.T) {
	c := Curve{IL: 9, I0: 1e-9, Leak: 0.002, A: 1.6}
	with := c
	with.Rs = 1e-6
	for v := 0.0; v < 38; v += 3.7 {
		want := 9 - 1e-9*math.Expm1(v/1.6) - v*0.002
		near(t, fmt.Sprintf("at %g V", v), c.current(v), want, 1e-12)
		near(t, fmt.Sprintf("at %g V with next to no resistance", v), with.current(v), want, 1e-4)
	}
}

// In the dark a panel gives nothing at no voltage.
func TestDarkPanel(t *testing.T) {
	v, i := Curve{}.Best()
	if v != 0 || i != 0 || (Curve{}).OpenVoltage() != 0 {
		t.Errorf("%g V, %g A, open %g V", float64(v), float64(i), float64(Curve{}.OpenVoltage()))
	}
}

// Any circuit that a panel can be returns from the five values of its sheet: the curve goes through all of them, in small and in
// large, with steep and with flat knees.
func TestFitMeetsCircuits(t *testing.T) {
	for _, a := range []float64{1.1, 1.6, 2.4} { // 22 to 14 of the open voltage
		for _, rs := range []float64{0.02, 0.3, 0.9} {
			for _, leak := range []float64{1e-4, 5e-3} {
				for _, k := range []float64{0.01, 1} {
					d := Diode{Curve: Curve{IL: 9 * k, I0: 9 * k * math.Exp(-38/a), Rs: rs / k, Leak: leak * k, A: a}, Alpha: 0.004 * k}
					s := sheetOf(d)
					name := fmt.Sprintf("A %g, Rs %g, leak %g, × %g ", a, rs, leak, k)
					got, err := s.Fit()
					if err != nil {
						t.Errorf("%s: %v", name, err)
						continue
					}
					isc, voc, imp, vmp := float64(s.Isc.Val), float64(s.Voc.Val), float64(s.Imp.Val), float64(s.Vmp.Val)
					share(t, name+"short", got.current(0), isc, 1e-9)
					near(t, name+"open", got.current(voc)/isc, 0, 1e-9)
					share(t, name+"best", got.current(vmp), imp, 1e-9)
					near(t, name+"most power there", (imp-vmp*got.slope(vmp, imp))/imp, 0, 1e-6)
					share(t, name+"A", got.A, a, 2e-3)
					near(t, name+"Rs, of the whole resistance", (got.Rs-rs/k)*isc/voc, 0, 5e-4)
				}
			}
		}
	}
}

// A sheet at a border belongs to a panel, past it not: power at the best point of 0.9 of open voltage times short current; 0.3 and
// 1.5 V a cell; the best point above half of both.
func TestSheetAtItsBorders(t *testing.T) {
	for _, c := range []struct {
		what string
		s    sheet
		sane bool
	}{
		{"fill of 0.9", sheet{isc: 10, voc: 20, imp: 9.6, vmp: 18.75}, true}, {"fill above 0.9", sheet{isc: 10, voc: 20, imp: 9.6, vmp: 18.76}, false},
		{"half the current", sheet{isc: 10, voc: 20, imp: 5, vmp: 15}, false}, {"more than half the current", sheet{isc: 10, voc: 20, imp: 5.1, vmp: 15}, true},
		{"half the voltage", sheet{isc: 10, voc: 20, imp: 9, vmp: 10}, false}, {"more than half the voltage", sheet{isc: 10, voc: 20, imp: 9, vmp: 10.1}, true},
		{"best current is the short one", sheet{isc: 10, voc: 20, imp: 10, vmp: 15}, false}, {"best voltage is the open one", sheet{isc: 10, voc: 20, imp: 6, vmp: 20}, false},
	} {
		if err := c.s.sane(); (err == nil) != c.sane {
			t.Errorf("%s: %v", c.what, err)
		}
	}
	for cells, ok := range map[int]bool{20: true, 19: false, 100: true, 101: false} {
		_, err := sheetFrom(6, 30, 5.5, 24, 0.0005, -0.003, cells).Fit()
		if told := err != nil && strings.Contains(say.Why(err).String(), "Look at the number of cells"); told == ok {
			t.Errorf("30 V of %d cells: %v", cells, err)
		}
	}
}

// A change of the open voltage that no circuit makes is taken where it is off by less than half of the nearest one that does, and
// refused by more; the words name both, as shares.
func TestFarCoefficient(t *testing.T) {
	v := sheet{isc: 5.96, voc: 22.4, imp: 5.56, vmp: 18, alpha: 5.96 * 0.0005}
	end, err := v.fit() // with no change at all
	if err == nil {
		t.Fatal("an open voltage that does not change with temperature is taken")
	}
	f := v.fall(end)
	text := strings.ReplaceAll(say.Why(err).String(), unit.Space, " ")
	if want := fmt.Sprint(say.Of(unit.PerKelvins, f/22.4)); !strings.Contains(text, "(0 ") || !strings.Contains(text, "which make "+strings.ReplaceAll(want, unit.Space, " ")) {
		t.Errorf("%s, want %s", text, want)
	}
	for part, taken := range map[float64]bool{0.51: true, 0.49: false} {
		v.beta = part * f
		if _, err := v.fit(); (err == nil) != taken {
			t.Errorf("%g of the least change: %v", part, err)
		}
	}
	v.beta = 0.0005 * 22.4
	if _, err = v.fit(); err == nil || !strings.Contains(say.Why(err).String(), fmt.Sprint(say.Of(unit.PerKelvins, 0.0005))) {
		t.Errorf("a rise of 0.0005 a kelvin: %v", err)
	}
}

// Panels straight on a load: dirt takes of the light, light warms them over the air, snow takes of the light, and two strings of
// three carry twice the current at three times the voltage less what the wires lose.
func TestStraightInItsLight(t *testing.T) {
	d := Diode{Curve: Curve{IL: 9, I0: 1e-9, Rs: 0.3, Leak: 0.002, A: 1.6}, Alpha: 0.004}
	g := group{diode: d, series: 3, strings: 2, warming: 0.03, clean: 0.9, equal: 0.95, wireShare: 0.97}
	x := (&Straight{groups: []group{g}}).Sunlit()
	snow := [12]float64{0.4}
	for _, c := range []struct {
		set  func()
		want Curve
	}{
		{func() { x.SetEven(800, 10) }, d.At(800*0.9, 10+24)},
		{func() { x.SetEven(40, 10) }, d.At(40*0.9, 10+1.2)}, // a third of an ampere
		{func() { x.Set([]Light{{Plane: []float64{0, 800}, Cells: []float64{0, 700}}}, []float64{0, 5}, 1) }, d.At(700*0.9, 5+24)},
		{func() {
			x.Set([]Light{{Plane: []float64{0, 800}, Cells: []float64{0, 700}, Snow: &snow}}, []float64{0, 5}, 1)
		}, d.At(700*0.6*0.9, 5+24)},
	} {
		c.set()
		share(t, "current", float64(x.Current(60)), 2*0.95*c.want.current(60/(3*0.97)), 1e-12)
		v, i := c.want.Best()
		p, at := x.Best()
		share(t, "best W", float64(p), float64(v)*float64(i)*6*0.95*0.97, 1e-9)
		share(t, "best V", float64(at), float64(v)*3*0.97, 1e-3)
		u, ok := x.Voltage(x.Current(60))
		if !ok {
			t.Error("its own current is refused")
		}
		share(t, "voltage", float64(u), 60, 1e-9)
	}
	// An array of no panels gives nothing and does not lower the voltage of the others.
	none := g
	none.strings, none.series = 0, 1
	two := (&Straight{groups: []group{none, g}}).Sunlit()
	two.SetEven(800, 10)
	x.SetEven(800, 10)
	p, v := x.Best()
	if q, u := two.Best(); p != q || v != u || two.Current(60) != x.Current(60) {
		t.Errorf("beside an array of no panels: %g W at %g V, want %g at %g", float64(q), float64(u), float64(p), float64(v))
	}
}

// Pulse width without a sheet by hand: 100 W for a line of 12.8 V have their best point at 17.92 V and 94 % of the short current,
// 100/17.92/0.94 = 5.93655 A. At 25 °C and 500 W/m², with a tenth of dirt, 2 % unequal and 5 % of the volts in the wires: the
// panels stand at 12.8/0.95 V and 2.96827 A, so 12.8·2.96827·0.9·0.98 W come; cells 40 K warmer give 1 + 0.0005·40 of it. In
// cells of 275 °C, where nothing is left of the label's power, none.
func TestPulseWidthByHand(t *testing.T) {
	a := Array{Name: "Roof", Count: unit.Of[unit.Count](1), Power: unit.Of[unit.Power](100), Tilt: unit.Of[unit.Angle](0), Azimuth: unit.Of[unit.Angle](0),
		Soiling: unit.Of[unit.Ratio](0.1), Mismatch: unit.Of[unit.Ratio](0.02), Wiring: unit.Of[unit.Ratio](0.05)}
	p, ps := Prepare([]Array{a}, Controller{Kind: ControllerPulseWidth})
	if len(ps) > 0 {
		t.Fatal(ps)
	}
	made := &p.arrays[0]
	near(t, "at 25 °C", made.held(500, 25, 0.9), 12.8*100/17.92/0.94/2*0.9*0.98, 1e-9)
	near(t, "at 65 °C", made.held(500, 65, 0.9), 12.8*100/17.92/0.94/2*0.9*0.98*1.02, 1e-9)
	near(t, "at 275 °C", made.held(500, 275, 0.9), 0, 0)
	near(t, "best at 276 °C", made.best(500, 276), 0, 0)
	if said := strings.ReplaceAll(p.Remarks[0].String(), unit.Space, " "); !strings.HasPrefix(said, "Roof: ") || !strings.Contains(said, "at 17.9 V (1.4 times the line)") {
		t.Error(said)
	}
	// With a sheet a panel above its open voltage takes nothing back, and gives its few milliamperes in dim light.
	s := sheetFrom(5.96, 22.4, 5.56, 18.0, 0.0005, -0.0031, 36)
	a.Sheet = &s
	p, _ = Prepare([]Array{a}, Controller{Kind: ControllerPulseWidth})
	d, _ := s.Fit()
	want := float64(d.At(50*0.9, 25).Current(12.8/0.95)) * 12.8 * 0.98
	near(t, "in dim light", p.arrays[0].held(50, 25, 0.9), want, 1e-9)
	if want > 4 || want < 1 {
		t.Errorf("%g W in dim light", want)
	}
	p, _ = Prepare([]Array{a}, Controller{Kind: ControllerPulseWidth, BusVolts: unit.Of[unit.Voltage](24)})
	near(t, "above its open voltage", p.arrays[0].held(500, 25, 1), 0, 0)
	// A cable that would lose more than all leaves a tenth of the volts.
	a.CableLen, a.CableArea = unit.Of[unit.Length](200), unit.Of[unit.Area](1e-6)
	p, _ = Prepare([]Array{a}, Controller{Kind: ControllerPulseWidth})
	near(t, "what the wires leave", p.arrays[0].wired, 0.1, 1e-12)
	near(t, "and no more by the current", p.arrays[0].through(77), 77, 0)
}

// Half a watt a square metre is light too: an hour of it gives half a thousandth of the label, counted in the year. The losses
// stand in the order in which they happen.
func TestDimHoursCount(t *testing.T) {
	snow := [12]float64{0.25}
	for _, kind := range []ControllerKind{ControllerTracking, ControllerPulseWidth} {
		for _, dust := range []unit.Known[unit.Ratio]{{}, unit.Of[unit.Ratio](0.001)} {
			a := plain(100)
			a.Dust = dust
			l := one(0.5, 0.4)
			l[0].Snow = &snow
			c := Controller{Kind: kind, Curve: []Efficiency{{0, 0.9}, {1, 0.9}}}
			b, ps := BusPower([]Array{a}, c, l, []float64{25})
			if len(ps) > 0 {
				t.Fatal(ps)
			}
			near(t, "light, W", float64(b.Light)/3600, 0.05, 1e-12)
			if b.Panel[0] <= 0 || b.Power[0] <= 0 || b.Power[0] >= b.Panel[0] || b.Arrays[0].Output <= 0 {
				t.Errorf("%s: %g W of the panels, %g W at the line", kind, b.Panel[0], b.Power[0])
			}
			var names []string
			for _, x := range b.Losses {
				names = append(names, x.Name)
			}
			want := []string{LossGlass, LossHeat, LossSnow, LossDirt, LossUnequal, LossWires, LossController, LossRating}
			if kind == ControllerPulseWidth {
				want = slices.Insert(want, 6, LossOffBest)
			}
			if !slices.Equal(names, want) {
				t.Errorf("%s: %v", kind, names)
			}
			names = nil
			for _, x := range b.Arrays[0].Losses {
				names = append(names, x.Name)
			}
			if want := []string{LossGlass, LossHeat, LossSnow, LossDirt, LossUnequal, LossWires}; !slices.Equal(names[:6], want) {
				t.Errorf("%s, array: %v", kind, names)
			}
		}
	}
}

// With pulse width the controller keeps 2 % (from memory) of what comes, and what is above its most power is booked as such.
func TestPulseWidthBooks(t *testing.T) {
	c := Controller{Kind: ControllerPulseWidth, Power: unit.Of[unit.Power](50)}
	b, ps := BusPower([]Array{plain(100)}, c, one(1000, 1000), []float64{0})
	if len(ps) > 0 {
		t.Fatal(ps)
	}
	q := b.Panel[0]
	near(t, "line", b.Power[0], 50, 1e-12)
	near(t, "controller", float64(b.Losses[len(b.Losses)-2].Energy)/3600, 0.02*q, 1e-9)
	near(t, "above its rating", float64(b.Losses[len(b.Losses)-1].Energy)/3600, 0.98*q-50, 1e-9)
}

// Makers sort panels within some per cent of the label: a best point a tenth of the label off is the panel's own, more is not.
func TestBestPointBesideTheLabel(t *testing.T) {
	s := sheetFrom(5.96, 22.4, 5.56, 18.0, 0.0005, -0.0031, 36) // 100.08 W
	for label, want := range map[float64]int{90.9: 1, 91.1: 0, 111.1: 0, 111.3: 1} {
		a := plain(label)
		a.Sheet = &s
		if _, ps := Prepare([]Array{a}, Controller{Kind: ControllerTracking}); len(ps) != want {
			t.Errorf("100.08 W on a label of %g: %v", label, ps)
		}
	}
}

// Six panels in twos are three strings, each with all that is known of the array.
func TestStraightMadeReady(t *testing.T) {
	s := sheetFrom(5.96, 22.4, 5.56, 18.0, 0.0005, -0.0031, 36)
	s.Series = unit.Of[unit.Count](2)
	a := plain(100)
	a.Count, a.Sheet, a.Soiling, a.Mismatch, a.Wiring = unit.Of[unit.Count](6), &s, unit.Of[unit.Ratio](0.1), unit.Of[unit.Ratio](0.05), unit.Of[unit.Ratio](0.04)
	made, ps := NewStraight([]Array{a})
	if len(ps) > 0 || made == nil || len(made.groups) != 1 {
		t.Fatal(made, ps)
	}
	if g := made.groups[0]; g.strings != 3 || g.series != 2 || g.clean != 0.9 || g.equal != 0.95 || g.wireShare != 0.96 || math.Abs(g.warming-1/31.84) > 1e-12 {
		t.Errorf("%+v", g)
	}
}

// A sheet that has no curve is refused where the curve is used, and where nobody has asked before.
func TestSheetIsAskedOnce(t *testing.T) {
	a := plain(250)
	s := sheetFrom(5.96, 22.4, 5.56, 18.0, 0.0005, -0.0031, 36) // of 100 W
	a.Sheet = &s
	for kind, want := range map[ControllerKind]int{ControllerTracking: 0, ControllerPulseWidth: 1} {
		if _, ps := PrepareBrighter([]Array{a}, Controller{Kind: kind}); len(ps) != want {
			t.Errorf("%s, asked before: %v", kind, ps)
		}
		if _, ps := Prepare([]Array{a}, Controller{Kind: kind}); len(ps) != 1 {
			t.Errorf("%s: %v", kind, ps)
		}
	}
}

// Two points of a curve at one load make a step: level before it and after it. An efficiency above one or under nothing is none.
func TestTrackerWithAStep(t *testing.T) {
	step := newTracker([]Efficiency{{0, 0.5}, {0.5, 0.5}, {0.5, 0.9}, {1, 0.9}}, 100)
	for p, want := range map[float64]float64{10: 0.5, 49: 0.5, 51: 0.9, 90: 0.9} {
		near(t, fmt.Sprintf("at %g W", p), step.efficiency(p), want, 1e-12)
	}
	unrated := newTracker(nil, 0)
	near(t, "without a rating", unrated.efficiency(0), 0.80, 1e-12)
	past := newTracker([]Efficiency{{1, 1.2}}, 100)
	near(t, "more than all", past.efficiency(50), 1, 0)
	under := newTracker([]Efficiency{{1, -0.2}}, 100)
	near(t, "less than nothing", under.efficiency(50), 0, 0)
}

// What is not known of a sheet is not known of the string: no voltage on a hot day, no current in bright sun, no drop. Three panels
// without a sheet count as 50 V each, and in a frost of −20 °C as 1.18 times that.
func TestStringsWithoutSheet(t *testing.T) {
	if v, ok := (Array{}).BestHot(2); ok || v != 0 {
		t.Errorf("%g V on a hot day", float64(v))
	}
	if i, ok := (Array{}).Short(2); ok || i != 0 {
		t.Errorf("%g A in bright sun", float64(i))
	}
	if v, share, ok := (Array{Count: unit.Of[unit.Count](1)}).CableDrop(); ok || v != 0 || share != 0 {
		t.Errorf("a drop of %g V, %g", float64(v), share)
	}
	near(t, "in a frost", float64(Array{}.OpenCold(3, -20)), 3*50*1.18, 1e-9)
	if share, ok := (Array{}).cable(); ok || share != 0 {
		t.Errorf("a share of %g", share)
	}
	if cut := Clipped([]Array{{}}, Controller{MaxCharge: unit.Of[unit.Current](0)}); cut != unit.Of[unit.Power](0) {
		t.Errorf("%v W of panels that nobody knows", cut)
	}
	if !(Array{DustIn: []unit.Count{4}}).dusty() || (Array{}).dusty() {
		t.Error("one month with dust is dust, none is not")
	}
	if (Array{}).SeriesFuse() != 15 || (Array{Sheet: &Sheet{Fuse: unit.Of[unit.Current](20)}}).SeriesFuse() != 20 || (Array{}).Lead() != 4e-6 {
		t.Error("the usual fuse of 15 A and lead of 4 mm²")
	}
}

// A copy shares nothing that can be written with the array it is made of.
func TestArrayCopyIsItsOwn(t *testing.T) {
	a := Array{DustIn: []unit.Count{1}, TiltBy: &[12]unit.Angle{1}, Shade: &[12]float64{1}, Sheet: &Sheet{Isc: unit.Of[unit.Current](1)}}
	b := a.Copy()
	b.DustIn[0], b.TiltBy[0], b.Shade[0], b.Sheet.Isc = 2, 2, 2, unit.Of[unit.Current](2)
	if a.DustIn[0] != 1 || a.TiltBy[0] != 1 || a.Shade[0] != 1 || a.Sheet.Isc.Val != 1 {
		t.Errorf("%+v", a)
	}
	if c := (Array{}).Copy(); c.TiltBy != nil || c.Shade != nil || c.Sheet != nil {
		t.Errorf("%+v", c)
	}
}

// How panels stand is known with a tilt, or twelve, and a direction. Their power is known with that of one and their number.
func TestStandsAndNominal(t *testing.T) {
	tilt, by, faces := unit.Of[unit.Angle](0.5), &[12]unit.Angle{}, unit.Of[unit.Angle](3)
	for _, c := range []struct {
		a    Array
		want bool
	}{{Array{Tilt: tilt, Azimuth: faces}, true}, {Array{TiltBy: by, Azimuth: faces}, true}, {Array{Tilt: tilt}, false}, {Array{TiltBy: by}, false}, {Array{Azimuth: faces}, false}} {
		if c.a.Stands() != c.want {
			t.Errorf("%v, %v, %v stands: %v", c.a.Tilt, c.a.TiltBy, c.a.Azimuth, !c.want)
		}
	}
	one, two := unit.Of[unit.Power](100), unit.Of[unit.Count](2)
	if (Array{Power: one}).Nominal().Is || (Array{Count: two}).Nominal().Is || (Array{Power: one, Count: two}).Nominal() != unit.Of[unit.Power](200) {
		t.Error("two of 100 W are 200 W, and not known without one of both")
	}
}

// Dust that settles at a thousandth a day reaches three tenths after 270 days, of which a fresh start knows nothing: panels that
// somebody cleans begin clean on the first day of the dust, those that nobody ever cleans are full of it.
func TestDustBegins(t *testing.T) {
	cleaned, never := dustOf(0.03, 0.001, 365).cleanByDay(), dustOf(0.03, 0.001, 0).cleanByDay()
	near(t, "first day", 1-cleaned[0], 0.03, 1e-12)
	near(t, "second day", 1-cleaned[1], 0.031, 1e-12)
	near(t, "day 200", 1-cleaned[200], 0.23, 1e-12)
	near(t, "day 300", 1-cleaned[300], 0.3, 1e-12)
	near(t, "never cleaned, first day", 1-never[0], 0.3, 1e-12)
}
