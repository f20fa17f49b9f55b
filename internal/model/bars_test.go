package model

import (
	"testing"

	"duskweight/internal/model/unit"
)

// By hand: 12 Ah × 12.8 V × 0.8 = 122.88 Wh = 442 368 J. A night of 221 184 J is half of that, so two nights; a night of
// ten times that battery is past the scale, which ends at four of them.
func TestBars(t *testing.T) {
	b := Facts{NightAppliances: unit.Of[unit.Energy](221184), OneLiftOut: unit.Of[unit.Energy](720)}.Bars()
	within(t, "the battery, J", float64(b.Battery), 442368, 1e-12)
	within(t, "nights", float64(b.Nights.Val), 2, 1e-12)
	within(t, "the scale, J", float64(b.Top), 442368, 1e-12)
	within(t, "the battery for it, C", float64(batteryFor(b.Battery)), 12*3600, 1e-12)
	within(t, "ten lifts, J", float64(b.Gives(10).Val), 7200, 1e-12)
	b = Facts{NightAppliances: unit.Of[unit.Energy](4423680)}.Bars()
	if b.Gives(10).Is {
		t.Error("ten lifts of a lift that is not known are known")
	}
	within(t, "the scale of a long night, J", float64(b.Top), 4*442368, 1e-12)
	b = Facts{NightAppliances: unit.Of[unit.Energy](0)}.Bars()
	if b.Nights.Is || !b.Night.Is || b.Lift.Is {
		t.Errorf("%+v: no night takes no battery, and no lift is known", b)
	}
	if b = (Facts{}).Bars(); b.Night.Is || b.Top != b.Battery {
		t.Errorf("nothing known: %+v", b)
	}
}
