package water

import "duskweight/internal/model/unit"

// Water is the design of a store of lifted water: a tank above, a pipe, a pump and a turbine below. An efficiency that is not
// known takes the usual one of a machine of its size; strength never does.
type Water struct {
	Name    string                  `json:"name" say:"What you call it"`
	Volume  unit.Known[unit.Volume] `json:"volume_m3" say:"Water in the upper tank that may run down" range:"(0,1e4]"`
	Head    unit.Known[unit.Length] `json:"head_m" say:"From the turbine up to the middle of the water in the tank" range:"(0,500]"`
	Pump    Pump                    `json:"pump"`
	Turbine Turbine                 `json:"turbine"`
	Pipe    Pipe                    `json:"pipe"`
	Surface unit.Known[unit.Area]   `json:"surface_m2" say:"Surface of the water in the upper tank" range:"(0,1e5]"`
	Covered unit.Answer             `json:"covered" say:"Are both waters covered or fenced so that no child can get in?" enum:"|yes|no"`
	Stands  Stand                   `json:"stands_on" say:"What carries the upper tank" enum:"|ground|tower|building"`
	Signed  unit.Known[unit.Volume] `json:"signed_m3" say:"Water that a structural engineer has signed for, on a tower or a building" range:"(0,1e4]"`
	Lower   Lower                   `json:"lower_water" say:"Where the pump gets its water" enum:"|tank|stream|none"`
	Standby unit.Known[unit.Power]  `json:"standing_w" say:"What its electronics use all the time" range:"[0,1000]"`
}

// Pump lifts the water.
type Pump struct {
	Rated      unit.Known[unit.Power] `json:"rated_w" say:"Electric power that the pump uses" range:"(0,1e5]"`
	Efficiency unit.Known[unit.Ratio] `json:"efficiency" say:"Power of the water over electric power, motor and pump together" range:"(0,1]"`
	Step       unit.Answer            `json:"step" say:"Does the pump run at full power or not at all?" enum:"|yes|no"`
}

// Turbine gives the energy back.
type Turbine struct {
	Flow       unit.Known[unit.Flow]  `json:"flow_m3_s" say:"Water that runs through the turbine, fully open" range:"(0,10]"`
	Efficiency unit.Known[unit.Ratio] `json:"efficiency" say:"Electric power over power of the water, turbine and generator together" range:"(0,1]"`
	Kind       Governor               `json:"kind" say:"Does the flow stay as it is, or does a valve follow the load?" enum:"|fixed|valve"`
}

// Pipe joins tank and machines. The pump fills through the same pipe that the turbine is fed from.
type Pipe struct {
	Length unit.Known[unit.Length] `json:"length_m" say:"Length of the pipe" range:"(0,5000]"`
	Inner  unit.Known[unit.Length] `json:"inner_m" say:"Inner diameter of the pipe" range:"(0,2]"`
	Rated  unit.Known[unit.Stress] `json:"rated_pa" say:"Pressure that is printed on the pipe" range:"(0,1e8]"`
	Wave   unit.Known[unit.Speed]  `json:"wave_m_s" say:"Speed of a pressure wave in the pipe: about {450 m/s} in plastic, {1200 m/s} in metal" range:"[100,1500]"`
}

// Stand is what carries the upper tank.
type Stand string

// The words of Stand.
const (
	OnGround   Stand = "ground"
	OnTower    Stand = "tower"
	OnBuilding Stand = "building"
)

// Lower is the water below.
type Lower string

// The words of Lower.
const (
	LowerTank   Lower = "tank"
	LowerStream Lower = "stream"
	LowerNone   Lower = "none"
)

// Governor is whether the flow of a turbine follows the load. The empty word counts as fixed.
type Governor string

// The words of Governor.
const (
	FixedFlow Governor = "fixed"
	Valve     Governor = "valve"
)
