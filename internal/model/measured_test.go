package model_test

import (
	"math"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// triedHoist is 80 kg over 3 m in two parts behind one pulley, one stage 100:1, a small 12 V machine.
func triedHoist(forward, back, idle, b float64) lift.Hoist {
	var h lift.Hoist
	h.Mass = []lift.Piece{{Name: "sand", Mass: unit.Of[unit.Mass](80)}}
	h.Travel = unit.Of[unit.Length](3)
	h.Rope.Diameter = unit.Of[unit.Length](0.006)
	h.Reeving.RopeParts, h.Reeving.LeadSheaves = unit.Of[unit.Count](2), unit.Of[unit.Count](1)
	h.Reeving.Efficiency = unit.Of[unit.Ratio](0.96)
	h.Drum.Diameter, h.Drum.Width = unit.Of[unit.Length](0.054), unit.Of[unit.Length](0.6)
	h.Drum.DeadWraps, h.Drum.Flange = unit.Of[unit.Count](3), unit.Of[unit.Length](0.12)
	h.Train.Stages = []lift.Stage{{Kind: "box", Ratio: unit.Of[unit.Ratio](100), Efficiency: unit.Of(unit.Ratio(forward)), Backward: unit.Of(unit.Ratio(back)),
		InStages: unit.Of[unit.Count](1), IdleTorque: unit.Of(unit.Torque(idle))}}
	h.Train.Breakaway = unit.Of(unit.Ratio(b))
	h.Machine.K, h.Machine.R = unit.Of[unit.MachineConstant](0.0327), unit.Of[unit.Resistance](0.3459)
	h.Machine.I0, h.Machine.J = unit.Of[unit.Current](0.3364), unit.Of[unit.Inertia](2.1e-5)
	h.Raise = lift.Raise{Feed: "relay", Voltage: unit.Of[unit.Voltage](12)}
	h.Lower.Loads = []lift.DCLoad{{Kind: "cell", Name: "lamps", Threshold: unit.Of[unit.Voltage](9), Slope: unit.Of[unit.Resistance](0)}}
	return h
}

// tried records what a hoist of known numbers does with some masses, and the smallest masses that come down, found by
// halving on the drive itself.
func tried(real lift.Hoist, masses ...float64) lift.Trials {
	var t lift.Trials
	with := func(m float64) lift.Drive {
		h := real
		h.Mass = []lift.Piece{{Mass: unit.Of(unit.Mass(m))}}
		return lift.Compute(h)
	}
	for _, m := range masses {
		d := with(m)
		t.Raises = append(t.Raises, lift.RaiseTrial{Mass: unit.Of(unit.Mass(m)), Travel: real.Travel, Voltage: real.Raise.Voltage, Current: unit.Of(d.Raising.Current), Time: unit.Of(d.Raising.Time)})
		t.Lowers = append(t.Lowers, lift.LowerTrial{Mass: unit.Of(unit.Mass(m)), Travel: real.Travel, Voltage: unit.Of(d.Lowering.Voltage), Current: unit.Of(d.Lowering.Current), Time: unit.Of(d.Lowering.Time)})
	}
	least := func(moves func(lift.Lowering) bool) float64 {
		lo, hi := 0.1, 200.0
		for range 60 {
			if mid := (lo + hi) / 2; moves(with(mid).Lowering) {
				hi = mid
			} else {
				lo = mid
			}
		}
		return hi
	}
	t.Least.Push = unit.Of(unit.Mass(least(func(l lift.Lowering) bool { return l.RunsBack != "no" })))
	t.Least.Alone = unit.Of(unit.Mass(least(func(l lift.Lowering) bool { return l.BreakawayCurrent > 0 })))
	return t
}

// A hoist that was planned with other gears than it has: its records give the real ones back, and the plan with the
// measured values foretells every record.
func TestMeasuredGivesTheRealHoistBack(t *testing.T) {
	const forward, back, idle, b = 0.68, 0.55, 0.004, 1.7
	real := triedHoist(forward, back, idle, b)
	plan := triedHoist(0.8, 0.75, 0, 1.5)
	plan.Trials = tried(real, 50, 65, 80)
	m := model.MeasuredOf(plan)
	near := func(what string, got, want float64) {
		t.Helper()
		if !(math.Abs(got/want-1) < 1e-6) {
			t.Errorf("%s: %.9g, want %.9g", what, got, want)
		}
	}
	near("up", m.Gears.Up.Val, forward)
	near("back", m.Gears.Back.Val, back)
	near("idle", m.Gears.Idle.Val, idle+0.0327*0.3364)
	if !m.KnowPush {
		t.Fatalf("first push not known: %v", m.Lack)
	}
	near("first push", m.FirstPush.Val, b)
	s := m.Design.Train.Stages[0]
	near("stage up", float64(s.Efficiency.Val), forward)
	near("stage back", float64(s.Backward.Val), back)
	near("stage idle", float64(s.IdleTorque.Val), idle)
	if float64(plan.Train.Stages[0].Efficiency.Val) != 0.8 {
		t.Error("the plan itself was changed")
	}
	again := model.MeasuredOf(m.Design)
	if len(again.Runs) != 6 {
		t.Fatalf("%d runs", len(again.Runs))
	}
	for _, r := range again.Runs {
		near("current foretold", float64(r.PlanCurrent.Val), float64(r.Current.Val))
		near("time foretold", float64(r.PlanTime.Val), float64(r.Time.Val))
	}
}

// What was measured of a train with two stages stands at the first, where it is one torque at the motor: what the plan
// has at the second goes.
func TestMeasuredIdleIsCountedOnce(t *testing.T) {
	two := func(idle, later float64) lift.Hoist {
		h := triedHoist(0.8, 0.7, idle, 1.5)
		h.Train.Stages[0].Ratio = unit.Of[unit.Ratio](25)
		second := h.Train.Stages[0]
		second.Ratio, second.IdleTorque = unit.Of[unit.Ratio](4), unit.Of(unit.Torque(later))
		h.Train.Stages = append(h.Train.Stages, second)
		return h
	}
	plan := two(0.002, 0.05)
	plan.Trials = tried(two(0.005, 0), 50, 65, 80)
	m := model.MeasuredOf(plan)
	at := 0.0327*0.3364 + 0.005 // N·m at the motor: its own friction and the first stage
	if !(math.Abs(m.Gears.Idle.Val/at-1) < 1e-6) {
		t.Fatalf("idle %v N·m, want %v", m.Gears.Idle.Val, at)
	}
	first, second := m.Design.Train.Stages[0].IdleTorque, m.Design.Train.Stages[1].IdleTorque
	if !(math.Abs(float64(first.Val)/0.005-1) < 1e-6) || !second.Is || second.Val != 0 {
		t.Errorf("taken as %v and %v, want 0.005 and 0 N·m", first, second)
	}
}

// On a drum with many layers the smallest masses are tried close to the ground, on the first one: b and the gears come
// back all the same, from any plan.
func TestMeasuredOnManyLayers(t *testing.T) {
	const forward, back, idle, b = 0.68, 0.62, 0.004, 1.4
	narrow := func(h lift.Hoist) lift.Hoist {
		h.Drum.Width, h.Drum.Friction = unit.Of[unit.Length](0.024), unit.Of[unit.Torque](0.3)
		return h
	}
	real, plan := narrow(triedHoist(forward, back, idle, b)), narrow(triedHoist(0.8, 0.75, 0, 1.5))
	if n := lift.Compute(real).Winding.Layers; n < 5 {
		t.Fatalf("%d layers", n)
	}
	plan.Trials = tried(real, 50, 65, 80)
	m := model.MeasuredOf(plan)
	for what, v := range map[string][2]float64{"up": {m.Gears.Up.Val, forward}, "back": {m.Gears.Back.Val, back}, "idle": {m.Gears.Idle.Val, idle + 0.0327*0.3364}, "first push": {m.FirstPush.Val, b}} {
		if !(math.Abs(v[0]/v[1]-1) < 1e-6) {
			t.Errorf("%s: %.9g, want %.9g", what, v[0], v[1])
		}
	}
}

// Records of a hoist that is as planned leave the plan as it is, stage by stage, where its stages lose differently up
// and down; a second time they change nothing more.
func TestMeasuredAsPlanned(t *testing.T) {
	plan := triedHoist(0.68, 0.62, 0.004, 1.4)
	first := plan.Train.Stages[0]
	first.Ratio, first.Efficiency, first.Backward = unit.Of[unit.Ratio](10), unit.Of[unit.Ratio](0.95), unit.Of[unit.Ratio](0.90)
	second := first
	second.IdleTorque, second.Efficiency, second.Backward = unit.Of[unit.Torque](0), unit.Of[unit.Ratio](0.75), unit.Of[unit.Ratio](0.70)
	plan.Train.Stages = []lift.Stage{first, second}
	plan.Trials = tried(plan, 50, 65, 80)
	once := model.MeasuredOf(plan)
	for name, m := range map[string]model.Measured{"once": once, "twice": model.MeasuredOf(once.Design)} {
		got := m.Design.Train
		for i, s := range plan.Train.Stages {
			for what, v := range map[string][2]unit.Ratio{"up": {got.Stages[i].Efficiency.Val, s.Efficiency.Val}, "back": {got.Stages[i].Backward.Val, s.Backward.Val}, "first push": {got.Breakaway.Val, 1.4}} {
				if !(math.Abs(float64(v[0]/v[1])-1) < 1e-6) {
					t.Errorf("%s, stage %d %s: %.9g, want %.9g", name, i+1, what, v[0], v[1])
				}
			}
		}
	}
}

// The measured variant is a new one with every value marked; without records there is none. A fall in its records stays with
// it.
func TestAsMeasured(t *testing.T) {
	plan := triedHoist(0.8, 0.75, 0, 1.5)
	v := model.Variant{Name: "Sand", Stores: []model.Store{{Hoist: &plan}}}
	if _, ok := model.AsMeasured(v, 0); ok {
		t.Error("a variant without records is measured")
	}
	plan.Trials = tried(triedHoist(0.68, 0.55, 0.004, 1.7), 50, 80)
	plan.Trials.Failures = []lift.Failure{{What: "pin", Shock: "yes", Look: lift.Look{Rope: "sound"}}}
	out, ok := model.AsMeasured(v, 0)
	if !ok || out.Name == v.Name || len(v.Origins) > 0 || out.Origins["stores[0].hoist.train.stages[0].efficiency"].Kind != "measured" {
		t.Fatalf("%v %q %v", ok, out.Name, out.Origins)
	}
	doc := catalog.Sample()
	doc.Variants = append(doc.Variants, out)
	if r := model.Evaluate(doc, ""); r.Variants[len(doc.Variants)-1].Ready == "yes" {
		t.Error("ready after a fall that nobody looked at")
	}
}
