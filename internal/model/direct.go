package model

import (
	"math"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// The panel straight on the motor: panel and hoist meet here, for they know nothing of each other. A mass asks the motor
// for one torque at every speed, so for one current: where the panels give it, their curve sets the voltage and that the
// speed (source.Appelbaum). Resistances are those at 25 °C, as everywhere.

const (
	directAir = 25.0   // °C, the air for which a light is told; the sun's own warming of the cells comes on top
	fullSun   = 1000.0 // W/m²
	mostSun   = 1400.0 // W/m², beside bright clouds; no brighter light is looked for
)

// Direct is a hoist whose motor hangs straight on the panels.
type Direct struct {
	Known   bool
	WhyNot  say.Sentence // without a full stop
	Clash   bool         // two things at once on the panels: a controller, or another motor
	Missing []Missing    // paths inside the variant

	Run   unit.Current // while it lifts
	Start unit.Current // first push
	Short unit.Current // of all panels, in full sun
	Open  unit.Voltage // without load, in full sun
	Best  unit.Power   // in full sun

	StartLight unit.Known[unit.Irradiance] // on the panels; not known where no sun is enough
	StallLight unit.Known[unit.Irradiance]
	Rule       unit.Irradiance // of thumb: 1000·I_start/I_short
	Points     []DirectPoint   // at 200, 400, … 1000 W/m²

	Year      *DirectYear // nil without a year of light
	Converter DirectCure
	Say       []say.Sentence

	panels *panel.Straight
	motor  motor
}

// DirectPoint is where panels and motor agree in one light.
type DirectPoint struct {
	Light   unit.Irradiance
	Turns   bool
	Volts   unit.Voltage
	Current unit.Current
	Rotor   unit.AngularSpeed
	Speed   unit.Speed
	Power   unit.Power
}

// DirectCure is the same with a step-down converter between, which turns volts that are too many into amps.
type DirectCure struct {
	Efficiency unit.Ratio
	StartLight unit.Known[unit.Irradiance]
	HeightDay  unit.Known[unit.Length] // height gained on a mean day, if it could go on rising
}

// motor is the hoist as the panels feel it.
type motor struct {
	k, loop, vb float64
	run, start  float64
	layers      []lift.Climb
	weight      float64 // m·g
	travel      float64
}

// directOf works out how the motor hangs on the panels of its variant; second is set for a hoist after the first that
// asks for them.
func directOf(v Variant, h lift.Hoist, d lift.Drive, second bool) *Direct {
	r := &Direct{Run: d.Raising.Current, Start: d.Raising.FirstPush}
	lack := func(path, why string) *Direct {
		r.WhyNot = say.Words(why)
		if path != "" {
			r.Missing = append(r.Missing, Missing{path, say.Words("the panel straight on the motor")})
		}
		return r
	}
	switch {
	case second:
		r.Clash = true
		return lack("", "another hoist hangs on the panels already")
	case v.Controller.Kind != panel.ControllerDirect:
		r.Clash = v.Controller.Kind != ""
		return lack("controller.kind", "there is a controller between panels and motor. Say on the page of the variant that there is none (direct)")
	case len(d.Raising.Layers) == 0:
		return lack("", "what the motor uses is not known yet")
	}
	panels, problems := panel.NewStraight(v.Panels)
	if len(problems) > 0 {
		for _, p := range problems {
			r.Missing = append(r.Missing, Missing{p.Path, say.Words("the curve of the panel, and with it whether the motor starts")})
		}
		r.WhyNot = problems[0].Say
		return r
	}
	r.panels = panels
	r.motor = motor{k: float64(d.Machine.K.Val), loop: float64(d.Machine.R.Val + d.Raising.Wire), vb: float64(d.Machine.BrushDrop),
		run: float64(r.Run), start: float64(r.Start), layers: d.Raising.Layers, weight: float64(d.Mass.Val.Weight()), travel: float64(h.Travel.Val)}
	r.Converter.Efficiency = h.Raise.DriveEff.Or(typicalStepDown)
	r.meet(d)
	return r
}

// meet finds the operating points and the light at which it starts and stalls.
func (r *Direct) meet(d lift.Drive) {
	x := r.panels.Sunlit()
	x.SetEven(fullSun, directAir)
	r.Known, r.Short = true, x.Current(0)
	r.Open, _ = x.Voltage(1e-6 * r.Short)
	r.Best, _ = x.Best()
	r.StartLight, r.StallLight = lightFor(x, straightOn{x, &r.motor}, r.motor.start), lightFor(x, straightOn{x, &r.motor}, r.motor.run)
	step := &stepDown{motor: &r.motor, efficiency: float64(r.Converter.Efficiency)}
	r.Converter.StartLight = lightFor(x, seeking{x, step}, r.motor.start)
	if r.Short > 0 {
		r.Rule = lift.StartIrradiance(r.Start, r.Short)
	}
	for g := 200.0; g <= fullSun; g += 200 {
		r.Points = append(r.Points, r.point(d, unit.Irradiance(g)))
	}
}

// point is where panels and motor agree in one light, in the fullest layer of rope.
func (r *Direct) point(d lift.Drive, g unit.Irradiance) DirectPoint {
	x := r.panels.Sunlit()
	x.SetEven(g, directAir)
	p := DirectPoint{Light: g}
	if u, ok := x.Voltage(r.Run); ok {
		_, p.Rotor, p.Speed = d.RaisePoint(u)
		if p.Turns = p.Rotor > 0; p.Turns {
			p.Volts, p.Current, p.Power = u, r.Run, unit.Power(float64(u)*float64(r.Run))
			return p
		}
	}
	p.Current = r.motor.standing(x)
	p.Volts = unit.Voltage(r.motor.vb + float64(p.Current)*r.motor.loop)
	p.Power = unit.Power(float64(p.Volts) * float64(p.Current))
	return p
}

// Current is what the panels give at a voltage in one light, for the picture of the two curves.
func (r *Direct) Current(g unit.Irradiance, volts unit.Voltage) unit.Current {
	x := r.panels.Sunlit()
	x.SetEven(g, directAir)
	return x.Current(volts)
}

// standing is the current of a motor that is held: where the panels' curve meets V_b + I·R.
func (m *motor) standing(x *panel.Sunlit) unit.Current {
	low, high := 0.0, float64(x.Current(unit.Voltage(m.vb)))
	for range 60 {
		i := (low + high) / 2
		if float64(x.Current(unit.Voltage(m.vb+i*m.loop))) >= i {
			low = i
		} else {
			high = i
		}
	}
	return unit.Current(low)
}

// inFullSun is the hoist fed as the panels feed it in full sun: the voltage of that point, and no more current than a
// held motor gets.
func (r *Direct) inFullSun(h lift.Hoist) lift.Hoist {
	x := r.panels.Sunlit()
	x.SetEven(fullSun, directAir)
	u, ok := x.Voltage(r.Run)
	if !ok {
		u = r.Open
	}
	h.Raise.Voltage, h.Raise.CurrentLimit = unit.Of(u), unit.Of(r.motor.standing(x))
	h.Raise.DriveEff = unit.Of(unit.Ratio(1)) // nothing stands between
	return h
}

// feed is what brings a current to the motor in one light.
type feed interface {
	gives(i float64) bool                            // this current at the least voltage at which it turns
	volts(i float64) (volts, taken float64, ok bool) // while it turns: at the motor, and W taken from the panels
}

// straightOn is the panels themselves.
type straightOn struct {
	*panel.Sunlit
	*motor
}

func (s straightOn) gives(i float64) bool {
	return float64(s.Sunlit.Current(unit.Voltage(s.vb+i*s.loop))) >= i
}

func (s straightOn) volts(i float64) (volts, taken float64, ok bool) {
	u, ok := s.Sunlit.Voltage(unit.Current(i))
	return float64(u), float64(u) * i, ok
}

// climb is how fast the mass rises, over its whole travel, and what it takes; 0 where it does not turn.
//
//	ω = (V − V_b − I·R)/K, v = ω/c; over layers the times and the energies add up
func (m *motor) climb(f feed) (speed, power float64) {
	time, energy := 0.0, 0.0 // for a metre
	for _, l := range m.layers {
		i := float64(l.Current)
		u, taken, ok := f.volts(i)
		rotor := (u - m.vb - i*m.loop) / m.k
		if !ok || rotor <= 0 {
			return 0, 0
		}
		t := l.Share * float64(l.RotorPerMetre) / rotor
		time += t
		energy += taken * t
	}
	if !(time > 0) || math.IsInf(time, 0) {
		return 0, 0
	}
	return 1 / time, energy / time
}

// lightFor is the least light, straight in front of the panels, in which f gives a current; not known where none does.
// Brighter light is hotter too, so the first bracket of 10 W/m² from below decides.
func lightFor(x *panel.Sunlit, f feed, i float64) unit.Known[unit.Irradiance] {
	in := func(g float64) bool {
		x.SetEven(unit.Irradiance(g), directAir)
		return f.gives(i)
	}
	const bracket = 10.0
	for high := bracket; high <= mostSun; high += bracket {
		if !in(high) {
			continue
		}
		low, high := high-bracket, high
		for range 40 {
			if g := (low + high) / 2; in(g) {
				high = g
			} else {
				low = g
			}
		}
		return unit.Of(unit.Irradiance(high))
	}
	return unit.Known[unit.Irradiance]{}
}
