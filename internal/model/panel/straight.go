package panel

import (
	"fmt"
	"math"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Straight is panels wired straight to one load, with nothing between: their strings hang side by side on its two wires.
// Each string is taken to have a diode that keeps current from flowing back into it. Nothing in it changes.
type Straight struct{ groups []group }

// group is one array as strings of equal panels.
type group struct {
	diode                   Diode
	series, strings         float64
	warming                 float64 // K for each W/m²
	clean, equal, wireShare float64 // what dirt, unequal panels and wires leave
}

// NewStraight makes the curve of panels without a controller ready, or says what stands against it. Every array needs a
// data sheet: without one there is no curve.
func NewStraight(arrays []Array) (*Straight, Problems) {
	s := &Straight{}
	var ps Problems
	for i, a := range arrays {
		path := fmt.Sprintf("panels[%d]", i)
		g, problems := straight(a, path)
		ps = append(ps, problems...)
		s.groups = append(s.groups, g)
	}
	if len(arrays) == 0 {
		ps = append(ps, Problem{"panels", say.Words("there is no panel yet")})
	}
	if len(ps) > 0 {
		return nil, ps
	}
	return s, nil
}

func straight(a Array, path string) (group, Problems) {
	if a.Sheet == nil || !a.Sheet.Complete() {
		return group{}, Problems{{path + ".sheet." + a.firstUnknown(), say.Words("the curve of the panel needs its data sheet: short-circuit current, open-circuit voltage, and both values of the best point")}}
	}
	m, ps := (&Plant{}).prepare(a, Controller{Kind: ControllerDirect}, path, false)
	if len(ps) > 0 {
		return group{}, ps
	}
	d, problem := fitted(a, path)
	if problem != nil {
		return group{}, Problems{*problem}
	}
	count, series := int(a.Count.Val), int(a.Sheet.Series.Or(1))
	if count%series != 0 {
		return group{}, Problems{{path + ".sheet.panels_in_series", say.That("%s panels do not make whole strings of %s", count, series)}}
	}
	return group{diode: d, series: float64(series), strings: float64(count / series), warming: m.warming,
		clean: m.clean, equal: m.equal, wireShare: m.wired}, nil
}

// Sunlit is the panels of a Straight in one light. Its curves are set anew for each light.
type Sunlit struct {
	of     *Straight
	curves []Curve
}

// Sunlit returns the panels in the dark.
func (s *Straight) Sunlit() *Sunlit { return &Sunlit{of: s, curves: make([]Curve, len(s.groups))} }

// Set puts the panels under the light of hour h; light is by array.
func (x *Sunlit) Set(light []Light, air []float64, h int) {
	for i, g := range x.of.groups {
		x.curves[i] = g.under(light[i].Plane[h], light[i].Cells[h]*light[i].bare(h), air[h])
	}
}

// SetEven puts all panels under the same light, straight in front, W/m².
func (x *Sunlit) SetEven(light unit.Irradiance, air unit.Celsius) {
	for i, g := range x.of.groups {
		x.curves[i] = g.under(float64(light), float64(light), float64(air))
	}
}

func (g *group) under(plane, cells, air float64) Curve {
	if !(cells > 0) {
		return Curve{}
	}
	return g.diode.At(unit.Irradiance(cells*g.clean), unit.Celsius(air+g.warming*plane))
}

// Current returns what all panels together give at a voltage of the load, never below nothing: the diodes of the strings
// let nothing back. Dirt takes of the light, unequal panels of the current, wires of the voltage.
func (x *Sunlit) Current(v unit.Voltage) unit.Current {
	sum := 0.0
	for i, c := range x.curves {
		if g := &x.of.groups[i]; c.IL > 0 && g.strings > 0 {
			sum += g.strings * g.equal * max(0, c.current(float64(v)/(g.wireShare*g.series)))
		}
	}
	return unit.Current(sum)
}

// Voltage returns the voltage of the load at which the panels give current i > 0; false where they cannot.
func (x *Sunlit) Voltage(i unit.Current) (unit.Voltage, bool) {
	if x.Current(0) < i {
		return 0, false
	}
	if len(x.curves) == 1 {
		return x.alone(float64(i))
	}
	var low, high float64
	for k, c := range x.curves {
		if g := &x.of.groups[k]; c.IL > 0 {
			high = max(high, float64(c.OpenVoltage())*g.series*g.wireShare)
		}
	}
	for range 60 {
		v := (low + high) / 2
		if x.Current(unit.Voltage(v)) >= i {
			low = v
		} else {
			high = v
		}
	}
	return unit.Voltage(low), true
}

// alone is Voltage of one array. With v_d = V + I·Rs the circuit is explicit in the voltage: Newton's steps on
// IL − I0·(e^(v_d/A) − 1) − v_d·Leak = I, from where the leak is left out, come down to the root without passing it.
func (x *Sunlit) alone(i float64) (unit.Voltage, bool) {
	c, g := x.curves[0], &x.of.groups[0]
	i /= g.strings * g.equal
	if i >= c.IL { // also in the dark, where the curve is none
		return 0, false
	}
	vd := c.A * math.Log1p((c.IL-i)/c.I0)
	for range 50 {
		e := math.Expm1(vd / c.A)
		step := (c.IL - c.I0*e - vd*c.Leak - i) / (c.I0/c.A*(e+1) + c.Leak)
		vd += step
		if math.Abs(step) <= 1e-13*vd {
			break
		}
	}
	v := (vd - i*c.Rs) * g.series * g.wireShare
	return unit.Voltage(v), v >= 0
}

// Best returns the most power that the panels give together, each array at its own best point, and the lowest of the
// voltages there: what a converter that seeks the best point works with. Nothing in the dark.
func (x *Sunlit) Best() (power unit.Power, volts unit.Voltage) {
	least := math.Inf(1)
	for i, c := range x.curves {
		g := &x.of.groups[i]
		if c.IL <= 0 || g.strings == 0 {
			continue
		}
		v, a := c.peak()
		power += unit.Power(v * a * g.series * g.strings * g.equal * g.wireShare)
		least = min(least, v*g.series*g.wireShare)
	}
	if power == 0 {
		return 0, 0
	}
	return power, unit.Voltage(least)
}

// peak is the best point by golden section along v_d, where current and voltage are explicit: the power has one peak.
func (c Curve) peak() (v, i float64) {
	const golden = 0.6180339887498949
	at := func(vd float64) (float64, float64) {
		i := c.IL - c.I0*math.Expm1(vd/c.A) - vd*c.Leak
		return vd - i*c.Rs, i
	}
	power := func(vd float64) float64 { v, i := at(vd); return v * i }
	low, high := 0.0, c.A*math.Log1p(c.IL/c.I0)
	a, b := (1-golden)*high, golden*high
	pa, pb := power(a), power(b)
	for range 34 { // 0.618^34 < 1e-7 of the voltage; the power is flat there
		if pa < pb {
			low, a, pa = a, b, pb
			b = low + golden*(high-low)
			pb = power(b)
		} else {
			high, b, pb = b, a, pa
			a = high - golden*(high-low)
			pa = power(a)
		}
	}
	return at((low + high) / 2)
}

// firstUnknown is the first of the sheet's four points that is not known.
func (a Array) firstUnknown() string {
	var s Sheet
	if a.Sheet != nil {
		s = *a.Sheet
	}
	switch {
	case !s.Voc.Is:
		return "voc_v"
	case !s.Isc.Is:
		return "isc_a"
	case !s.Vmp.Is:
		return "vmp_v"
	}
	return "imp_a"
}
