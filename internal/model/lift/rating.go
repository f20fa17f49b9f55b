package lift

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// What motor and loads stand. A load that burns out opens, and an open circuit lets the mass run away: so a load over its rating
// keeps the hoist from hanging, and a rating that is not known keeps it from being ready.

// lampShare is how much of its rated current a row of lamps should carry (common practice: the light fades sooner above).
const lampShare = 0.8

// flagCurrent compares a current with what the motor stands all day. Where nothing tells how warm it gets, more than that
// must not be.
func (w *work) flagCurrent(what string, i float64) {
	v, ok := w.h.Machine.MaxCurrent.Value()
	if !ok || i <= float64(v) {
		return
	}
	over := say.That("%s %s, the motor withstands %s all day.", what, say.Current(unit.Current(i)), say.Current(v))
	if m := w.h.Machine; m.RthWinding.Is && m.TauWinding.Is && m.MaxWinding.Is {
		w.caution("machine.continuous_current_a", "%s See how long it may run.", over)
		return
	}
	w.bad("machine.continuous_current_a", "%s Give its thermal values to see how long it may run, or use more gear ratio or less mass.", over)
}

// flagLoad compares one load with its ratings. A row of lamps is wanted at 80 % of its rated current or less.
func (w *work) flagLoad(j int, b branch, i, u float64) {
	at := func(field string) string { return fmt.Sprintf("lower.loads[%d].%s", j, field) }
	name := b.called()
	rated, ok := b.load.MaxCurrent.Value()
	switch {
	case !ok && i > 0:
		w.lack(at("rated_current_a"), "whether this load burns out; when it does, the mass runs away")
	case ok && i > float64(rated)*(1+1e-9):
		w.bad(at("rated_current_a"), "%s: %s flow through it, and it is rated %s. It burns out, and then nothing holds the mass. More rows side by side share the current.", name, say.Current(unit.Current(i)), say.Current(rated))
	case ok && b.kind == LoadString && i > lampShare*float64(rated):
		w.caution(at("rated_current_a"), "%s: %s flow through it; at most %s should (rated %s). Use more rows side by side: they share the current.", name, say.Current(unit.Current(i)), say.Current(unit.Current(lampShare*float64(rated))), say.Current(rated))
	}
	if v, ok := b.load.MaxVoltage.Value(); ok && u > float64(v)*(1+1e-9) {
		w.bad(at("max_voltage_v"), "%s: it gets %s and withstands %s. It breaks, and then nothing holds the mass. A clamp at a lower voltage keeps it safe.", name, say.Voltage(unit.Voltage(u)), say.Voltage(v))
	}
	if v, ok := b.load.MinVoltage.Value(); ok && u < float64(v) {
		w.caution(at("min_voltage_v"), "%s: it gets %s and needs %s to work.", name, say.Voltage(unit.Voltage(u)), say.Voltage(v))
	}
	if b.kind == LoadCell && b.diode <= 0 {
		w.bad(at("diode_v"), "%s: there is no diode in front of it. It would drive the motor like a second source: the mass may go up, and the battery empties itself. Put a diode in front and give its drop.", name)
	}
}

// called is the load's own name, or what it is.
func (b branch) called() string {
	if b.name == "" {
		word := loadWord(b.kind)
		return strings.ToUpper(word[:1]) + word[1:]
	}
	return b.name
}

// darkSay says why no power reaches the lamps though the mass comes down.
func (w *work) darkSay(bs []branch, r root) say.Sentence {
	for _, b := range bs {
		if b.kind == LoadString && r.u <= b.threshold {
			return say.That("The lamps stay dark: the voltage settles at %s, and they begin at %s. Use fewer lamps in a row, or a clamp above that.", say.Voltage(unit.Voltage(r.u)), say.Voltage(unit.Voltage(b.threshold)))
		}
	}
	return say.That("Nothing reaches the lamps: all that the mass gives becomes heat in resistor and clamp.")
}

// shunt reports a load that nothing can open.
func (l DCLoad) shunt() bool {
	return l.Permanent == unit.Yes && (l.Kind == LoadResistor || l.Kind == LoadClamp)
}

// flagShunt looks at what is wired for good when it holds the mass alone, every lamp unplugged.
func (w *work) flagShunt() {
	lo := w.d.Lowering
	if lo.RunsBack == DownNo || lo.Current <= 0 || !slices.ContainsFunc(w.h.Lower.Loads, func(l DCLoad) bool { return !l.shunt() }) {
		return // alone it is the load itself, and looked at as such
	}
	var bs []branch
	var at []int
	for j, l := range w.h.Lower.Loads {
		if !l.shunt() {
			continue
		}
		b, ok := w.branch(j, l)
		if !ok {
			return
		}
		bs, at = append(bs, b), append(at, j)
	}
	i := float64(lo.Current)
	r := settle(bs, i, math.Inf(1))
	if !r.found {
		return
	}
	for k, x := range r.split(bs, i) {
		rated, ok := bs[k].load.MaxCurrent.Value()
		path := fmt.Sprintf("lower.loads[%d].rated_current_a", at[k])
		switch {
		case !ok && x > 0:
			w.lack(path, "whether what is wired for good holds the mass alone")
		case ok && x > float64(rated)*(1+1e-9):
			w.bad(path, "%s: with the lamps unplugged %s flow through it, and it is rated %s. It burns out, and then nothing holds the mass.", bs[k].called(), say.Current(unit.Current(x)), say.Current(rated))
		}
	}
	rotor := unit.AngularSpeed(w.rotorAt(r.u, i))
	if most, over := w.tooFast(rotor); over {
		w.bad("lower.loads", "With the lamps unplugged, what is wired for good lets the motor run at %s. %s A smaller resistor or a lower clamp is needed.", say.Turning(rotor), most)
	}
}
