package cost

// The words of closed lists. The empty word means that the question is open.

// Get is how a part is come by.
type Get string

// The words of Get.
const (
	GetHave   Get = "have"
	GetBuy    Get = "buy"
	GetMake   Get = "make"
	GetBorrow Get = "borrow"
)

// PartOf is what of the plan a part belongs to.
type PartOf string

// The words of PartOf.
const (
	OfStore  PartOf = "store"
	OfSafety PartOf = "safety"
	OfPanel  PartOf = "panel"
	OfLoad   PartOf = "load"
)

// As is the part of the plan that an entry of the list is.
type As string

// The words of As.
const (
	AsRope        As = "rope"
	AsPulley      As = "pulley"
	AsHanger      As = "hanger"
	AsContainer   As = "container"
	AsMass        As = "mass"
	AsDrum        As = "drum"
	AsCoupling    As = "coupling"
	AsGear        As = "gear"
	AsMotor       As = "motor"
	AsDrive       As = "drive"
	AsBeam        As = "beam"
	AsPost        As = "post"
	AsBaseWeight  As = "base_weight"
	AsBaseBoard   As = "base_board"
	AsHold        As = "hold"
	AsUpperStop   As = "upper_stop"
	AsSlackSwitch As = "slack_switch"
	AsShunt       As = "shunt"
	AsChangeover  As = "changeover"
	AsStopButton  As = "stop_button"
	AsProp        As = "prop"
	AsLanding     As = "landing"
	AsFence       As = "fence"
	AsGloves      As = "gloves"
	AsPanel       As = "panel"
	AsPanelFuse   As = "panel_fuse"
	AsController  As = "controller"
	AsBattery     As = "battery"
	AsFuse        As = "fuse"
	AsCable       As = "cable"
	AsSmokeAlarm  As = "smoke_alarm"
	AsGoggles     As = "goggles"
	AsTank        As = "tank"
	AsPump        As = "pump"
	AsTurbine     As = "turbine"
	AsPipe        As = "pipe"
	AsLid         As = "lid"
)
