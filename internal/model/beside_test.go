package model_test

import (
	"math"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
)

// The battery for a night is offered beside a variant that has none: the night's energy over 12.8 V at 80 % of depth. One that
// has a battery, for the electronics alone or for the night, is offered none.
func TestBatteryBeside(t *testing.T) {
	doc := catalog.Sample()
	g := model.Prepare(doc.Project)
	v := doc.Variants[2]
	var hoist []model.Store
	for _, s := range v.Stores {
		if s.Kind() == model.HoistKind() {
			hoist = append(hoist, s)
		}
	}
	v.Stores = hoist
	f := g.Evaluate(v).Facts
	night := float64(f.NightAppliances.Val + f.NightStanding.Val)
	if q, ok := f.BatteryBeside(); !ok || night <= 0 || math.Abs(float64(q)*12.8*0.8/night-1) > 1e-9 {
		t.Errorf("a lifted mass alone: %v, %v, a night of %g J", q, ok, night)
	}
	for _, v := range []model.Variant{doc.Variants[1], doc.Variants[2]} {
		if q, ok := g.Evaluate(v).Facts.BatteryBeside(); ok {
			t.Errorf("%s: %v is offered beside the battery that is there", v.Name, q)
		}
	}
}
