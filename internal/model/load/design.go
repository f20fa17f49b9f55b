package load

import "duskweight/internal/model/unit"

// Load is what the project wants at night and what idles, the same in all variants.
type Load struct {
	Appliances []Appliance `json:"appliances" say:"Energy of the night"`
	Standing   []Standing  `json:"standing" say:"What uses power all the time, the same in all variants"`
	Inverter   Inverter    `json:"inverter"`
	Night      Night       `json:"night"`

	Growth      unit.Known[unit.Ratio] `json:"growth_per_year" say:"Share by which the appliances grow each year; not known counts as none" range:"[-0.1,0.3]"`
	GrowthYears unit.Known[unit.Count] `json:"growth_years" say:"Years of that growth; the plan is then for the load after them" range:"[0,30]"`
}

// Appliance is one kind of lamp or device.
type Appliance struct {
	Name      string                    `json:"name" say:"What it is"`
	Power     unit.Known[unit.Power]    `json:"power_w" say:"Power of one while it is on" range:"[0,1e5]"`
	Count     unit.Known[unit.Count]    `json:"count" say:"How many" range:"[0,10000]"`
	From      unit.Known[unit.Duration] `json:"from_s" say:"On from, seconds after midnight, standard clock time" range:"[0,86400]"`
	To        unit.Known[unit.Duration] `json:"to_s" say:"Until, seconds after midnight; earlier than from means over midnight; the same as from means all day" range:"[0,86400]"`
	FromDusk  unit.Known[unit.Duration] `json:"from_dusk_s" say:"Or: on from dusk for this long, at the most until dawn; then from and until are not read" range:"(0,86400]"`
	AfterDusk unit.Answer               `json:"after_dusk" say:"Only while the sun is down?" enum:"|yes|no"`
	Share     unit.Known[unit.Ratio]    `json:"share_on" say:"Share of that time it is really on; not known counts as 1" range:"[0,1]"`
	Label     unit.Known[unit.Energy]   `json:"label_j_year" say:"Energy of one in a year, from its label, for one that is on all day; the share of time follows from it, and replaces one that is given" range:"(0,1e12]"`
	Measured  unit.Known[unit.Energy]   `json:"measured_j_day" say:"Energy of one in a whole day, measured with a meter; it replaces the energy label" range:"(0,1e10]"`
	Heat      unit.Answer               `json:"follows_heat" say:"Does it cool, and run longer where it is warm? Its share then counts as the one at {24 °C}. It is in the battery's room, or else outside, where at least {18 °C} count" enum:"|yes|no"`
	Months    []unit.Count              `json:"months" say:"Months in which it is used, 1 to 12; empty means all" range:"[1,12]"`
	Supply    Supply                    `json:"supply" say:"Straight from the line, or through the inverter" enum:"dc|inverter"`
	Priority  Priority                  `json:"priority" say:"Essential, or nice to have" enum:"essential|nice"`
	Surge     unit.Known[unit.Power]    `json:"surge_w" say:"Power of one in the moment it starts; not known counts as 5 times its power for a pump or cooling, 2 times for a fan" range:"[0,1e6]"`
	SurgeTime unit.Known[unit.Duration] `json:"surge_s" say:"How long the start takes; not known counts as up to 10 seconds" range:"[0,60]"`
	PowerFact unit.Known[unit.Ratio]    `json:"power_factor" say:"Power factor through the inverter; not known counts as 1" range:"(0,1]"`
	Volts     unit.Known[unit.Voltage]  `json:"volts_v" say:"Straight from the line: the voltage it needs" range:"(0,1000]"`
	Converter unit.Answer               `json:"own_converter" say:"If it needs another voltage than the line: does it have its own converter?" enum:"|yes|no"`
	AtOnce    unit.Answer               `json:"at_once" say:"Can it be on together with the others? No: it never runs together with another device that says no" enum:"|yes|no"`
	Waits     unit.Answer               `json:"waits" say:"May it wait for the sun? Then it needs its energy of a day between from and until, in whole hours; dusk and its share are not read" enum:"|yes|no"`
	DayEnergy unit.Known[unit.Energy]   `json:"energy_j_day" say:"If it waits: energy of one in a day" range:"(0,1e10]"`
	RunAbove  unit.Known[unit.Ratio]    `json:"run_above" say:"If it waits: it runs on sun that is left while the stores are at least so full, and below that only on sun that they leave; not known counts as 0.5" range:"[0,1]"`
	MustToday unit.Answer               `json:"must_today" say:"If it waits: does it run in its last hours even when the stores are low?" enum:"|yes|no"`
	CarryDays unit.Known[unit.Count]    `json:"carry_days" say:"If it waits: days for which what it did not get may wait besides; not known counts as 0" range:"[0,7]"`
	Water     Pump                      `json:"water"`
	ShedBelow unit.Known[unit.Ratio]    `json:"shed_below" say:"It is switched off while the stores are less full than this" range:"[0,1]"`
	BackAbove unit.Known[unit.Ratio]    `json:"back_above" say:"It is switched on again when the stores are so full; not known counts as 0.1 more than where it goes off" range:"[0,1]"`
	StopsHarm unit.Answer               `json:"stops_harm" say:"Is anyone or an animal harmed when this stops?" enum:"|yes|no"`
	CableLen  unit.Known[unit.Length]   `json:"cable_length_m" say:"Its cable from the line, one way" range:"(0,200]"`
	CableArea unit.Known[unit.Area]     `json:"cable_area_m2" say:"Cross-section of its cable" range:"(0,1e-3]"`
	Purpose   Purpose                   `json:"purpose" say:"What it is for; medical devices, alarms and whatever does harm when it stops are refused" enum:"|light|radio|phone|computer|router|fan|cooling|pump|medical|alarm|animals|other"`
}

// Pump is what a pump that waits lifts in a day.
type Pump struct {
	Daily      unit.Known[unit.Volume] `json:"m3_day" say:"If it waits and pumps water: water of a day; its energy follows from it where none is given" range:"(0,1e4]"`
	Lift       unit.Known[unit.Length] `json:"lift_m" say:"Height from the water to where it runs out" range:"(0,500]"`
	PipeLength unit.Known[unit.Length] `json:"pipe_length_m" say:"Length of its pipe, of plastic" range:"[0,1e4]"`
	PipeInner  unit.Known[unit.Length] `json:"pipe_inner_m" say:"Inner width of its pipe" range:"[0.003,2]"`
	Flow       unit.Known[unit.Flow]   `json:"flow_m3_s" say:"Flow while it runs" range:"(0,1]"`
	Efficiency unit.Known[unit.Ratio]  `json:"efficiency" say:"Efficiency of pump and motor together" range:"(0,1]"`
}

// Standing uses power in every hour.
type Standing struct {
	Name  string                 `json:"name" say:"What it is"`
	Power unit.Known[unit.Power] `json:"power_w" say:"Power at the line, all the time" range:"[0,1e5]"`
}

// Inverter makes alternating current for the appliances that want it.
type Inverter struct {
	Present    unit.Answer              `json:"present" say:"Is there an inverter?" enum:"|yes|no"`
	Idle       unit.Known[unit.Power]   `json:"idle_w" say:"Power it uses with nothing plugged in, all the time" range:"[0,1000]"`
	Efficiency unit.Known[unit.Ratio]   `json:"efficiency" say:"Its efficiency at the usual load; not known counts as 0.85, or as the usual curve where its rated power is known" range:"(0,1]"`
	Tenth      unit.Known[unit.Ratio]   `json:"efficiency_tenth" say:"Its efficiency at a tenth of its rated power, from the sheet" range:"(0,1]"`
	Full       unit.Known[unit.Ratio]   `json:"efficiency_full" say:"Its efficiency at its rated power, from the sheet" range:"(0,1]"`
	Rated      unit.Known[unit.Power]   `json:"rated_w" say:"Rated power" range:"(0,1e6]"`
	Surge      unit.Known[unit.Power]   `json:"surge_w" say:"Power that the inverter gives when a device starts" range:"(0,1e6]"`
	Input      unit.Known[unit.Voltage] `json:"input_v" say:"Nominal voltage of its battery side" range:"(0,1000]"`
	Cut        unit.Known[unit.Voltage] `json:"cut_v" say:"Battery voltage at which it switches off; not known counts as 0.875 of the nominal voltage" range:"(0,1000]"`
	OwnSockets unit.Answer              `json:"own_sockets" say:"Do the devices plug into the inverter itself?" enum:"|yes|no"`
	CableLen   unit.Known[unit.Length]  `json:"cable_length_m" say:"Its cable to the line, one way" range:"(0,200]"`
	CableArea  unit.Known[unit.Area]    `json:"cable_area_m2" say:"Cross-section of its cable" range:"(0,1e-3]"`
}

// Night is which hours count as night: the sun's, or the user's own.
type Night struct {
	Own  NightOf                   `json:"hours" say:"Night by the sun, or by your own hours" enum:"|sun|own"`
	From unit.Known[unit.Duration] `json:"from_s" say:"Own hours: from, seconds after midnight" range:"[0,86400]"`
	To   unit.Known[unit.Duration] `json:"to_s" say:"Own hours: to, seconds after midnight" range:"[0,86400]"`
}
