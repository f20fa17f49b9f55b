package webtest

import (
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model/unit"
)

// ExampleAnswers are the three answers of the guide's worked example.
func ExampleAnswers(t *testing.T) catalog.Answers {
	t.Helper()
	place, ok := catalog.Climate("Brest")
	if !ok {
		t.Fatal("the climate of the example is gone")
	}
	return catalog.Answers{Name: "Boat shed", Place: place, HeavyName: "Old iron weights", Mass: 60, Height: 3, Lamps: 2, LampPower: 3, Hours: 4 * unit.Hour, Seed: 1}
}
