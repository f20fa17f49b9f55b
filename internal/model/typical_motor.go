package model

import (
	"math"
	"reflect"

	"duskweight/internal/model/lift"
)

// gaveWay are the typical values of a motor that count no more, by their paths inside the hoist.
type gaveWay struct {
	label []string // the label tells them
	size  []string // they are those of a motor of another size
}

// sameSize is how many times a typical value may be off what the label tells: beyond it the row is that of another motor
// (our own judgement).
const sameSize = 1.5

// otherSize reports whether a typical K, R or both are more than sameSize off the label's own numbers: V/ω of the shaft
// without load, V/I with the shaft held, and the torque with the shaft held, K·(I − I_0).
func otherSize(m lift.Machine, typical func(path string) bool) bool {
	apart := func(a, b float64) bool {
		return a > 0 && b > 0 && math.Max(a/b, b/a) > sameSize
	}
	k, r := m.K.Is && typical("machine.k_vs_rad"), m.R.Is && typical("machine.r_ohm")
	volts := float64(m.SheetVolts.Val)
	speed := float64(m.SheetSpeed.Val) * float64(m.SheetGear.Or(1))
	stall := float64(m.SheetStall.Val)
	switch {
	case k && m.SheetVolts.Is && m.SheetSpeed.Is && apart(float64(m.K.Val), volts/speed):
		return true
	case r && m.SheetVolts.Is && m.SheetStall.Is && apart(float64(m.R.Val), volts/stall):
		return true
	case k && m.SheetStall.Is && m.SheetTorque.Is && m.SheetGear.Or(1) <= 1:
		return apart(float64(m.K.Val)*(stall-float64(m.I0.Or(0))), float64(m.SheetTorque.Val))
	}
	return false
}

// dropTypical empties the typical numbers of a motor and returns their paths inside the hoist.
func dropTypical(m *lift.Machine, typical func(path string) bool) (gone []string) {
	v := reflect.ValueOf(m).Elem()
	for i := range v.NumField() {
		path := Join("machine", Key(v.Type().Field(i)))
		if IsKnown(v.Field(i).Type()) && !v.Field(i).IsZero() && typical(path) {
			v.Field(i).SetZero()
			gone = append(gone, path)
		}
	}
	return gone
}
