package lift

import "duskweight/internal/model/unit"

// Underside is what the base touches its ground with.
type Underside string

// The words of Underside.
const (
	UndersideTimber   Underside = "timber"
	UndersideSteel    Underside = "steel"
	UndersideConcrete Underside = "concrete"
	UndersideRubber   Underside = "rubber"
)

// Friction of an underside on a concrete floor: the lowest values measured by Pallett, Gorst, Clark and Thomas (2002) are
// concrete 0.4, plain steel 0.1 on concrete as cast and 0.5 where it was trowelled, timber across its grain 0.7. Steel has
// the lower of its two, since nobody sees how a floor was made; timber 0.4, and 0.3 where it may be wet (our own judgement,
// for along the grain, dust and wet). For rubber none is published that holds on a dusty floor.
const (
	timberDry     unit.Ratio = 0.4
	timberWet     unit.Ratio = 0.3
	concreteOn    unit.Ratio = 0.4
	steelOnAsCast unit.Ratio = 0.1
)

// Published is the low value of the friction between base and ground for what the two are made of; not known for pairs
// without one. Outdoors, and where nobody says that it stands indoors, the floor may be wet.
func (b Base) Published(outdoors unit.Answer) unit.Known[unit.Ratio] {
	if b.Ground != GroundConcreteSlab {
		return unit.Known[unit.Ratio]{}
	}
	switch {
	case b.Underside == UndersideTimber && outdoors == unit.No:
		return unit.Of(timberDry)
	case b.Underside == UndersideTimber:
		return unit.Of(timberWet)
	case b.Underside == UndersideConcrete:
		return unit.Of(concreteOn)
	case b.Underside == UndersideSteel:
		return unit.Of(steelOnAsCast)
	}
	return unit.Known[unit.Ratio]{}
}

// Grip is the friction that counts between base and ground: what was measured, else the published one of the two materials.
func (h Hoist) Grip() unit.Known[unit.Ratio] {
	if h.Base.Friction.Is {
		return h.Base.Friction
	}
	return h.Base.Published(h.Site.Outdoors)
}
