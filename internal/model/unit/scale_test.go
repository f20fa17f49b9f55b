package unit

import (
	"math"
	"testing"
)

// One in SI, by hand from the definitions of the units: 1 N·m = 1/(0.45359237·9.80665·0.0254/16) = 141.6119 ozf·in,
// 1/0.45359237 = 2.204623 lb, 60/0.3048 = 196.8504 ft/min, 30/π = 9.549297 rpm, 0 °C = 32 °F and 1 K = 1.8 °F.
func TestScale(t *testing.T) {
	for _, c := range []struct {
		q         Quantity
		sys       System
		zero, per float64
	}{
		{SmallTorques, Metric, 0, 1000}, {SmallTorques, Imperial, 0, 141.6119}, {Torques, Imperial, 0, 0.7375621}, {Masses, Imperial, 0, 2.204623},
		{SlowSpeeds, Imperial, 0, 196.8504}, {RotationSpeeds, Metric, 0, 9.549297}, {Temperatures, Metric, 0, 1}, {Temperatures, Imperial, 32, 1.8}, {Percents, Metric, 0, 100},
	} {
		s := c.q.Scale(c.sys)
		if math.Abs(s.Zero-c.zero) > 1e-12 || math.Abs(s.Per-c.per) > 1e-6*c.per || s.Of(2) != s.Zero+2*s.Per {
			t.Errorf("%s in %s: %v", c.q.Noun(), c.q.Symbol(c.sys), s)
		}
	}
}

// The scale of every quantity gives the number that is printed, before pounds are made whole.
func TestScalePrints(t *testing.T) {
	for name, q := range everything {
		for _, sys := range []System{Metric, Imperial} {
			if q.dim.write != nil {
				continue // a time of day is no number
			}
			for _, si := range []float64{0, 1, 12.345, 987.6} {
				if got, want := Rounded(q.Scale(sys).Of(si), 9), q.Fine().NumberTo(si, sys, 9, Nearest); got != want {
					t.Errorf("%s: %v is drawn at %s and printed as %s", name, si, got, want)
				}
			}
		}
	}
}

// A constant of a table that cannot be read is not zero: it stops the program.
func TestConstant(t *testing.T) {
	if si, known := Lengths.Constant("12 mm"); si != 0.012 || !known {
		t.Error(si, known)
	}
	if _, known := Lengths.Constant(""); known {
		t.Error("nothing is known")
	}
	defer func() {
		if recover() == nil {
			t.Error("12 kg are a length")
		}
	}()
	Lengths.Constant("12 kg")
}
