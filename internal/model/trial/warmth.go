package trial

import (
	"math"

	"duskweight/internal/say"
)

// Reading is one reading of the motor's temperature: s since the run began, °C, A and V since the reading before.
type Reading struct {
	At, Warm, Air, Current, Voltage float64
}

// Motor is what the heat of a motor follows from: V·s/rad, Ω at 25 °C, A, V, and copper's growth of resistance, 1/K.
type Motor struct{ K, R, I0, Brush, Alpha float64 }

// Warmth is thermal resistance (K/W) and time constant (s) of the motor as one body.
type Warmth struct {
	Rth, Tau Value
	Known    bool
	Lack     []say.Sentence
}

// mostError is the relative standard error beyond which a number counts as not determined.
const mostError = 0.5

// FitWarmth fits R_th and τ to the readings. Between two readings the current is steady, and the excess over the air
// goes as
//
//	θ(t) = θ_∞ + (θ_0 − θ_∞)·e^(−(1−x)t/τ),  θ_∞ = R_th·P_a/(1 − x),  x = α·R_th·I²·R
//
// with P_a = I²·R·(1 + α·(T_a − 25)) + K·I_0·ω. The first reading of a run is taken as it is.
func FitWarmth(m Motor, readings []Reading) Warmth {
	n, hot := 0, false
	var y []float64
	for i, r := range readings {
		if begins(readings, i) {
			continue
		}
		n++
		y = append(y, r.Warm)
		hot = hot || r.Current > 0
	}
	switch {
	case !hot:
		return Warmth{Lack: []say.Sentence{say.Words("Readings of the motor's temperature while it runs are missing: one at minute 0, then some more.")}}
	case n < 3:
		return Warmth{Lack: []say.Sentence{say.That("At least three readings after the first are needed; there are %s.", n)}}
	}
	f := func(b []float64) []float64 { return foretell(m, readings, math.Exp(b[0]), math.Exp(b[1])) }
	best := solution{rss: math.Inf(1)}
	for _, tau := range []float64{30, 200, 1200, 7200} {
		for _, rth := range []float64{0.3, 3} {
			if s := curve(f, y, []float64{math.Log(rth), math.Log(tau)}); s.ok && s.rss < best.rss {
				best = s
			}
		}
	}
	var w Warmth
	if best.ok { // fitted as logarithms, so that both stay above nothing: relative errors
		a, b := best.value(0), best.value(1)
		w.Rth = Value{math.Exp(a.Val), a.Err * math.Exp(a.Val), a.Sure}
		w.Tau = Value{math.Exp(b.Val), b.Err * math.Exp(b.Val), b.Sure}
		w.Known = a.Sure && a.Err < mostError && b.Err < mostError && !math.IsInf(w.Rth.Val, 0) && !math.IsInf(w.Tau.Val, 0)
	}
	if !w.Known {
		return Warmth{Lack: []say.Sentence{say.Words("The readings do not tell how hot it ends from how fast it gets there. Go on until it hardly rises, or write down how it cools.")}}
	}
	return w
}

func begins(readings []Reading, i int) bool { return i == 0 || readings[i].At <= readings[i-1].At }

// foretell gives the temperature at each reading but those that begin a run.
func foretell(m Motor, readings []Reading, rth, tau float64) []float64 {
	var out []float64
	excess := 0.0
	for i, r := range readings {
		if begins(readings, i) {
			excess = r.Warm - r.Air
			continue
		}
		t := r.At - readings[i-1].At
		copper := r.Current * r.Current * m.R
		turning := math.Max(0, r.Voltage-m.Brush-r.Current*m.R) * m.I0 // K·I_0·ω
		if r.Current == 0 {
			turning = 0
		}
		x := m.Alpha * rth * copper
		full := rth * (copper*(1+m.Alpha*(r.Air-25)) + turning)
		y := (1 - x) * t / tau
		grown := t / tau
		if math.Abs(1-x) > 1e-9 {
			grown = -math.Expm1(-y) / (1 - x)
		}
		excess = excess*math.Exp(-y) + full*grown
		out = append(out, r.Air+excess)
	}
	return out
}
