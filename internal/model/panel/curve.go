package panel

import (
	"math"

	"duskweight/internal/model/unit"
)

// Curve is the current–voltage curve of one panel in one light at one temperature, by the one-diode circuit
//
//	I = IL − I0·(e^((V + I·Rs)/A) − 1) − (V + I·Rs)·Leak        source.DeSoto.At("eq. 1")
//
// Leak is 1/Rsh, so that no leak needs no infinity.
type Curve struct {
	IL   float64 // light current, A
	I0   float64 // reverse current of the diode, A
	Rs   float64 // series resistance, Ω
	Leak float64 // shunt conductance, S
	A    float64 // n·N_s·k·T/q, V
}

// Current returns the current at voltage v; negative above the open-circuit voltage. Explicit by Lambert's function:
// source.JainKapoor.At("eq. 4"), written with the conductance.
func (c Curve) Current(v unit.Voltage) unit.Current {
	return unit.Current(c.current(float64(v)))
}

func (c Curve) current(v float64) float64 {
	if c.Rs <= 0 {
		return c.IL - c.I0*math.Expm1(v/c.A) - v*c.Leak
	}
	under := 1 + c.Leak*c.Rs
	l := math.Log(c.Rs*c.I0/(c.A*under)) + (c.Rs*(c.IL+c.I0)+v)/(c.A*under)
	return (c.IL+c.I0-v*c.Leak)/under - c.A/c.Rs*lambert(l)
}

// slope returns −dI/dV where current i flows at voltage v.
func (c Curve) slope(v, i float64) float64 {
	d := c.I0/c.A*math.Exp((v+i*c.Rs)/c.A) + c.Leak
	return d / (1 + c.Rs*d)
}

// OpenVoltage returns the voltage without load.
func (c Curve) OpenVoltage() unit.Voltage {
	if c.IL <= 0 {
		return 0
	}
	// a leak only lowers it from that of the diode alone
	low, high := 0.0, c.A*math.Log1p(c.IL/c.I0)
	v := high
	for range 100 {
		f := c.IL - c.I0*math.Expm1(v/c.A) - v*c.Leak
		if f > 0 {
			low = v
		} else {
			high = v
		}
		next := v + f/(c.I0/c.A*math.Exp(v/c.A)+c.Leak) // Newton, kept inside
		if !(next > low && next < high) {
			next = (low + high) / 2
		}
		if math.Abs(next-v) <= 1e-14*high {
			return unit.Voltage(next)
		}
		v = next
	}
	return unit.Voltage(v)
}

// ShortCurrent returns the current of joined wires.
func (c Curve) ShortCurrent() unit.Current { return unit.Current(c.current(0)) }

// Best returns the point of most power: where d(V·I)/dV = I − V·(−dI/dV) is 0.
func (c Curve) Best() (unit.Voltage, unit.Current) {
	if c.IL <= 0 {
		return 0, 0
	}
	low, high := 0.0, float64(c.OpenVoltage())
	for range 48 { // halved to 1e-14 of the voltage
		v := (low + high) / 2
		i := c.current(v)
		if i > v*c.slope(v, i) {
			low = v
		} else {
			high = v
		}
	}
	v := (low + high) / 2
	return unit.Voltage(v), unit.Current(c.current(v))
}

// Voltage returns the voltage at which current i flows, 0 where the panel cannot drive it.
func (c Curve) Voltage(i unit.Current) unit.Voltage {
	if float64(i) >= c.current(0) {
		return 0
	}
	low, high := 0.0, float64(c.OpenVoltage())
	if i < 0 {
		high += c.A*math.Log1p(-float64(i)/c.I0) - float64(i)*c.Rs
	}
	for range 52 { // halved to the last digit
		v := (low + high) / 2
		if c.current(v) > float64(i) {
			low = v
		} else {
			high = v
		}
	}
	return unit.Voltage((low + high) / 2)
}
