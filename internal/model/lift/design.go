package lift

import "duskweight/internal/model/unit"

// The design of a hoist: what the builder decides or has in the box. Plain numbers in SI; a value that is not known is
// not known, never a zero. The tags are read by the document (its keys, its JSON Schema) and by the check of ranges:
// `say` is the meaning in plain words, `range` the interval a known value must lie in, `enum` the closed list of words.

// Hoist is one complete hoist, or several equal ones used one at a time.
type Hoist struct {
	Name   string                  `json:"name" say:"What you call it"`
	Units  unit.Known[unit.Count]  `json:"units" say:"Complete hoists of this kind, used one at a time; not known counts as 1" range:"[1,1000]"`
	Mass   []Piece                 `json:"mass" say:"Everything that hangs: the pieces, the container and the hook"`
	Travel unit.Known[unit.Length] `json:"travel_m" say:"Height of travel, lower stop to upper stop" range:"(0,1000]"`

	Rope      Rope      `json:"rope"`
	Reeving   Reeving   `json:"reeving"`
	Drum      Drum      `json:"drum"`
	Train     Train     `json:"train"`
	Machine   Machine   `json:"machine"`
	Raise     Raise     `json:"raise"`
	Lower     Lower     `json:"lower"`
	Structure Structure `json:"structure"`
	Base      Base      `json:"base"`
	Container Container `json:"container"`
	Holds     Holds     `json:"holds"`
	Site      Site      `json:"site"`
	Trials    Trials    `json:"trials"`
}

// Piece is one piece of the mass and how it was weighed.
type Piece struct {
	Name    string                `json:"name" say:"What it is"`
	Mass    unit.Known[unit.Mass] `json:"mass_kg" say:"Its mass" range:"(0,1e6]"`
	Weighed Weighing              `json:"weighed" say:"How it was weighed" enum:"|scale|label|volume|guess"`
}

// Rope is the rope from the drum to its dead end. Strength is never typical: the breaking load is the user's statement.
type Rope struct {
	Kind         RopeKind                `json:"kind" say:"Material" enum:"|polyester|nylon|polypropylene|hmpe|other_fibre|wire"`
	Diameter     unit.Known[unit.Length] `json:"diameter_m" say:"Rope diameter" range:"(0,0.2]"`
	BreakingLoad unit.Known[unit.Force]  `json:"breaking_load_n" say:"Least breaking load of the new rope, from its label" range:"(0,1e8]"`
	Length       unit.Known[unit.Length] `json:"length_m" say:"Rope at hand" range:"(0,10000]"`
	Ending       Ending                  `json:"ending" say:"How its ends are fastened" enum:"|splice|figure_eight|bowline|other_knot|swaged|clips|thimble_clamp"`
	KnotFactor   unit.Known[unit.Ratio]  `json:"knot_factor" say:"Share of strength left at the ending; not known takes the cautious value of the ending" range:"(0,1]"`
	AgeFactor    unit.Known[unit.Ratio]  `json:"age_factor" say:"Share of strength left after sun, wet and wear; not known takes the cautious value" range:"(0,1]"`
	Outdoors     unit.Answer             `json:"outdoors" say:"Does it hang in sun and rain?" enum:"|yes|no"`
	Stiffness    unit.Known[unit.Force]  `json:"stiffness_ea_n" say:"Axial stiffness EA of the rope" range:"(0,1e9]"`
}

// Reeving is the way of the rope over the pulleys. Pulleys are counted from the drum: LeadSheaves of them before the
// mass (the head pulley is the last of these), then RopeParts − 1 between the parts that carry the mass.
type Reeving struct {
	RopeParts   unit.Known[unit.Count] `json:"rope_parts" say:"Ropes that carry the mass, counted at the mass" range:"[1,12]"`
	LeadSheaves unit.Known[unit.Count] `json:"lead_sheaves" say:"Pulleys between mass and drum, the head pulley included; 0 if the drum stands above the mass" range:"[0,12]"`
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
	CouplingMade   CouplingMaterial        `json:"coupling_made_of" say:"What that coupling is made of" enum:"|metal|printed|rubber"`
	HubPressed     unit.Answer             `json:"hub_pressed" say:"Is the drum pressed onto its hub, or the hub onto its shaft?" enum:"|yes|no"`
}

// Train is the gears between machine and drum, first stage at the machine.
type Train struct {
	Stages          []Stage                 `json:"stages" say:"Gear stages, the first at the motor"`
	Breakaway       unit.Known[unit.Ratio]  `json:"breakaway" say:"First push: how many times harder the gears are to start than to keep turning; 1.3 fresh, 1.5 usual, 2 cold, printed or loaded overnight" range:"[1,5]"`
	CaseScrews      unit.Answer             `json:"case_screws" say:"Are all screws of the gear case in place?" enum:"|yes|no"`
	CaseScrewSize   unit.Known[unit.Length] `json:"case_screw_diameter_m" say:"Nominal diameter of a case screw" range:"(0,0.1]"`
	CaseScrewCount  unit.Known[unit.Count]  `json:"case_screw_count" say:"Number of case screws" range:"[1,200]"`
	CaseScrewCircle unit.Known[unit.Length] `json:"case_screw_circle_m" say:"Diameter of the circle the case screws stand on" range:"(0,5]"`
	CaseScrewProof  unit.Known[unit.Stress] `json:"case_screw_proof_pa" say:"Proof strength of the case screws ({600 MPa} for class 8.8), or of the plastic they sit in" range:"(0,5e9]"`
}

// Stage is one gear stage. Kind decides which of the fields are read: a planetary stage may give its teeth and mesh
// efficiency, a worm its lead angle and friction, and any stage its ratio and efficiency outright.
type Stage struct {
	Kind       StageKind               `json:"kind" say:"Kind of stage" enum:"|planetary|spur|bevel|worm|belt|chain|strain_wave|cycloid|box"`
	Ratio      unit.Known[unit.Ratio]  `json:"ratio" say:"Turns in for one turn out" range:"[1,1e5]"`
	Efficiency unit.Known[unit.Ratio]  `json:"efficiency" say:"Forward efficiency, motor to drum" range:"(0,1]"`
	Backward   unit.Known[unit.Ratio]  `json:"backward_efficiency" say:"Backward efficiency, drum to motor; not known is computed" range:"[-10,1]"`
	IdleTorque unit.Known[unit.Torque] `json:"idle_torque_nm" say:"Torque it takes at its input to turn it empty" range:"[0,1e4]"`
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
	Layers    PrintLayers             `json:"layers" say:"Printed: does the layer plane contain the bending of the tooth?" enum:"|in_plane|across"`
}

// Machine is the motor-generator. Either the two constants, or the sheet's numbers they follow from, or the bench
// measurements; more than one set is compared and contradictions are flagged.
type Machine struct {
	Name        string                           `json:"name" say:"What it is"`
	K           unit.Known[unit.MachineConstant] `json:"k_vs_rad" say:"Machine constant: volts for each rad/s, N·m for each ampere" range:"(0,100]"`
	R           unit.Known[unit.Resistance]      `json:"r_ohm" say:"Winding resistance at {25 °C}, brushes included" range:"(0,1e4]"`
	I0          unit.Known[unit.Current]         `json:"i0_a" say:"Current without load" range:"[0,1000]"`
	J           unit.Known[unit.Inertia]         `json:"j_kg_m2" say:"Inertia of the rotor" range:"[0,1000]"`
	BrushDrop   unit.Known[unit.Voltage]         `json:"brush_drop_v" say:"Drop at the brushes, both together; not known counts as a range where the motor's sheet leaves it open" range:"[0,10]"`
	BrushLow    unit.Known[unit.Voltage]         `json:"brush_drop_low_v" say:"Least drop at the brushes, where only a range is known" range:"[0,5]"`
	BrushHigh   unit.Known[unit.Voltage]         `json:"brush_drop_high_v" say:"Greatest drop at the brushes, where only a range is known" range:"[0,5]"`
	SheetVolts  unit.Known[unit.Voltage]         `json:"sheet_voltage_v" say:"Voltage that the sheet's numbers hold for" range:"(0,2000]"`
	SheetSpeed  unit.Known[unit.AngularSpeed]    `json:"sheet_no_load_speed_rad_s" say:"Speed without load at that voltage" range:"(0,1e5]"`
	SheetStall  unit.Known[unit.Current]         `json:"sheet_stall_current_a" say:"Current with the shaft held at that voltage" range:"(0,1e5]"`
	SheetTorque unit.Known[unit.Torque]          `json:"sheet_stall_torque_nm" say:"Torque with the shaft held at that voltage" range:"(0,1e5]"`
	SheetGear   unit.Known[unit.Ratio]           `json:"sheet_gear_ratio" say:"If the sheet's speed is after a gearbox: its ratio" range:"[1,1e5]"`

	BenchR  []Bench `json:"bench_resistance" say:"Shaft held at 10 to 25 % of rated current, five positions"`
	BenchI0 []Bench `json:"bench_no_load" say:"Turning freely"`
	BenchK  []Bench `json:"bench_driven" say:"Turned by a drill, terminals open, both directions"`

	MaxCurrent unit.Known[unit.Current]           `json:"continuous_current_a" say:"Current it stands all day" range:"(0,1e4]"`
	MaxSpeed   unit.Known[unit.AngularSpeed]      `json:"max_speed_rad_s" say:"Highest speed; not known counts as the speed without load at the label's voltage" range:"(0,1e5]"`
	MaxWinding unit.Known[unit.Celsius]           `json:"max_winding_c" say:"Highest winding temperature" range:"[40,300]"`
	RthWinding unit.Known[unit.ThermalResistance] `json:"rth_winding_k_w" say:"Thermal resistance winding to case (with no case value: winding to air)" range:"(0,1000]"`
	RthCase    unit.Known[unit.ThermalResistance] `json:"rth_case_k_w" say:"Thermal resistance case to air" range:"(0,1000]"`
	TauWinding unit.Known[unit.Duration]          `json:"tau_winding_s" say:"Thermal time constant of the winding (with no case value: of the whole motor)" range:"(0,1e6]"`
	TauCase    unit.Known[unit.Duration]          `json:"tau_case_s" say:"Thermal time constant of the case" range:"(0,1e6]"`
	I0WithGear unit.Answer                        `json:"i0_measured_with_gear" say:"Was the current without load measured with the gears on?" enum:"|yes|no"`
}

// Bench is one reading: volts with amps, or volts with speed.
type Bench struct {
	Voltage unit.Known[unit.Voltage]      `json:"voltage_v" say:"Voltage read" range:"[-2000,2000]"`
	Current unit.Known[unit.Current]      `json:"current_a" say:"Current read" range:"[-1e5,1e5]"`
	Speed   unit.Known[unit.AngularSpeed] `json:"speed_rad_s" say:"Speed read" range:"[-1e5,1e5]"`
}

// Raise is how the machine is fed while it lifts.
type Raise struct {
	Feed         Feed                        `json:"feed" say:"What feeds the motor: a step-down drive that can lift slowly, a relay at a fixed voltage, or the panel straight on the motor" enum:"|drive|relay|panel"`
	Voltage      unit.Known[unit.Voltage]    `json:"voltage_v" say:"Supply voltage (for a drive: the highest it puts out)" range:"(0,2000]"`
	CurrentLimit unit.Known[unit.Current]    `json:"current_limit_a" say:"Most current the supply gives; not known means only wire and winding limit it" range:"(0,1e4]"`
	WireR        unit.Known[unit.Resistance] `json:"wire_ohm" say:"Resistance of supply and wires; not known counts as none" range:"[0,1e3]"`
	DriveEff     unit.Known[unit.Ratio]      `json:"drive_efficiency" say:"Efficiency of the drive or converter; not known counts as 1 for a relay" range:"(0,1]"`
	Auxiliary    unit.Known[unit.Power]      `json:"auxiliary_w" say:"Brake coil and contactors while it moves up" range:"[0,1e4]"`
	Converter    Conversion                  `json:"converter" say:"Drive: does it only step the line's voltage down, or up as well?" enum:"|step_down|step_up"`
	Fuse         unit.Known[unit.Current]    `json:"fuse_a" say:"Fuse of the motor's supply" range:"(0,5000]"`
	WireArea     unit.Known[unit.Area]       `json:"wire_area_m2" say:"Cross-section of the wires between line and motor" range:"(0,1e-3]"`
	Switch       unit.Known[unit.Current]    `json:"switch_a" say:"Direct current that its switch or relay can break" range:"(0,5000]"`
}

// Lower is what the machine drives while the mass comes down. Several loads hang in parallel.
type Lower struct {
	Loads     []DCLoad                 `json:"loads" say:"What hangs on the motor terminals at night"`
	Auxiliary unit.Known[unit.Power]   `json:"auxiliary_w" say:"Brake coil and controller while it moves down" range:"[0,1e4]"`
	Ambient   unit.Known[unit.Celsius] `json:"ambient_c" say:"Air round the motor; not known counts as {25 °C}" range:"[-60,80]"`
	Shunt     unit.Answer              `json:"shunt" say:"Is there a resistor or clamp wired straight to the terminals, no fuse, no switch?" enum:"|yes|no"`
}

// DCLoad is one load on the terminals.
type DCLoad struct {
	Kind       LoadKind                      `json:"kind" say:"What it is" enum:"|resistor|string|cell|constant_power|governed|clamp"`
	Name       string                        `json:"name" say:"What you call it"`
	Resistance unit.Known[unit.Resistance]   `json:"resistance_ohm" say:"Resistor: its resistance" range:"(0,1e6]"`
	Threshold  unit.Known[unit.Voltage]      `json:"threshold_v" say:"Lamps in a row: where they begin to light; cell: its voltage; clamp: where it conducts" range:"[0,2000]"`
	Slope      unit.Known[unit.Resistance]   `json:"slope_ohm" say:"Lamps in a row, cell, clamp: volts more for each ampere more" range:"[0,1e6]"`
	Diode      unit.Known[unit.Voltage]      `json:"diode_v" say:"Drop of the diode in front; not known counts as none" range:"[0,5]"`
	Power      unit.Known[unit.Power]        `json:"power_w" say:"Constant power: what it takes" range:"(0,1e5]"`
	Speed      unit.Known[unit.AngularSpeed] `json:"set_speed_rad_s" say:"Governed: the rotor speed it keeps" range:"(0,1e5]"`
	Efficiency unit.Known[unit.Ratio]        `json:"efficiency" say:"Share of what it takes that reaches the night's lamps; not known counts as 1 (0 for a clamp or a braking resistor)" range:"[0,1]"`
	MinVoltage unit.Known[unit.Voltage]      `json:"min_voltage_v" say:"Least voltage it works at" range:"[0,2000]"`
	MaxVoltage unit.Known[unit.Voltage]      `json:"max_voltage_v" say:"Most voltage it stands" range:"(0,2000]"`
	MaxCurrent unit.Known[unit.Current]      `json:"rated_current_a" say:"Its rated current" range:"(0,1e5]"`
	Permanent  unit.Answer                   `json:"permanent" say:"Wired straight to the terminals, no fuse, switch or plug?" enum:"|yes|no"`
}

// Structure is what carries the hoist from the head pulley down to the ground.
type Structure struct {
	HangerRating unit.Known[unit.Force]  `json:"hanger_working_load_n" say:"Working load of the hook, eye bolt or shackle that holds the head pulley" range:"(0,1e8]"`
	HangerAngle  unit.Known[unit.Angle]  `json:"hanger_angle_rad" say:"Angle of the pull from the bolt's own axis" range:"[0,1.5707963267948966]"`
	HangerKind   HangerKind              `json:"hanger_kind" say:"What holds the head pulley" enum:"|shoulder_eyebolt|plain_eyebolt|shackle|hook|rated_sling|other"`
	HangerFixing HangerFixing            `json:"hanger_fixing" say:"How an eye bolt or hook is fastened" enum:"|bolted_through_wood|screwed_into_wood|threaded_into_metal|round_the_beam|anchor_in_masonry"`
	Washer       unit.Known[unit.Length] `json:"hanger_washer_m" say:"Bolted through wood: diameter of the washer, or side of the plate" range:"(0,1]"`
	SidePull     unit.Known[unit.Force]  `json:"side_pull_n" say:"Sideways pull at the top that the frame is braced for" range:"(0,1e8]"`
	HeadHeight   unit.Known[unit.Length] `json:"head_height_m" say:"Head pulley above the ground" range:"(0,1000]"`
	LeadAngle    unit.Known[unit.Angle]  `json:"lead_line_angle_rad" say:"Angle between the rope to the drum and the rope to the mass, at the head pulley; 0 when both hang straight down" range:"[0,3.141592653589793]"`
	Beam         Beam                    `json:"beam"`
	Posts        []Post                  `json:"posts" say:"Posts that carry the beam"`
	RestsOn      RestsOn                 `json:"rests_on" say:"What the beam rests on, down to the ground" enum:"|own_posts_on_ground|concrete_or_masonry|roof_truss|joists|living_tree|balcony|engineered_steel|not_seen"`
	RestsOnOK    unit.Answer             `json:"rests_on_confirmed" say:"Has a qualified person confirmed it for this load?" enum:"|yes|no"`
}

// Beam is the beam that carries the head pulley.
type Beam struct {
	Kind    MemberKind              `json:"kind" say:"What the beam is; none for a tripod" enum:"|timber|round_pole|steel_tube|steel_round_tube|none|other"`
	Class   TimberClass             `json:"class" say:"Strength class, such as C24 of EN 338; your own statement" enum:"|C14|C16|C18|C20|C22|C24|C27|C30|D24|D30|D40|GL24h"`
	Width   unit.Known[unit.Length] `json:"width_m" say:"Width (round: diameter)" range:"(0,3]"`
	Depth   unit.Known[unit.Length] `json:"depth_m" say:"Depth, standing" range:"(0,3]"`
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
	FootArea unit.Known[unit.Area]   `json:"foot_area_m2" say:"Area of what it stands on" range:"(0,100]"`
	Soil     Ground                  `json:"soil" say:"What is under its foot" enum:"|rock|gravel|sand|clay|concrete_slab|fill|mud|not_seen"`
}

// Base is what the drive stands on and what keeps it down.
type Base struct {
	Where        BaseWhere               `json:"where" say:"Where drum and motor stand" enum:"|on_ground|on_beam|on_wall"`
	Mass         unit.Known[unit.Mass]   `json:"mass_kg" say:"Mass that keeps the drive on the ground: base, drive and weights" range:"[0,1e6]"`
	WeightsFixed unit.Answer             `json:"weights_fixed" say:"Are the weights fastened, so that nobody takes one away?" enum:"|yes|no"`
	LoosePart    unit.Known[unit.Mass]   `json:"loose_mass_kg" say:"Of this, loose weights that someone could take away" range:"[0,1e6]"`
	Width        unit.Known[unit.Length] `json:"width_m" say:"Width of the base in the direction of the pull" range:"(0,20]"`
	PullHeight   unit.Known[unit.Length] `json:"pull_height_m" say:"Height above the ground where the rope leaves the base" range:"[0,20]"`
	PullOffset   unit.Known[unit.Length] `json:"pull_offset_m" say:"From the middle of the base to where the rope goes up, towards the tipping edge" range:"[0,20]"`
	RopeAngle    unit.Known[unit.Angle]  `json:"rope_angle_rad" say:"Angle of the rope that leaves the base from straight up; where it runs to the top pulley, not known takes the angle there" range:"[0,1.5707963267948966]"`
	Friction     unit.Known[unit.Ratio]  `json:"friction" say:"Friction between base and ground, as measured by a pull; empty: the low published value of the two materials, where there is one" range:"(0,1]"`
	Underside    Underside               `json:"underside" say:"What its underside is made of, where it touches the ground" enum:"|timber|steel|concrete|rubber"`
	Ground       Ground                  `json:"ground" say:"What the base stands on" enum:"|rock|gravel|sand|clay|concrete_slab|timber_floor|fill|mud|not_seen"`
	Board        Board                   `json:"board"`
}

// Board is the plate that drive and weights are screwed to.
type Board struct {
	Thickness unit.Known[unit.Length] `json:"thickness_m" say:"Thickness of the base board" range:"(0,1]"`
	Width     unit.Known[unit.Length] `json:"width_m" say:"Its width across the bending" range:"(0,10]"`
	Arm       unit.Known[unit.Length] `json:"arm_m" say:"From the drum's screws to the nearest weight" range:"(0,10]"`
	Strength  unit.Known[unit.Stress] `json:"bending_strength_pa" say:"Bending strength of the board" range:"(0,5e9]"`
}

// Container is what holds a loose mass together.
type Container struct {
	Kind      ContainerKind             `json:"kind" say:"What holds the mass together" enum:"|none_one_block|bag|drum|cage|crate|home_sewn"`
	Rating    unit.Known[unit.Force]    `json:"working_load_n" say:"Its rated working load" range:"(0,1e8]"`
	Factor    unit.Known[unit.Ratio]    `json:"safety_factor" say:"Safety factor on its label: 5, 6 or 8" range:"[1,20]"`
	Age       unit.Known[unit.Duration] `json:"in_use_s" say:"How long it has been in use" range:"[0,3.2e9]"`
	EyeRating unit.Known[unit.Force]    `json:"eye_working_load_n" say:"Working load of the eye or lug on the mass" range:"(0,1e8]"`
}

// Hold is one thing that holds the mass by itself.
type Hold struct {
	Kind   HoldKind                `json:"kind" say:"What it is" enum:"|spring_brake|ratchet|rated_prop|locking_pin|overspeed_catch|load_arrester|motor|gears|joined_wires|lamps|belt"`
	OnDrum unit.Answer             `json:"on_drum" say:"Does it act on the drum, with nothing printed, no belt and no set screw between?" enum:"|yes|no"`
	Torque unit.Known[unit.Torque] `json:"torque_nm" say:"Torque it holds at the drum" range:"(0,1e6]"`
	Force  unit.Known[unit.Force]  `json:"force_n" say:"Or the load it holds directly" range:"(0,1e8]"`

	Sets        SetBy                     `json:"sets" say:"What sets it: it sets by itself when power goes or when a held lever is let go, or by hand" enum:"|power_off|lever_released|by_hand"`
	Trips       unit.Answer               `json:"trips" say:"Does it set by itself when the drum turns too fast?" enum:"|yes|no"`
	TripsAt     unit.Known[unit.Speed]    `json:"trips_at_m_s" say:"Speed of the mass at which it sets by itself; more than the speed of coming down" range:"(0,5]"`
	ActsIn      unit.Known[unit.Duration] `json:"acts_in_s" say:"Time from that speed until it grips; not known takes the time until the brake sets" range:"[0,5]"`
	EngagesIn   unit.Known[unit.Length]   `json:"engages_in_m" say:"Catch: how far the mass falls from that speed until it has locked" range:"(0,2]"`
	TripHow     TripHow                   `json:"trip_how" say:"Catch: what throws the pawl" enum:"|rated|governor|geared|plain_pawl"`
	Stopping    unit.Known[unit.Torque]   `json:"stopping_torque_nm" say:"Brake: torque with which it slows a turning drum; not known takes 0.8 of what it holds" range:"(0,1e6]"`
	Independent unit.Answer               `json:"independent" say:"Is it a hold of its own, with no part shared with another hold?" enum:"|yes|no"`
}

// Stop is one thing that ends the travel at the top.
type Stop struct {
	Kind StopKind    `json:"kind" say:"What it is" enum:"|limit_switch|second_limit_switch|mechanical|current_limit|timer|rope_mark"`
	Path unit.Answer `json:"own_path" say:"Does it cut the power by a path of its own?" enum:"|yes|no"`
}

// Holds is what keeps the mass up and what ends the travel.
type Holds struct {
	Holds        []Hold                    `json:"holds" say:"What holds the mass; at least two that do not depend on each other"`
	UpperStops   []Stop                    `json:"upper_stops" say:"What stops it at the top; at least two that do not depend on each other"`
	BrakeRelease BrakeRelease              `json:"brake_release" say:"What holds the brake open while it moves" enum:"|held_by_hand|coil|latching"`
	SlackSwitch  unit.Answer               `json:"slack_switch" say:"Is there a switch that stops the drum when the rope goes slack?" enum:"|yes|no"`
	BrakeDelay   unit.Known[unit.Duration] `json:"brake_delay_s" say:"Time until the brake sets" range:"[0,60]"`
	RoomAbove    unit.Known[unit.Length]   `json:"room_above_m" say:"Free room above the upper stop before something jams" range:"[0,100]"`
	Factor       unit.Known[unit.Ratio]    `json:"dynamic_factor" say:"Your own factor for jerks; not known takes 1.25, or 2 when the rope can go slack" range:"[1,10]"`
	Class        HoistClass                `json:"hoist_class" say:"Hoisting class of EN 13001-2, if you want the factor computed" enum:"|HC1|HC2|HC3|HC4"`
}

// Site is the seven questions and what is round the hoist. Each answer is yes, no or not known; not known counts as
// the worse one, and the program never answers for the user.
type Site struct {
	Outdoors    unit.Answer             `json:"outdoors" say:"Does it stand outdoors?" enum:"|yes|no"`
	Earthquake  Earthquakes             `json:"earthquake" say:"Earthquakes here?" enum:"|none|some|strong"`
	Children    unit.Answer             `json:"children" say:"Can children or animals come near?" enum:"|yes|no"`
	Owner       Consent                 `json:"owner" say:"Whose structure is it?" enum:"|own|agreed|not_asked"`
	LivesBelow  unit.Answer             `json:"lives_below" say:"Does anyone live below or behind it?" enum:"|yes|no"`
	Helper      unit.Answer             `json:"helper" say:"Is there someone who can come to help?" enum:"|yes|no"`
	SelfStart   unit.Answer             `json:"self_start" say:"Can it start by itself?" enum:"|yes|no"`
	ComesDown   string                  `json:"comes_down_without_power" say:"How it comes down with no power, a stuck brake or a jammed rope"`
	FloorBelow  FloorBelow              `json:"floor_below" say:"What is under the floor" enum:"|solid_ground|cellar|room|pipes_or_tank"`
	PadDepth    unit.Known[unit.Length] `json:"pad_depth_m" say:"Depth of the soft landing under the mass" range:"[0,5]"`
	LoadWidth   unit.Known[unit.Length] `json:"load_width_m" say:"Width of the mass" range:"(0,20]"`
	LoadHeight  unit.Known[unit.Length] `json:"load_height_m" say:"Height of the mass" range:"(0,20]"`
	FrameHeight unit.Known[unit.Length] `json:"frame_height_m" say:"Height of the frame" range:"(0,1000]"`
	Told        unit.Answer             `json:"neighbours_told" say:"Household and neighbours told of the hours of lifting?" enum:"|yes|no"`
	Lit         unit.Answer             `json:"lit_at_night" say:"Light there at night?" enum:"|yes|no"`
	Noise       unit.Answer             `json:"noise_at_bed" say:"Is the noise at the bed measured and acceptable?" enum:"|yes|no"`
	WindPlan    unit.Answer             `json:"wind_plan" say:"Is it lowered in wind, frost and gales?" enum:"|yes|no"`
	Insurance   unit.Answer             `json:"insurance_and_rules" say:"Insurance and local rule asked?" enum:"|yes|no"`
	Watched     unit.Answer             `json:"watched_halfway" say:"Does someone watch it while it hangs halfway?" enum:"|yes|no"`

	Barrier         Barrier                 `json:"barrier" say:"What keeps people away from the mass: a locked room, a fence at least {1.8 m} high, or nothing" enum:"|locked_room|fence|none"`
	BelowSecured    unit.Answer             `json:"below_secured" say:"Is the room under the floor emptied and locked, and are pipes and tanks moved?" enum:"|yes|no"`
	SelfStartGuard  unit.Answer             `json:"self_start_guard" say:"Is there a lockable switch, no restart after a power loss, a warning, and a stop that sets the brake?" enum:"|yes|no"`
	CarriesPeople   unit.Answer             `json:"carries_people" say:"Does it ever carry a person?" enum:"|yes|no"`
	WayDown         WayDown                 `json:"way_down" say:"How it comes down with dead power" enum:"|hand_crank|brake_by_hand|other_hoist|none"`
	MayFall         unit.Answer             `json:"may_fall" say:"May the mass fall, because nobody can be where it falls?" enum:"|yes|no"`
	FenceRadius     unit.Known[unit.Length] `json:"fence_radius_m" say:"Distance from the point under the mass to the fence" range:"(0,100]"`
	ControlsOutside unit.Answer             `json:"controls_outside" say:"Do all controls stand outside the fence or the locked room?" enum:"|yes|no"`
	Rig             unit.Known[unit.Length] `json:"rig_m" say:"Height of splice, thimble, shackle and hook between mass and rope; not known counts as {200 mm}" range:"[0.02,2]"`
}
