package lift

import "duskweight/internal/model/unit"

// Machine is the motor-generator. Either the two constants, or the sheet's numbers they follow from, or the bench
// measurements; more than one set is compared and contradictions are flagged.
type Machine struct {
	Name        string                           `json:"name" say:"What it is"`
	K           unit.Known[unit.MachineConstant] `json:"k_vs_rad" say:"Machine constant: volts for each rad/s, N·m for each ampere" range:"(0,100]"`
	R           unit.Known[unit.Resistance]      `json:"r_ohm" say:"Winding resistance at {25 °C}, brushes included" range:"(0,1e4]"`
	I0          unit.Known[unit.Current]         `json:"i0_a" say:"Current without load" range:"[0,1000]"`
	J           unit.Known[unit.Inertia]         `json:"j_kg_m2" say:"Inertia of the rotor" range:"[0,1000]"`
	Mass        unit.Known[unit.Mass]            `json:"mass_kg" say:"Mass of the motor without gearbox: with its diameter it bounds an inertia that is not known" range:"(0,1e4]"`
	Diameter    unit.Known[unit.Length]          `json:"diameter_m" say:"Outer diameter of the motor" range:"(0,5]"`
	ShellTurns  unit.Answer                      `json:"shell_turns" say:"Does the outer shell of the motor turn with the shaft?" enum:"|yes|no"`
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

	MaxCurrent unit.Known[unit.Current]           `json:"continuous_current_a" say:"Current it withstands all day" range:"(0,1e4]"`
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
