package lift

import (
	"fmt"
	"math"

	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// usualBreakaway is the first push over the running loss where no test says better: 1.3 fresh, 1.5 usual, 2 cold,
// printed or loaded overnight (source.FromMemory).
const usualBreakaway = 1.5

// usualPressure is the normal pressure angle of a worm where the design gives none.
const usualPressure = 20 * unit.Degree

// mostInOneStage is the ratio that one stage of teeth hardly passes (common practice): more is a whole gearbox.
const mostInOneStage = 12

// gear is one stage of the design, worked out.
type gear struct {
	run, push pair
	inner     float64 // forward efficiency of one of the stages inside: it decides the class
	class     Back
	source    source.Ref
}

// train works every stage out and chains them. One that lacks a number leaves the train not known.
func (w *work) train() {
	t := w.h.Train
	w.b = float64(t.Breakaway.Or(usualBreakaway))
	if len(t.Stages) == 0 {
		w.lack("train.stages", "what the motor feels; a drum straight on the motor is one stage of ratio 1 and efficiency 1")
		return
	}
	all := true
	for i, s := range t.Stages {
		g, ok := w.gear(i, s)
		if all = all && ok; !all {
			continue
		}
		w.gears = append(w.gears, g)
		w.run, w.push = append(w.run, g.run), append(w.push, g.push)
	}
	if !all {
		w.gears, w.run, w.push = nil, nil, nil
		return
	}
	w.d.Ratio = told[unit.Ratio](w.run.ratio())
	w.d.Forward = told[unit.Ratio](w.run.forward())
	w.d.Backward = told[unit.Ratio](w.run.backward())
	w.haveTrain = w.d.Ratio.Is && w.d.Backward.Is && w.d.Forward.Is
	if w.d.Ratio.Val > 1000 {
		w.caution("train.stages", "%s:1 is a great deal. A train like that hardly ever comes down by itself.", say.Times(w.d.Ratio.Val))
	}
}

// gear works one stage out.
func (w *work) gear(i int, s Stage) (gear, bool) {
	at := func(field string) string { return fmt.Sprintf("train.stages[%d].%s", i, field) }
	ratio, okR := w.ratioOf(s, at)
	fwd, back, ref, okE := w.efficiencyOf(s, ratio, okR, at)
	if !okR || !okE {
		return gear{}, false
	}
	if fwd <= 0 || ratio <= 0 {
		w.flags("train.stages", i, say.That("This stage cannot drive at all: it would need an endless torque."), true)
		return gear{}, false
	}
	return w.boxed(s, ratio, fwd, back, w.idleOf(s, at), ref, at), true
}

// boxed takes a whole gearbox apart into the equal stages inside it, η^(1/s) each, for its efficiency back and its
// first push, and puts it together again.
func (w *work) boxed(s Stage, ratio, fwd float64, back unit.Known[unit.Ratio], idle float64, ref source.Ref, at func(string) string) gear {
	inside := 1.0
	outright := s.Efficiency.Is
	if v, ok := s.InStages.Value(); ok && outright && v > 1 {
		inside = float64(v)
	} else if outright && !ok && (s.Kind == StageBox || ratio > mostInOneStage && (s.Kind == StagePlanetary || s.Kind == StageSpur)) {
		w.caution(at("stages_inside"), "It is not known how many stages are inside this gearbox. It is counted as one stage: the careful reading for coming down.")
	}
	one := math.Pow(fwd, 1/inside)
	oneBack := float64(BackwardOf(unit.Ratio(one)))
	if back.Is {
		oneBack = rooted(float64(back.Val), inside)
	}
	b := unit.Ratio(w.b)
	oneBackBA := float64(BreakawayBackward(unit.Ratio(oneBack), b))
	oneFwdBA := float64(BreakawayForward(unit.Ratio(one), b))
	g := gear{
		run:    pair{ratio, fwd, powered(oneBack, inside), idle},
		push:   pair{ratio, math.Pow(oneFwdBA, inside), powered(oneBackBA, inside), idle * w.b},
		inner:  one,
		class:  Class(unit.Ratio(one)),
		source: ref,
	}
	if g.class == Locks && s.Backward.Is && oneBack > 0 {
		g.class = Uncertain // it was seen to run back, whatever the class says
	}
	return g
}

// powered is x^s where every stage inside runs back, or x itself, which says that none does.
func powered(x, s float64) float64 {
	if x <= 0 {
		return x
	}
	return math.Pow(x, s)
}

func rooted(x, s float64) float64 {
	if x <= 0 {
		return x
	}
	return math.Pow(x, 1/s)
}

// ratioOf returns the stage's ratio, outright or from the teeth.
func (w *work) ratioOf(s Stage, at func(string) string) (float64, bool) {
	var teeth float64
	if s.Kind == StagePlanetary {
		teeth = w.teeth(s, at)
	}
	if r, ok := s.Ratio.Value(); ok {
		if teeth > 0 && math.Abs(float64(r)/teeth-1) > 0.01 {
			w.caution(at("ratio"), "The ratio %s does not belong to these teeth, which make %s. The ratio is used.", say.Times(r).To(4), say.Times(unit.Ratio(teeth)).To(4))
		}
		return float64(r), true
	}
	if teeth > 0 {
		return teeth, true
	}
	w.lack(at("ratio"), "what the motor feels")
	return 0, false
}

// teeth returns the ratio that the teeth of a planetary stage make, 0 when not known, and says when they do not fit.
func (w *work) teeth(s Stage, at func(string) string) float64 {
	sun, okS := s.SunTeeth.Value()
	planet, okP := s.PlanetTeeth.Value()
	ring, okR := s.RingTeeth.Value()
	if !okS || !(okP || okR) {
		return 0
	}
	if !okR {
		ring = sun + 2*planet
	}
	for _, fault := range PlanetaryFaults(sun, planet, ring, s.Planets.Or(0)) {
		w.caution(at("ring_teeth"), "These teeth cannot be put together. %s", fault)
	}
	return float64(PlanetaryRatio(sun, ring))
}

// efficiencyOf returns forward and backward efficiency, outright or from what the kind of stage gives. A backward
// efficiency that is not known is left to the law of equal loss torque.
func (w *work) efficiencyOf(s Stage, ratio float64, okRatio bool, at func(string) string) (fwd float64, back unit.Known[unit.Ratio], ref source.Ref, ok bool) {
	ref = source.Derivation.At("equal loss torque at the stage's output, both ways")
	f, own, from, have := s.computed(ratio, okRatio)
	switch {
	case s.Efficiency.Is:
		if have && math.Abs(float64(s.Efficiency.Val)-f) > 0.05 {
			w.caution(at("efficiency"), "The efficiency given is %s, what it is made of gives %s. The one given is used.", say.Share(s.Efficiency.Val), say.Share(unit.Ratio(f)))
		}
		f = float64(s.Efficiency.Val)
	case have:
		ref, back = from, own
	default:
		w.lack(at("efficiency"), "what the motor feels, up and down")
		return 0, back, ref, false
	}
	if s.Backward.Is {
		back = s.Backward
		if float64(back.Val) > f {
			w.caution(at("backward_efficiency"), "A stage hardly ever runs better backward than forward. Check the two numbers.")
		}
	}
	return f, back, ref, true
}

// computed returns the efficiencies that follow from teeth and mesh, or from lead angle and friction.
func (s Stage) computed(ratio float64, okRatio bool) (float64, unit.Known[unit.Ratio], source.Ref, bool) {
	switch s.Kind {
	case StagePlanetary:
		mesh, ok := s.MeshEff.Value()
		if !ok || !okRatio || ratio <= 1 {
			break
		}
		i0 := unit.Ratio(ratio - 1)
		return float64(PlanetaryForward(mesh, i0)), unit.Of(PlanetaryBackward(mesh, i0)), source.VDI2157.Whole(), true
	case StageWorm:
		lead, okL := s.LeadAngle.Value()
		mu, okM := s.Friction.Value()
		if !okL || !okM {
			break
		}
		phi := s.PressureAngle.Or(usualPressure)
		return float64(WormForward(lead, mu, phi)), unit.Of(WormBackward(lead, mu, phi)), source.Shigley.At("eq. 13–46"), true
	}
	return 0, unit.Known[unit.Ratio]{}, source.Ref{}, false
}

// idleOf returns the torque that turns the stage empty. With a no-load current that was measured with the gears on, it
// is in that current already.
func (w *work) idleOf(s Stage, at func(string) string) float64 {
	if w.h.Machine.I0WithGear == unit.Yes {
		return 0
	}
	t, ok := s.IdleTorque.Value()
	if !ok {
		w.caution(at("idle_torque_nm"), "The idle torque is not known: the real hoist needs more to lift, and gives less coming down.")
	}
	return float64(t)
}

// stages fills what every stage sees, in the fullest layer.
func (w *work) stages() {
	l := w.fullest()
	up, inUp := w.run.up(w.drumUp(l.torque))
	down, inDown, _ := w.run.down(w.drumDown(l.torque))
	outUp, outDown := w.drumUp(l.torque), w.drumDown(l.torque)
	results := make([]StageResult, len(w.gears))
	for i := len(w.gears) - 1; i >= 0; i-- {
		g := w.gears[i]
		results[i] = StageResult{
			Ratio: unit.Ratio(g.run.r), Forward: unit.Ratio(g.run.fwd), Backward: unit.Ratio(g.run.back),
			BreakawayForward: unit.Ratio(g.push.fwd), BreakawayBackward: unit.Ratio(g.push.back),
			Class: g.class, Inner: unit.Ratio(g.inner), Source: g.source,
			OutUp: unit.Torque(outUp), InUp: unit.Torque(inUp[i]), OutDown: unit.Torque(outDown), InDown: unit.Torque(inDown[i]),
		}
		outUp, outDown = inUp[i], inDown[i]
	}
	w.d.AtMotorUp, w.d.AtMotorDown = told[unit.Torque](up), told[unit.Torque](down)
	if w.d.AtMotorUp.Is && w.d.AtMotorDown.Is {
		w.d.Stages = results
	}
}
