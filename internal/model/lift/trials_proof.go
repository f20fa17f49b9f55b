package lift

import "duskweight/internal/model/unit"

// Proof is a load test of one part that has no rating. Force and torque are those on the part, or with the mass on the rope
// the weight that hung.
type Proof struct {
	Part     Proved                    `json:"part" say:"What was tested" enum:"|drum_hub|coupling|cross_pin|gear_tooth|case_fasteners|head_sheave|redirect_sheave|hanger|container|base_board|base_uplift|base_sliding|beam|post|holds|bracing|rope|knot"`
	MadeOf   ProofMaterial             `json:"made_of" say:"What it is made of" enum:"|metal|wood|plastic|printed|fibre|ground"`
	Load     unit.Known[unit.Force]    `json:"load_n" say:"Force that was put on it" range:"(0,1e8]"`
	Torque   unit.Known[unit.Torque]   `json:"torque_nm" say:"Or torque at the drum that was put on it" range:"(0,1e6]"`
	HeldFor  unit.Known[unit.Duration] `json:"held_s" say:"How long" range:"(0,1e8]"`
	Moved    unit.Answer               `json:"moved" say:"Did a mark move, slip or stay bent?" enum:"|yes|no"`
	Measured MeasuredWith              `json:"measured_with" say:"How the load was measured, within 2 %" enum:"|dead_weight|load_cell|lever_and_weight"`
	On       ProofOn                   `json:"on" say:"Where it was put on: the mass on the rope, a lever on the drum, or a bench" enum:"|rope|lever|bench"`
	Date     string                    `json:"date" say:"Day of the test, such as 2026-11-28"`
	By       string                    `json:"by" say:"Who tested it"`
	Witness  string                    `json:"witness" say:"A second adult who saw it"`
	Expert   string                    `json:"qualified" say:"Over 5 kJ or {250 kg}: the qualified person who saw it"`
	Lifts    unit.Known[unit.Count]    `json:"lifts_since" say:"Lifts since then" range:"[0,1e7]"`
}

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
