package model

import (
	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// The answer that other programs read: SI with the unit as key suffix. Every key is always there; what is not known is
// null. The pages show the same numbers.

// Answer is the whole result of a document.
type Answer struct {
	Version  int             `json:"version"`
	On       *reason.Day     `json:"on"` // the day on which readiness was judged
	Project  string          `json:"project"`
	Sun      SunAnswer       `json:"sun"`
	Load     LoadAnswer      `json:"load"`
	Variants []VariantAnswer `json:"variants"`
}

// SunAnswer is the year's sun on the flat.
type SunAnswer struct {
	GHI     unit.Known[unit.Irradiation] `json:"ghi_j_m2_year"`
	Seed    *uint64                      `json:"weather_seed"` // null when the year comes from a file
	WhyNot  []SaidAnswer                 `json:"why_not"`      // why the year's sun is not known
	Remarks []SaidAnswer                 `json:"remarks"`      // what is to be known of it although it is
	Tilt    *TiltAnswer                  `json:"tilt"`         // of panels that face noon; null where the year's sun is not known
}

// TiltAnswer is which tilts bring the poorest month most, and of those which bring the year most: one all year, two a year, one
// for each month. Two[0] begins with month TwoMonths[0], Two[1] with month TwoMonths[1], 1 for January.
type TiltAnswer struct {
	Fixed       unit.Angle             `json:"fixed_rad"`
	Two         [2]unit.Angle          `json:"two_rad"`
	TwoMonths   [2]int                 `json:"two_months"`
	ByMonth     [12]unit.Angle         `json:"by_month_rad"`
	PoorestGain unit.Known[unit.Ratio] `json:"poorest_gain"` // of the poorest month at fixed_rad over that at the latitude, 10° to 60°
}

// SaidAnswer is one thing that is said, and where: a path inside the project.
type SaidAnswer struct {
	Path string `json:"path"`
	Say  string `json:"say"`
}

// LoadAnswer is what the nights want.
type LoadAnswer struct {
	Appliances unit.Known[unit.Energy] `json:"appliances_j_year"`
	NightMean  unit.Known[unit.Energy] `json:"night_j_mean"`
	NightMax   unit.Known[unit.Energy] `json:"night_j_max"`
	WhyNot     []SaidAnswer            `json:"why_not"` // why these are not known, those that are not
}

// VariantAnswer is one variant's year, verdict and stores.
type VariantAnswer struct {
	Name           string                       `json:"name"`
	Verdict        *string                      `json:"verdict"`
	WhyNoYear      *string                      `json:"why_no_year"` // null where the year is known
	Ready          reason.Word                  `json:"ready"`
	Because        []BecauseAnswer              `json:"because"` // the worst first; empty where it is ready
	Plane          unit.Known[unit.Irradiation] `json:"plane_j_m2_year"`
	Load           unit.Known[unit.Energy]      `json:"load_j_year"`
	Standing       unit.Known[unit.Energy]      `json:"standing_j_year"`
	Snow           []*[12]float64               `json:"snow_share"` // by array, of its power in each month; null where none falls, or nothing is said of it
	Bus            unit.Known[unit.Energy]      `json:"bus_j_year"`
	Direct         unit.Known[unit.Energy]      `json:"direct_j_year"`
	Delivered      unit.Known[unit.Energy]      `json:"delivered_j_year"`
	Spilled        unit.Known[unit.Energy]      `json:"spilled_j_year"`
	Unmet          unit.Known[unit.Energy]      `json:"unmet_j_year"`
	ServedShare    unit.Known[unit.Ratio]       `json:"served_share"`
	NightsServed   unit.Known[unit.Count]       `json:"nights_served"`
	Nights         unit.Known[unit.Count]       `json:"nights"`
	EssentialShare unit.Known[unit.Ratio]       `json:"essential_share"`
	NightsAnswer
	Worn        []WornAnswer           `json:"worn"` // empty where nothing ages
	Capital     unit.Known[unit.Money] `json:"capital"`
	Levelised   unit.Known[unit.Money] `json:"levelised_per_kwh"`
	Cost        CostAnswer             `json:"cost"`
	PricedParts [2]int                 `json:"priced_parts"`
	Backup      *BackupAnswer          `json:"backup"`    // null without one, or where it does not run
	SunShare    unit.Known[unit.Ratio] `json:"sun_share"` // of what the year used, not from the backup
	Shed        []ShedAnswer           `json:"shed"`      // by level; empty where nothing is switched off by one
	Waiting     []WaitingAnswer        `json:"waiting"`   // by device that waits
	Peak        PeakAnswer             `json:"peak"`
	Wiring      WiringAnswer           `json:"wiring"`
	Stores      []StoreAnswer          `json:"stores"`
	Years       *YearsAnswer           `json:"years"` // null where many years were not asked for, or cannot be run
}

// CostAnswer is what all parts come to: at the start, and what they are worth today over the years with what is replaced. Low is
// at the low prices with the long lives of the batteries, high the reverse.
type CostAnswer struct {
	CapitalLow  unit.Known[unit.Money] `json:"capital_low"`
	CapitalHigh unit.Known[unit.Money] `json:"capital_high"`
	NPVLow      unit.Known[unit.Money] `json:"npv_low"`
	NPV         unit.Known[unit.Money] `json:"npv"`
	NPVHigh     unit.Known[unit.Money] `json:"npv_high"`
}

// NightsAnswer counts the nights of the year with batteries in the last year of their life, as the verdict does.
type NightsAnswer struct {
	Full      unit.Known[unit.Count] `json:"nights_full"`      // at most 1 % of what is wanted is missing
	Essential unit.Known[unit.Count] `json:"nights_essential"` // at most 1 % of what is essential
	Most      unit.Known[unit.Count] `json:"nights_most"`      // at most a tenth
	Dark      unit.Known[unit.Count] `json:"nights_dark"`      // nine tenths or more
	Share     unit.Known[unit.Ratio] `json:"night_share"`
	Gap       unit.Known[unit.Count] `json:"longest_gap_h"` // most hours on end with essential load missing
	ToFull    unit.Known[unit.Count] `json:"to_full"`       // full nights short of carrying the night
}

// WornAnswer is that year with batteries of which a share of the capacity is left: new, half-way through their life, in its last
// year.
type WornAnswer struct {
	Share     unit.Ratio `json:"share"`
	Full      unit.Count `json:"nights_full"`
	Essential unit.Count `json:"nights_essential"`
	Night     unit.Ratio `json:"night_share"`
}

// LifeAnswer is how long a battery lasts. Years are null where nothing wears it.
type LifeAnswer struct {
	Low        unit.Known[unit.Ratio] `json:"years_low"`
	Years      unit.Known[unit.Ratio] `json:"years"`
	High       unit.Known[unit.Ratio] `json:"years_high"`
	Shelf      unit.Ratio             `json:"shelf_per_year"`
	Wear       unit.Ratio             `json:"wear_per_year"`
	Sulphation unit.Ratio             `json:"sulphation"`
	Capped     bool                   `json:"capped"`
}

// StoreAnswer is one store's year; Hoist and Water are null for another kind, and Life for what does not age or has no year.
type StoreAnswer struct {
	Name      string                  `json:"name"`
	Kind      string                  `json:"kind"`
	Capacity  unit.Known[unit.Energy] `json:"capacity_j"`
	RoundTrip unit.Known[unit.Ratio]  `json:"round_trip"`
	In        unit.Known[unit.Energy] `json:"in_j_year"`
	Out       unit.Known[unit.Energy] `json:"out_j_year"`
	Loss      unit.Known[unit.Energy] `json:"loss_j_year"`
	Change    unit.Known[unit.Energy] `json:"change_j_year"`
	Standing  unit.Known[unit.Energy] `json:"standing_j_year"`
	Hoist     *HoistAnswer            `json:"hoist"`
	Water     *WaterAnswer            `json:"water"`
	Life      *LifeAnswer             `json:"life"`
	Ready     reason.Word             `json:"ready"`
	Because   []BecauseAnswer         `json:"because"` // those of the variant that lie in this store
}

// BecauseAnswer is one reason against readiness. Path is inside the variant, or behind "load." inside the project; clears is
// answer, change, rated_part, proof, person or never.
type BecauseAnswer struct {
	ID     string        `json:"id"`
	Word   reason.Word   `json:"word"`
	Path   string        `json:"path"`
	Say    string        `json:"say"`
	Mend   string        `json:"mend"`
	Clears reason.Clears `json:"clears"`
}

// HoistAnswer is a hoist's drive, hazards and checks.
type HoistAnswer struct {
	Tension      []TensionAnswer         `json:"tension"`
	RopeUp       unit.Known[unit.Force]  `json:"rope_up_n"`
	RopeDown     unit.Known[unit.Force]  `json:"rope_down_n"`
	DrumTorqueUp unit.Known[unit.Torque] `json:"drum_torque_up_nm"`
	Raise        RaiseAnswer             `json:"raise"`
	Lower        LowerAnswer             `json:"lower"`
	LetGo        LetGoAnswer             `json:"let_go"`
	Heat         []HeatAnswer            `json:"heat_runs"`
	HeatWorst    HeatAnswer              `json:"heat"`
	Checks       []CheckAnswer           `json:"checks"`
	Ready        reason.Word             `json:"ready"`
	Reasons      []string                `json:"reasons"` // why it is not ready, the first cause first
	Flags        []FlagAnswer            `json:"flags"`
	Missing      []MissingAnswer         `json:"missing"`
	Machine      MachineAnswer           `json:"machine"`
	HighBrush    *BrushAnswer            `json:"high_brush_drop"`
	Stages       []StageAnswer           `json:"stages"`
	Cures        []CureAnswer            `json:"cures"`
	Mishaps      MishapAnswer            `json:"mishaps"`
	Hazards      HazardAnswer            `json:"hazards"`
	Direct       *DirectAnswer           `json:"direct"` // null unless the panels feed the motor straight
}

// DirectAnswer is the panel straight on the motor: lights in W/m² on the panels with air of 25 °C, heights on a mean day
// if the mass could go on rising. Where it starts or stalls at no light at all it is null.
type DirectAnswer struct {
	RunCurrent      unit.Known[unit.Current]    `json:"run_current_a"`
	StartCurrent    unit.Known[unit.Current]    `json:"start_current_a"`
	ShortCurrent    unit.Known[unit.Current]    `json:"panel_short_current_a"`
	OpenVoltage     unit.Known[unit.Voltage]    `json:"panel_open_voltage_v"`
	StartLight      unit.Known[unit.Irradiance] `json:"start_w_m2"`
	StallLight      unit.Known[unit.Irradiance] `json:"stall_w_m2"`
	Points          []DirectPointAnswer         `json:"points"`
	HeightDay       unit.Known[unit.Length]     `json:"height_m_day"`
	Hours           unit.Known[unit.Count]      `json:"turning_h_year"`
	ConverterLight  unit.Known[unit.Irradiance] `json:"converter_start_w_m2"`
	ConverterHeight unit.Known[unit.Length]     `json:"converter_height_m_day"`
	Say             say.Sentence                `json:"say"`
}

// DirectPointAnswer is where panels and motor agree in one light; speed is the mass's.
type DirectPointAnswer struct {
	Light   unit.Irradiance `json:"light_w_m2"`
	Turns   bool            `json:"turns"`
	Voltage unit.Voltage    `json:"voltage_v"`
	Current unit.Current    `json:"current_a"`
	Speed   unit.Speed      `json:"speed_m_s"`
	Power   unit.Power      `json:"power_w"`
}

// TensionAnswer is one rope part, static.
type TensionAnswer struct {
	Part int        `json:"part"`
	Up   unit.Force `json:"up_n"`
	Down unit.Force `json:"down_n"`
}

// RaiseAnswer is the way up; speed is the mass's, time and energy are over the whole travel.
type RaiseAnswer struct {
	Stalls   *bool                     `json:"stalls"`
	Starts   *bool                     `json:"starts"`
	Current  unit.Known[unit.Current]  `json:"current_a"`
	Speed    unit.Known[unit.Speed]    `json:"speed_m_s"`
	Time     unit.Known[unit.Duration] `json:"time_s"`
	EnergyIn unit.Known[unit.Energy]   `json:"energy_in_j"`
	Say      say.Sentence              `json:"say"`
}

// LowerAnswer is the way down: voltage, speed and steady_power_w at the steady speed; time, power and energy over the whole
// travel as it is run, from rest to the stop, power being the mean (energy over time); end_speed_m_s at the lower stop, left_j
// what mass and rotor carry into it.
type LowerAnswer struct {
	RunsBack  *lift.ComesDown           `json:"runs_back"`
	Current   unit.Known[unit.Current]  `json:"current_a"`
	Voltage   unit.Known[unit.Voltage]  `json:"voltage_v"`
	Speed     unit.Known[unit.Speed]    `json:"speed_m_s"`
	Time      unit.Known[unit.Duration] `json:"time_s"`
	Power     unit.Known[unit.Power]    `json:"power_w"`
	EnergyOut unit.Known[unit.Energy]   `json:"energy_out_j"`
	AtSteady  unit.Known[unit.Power]    `json:"steady_power_w"`
	EndSpeed  unit.Known[unit.Speed]    `json:"end_speed_m_s"`
	Left      unit.Known[unit.Energy]   `json:"left_j"`
	Steady    *bool                     `json:"steady"`
	Say       say.Sentence              `json:"say"`
}

// LetGoAnswer is what happens with the lamps unplugged or the motor wires joined.
type LetGoAnswer struct {
	OpenSpeed   unit.Known[unit.Speed]        `json:"open_speed_m_s"`
	Rotor       unit.Known[unit.AngularSpeed] `json:"rotor_rad_s"`
	JoinedSpeed unit.Known[unit.Speed]        `json:"joined_speed_m_s"`
}

// HeatAnswer is the winding over one kind of run.
type HeatAnswer struct {
	Of      *string                   `json:"of"`
	Settles *bool                     `json:"settles"`
	Winding unit.Known[unit.Celsius]  `json:"winding_c"`
	Run     unit.Known[unit.Duration] `json:"run_s"`
	Rest    unit.Known[unit.Duration] `json:"rest_s"`
}

// CheckAnswer is one line of what breaks first.
type CheckAnswer struct {
	ID           string                 `json:"id"`
	Part         string                 `json:"part"`
	Demand       unit.Known[unit.Ratio] `json:"demand"`
	Capacity     unit.Known[unit.Ratio] `json:"capacity"`
	Unit         string                 `json:"unit"`
	FactorHad    unit.Known[unit.Ratio] `json:"factor_had"`
	FactorWanted unit.Ratio             `json:"factor_wanted"`
	Use          unit.Known[unit.Ratio] `json:"use"`
	Word         string                 `json:"word"`
	Source       string                 `json:"source"`
	Also         []string               `json:"also"` // further sources of its numbers
	Say          say.Sentence           `json:"say"`
	Case         string                 `json:"case"`
	Formula      string                 `json:"formula"`
	Inputs       []InputAnswer          `json:"inputs"`
	Cases        []CaseAnswer           `json:"cases"`
	Missing      []string               `json:"missing"` // paths inside the hoist
}
