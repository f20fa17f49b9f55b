package lift

import "duskweight/internal/model/unit"

// Train is the gears between machine and drum, first stage at the machine.
type Train struct {
	Stages          []Stage                 `json:"stages" say:"Gear stages, the first at the motor"`
	Breakaway       unit.Known[unit.Ratio]  `json:"breakaway" say:"First push: how many times harder the gears are to start than to keep turning; 1.3 fresh, 1.5 usual, 2 cold, printed or loaded overnight" range:"[1,5]"`
	CaseScrews      unit.Answer             `json:"case_screws" say:"Are all screws of the gear case in place?" enum:"|yes|no"`
	CaseScrewSize   unit.Known[unit.Length] `json:"case_screw_diameter_m" say:"Nominal diameter of a case screw" range:"(0,0.1]"`
	CaseScrewCount  unit.Known[unit.Count]  `json:"case_screw_count" say:"Number of case screws" range:"[1,200]"`
	CaseScrewCircle unit.Known[unit.Length] `json:"case_screw_circle_m" say:"Diameter of the circle on which the case screws are" range:"(0,5]"`
	CaseScrewProof  unit.Known[unit.Stress] `json:"case_screw_proof_pa" say:"Proof strength of the case screws ({600 MPa} for class 8.8), or of the plastic they sit in" range:"(0,5e9]"`
}

// Stage is one gear stage. Kind decides which of the fields are read: a planetary stage may give its teeth and mesh
// efficiency, a worm its lead angle and friction, and any stage its ratio and efficiency outright.
type Stage struct {
	Kind       StageKind               `json:"kind" say:"Kind of stage" enum:"|planetary|spur|bevel|worm|belt|chain|strain_wave|cycloid|box"`
	Ratio      unit.Known[unit.Ratio]  `json:"ratio" say:"Turns in for one turn out" range:"[1,1e5]"`
	Efficiency unit.Known[unit.Ratio]  `json:"efficiency" say:"Forward efficiency, motor to drum" range:"(0,1]"`
	Backward   unit.Known[unit.Ratio]  `json:"backward_efficiency" say:"Backward efficiency, drum to motor; not known is computed" range:"[-10,1]"`
	IdleTorque unit.Known[unit.Torque] `json:"idle_torque_nm" say:"Torque at its input that turns it empty" range:"[0,1e4]"`
	Rated      unit.Known[unit.Torque] `json:"rated_torque_nm" say:"Rated torque at its output, from the label of a bought gear or gearbox" range:"(0,1e7]"`
	InStages   unit.Known[unit.Count]  `json:"stages_inside" say:"For a whole gearbox: how many stages are inside, if known" range:"[1,8]"`

	SunTeeth    unit.Known[unit.Count] `json:"sun_teeth" say:"Teeth of the sun" range:"[3,1000]"`
	PlanetTeeth unit.Known[unit.Count] `json:"planet_teeth" say:"Teeth of a planet" range:"[3,1000]"`
	RingTeeth   unit.Known[unit.Count] `json:"ring_teeth" say:"Teeth of the ring" range:"[3,5000]"`
	Planets     unit.Known[unit.Count] `json:"planets" say:"Number of planets" range:"[1,20]"`
	MeshEff     unit.Known[unit.Ratio] `json:"mesh_efficiency" say:"Efficiency of the train with the carrier held" range:"(0,1]"`

	LeadAngle     unit.Known[unit.Angle] `json:"lead_angle_rad" say:"Lead angle of the worm" range:"(0,1.5]"`
	Friction      unit.Known[unit.Ratio] `json:"friction" say:"Coefficient of friction in the worm" range:"(0,1]"`
	PressureAngle unit.Known[unit.Angle] `json:"pressure_angle_rad" say:"Normal pressure angle; not known counts as 20°" range:"[0.1,0.8]"`

	Tooth Tooth `json:"tooth"`
}

// Tooth is what the bending check of a stage's output wheel needs.
type Tooth struct {
	Module    unit.Known[unit.Length] `json:"module_m" say:"Module: pitch diameter over teeth" range:"(0,0.1]"`
	Teeth     unit.Known[unit.Count]  `json:"teeth" say:"Teeth of the wheel that is checked" range:"[5,1000]"`
	FaceWidth unit.Known[unit.Length] `json:"face_width_m" say:"Face width" range:"(0,1]"`
	Meshes    unit.Known[unit.Count]  `json:"meshes_sharing" say:"Meshes that share the load (planets count three quarters each, rounded down); not known counts as 1" range:"[1,20]"`
	Material  ToothMaterial           `json:"material" say:"What the teeth are made of" enum:"|steel|brass|cast_iron|pom|nylon|printed"`
	Strength  unit.Known[unit.Stress] `json:"strength_pa" say:"Yield strength of the metal, or tensile strength of the plastic" range:"(0,5e9]"`
	Layers    PrintLayers             `json:"layers" say:"Printed: do the layers lie in the plane in which the tooth bends, or across it?" enum:"|in_plane|across"`
}

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
