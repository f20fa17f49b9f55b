package lift

import (
	"math"
	"testing"

	"duskweight/internal/model/unit"
)

// A rope of 10 mm on a drum of 90 mm, four turns to a layer, two of them staying on: by hand the first layer lies at
// 50 mm and has two turns free, 2·2·π·0.05 = 0.6283 m; the second lies at 50 + 0.87·10 = 58.7 mm by its length and at
// 60 mm by its torque, and has four turns, 1.4753 m. Of 1.5 m of travel the first has 0.41888, the second the rest.
func TestLayersByHand(t *testing.T) {
	ls := layersOf(0.09, 0.01, 1.5, 4, 2)
	if len(ls) != 2 {
		t.Fatalf("%d layers", len(ls))
	}
	for i, want := range []layer{{0.05, 0.05, 0.6 * math.Pi / 1.5 * (0.2 / 0.6)}, {0.06, 0.0587, 1 - 0.2*math.Pi/1.5}} {
		if math.Abs(ls[i].torque-want.torque) > 1e-12 || math.Abs(ls[i].length-want.length) > 1e-12 || math.Abs(ls[i].share-want.share) > 1e-12 {
			t.Errorf("layer %d: %+v, want %+v", i+1, ls[i], want)
		}
	}
	// As much travel as the free turns of the first layer needs no second one.
	if ls := layersOf(0.09, 0.01, unit.Length(0.2*math.Pi), 4, 2); len(ls) != 1 {
		t.Errorf("a full first layer: %d layers", len(ls))
	}
	// Turns that stay on may fill the first layer and half of the second.
	if ls := layersOf(0.09, 0.01, 0.1, 4, 6); len(ls) != 1 || math.Abs(ls[0].torque-0.06) > 1e-12 {
		t.Errorf("six dead turns: %+v", ls)
	}
	// One turn to a layer: the length of n layers is 2π·Σ(0.05 + 0.0087·(j − 1)); 200 layers are the most.
	sum := func(n float64) float64 { return 2 * math.Pi * (0.05*n + 0.0087*n*(n-1)/2) }
	if ls := layersOf(0.09, 0.01, unit.Length(sum(200)), 1, 0); len(ls) != 200 {
		t.Errorf("200 layers: %d", len(ls))
	}
	if ls := layersOf(0.09, 0.01, unit.Length(sum(200)+0.01), 1, 0); ls != nil {
		t.Errorf("more than 200 layers: %d", len(ls))
	}
}

// Where nobody says how many turns stay on, three do (common practice): what comes of it is what three would give.
func TestThreeTurnsAreAssumed(t *testing.T) {
	h := worked()
	h.Drum.DeadWraps = unit.Known[unit.Count]{}
	h.Drum.Width = unit.Of(8 * h.Rope.Diameter.Val) // so narrow that each turn counts
	open := Compute(h)
	// 6 m of rope on a drum of 54 mm under 6 mm: layers of 8 turns, 8·2π·(0.03 + 0.87·0.006·(j − 1)) m each: 1.508, 1.770,
	// 2.033, 2.295. With three turns dead the first gives 0.942, so with the next two 4.745: the fourth is needed.
	if open.Winding.Layers != 4 {
		t.Errorf("%d layers with three turns assumed", open.Winding.Layers)
	}
	// 4.63 m of rope end within the third layer with three dead turns (4.745) and not with four (4.557).
	h.Travel = unit.Of[unit.Length](4.63 / 2)
	if got := Compute(h).Winding.Layers; got != 3 {
		t.Errorf("%d layers for 4.63 m with three turns assumed", got)
	}
	// 4.80 m end within it with two (4.934), not with three.
	h.Travel = unit.Of[unit.Length](4.80 / 2)
	if got := Compute(h).Winding.Layers; got != 4 {
		t.Errorf("%d layers for 4.80 m with three turns assumed", got)
	}
	if !mentionsLack(open, "drum.dead_wraps") {
		t.Error("that it is assumed is not told")
	}
}

func mentionsLack(d Drive, path string) bool {
	for _, m := range d.Missing {
		if m.Path == path {
			return true
		}
	}
	return false
}

// A label that says fewer than 1,000 turns a minute is most likely that of a gearbox, and is asked about; 1,000 are not.
func TestSlowShaftOnEitherSide(t *testing.T) {
	for rpm, want := range map[float64]bool{999: true, 1001: false} {
		h := worked()
		h.Machine.SheetSpeed = unit.Of(unit.AngularSpeed(rpm) * unit.RevPerMinute)
		asked := false
		for _, f := range Compute(h).Flags {
			asked = asked || f.Path == "machine.sheet_gear_ratio"
		}
		if asked != want {
			t.Errorf("%v turns a minute: asked %v", rpm, asked)
		}
		h.Machine.SheetGear = unit.Of[unit.Ratio](1)
		for _, f := range Compute(h).Flags {
			if f.Path == "machine.sheet_gear_ratio" {
				t.Errorf("%v turns a minute of its own shaft, and asked all the same", rpm)
			}
		}
	}
}
