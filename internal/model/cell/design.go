package cell

import "duskweight/internal/model/unit"

// Bank is the design of a store of chemical cells: equal blocks in series and parallel. A value that is not known takes
// the typical value of the kind (Kinds), with its source; the label's capacity and voltage have none.
type Bank struct {
	Name        string                      `json:"name" say:"What you call it"`
	Role        Role                        `json:"role" say:"Used for the night, or only for the electronics of a hoist" enum:"|night|electronics"`
	Kind        Chemistry                   `json:"kind" say:"Kind of cells" enum:"|flooded_lead|sealed_lead|lfp|nmc|nickel_iron|sodium_ion"`
	Capacity    unit.Known[unit.Charge]     `json:"block_capacity_c" say:"Capacity of one block on its label, in coulombs (1 Ah = 3600 C)" range:"(0,1e9]"`
	RatedHours  unit.Known[unit.Duration]   `json:"rated_time_s" say:"The label's discharge time (72000 s for a 20-hour label); not known counts as 20 hours for lead, 5 for the others" range:"(0,1e6]"`
	Voltage     unit.Known[unit.Voltage]    `json:"block_voltage_v" say:"Nominal voltage of one block" range:"(0,1000]"`
	Series      unit.Known[unit.Count]      `json:"series" say:"Blocks in series; not known counts as 1" range:"[1,200]"`
	Parallel    unit.Known[unit.Count]      `json:"parallel" say:"Strings in parallel; not known counts as 1" range:"[1,100]"`
	Depth       unit.Known[unit.Ratio]      `json:"usable_depth" say:"Share of the capacity that is used" range:"(0,1]"`
	RoundTrip   unit.Known[unit.Ratio]      `json:"round_trip" say:"Energy out over energy in" range:"(0,1]"`
	ChargeEff   unit.Known[unit.Ratio]      `json:"charge_efficiency" say:"Charging alone, if both directions are known" range:"(0,1]"`
	DrawEff     unit.Known[unit.Ratio]      `json:"discharge_efficiency" say:"Discharging alone, if both directions are known" range:"(0,1]"`
	Peukert     unit.Known[unit.Ratio]      `json:"peukert" say:"Peukert exponent of the rated form" range:"[1,2]"`
	ChargeRate  unit.Known[unit.Ratio]      `json:"charge_rate_per_h" say:"Most charging power over energy on the label, each hour (0.5 means full in two hours)" range:"(0,20]"`
	DrawRate    unit.Known[unit.Ratio]      `json:"draw_rate_per_h" say:"Most discharging power over energy on the label, each hour" range:"(0,50]"`
	ChargeMin   unit.Known[unit.Celsius]    `json:"charge_min_c" say:"Coldest at which it may be charged" range:"[-60,40]"`
	ChargeMax   unit.Known[unit.Celsius]    `json:"charge_max_c" say:"Warmest at which it may be charged" range:"[0,90]"`
	Leak        unit.Known[unit.Ratio]      `json:"leak_per_month" say:"Share it loses by itself in a month at {25 °C}" range:"[0,0.9]"`
	CycleLife   unit.Known[unit.Ratio]      `json:"cycle_life" say:"Cycles to 80 % capacity at the reference depth" range:"[1,1e7]"`
	CycleDepth  unit.Known[unit.Ratio]      `json:"cycle_life_depth" say:"The reference depth of that number" range:"(0,1]"`
	CycleSlope  unit.Known[unit.Ratio]      `json:"cycle_life_slope" say:"Exponent of life over depth" range:"[0,5]"`
	Calendar    unit.Known[unit.Duration]   `json:"calendar_life_s" say:"Life on the shelf at {25 °C}" range:"(0,6.4e9]"`
	EndShare    unit.Known[unit.Ratio]      `json:"end_share" say:"Share of the capacity left at which you replace it; not known counts as 80 %" range:"[0.5,0.95]"`
	Standing    unit.Known[unit.Power]      `json:"standing_w" say:"Power that its electronics use all the time" range:"[0,1000]"`
	Indoors     Room                        `json:"place" say:"Place of the battery" enum:"|outside_air|own_room|bedroom|escape_route|loft|shed"`
	Board       unit.Answer                 `json:"management_board" say:"Lithium: is there a management board with a cold-charge cut?" enum:"|yes|no"`
	Origin      Origin                      `json:"cells_are" say:"New and matched, or second-hand, mixed or unknown" enum:"|new|second_hand|mixed"`
	CableLength unit.Known[unit.Length]     `json:"cable_length_m" say:"One way from the cells to the line" range:"(0,200]"`
	CableArea   unit.Known[unit.Area]       `json:"cable_area_m2" say:"Cross-section of the copper" range:"(0,1e-3]"`
	Fuse        unit.Known[unit.Current]    `json:"fuse_a" say:"Fuse at the cells" range:"(0,5000]"`
	BoardMost   unit.Known[unit.Current]    `json:"board_max_a" say:"Most current that the management board lets through" range:"(0,5000]"`
	Vent        unit.Known[unit.Area]       `json:"vent_area_m2" say:"Opening to the outside low down, and the same again high up" range:"[0,10]"`
	Internal    unit.Known[unit.Resistance] `json:"internal_ohm" say:"Internal resistance of one block; not known counts as the usual one of the kind" range:"(0,10]"`
	Breaking    unit.Known[unit.Current]    `json:"breaking_a" say:"Short-circuit current that the fuse can end; not known counts as 1\u00a0000 A, a blade fuse" range:"(0,1e6]"`
	FuseFrom    unit.Known[unit.Length]     `json:"fuse_distance_m" say:"From the battery to its fuse, along the cable" range:"[0,50]"`
	Autonomy    unit.Known[unit.Ratio]      `json:"autonomy_days" say:"Days without sun that the battery must last; for the trade's sizing" range:"(0,30]"`
}

// ForNight reports whether a battery is there for the lamps, and not only for the electronics of a hoist.
func (b Bank) ForNight() bool { return b.Role != RoleElectronics }
