package catalog

import (
	"fmt"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// Material is what a mass can be made of. Volume × density is a guess to ± 10 %: weigh it.
type Material struct {
	From
	Name      string
	Low, High unit.Density // the same where one value is given
}

// TakePiece is a piece of the mass of that volume, at the middle density, guessed and not weighed.
func (a Material) TakePiece(v unit.Volume) lift.Piece {
	return lift.Piece{Name: a.Name, Mass: unit.Of(unit.Mass(float64(v) * float64(a.Low+a.High) / 2)), Weighed: lift.ByVolume}
}

// AddToBase adds the volume at the low density, the careful one, to what keeps the drive down.
func (a Material) AddToBase(into *lift.Base, v unit.Volume) Taken {
	var t Taken
	copied(&t, &into.Mass, unit.Of(into.Mass.Or(0)+unit.Mass(float64(v)*float64(a.Low))), "base.mass_kg")
	return t
}

func (a Material) takeHoist(h *lift.Hoist, c Choice) (Taken, error) {
	v, ok := c.Volume.Value()
	switch {
	case !ok || v <= 0:
		return Taken{}, fmt.Errorf("give its volume")
	case c.At == "base":
		return a.AddToBase(&h.Base, v), nil
	}
	h.Mass = append(h.Mass[:len(h.Mass):len(h.Mass)], a.TakePiece(v))
	at := fmt.Sprintf("mass[%d].", len(h.Mass)-1)
	return Taken{Copied: []string{at + "mass_kg"}, Own: []string{at + "name", at + "weighed"}}, nil
}

// Materials returns what makers hang.
func Materials() []Material {
	table := func(note string) From { return readNote("bulk densities, engineers' table", note) }
	return []Material{
		{table("When wet, it is 15 to 20 % heavier: weigh it, and let rain out."), "Sand, dry", 1520, 1680},
		{table("When wet, it is heavier: weigh it."), "Gravel, loose", 1520, 1520},
		{table("When wet, it is heavier: weigh it."), "Gravel with sand", 1920, 1920},
		{table(""), "Crushed stone", 1600, 1600},
		{table(""), "Concrete", 2400, 2400},
		{table(""), "Brick", 1920, 1920},
		{table("When wet, it is heavier: weigh it."), "Earth, packed", 1520, 1520},
		{table(""), "Cast iron", 7208, 7208},
		{fromMemory("No open water where children come near."), "Water", 1000, 1000},
		{fromMemory(""), "Steel", 7850, 7850},
		{fromMemory(""), "Granite", 2700, 2700},
	}
}

// Timber is a strength class that a beam or post may be stamped with. The strengths themselves stand with the checks.
type Timber struct {
	From
	Class lift.TimberClass
	Bend  unit.Stress // characteristic bending strength
	Dense unit.Density
}

// TakeBeam makes the beam timber of this class; a round pole stays one.
func (w Timber) TakeBeam(into *lift.Beam, wasRead bool) Taken {
	var t Taken
	if into.Kind != lift.MemberRoundPole {
		copied(&t, &into.Kind, lift.MemberTimber, "kind")
	}
	gone(&t, &into.Wall, "wall_m")
	gone(&t, &into.Yield, "yield_pa")
	strength(&t, w.From, wasRead, &into.Class, w.Class, "class")
	return t
}

// TakePost does the same to a post.
func (w Timber) TakePost(into *lift.Post, wasRead bool) Taken {
	var t Taken
	if into.Kind != lift.MemberRoundPole {
		copied(&t, &into.Kind, lift.MemberTimber, "kind")
	}
	gone(&t, &into.Wall, "wall_m")
	gone(&t, &into.Yield, "yield_pa")
	strength(&t, w.From, wasRead, &into.Class, w.Class, "class")
	return t
}

// TimberClasses returns the classes of EN 338, and one of glued timber. Which one a beam is, its stamp says.
func TimberClasses() []Timber {
	note := "Trust only its stamp: an old or unmarked beam has no class."
	soft := labelled("EN 338:2016, table 1", note)
	hard := labelled("EN 338:2016, table 3", note)
	return []Timber{
		{soft, lift.TimberC14, 14 * unit.Megapascal, 350},
		{soft, lift.TimberC16, 16 * unit.Megapascal, 370},
		{soft, lift.TimberC18, 18 * unit.Megapascal, 380},
		{soft, lift.TimberC20, 20 * unit.Megapascal, 400},
		{soft, lift.TimberC22, 22 * unit.Megapascal, 410},
		{soft, lift.TimberC24, 24 * unit.Megapascal, 420},
		{soft, lift.TimberC27, 27 * unit.Megapascal, 430},
		{soft, lift.TimberC30, 30 * unit.Megapascal, 460},
		{hard, lift.TimberD24, 24 * unit.Megapascal, 580},
		{hard, lift.TimberD30, 30 * unit.Megapascal, 640},
		{hard, lift.TimberD40, 40 * unit.Megapascal, 660},
		{labelled("EN 14080:2013, table 5", note), lift.TimberGL24h, 24 * unit.Megapascal, 420},
	}
}
