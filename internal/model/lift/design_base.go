package lift

import "duskweight/internal/model/unit"

// Base is what the drive stands on and what keeps it down.
type Base struct {
	Where        BaseWhere               `json:"where" say:"Where drum and motor are" enum:"|on_ground|on_beam|on_wall"`
	Mass         unit.Known[unit.Mass]   `json:"mass_kg" say:"Mass that keeps the drive on the ground: base, drive and weights" range:"[0,1e6]"`
	WeightsFixed unit.Answer             `json:"weights_fixed" say:"Are the weights fastened, so that nobody removes one?" enum:"|yes|no"`
	LoosePart    unit.Known[unit.Mass]   `json:"loose_mass_kg" say:"Loose weights in that mass, which someone could remove" range:"[0,1e6]"`
	Width        unit.Known[unit.Length] `json:"width_m" say:"Width of the base in the direction of the pull" range:"(0,20]"`
	PullHeight   unit.Known[unit.Length] `json:"pull_height_m" say:"Height above the ground where the rope leaves the base" range:"[0,20]"`
	PullOffset   unit.Known[unit.Length] `json:"pull_offset_m" say:"From the middle of the base to where the rope goes up, towards the tipping edge" range:"[0,20]"`
	RopeAngle    unit.Known[unit.Angle]  `json:"rope_angle_rad" say:"Angle of the rope that leaves the base from straight up; not known counts as the angle at the top pulley, where the rope runs straight to it" range:"[0,1.5707963267948966]"`
	Friction     unit.Known[unit.Ratio]  `json:"friction" say:"Friction between base and ground, as measured by a pull; not known counts as the low published value of the two materials, where there is one" range:"(0,1]"`
	Underside    Underside               `json:"underside" say:"What its underside is made of, where it touches the ground" enum:"|timber|steel|concrete|rubber"`
	Ground       Ground                  `json:"ground" say:"What is under the base" enum:"|rock|gravel|sand|clay|concrete_slab|timber_floor|fill|mud|not_seen"`
	Board        Board                   `json:"board"`
}

// Board is the plate that drive and weights are screwed to.
type Board struct {
	Thickness unit.Known[unit.Length] `json:"thickness_m" say:"Thickness of the base board" range:"(0,1]"`
	Width     unit.Known[unit.Length] `json:"width_m" say:"Its width across the bending" range:"(0,10]"`
	Arm       unit.Known[unit.Length] `json:"arm_m" say:"From the drum's screws to the nearest weight" range:"(0,10]"`
	Strength  unit.Known[unit.Stress] `json:"bending_strength_pa" say:"Bending strength of the board" range:"(0,5e9]"`
}

// Ground is what posts or the base stand on.
type Ground string

// The words of Ground.
const (
	GroundRock         Ground = "rock"
	GroundGravel       Ground = "gravel"
	GroundSand         Ground = "sand"
	GroundClay         Ground = "clay"
	GroundConcreteSlab Ground = "concrete_slab"
	GroundFill         Ground = "fill"
	GroundMud          Ground = "mud"
	GroundNotSeen      Ground = "not_seen"
	GroundTimberFloor  Ground = "timber_floor"
)

// BaseWhere is where motor and drum are fastened.
type BaseWhere string

// The words of BaseWhere.
const (
	BaseOnGround BaseWhere = "on_ground"
	BaseOnBeam   BaseWhere = "on_beam"
	BaseOnWall   BaseWhere = "on_wall"
)
