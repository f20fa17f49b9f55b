package panel

import (
	"math"
	"slices"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Names of the losses, in the order in which they happen.
const (
	LossGlass      = "flat angles on the glass"
	LossHeat       = "heat of the cells"
	LossDirt       = "dirt"
	LossSnow       = "snow"
	LossUnequal    = "unequal panels"
	LossWires      = "wires"
	LossOffBest    = "held at the line's voltage"
	LossController = "controller"
	LossRating     = "above the controller's rating"
	LossDirect     = "goes to the motor, not to the line"
)

var arrayLosses = [...]string{LossGlass, LossHeat, LossSnow, LossDirt, LossUnequal, LossWires, LossOffBest}

// array is one sub-array made ready.
type array struct {
	name                 string
	label                float64 // W, all panels
	warming              float64 // K for each W/m²
	gamma                float64
	dirt, unequal, wires float64
	clean, equal, wired  float64   // 1 − each
	kept                 float64   // what the three leave together
	daily                []float64 // 1 − dirt by day of the year, where dust settles and is cleaned off; else nil
	cable                float64   // share that the panels' cable loses at full power; 0 where the wires lose an equal share always
	pulse                bool
	curve                *Diode  // pulse width with a sheet
	volts                float64 // pulse width: voltage of one panel
	panels               float64
	short                float64 // pulse width without a sheet: short-circuit current of all panels, A
	alpha                float64 // its change with temperature, as a share
	line                 float64 // pulse width without a sheet: voltage of the panels, V
}

// prepare makes one array ready; sound says that its sheet has been found to have a curve before, and that nobody needs it.
func (p *Plant) prepare(a Array, c Controller, path string, sound bool) (array, Problems) {
	var ps Problems
	count, known := a.Count.Value()
	if !known {
		ps = append(ps, Problem{path + ".count", say.Words("how many panels stand here is not known")})
	}
	power, known := a.Power.Value()
	if !known {
		ps = append(ps, Problem{path + ".panel_w", say.Words("the power on the panel's label is not known")})
	}
	if !a.Tilt.Is && a.TiltBy == nil {
		ps = append(ps, Problem{path + ".tilt_rad", say.Words("how far the panels are tilted is not known")})
	}
	if !a.Azimuth.Is {
		ps = append(ps, Problem{path + ".azimuth_rad", say.Words("which way the panels face is not known")})
	}
	m := array{
		name:    a.Name,
		panels:  float64(count),
		label:   float64(count) * float64(power),
		warming: a.warming(),
		gamma:   float64(a.Gamma.Or(typicalGamma)),
		dirt:    float64(a.Soiling.Or(typicalSoiling)),
		unequal: float64(a.Mismatch.Or(typicalMismatch)),
		wires:   float64(a.Wiring.Or(typicalWiring)),
	}
	if share, known := a.cable(); known {
		m.wires, m.cable = 0, share
		if c.Kind == ControllerPulseWidth { // the panels' voltage is higher by the drop
			m.wires, m.cable = min(share, 0.9), 0
		}
	}
	m.clean, m.equal, m.wired = 1-m.dirt, 1-m.unequal, 1-m.wires
	m.kept = m.clean * m.equal * m.wired
	m.daily = a.cleanByDay()
	if a.Sheet != nil && a.Sheet.Complete() && len(ps) == 0 && !sound {
		d, problem := fitted(a, path)
		if problem != nil {
			return m, append(ps, *problem)
		}
		if c.Kind == ControllerPulseWidth {
			m.curve = &d
		}
	}
	if c.Kind == ControllerPulseWidth && len(ps) == 0 {
		p.hold(&m, a, c)
	}
	return m, ps
}

// fitted returns the curve of an array's sheet, or what is wrong with the sheet.
func fitted(a Array, path string) (Diode, *Problem) {
	d, err := a.Sheet.Fit()
	if err != nil {
		return d, &Problem{path + ".sheet", say.Why(err)}
	}
	best := unit.Power(float64(a.Sheet.Imp.Val) * float64(a.Sheet.Vmp.Val))
	label := a.Power.Val
	if math.Abs(float64(best-label)) > float64(label/10) { // makers sort panels within some per cent of the label; common practice
		return d, &Problem{path + ".sheet", say.That(
			"the sheet's best point makes %s, the label says %s. Give both for one panel", say.Power(best), say.Power(label))}
	}
	return d, nil
}

// hold prepares a pulse-width controller, which holds the panels at the line's voltage and the drop of their wires.
func (p *Plant) hold(m *array, a Array, c Controller) {
	m.pulse = true
	line := float64(c.BusVolts.Or(typicalBus))
	m.line = line / m.wired
	if m.curve != nil {
		m.volts = m.line / float64(a.Sheet.Series.Or(1))
		return
	}
	m.alpha = float64(typicalAlpha)
	m.short = m.label / (bestOverLine * line) / bestOverShort
	p.Remarks = append(p.Remarks, say.That(
		"%s: without a data sheet the panels count as made for this line, with their best point at %s (%s times the line). Panels of another voltage give much less on a pulse-width controller.",
		nameOr(a.Name, "Panels"), say.Voltage(unit.Voltage(bestOverLine*line)), say.Times(unit.Ratio(bestOverLine))))
}

func nameOr(name, otherwise string) string {
	if name == "" {
		return otherwise
	}
	return name
}

// best returns the power of the clean, equal panels at their best point: label, light behind the glass and temperature
// of the cells, P·G/1000·(1 + γ(T − 25)), never negative (source.DuffieBeckman.At("section 23.2")).
func (a *array) best(cells, temperature float64) float64 {
	f := 1 + a.gamma*(temperature-25)
	if f < 0 {
		f = 0
	}
	return a.label * cells * 1e-3 * f
}

// cleanAt returns what dirt leaves of the light in hour h.
func (a *array) cleanAt(h int) float64 {
	if a.daily == nil {
		return a.clean
	}
	return a.daily[h/24%len(a.daily)]
}

// held returns the power of the panels held at the line's voltage, after dirt, of which clean is left, unequal panels and wires.
func (a *array) held(cells, temperature, clean float64) float64 {
	if a.curve != nil {
		i := a.curve.At(unit.Irradiance(cells*clean), unit.Celsius(temperature)).current(a.volts)
		return max(0, i) * a.volts * a.panels * a.equal * a.wired
	}
	// flat part of the curve: the short-circuit current; never more than the best point gives
	i := a.short * (1 + a.alpha*(temperature-25)) * cells * 1e-3
	return min(max(0, i)*a.line, a.best(cells, temperature)) * clean * a.equal * a.wired
}

// add adds the array's power at the controller to each hour.
func (a *array) add(l Light, air, power []float64) {
	plane, cells := l.Plane[:len(air)], l.Cells[:len(air)]
	power = power[:len(air)]
	if a.pulse {
		for h, g := range plane {
			if g > 0 {
				power[h] += a.held(cells[h], air[h]+a.warming*g, a.cleanAt(h)*l.bare(h))
			}
		}
		return
	}
	if a.daily == nil && l.Snow == nil {
		a.addClean(a.label*1e-3*a.kept, plane, cells, air, power)
		return
	}
	for from := 0; from < len(air); from += 24 {
		to := min(from+24, len(air))
		a.addClean(a.label*1e-3*a.cleanAt(from)*l.bare(from)*a.equal*a.wired, plane[from:to], cells[from:to], air[from:to], power[from:to])
	}
}

// addClean adds the power of hours in which a share of the label is left: scale, in W for each W/m² behind the glass.
func (a *array) addClean(scale float64, plane, cells, air, power []float64) {
	for h, g := range plane {
		if g > 0 {
			f := 1 + a.gamma*(air[h]+a.warming*g-25)
			if f > 0 {
				power[h] += a.through(scale * cells[h] * f)
			}
		}
	}
}

// through returns what the panels' cable leaves of power p: its drop grows with the current, so that a year loses
// share·ΣP²/(P_r ΣP).
func (a *array) through(p float64) float64 {
	if a.cable == 0 || a.label == 0 {
		return p
	}
	return max(0, p-a.cable*p*p/a.label)
}

// account returns the array's year and where its joules went.
func (a *array) account(l Light, air []float64) Yield {
	y := Yield{Name: a.name}
	var glass, heat, snow, dirt, unequal, wires, off, light, out float64
	for h, g := range l.Plane[:len(air)] {
		if g <= 0 {
			continue
		}
		whole, through := a.label*g*1e-3, a.label*l.Cells[h]*1e-3
		t := air[h] + a.warming*g
		best := a.best(l.Cells[h], t)
		free := best * l.bare(h)
		clean := free * a.cleanAt(h)
		equal := clean * a.equal
		wired := a.through(equal * a.wired)
		light += whole
		glass += whole - through
		heat += through - best
		snow += best - free
		dirt += free - clean
		unequal += clean - equal
		wires += equal - wired
		power := wired
		if a.pulse {
			power = a.held(l.Cells[h], t, a.cleanAt(h)*l.bare(h))
		}
		off += wired - power
		out += power
	}
	joules := func(w float64) unit.Energy { return unit.Energy(w * 3600) }
	y.Light, y.Output = joules(light), joules(out)
	y.Losses = []Loss{{LossGlass, joules(glass)}, {LossHeat, joules(heat)}, {LossDirt, joules(dirt)},
		{LossUnequal, joules(unequal)}, {LossWires, joules(wires)}}
	if l.Snow != nil {
		y.Losses = slices.Insert(y.Losses, 2, Loss{LossSnow, joules(snow)})
	}
	if a.pulse {
		y.Losses = append(y.Losses, Loss{LossOffBest, joules(off)})
	}
	return y
}
