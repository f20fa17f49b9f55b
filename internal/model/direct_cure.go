package model

import (
	"fmt"

	"duskweight/internal/model/panel"
	"duskweight/internal/model/unit"
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
	say := func(format string, args ...any) { r.Say = append(r.Say, fmt.Sprintf(format, args...)) }
	start, starts := r.StartLight.Value()
	stall, turns := r.StallLight.Value()
	switch {
	case starts:
		say("The motor starts when the sun on the panels reaches %s, and stalls under %s.", light(start), light(stall))
	case turns:
		say("No sun starts this motor: the first push takes %s, and the panels give at most %s. Once pushed it would run above %s.", amps(r.Start), amps(r.Short), light(stall))
	default:
		say("No sun runs this motor: lifting takes %s, and in full sun the panels give at most %s and %s.", amps(r.Run), amps(r.Short), volts(r.Open))
	}
	if y := r.Year; y != nil && starts {
		say("On a mean day here it could gain %s of height, %s lifts, in %s hours.", metres(y.HeightDay), unit.Rounded(float64(y.LiftsDay), 2), unit.Rounded(float64(y.Hours)/365, 2))
	}
	say("A cloud can stop it, and a stopped motor holds nothing. A ratchet or a brake must hold the mass each time.")
	if starts {
		say("It starts by itself whenever the sun is strong enough. Put a switch at the site that locks it off.")
	}
	if r.Open > touchVolts {
		say("The panels reach %s without load. Above %s a shock can kill.", volts(r.Open), volts(touchVolts))
	}
	r.sayCure()
}

// sayCure compares with a step-down converter, in numbers.
func (r *Direct) sayCure() {
	say := func(format string, args ...any) { r.Say = append(r.Say, fmt.Sprintf(format, args...)) }
	c := r.Converter
	start, ok := c.StartLight.Value()
	if !ok {
		say("A step-down converter alone does not cure it: more panels, less mass or slower gears are needed.")
		return
	}
	if was, starts := r.StartLight.Value(); starts && start >= was {
		say("A step-down converter would not start it earlier: the panels fit the motor already.")
		return
	}
	say("The cure is a step-down converter between panels and motor: it makes amps of volts that are too many.")
	with := fmt.Sprintf("With one (%s efficient) the motor starts at %s", percent(float64(c.Efficiency)), light(start))
	if h, ok := c.HeightDay.Value(); ok && r.Year != nil {
		with += fmt.Sprintf(", and could gain %s a day instead of %s", metres(h), metres(r.Year.HeightDay))
	}
	say("%s.", with)
}

func light(g unit.Irradiance) string { return unit.Rounded(float64(g), 3) + " W/m²" }
func amps(i unit.Current) string     { return unit.Rounded(float64(i), 3) + " A" }
func volts(u unit.Voltage) string    { return unit.Rounded(float64(u), 3) + " V" }
func metres(l unit.Length) string    { return unit.Rounded(float64(l), 3) + " m" }
