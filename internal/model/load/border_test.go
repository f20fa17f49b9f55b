package load

import (
	"testing"

	"duskweight/internal/model/unit"
)

// What has no name is called by what it is.
func TestCalled(t *testing.T) {
	if called("", "an appliance") != "an appliance" || called("Lamp", "an appliance") != "Lamp" {
		t.Error(called("", "an appliance"), called("Lamp", "an appliance"))
	}
}

// The most that is taken in an hour of the night counts night 0 as any other, and no hour of the day.
func TestMostAtNight(t *testing.T) {
	y := Year{NightOf: []int{0, 3, -1, 3}, Essential: []float64{7, 2, 50, 1}, Nice: []float64{1, 3, 50, 0}}
	if got := y.MostAtNight(); got != 8 {
		t.Errorf("%g W, want 8", got)
	}
}

// A device that waits from 22:00 to 24:00 ends at the clock's hour 0, and keeps what is not known at its usual.
func TestWaitingEndsAtMidnight(t *testing.T) {
	a := Appliance{Name: "Pump", Power: unit.Of[unit.Power](100), Count: unit.Of[unit.Count](2), Supply: SupplyDc, Priority: PriorityNice, Purpose: ForPump,
		Waits: unit.Yes, DayEnergy: unit.Of(unit.Energy(7.2e5)), From: unit.Of(22 * unit.Hour), To: unit.Of(24 * unit.Hour)}
	var y Year
	var out ApplianceYear
	y.addWaiting(Load{}, 0, a, 200, &out)
	if len(y.Waiting) != 1 {
		t.Fatalf("%d wait: %v", len(y.Waiting), y.Missing)
	}
	w := y.Waiting[0]
	if w.From != 22 || w.To != 0 || w.Power != 200 || w.Energy[0] != 1.44e6 || w.Energy[364] != 1.44e6 || w.Essential {
		t.Errorf("from %v to %v, %g W, %g J a day", w.From, w.To, w.Power, w.Energy[0])
	}
}

// Months end after 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334 and 365 days: the last hour before is still of the month, the
// next one is of the next.
func TestMonthsEnd(t *testing.T) {
	for m, days := range []int{31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334, 365} {
		if got := MonthOf(24*days - 1); int(got) != m+1 {
			t.Errorf("the last hour of day %d is of month %v, want %d", days, got, m+1)
		}
		if m < 11 && int(MonthOf(24*days)) != m+2 {
			t.Errorf("the first hour after day %d is of month %v, want %d", days, MonthOf(24*days), m+2)
		}
	}
}
