package lift

import "duskweight/internal/model/unit"

// Drum winds the rope.
type Drum struct {
	Diameter   unit.Known[unit.Length] `json:"diameter_m" say:"Bare drum diameter" range:"(0,5]"`
	Width      unit.Known[unit.Length] `json:"width_m" say:"Width between the flanges" range:"(0,10]"`
	Flange     unit.Known[unit.Length] `json:"flange_diameter_m" say:"Outer diameter of the flanges" range:"(0,10]"`
	DeadWraps  unit.Known[unit.Count]  `json:"dead_wraps" say:"Turns that stay on the drum with the mass at its lowest" range:"[0,100]"`
	Friction   unit.Known[unit.Torque] `json:"bearing_torque_nm" say:"Friction torque of the drum's bearings; not known counts as none" range:"[0,1e4]"`
	Grooved    unit.Answer             `json:"grooved" say:"Is the drum grooved?" enum:"|yes|no"`
	FleetAngle unit.Known[unit.Angle]  `json:"fleet_angle_rad" say:"Greatest side angle of the rope at the drum" range:"[0,1.5]"`

	HubMaterial HubMaterial             `json:"hub_material" say:"What the hub of the drum is made of" enum:"|steel|aluminium|wood|printed|other"`
	HubOuter    unit.Known[unit.Length] `json:"hub_outer_diameter_m" say:"Outer diameter of the hub round the shaft" range:"(0,5]"`
	HubAllow    unit.Known[unit.Stress] `json:"hub_strength_pa" say:"Strength of the hub's material (yield, or tensile strength across the layers if printed)" range:"(0,5e9]"`
	HubFit      HubFit                  `json:"hub_fit" say:"How the hub sits on the shaft" enum:"|cross_pin|key|set_screw|press|glue"`

	ShaftDiameter  unit.Known[unit.Length] `json:"shaft_diameter_m" say:"Diameter of the drum shaft" range:"(0,1]"`
	ShaftYield     unit.Known[unit.Stress] `json:"shaft_yield_pa" say:"Yield strength of the shaft" range:"(0,5e9]"`
	ShaftSpan      unit.Known[unit.Length] `json:"shaft_overhang_m" say:"From the middle of the rope's pull to the nearest bearing" range:"[0,5]"`
	BearingSpan    unit.Known[unit.Length] `json:"shaft_bearing_span_m" say:"Between the two bearings, if the drum sits between them; not known means it overhangs" range:"(0,5]"`
	PinDiameter    unit.Known[unit.Length] `json:"pin_diameter_m" say:"Diameter of the cross pin" range:"(0,0.5]"`
	PinYield       unit.Known[unit.Stress] `json:"pin_yield_pa" say:"Yield strength of the cross pin" range:"(0,5e9]"`
	KeyWidth       unit.Known[unit.Length] `json:"key_width_m" say:"Width of the key (square key: its side)" range:"(0,0.2]"`
	KeyLength      unit.Known[unit.Length] `json:"key_length_m" say:"Length of the key" range:"(0,2]"`
	KeyYield       unit.Known[unit.Stress] `json:"key_yield_pa" say:"Yield strength of the key" range:"(0,5e9]"`
	SetScrewTorque unit.Known[unit.Torque] `json:"set_screw_torque_nm" say:"Torque that the set screw holds" range:"(0,1e5]"`

	CouplingRating unit.Known[unit.Torque] `json:"coupling_torque_nm" say:"Rated torque of the coupling between gear and drum" range:"(0,1e6]"`
	Coupling       Coupling                `json:"coupling" say:"Is there a coupling between gear and drum?" enum:"|yes|none"`
	CouplingMade   CouplingMaterial        `json:"coupling_made_of" say:"Material of that coupling" enum:"|metal|printed|rubber"`
	HubPressed     unit.Answer             `json:"hub_pressed" say:"Is the drum pressed onto its hub, or the hub onto its shaft?" enum:"|yes|no"`
}

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

// CouplingMaterial is what the coupling between gear and drum is made of.
type CouplingMaterial string

// The words of CouplingMaterial.
const (
	CouplingMetal   CouplingMaterial = "metal"
	CouplingPrinted CouplingMaterial = "printed"
	CouplingRubber  CouplingMaterial = "rubber"
)
