package cost

import (
	"testing"

	"duskweight/internal/model/unit"
)

// Bars by hand, 12 years without interest. Battery 100, between 80 and 130, replaced after 5 years, between 4 and 6: at 5 and 10,
// with 3 of 5 years left, 300 − 60 = 240; low at 6, 160; high at 4 and 8, 390. A frame of 50 whose ends are not known: 50 each.
func TestBarsByHand(t *testing.T) {
	battery := part("battery", 100, 0)
	battery.Cells, battery.As = unit.Yes, AsBattery
	battery.Low, battery.High = unit.Of[unit.Money](80), unit.Of[unit.Money](130)
	years := func(y float64) unit.Known[unit.Duration] { return unit.Of(unit.Duration(y * yearSeconds)) }
	in := Input{Parts: []Part{battery, part("frame", 50, 0)}, Terms: terms(12, 0, 0), Batteries: []Lifetime{{Low: years(4), Usual: years(5), High: years(6)}}}
	out := Reckon(in)
	near(t, "whole", float64(out.Whole.Val), 240+50)
	near(t, "low", float64(out.Low.Whole.Val), 160+50)
	near(t, "high", float64(out.High.Whole.Val), 390+50)
	near(t, "capital, low", float64(out.Low.Capital.Val), 130)
	near(t, "capital, high", float64(out.High.Capital.Val), 180)
	near(t, "the store, high", float64(out.High.NPV.Val), 440)
	near(t, "present", float64(Present(in).Val), 290)
	if in.Parts[0].Price.Val != 100 || in.Batteries[0].Usual != years(5) {
		t.Errorf("the bill was changed: %+v", in)
	}

	// The ends of a price do not make one, and lives whose ends are not known have no width.
	in.Parts[0].Price = unit.Known[unit.Money]{}
	if out = Reckon(in); out.Whole.Is || out.Low.Whole.Is || out.High.Whole.Is {
		t.Errorf("without a price: %+v", out)
	}
	in.Parts[0] = part("battery", 100, 0)
	in.Parts[0].Cells, in.Parts[0].As = unit.Yes, AsBattery
	in.Batteries = []Lifetime{{Usual: years(5)}}
	if out = Reckon(in); out.Low.Whole != out.Whole || out.High.Whole != out.Whole {
		t.Errorf("no ends are known: %v to %v", out.Low.Whole, out.High.Whole)
	}
}

// What belongs to panels and lamps counts in the whole.
func TestWholeIsOfAllParts(t *testing.T) {
	panel, lamp := part("panel", 60, 0), part("lamp", 7, 0)
	panel.Of, lamp.Of = OfPanel, OfLoad
	out := Reckon(Input{Parts: []Part{panel, lamp, part("rope", 20, 5)}, Terms: terms(10, 0, 3)})
	near(t, "whole", float64(out.Whole.Val), 60+7+40+30)
	near(t, "the store", float64(out.NPV.Val), 40+30)
}
