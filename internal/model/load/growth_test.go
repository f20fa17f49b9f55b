package load

import (
	"math"
	"testing"

	"duskweight/internal/model/unit"
)

// 5 % a year for 10 years is 1.05^10 = 1.628894627 times as much for what is switched on, here through an inverter whose losses
// are not straight; what uses power all the time stays, and so does what may be on together.
func TestGrowth(t *testing.T) {
	down, noon := make([]bool, HoursInYear), make([]unit.Duration, DaysInYear)
	l := Load{
		Appliances: []Appliance{
			{Name: "lamp", Power: unit.Of[unit.Power](10), Count: unit.Of[unit.Count](2), From: unit.Of(18 * unit.Hour), To: unit.Of(22 * unit.Hour), Supply: SupplyDc, Priority: PriorityEssential},
			{Name: "fridge", Power: unit.Of[unit.Power](60), Count: unit.Of[unit.Count](1), From: unit.Of(0 * unit.Hour), To: unit.Of(0 * unit.Hour), Measured: unit.Of(unit.Energy(480 * 3600)), Supply: SupplyDc, Priority: PriorityNice},
		},
		Standing: []Standing{{Name: "clock", Power: unit.Of[unit.Power](1)}},
	}
	was := Hours(l, down, noon)
	l.Growth, l.GrowthYears = unit.Of[unit.Ratio](0.05), unit.Of[unit.Count](10)
	is := Hours(l, down, noon)
	const f = 1.628894627
	if was.ApplianceYear <= 0 || math.Abs(float64(is.ApplianceYear/was.ApplianceYear)-f) > 1e-9 {
		t.Errorf("%v, was %v: want %g times as much", is.ApplianceYear, was.ApplianceYear, f)
	}
	if is.Standing[0] != 1 || len(is.Peaks) != len(was.Peaks) || is.Peaks[0].Run() != was.Peaks[0].Run() {
		t.Errorf("standing %v W, %v together, was %v", is.Standing[0], is.Peaks[0], was.Peaks[0])
	}
	if l.Appliances[0].Power.Val != 10 {
		t.Error("the load itself was changed")
	}

	// Years without a growth, or a growth without years, is today's load.
	for _, half := range []Load{{GrowthYears: l.GrowthYears}, {Growth: l.Growth}} {
		if half.Grows() != 1 {
			t.Errorf("%+v grows to %g", half, half.Grows())
		}
	}
	l.Growth = unit.Of[unit.Ratio](-0.1)
	if got := l.Grows(); math.Abs(got-0.3486784401) > 1e-10 { // 0.9^10
		t.Errorf("0.9^10 = %g", got)
	}
}
