package cell

// The words of closed lists. The empty word means that the question is open.

// Role is what a battery is for.
type Role string

// The words of Role.
const (
	RoleNight       Role = "night"
	RoleElectronics Role = "electronics"
)

// Chemistry is the kind of cells of a battery.
type Chemistry string

// The words of Chemistry.
const (
	FloodedLead Chemistry = "flooded_lead"
	SealedLead  Chemistry = "sealed_lead"
	LFP         Chemistry = "lfp"
	NMC         Chemistry = "nmc"
	NickelIron  Chemistry = "nickel_iron"
	SodiumIon   Chemistry = "sodium_ion"
)

// Room is where a battery is.
type Room string

// The words of Room.
const (
	InOutsideAir  Room = "outside_air"
	InOwnRoom     Room = "own_room"
	InBedroom     Room = "bedroom"
	InEscapeRoute Room = "escape_route"
	InLoft        Room = "loft"
	InShed        Room = "shed"
)

// Origin is whether the blocks of a battery are new.
type Origin string

// The words of Origin.
const (
	BlocksNew        Origin = "new"
	BlocksSecondHand Origin = "second_hand"
	BlocksMixed      Origin = "mixed"
)
