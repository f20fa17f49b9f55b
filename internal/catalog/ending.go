package catalog

import (
	"fmt"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// Ending is how a rope's end is fastened, with the share of the new rope's strength that it leaves.
type Ending struct {
	From
	Name  string
	Word  lift.Ending // the word of the design: "splice"
	Wire  bool        // for wire rope; else for fibre rope
	Share unit.Ratio
}

// Take copies the row into a rope of the same sort. The share is strength, and for a rope whose material is not known it
// stays not known.
func (e Ending) Take(into *lift.Rope, wasRead bool) (Taken, error) {
	var t Taken
	if into.Kind != "" && (into.Kind == lift.RopeWire) != e.Wire {
		if e.Wire {
			return t, fmt.Errorf("this ending is for wire rope, and the rope of this hoist is not wire")
		}
		return t, fmt.Errorf("this ending is for fibre rope, and the rope of this hoist is wire")
	}
	copied(&t, &into.Ending, e.Word, "ending")
	from := e.From
	from.Label = from.Label || into.Kind == "" // a share of nobody knows what
	strength(&t, from, wasRead && into.Kind != "", &into.KnotFactor, unit.Of(e.Share), "knot_factor")
	return t, nil
}

// Endings returns the endings that the checks know.
func Endings() []Ending {
	terminals := func(note string) From {
		return readNote("TM 5-3810-305-10, table 4, Terminal efficiencies", note)
	}
	slippery := "Never in high-modulus rope: there a knot counts as nothing."
	return []Ending{
		{readNote("D. E. Avery, The New Encyclopedia of Knots, p. 125", ""), "Spliced eye", lift.EndingSplice, false, 0.9},
		{readNote("rope makers' advice: a figure of eight costs about 35 % of the strength", slippery), "Figure of eight", lift.EndingFigureEight, false, 0.65},
		{readNote("Cordage Institute, CI 1401-06: a knot may cost half of the strength", slippery+" Books differ: a bowline costs 10 to 40 %."), "Bowline", lift.EndingBowline, false, 0.5},
		{readNote("Cordage Institute, CI 1401-06; an overhand knot costs 55 %", slippery), "Another knot", lift.EndingOtherKnot, false, 0.45},
		{fromMemory("Pressed and clamped endings are made for wire."), "Clips or clamps on fibre rope", lift.EndingClips, false, 0.45},
		{terminals("The table gives 92.5 % for a pressed sleeve on rope with a fibre core."), "Swaged", lift.EndingSwaged, true, 0.9},
		{terminals("Enough clips for the size, tightened again under load."), "Clips", lift.EndingClips, true, 0.8},
		{terminals("The table gives 86 % at half an inch."), "Splice tucked by hand", lift.EndingSplice, true, 0.8},
	}
}

// Wear is the share of strength that sun, wet and wear leave.
type Wear struct {
	From
	Name  string
	Share unit.Ratio
}

// Take copies the row into a rope: from memory, so only with the user's own word.
func (w Wear) Take(into *lift.Rope, wasRead bool) Taken {
	var t Taken
	strength(&t, w.From, wasRead, &into.AgeFactor, unit.Of(w.Share), "age_factor")
	return t
}

// Wears returns the shares that the checks take where none is given.
func Wears() []Wear {
	return []Wear{
		{rememberedOf("a worn rope, 80 %", ""), "Any rope, worn, kept dry and dark", 0.8},
		{rememberedOf("a worn rope and a year of sun, 80 % each", ""), "Polyester or high-modulus rope, worn, a year outdoors", 0.64},
		{rememberedOf("a worn rope, 80 %, and a year of sun, 50 %", "Cheap polypropylene can be brittle within weeks."), "Polypropylene, worn, a year outdoors", 0.4},
		{rememberedOf("a worn rope, a year of sun, 80 % each, and wet, 85 %", "Wet nylon loses 5 to 25 %."), "Nylon, worn, a year outdoors and wet", 0.544},
	}
}

// Bag is a bag for loose stuff by the factor that its label must name. What it carries only its label says.
type Bag struct {
	From
	Name   string
	Factor unit.Ratio
}

// Take makes a bag of this sort hold the mass. The working load of another container goes with it.
func (b Bag) Take(into *lift.Container, wasRead bool) Taken {
	var t Taken
	if into.Kind != lift.ContainerBag {
		into.Rating = unit.Known[unit.Force]{}
		t.Open = append(t.Open, "working_load_n")
		gone(&t, &into.Age, "in_use_s")
	}
	copied(&t, &into.Kind, lift.ContainerBag, "kind")
	strength(&t, b.From, wasRead, &into.Factor, unit.Of(b.Factor), "safety_factor")
	return t
}

// Bags returns the three sorts of ISO 21898.
func Bags() []Bag {
	from := func(note string) From { return labelled("ISO 21898:2024, classes of flexible bulk containers", note) }
	return []Bag{
		{from("Its type test is 30 lifts: not for every day."), "Bag for a single trip, 5 to 1", 5},
		{from("Load it to half its label, replace it after 12 months of sun."), "Bag for several trips, 6 to 1", 6},
		{from("Load it to half its label, replace it after 12 months of sun."), "Heavy bag for many trips, 8 to 1", 8},
	}
}
