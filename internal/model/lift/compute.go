package lift

import (
	"fmt"
	"math"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// work is a hoist on its way to an answer: the known inputs as plain numbers in the symbols of the equations.
type work struct {
	h Hoist
	d *Drive

	m, travel float64
	n, k      int
	fUp, fDown,
	bearing float64
	haveRope bool

	layers    []layer
	gears     []gear
	run, push chain
	b         float64
	haveTrain bool

	kk, r, i0, j, vb float64
	haveMachine      bool
	mostJ            unit.Known[unit.Inertia] // for the way past the upper stop; j is 0 where it is not known

	up, down passage
	roots    []root // lowering: where the loads take the current, by layer
	stuck    int    // lowering: the stage that lets nothing through, −1 for none
}

// Compute works the drive of a hoist out as far as its known inputs allow. It never fails: what cannot be told is not
// known, Missing says for want of what, Flags says what is wrong in words.
func Compute(h Hoist) Drive { return *compute(h).d }

func compute(h Hoist) *work {
	d := &Drive{}
	w := &work{h: h, d: d, bearing: float64(h.Drum.Friction.Or(0))}
	w.rope()
	w.winding()
	w.train()
	w.constants()
	if w.haveMass() && w.travel > 0 {
		d.RaiseEnergyMech = told[unit.Energy](w.m * unit.G * w.travel)
	}
	if len(w.layers) > 0 && w.haveTrain && w.n > 0 {
		d.RotorPerMetre = told[unit.Ratio](w.gearing(w.fullest()))
	}
	if d.DrumTorqueUp.Is && w.haveTrain {
		w.stages()
	}
	if d.AtMotorUp.Is && d.AtMotorDown.Is && d.RotorPerMetre.Is && w.haveMachine && w.travel > 0 {
		w.raise()
		w.lower()
		w.letGo()
		w.stop()
		w.heats()
	}
	w.reduce()
	return w
}

func (w *work) haveMass() bool { return w.d.Mass.Is }

// gearing is c = N·n/r, the rotor's angle for a metre of travel in a layer.
func (w *work) gearing(l layer) float64 { return w.run.ratio() * float64(w.n) / l.length }

// lack notes an input that is not known, once.
func (w *work) lack(path, wants string) {
	for _, m := range w.d.Missing {
		if m.Path == path {
			return
		}
	}
	w.d.Missing = append(w.d.Missing, Missing{path, wants})
}

// caution says what does not stop the hoist from hanging, in the words and values of say.That.
func (w *work) caution(path, words string, values ...any) {
	w.d.Flags = append(w.d.Flags, Flag{Path: path, Say: say.That(words, values...)})
}

// bad says why it must not hang, in the words and values of say.That.
func (w *work) bad(path, words string, values ...any) {
	w.d.Flags = append(w.d.Flags, Flag{Path: path, Say: say.That(words, values...), Bad: true})
}

// flags says something about one of a list.
func (w *work) flags(list string, i int, what say.Sentence, bad bool) {
	w.d.Flags = append(w.d.Flags, Flag{Path: fmt.Sprintf("%s[%d]", list, i), Say: what, Bad: bad})
}

// beyond is said where the arithmetic leaves the numbers.
const beyond = "These numbers are too large or too small to compute with."

func finite(xs ...float64) bool {
	for _, x := range xs {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return false
		}
	}
	return true
}

// told is a known value, or not known where the arithmetic left the numbers.
func told[T ~float64](x float64) unit.Known[T] {
	if !finite(x) {
		return unit.Known[T]{}
	}
	return unit.Of(T(x))
}
