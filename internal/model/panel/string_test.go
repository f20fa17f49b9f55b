package panel

import (
	"math"
	"testing"

	"duskweight/internal/model/unit"
)

func nearly(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if math.IsNaN(got) || math.Abs(got-want) > tol {
		t.Errorf("%s = %v, want %v within %v", what, got, want, tol)
	}
}

// Three panels of 41 V, −0.27 % a kelvin, at −25 °C: 3·41·(1 + 0.0027·50) = 139.605 V of 150; four make 1.2409 of it.
func TestStringInTheCold(t *testing.T) {
	a := Array{Sheet: &Sheet{Voc: unit.Of[unit.Voltage](41), Beta: unit.Of[unit.PerKelvin](-0.0027)}}
	nearly(t, "three", float64(a.OpenCold(3, -25)), 139.605, 1e-9)
	nearly(t, "four of 150", float64(a.OpenCold(4, -25))/150, 1.24093333, 1e-8)
}

// Twenty panels of 22.5 V at −10.3 °C: with −0.3 % a kelvin 497.65 V, by the table 450·1.16 = 522 V. Colder than the table
// counts as 1.25; one panel without a sheet as 50 V.
func TestStringByTheTable(t *testing.T) {
	a := Array{Sheet: &Sheet{Voc: unit.Of[unit.Voltage](22.5), Beta: unit.Of[unit.PerKelvin](-0.003)}}
	nearly(t, "coefficient", float64(a.OpenCold(20, -10.3)), 497.655, 1e-9)
	a.Sheet.Beta = unit.Known[unit.PerKelvin]{}
	nearly(t, "table", float64(a.OpenCold(20, -10.3)), 522, 1e-9)
	nearly(t, "to −10", float64(a.OpenCold(20, -10)), 513, 1e-9)
	nearly(t, "arctic", float64(a.OpenCold(20, -70)), 562.5, 1e-9)
	nearly(t, "no sheet", float64(Array{}.OpenCold(1, 25)), 50, 1e-9)
}

// One panel of 17.6 V, −0.35 % a kelvin, with cells of 70 °C: 17.6·(1 − 0.0035·45) = 14.828 V.
func TestStringInTheHeat(t *testing.T) {
	a := Array{Sheet: &Sheet{Vmp: unit.Of[unit.Voltage](17.6), Beta: unit.Of[unit.PerKelvin](-0.0035)}}
	v, ok := a.BestHot(1)
	nearly(t, "hot", float64(v), 14.828, 1e-9)
	if !ok {
		t.Error("not known")
	}
	a.Sheet.Beta = unit.Known[unit.PerKelvin]{}
	v, _ = a.BestHot(1)
	nearly(t, "no coefficient", float64(v), 17.6*(1-0.0042*45), 1e-9)
}

// Ten metres of 4 mm² with 8.3 A: 2·10·8.3·0.0185961e-6/4e-6 = 0.77174 V, 4.385 % of 17.6 V.
func TestPanelCableDrop(t *testing.T) {
	a := Array{Count: unit.Of[unit.Count](1), CableLen: unit.Of[unit.Length](10), CableArea: unit.Of[unit.Area](4e-6), Sheet: &Sheet{
		Isc: unit.Of[unit.Current](9), Voc: unit.Of[unit.Voltage](22), Imp: unit.Of[unit.Current](8.3), Vmp: unit.Of[unit.Voltage](17.6)}}
	v, share, ok := a.CableDrop()
	if !ok {
		t.Fatal("not known")
	}
	nearly(t, "volts", float64(v), 0.771739918, 1e-9)
	nearly(t, "share", share, 0.043848859, 1e-9)
}

// A known cable loses share·ΣP²/(P_r·ΣP) of a year, not the usual 2 % of every hour; with half the cross-section twice as much.
// Checked on two hours of 1 and 0.5 of the rated power at 25 °C: Σ P²/(P_r ΣP) = 1.25/1.5.
func TestPanelCableOverTheYear(t *testing.T) {
	zero := unit.Of[unit.Ratio](0)
	a := Array{Count: unit.Of[unit.Count](1), Power: unit.Of[unit.Power](146.08), Tilt: unit.Of[unit.Angle](0), Azimuth: unit.Of[unit.Angle](0),
		Gamma: unit.Of[unit.PerKelvin](0), Soiling: zero, Mismatch: zero, CableLen: unit.Of[unit.Length](10), CableArea: unit.Of[unit.Area](4e-6),
		Sheet: &Sheet{Isc: unit.Of[unit.Current](9), Voc: unit.Of[unit.Voltage](22), Imp: unit.Of[unit.Current](8.3), Vmp: unit.Of[unit.Voltage](17.6)}}
	c := Controller{Kind: "tracking"}
	light := []Light{{Plane: []float64{1000, 500}, Cells: []float64{1000, 500}}}
	bus, ps := BusPower([]Array{a}, c, light, []float64{25, 25})
	if len(ps) > 0 {
		t.Fatal(ps)
	}
	lost := 0.0
	for _, l := range bus.Losses {
		if l.Name == LossWires {
			lost = float64(l.Energy)
		}
	}
	nearly(t, "lost share", lost/(1.5*146.08*3600), 0.043848859*1.25/1.5, 1e-9)
	nearly(t, "what is left", bus.Panel[0], 146.08*(1-0.043848859), 1e-6)
}

// Panels of 400 W on a line of 12.8 V whose controller gives at most 10 A: 128 W reach the line, 272 W are clipped. Without a
// limit 31.25 A flow and none is named.
func TestMostCurrentClips(t *testing.T) {
	a := Array{Count: unit.Of[unit.Count](4), Power: unit.Of[unit.Power](100), Tilt: unit.Of[unit.Angle](0), Azimuth: unit.Of[unit.Angle](0)}
	c := Controller{Kind: "tracking"}
	i, limited := Charge([]Array{a}, c, 12.8)
	nearly(t, "no limit", float64(i), 31.25, 1e-9)
	if limited {
		t.Error("a limit is named")
	}
	c.MaxCharge = unit.Of[unit.Current](10)
	i, limited = Charge([]Array{a}, c, 12.8)
	nearly(t, "limit", float64(i), 10, 0)
	if !limited {
		t.Error("no limit is named")
	}
	nearly(t, "clipped", float64(Clipped([]Array{a}, c).Val), 272, 1e-9)
	for _, kind := range []string{"tracking", "pulse_width"} {
		c.Kind = ControllerKind(kind)
		bus, ps := BusPower([]Array{a}, c, []Light{{Plane: []float64{1000}, Cells: []float64{1000}}}, []float64{0})
		if len(ps) > 0 {
			t.Fatal(ps)
		}
		nearly(t, kind, bus.Power[0], 128, 1e-9)
	}
}
