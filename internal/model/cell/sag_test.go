package cell

import (
	"math"
	"testing"

	"duskweight/internal/model/unit"
)

// A kettle on 12.8 V behind 6.4 mΩ and a metre of 25 mm²: copper at 40 °C has 0.017241·(1 + 0.00393·20) = 0.0185961 Ω·mm²/m,
// there and back 2·0.0185961/25 = 1.48769 mΩ. For 2267.037 W, I = (12.8 − √(163.84 − 4·0.00788769·2267.037))/(2·0.00788769).
func TestKettleSags(t *testing.T) {
	b := Bank{Kind: "lfp", Capacity: unit.Of(unit.Charge(100 * 3600)), Voltage: unit.Of[unit.Voltage](12.8), CableLength: unit.Of[unit.Length](1), CableArea: unit.Of[unit.Area](25e-6)}
	r := b.Resolve()
	ohm := r.Internal() + r.CableOhm()
	within(t, "resistance", float64(ohm), 0.00788769141, 1e-10)
	i, v, ok := Sag(r.Rest(), ohm, 2267.03703704)
	if !ok {
		t.Fatal("the line carries it")
	}
	within(t, "current", float64(i), 202.341953, 1e-5)
	within(t, "voltage", float64(v), 11.2039891, 1e-6)
	within(t, "its power", float64(i)*float64(v), 2267.03703704, 1e-8)
	if _, _, ok := Sag(r.Rest(), ohm, 5193); ok { // 12.8²/(4·0.00788769) = 5192.9 W is the most
		t.Error("more than V²/4R is carried")
	}
	if _, _, ok := Sag(r.Rest(), ohm, 5192); !ok {
		t.Error("less than V²/4R is not carried")
	}
}

// Two in series and three strings of 3 mΩ: 2 mΩ. Typical values: 0.05·12.8/100 = 6.4 mΩ with a board, 0.04·12/100 = 4.8 mΩ
// for lead, whose short circuit is 2500 A.
func TestInternalResistance(t *testing.T) {
	b := Bank{Kind: "flooded_lead", Capacity: unit.Of(unit.Charge(100 * 3600)), Voltage: unit.Of[unit.Voltage](12)}
	within(t, "short circuit", float64(b.Resolve().ShortCircuit()), 2500, 1e-9)
	within(t, "rest", float64(b.Resolve().Rest()), 12.204, 1e-9)
	within(t, "full", float64(b.Resolve().Full()), 14.4, 1e-9)
	b.Series, b.Parallel, b.Internal = unit.Of[unit.Count](2), unit.Of[unit.Count](3), unit.Of[unit.Resistance](0.003)
	within(t, "2 s 3 p", float64(b.Resolve().Internal()), 0.002, 1e-12)
	b.Kind = "lfp"
	b.Series, b.Parallel, b.Voltage = unit.Known[unit.Count]{}, unit.Known[unit.Count]{}, unit.Of[unit.Voltage](51.2)
	within(t, "16 cells full", float64(b.Resolve().Full()), 57.6, 1e-9)
}

func within(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if math.IsNaN(got) || math.Abs(got-want) > tol {
		t.Errorf("%s = %v, want %v within %v", what, got, want, tol)
	}
}
