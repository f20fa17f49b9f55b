package path

import (
	"math"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// DrumLength is the rope that goes on a drum of bare diameter D between flanges a width apart, up to a flange of
// diameter F: Σ w·π·(D + d + 2·λ·d·(j − 1)) over the layers j whose full height fits, w = floor(width/d). λ = 1 stacks
// rope on rope; .87 lets it lie in the grooves below, as the drive counts lengths.
func DrumLength(D, width, F, d, lambda float64) (length float64, layers int) {
	if d <= 0 || D <= 0 || width < d {
		return 0, 0
	}
	const slack = 1e-9
	w := math.Floor(width/d + slack)
	layers = int(math.Min(math.Floor((F-D)/(2*d)+slack), 10000))
	for j := 1; j <= layers; j++ {
		length += w * math.Pi * (D + d + 2*lambda*d*float64(j-1))
	}
	return length, max(0, layers)
}

// drumCapacityChecks: the rope that is wound, n·h and the turns that stay on, against what fits under the flanges. A
// tenth to spare is our own judgement: rope does not lie perfectly. Where the rope at hand is known it must be long
// enough.
func drumCapacityChecks(t *loads) []*Check {
	D, F, W, r := t.h.Drum.Diameter, t.h.Drum.Flange, t.h.Drum.Width, t.h.Rope
	l := newLine("drum_capacity", "the room on the drum", "n·h + turns that stay on ≤ Σ w·π·(D + d + 2·λ·d·(j − 1))", source.OceanWinch.At("rope capacity of a drum"))
	for _, x := range []struct {
		is   bool
		path string
	}{{D.Is, "drum.diameter_m"}, {W.Is, "drum.width_m"}, {F.Is, "drum.flange_diameter_m"}, {r.Diameter.Is, "rope.diameter_m"},
		{t.h.Travel.Is, "travel_m"}, {t.h.Drum.DeadWraps.Is, "drum.dead_wraps"}, {t.h.Reeving.RopeParts.Is, "reeving.rope_parts"}} {
		if !x.is {
			l.miss(x.path)
		}
	}
	if D.Is && W.Is && F.Is && r.Diameter.Is && t.h.Travel.Is && t.h.Reeving.RopeParts.Is {
		d := float64(r.Diameter.Val)
		room, layers := DrumLength(float64(D.Val), float64(W.Val), float64(F.Val), d, 0.87)
		wound := float64(t.h.Reeving.RopeParts.Val) * float64(t.h.Travel.Val)
		wound += float64(t.h.Drum.DeadWraps.Or(0)) * math.Pi * (float64(D.Val) + d)
		l.in("rope that is wound, with the turns that stay on", wound, unit.Metres)
		l.in("layers that fit under the flanges", float64(layers), unit.Pieces)
		l.add("mass at the top", unit.Metres, wound, room, 1, 1.1)
	}
	switch need, ok := t.d.Winding.RopeNeeded.Value(); {
	case ok && r.Length.Is:
		l.add("length of the rope at hand", unit.Metres, float64(need), float64(r.Length.Val), 1, 1)
	case r.Length.Is && t.h.Travel.Is && t.h.Reeving.RopeParts.Is && float64(t.h.Reeving.RopeParts.Val)*float64(t.h.Travel.Val) > float64(r.Length.Val):
		l.add("length of the rope at hand", unit.Metres, float64(t.h.Reeving.RopeParts.Val)*float64(t.h.Travel.Val), float64(r.Length.Val), 1, 1)
	}
	c := l.verdict()
	mend := change("Use a wider drum, higher flanges or a thinner rope.")
	if c.Case == "length of the rope at hand" {
		mend = change("Use a longer rope.")
	}
	tell(c, winds, mend)
	return []*Check{c}
}

// deadWrapsChecks: the turns that stay on at the lowest: 2 (ASME B30.7, 29 CFR 1910.179), 3 for OK (30 CFR 75.1436);
// slippery high-modulus rope 5 (from memory).
func deadWrapsChecks(t *loads) []*Check {
	l := newLine("dead_wraps", "the turns that stay on the drum", "turns ≥ 2", source.WinchRules.At("7-1.2.6"))
	l.also(source.CraneRules.At("two wraps"), source.MineHoists.At("(b), three turns"), source.Alberta.At("five turns"))
	n, ok := t.h.Drum.DeadWraps.Value()
	wanted, okB := 2.0, 3.0
	if t.h.Rope.Kind == lift.RopeHMPE {
		wanted, okB = 5, 5
	}
	if !ok {
		l.miss("drum.dead_wraps")
	} else {
		l.add("mass at the lowest", unit.Pieces, 1, float64(n), wanted, okB)
	}
	c := l.verdict()
	good := say.Times(unit.Ratio(okB))
	tell(c, verbs{}, change("Leave at least %s turns on the drum with the mass at its lowest, and fasten the end.", good))
	countSay(c, say.That("%s on.", say.Plural(int(n), "turn stays", "turns stay")), change("Leave at least %s, and fasten the end.", good))
	if c.Word == Tight {
		c.Say = say.Join(c.Say, say.That("Three are better."))
	}
	return []*Check{c}
}

// fleetAngleChecks: smooth drum 1.5° for OK and 3° at most, grooved 2° and 5°. Not known counts as smooth.
func fleetAngleChecks(t *loads) []*Check {
	l := newLine("fleet_angle", "the rope's side angle at the drum", "angle ≤ 3° (grooved 5°)", source.FleetRule.At("fleet angle"))
	most, good := 3.0, 1.5
	if t.h.Drum.Grooved == unit.Yes {
		most, good = 5, 2
	}
	a, ok := t.h.Drum.FleetAngle.Value()
	if !ok {
		l.miss("drum.fleet_angle_rad")
	} else {
		l.add("rope at the flange", unit.Radians, float64(a), most*math.Pi/180, 1, most/good)
	}
	c := l.verdict()
	tell(c, leads, change("Set the first pulley further from the drum, or use a narrower drum."))
	return []*Check{c}
}

// bendRatioChecks: pulley and drum diameter over rope diameter, wire 12 at least and 20 for OK, fibre 4 and 8.
func bendRatioChecks(t *loads) []*Check {
	if !t.reeved {
		l := newLine("bend_ratio", "the size of drum and pulleys", "D/d", source.FibreSheave.Whole())
		l.miss("reeving.rope_parts", "reeving.lead_sheaves")
		l.miss(deleteEmpty(t.missing)...)
		c := l.verdict()
		tell(c, verbs{}, remedy{})
		return []*Check{c}
	}
	var out []*Check
	for j := 0; j < t.n+t.k; j++ {
		out = append(out, t.bendCheck(j))
	}
	return out
}

func (t *loads) bendCheck(j int) *Check {
	name, D, path, of := "the rope bent round the drum", t.h.Drum.Diameter, "drum.diameter_m", "drum.diameter_m"
	if j > 0 {
		name, D, path = "the rope bent round "+t.pulleyName(j), t.pulley(j).Diameter, t.pulleyPath(j, "diameter_m")
		of = t.pulleyPlace(j)
	}
	l := newLine("bend_ratio", name, "D/d ≥ 4 (wire 12)", source.FibreSheave.At("minimum diameters")).of(of)
	wanted, ok := bendBorders(t.h.Rope.Kind)
	d := t.h.Rope.Diameter
	if !d.Is {
		l.miss("rope.diameter_m")
	}
	if !D.Is {
		l.miss(path)
	}
	if t.h.Rope.Kind == "" {
		l.miss("rope.kind")
	}
	if d.Is && D.Is {
		l.add("rope bent round it", unit.Metres, float64(d.Val), float64(D.Val), wanted, ok)
	}
	c := l.verdict()
	good, least := say.Times(unit.Ratio(ok)), say.Times(unit.Ratio(wanted))
	tell(c, verbs{}, change("Use a larger one: at least %s rope diameters.", good))
	if c.Had.Is {
		countSay(c, say.That("It is %s rope diameters wide.", say.Times(c.Had.Val)), always("At least %s are needed, %s are good.", least, good))
		if c.Word == Tight {
			c.Say = say.Join(c.Say, say.That("The rope wears fast there; %s are good.", good))
		}
	}
	return c
}
