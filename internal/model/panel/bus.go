package panel

import (
	"fmt"
	"math"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Light is what falls on the plane of one array, mean of each hour, W/m². (The same shape as sun.Light.)
type Light struct {
	Plane []float64 // on the glass
	Cells []float64 // of that, what gets through the glass

	Snow *[12]float64 // share of their power that snow on them takes, by month; nil is none
}

// bare returns what snow leaves of the power in hour h.
func (l Light) bare(h int) float64 {
	if l.Snow == nil {
		return 1
	}
	return 1 - l.Snow[monthOfDay[h/24%len(monthOfDay)]-1]
}

// Bus is a year of power from all panels through the controller.
type Bus struct {
	Power []float64 // [hours] W at the line
	Panel []float64 // [hours] W from the panels, before the controller

	Arrays []Yield     // in the order of the design
	Losses []Loss      // all arrays and the controller, in the order in which they happen
	Total  unit.Energy // Σ Power, J a year
	Light  unit.Energy // what the panels would give by their label at 25 °C in the light on their glass: Total + Σ Losses

	Remarks []say.Sentence // what was assumed
}

// Yield is a year of one array.
type Yield struct {
	Name   string
	Light  unit.Energy // by the label at 25 °C, in the light on the glass
	Losses []Loss
	Output unit.Energy // at the controller: Light − Σ Losses
}

// Loss is one named loss of a year. It can be negative: cold panels give more than their label.
type Loss struct {
	Name   string
	Energy unit.Energy
}

// Problem is one thing that stands against computing the power, and where in the variant.
type Problem struct {
	Path string
	Say  say.Sentence
}

// Problems is all that stands against it.
type Problems []Problem

// Plant is panels and controller made ready: an hour then costs some nanoseconds. Nothing in it changes.
type Plant struct {
	arrays  []array
	kind    ControllerKind
	tracker tracker
	rated   float64        // pulse width: most power at the line
	most    float64        // most power at the line by the controller's most current
	Remarks []say.Sentence // what was assumed, for the page
}

// Prepare makes panels and controller ready, or says what stands against it.
func Prepare(arrays []Array, c Controller) (*Plant, Problems) { return prepare(arrays, c, false) }

// PrepareBrighter is Prepare for panels that were ready once and now give more or less current at the same voltages. Whether
// a circuit runs through their sheets does not hang on that, so it is not asked again where the curve is not used.
func PrepareBrighter(arrays []Array, c Controller) (*Plant, Problems) {
	return prepare(arrays, c, true)
}

func prepare(arrays []Array, c Controller, sound bool) (*Plant, Problems) {
	p := &Plant{kind: c.Kind, rated: math.Inf(1), most: math.Inf(1)}
	sound = sound && c.Kind != ControllerPulseWidth
	var ps Problems
	label := 0.0
	for i, a := range arrays {
		made, problems := p.prepare(a, c, fmt.Sprintf("panels[%d]", i), sound)
		ps = append(ps, problems...)
		p.arrays = append(p.arrays, made)
		label += made.label
	}
	if len(ps) > 0 {
		return nil, ps
	}
	if rated, known := c.Power.Value(); known {
		p.rated = float64(rated)
	}
	if most, known := c.MaxCharge.Value(); known {
		p.most = float64(most) * float64(c.Line())
	}
	p.tracker = newTracker(c.Curve, float64(c.Power.Or(unit.Power(label))))
	switch c.Kind {
	case ControllerTracking, ControllerPulseWidth, ControllerDirect:
		return p, nil
	}
	return nil, Problems{{"controller.kind", say.Words("say what is between panels and line: maximum-power tracking, pulse-width, or none")}}
}

// BusPower returns a year of power at the line; light holds what falls on each array, in the order of the arrays, and
// air the air temperature, °C, all with the same number of hours. With a direct controller nothing reaches the line: the
// panel drives the motor, and that is computed where panel and motor meet.
func BusPower(arrays []Array, c Controller, light []Light, air []float64) (*Bus, Problems) {
	p, ps := Prepare(arrays, c)
	if len(ps) > 0 {
		return nil, ps
	}
	if len(light) != len(arrays) {
		return nil, Problems{{"panels", say.That("%s arrays with lamps on for %s", len(arrays), len(light))}}
	}
	for i, l := range light {
		if len(l.Plane) != len(air) || len(l.Cells) != len(air) {
			return nil, Problems{{fmt.Sprintf("panels[%d]", i), say.That("lamps on for %s and %s hours, air for %s", len(l.Plane), len(l.Cells), len(air))}}
		}
	}
	return p.Year(light, air), nil
}

// Fill writes the power at the line into power, which has as many hours as air; it allocates nothing.
func (p *Plant) Fill(light []Light, air, power []float64) {
	hours := len(air)
	power = power[:hours]
	clear(power)
	for i := range p.arrays {
		p.arrays[i].add(light[i], air, power)
	}
	switch p.kind {
	case ControllerTracking:
		for h, q := range power {
			if q > 0 {
				power[h] = min(p.tracker.out(q), p.most)
			}
		}
	case ControllerPulseWidth:
		for h, q := range power {
			power[h] = min(q*pulseEfficiency, p.rated, p.most)
		}
	default:
		clear(power)
	}
}

// Year returns the power at the line hour by hour and where each joule of the light went.
func (p *Plant) Year(light []Light, air []float64) *Bus {
	b := &Bus{Power: make([]float64, len(air)), Panel: make([]float64, len(air))}
	b.Remarks = p.Remarks
	sums := map[string]float64{}
	for i := range p.arrays {
		p.arrays[i].add(light[i], air, b.Panel)
		y := p.arrays[i].account(light[i], air)
		b.Arrays = append(b.Arrays, y)
		b.Light += y.Light
		for _, l := range y.Losses {
			sums[l.Name] += float64(l.Energy)
		}
	}
	p.Fill(light, air, b.Power)
	for _, name := range arrayLosses {
		if e, there := sums[name]; there {
			b.Losses = append(b.Losses, Loss{name, unit.Energy(e)})
		}
	}
	inside, over := 0.0, 0.0
	for h, q := range b.Panel {
		b.Total += unit.Energy(b.Power[h] * 3600)
		taken := q
		switch p.kind {
		case ControllerTracking:
			taken = q * p.tracker.efficiency(q)
		case ControllerPulseWidth:
			taken = q * pulseEfficiency
		}
		inside += (q - taken) * 3600
		over += (taken - b.Power[h]) * 3600
	}
	switch p.kind {
	case ControllerDirect:
		b.Losses = append(b.Losses, Loss{LossDirect, unit.Energy(over)})
	default:
		b.Losses = append(b.Losses, Loss{LossController, unit.Energy(inside)}, Loss{LossRating, unit.Energy(over)})
	}
	return b
}
