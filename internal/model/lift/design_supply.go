package lift

import "duskweight/internal/model/unit"

// Raise is how the machine is fed while it lifts.
type Raise struct {
	Feed         Feed                        `json:"feed" say:"What feeds the motor: a step-down drive that can lift slowly, a relay at a fixed voltage, or the panel straight on the motor" enum:"|drive|relay|panel"`
	Voltage      unit.Known[unit.Voltage]    `json:"voltage_v" say:"Supply voltage (of a converter: the highest that it gives)" range:"(0,2000]"`
	CurrentLimit unit.Known[unit.Current]    `json:"current_limit_a" say:"Most current the supply gives; not known means that only the wires and the winding limit the current" range:"(0,1e4]"`
	WireR        unit.Known[unit.Resistance] `json:"wire_ohm" say:"Resistance of supply and wires; not known counts as none" range:"[0,1e3]"`
	DriveEff     unit.Known[unit.Ratio]      `json:"drive_efficiency" say:"Efficiency of the converter between line and motor; not known counts as 1 for a relay" range:"(0,1]"`
	Auxiliary    unit.Known[unit.Power]      `json:"auxiliary_w" say:"Brake coil and contactors while it moves up" range:"[0,1e4]"`
	Converter    Conversion                  `json:"converter" say:"Drive: does it only step the line's voltage down, or up as well?" enum:"|step_down|step_up"`
	Fuse         unit.Known[unit.Current]    `json:"fuse_a" say:"Fuse of the motor's supply" range:"(0,5000]"`
	WireArea     unit.Known[unit.Area]       `json:"wire_area_m2" say:"Cross-section of the wires between line and motor" range:"(0,1e-3]"`
	Switch       unit.Known[unit.Current]    `json:"switch_a" say:"Direct current that its switch or relay can break" range:"(0,5000]"`
}

// Lower is what the machine drives while the mass comes down. Several loads hang in parallel.
type Lower struct {
	Loads     []DCLoad                 `json:"loads" say:"What hangs on the motor terminals at night"`
	Auxiliary unit.Known[unit.Power]   `json:"auxiliary_w" say:"Brake coil and controller while the mass moves down" range:"[0,1e4]"`
	Ambient   unit.Known[unit.Celsius] `json:"ambient_c" say:"Air round the motor; not known counts as {25 °C}" range:"[-60,80]"`
	Shunt     unit.Answer              `json:"shunt" say:"Is there a resistor or clamp wired straight to the terminals, no fuse, no switch?" enum:"|yes|no"`
}

// DCLoad is one load on the terminals.
type DCLoad struct {
	Kind       LoadKind                      `json:"kind" say:"What it is" enum:"|resistor|string|cell|constant_power|governed|clamp"`
	Name       string                        `json:"name" say:"What you call it"`
	Resistance unit.Known[unit.Resistance]   `json:"resistance_ohm" say:"Resistor: its resistance" range:"(0,1e6]"`
	Threshold  unit.Known[unit.Voltage]      `json:"threshold_v" say:"Lamps in a row: where they begin to light; cell: its voltage; clamp: where it conducts" range:"[0,2000]"`
	Slope      unit.Known[unit.Resistance]   `json:"slope_ohm" say:"Lamps in a row, cell or clamp: how many volts each ampere more adds" range:"[0,1e6]"`
	Diode      unit.Known[unit.Voltage]      `json:"diode_v" say:"Drop of the diode in front; not known counts as none" range:"[0,5]"`
	Power      unit.Known[unit.Power]        `json:"power_w" say:"Constant power: what it uses" range:"(0,1e5]"`
	Speed      unit.Known[unit.AngularSpeed] `json:"set_speed_rad_s" say:"Governed: the rotor speed it keeps" range:"(0,1e5]"`
	Efficiency unit.Known[unit.Ratio]        `json:"efficiency" say:"Share of its power that reaches the night's lamps; not known counts as 1 (0 for a clamp or a braking resistor)" range:"[0,1]"`
	MinVoltage unit.Known[unit.Voltage]      `json:"min_voltage_v" say:"Least voltage it works at" range:"[0,2000]"`
	MaxVoltage unit.Known[unit.Voltage]      `json:"max_voltage_v" say:"Highest voltage it withstands" range:"(0,2000]"`
	MaxCurrent unit.Known[unit.Current]      `json:"rated_current_a" say:"Its rated current" range:"(0,1e5]"`
	Permanent  unit.Answer                   `json:"permanent" say:"Wired straight to the terminals, no fuse, switch or plug?" enum:"|yes|no"`
}

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
