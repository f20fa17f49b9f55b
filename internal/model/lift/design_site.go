package lift

import "duskweight/internal/model/unit"

// Site is the seven questions and what is around the hoist. Each answer is yes, no or not known; not known counts as
// the worse one, and the program never answers for the user.
type Site struct {
	Outdoors    unit.Answer             `json:"outdoors" say:"Is the hoist outdoors?" enum:"|yes|no"`
	Earthquake  Earthquakes             `json:"earthquake" say:"Earthquakes here?" enum:"|none|some|strong"`
	Children    unit.Answer             `json:"children" say:"Can children or animals come near?" enum:"|yes|no"`
	Owner       Consent                 `json:"owner" say:"Owner of the structure, and whether the owner agreed" enum:"|own|agreed|not_asked"`
	LivesBelow  unit.Answer             `json:"lives_below" say:"Does anyone live below or behind the hoist?" enum:"|yes|no"`
	Helper      unit.Answer             `json:"helper" say:"Is there someone who can come to help?" enum:"|yes|no"`
	SelfStart   unit.Answer             `json:"self_start" say:"Can the hoist start by itself?" enum:"|yes|no"`
	ComesDown   string                  `json:"comes_down_without_power" say:"How the mass comes down with no power, a stuck brake or a jammed rope"`
	FloorBelow  FloorBelow              `json:"floor_below" say:"What is under the floor" enum:"|solid_ground|cellar|room|pipes_or_tank"`
	PadDepth    unit.Known[unit.Length] `json:"pad_depth_m" say:"Depth of the soft landing under the mass" range:"[0,5]"`
	LoadWidth   unit.Known[unit.Length] `json:"load_width_m" say:"Width of the mass" range:"(0,20]"`
	LoadHeight  unit.Known[unit.Length] `json:"load_height_m" say:"Height of the mass" range:"(0,20]"`
	FrameHeight unit.Known[unit.Length] `json:"frame_height_m" say:"Height of the frame" range:"(0,1000]"`
	Told        unit.Answer             `json:"neighbours_told" say:"Do household and neighbours know the hours of lifting?" enum:"|yes|no"`
	Lit         unit.Answer             `json:"lit_at_night" say:"Light there at night?" enum:"|yes|no"`
	Noise       unit.Answer             `json:"noise_at_bed" say:"Is the noise at the bed measured and acceptable?" enum:"|yes|no"`
	WindPlan    unit.Answer             `json:"wind_plan" say:"Is the mass lowered in wind, frost and gales?" enum:"|yes|no"`
	Insurance   unit.Answer             `json:"insurance_and_rules" say:"Insurance and local rule asked?" enum:"|yes|no"`
	Watched     unit.Answer             `json:"watched_halfway" say:"Does someone watch the mass while it hangs halfway?" enum:"|yes|no"`

	Barrier         Barrier                 `json:"barrier" say:"What keeps people away from the mass: a locked room, a fence at least {1.8 m} high, or nothing" enum:"|locked_room|fence|none"`
	BelowSecured    unit.Answer             `json:"below_secured" say:"Is the room under the floor emptied and locked, and are pipes and tanks moved?" enum:"|yes|no"`
	SelfStartGuard  unit.Answer             `json:"self_start_guard" say:"Is there a lockable switch, no restart after a power loss, a warning, and a stop that sets the brake?" enum:"|yes|no"`
	CarriesPeople   unit.Answer             `json:"carries_people" say:"Does it ever carry a person?" enum:"|yes|no"`
	WayDown         WayDown                 `json:"way_down" say:"How it comes down with dead power" enum:"|hand_crank|brake_by_hand|other_hoist|none"`
	MayFall         unit.Answer             `json:"may_fall" say:"Can nobody be where the mass may fall?" enum:"|yes|no"`
	FenceRadius     unit.Known[unit.Length] `json:"fence_radius_m" say:"Distance from the point under the mass to the fence" range:"(0,100]"`
	ControlsOutside unit.Answer             `json:"controls_outside" say:"Are all controls outside the fence or the locked room?" enum:"|yes|no"`
	Rig             unit.Known[unit.Length] `json:"rig_m" say:"Height of splice, thimble, shackle and hook between mass and rope; not known counts as {200 mm:1}" range:"[0.02,2]"`
}

// Earthquakes is how much the ground shakes at a place.
type Earthquakes string

// The words of Earthquakes.
const (
	EarthquakesNone   Earthquakes = "none"
	EarthquakesSome   Earthquakes = "some"
	EarthquakesStrong Earthquakes = "strong"
)

// Consent is whether the owner of the structure agreed.
type Consent string

// The words of Consent.
const (
	ConsentOwn      Consent = "own"
	ConsentAgreed   Consent = "agreed"
	ConsentNotAsked Consent = "not_asked"
)

// FloorBelow is what is under the floor that the mass can fall on.
type FloorBelow string

// The words of FloorBelow.
const (
	FloorSolidGround FloorBelow = "solid_ground"
	FloorCellar      FloorBelow = "cellar"
	FloorRoom        FloorBelow = "room"
	FloorPipesOrTank FloorBelow = "pipes_or_tank"
)

// Barrier is what keeps people away from the mass.
type Barrier string

// The words of Barrier.
const (
	BarrierLockedRoom Barrier = "locked_room"
	BarrierFence      Barrier = "fence"
	BarrierNone       Barrier = "none"
)

// WayDown is how the mass comes down without power.
type WayDown string

// The words of WayDown.
const (
	DownHandCrank   WayDown = "hand_crank"
	DownBrakeByHand WayDown = "brake_by_hand"
	DownOtherHoist  WayDown = "other_hoist"
	DownNone        WayDown = "none"
)
