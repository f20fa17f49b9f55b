package lift

import "duskweight/internal/model/unit"

// Structure is what carries the hoist from the top pulley down to the ground.
type Structure struct {
	HangerRating unit.Known[unit.Force]  `json:"hanger_working_load_n" say:"Working load of the hook, eye bolt or shackle that holds the top pulley" range:"(0,1e8]"`
	HangerAngle  unit.Known[unit.Angle]  `json:"hanger_angle_rad" say:"Angle of the pull from the bolt's own axis" range:"[0,1.5707963267948966]"`
	HangerKind   HangerKind              `json:"hanger_kind" say:"What holds the top pulley" enum:"|shoulder_eyebolt|plain_eyebolt|shackle|hook|rated_sling|other"`
	HangerFixing HangerFixing            `json:"hanger_fixing" say:"How an eye bolt or hook is fastened" enum:"|bolted_through_wood|screwed_into_wood|threaded_into_metal|round_the_beam|anchor_in_masonry"`
	Washer       unit.Known[unit.Length] `json:"hanger_washer_m" say:"Bolted through wood: diameter of the washer, or side of the plate" range:"(0,1]"`
	SidePull     unit.Known[unit.Force]  `json:"side_pull_n" say:"Sideways pull at the top that the frame is braced for" range:"(0,1e8]"`
	HeadHeight   unit.Known[unit.Length] `json:"head_height_m" say:"Height of the top pulley above the ground" range:"(0,1000]"`
	LeadAngle    unit.Known[unit.Angle]  `json:"lead_line_angle_rad" say:"Angle between the rope to the drum and the rope to the mass, at the top pulley; 0 when both hang straight down" range:"[0,3.141592653589793]"`
	Beam         Beam                    `json:"beam"`
	Posts        []Post                  `json:"posts" say:"Posts that carry the beam"`
	RestsOn      RestsOn                 `json:"rests_on" say:"What the beam rests on, down to the ground" enum:"|own_posts_on_ground|concrete_or_masonry|roof_truss|joists|living_tree|balcony|engineered_steel|not_seen"`
	RestsOnOK    unit.Answer             `json:"rests_on_confirmed" say:"Has a qualified person confirmed it for this load?" enum:"|yes|no"`
}

// Beam is the beam that carries the top pulley.
type Beam struct {
	Kind    MemberKind              `json:"kind" say:"What the beam is; none for a tripod" enum:"|timber|round_pole|steel_tube|steel_round_tube|none|other"`
	Class   TimberClass             `json:"class" say:"Strength class, such as C24 of EN 338; your own statement" enum:"|C14|C16|C18|C20|C22|C24|C27|C30|D24|D30|D40|GL24h"`
	Width   unit.Known[unit.Length] `json:"width_m" say:"Width (round: diameter)" range:"(0,3]"`
	Depth   unit.Known[unit.Length] `json:"depth_m" say:"Height of the section" range:"(0,3]"`
	Wall    unit.Known[unit.Length] `json:"wall_m" say:"Tube: wall thickness" range:"(0,0.2]"`
	Yield   unit.Known[unit.Stress] `json:"yield_pa" say:"Steel: yield strength" range:"(0,2e9]"`
	Span    unit.Known[unit.Length] `json:"span_m" say:"Between supports (cantilever: from the support to the pulley)" range:"(0,50]"`
	Support BeamSupport             `json:"support" say:"How it is held" enum:"|two_supports|cantilever|both_ends_fixed"`
	From    unit.Known[unit.Length] `json:"load_from_support_m" say:"From the nearer support to the pulley; not known counts as the middle" range:"[0,50]"`
	Bearing unit.Known[unit.Length] `json:"bearing_length_m" say:"Length that it lies on at a support" range:"(0,5]"`
	Hole    unit.Known[unit.Length] `json:"hole_m" say:"Diameter of the largest hole at the pulley; 0 for none" range:"[0,1]"`
	OwnMass unit.Known[unit.Mass]   `json:"own_mass_kg" say:"Its own mass with what is fixed to it; not known is computed from size" range:"[0,1e5]"`
}

// Post is one post under the beam.
type Post struct {
	Kind     MemberKind              `json:"kind" say:"What the post is" enum:"|timber|round_pole|steel_tube|steel_round_tube|other"`
	Class    TimberClass             `json:"class" say:"Strength class" enum:"|C14|C16|C18|C20|C22|C24|C27|C30|D24|D30|D40|GL24h"`
	Width    unit.Known[unit.Length] `json:"width_m" say:"Smaller side (round: diameter)" range:"(0,3]"`
	Depth    unit.Known[unit.Length] `json:"depth_m" say:"Larger side" range:"(0,3]"`
	Wall     unit.Known[unit.Length] `json:"wall_m" say:"Tube: wall thickness" range:"(0,0.2]"`
	Yield    unit.Known[unit.Stress] `json:"yield_pa" say:"Steel: yield strength" range:"(0,2e9]"`
	Height   unit.Known[unit.Length] `json:"height_m" say:"Free height" range:"(0,50]"`
	Fixing   PostFixing              `json:"fixing" say:"How its ends are held" enum:"|free_top|pinned_both|fixed_foot_pinned_top|braced"`
	Share    unit.Known[unit.Ratio]  `json:"load_share" say:"Share of the beam's load on this post; not known counts as the whole" range:"(0,1]"`
	Lean     unit.Known[unit.Angle]  `json:"lean_rad" say:"How far it leans from upright, such as the leg of a tripod; not known counts as upright" range:"[0,1.2]"`
	Tied     unit.Answer             `json:"foot_tied" say:"Leaning: is its foot tied to the other feet, so that it cannot slide out?" enum:"|yes|no"`
	FootArea unit.Known[unit.Area]   `json:"foot_area_m2" say:"Area of its foot" range:"(0,100]"`
	Soil     Ground                  `json:"soil" say:"What is under its foot" enum:"|rock|gravel|sand|clay|concrete_slab|fill|mud|not_seen"`
}

// HangerKind is what holds the top pulley.
type HangerKind string

// The words of HangerKind.
const (
	HangerShoulderEyebolt HangerKind = "shoulder_eyebolt"
	HangerPlainEyebolt    HangerKind = "plain_eyebolt"
	HangerShackle         HangerKind = "shackle"
	HangerHook            HangerKind = "hook"
	HangerRatedSling      HangerKind = "rated_sling"
	HangerOther           HangerKind = "other"
)

// HangerFixing is how the hanger is fastened.
type HangerFixing string

// The words of HangerFixing.
const (
	FixingBoltedThroughWood HangerFixing = "bolted_through_wood"
	FixingScrewedIntoWood   HangerFixing = "screwed_into_wood"
	FixingThreadedIntoMetal HangerFixing = "threaded_into_metal"
	FixingRoundTheBeam      HangerFixing = "round_the_beam"
	FixingAnchorInMasonry   HangerFixing = "anchor_in_masonry"
)

// RestsOn is what carries the structure.
type RestsOn string

// The words of RestsOn.
const (
	RestsOnOwnPostsOnGround  RestsOn = "own_posts_on_ground"
	RestsOnConcreteOrMasonry RestsOn = "concrete_or_masonry"
	RestsOnRoofTruss         RestsOn = "roof_truss"
	RestsOnJoists            RestsOn = "joists"
	RestsOnLivingTree        RestsOn = "living_tree"
	RestsOnBalcony           RestsOn = "balcony"
	RestsOnEngineeredSteel   RestsOn = "engineered_steel"
	RestsOnNotSeen           RestsOn = "not_seen"
)

// MemberKind is what a beam or a post is made of.
type MemberKind string

// The words of MemberKind.
const (
	MemberTimber         MemberKind = "timber"
	MemberRoundPole      MemberKind = "round_pole"
	MemberSteelTube      MemberKind = "steel_tube"
	MemberSteelRoundTube MemberKind = "steel_round_tube"
	MemberNone           MemberKind = "none"
	MemberOther          MemberKind = "other"
)

// TimberClass is a strength class of timber (EN 338, EN 14080).
type TimberClass string

// The words of TimberClass.
const (
	TimberC14   TimberClass = "C14"
	TimberC16   TimberClass = "C16"
	TimberC18   TimberClass = "C18"
	TimberC20   TimberClass = "C20"
	TimberC22   TimberClass = "C22"
	TimberC24   TimberClass = "C24"
	TimberC27   TimberClass = "C27"
	TimberC30   TimberClass = "C30"
	TimberD24   TimberClass = "D24"
	TimberD30   TimberClass = "D30"
	TimberD40   TimberClass = "D40"
	TimberGL24h TimberClass = "GL24h"
)

// BeamSupport is how a beam is held at its ends.
type BeamSupport string

// The words of BeamSupport.
const (
	BeamTwoSupports   BeamSupport = "two_supports"
	BeamCantilever    BeamSupport = "cantilever"
	BeamBothEndsFixed BeamSupport = "both_ends_fixed"
)

// PostFixing is how a post is held at its ends.
type PostFixing string

// The words of PostFixing.
const (
	PostFreeTop            PostFixing = "free_top"
	PostPinnedBoth         PostFixing = "pinned_both"
	PostFixedFootPinnedTop PostFixing = "fixed_foot_pinned_top"
	PostBraced             PostFixing = "braced"
)
