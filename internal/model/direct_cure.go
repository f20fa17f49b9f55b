package model

import (
	"duskweight/internal/model/panel"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// typicalStepDown is the efficiency of a step-down converter where the design gives none (source.FromMemory).
const typicalStepDown unit.Ratio = 0.92

// touchVolts is the highest direct voltage that is thought safe to touch in the dry (common practice, IEC 61140).
const touchVolts unit.Voltage = 60

// stepDown is a converter that takes the panels' best point and turns it into the current that the motor asks for:
// U·I = η·P, and never more volts than it gets.
type stepDown struct {
	*motor
	efficiency  float64
	power, most float64 // of the panels at their best point
}

func (s *stepDown) gives(i float64) bool {
	need := s.vb + i*s.loop
	return need <= s.most && need*i <= s.power*s.efficiency
}

func (s *stepDown) volts(i float64) (volts, taken float64, ok bool) {
	if !(i > 0) || s.power <= 0 {
		return 0, 0, false
	}
	u := min(s.power*s.efficiency/i, s.most)
	return u, u * i / s.efficiency, true
}

// under sets the converter's panels in their light.
func (s *stepDown) under(x *panel.Sunlit) {
	p, v := x.Best()
	s.power, s.most = float64(p), float64(v)
}

// seeking is the converter in whatever light the panels are in when it is asked.
type seeking struct {
	x *panel.Sunlit
	s *stepDown
}

func (k seeking) gives(i float64) bool {
	k.s.under(k.x)
	return k.s.gives(i)
}

func (k seeking) volts(i float64) (volts, taken float64, ok bool) {
	k.s.under(k.x)
	return k.s.volts(i)
}

// words says what the panel does to the motor, and the cure.
func (r *Direct) words() {
	tell := func(words string, values ...any) { r.Say = append(r.Say, say.That(words, values...)) }
	start, starts := r.StartLight.Value()
	stall, turns := r.StallLight.Value()
	switch {
	case starts:
		tell("The motor starts when the sun on the panels reaches %s, and stalls under %s.", say.Light(start), say.Light(stall))
	case turns:
		tell("No sun starts this motor: the first push needs %s, and the panels give at most %s. Once pushed it would run above %s.", say.Current(r.Start), say.Current(r.Short), say.Light(stall))
	default:
		tell("No sun runs this motor: lifting needs %s, and in full sun the panels give at most %s and %s.", say.Current(r.Run), say.Current(r.Short), say.Voltage(r.Open))
	}
	if y := r.Year; y != nil && starts {
		tell("On a mean day here it could gain %s of height, %s lifts, in %s hours.", say.Distance(y.HeightDay), say.Times(unit.Ratio(y.LiftsDay)).To(2), say.Times(unit.Ratio(y.Hours)/365).To(2))
	}
	tell("A cloud can stop it, and a stopped motor holds nothing. A ratchet or a brake must hold the mass each time.")
	if starts {
		tell("It starts by itself whenever the sun is strong enough. Put a switch at the site that locks it off.")
	}
	if r.Open > touchVolts {
		tell("The panels reach %s without load. Above %s a shock can kill.", say.Voltage(r.Open), say.Voltage(touchVolts))
	}
	r.sayCure()
}

// sayCure compares with a step-down converter, in numbers.
func (r *Direct) sayCure() {
	tell := func(words string, values ...any) { r.Say = append(r.Say, say.That(words, values...)) }
	c := r.Converter
	start, ok := c.StartLight.Value()
	if !ok {
		tell("A step-down converter alone does not cure it: more panels, less mass or slower gears are needed.")
		return
	}
	if was, starts := r.StartLight.Value(); starts && start >= was {
		tell("A step-down converter would not start it earlier: the panels fit the motor already.")
		return
	}
	tell("The cure is a step-down converter between panels and motor: it makes amps of volts that are too many.")
	height := say.Sentence{}
	if h, ok := c.HeightDay.Value(); ok && r.Year != nil {
		height = say.That(", and could gain %s a day instead of %s", say.Distance(h), say.Distance(r.Year.HeightDay))
	}
	tell("With one (%s efficient) the motor starts at %s%s.", say.Share(c.Efficiency), say.Light(start), height)
}
