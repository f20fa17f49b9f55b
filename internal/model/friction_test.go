package model_test

import (
	"math"
	"testing"

	"duskweight/internal/model/load"
	"duskweight/internal/model/unit"
	"duskweight/internal/model/water"
	"pgregory.net/rapid"
)

// The pump that waits and the store of lifted water lose the same height in the same pipe: they stand in two packages that may
// not meet, and the law is one.
func TestOneFrictionForPumpAndStore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		flow := unit.Flow(rapid.Float64Range(1e-6, 0.1).Draw(t, "flow"))
		length, inner := unit.Length(rapid.Float64Range(0.1, 5000).Draw(t, "length")), unit.Length(rapid.Float64Range(0.005, 0.5).Draw(t, "inner"))
		p := load.Pump{Lift: unit.Of[unit.Length](0), PipeLength: unit.Of(length), PipeInner: unit.Of(inner)}
		p.Flow = unit.Of(flow)
		if a, b := float64(p.Head()), float64(water.Friction(flow, length, inner)); math.Abs(a-b) > 1e-12*b {
			t.Fatalf("%g m for the pump, %g for the store", a, b)
		}
	})
}
