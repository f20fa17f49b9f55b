package lift

// The words of closed lists. The empty word means that the question is open.

// Weighing is how the mass of a piece was found.
type Weighing string

// The words of Weighing.
const (
	ByScale  Weighing = "scale"
	ByLabel  Weighing = "label"
	ByVolume Weighing = "volume"
	ByGuess  Weighing = "guess"
)

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

// HubMaterial is what a hub is made of.
type HubMaterial string

// The words of HubMaterial.
const (
	HubSteel     HubMaterial = "steel"
	HubAluminium HubMaterial = "aluminium"
	HubWood      HubMaterial = "wood"
	HubPrinted   HubMaterial = "printed"
	HubOther     HubMaterial = "other"
)

// HubFit is how a hub is held on its shaft.
type HubFit string

// The words of HubFit.
const (
	FitCrossPin HubFit = "cross_pin"
	FitKey      HubFit = "key"
	FitSetScrew HubFit = "set_screw"
	FitPress    HubFit = "press"
	FitGlue     HubFit = "glue"
)

// Coupling says whether a coupling carries the torque to the drum.
type Coupling string

// The words of Coupling.
const (
	CouplingYes  Coupling = "yes"
	CouplingNone Coupling = "none"
)

// StageKind is the kind of a gear stage.
type StageKind string

// The words of StageKind.
const (
	StagePlanetary  StageKind = "planetary"
	StageSpur       StageKind = "spur"
	StageBevel      StageKind = "bevel"
	StageWorm       StageKind = "worm"
	StageBelt       StageKind = "belt"
	StageChain      StageKind = "chain"
	StageStrainWave StageKind = "strain_wave"
	StageCycloid    StageKind = "cycloid"
	StageBox        StageKind = "box"
)

// ToothMaterial is what gear teeth are made of.
type ToothMaterial string

// The words of ToothMaterial.
const (
	ToothSteel    ToothMaterial = "steel"
	ToothBrass    ToothMaterial = "brass"
	ToothCastIron ToothMaterial = "cast_iron"
	ToothPOM      ToothMaterial = "pom"
	ToothNylon    ToothMaterial = "nylon"
	ToothPrinted  ToothMaterial = "printed"
)

// PrintLayers is how the layers of a printed gear lie to its teeth.
type PrintLayers string

// The words of PrintLayers.
const (
	LayersInPlane PrintLayers = "in_plane"
	LayersAcross  PrintLayers = "across"
)

// Feed is how the power of the sun reaches the motor.
type Feed string

// The words of Feed.
const (
	FeedDrive Feed = "drive"
	FeedRelay Feed = "relay"
	FeedPanel Feed = "panel"
)

// Conversion is which way a converter changes the voltage.
type Conversion string

// The words of Conversion.
const (
	ConversionStepDown Conversion = "step_down"
	ConversionStepUp   Conversion = "step_up"
)

// LoadKind is how something on the motor terminals draws current over voltage.
type LoadKind string

// The words of LoadKind.
const (
	LoadResistor      LoadKind = "resistor"
	LoadString        LoadKind = "string"
	LoadCell          LoadKind = "cell"
	LoadConstantPower LoadKind = "constant_power"
	LoadGoverned      LoadKind = "governed"
	LoadClamp         LoadKind = "clamp"
)

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

// ContainerKind is what holds the mass together.
type ContainerKind string

// The words of ContainerKind.
const (
	ContainerNoneOneBlock ContainerKind = "none_one_block"
	ContainerBag          ContainerKind = "bag"
	ContainerDrum         ContainerKind = "drum"
	ContainerCage         ContainerKind = "cage"
	ContainerCrate        ContainerKind = "crate"
	ContainerHomeSewn     ContainerKind = "home_sewn"
)

// HoldKind is something that keeps the mass from moving, or is thought to.
type HoldKind string

// The words of HoldKind.
const (
	HoldSpringBrake    HoldKind = "spring_brake"
	HoldRatchet        HoldKind = "ratchet"
	HoldRatedProp      HoldKind = "rated_prop"
	HoldLockingPin     HoldKind = "locking_pin"
	HoldOverspeedCatch HoldKind = "overspeed_catch"
	HoldLoadArrester   HoldKind = "load_arrester"
	HoldMotor          HoldKind = "motor"
	HoldGears          HoldKind = "gears"
	HoldJoinedWires    HoldKind = "joined_wires"
	HoldLamps          HoldKind = "lamps"
	HoldBelt           HoldKind = "belt"
)

// StopKind is what stops the mass at the top.
type StopKind string

// The words of StopKind.
const (
	StopLimitSwitch       StopKind = "limit_switch"
	StopSecondLimitSwitch StopKind = "second_limit_switch"
	StopMechanical        StopKind = "mechanical"
	StopCurrentLimit      StopKind = "current_limit"
	StopTimer             StopKind = "timer"
	StopRopeMark          StopKind = "rope_mark"
)

// HoistClass is a hoisting class of EN 13001-2.
type HoistClass string

// The words of HoistClass.
const (
	HoistHC1 HoistClass = "HC1"
	HoistHC2 HoistClass = "HC2"
	HoistHC3 HoistClass = "HC3"
	HoistHC4 HoistClass = "HC4"
)

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

// WarmAt is where the warmth of the motor was measured.
type WarmAt string

// The words of WarmAt.
const (
	WarmCase    WarmAt = "case"
	WarmWinding WarmAt = "winding"
)

// Tested is a part that was tested with a load.
type Tested string

// The words of Tested.
const (
	TestedBase    Tested = "base"
	TestedBrake   Tested = "brake"
	TestedRatchet Tested = "ratchet"
	TestedCatch   Tested = "catch"
	TestedProp    Tested = "prop"
)

// Condition is how a part was found after a shock.
type Condition string

// The words of Condition.
const (
	PartSound   Condition = "sound"
	PartRenewed Condition = "renewed"
	PartDamaged Condition = "damaged"
)

// CouplingMaterial is what the coupling between gear and drum is made of.
type CouplingMaterial string

// The words of CouplingMaterial.
const (
	CouplingMetal   CouplingMaterial = "metal"
	CouplingPrinted CouplingMaterial = "printed"
	CouplingRubber  CouplingMaterial = "rubber"
)

// SetBy is what sets a brake.
type SetBy string

// The words of SetBy.
const (
	SetsPowerOff      SetBy = "power_off"
	SetsLeverReleased SetBy = "lever_released"
	SetsByHand        SetBy = "by_hand"
)

// TripHow is what throws the pawl of a catch.
type TripHow string

// The words of TripHow.
const (
	TripRated     TripHow = "rated"
	TripGovernor  TripHow = "governor"
	TripGeared    TripHow = "geared"
	TripPlainPawl TripHow = "plain_pawl"
)

// BrakeRelease is what holds the brake open while the mass moves.
type BrakeRelease string

// The words of BrakeRelease.
const (
	ReleaseHeldByHand BrakeRelease = "held_by_hand"
	ReleaseCoil       BrakeRelease = "coil"
	ReleaseLatching   BrakeRelease = "latching"
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

// Proved is the part that a proof by test is about.
type Proved string

// The words of Proved.
const (
	ProvedDrumHub        Proved = "drum_hub"
	ProvedCoupling       Proved = "coupling"
	ProvedCrossPin       Proved = "cross_pin"
	ProvedGearTooth      Proved = "gear_tooth"
	ProvedCaseFasteners  Proved = "case_fasteners"
	ProvedHeadSheave     Proved = "head_sheave"
	ProvedRedirectSheave Proved = "redirect_sheave"
	ProvedHanger         Proved = "hanger"
	ProvedContainer      Proved = "container"
	ProvedBaseBoard      Proved = "base_board"
	ProvedBaseUplift     Proved = "base_uplift"
	ProvedBaseSliding    Proved = "base_sliding"
	ProvedBeam           Proved = "beam"
	ProvedPost           Proved = "post"
	ProvedHolds          Proved = "holds"
	ProvedBracing        Proved = "bracing"
	ProvedRope           Proved = "rope"
	ProvedKnot           Proved = "knot"
)

// ProofMaterial is what a proved part is made of.
type ProofMaterial string

// The words of ProofMaterial.
const (
	MadeMetal   ProofMaterial = "metal"
	MadeWood    ProofMaterial = "wood"
	MadePlastic ProofMaterial = "plastic"
	MadePrinted ProofMaterial = "printed"
	MadeFibre   ProofMaterial = "fibre"
	MadeGround  ProofMaterial = "ground"
)

// MeasuredWith is what the load of a proof was measured with.
type MeasuredWith string

// The words of MeasuredWith.
const (
	MeasuredWithDeadWeight     MeasuredWith = "dead_weight"
	MeasuredWithLoadCell       MeasuredWith = "load_cell"
	MeasuredWithLeverAndWeight MeasuredWith = "lever_and_weight"
)

// ProofOn is where the load of a proof was put on.
type ProofOn string

// The words of ProofOn.
const (
	OnRope  ProofOn = "rope"
	OnLever ProofOn = "lever"
	OnBench ProofOn = "bench"
)

// ComesDown is whether the mass comes down by itself.
type ComesDown string

// The words of ComesDown.
const (
	DownYes   ComesDown = "yes"
	DownNudge ComesDown = "nudge" // once it is pushed
	DownNo    ComesDown = "no"
)

// ConstantFrom is where a constant of the machine comes from.
type ConstantFrom string

// The words of ConstantFrom.
const (
	FromYours ConstantFrom = "yours"
	FromSheet ConstantFrom = "sheet"
	FromBench ConstantFrom = "bench"
)
