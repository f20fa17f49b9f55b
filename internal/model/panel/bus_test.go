package panel

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"duskweight/internal/model/unit"
)

// plain is an array of one panel without the losses that are not under test.
func plain(w float64) Array {
	none := unit.Of(unit.Ratio(0))
	return Array{Name: "roof", Count: unit.Of(unit.Count(1)), Power: unit.Of(unit.Power(w)), Soiling: none, Mismatch: none, Wiring: none,
		Tilt: unit.Of(unit.Angle(0.5)), Azimuth: unit.Of(unit.Angle(3))}
}

func one(plane, cells float64) []Light {
	return []Light{{Plane: []float64{plane}, Cells: []float64{cells}}}
}

// A panel of 220 W that loses 0.45 % a kelvin gives 190.3 W in full light with cells at 55 °C (hand: 220·(1 − 0.0045·30)
// = 190.3). Air at 55 °C less the cells' own warming of 1000/(25 + 6.84) = 31.407 K.
func TestPowerWithTemperature(t *testing.T) {
	a := plain(220)
	a.Gamma = unit.Of(unit.PerKelvin(-0.0045))
	p, ps := Prepare([]Array{a}, Controller{Kind: "tracking"})
	if ps != nil {
		t.Fatal(ps)
	}
	b := p.Year(one(1000, 1000), []float64{55 - 1000/(25+6.84)})
	near(t, "power", b.Panel[0], 190.3, 1e-9)
	near(t, "heat", float64(b.Arrays[0].Losses[1].Energy)/3600, 29.7, 1e-9)
}

// Four panels of 100 W, 800 W/m² on the glass, 780 behind it, 25 °C, all by hand:
//
//	warming 800/31.84 = 25.12563 K, cells 50.12563 °C, factor 1 − 0.004·25.12563 = 0.8994975
//	400·0.78·0.8994975 = 280.64322; dirt ·0.97 = 272.22392; unequal ·0.98 = 266.77944; wires ·0.98 = 261.44385
//	load 261.44385/400 = 0.6536096: efficiency 0.965 − 0.005·(0.6536096 − 0.5)/0.5 = 0.9634639; line 251.89171 W
func TestWhereEachWattWent(t *testing.T) {
	a := Array{Count: unit.Of(unit.Count(4)), Power: unit.Of(unit.Power(100)), Tilt: unit.Of(unit.Angle(0.5)), Azimuth: unit.Of(unit.Angle(3))}
	b, ps := BusPower([]Array{a}, Controller{Kind: "tracking"}, one(800, 780), []float64{25})
	if ps != nil {
		t.Fatal(ps)
	}
	near(t, "panels", b.Panel[0], 261.44385, 1e-5)
	near(t, "line", b.Power[0], 251.89171, 1e-5)
	want := map[string]float64{LossGlass: 8, LossHeat: 312 - 280.64322, LossDirt: 280.64322 - 272.22392,
		LossUnequal: 272.22392 - 266.77944, LossWires: 266.77944 - 261.44385, LossController: 261.44385 - 251.89171, LossRating: 0}
	for _, l := range b.Losses {
		near(t, l.Name, l.Energy.WattHours(), want[l.Name], 2e-5)
		delete(want, l.Name)
	}
	if len(want) > 0 {
		t.Errorf("not booked: %v", want)
	}
	near(t, "light", b.Light.WattHours(), 320, 1e-9)
}

// The typical curve at its own points, between them, beyond them; a rating cuts.
func TestTracker(t *testing.T) {
	k := newTracker(nil, 100)
	for load, want := range map[float64]float64{0.01: 0.80, 0.05: 0.80, 0.075: 0.84, 0.10: 0.88, 0.20: 0.93, 0.35: 0.9475, 0.50: 0.965, 1: 0.96, 1.2: 0.96} {
		near(t, fmt.Sprint("efficiency at ", load), k.efficiency(load*100), want, 1e-12)
	}
	near(t, "below the rating", k.out(100), 96, 1e-9)
	near(t, "cut", k.out(150), 100, 1e-9)
	own := newTracker([]Efficiency{{1, 0.9}, {0, 0.5}}, 10) // out of order
	near(t, "own curve", own.efficiency(5), 0.7, 1e-12)
}

// Pulse width with a sheet: 100 W panel at 12.8 V without losses gives its curve's current there, near the 5.96 A of the
// short circuit, times the line's voltage: less than tracking gives.
func TestPulseWidth(t *testing.T) {
	a := plain(100)
	s := sheetFrom(5.96, 22.4, 5.56, 18.0, 0.0005, -0.0031, 36)
	a.Sheet = &s
	air := []float64{25 - 1000/31.84} // cells at 25 °C
	b, ps := BusPower([]Array{a}, Controller{Kind: "pulse_width"}, one(1000, 1000), air)
	if ps != nil {
		t.Fatal(ps)
	}
	d, _ := s.Fit()
	i := float64(d.Current(12.8))
	if i < 5.85 || i > 5.96 {
		t.Errorf("current at 12.8 V: %v A", i)
	}
	near(t, "line", b.Power[0], 0.98*12.8*i, 1e-6)
	track, _ := BusPower([]Array{a}, Controller{Kind: "tracking"}, one(1000, 1000), air)
	near(t, "tracking", track.Power[0], 0.96*100.08/1.0008, 0.01) // by the label's 100 W
	// two panels in series on 25.6 V, and four panels two by two, are the same for each panel
	a.Count = unit.Of(unit.Count(4))
	s.Series = unit.Of(unit.Count(2))
	four, _ := BusPower([]Array{a}, Controller{Kind: "pulse_width", BusVolts: unit.Of(unit.Voltage(25.6))}, one(1000, 1000), air)
	near(t, "four", four.Power[0], 4*b.Power[0], 1e-6)
	// without a sheet the approximation is within 4 % of the curve, and says so
	a = plain(100)
	rough, _ := BusPower([]Array{a}, Controller{Kind: "pulse_width"}, one(1000, 1000), air)
	near(t, "without a sheet", rough.Power[0]/b.Power[0], 1, 0.04)
	if len(rough.Remarks) != 1 {
		t.Error("the approximation is not mentioned")
	}
	// hot and dim: never above the best point
	hot, _ := BusPower([]Array{a}, Controller{Kind: "pulse_width"}, one(1000, 1000), []float64{90})
	best := 100 * (1 - 0.004*(90+1000/31.84-25))
	if hot.Power[0] > best*0.98+1e-9 {
		t.Errorf("%v W of %v", hot.Power[0], best)
	}
}

func TestDirectGivesNothingToTheLine(t *testing.T) {
	b, ps := BusPower([]Array{plain(100)}, Controller{Kind: "direct"}, one(500, 500), []float64{20})
	if ps != nil || b.Power[0] != 0 || b.Panel[0] <= 0 || b.Losses[len(b.Losses)-1].Name != LossDirect {
		t.Errorf("%+v %v", b, ps)
	}
}

// Not known is a problem with its path, never a zero; a sheet of another panel is refused.
func TestPrepareSays(t *testing.T) {
	_, ps := Prepare([]Array{plain(10), {}}, Controller{Kind: "tracking"})
	for i, want := range []string{"count", "panel_w", "tilt_rad", "azimuth_rad"} {
		if len(ps) != 4 || ps[i].Path != "panels[1]."+want || ps[i].Say.IsZero() {
			t.Errorf("%v", ps)
		}
	}
	a := plain(250)
	s := sheetFrom(5.96, 22.4, 5.56, 18.0, 0.0005, -0.0031, 36)
	a.Sheet = &s
	if _, ps = Prepare([]Array{a}, Controller{Kind: "pulse_width"}); len(ps) != 1 || strings.ReplaceAll(ps[0].Say.String(), unit.Space, " ") != "the sheet's best point makes 100 W, the label says 250 W. Give both for one panel" {
		t.Errorf("%v", ps)
	}
	if _, ps = Prepare(nil, Controller{}); len(ps) != 1 || ps[0].Path != "controller.kind" {
		t.Errorf("%v", ps)
	}
	if b, ps := BusPower(nil, Controller{Kind: "tracking"}, nil, make([]float64, 24)); ps != nil || b.Total != 0 || len(b.Power) != 24 {
		t.Error("no panels: no power, no problem")
	}
	if _, ps = BusPower([]Array{plain(1)}, Controller{Kind: "tracking"}, []Light{{}}, make([]float64, 24)); len(ps) != 1 {
		t.Error("light for another number of hours")
	}
	if _, ps = BusPower([]Array{plain(1)}, Controller{Kind: "tracking"}, nil, nil); len(ps) != 1 {
		t.Error("light for another number of arrays")
	}
}

// year is a made-up year of light with every hour of the day.
func year(seed float64) (Light, []float64) {
	l := Light{Plane: make([]float64, 8760), Cells: make([]float64, 8760)}
	air := make([]float64, 8760)
	for h := range air {
		g := 1100 * math.Sin(float64(h%24-6)*math.Pi/12) * (0.6 + 0.4*math.Sin(float64(h)*0.37+seed))
		l.Plane[h] = max(0, g)
		l.Cells[h] = max(0, g) * 0.96
		air[h] = 12 - 14*math.Cos(float64(h)*2*math.Pi/8760) + 6*math.Sin(float64(h%24-9)*math.Pi/12)
	}
	return l, air
}

// Whatever the design, the joules of the light are all accounted for, hour sums and arrays alike, and nothing is made.
func FuzzBus(f *testing.F) {
	f.Add(3, 100.0, -0.004, 0.03, 0.02, 0.02, uint8(0), 250.0, 12.8, 1.0, true)
	f.Add(1000, 2000.0, -0.02, 0.99, 0.99, 0.99, uint8(1), 1e-9, 1000.0, 50.0, false)
	f.Add(0, 1e-6, 0.0, 0.0, 0.0, 0.0, uint8(2), 1e6, 1e-6, 0.0, true)
	light, air := year(1)
	second, _ := year(2)
	f.Fuzz(func(t *testing.T, count int, power, gamma, dirt, unequal, wires float64, kind uint8, rated, line, wind float64, sheet bool) {
		if !(count >= 0 && count <= 1000 && power > 1e-9 && power <= 2000 && gamma >= -0.02 && gamma <= 0 && dirt >= 0 && dirt < 1 &&
			unequal >= 0 && unequal < 1 && wires >= 0 && wires < 0.999 && rated > 1e-9 && rated <= 1e6 && line > 1e-6 && line <= 1000 && wind >= 0 && wind <= 50) {
			t.Skip()
		}
		a := Array{Count: unit.Of(unit.Count(count)), Power: unit.Of(unit.Power(power)), Gamma: unit.Of(unit.PerKelvin(gamma)), Soiling: unit.Of(unit.Ratio(dirt)),
			Mismatch: unit.Of(unit.Ratio(unequal)), Wiring: unit.Of(unit.Ratio(wires)), Wind: unit.Of(unit.Speed(wind)), Tilt: unit.Of(unit.Angle(0.5)), Azimuth: unit.Of(unit.Angle(3))}
		if sheet {
			s := sheetFrom(power/18*1.07, 22.4, power/18, 18, 0.0005, -0.0031, 36)
			a.Sheet = &s
		}
		other := plain(power)
		c := Controller{Kind: ControllerKind([]string{"tracking", "pulse_width", "direct"}[kind%3]), Power: unit.Of(unit.Power(rated)), BusVolts: unit.Of(unit.Voltage(line))}
		b, ps := BusPower([]Array{a, other}, c, []Light{light, second}, air)
		if ps != nil {
			return
		}
		sum, lost, arrays := 0.0, 0.0, 0.0
		for h, p := range b.Power {
			if !(p >= 0 && p <= b.Panel[h]*(1+1e-12)) || math.IsInf(p, 0) {
				t.Fatalf("hour %d: %v W of %v W", h, p, b.Panel[h])
			}
			sum += p * 3600
		}
		for _, l := range b.Losses {
			lost += float64(l.Energy)
		}
		for _, y := range b.Arrays {
			arrays += float64(y.Light)
			out := float64(y.Light)
			for _, l := range y.Losses {
				out -= float64(l.Energy)
			}
			near(t, "an array's output", out/float64(b.Light), float64(y.Output)/float64(b.Light), 1e-9)
		}
		near(t, "total", float64(b.Total)/float64(b.Light), sum/float64(b.Light), 1e-9)
		near(t, "ledger", (sum+lost)/float64(b.Light), 1, 1e-9)
		near(t, "arrays", arrays/float64(b.Light), 1, 1e-9)
	})
}

func TestControllerStanding(t *testing.T) {
	near(t, "tracking", float64(Controller{Kind: "tracking"}.Standing()), 0.015*12.8, 1e-12)
	near(t, "own", float64(Controller{Kind: "tracking", Night: unit.Of(unit.Power(0))}.Standing()), 0, 0)
	near(t, "direct", float64(Controller{Kind: "direct"}.Standing()), 0, 0)
}

func benchmark(b *testing.B, c Controller, arrays ...Array) {
	light, air := year(1)
	p, ps := Prepare(arrays, c)
	if ps != nil {
		b.Fatal(ps)
	}
	var lights []Light
	for range arrays {
		lights = append(lights, light)
	}
	power := make([]float64, len(air))
	for b.Loop() {
		p.Fill(lights, air, power)
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(len(air)), "ns/hour")
}

func BenchmarkTracking(b *testing.B) { benchmark(b, Controller{Kind: "tracking"}, plain(300)) }

func BenchmarkPulseWidth(b *testing.B) { benchmark(b, Controller{Kind: "pulse_width"}, plain(300)) }

func BenchmarkPulseWidthWithSheet(b *testing.B) {
	a := plain(100)
	s := sheetFrom(5.96, 22.4, 5.56, 18.0, 0.0005, -0.0031, 36)
	a.Sheet = &s
	benchmark(b, Controller{Kind: "pulse_width"}, a)
}
