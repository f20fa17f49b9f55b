package path

import (
	"fmt"
	"math"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// pulley is pulley j, counted from 1 at the drum; one that is not listed is empty.
func (t *loads) pulley(j int) lift.Sheave {
	if j >= 1 && j <= len(t.h.Reeving.Sheaves) {
		return t.h.Reeving.Sheaves[j-1]
	}
	return lift.Sheave{}
}

func (t *loads) pulleyPath(j int, field string) string { return at("reeving.sheaves", j-1, field) }

// pulleyPlace is where the hoist names pulley j; all of them where j is not known.
func (t *loads) pulleyPlace(j int) string {
	if j < 1 {
		return "reeving.sheaves"
	}
	return rowOf("reeving.sheaves", j-1)
}

// pulleyName names pulley j in plain words. After the head pulley the pulleys sit in turn on the mass and on the beam.
func (t *loads) pulleyName(j int) string {
	if n := t.pulley(j).Name; n != "" {
		return n
	}
	switch {
	case j == t.k:
		return "the top pulley"
	case j < t.k:
		return fmt.Sprintf("extra pulley %d from the drum", j)
	case (j-t.k)%2 == 1:
		return fmt.Sprintf("pulley %d from the drum, on the mass", j)
	}
	return fmt.Sprintf("pulley %d from the drum, on the beam", j)
}

// angle is the angle between the two rope parts at pulley j; not known counts as side by side, the worst.
func (t *loads) angle(j int) float64 {
	if a, ok := t.pulley(j).Angle.Value(); ok {
		return float64(a)
	}
	if j == t.k {
		return float64(t.h.Structure.LeadAngle.Or(0))
	}
	return 0
}

// resultant is lift.PulleyPull of two rope parts, N, with the angle theta, rad, between them.
func resultant(a, b, theta float64) float64 {
	return float64(lift.PulleyPull(unit.Force(a), unit.Force(b), unit.Angle(theta)))
}

// hook is the static force that pulley j hangs on its hook with: the larger of raising and lowering.
func (t *loads) hook(j int) float64 {
	th := t.angle(j)
	return max(resultant(t.up[j-1], t.up[j], th), resultant(t.down[j-1], t.down[j], th))
}

func headSheaveChecks(t *loads) []*Check {
	if t.reeved && t.k == 0 {
		return nil
	}
	if !t.reeved {
		return []*Check{t.pulleyCheck("head_sheave", 0)}
	}
	return []*Check{t.pulleyCheck("head_sheave", t.k)}
}

func redirectChecks(t *loads) []*Check {
	var out []*Check
	for j := 1; t.reeved && j <= t.n+t.k-1; j++ {
		if j != t.k {
			out = append(out, t.pulleyCheck("redirect_sheave", j))
		}
		if j < t.k && t.pulley(j).OnBase != unit.Yes {
			out = append(out, t.fixingCheck(j))
		}
	}
	return out
}

// pulleyCheck sets φ times the force of both rope sides against the pulley's rating. A label that means the pull in the
// rope stands for twice that on the hook; a label whose meaning is not known is read as the load on the hook.
func (t *loads) pulleyCheck(id string, j int) *Check {
	l := newLine(id, t.pulleyName(j), "φ·√(T₁² + T₂² + 2·T₁·T₂·cos θ) ≤ working load on the hook", source.BlockAngles.At("resultant of both rope sides")).of(t.pulleyPlace(j))
	t.phiSource(l)
	l.miss(t.missing...)
	if j < 1 {
		l.c.Part = "the top pulley"
		c := l.verdict()
		tell(c, carries, remedy{})
		return c
	}
	s := t.pulley(j)
	rating, ok := s.Rating.Value()
	if !ok {
		l.miss(t.pulleyPath(j, "working_load_n"))
	}
	capacity, note := float64(rating), say.Sentence{}
	switch s.RatingOf {
	case lift.RatingRopePull:
		capacity *= 2
		note = say.That("Its label means the pull in the rope, so the hook may carry twice that.")
	case "":
		note = say.That("What its label means is not known; it is read as the load on the hook.")
	}
	if !ok {
		note = say.Sentence{}
	}
	l.in("working load on its label", float64(rating), unit.Newtons)
	l.in("angle between the two sides of the rope", t.angle(j), unit.Radians)
	l.in("factor for jerks φ", t.phi, unit.Pieces)
	mend := always("The pulley carries both sides of the rope.").and(change("Use one with a higher rating, or less mass."))
	if t.known() {
		l.in("tension on the drum's side, raising", t.up[j-1], unit.Newtons)
		l.in("tension on the far side, raising", t.up[j], unit.Newtons)
		if ok {
			l.add("working", unit.Newtons, t.phi*t.hook(j), capacity, 1, 1.25)
			t.addCaught(l, t.hook(j), capacity)
		} else {
			mend = always("It carries both sides of the rope, %s: look for that rating on its label.", heavy(t.phi*t.hook(j)))
		}
	}
	c := l.verdict()
	tell(c, carries, mend)
	c.Say = say.Join(c.Say, note)
	return c
}

// fixingPrefix begins the part of a fixingCheck.
const fixingPrefix = "what holds "

// fixingCheck looks at what holds an extra pulley that is neither on the beam with the top pulley nor on the base.
func (t *loads) fixingCheck(j int) *Check {
	l := newLine("redirect_sheave", fixingPrefix+t.pulleyName(j), "φ·√(T₁² + T₂² + 2·T₁·T₂·cos θ) ≤ working load of the fastening", source.BlockAngles.At("resultant of both rope sides")).of(t.pulleyPlace(j))
	t.phiSource(l)
	l.miss(t.missing...)
	rating, ok := t.pulley(j).Fixing.Value()
	if !ok {
		l.miss(t.pulleyPath(j, "fixing_working_load_n"))
	}
	l.in("working load of the fastening", float64(rating), unit.Newtons)
	l.in("angle between the two sides of the rope", t.angle(j), unit.Radians)
	l.in("factor for jerks φ", t.phi, unit.Pieces)
	mend := always("Fasten it to something stronger, or to the base with the drive.")
	if t.known() {
		if ok {
			l.add("working", unit.Newtons, t.phi*t.hook(j), float64(rating), 1, 1.25)
			t.addCaught(l, t.hook(j), float64(rating))
		} else {
			mend = always("It must carry %s. Say what it carries, or fasten the pulley to the base of the drive.", heavy(t.phi*t.hook(j)))
		}
	}
	c := l.verdict()
	tell(c, carries, mend)
	return c
}

// hangerAngleShare is what an angled pull leaves of the working load: shoulder eye bolts 100 % up to 5°, 80 % to 15°,
// 65 % to 30°, 30 % to 45°, 25 % beyond; shackles 70 % to 45°, 50 % beyond; a plain eye bolt nothing off its axis;
// hooks and rated slings turn into the pull.
func hangerAngleShare(kind lift.HangerKind, angle float64) float64 {
	deg := angle * 180 / math.Pi
	const slack = 1e-9
	switch kind {
	case lift.HangerShoulderEyebolt:
		switch {
		case deg <= 5+slack:
			return 1
		case deg <= 15+slack:
			return .8
		case deg <= 30+slack:
			return .65
		case deg <= 45+slack:
			return .3
		}
		return .25
	case lift.HangerPlainEyebolt, lift.HangerOther, "":
		if deg <= 5+slack {
			return 1
		}
		return 0
	case lift.HangerShackle:
		switch {
		case deg <= 5+slack:
			return 1
		case deg <= 45+slack:
			return .7
		}
		return .5
	}
	return 1
}

// hangerChecks looks at the hook, eye or shackle of the top pulley: m·g on the side of the mass and T_{k−1} on the
// drum's side. With several ropes at the mass one hook is taken to carry them all.
func hangerChecks(t *loads) []*Check {
	if t.reeved && t.k == 0 {
		return nil
	}
	s := t.h.Structure
	l := newLine("hanger", "the hook of the top pulley", "φ·√((m·g)² + T² + 2·m·g·T·cos θ) ≤ working load · share at this angle", source.ShoulderEye.At("angle of pull"))
	l.also(source.ShackleSide.At("side loading"))
	t.phiSource(l)
	l.miss(t.missing...)
	rating, ok := s.HangerRating.Value()
	if !ok {
		l.miss("structure.hanger_working_load_n")
	}
	share := t.hangerShare(l)
	l.in("working load on its label", float64(rating), unit.Newtons)
	l.in("share left at this angle", share, unit.Pieces)
	l.in("factor for jerks φ", t.phi, unit.Pieces)
	mend := change("Use a stronger hook: it carries the mass and the pull to the drum.")
	if t.known() && t.k >= 1 {
		f := t.head()
		l.in("weight of the mass", t.weight(), unit.Newtons)
		l.in("tension towards the drum, raising", t.up[t.k-1], unit.Newtons)
		if ok {
			l.add("working", unit.Newtons, t.phi*f, float64(rating)*share, 1, 1.25)
			t.addCaught(l, f, float64(rating)*share)
		} else {
			mend = always("It carries %s: look for that on its label.", heavy(t.phi*f))
		}
		if t.steep() {
			l.add("pulled more than 45° off its axis", unit.Newtons, t.phi*f, 0, 1, 1.25)
			mend = always("An eye bolt may not be pulled this far off its own axis. Turn it into the pull, or use a shackle on a fitting made for it.")
		}
	}
	mend = mend.and(t.fastened(l))
	c := l.verdict()
	tell(c, carries, mend)
	return []*Check{c}
}

// fastened looks at how an eye bolt or hook is fastened: its rating holds for a full thread in metal. Through wood the
// washer must not crush it, 1.35·F ≤ k_mod·3·f_c,90/γ_M·A (EN 1995-1-1 10.4.3); a thread in wood and an anchor overhead
// stay not known. It returns what to say of it.
func (t *loads) fastened(l *line) remedy {
	s := t.h.Structure
	if s.HangerKind == lift.HangerShackle || s.HangerKind == lift.HangerRatedSling {
		return remedy{}
	}
	switch s.HangerFixing {
	case "":
		l.miss("structure.hanger_fixing")
	case lift.FixingScrewedIntoWood:
		l.miss("")
		return always("What a thread carries in wood is not known, least of all pulled sideways. Bolt it through with a large washer, or hang the pulley from a sling round the beam.")
	case lift.FixingAnchorInMasonry:
		if s.RestsOnOK != unit.Yes {
			l.miss("structure.rests_on_confirmed")
			return always("An anchor overhead in concrete or masonry stays not known until a qualified person has confirmed it.")
		}
	case lift.FixingBoltedThroughWood:
		return t.washer(l)
	}
	return remedy{}
}

func (t *loads) washer(l *line) remedy {
	s := t.h.Structure
	wood, okC := timberOf(s.Beam.Class)
	if !okC {
		l.miss("structure.beam.class")
	}
	d, ok := s.Washer.Value()
	if !ok {
		l.miss("structure.hanger_washer_m")
	}
	if !ok || !okC || !t.known() || t.k < 1 {
		return remedy{}
	}
	l.also(source.Eurocode5.At("10.4.3, washers"))
	hole := math.Min(float64(s.Beam.Hole.Or(0)), float64(d))
	area := math.Pi / 4 * (float64(d)*float64(d) - hole*hole)
	l.in("area of the washer on the wood", area, unit.SquareMetres)
	for _, c := range []struct {
		name  string
		phi   float64
		short bool
	}{{"at rest, washer on the wood", 1, false}, {"working, washer on the wood", t.phi, true}} {
		l.add(c.name, unit.Newtons, gammaG*c.phi*t.head(), kmod(t.outdoorsBeam(), c.short)*3*wood.fc90/gammaM*area, 1, 1.25)
	}
	if n := len(l.cases); useOf(l.cases[n-1]) > 1 || useOf(l.cases[n-2]) > 1 {
		return always("The washer is pressed into the wood: use a larger washer or a plate.")
	}
	return remedy{}
}

// head is the static force on what holds the top pulley.
func (t *loads) head() float64 {
	th := t.angle(t.k)
	return max(resultant(t.weight(), t.up[t.k-1], th), resultant(t.weight(), t.down[t.k-1], th))
}

// steep reports an eye bolt that is pulled further off its axis than any may be.
func (t *loads) steep() bool {
	s := t.h.Structure
	return (s.HangerKind == lift.HangerShoulderEyebolt || s.HangerKind == lift.HangerPlainEyebolt) && s.HangerAngle.Is && float64(s.HangerAngle.Val) > 45.0001*math.Pi/180
}

// hangerShare gives the share of the rating at the angle of pull and names what is missing for it. Where the kind or
// the angle is not known the whole rating stands in, the best there is: enough for "gives way" only.
func (t *loads) hangerShare(l *line) float64 {
	s := t.h.Structure
	if s.HangerKind == lift.HangerHook || s.HangerKind == lift.HangerRatedSling {
		return 1
	}
	if s.HangerKind == "" {
		l.miss("structure.hanger_kind")
	}
	a, ok := s.HangerAngle.Value()
	if !ok {
		l.miss("structure.hanger_angle_rad")
		return 1
	}
	l.in("angle of the pull from its axis", float64(a), unit.Radians)
	share := hangerAngleShare(s.HangerKind, float64(a))
	if s.HangerKind == "" || (s.HangerKind == lift.HangerOther && share == 0) {
		l.miss("") // what an angle takes off it is not known
		return 1
	}
	return share
}
