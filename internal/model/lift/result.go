package lift

import (
	"duskweight/internal/model/reservoir"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Drive is what a hoist's drive comes to. A figure whose inputs are not known is not known; Missing names them.
type Drive struct {
	Missing []Missing // inputs that would let more be computed, by path inside the hoist ("drum.diameter_m")
	Flags   []Flag    // what is wrong or dangerous though it computes, in words

	Mass     unit.Known[unit.Mass]
	Tensions []Tension              // static, by rope part, first at the drum; empty when not known
	RopeUp   unit.Known[unit.Force] // F_up, at the drum
	RopeDown unit.Known[unit.Force] // F_down, at the drum
	QUp      unit.Known[unit.Ratio] // m·g/(n·F_up)
	QDown    unit.Known[unit.Ratio] // n·F_down/(m·g)

	Winding        Winding
	DrumTorqueUp   unit.Known[unit.Torque] // fullest layer used, drum bearing included
	DrumTorqueDown unit.Known[unit.Torque]

	Stages        []StageResult
	Ratio         unit.Known[unit.Ratio]  // N, motor turns for a drum turn
	Forward       unit.Known[unit.Ratio]  // product of stage efficiencies, idle torque apart
	Backward      unit.Known[unit.Ratio]  // product of 2 − 1/η, idle torque apart; ≤ 0 when a stage does not run back
	RotorPerMetre unit.Known[unit.Ratio]  // c, rad of the rotor for a metre of travel
	AtMotorUp     unit.Known[unit.Torque] // T_g raising
	AtMotorDown   unit.Known[unit.Torque] // T_g lowering, ≤ 0 when it does not run back

	Machine  Constants
	Raising  Raising
	Lowering Lowering
	LetGo    LetGo
	HeatUp   Heat
	HeatDown Heat

	Overtravel      unit.Known[unit.Length] // v·t_b + v²/(2a) with reflected inertia, from the upper stop
	ReflectedMass   unit.Known[unit.Mass]   // J·c², as a mass at the load
	StallRopePull   unit.Known[unit.Force]  // what the stalled motor pulls through the train at the drum's rope
	RaiseEnergyMech unit.Known[unit.Energy] // m·g·h

	Reservoir *reservoir.Reservoir // nil when it cannot be reduced (not known, stalls, does not run back, races)
	WhyNot    string               // why Reservoir is nil, in plain words
	Draining  *reservoir.Reservoir // panel straight on the motor: the drawing side alone, its filling follows from the sun
}

// Missing is an input that is not known, by its path inside the hoist, and what it keeps from being computed.
type Missing struct {
	Path  string
	Wants string // "the current while lifting"
}

// Flag is one thing said in words, with the field it is about.
type Flag struct {
	Path string
	Say  say.Sentence
	Bad  bool   // true: the sheet says do not hang; false: a caution
	ID   string // of the reason that a bad one makes; empty follows from Path
}

// Tension is one rope part; part 0 winds on the drum.
type Tension struct {
	Part     int
	Up, Down unit.Force
}

// Winding is how the rope lies on the drum.
type Winding struct {
	Layers        int                     // layers used with the mass at the top; 0 when not known
	WrapsPerLayer int                     // 0 when the width is not known (one layer is assumed and said)
	Wound         unit.Known[unit.Length] // rope wound in travelling: n·h
	RadiusFirst   unit.Known[unit.Length] // torque radius, first working layer
	RadiusLast    unit.Known[unit.Length] // torque radius, fullest layer
	Fits          unit.Answer             // "yes", "no", or "" for not known
	RopeNeeded    unit.Known[unit.Length] // rope from dead wraps to dead end, if it can be told
}

// StageResult is one stage, raising and lowering.
type StageResult struct {
	Ratio, Forward, Backward     unit.Ratio
	BreakawayForward             unit.Ratio
	BreakawayBackward            unit.Ratio
	Class                        Back       // "locks", "uncertain", "runs back"
	Inner                        unit.Ratio // forward efficiency of one of the stages inside: it decides the class
	OutUp, InUp, OutDown, InDown unit.Torque
	Source                       source.Ref
}

// Raising is the way up, at the fullest layer; times and energies over the whole travel. Current and FirstPush are told
// as soon as the machine is known, the rest where Known.
type Raising struct {
	Known                bool
	Stalls               bool
	Starts               bool
	Gearless             bool       // it stalls, and the gearbox of the motor's label is not in the train: whether it lifts is not known
	Margin               unit.Ratio // K(I_av − b·I_0)/T_g,ba; 1.3 is wanted
	Current              unit.Current
	FirstPush            unit.Current    // what starting takes: T_ba/K + b·I_0
	Wire                 unit.Resistance // of supply and wires, 0 where not known
	Speed                unit.Speed      // of the mass
	Rotor                unit.AngularSpeed
	Time                 unit.Duration
	EnergyIn             unit.Energy  // at the line
	Share                unit.Ratio   // m·g·h over EnergyIn
	Say                  say.Sentence // in words when it stalls or does not start, with what would mend it
	CurrentLow, SpeedLow float64      // at the first layer: A, m/s

	Layers []Climb // the way up by layer of rope, told with Current: for a supply whose voltage changes
}

// Climb is the way up in one layer of rope, whatever the voltage: what it takes and how far the rotor turns.
type Climb struct {
	Share         float64      // of the travel
	Current       unit.Current // with the radius for length, so that no energy is made
	RotorPerMetre unit.Ratio   // rad
}

// Cure is one way to make a racing load settle.
type Cure struct {
	Say        say.Sentence
	Burns      unit.Power                  // what it wastes
	Resistance unit.Known[unit.Resistance] // of a resistor: the least
	Voltage    unit.Known[unit.Voltage]    // of a clamp: where it conducts
}

// LetGo is what happens when the lamps are unplugged or the wires joined.
type LetGo struct {
	Known         bool
	Acceleration  unit.Acceleration
	OpenSpeed     unit.Speed
	OpenRotor     unit.AngularSpeed
	OpenVoltage   unit.Voltage // K·ω at the end
	Frictionless  unit.Speed   // bound with inertia but no friction
	FreeFall      unit.Speed   // rope or drum gone
	BreaksUpFirst bool
	JoinedSpeed   unit.Known[unit.Speed]
	JoinedRotor   unit.AngularSpeed
	JoinedFor     unit.Known[unit.Duration] // how long the winding stands it; not known when it stands it for ever or cannot be told
	BurstForce    unit.Known[unit.Force]    // joined while running away: rope pull of the burst, rotor's inertia allowed for
	BrakeFall     unit.Known[unit.Length]   // v·t_b + a·t_b²/2
	BrakeSpeed    unit.Known[unit.Speed]    // speed when the brake sets
}

// Heat is the winding over one run, and repeated runs.
type Heat struct {
	Known   bool
	Of      string // "raise" or "lower"
	Settles bool
	Winding unit.Celsius              // after one run from cold
	Final   unit.Known[unit.Celsius]  // settled, if it settles
	Run     unit.Known[unit.Duration] // may run for (from cold) before the limit; not known = for ever
	Rest    unit.Known[unit.Duration] // must rest between runs so that repeated runs stay under the limit
	PerDay  unit.Known[unit.Ratio]    // runs a day that this allows
	Row     unit.Known[unit.Count]    // runs on end from cold, with no rest, before the limit; not known = for ever, or cannot be told
	TwoBody bool
	TooHot  bool // one run from cold already goes over

	duty float64 // share of the time it may run, in short turns
}
