package load

import (
	"math"

	"duskweight/internal/model/unit"
)

// water is the density of water at 20 °C, kg/m³.
const water = 998.2

// known reports whether everything is known that the energy of a day follows from.
func (p Pump) known() bool {
	return p.Daily.Is && p.Lift.Is && p.PipeLength.Is && p.PipeInner.Is && p.Flow.Is && p.Efficiency.Is
}

// begun reports whether anything of it is given.
func (p Pump) begun() bool { return p != Pump{} }

// Head is the height, m, against which the pump works: the lift and what the flow loses along a plastic pipe,
// h = lift + 10.67·L·Q^1.852/(150^1.852·d^4.8704). Source: source.HazenWilliams.
func (p Pump) Head() unit.Length {
	q, d := float64(p.Flow.Val), float64(p.PipeInner.Val)
	return p.Lift.Val + unit.Length(10.67*float64(p.PipeLength.Val)*math.Pow(q, 1.852)/(math.Pow(150, 1.852)*math.Pow(d, 4.8704)))
}

// Energy is what the water of a day costs at the pump, J: E = ρ·g·V·h/η; not known while anything of it is not.
func (p Pump) Energy() unit.Known[unit.Energy] {
	if !p.known() {
		return unit.Known[unit.Energy]{}
	}
	return unit.Of(unit.Energy(water * unit.G * float64(p.Daily.Val) * float64(p.Head()) / float64(p.Efficiency.Val)))
}

// Power is what the pump uses while it runs, W: P = ρ·g·Q·h/η; not known while anything of it is not.
func (p Pump) Power() unit.Known[unit.Power] {
	if !p.known() {
		return unit.Known[unit.Power]{}
	}
	return unit.Of(unit.Power(water * unit.G * float64(p.Flow.Val) * float64(p.Head()) / float64(p.Efficiency.Val)))
}
