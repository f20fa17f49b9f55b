package load

import (
	"duskweight/internal/model/pipe"
	"duskweight/internal/model/unit"
)

// known reports whether everything is known that the energy of a day follows from.
func (p Pump) known() bool {
	return p.Daily.Is && p.Lift.Is && p.PipeLength.Is && p.PipeInner.Is && p.Flow.Is && p.Efficiency.Is
}

// Head is the height, m, against which the pump works: the lift, and what the flow loses along a plastic pipe.
func (p Pump) Head() unit.Length {
	return p.Lift.Val + pipe.Friction(p.Flow.Val, p.PipeLength.Val, p.PipeInner.Val)
}

// Energy is what the water of a day costs at the pump, J: E = ρ·g·V·h/η; not known while anything of it is not.
func (p Pump) Energy() unit.Known[unit.Energy] {
	if !p.known() {
		return unit.Known[unit.Energy]{}
	}
	return unit.Of(unit.Energy(float64(pipe.Density) * unit.G * float64(p.Daily.Val) * float64(p.Head()) / float64(p.Efficiency.Val)))
}

// Power is what the pump uses while it runs, W: P = ρ·g·Q·h/η; not known while anything of it is not.
func (p Pump) Power() unit.Known[unit.Power] {
	if !p.known() {
		return unit.Known[unit.Power]{}
	}
	return unit.Of(unit.Power(float64(pipe.Density) * unit.G * float64(p.Flow.Val) * float64(p.Head()) / float64(p.Efficiency.Val)))
}
