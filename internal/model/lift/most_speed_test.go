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
	if mentions(Compute(h), "own drag takes") {
		t.Error("15 % decide nothing")
	}
	h.Mass[0].Mass = unit.Of(unit.Mass(40))
	if d := Compute(h); !mentions(d, "own drag takes 30 %") {
		t.Errorf("%v", d.Flags)
	}
}
