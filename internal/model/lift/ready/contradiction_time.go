package ready

import (
	"fmt"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// What no brake and no catch does (our own judgement): set in less than a hundredth of a second, lock within less than a
// millimetre, slow a turning drum with much more than it holds.
const (
	soonest  unit.Duration = 0.01
	shortest unit.Length   = 0.001
	grips                  = 1.3
)

// instant are brakes and catches that would act at once: nothing does, and a fall worked out with it is too short.
func instant(h lift.Hoist) []reason.Reason {
	var out []reason.Reason
	add := func(path, beside string, text, mend say.Sentence) {
		out = append(out, reason.Reason{ID: "contradiction", Word: reason.NotKnown, Path: path, Beside: beside, Clears: reason.Answer, Say: text, Mend: mend, Source: source.Judgement.Whole()})
	}
	measure := say.That("Measure it, or use the figure of its maker.")
	if t := h.Holds.BrakeDelay; t.Is && t.Val < soonest {
		add("holds.brake_delay_s", "", say.That("No brake sets in less than %s.", say.Time(soonest)), measure)
	}
	for i, x := range h.Holds.Holds {
		at := func(field string) string { return fmt.Sprintf("holds.holds[%d].%s", i, field) }
		if x.ActsIn.Is && x.ActsIn.Val < soonest {
			add(at("acts_in_s"), "", say.That("No brake or catch acts in less than %s.", say.Time(soonest)), measure)
		}
		if x.EngagesIn.Is && x.EngagesIn.Val < shortest {
			add(at("engages_in_m"), "", say.That("No catch locks within less than %s.", say.Of(unit.SmallLengths, float64(shortest))), measure)
		}
		if x.Stopping.Is && x.Torque.Is && float64(x.Stopping.Val) > grips*float64(x.Torque.Val) {
			add(at("stopping_torque_nm"), at("torque_nm"), say.That("Two answers contradict each other: a brake that holds %s, and slows a turning drum with %s.", say.Torque(x.Torque.Val), say.Torque(x.Stopping.Val)), measure)
		}
	}
	return out
}
