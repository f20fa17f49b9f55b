package model_test

import (
	"slices"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
)

// hubRow is the typical wheel hub of the catalog.
func hubRow(t *testing.T) catalog.Motor {
	t.Helper()
	for _, m := range catalog.Motors() {
		if strings.Contains(m.Name, "wheel hub") {
			return m
		}
	}
	t.Fatal("no wheel hub")
	return catalog.Motor{}
}

// stuck is what the judge says about whether the worked example comes down by itself with that motor behind one stage, and the
// torque that reaches the motor on the way down.
func stuck(t *testing.T, change func(h *lift.Hoist) model.Origins) (*reason.Reason, float64) {
	t.Helper()
	doc := catalog.Sample()
	v := doc.Variants[2]
	h := v.Stores[0].Hoist
	h.Machine = lift.Machine{}
	h.Train.Stages = []lift.Stage{{Kind: lift.StageBox, Efficiency: unit.Of[unit.Ratio](1), IdleTorque: unit.Of[unit.Torque](0)}}
	h.Train.Breakaway = unit.Of[unit.Ratio](1)
	v.Origins = change(h)
	r := model.Prepare(doc.Project).Evaluate(v)
	torque := float64(model.HoistOf(r.Stores[0]).Drive.AtMotorDown.Or(0))
	if i := slices.IndexFunc(r.Because, func(b reason.Reason) bool { return b.ID == "stays_up" }); i >= 0 {
		return &r.Because[i], torque
	}
	return nil, torque
}

// The row of a wheel hub is the middle of what hubs are: 0.9 V·s/rad and 0.7 A, so its iron drags with 0.63 N·m; the drag of a
// hub is 0.3 to 1 N·m. Where less than 0.3 N·m reach the motor no hub comes down, where more than 1 do each does, and between
// them it is not known, on either side of the row's own drag, with what to measure. A hub of the builder's own is one hub.
func TestWheelHubIsTriedAtBothEnds(t *testing.T) {
	row := hubRow(t)
	plan := func(ratio float64, own bool) (*reason.Reason, float64) {
		return stuck(t, func(h *lift.Hoist) model.Origins {
			origins := model.Origins{}
			for _, path := range row.Take(&h.Machine).Copied {
				if !own {
					origins["stores[0].hoist."+path] = model.Origin{Kind: model.OriginTypical}
				}
			}
			h.Train.Stages[0].Ratio = unit.Of(unit.Ratio(ratio))
			return origins
		})
	}
	_, torque := plan(10, true)
	if torque < 0.1 {
		t.Fatalf("%g N·m reach the motor", torque)
	}
	for _, c := range []struct {
		reaches float64 // the motor, N·m
		word    reason.Word
		own     reason.Word
	}{{0.27, reason.No, reason.No}, {0.35, reason.NotKnown, reason.No}, {0.58, reason.NotKnown, reason.No}, {0.68, reason.NotKnown, ""}, {0.95, reason.NotKnown, ""}, {1.05, "", ""}} {
		ratio := 10 * torque / c.reaches
		if b, _ := plan(ratio, true); reasonWord(b) != c.own {
			t.Errorf("%g N·m, the builder's own hub: %v, want %q", c.reaches, b, c.own)
		}
		b, _ := plan(ratio, false)
		if reasonWord(b) != c.word {
			t.Errorf("%g N·m, a usual hub: %v, want %q", c.reaches, b, c.word)
		}
		if c.word == reason.NotKnown && (b == nil || !strings.Contains(b.Mend.String(), "Wheel hubs differ")) {
			t.Errorf("%g N·m: what decides is not named: %v", c.reaches, b)
		}
	}
}

// A hub that needs 0.75 N·m for each ampere that its supply gives with the shaft held lifts with 0.9 V·s/rad, at 0.83 of that
// current and its drag, and stalls with 0.6: not known. Of the builder's own it lifts; for half the torque every hub does.
func TestWheelHubMayStall(t *testing.T) {
	row := hubRow(t)
	plan := func(share float64, own bool) *reason.Reason {
		doc := catalog.Sample()
		v := doc.Variants[2]
		h := v.Stores[0].Hoist
		h.Machine, v.Origins = lift.Machine{}, model.Origins{}
		for _, path := range row.Take(&h.Machine).Copied {
			if !own {
				v.Origins["stores[0].hoist."+path] = model.Origin{Kind: model.OriginTypical}
			}
		}
		h.Train.Stages = []lift.Stage{{Kind: lift.StageBox, Ratio: unit.Of[unit.Ratio](10), Efficiency: unit.Of[unit.Ratio](1), IdleTorque: unit.Of[unit.Torque](0)}}
		h.Raise.WireR, h.Raise.CurrentLimit = unit.Of[unit.Resistance](0), unit.Known[unit.Current]{}
		g := model.Prepare(doc.Project)
		torque := float64(model.HoistOf(g.Evaluate(v).Stores[0]).Drive.AtMotorUp.Val)
		amps := 1000.0 // with the shaft held; beside it the drag of 0.3 to 1.7 A is small
		h.Train.Stages[0].Ratio.Val = unit.Ratio(10 * torque / (share * amps))
		h.Raise.Voltage = unit.Of(unit.Voltage(amps * float64(row.R)))
		r := g.Evaluate(v)
		if i := slices.IndexFunc(r.Because, func(b reason.Reason) bool {
			return b.ID == "lift_stalls" && b.Path == "stores[0].hoist.raise.voltage_v"
		}); i >= 0 {
			return &r.Because[i]
		}
		return nil
	}
	for _, c := range []struct {
		share     float64
		word, own reason.Word
	}{{0.5, "", ""}, {0.75, reason.NotKnown, ""}, {1.1, reason.NotKnown, reason.No}, {1.5, reason.No, reason.No}} {
		if b := plan(c.share, true); reasonWord(b) != c.own {
			t.Errorf("%g N·m an ampere, the builder's own hub: %v, want %q", c.share, b, c.own)
		}
		if b := plan(c.share, false); reasonWord(b) != c.word || c.word == reason.NotKnown && !strings.Contains(b.Mend.String(), "Wheel hubs differ") {
			t.Errorf("%g N·m an ampere, a usual hub: %v, want %q", c.share, b, c.word)
		}
	}
}

// A small motor of 0.011 V·s/rad and a usual 0.2 A without load drags with 2.2 mN·m, 1.54 to 2.86 where that is 30 % off: what
// reaches it between the two leaves open whether it comes down, and the reason says that the drag decides.
func TestUsualDragDecides(t *testing.T) {
	plan := func(ratio float64, usual bool) (*reason.Reason, float64) {
		return stuck(t, func(h *lift.Hoist) model.Origins {
			h.Machine.K, h.Machine.R, h.Machine.I0 = unit.Of[unit.MachineConstant](0.011), unit.Of[unit.Resistance](2.2), unit.Of[unit.Current](0.2)
			h.Train.Stages[0].Ratio = unit.Of(unit.Ratio(ratio))
			if !usual {
				return nil
			}
			return model.Origins{"stores[0].hoist.machine.i0_a": {Kind: model.OriginTypical}}
		})
	}
	_, torque := plan(1000, false)
	for _, c := range []struct {
		reaches float64 // mN·m
		word    reason.Word
		own     reason.Word
	}{{1.4, reason.No, reason.No}, {1.7, reason.NotKnown, reason.No}, {2.5, reason.NotKnown, ""}, {3.1, "", ""}} {
		ratio := 1000 * torque / c.reaches * 1e3
		if b, _ := plan(ratio, false); reasonWord(b) != c.own {
			t.Errorf("%g mN·m, measured: %v, want %q", c.reaches, b, c.own)
		}
		b, _ := plan(ratio, true)
		if reasonWord(b) != c.word || c.word == reason.NotKnown && !strings.Contains(b.Mend.String(), "without load is a usual value, and that value decides") {
			t.Errorf("%g mN·m, a usual drag: %v, want %q", c.reaches, b, c.word)
		}
	}
}

func reasonWord(b *reason.Reason) reason.Word {
	if b == nil {
		return ""
	}
	return b.Word
}

// A usual mass counts as a guess, whatever stands there of a scale: it may be a quarter more, not a fiftieth. A container for a
// tenth more than the plan hangs then decides.
func TestUsualMassIsAGuess(t *testing.T) {
	doc := catalog.Sample()
	v := doc.Variants[2]
	h := v.Stores[0].Hoist
	for i := range h.Mass {
		h.Mass[i].Weighed = lift.ByScale
	}
	g := model.Prepare(doc.Project)
	sure := model.HoistOf(g.Evaluate(v).Stores[0])
	h.Container.Rating = unit.Of(unit.Force(1.1 * 9.80665 * float64(sure.Drive.Mass.Val))) // strong enough for 2 % more, not for 25 %
	has := func() bool {
		r := g.Evaluate(v)
		return slices.ContainsFunc(r.Because, func(b reason.Reason) bool { return b.ID == "mass_guess" })
	}
	if has() {
		t.Fatal("a mass on a scale counts as a guess")
	}
	v.Origins = model.Origins{"stores[0].hoist.mass[0].mass_kg": {Kind: model.OriginTypical}}
	if !has() {
		t.Error("a usual mass counts as one that was on a scale")
	}
}
