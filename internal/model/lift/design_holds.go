package lift

import "duskweight/internal/model/unit"

// Hold is one thing that holds the mass by itself.
type Hold struct {
	Kind   HoldKind                `json:"kind" say:"What it is" enum:"|spring_brake|ratchet|rated_prop|locking_pin|overspeed_catch|load_arrester|motor|gears|joined_wires|lamps|belt"`
	OnDrum unit.Answer             `json:"on_drum" say:"Does it act on the drum, with nothing printed, no belt and no set screw between?" enum:"|yes|no"`
	Torque unit.Known[unit.Torque] `json:"torque_nm" say:"Torque it holds at the drum" range:"(0,1e6]"`
	Force  unit.Known[unit.Force]  `json:"force_n" say:"Or the load it holds directly" range:"(0,1e8]"`

	Sets        SetBy                     `json:"sets" say:"How it sets: by itself when the power goes or a held lever is let go, or by hand" enum:"|power_off|lever_released|by_hand"`
	Trips       unit.Answer               `json:"trips" say:"Does it set by itself when the drum turns too fast?" enum:"|yes|no"`
	TripsAt     unit.Known[unit.Speed]    `json:"trips_at_m_s" say:"Speed of the mass at which it sets by itself; more than the speed of coming down" range:"(0,5]"`
	ActsIn      unit.Known[unit.Duration] `json:"acts_in_s" say:"Time from that speed until it grips; not known counts as the time until the brake sets" range:"[0,5]"`
	EngagesIn   unit.Known[unit.Length]   `json:"engages_in_m" say:"Catch: how far the mass falls from that speed until the catch has locked" range:"(0,2]"`
	TripHow     TripHow                   `json:"trip_how" say:"Catch: what throws the pawl" enum:"|rated|governor|geared|plain_pawl"`
	Stopping    unit.Known[unit.Torque]   `json:"stopping_torque_nm" say:"Brake: torque with which it slows a turning drum; not known counts as 0.8 of what it holds" range:"(0,1e6]"`
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
	UpperStops   []Stop                    `json:"upper_stops" say:"Stops at the top; at least two that do not depend on each other"`
	BrakeRelease BrakeRelease              `json:"brake_release" say:"What holds the brake open while the mass moves" enum:"|held_by_hand|coil|latching"`
	SlackSwitch  unit.Answer               `json:"slack_switch" say:"Is there a switch that stops the drum when the rope goes slack?" enum:"|yes|no"`
	BrakeDelay   unit.Known[unit.Duration] `json:"brake_delay_s" say:"Time until the brake sets" range:"[0,60]"`
	RoomAbove    unit.Known[unit.Length]   `json:"room_above_m" say:"Free room above the upper stop before something jams" range:"[0,100]"`
	Factor       unit.Known[unit.Ratio]    `json:"dynamic_factor" say:"Your own factor for jerks; not known counts as 1.25, or 2 where the rope can go slack" range:"[1,10]"`
	Class        HoistClass                `json:"hoist_class" say:"Hoisting class of EN 13001-2, if you want the factor computed" enum:"|HC1|HC2|HC3|HC4"`
}

// HoldKind is something that keeps the mass from moving, or is thought to.
type HoldKind string

// The words of HoldKind.
const (
	HoldSpringBrake    HoldKind = "spring_brake"
	HoldRatchet        HoldKind = "ratchet"
	HoldRatedProp      HoldKind = "rated_prop"
	HoldLockingPin     HoldKind = "locking_pin"
	HoldOverspeedCatch HoldKind = "overspeed_catch"
	HoldLoadArrester   HoldKind = "load_arrester"
	HoldMotor          HoldKind = "motor"
	HoldGears          HoldKind = "gears"
	HoldJoinedWires    HoldKind = "joined_wires"
	HoldLamps          HoldKind = "lamps"
	HoldBelt           HoldKind = "belt"
)

// SetBy is what sets a brake.
type SetBy string

// The words of SetBy.
const (
	SetsPowerOff      SetBy = "power_off"
	SetsLeverReleased SetBy = "lever_released"
	SetsByHand        SetBy = "by_hand"
)

// TripHow is what throws the pawl of a catch.
type TripHow string

// The words of TripHow.
const (
	TripRated     TripHow = "rated"
	TripGovernor  TripHow = "governor"
	TripGeared    TripHow = "geared"
	TripPlainPawl TripHow = "plain_pawl"
)

// StopKind is what stops the mass at the top.
type StopKind string

// The words of StopKind.
const (
	StopLimitSwitch       StopKind = "limit_switch"
	StopSecondLimitSwitch StopKind = "second_limit_switch"
	StopMechanical        StopKind = "mechanical"
	StopCurrentLimit      StopKind = "current_limit"
	StopTimer             StopKind = "timer"
	StopRopeMark          StopKind = "rope_mark"
)

// BrakeRelease is what holds the brake open while the mass moves.
type BrakeRelease string

// The words of BrakeRelease.
const (
	ReleaseHeldByHand BrakeRelease = "held_by_hand"
	ReleaseCoil       BrakeRelease = "coil"
	ReleaseLatching   BrakeRelease = "latching"
)

// HoistClass is a hoisting class of EN 13001-2.
type HoistClass string

// The words of HoistClass.
const (
	HoistHC1 HoistClass = "HC1"
	HoistHC2 HoistClass = "HC2"
	HoistHC3 HoistClass = "HC3"
	HoistHC4 HoistClass = "HC4"
)
