package panel

import (
	"slices"

	"duskweight/internal/model/unit"
)

// Array is one sub-array: equal panels in one plane.
type Array struct {
	Name      string                        `json:"name" say:"What you call it"`
	Count     unit.Known[unit.Count]        `json:"count" say:"Panels in this plane" range:"[0,1000]"`
	Power     unit.Known[unit.Power]        `json:"panel_w" say:"Power of one panel on its label (1\u00a0000 W/m², {25 °C})" range:"(0,2000]"`
	Tilt      unit.Known[unit.Angle]        `json:"tilt_rad" say:"Tilt from the flat" range:"[0,3.141592653589793]"`
	TiltBy    *[12]unit.Angle               `json:"tilt_by_month_rad" say:"Tilt of each month, if the panels are tilted again over the year; replaces the one tilt" range:"[0,3.141592653589793]"`
	Azimuth   unit.Known[unit.Angle]        `json:"azimuth_rad" say:"Direction it faces, clockwise from north" range:"[0,6.283185307179586]"`
	Gamma     unit.Known[unit.PerKelvin]    `json:"gamma_per_k" say:"Change of power with temperature, negative; not known counts as −0.004" range:"[-0.02,0]"`
	Soiling   unit.Known[unit.Ratio]        `json:"soiling" say:"Share lost to dirt; not known counts as 0.03" range:"[0,1)"`
	Dust      unit.Known[unit.Ratio]        `json:"dust_per_day" say:"Share lost more with each day without rain or cleaning; not known counts as 0.0015 where dust is given at all" range:"[0,0.02]"`
	DustClean unit.Known[unit.Count]        `json:"clean_every_days" say:"Days from one cleaning to the next in the months with dust" range:"[1,365]"`
	DustIn    []unit.Count                  `json:"dust_months" say:"Months in which dust settles, 1 to 12; empty means all, where dust is given" range:"[1,12]"`
	Slant     unit.Known[unit.Length]       `json:"slant_m" say:"From the lower edge of the panels to the upper, along them: how far snow slides" range:"(0,50]"`
	Edge      unit.Known[unit.Length]       `json:"lower_edge_m" say:"Lower edge over the ground: room for the snow that slid off" range:"[0,50]"`
	Cleared   unit.Answer                   `json:"snow_cleared" say:"Does somebody clear the snow off? A quarter of the loss is then left" enum:"|yes|no"`
	Mismatch  unit.Known[unit.Ratio]        `json:"mismatch" say:"Share lost to unequal panels; not known counts as 0.02" range:"[0,1)"`
	Wiring    unit.Known[unit.Ratio]        `json:"wiring" say:"Share lost in the wires; not known counts as 0.02" range:"[0,1)"`
	Shade     *[12]float64                  `json:"shade" say:"Share of the sunlight that trees or houses block, by month" range:"[0,1]"`
	Cell      CellModel                     `json:"cell_temperature" say:"How the panel's temperature is computed" enum:"|faiman|nominal"`
	U0        unit.Known[unit.HeatLoss]     `json:"u0_w_m2k" say:"Faiman: heat loss without wind; not known counts as 25" range:"(0,200]"`
	U1        unit.Known[unit.HeatLossWind] `json:"u1_ws_m3k" say:"Faiman: heat loss by wind; not known counts as 6.84" range:"[0,200]"`
	Wind      unit.Known[unit.Speed]        `json:"wind_m_s" say:"Mean wind at the panel; not known counts as 1" range:"[0,50]"`
	NOCT      unit.Known[unit.Celsius]      `json:"nominal_cell_c" say:"Nominal operating cell temperature" range:"[20,80]"`
	Strings   unit.Known[unit.Count]        `json:"strings" say:"Strings of panels side by side on one cable" range:"[1,100]"`
	CableLen  unit.Known[unit.Length]       `json:"cable_length_m" say:"Cable from the panels to the controller, one way; with its cross-section it replaces the share lost in the wires" range:"(0,200]"`
	CableArea unit.Known[unit.Area]         `json:"cable_area_m2" say:"Cross-section of that cable; not known counts as 4 mm² where its current is checked" range:"(0,1e-3]"`
	Sheet     *Sheet                        `json:"sheet" say:"Data-sheet values for the current–voltage curve"`
}

// Copy is the array with tilts, a shade, a sheet and months of its own.
func (a Array) Copy() Array {
	a.DustIn = slices.Clone(a.DustIn)
	if a.TiltBy != nil {
		a.TiltBy = new(*a.TiltBy)
	}
	if a.Shade != nil {
		a.Shade = new(*a.Shade)
	}
	if a.Sheet != nil {
		a.Sheet = new(*a.Sheet)
	}
	return a
}

// Stands reports whether it is known how the panels stand: their tilt, or the tilts of the months, and where they face.
func (a Array) Stands() bool { return (a.Tilt.Is || a.TiltBy != nil) && a.Azimuth.Is }

// Nominal is the power on the labels of all panels of the array; not known while power or count is not.
func (a Array) Nominal() unit.Known[unit.Power] {
	if !a.Power.Is || !a.Count.Is {
		return unit.Known[unit.Power]{}
	}
	return unit.Of(a.Power.Val * unit.Power(a.Count.Val))
}

// Sheet is the data sheet of one panel, for the one-diode curve.
type Sheet struct {
	Isc    unit.Known[unit.Current]   `json:"isc_a" say:"Short-circuit current" range:"(0,100]"`
	Voc    unit.Known[unit.Voltage]   `json:"voc_v" say:"Open-circuit voltage" range:"(0,1000]"`
	Imp    unit.Known[unit.Current]   `json:"imp_a" say:"Current at the best point" range:"(0,100]"`
	Vmp    unit.Known[unit.Voltage]   `json:"vmp_v" say:"Voltage at the best point" range:"(0,1000]"`
	Alpha  unit.Known[unit.PerKelvin] `json:"alpha_isc_per_k" say:"Change of short-circuit current with temperature, as a share" range:"[-0.01,0.01]"`
	Beta   unit.Known[unit.PerKelvin] `json:"beta_voc_per_k" say:"Change of open-circuit voltage with temperature, as a share" range:"[-0.02,0.01]"`
	Cells  unit.Known[unit.Count]     `json:"cells_in_series" say:"Cells in series" range:"[1,500]"`
	Series unit.Known[unit.Count]     `json:"panels_in_series" say:"Panels in series in a string; not known counts as 1, and the voltage of several panels is then not known" range:"[1,100]"`
	Fuse   unit.Known[unit.Current]   `json:"max_fuse_a" say:"Largest series fuse that the sheet allows; not known counts as 15 A" range:"(0,100]"`
}

// Controller stands between panels and the line.
type Controller struct {
	Kind        ControllerKind           `json:"kind" say:"Maximum-power tracking, pulse-width, or none (panel straight on the motor)" enum:"tracking|pulse_width|direct"`
	Curve       []Efficiency             `json:"efficiency_curve" say:"Tracking: efficiency over load, straight between points; if empty: the typical curve"`
	Power       unit.Known[unit.Power]   `json:"rated_w" say:"Rated power; not known counts as the panels' power" range:"(0,1e6]"`
	Night       unit.Known[unit.Power]   `json:"standing_w" say:"Power it uses all the time; not known counts as 15 mA (tracking) or 7 mA (pulse width) at the line's voltage" range:"[0,1000]"`
	BusVolts    unit.Known[unit.Voltage] `json:"line_voltage_v" say:"Voltage of the line; not known counts as 12.8" range:"(0,1000]"`
	MaxInput    unit.Known[unit.Voltage] `json:"max_input_v" say:"Highest voltage of the panels that it withstands" range:"(0,1000]"`
	MaxInputA   unit.Known[unit.Current] `json:"max_input_a" say:"Highest short-circuit current of the panels that it withstands" range:"(0,1000]"`
	MaxCharge   unit.Known[unit.Current] `json:"max_charge_a" say:"Most current that it gives to the line" range:"(0,5000]"`
	Licensed    unit.Answer              `json:"licensed" say:"Does a licensed person do the wiring above 60 V?" enum:"|yes|no"`
	StringFuses unit.Answer              `json:"string_fuses" say:"Does each string of panels have its own fuse?" enum:"|yes|no"`
}

// Efficiency is one point of a curve.
type Efficiency struct {
	Load       float64 `json:"load" say:"Share of rated power" range:"[0,1.5]"`
	Efficiency float64 `json:"efficiency" say:"Efficiency there" range:"[0,1]"`
}
