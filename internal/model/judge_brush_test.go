package model_test

import (
	"strings"
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
)

// A motor whose sheet leaves the drop at the brushes open is judged with none and with 0.14 of the label's volts. Its rating
// stands between the currents of both: not known, and what would tell it is named. With a drop that the builder gives it is
// one or the other. evaluate prints both ends.
func TestBrushDropDecides(t *testing.T) {
	var low, high unit.Current
	plan := func(drop unit.Known[unit.Voltage], rated unit.Current) (*model.HoistResult, *reason.Reason) {
		r, h := mended(t, func(h *lift.Hoist) {
			m := &h.Machine
			d := lift.Compute(*h).Machine
			volts := 24.0
			stall := volts / float64(d.R.Val)
			m.SheetVolts, m.SheetStall = unit.Of(unit.Voltage(volts)), unit.Of(unit.Current(stall))
			m.SheetSpeed = unit.Of(unit.AngularSpeed((volts - float64(d.I0.Val)*float64(d.R.Val)) / float64(d.K.Val)))
			m.K, m.R, m.BrushDrop = unit.Known[unit.MachineConstant]{}, unit.Known[unit.Resistance]{}, drop
			m.RthWinding = unit.Known[unit.ThermalResistance]{} // with thermal values the rating alone forbids nothing
			m.SheetGear, m.SheetTorque = unit.Of(unit.Ratio(1)), unit.Known[unit.Torque]{}
			if rated > 0 {
				m.MaxCurrent = unit.Of(rated)
			}
		})
		for _, b := range r.Because {
			if b.ID == "load_rating" && strings.Contains(b.Say.String(), "Lifting needs") {
				return h, &b
			}
		}
		return h, nil
	}
	h, _ := plan(unit.Known[unit.Voltage]{}, 0)
	if h.Brush == nil {
		t.Fatal("the drop is no range")
	}
	low, high = h.Brush.Low.Raising.Current, h.Brush.High.Raising.Current
	if low != h.Drive.Raising.Current || high < 1.1*low || high > 1.2*low { // K falls by 0.14, and the current without load stays
		t.Fatalf("%v to %v, evaluated for %v", low, high, h.Drive.Raising.Current)
	}
	rated := (low*1.03 + high) / 2 // the heaviest takes up to 1.02 times
	for _, c := range []struct {
		drop unit.Known[unit.Voltage]
		word reason.Word
	}{{unit.Known[unit.Voltage]{}, reason.NotKnown}, {unit.Of(unit.Voltage(0)), ""}, {unit.Of(unit.Voltage(0.14 * 24)), reason.No}} {
		_, b := plan(c.drop, rated)
		switch {
		case b == nil && c.word != "", b != nil && b.Word != c.word:
			t.Errorf("drop %v: %+v, want %q", c.drop, b, c.word)
		case c.word == reason.NotKnown && !strings.Contains(b.Mend.String(), "torque with the shaft held"):
			t.Errorf("what tells it is not named: %s", b.Mend)
		}
	}
}
