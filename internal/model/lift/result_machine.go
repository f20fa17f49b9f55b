package lift

import (
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Constants are the machine's, from whichever of its inputs decide.
type Constants struct {
	K              unit.Known[unit.MachineConstant]
	R              unit.Known[unit.Resistance]
	I0             unit.Known[unit.Current]
	J              unit.Known[unit.Inertia]
	BrushDrop      unit.Voltage
	BrushLow       unit.Known[unit.Voltage] // with BrushHigh: the ends of it where only a range is known
	BrushHigh      unit.Known[unit.Voltage]
	From           ConstantFrom // "yours", "sheet", "bench"
	Contradictions []say.Sentence
	Found          []Found // what each set of inputs gives by itself
}

// Found is one constant as one set of inputs gives it.
type Found struct {
	What  string       // "current without load" (A), "resistance" (Ω), "machine constant" (V·s/rad)
	From  ConstantFrom // "yours", "sheet", "bench"
	Value float64
	Used  bool
}

// ConstantFrom is where a constant of the machine comes from.
type ConstantFrom string

// The words of ConstantFrom.
const (
	FromYours ConstantFrom = "yours"
	FromSheet ConstantFrom = "sheet"
	FromBench ConstantFrom = "bench"
)
