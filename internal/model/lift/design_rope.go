package lift

import "duskweight/internal/model/unit"

// Rope is the rope from the drum to its dead end. Strength is never typical: the breaking load is the user's statement.
type Rope struct {
	Kind         RopeKind                `json:"kind" say:"Material" enum:"|polyester|nylon|polypropylene|hmpe|other_fibre|wire"`
	Diameter     unit.Known[unit.Length] `json:"diameter_m" say:"Rope diameter" range:"(0,0.2]"`
	BreakingLoad unit.Known[unit.Force]  `json:"breaking_load_n" say:"Least breaking load of the new rope, from its label" range:"(0,1e8]"`
	Length       unit.Known[unit.Length] `json:"length_m" say:"Rope at hand" range:"(0,10000]"`
	Ending       Ending                  `json:"ending" say:"How its ends are fastened" enum:"|splice|figure_eight|bowline|other_knot|swaged|clips|thimble_clamp"`
	KnotFactor   unit.Known[unit.Ratio]  `json:"knot_factor" say:"Share of strength left at the ending; not known counts as the careful value of the ending" range:"(0,1]"`
	AgeFactor    unit.Known[unit.Ratio]  `json:"age_factor" say:"Share of strength left after sun, wet and wear; not known counts as the careful value" range:"(0,1]"`
	Outdoors     unit.Answer             `json:"outdoors" say:"Does it hang in sun and rain?" enum:"|yes|no"`
	Stiffness    unit.Known[unit.Force]  `json:"stiffness_ea_n" say:"Axial stiffness EA of the rope" range:"(0,1e9]"`
}

// Reeving is the way of the rope over the pulleys. Pulleys are counted from the drum: LeadSheaves of them before the
// mass (the top pulley is the last of these), then RopeParts − 1 between the parts that carry the mass.
type Reeving struct {
	RopeParts   unit.Known[unit.Count] `json:"rope_parts" say:"Ropes that carry the mass, counted at the mass" range:"[1,12]"`
	LeadSheaves unit.Known[unit.Count] `json:"lead_sheaves" say:"Pulleys between mass and drum, the top pulley included; 0 if the drum is above the mass" range:"[0,12]"`
	Efficiency  unit.Known[unit.Ratio] `json:"sheave_efficiency" say:"Efficiency of one pulley with this rope" range:"(0,1]"`
	// Sheaves gives single pulleys that are not like the rest, in order from the drum; a missing or not known value
	// falls back to Efficiency.
	Sheaves []Sheave `json:"sheaves" say:"Single pulleys in order from the drum, where they differ or carry a rating"`
	DeadEnd DeadEnd  `json:"dead_end" say:"Where the far end of the rope is made fast" enum:"|beam|mass"`
}

// Sheave is one pulley.
type Sheave struct {
	Name       string                  `json:"name" say:"Where it hangs"`
	Efficiency unit.Known[unit.Ratio]  `json:"efficiency" say:"Its efficiency with this rope" range:"(0,1]"`
	Diameter   unit.Known[unit.Length] `json:"diameter_m" say:"Diameter at the bottom of its groove" range:"(0,5]"`
	Rating     unit.Known[unit.Force]  `json:"working_load_n" say:"Working load on its label" range:"(0,1e8]"`
	RatingOf   RatingOf                `json:"rating_of" say:"What the label means: pull in the rope, or load on the hook" enum:"|rope_pull|hook_load"`
	Angle      unit.Known[unit.Angle]  `json:"angle_rad" say:"Angle between the two sides of the rope at this pulley: 0 when they run side by side" range:"[0,3.141592653589793]"`
	OnBase     unit.Answer             `json:"on_base" say:"Is this pulley fastened to the base of the drive?" enum:"|yes|no"`
	Fixing     unit.Known[unit.Force]  `json:"fixing_working_load_n" say:"Extra pulley: working load of what it is fastened to" range:"(0,1e8]"`
}

// RopeKind is what a rope is made of.
type RopeKind string

// The words of RopeKind.
const (
	RopePolyester     RopeKind = "polyester"
	RopeNylon         RopeKind = "nylon"
	RopePolypropylene RopeKind = "polypropylene"
	RopeHMPE          RopeKind = "hmpe"
	RopeOtherFibre    RopeKind = "other_fibre"
	RopeWire          RopeKind = "wire"
)

// Ending is how the ends of a rope are fastened.
type Ending string

// The words of Ending.
const (
	EndingSplice       Ending = "splice"
	EndingFigureEight  Ending = "figure_eight"
	EndingBowline      Ending = "bowline"
	EndingOtherKnot    Ending = "other_knot"
	EndingSwaged       Ending = "swaged"
	EndingClips        Ending = "clips"
	EndingThimbleClamp Ending = "thimble_clamp"
)

// DeadEnd is where the far end of the rope is made fast.
type DeadEnd string

// The words of DeadEnd.
const (
	DeadEndBeam DeadEnd = "beam"
	DeadEndMass DeadEnd = "mass"
)

// RatingOf is what the label of a pulley means: the pull in its rope, or the load on its hook.
type RatingOf string

// The words of RatingOf.
const (
	RatingRopePull RatingOf = "rope_pull"
	RatingHookLoad RatingOf = "hook_load"
)
