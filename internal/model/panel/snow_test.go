package panel

import (
	"testing"

	"duskweight/internal/model/unit"
)

// Three tenths of the light of January under snow are three tenths of the power of its bright hours, by a controller that loses
// nothing and by one that holds the panels at the line; what goes to snow, to dirt and to the rest is the light again. Beside dust
// by the day both take their share.
func TestSnowTakesItsShare(t *testing.T) {
	const hours = 8760
	plane, air := make([]float64, hours), make([]float64, hours)
	for h := range plane {
		if k := h % 24; k > 7 && k < 17 {
			plane[h] = 100
		}
	}
	snow := [12]float64{0.3}
	free, under := []Light{{Plane: plane, Cells: plane}}, []Light{{Plane: plane, Cells: plane, Snow: &snow}}
	for _, kind := range []ControllerKind{ControllerTracking, ControllerPulseWidth} {
		for _, dust := range []unit.Known[unit.Ratio]{{}, unit.Of[unit.Ratio](0.001)} {
			a := Array{Count: unit.Of[unit.Count](1), Power: unit.Of[unit.Power](100), Tilt: unit.Of[unit.Angle](0), Azimuth: unit.Of[unit.Angle](0), Dust: dust}
			year := func(l []Light) *Bus {
				b, ps := BusPower([]Array{a}, Controller{Kind: kind, Curve: []Efficiency{{0, 1}, {1, 1}}}, l, air)
				if len(ps) > 0 {
					t.Fatal(ps)
				}
				return b
			}
			without, with := year(free), year(under)
			nearly(t, "a noon in January", with.Panel[12], 0.7*without.Panel[12], 1e-9)
			nearly(t, "a noon in February", with.Panel[35*24+12], without.Panel[35*24+12], 0)
			sum, taken := with.Total, unit.Energy(0)
			for _, l := range with.Losses {
				sum += l.Energy
				if l.Name == LossSnow {
					taken = l.Energy
				}
			}
			nearly(t, "light", float64(sum), float64(with.Light), 1e-3)
			if taken <= 0 || len(with.Losses) != len(without.Losses)+1 {
				t.Errorf("%s: snow takes %v", kind, taken)
			}
		}
	}
}
