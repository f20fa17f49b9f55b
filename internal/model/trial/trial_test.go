package trial

import (
	"math"
	"math/rand/v2"
	"testing"
)

func near(t *testing.T, what string, got, want, rel float64) {
	t.Helper()
	if !(math.Abs(got-want) <= rel*math.Abs(want)) {
		t.Errorf("%s = %.12g, want %.12g within %g", what, got, want, rel)
	}
}

// NIST Statistical Reference Datasets, linear regression, Norris (36 readings of ozone monitors, y then x): certified
// values and standard deviations. Double arithmetic gives about 12 digits.
func TestNorris(t *testing.T) {
	data := [][2]float64{{0.1, 0.2}, {338.8, 337.4}, {118.1, 118.2}, {888.0, 884.6}, {9.2, 10.1}, {228.1, 226.5}, {668.5, 666.3}, {998.5, 996.3},
		{449.1, 448.6}, {778.9, 777.0}, {559.2, 558.2}, {0.3, 0.4}, {0.1, 0.6}, {778.1, 775.5}, {668.8, 666.9}, {339.3, 338.0}, {448.9, 447.5}, {10.8, 11.6},
		{557.7, 556.0}, {228.3, 228.1}, {998.0, 995.8}, {888.8, 887.6}, {119.6, 120.2}, {0.3, 0.3}, {0.6, 0.3}, {557.6, 556.8}, {339.3, 339.1}, {888.0, 887.2},
		{998.5, 999.0}, {778.9, 779.0}, {10.2, 11.1}, {117.6, 118.3}, {228.9, 229.2}, {668.4, 669.1}, {449.2, 448.9}, {0.2, 0.5}}
	var rows [][]float64
	var y []float64
	for _, d := range data {
		y, rows = append(y, d[0]), append(rows, []float64{1, d[1]})
	}
	s := linear(rows, y)
	a, b := s.value(0), s.value(1)
	near(t, "B0", a.Val, -0.262323073774029, 1e-10)
	near(t, "B0 error", a.Err, 0.232818234301152, 1e-10)
	near(t, "B1", b.Val, 1.00211681802045, 1e-12)
	near(t, "B1 error", b.Err, 0.429796848199937e-03, 1e-10)
	near(t, "residual", math.Sqrt(s.rss/34), 0.884796396144373, 1e-10)
}

// NIST Statistical Reference Datasets, nonlinear regression, Misra1a: y = b1·(1 − e^(−b2·x)), a body that warms up, from
// the first of its two starts, which lies far away. 14 readings (y, x) with certified values. Slopes by differences
// keep about nine digits.
func TestMisra1a(t *testing.T) {
	data := [][2]float64{{10.07, 77.6}, {14.73, 114.9}, {17.94, 141.1}, {23.93, 190.8}, {29.61, 239.9}, {35.18, 289.0}, {40.02, 332.8}, {44.82, 378.4},
		{50.76, 434.8}, {55.05, 477.3}, {61.01, 536.8}, {66.40, 593.1}, {75.47, 689.1}, {81.78, 760.0}}
	var y []float64
	for _, d := range data {
		y = append(y, d[0])
	}
	s := curve(func(b []float64) []float64 {
		var out []float64
		for _, d := range data {
			out = append(out, b[0]*-math.Expm1(-b[1]*d[1]))
		}
		return out
	}, y, []float64{500, 1e-4})
	if !s.ok {
		t.Fatal("no fit")
	}
	near(t, "b1", s.value(0).Val, 2.3894212918e+02, 1e-7)
	near(t, "b1 error", s.value(0).Err, 2.7070075241, 1e-6)
	near(t, "b2", s.value(1).Val, 5.5015643181e-04, 1e-7)
	near(t, "b2 error", s.value(1).Err, 7.2668688436e-06, 1e-6)
	near(t, "sum of squares", s.rss, 1.2455138894e-01, 1e-8)
}

// Two lifts and one way down without scatter give the three numbers back exactly, by hand: η = 0.8, back 0.7, idle
// 0.02 N·m. x = 0.1 and 0.2 up: 0.145 and 0.27; x = 0.2 down: 0.12.
func TestGearsExact(t *testing.T) {
	g := FitGears([]Torques{{0.1, 0.145}, {0.2, 0.27}}, []Torques{{0.2, 0.12}})
	if !g.Known || !g.KnowUp || !g.KnowBack || g.Up.Sure || len(g.Lack) > 0 || !g.Absurd.IsZero() {
		t.Fatalf("%+v", g)
	}
	near(t, "up", g.Up.Val, 0.8, 1e-12)
	near(t, "back", g.Back.Val, 0.7, 1e-12)
	near(t, "idle", g.Idle.Val, 0.02, 1e-11)
	// One stage, b = 1.5: x·(1 − 1.5·0.3) = 1.5·0.02, x = 0.03/0.55.
	b, ok := g.FirstPush(Value{Val: 0.03 / 0.55}, []float64{1})
	if !ok {
		t.Fatal("no first push")
	}
	near(t, "b", b.Val, 1.5, 1e-9)
}

// What the records do not determine is refused, with the record that is missing; what they do determine is told.
func TestGearsRefuse(t *testing.T) {
	for _, c := range []struct {
		name       string
		up, down   []Torques
		isUp, back bool
		lack       int
	}{
		{"nothing", nil, nil, false, false, 2},
		{"one mass up", []Torques{{0.1, 0.145}, {0.1, 0.146}}, nil, false, false, 2},
		{"one mass each way", []Torques{{0.1, 0.145}}, []Torques{{0.1, 0.05}}, false, false, 2},
		{"two masses up, none down", []Torques{{0.1, 0.145}, {0.2, 0.27}}, nil, true, false, 1},
		{"two masses down, none up", nil, []Torques{{0.1, 0.05}, {0.2, 0.12}}, false, true, 1},
		{"masses almost alike up, none to spare", []Torques{{0.1, 0.145}, {0.11, 0.1575}}, nil, false, false, 2},
		{"masses almost alike up, one to spare", []Torques{{0.1, 0.145}, {0.11, 0.1575}, {0.1, 0.145}}, nil, true, false, 1},
		{"motor alone and one mass", []Torques{{0, 0.02}, {0.2, 0.27}}, nil, true, false, 1},
	} {
		g := FitGears(c.up, c.down)
		if g.KnowUp != c.isUp || g.KnowBack != c.back || len(g.Lack) != c.lack {
			t.Errorf("%s: %+v", c.name, g)
		}
	}
	if g := FitGears([]Torques{{0.1, 0.05}, {0.2, 0.10}}, nil); g.Absurd.IsZero() {
		t.Error("gears that give twice what they get are believed")
	}
}

// Records made from known parameters with a known scatter give them back within their standard errors: in many draws
// the miss over the error has mean square near ν/(ν−2) of Student's t, ν = 7 spare records: 1.4. Of 4000 draws the mean
// of the squares lies within a tenth or so.
func TestGearsWithinErrors(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 8))
	const draws, up, back, idle, scatter = 4000, 0.72, 0.61, 0.015, 0.004
	var sum [3]float64
	for range draws {
		var ups, downs []Torques
		for _, x := range []float64{0, 0.05, 0.1, 0.15, 0.2} {
			ups = append(ups, Torques{x, idle + x/up + scatter*r.NormFloat64()})
			downs = append(downs, Torques{x + 0.1, back*(x+0.1) - idle + scatter*r.NormFloat64()})
		}
		g := FitGears(ups, downs)
		if !g.Up.Sure {
			t.Fatal("no error")
		}
		for i, miss := range []float64{(1/g.Up.Val - 1/up) / (g.Up.Err / g.Up.Val / g.Up.Val), (g.Back.Val - back) / g.Back.Err, (g.Idle.Val - idle) / g.Idle.Err} {
			sum[i] += miss * miss / draws
		}
	}
	for i, s := range sum {
		near(t, []string{"up", "back", "idle"}[i], s, 1.4, 0.12)
	}
}

// A motor of 2.5 K/W and 900 s, warmed by 4 A and left to cool, its equation integrated in small steps: both come back,
// within the error where the readings scatter by half a kelvin.
func TestWarmth(t *testing.T) {
	m := Motor{K: 0.05, R: 0.8, I0: 0.3, Alpha: 0.00393}
	const rth, tau, air, volts = 2.5, 900.0, 18.0, 12.0
	readings := []Reading{{0, air, air, 0, 0}}
	at, theta := 0.0, 0.0
	for i := range 16 {
		amps, u := 4.0, volts
		if i >= 9 {
			amps, u = 0, 0
		}
		for range 24000 { // dθ/dt = (R_th·P(θ) − θ)/τ
			p := 0.0
			if amps > 0 {
				p = amps*amps*m.R*(1+m.Alpha*(air+theta-25)) + m.I0*(u-amps*m.R)
			}
			theta += (rth*p - theta) / tau * 0.01
			at += 0.01
		}
		readings = append(readings, Reading{at, air + theta, air, amps, u})
	}
	w := FitWarmth(m, readings)
	if !w.Known {
		t.Fatalf("%+v", w)
	}
	near(t, "R_th", w.Rth.Val, rth, 1e-4)
	near(t, "tau", w.Tau.Val, tau, 1e-4)
	r := rand.New(rand.NewPCG(1, 9))
	within := 0
	const draws = 60
	for range draws {
		noisy := append([]Reading(nil), readings...)
		for i := 1; i < len(noisy); i++ {
			noisy[i].Warm += 0.5 * r.NormFloat64()
		}
		w := FitWarmth(m, noisy)
		if !w.Known {
			t.Fatal("not known")
		}
		if math.Abs(w.Rth.Val-rth) < 2*w.Rth.Err && math.Abs(w.Tau.Val-tau) < 2*w.Tau.Err {
			within++
		}
	}
	if within < draws*4/5 { // two errors hold 93 of a hundred each (Student, 14 to spare)
		t.Errorf("%d of %d within two errors", within, draws)
	}
	for name, few := range map[string][]Reading{"none": nil, "two": readings[:3], "standing": {{0, 30, 20, 0, 0}, {60, 29, 20, 0, 0}, {120, 28, 20, 0, 0}, {180, 27, 20, 0, 0}}} {
		if w := FitWarmth(m, few); w.Known || len(w.Lack) == 0 {
			t.Errorf("%s: %+v", name, w)
		}
	}
	// Half a minute of a quarter of an hour tells only how fast it rises, with a kelvin's scatter not how hot it ends.
	short := []Reading{{0, 18, 18, 0, 0}, {10, 19.1, 18, 4, 12}, {20, 18.2, 18, 4, 12}, {30, 20, 18, 4, 12}}
	if w := FitWarmth(m, short); w.Known {
		t.Errorf("half a minute is believed: %+v", w)
	}
}
