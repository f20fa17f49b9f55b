package ready

import (
	"duskweight/internal/model/reason"
	"duskweight/internal/model/source"
	"duskweight/internal/say"
)

// motorHot is one run from cold that passes the highest winding temperature.
func motorHot(c Case) []reason.Reason {
	up, down := c.Drive.HeatUp, c.Drive.HeatDown
	if !(up.Known && up.TooHot) && !(down.Known && down.TooHot) {
		return nil
	}
	return []reason.Reason{{ID: "motor_hot", Word: reason.No, Path: "machine.max_winding_c", Clears: reason.Change,
		Say:    say.That("One run from cold already makes the motor too hot. A burnt winding lets the mass go."),
		Mend:   say.That("Use more gear ratio, less mass, or a larger motor."),
		Source: source.FromMemory.At("IEC 60034-1")}}
}

// motorMixed are numbers of one motor that do not fit each other.
func motorMixed(c Case) []reason.Reason {
	if len(c.Drive.Machine.Contradictions) == 0 {
		return nil
	}
	return []reason.Reason{{ID: "motor_mixed", Word: reason.NotKnown, Path: "machine", Clears: reason.Answer,
		Say:    say.That("The motor's numbers contradict each other: which of them are right is not known."),
		Mend:   say.That("Use numbers that all come from one label, or measure them on the bench."),
		Source: source.Judgement.Whole()}}
}
