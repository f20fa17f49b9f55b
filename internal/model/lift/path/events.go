package path

import (
	"math"

	"duskweight/internal/model/unit"
)

// event is something that goes wrong, as a multiple of the static rope pull while raising.
type event struct {
	name  string
	times float64
}

// events are the upper stop missed with the motor stalled, the wires joined while the load races (with a permanent
// resistor it does not race), slack caught and the brake catching: each loads rope, joints and teeth. miss names what
// keeps the first from being known.
func (t *loads) events() (out []event, miss []string) {
	up, ok := t.d.RopeUp.Value()
	if !ok || up <= 0 {
		return nil, nil // the line says already that the tensions are missing
	}
	f, swing, miss := t.stalled()
	if t.d.StallRopePull.Is {
		out = append(out, event{stallCase, (f + swing) / float64(up)})
	}
	if f, ok := t.burst(); ok {
		out = append(out, event{burstCase, f / float64(up)})
	}
	return append(out, t.catches(float64(up))...), miss
}

// The names of two events; what mends them is said with the line that they lead.
const (
	stallCase = "upper stop missed, motor stalled"
	burstCase = "wires joined while it runs away"
)

// mendOf is what mends a line that an event leads; nothing where the part itself must be mended.
func mendOf(name string) remedy {
	switch name {
	case stallCase:
		return always("Limit the current while lifting, and set two upper stops.")
	case burstCase:
		return always("Wire a resistor or clamp to the motor for good: then it cannot race.")
	}
	return remedy{}
}

// stalled is the pull of the stalled motor at the drum and the swing of its rotor there, v·√(k·J·c²)/n with k at the mass
// (the n rope parts share it), and what is missing for them; the swing is 0 where it cannot be told.
func (t *loads) stalled() (pull, swing float64, miss []string) {
	f, ok := t.d.StallRopePull.Value()
	if !ok {
		miss = t.stallMissing()
	}
	j, okJ := t.d.ReflectedMass.Value()
	if !okJ {
		miss = append(miss, "machine.j_kg_m2")
	}
	k, missK := t.stiffness(true)
	v := 0.0
	if t.d.Raising.Known && !t.d.Raising.Stalls {
		v = math.Max(float64(t.d.Raising.Speed), t.d.Raising.SpeedLow)
	}
	if okJ && len(missK) == 0 {
		swing = v * math.Sqrt(k*float64(j)) / float64(t.n)
	}
	return float64(f), swing, append(miss, missK...)
}

// burst is the pull of the rope at the drum when the wires are joined while it races; false where something that nothing
// can open keeps it from racing, or it does not race.
func (t *loads) burst() (float64, bool) {
	f, ok := t.d.LetGo.BurstForce.Value()
	return float64(f), ok && !t.d.Lowering.Shunt
}

// catches are slack caught and the brake catching a runaway, where rope and speeds are known; where they are not, the
// lines "slack" and "brake_catch" are not known themselves.
func (t *loads) catches(up float64) []event {
	k, miss := t.stiffness(true)
	if len(miss) > 0 || t.m <= 0 {
		return nil
	}
	var out []event
	still := t.weight() / float64(t.n) / up
	if s, ok := t.d.Overtravel.Value(); ok && t.h.Holds.SlackSwitch == unit.Yes {
		out = append(out, event{"slack caught", still * SlackFactor(float64(s), k, t.m)})
	}
	if pull, ok := t.caught(); ok {
		out = append(out, event{caughtCase, pull / float64(t.n) / up})
	} else if v, ok := t.d.LetGo.BrakeSpeed.Value(); ok {
		out = append(out, event{"brake catches", still * StopFactor(math.Abs(float64(v)), k, t.m)})
	}
	return out
}

// stallMissing names what the stalled motor's pull wants.
func (t *loads) stallMissing() []string {
	var miss []string
	for _, x := range []struct {
		is   bool
		path string
	}{
		{t.d.Machine.K.Is || t.h.Machine.K.Is, "machine.k_vs_rad"},
		{t.d.Machine.R.Is || t.h.Machine.R.Is, "machine.r_ohm"},
		{t.h.Raise.Voltage.Is, "raise.voltage_v"},
		{t.d.Ratio.Is, "train.stages"},
		{t.h.Drum.Diameter.Is, "drum.diameter_m"},
	} {
		if !x.is {
			miss = append(miss, x.path)
		}
	}
	return append(miss, "")
}

// torque is the greatest static torque at the drum, N·m, and what is missing for it.
func (t *loads) torque() (float64, bool, []string) {
	if q, ok := t.d.DrumTorqueUp.Value(); ok && finite(float64(q)) {
		return float64(q), true, nil
	}
	miss := append([]string(nil), t.missing...)
	if !t.h.Drum.Diameter.Is {
		miss = append(miss, "drum.diameter_m")
	}
	if !t.h.Rope.Diameter.Is {
		miss = append(miss, "rope.diameter_m")
	}
	return 0, false, append(miss, "")
}
