package lift

import (
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// MostSpeed is the highest speed of the rotor: the user's own, or where that is not known the speed without load at the label's
// voltage, at which the motor was made to turn (our own judgement). assumed says that it is the latter.
func (m Machine) MostSpeed() (most unit.Known[unit.AngularSpeed], assumed bool) {
	if m.MaxSpeed.Is || !m.SheetVolts.Is || !m.SheetSpeed.Is {
		return m.MaxSpeed, false
	}
	return unit.Of(m.SheetSpeed.Val * unit.AngularSpeed(m.SheetGear.Or(1))), true
}

// tooFast tells a rotor speed that is above the highest one, in words for the end of a sentence.
func (w *work) tooFast(rotor unit.AngularSpeed) (say.Sentence, bool) {
	most, assumed := w.h.Machine.MostSpeed()
	switch {
	case !most.Is || rotor <= most.Val:
		return say.Sentence{}, false
	case assumed:
		return say.That("Its highest speed is not known; we assumed %s, its speed without load at the label's voltage.", say.Turning(most.Val)), true
	}
	return say.That("Its highest speed is %s.", say.Turning(most.Val)), true
}
