package lift

import (
	"testing"

	"duskweight/internal/model/unit"
)

// Where nobody gives the highest speed, that without load at the label's voltage stands for it, behind its gearbox times the
// ratio, and the words say that it is assumed; half a label tells nothing, and the user's own number goes first.
func TestMostSpeed(t *testing.T) {
	label := Machine{SheetVolts: unit.Of(unit.Voltage(24)), SheetSpeed: unit.Of(unit.AngularSpeed(50)), SheetGear: unit.Of(unit.Ratio(6))}
	half, own := label, label
	half.SheetVolts = unit.Known[unit.Voltage]{}
	own.MaxSpeed = unit.Of(unit.AngularSpeed(400))
	for _, c := range []struct {
		m       Machine
		most    unit.Known[unit.AngularSpeed]
		assumed bool
	}{{label, unit.Of(unit.AngularSpeed(300)), true}, {half, unit.Known[unit.AngularSpeed]{}, false}, {own, unit.Of(unit.AngularSpeed(400)), false}} {
		if most, assumed := c.m.MostSpeed(); most != c.most || assumed != c.assumed {
			t.Errorf("%v, assumed %v; want %v, %v", most, assumed, c.most, c.assumed)
		}
	}
	h := worked()
	h.Machine.SheetVolts, h.Machine.SheetSpeed = unit.Of(unit.Voltage(12)), unit.Of(unit.AngularSpeed(290)) // it comes down at 295.5 rad/s
	if d := Compute(h); !mentions(d, "we assumed") || !mentions(d, "Coming down turns the motor") {
		t.Errorf("%v", d.Flags)
	}
	h.Machine.SheetSpeed = unit.Of(unit.AngularSpeed(362)) // as its sheet says
	if d := Compute(h); mentions(d, "Coming down turns the motor") {
		t.Errorf("%v", d.Flags)
	}
}

// A light mass that hardly outweighs the motor's own drag: that is said, and how to know it. The worked hoist takes
// 0.0327·0.3364/0.0738 = 15 % for it; at half the mass twice that.
func TestDragDecides(t *testing.T) {
	h := worked()
	if mentions(Compute(h), "own drag uses") {
		t.Error("15 % decide nothing")
	}
	h.Mass[0].Mass = unit.Of(unit.Mass(40))
	if d := Compute(h); !mentions(d, "own drag uses 30 %") {
		t.Errorf("%v", d.Flags)
	}
}

// A label behind a gearbox of 50 : 1 that is not in the train: K of the rotor alone stalls, and whether it lifts is not known.
// With the gearbox as the first stage it lifts, and nothing is missing any more, within a twentieth of the ratio.
func TestLabelGearIsNoStall(t *testing.T) {
	h := worked()
	h.Machine.K, h.Machine.R = unit.Known[unit.MachineConstant]{}, unit.Known[unit.Resistance]{}
	h.Machine.SheetVolts, h.Machine.SheetStall = unit.Of(unit.Voltage(12)), unit.Of(unit.Current(12/0.3459))
	h.Machine.SheetSpeed, h.Machine.SheetGear = unit.Of(unit.AngularSpeed(362.0/50)), unit.Of(unit.Ratio(50))
	h.Train.Stages[0].Ratio = unit.Of(unit.Ratio(4))
	d := Compute(h)
	if ra := d.Raising; !ra.Gearless || !ra.Stalls || d.WhyNot != NotEnough || !mentions(d, "not in the train") || mentions(d, "It would lift with") {
		t.Errorf("%+v, %s", ra, d.WhyNot)
	}
	for _, c := range []struct {
		ratio   float64
		missing bool
	}{{50, false}, {52, false}, {53, true}, {47, true}} {
		g := h
		g.Train.Stages = append([]Stage{{Kind: StageBox, Ratio: unit.Of(unit.Ratio(c.ratio)), Efficiency: unit.Of(unit.Ratio(0.8))}}, h.Train.Stages...)
		d := Compute(g)
		if ratio, missing := LabelGear(g, d.Stages); missing != c.missing || missing && ratio != 50 || d.Raising.Stalls || d.Raising.Gearless {
			t.Errorf("box of %g: missing %v, %+v", c.ratio, missing, d.Raising)
		}
	}
}

// A label of the motor's own shaft, 1 : 1, misses no gearbox in front of stages of 4 : 1; one of 1.5 : 1 does.
func TestLabelOfTheMotorsOwnShaft(t *testing.T) {
	h := worked()
	h.Train.Stages[0].Ratio = unit.Of(unit.Ratio(4))
	for _, c := range []struct {
		label   float64
		missing bool
	}{{1, false}, {1.5, true}, {4, false}} {
		h.Machine.SheetGear = unit.Of(unit.Ratio(c.label))
		if ratio, missing := LabelGear(h, nil); missing != c.missing || missing && float64(ratio) != c.label {
			t.Errorf("label of %g : 1: %g, missing %v", c.label, float64(ratio), missing)
		}
	}
	h.Machine.SheetGear = unit.Known[unit.Ratio]{}
	if _, missing := LabelGear(h, nil); missing {
		t.Error("no gearbox on the label, and it is missed")
	}
}
