package lift

import (
	"slices"

	"duskweight/internal/model/unit"
)

// The record of what was tried with the real hoist. It belongs to the design, and travels with it.

// Trials is what was tried and seen. A hoist that was never tried has none.
type Trials struct {
	Raises   []RaiseTrial  `json:"raises" say:"Lifts: mass, volts and amps, how far and how long"`
	Lowers   []LowerTrial  `json:"lowers" say:"Ways down: mass, volts and amps, how far and how long"`
	Least    LeastTrial    `json:"least"`
	Warmth   []WarmthTrial `json:"warmth" say:"Motor temperature over time; minute 0 begins a run"`
	WarmAt   WarmAt        `json:"warm_at" say:"What the thermometer touches; the winding inside is hotter than the case" enum:"|case|winding"`
	Held     []HeldTrial   `json:"held" say:"Dead weight hung on brake, catch or base, with nothing turning"`
	Steps    LoadSteps     `json:"steps"`
	Failures []Failure     `json:"failures" say:"What broke, fell, slipped or jerked"`
	Looks    []LookTrial   `json:"looks" say:"Regular looks at the whole load path"`
	Proofs   []Proof       `json:"proofs" say:"Load tests of parts that nobody rates"`
}

// RaiseTrial is one lift. Amps are those of the fullest layer of rope, where the drum has several.
type RaiseTrial struct {
	Date    string                    `json:"date" say:"When"`
	Mass    unit.Known[unit.Mass]     `json:"mass_kg" say:"All that hung, hook and container too; 0 for the motor and gears alone" range:"[0,1e6]"`
	Travel  unit.Known[unit.Length]   `json:"travel_m" say:"How far it went up" range:"(0,1000]"`
	Time    unit.Known[unit.Duration] `json:"time_s" say:"How long that took" range:"(0,1e6]"`
	Voltage unit.Known[unit.Voltage]  `json:"voltage_v" say:"Volts at the motor while it moved" range:"(0,2000]"`
	Current unit.Known[unit.Current]  `json:"current_a" say:"Amps of the motor while it moved steadily" range:"[0,1e4]"`
	Warm    unit.Known[unit.Celsius]  `json:"motor_c" say:"Motor temperature at the end" range:"[-60,300]"`
	Note    string                    `json:"note" say:"What was seen"`
}

// LowerTrial is one way down.
type LowerTrial struct {
	Date    string                    `json:"date" say:"When"`
	Mass    unit.Known[unit.Mass]     `json:"mass_kg" say:"All that hung, hook and container too" range:"(0,1e6]"`
	Travel  unit.Known[unit.Length]   `json:"travel_m" say:"How far it came down" range:"(0,1000]"`
	Time    unit.Known[unit.Duration] `json:"time_s" say:"How long that took" range:"(0,1e6]"`
	Voltage unit.Known[unit.Voltage]  `json:"voltage_v" say:"Volts at the motor while it moved" range:"[0,2000]"`
	Current unit.Known[unit.Current]  `json:"current_a" say:"Amps of the motor while it moved steadily" range:"[0,1e4]"`
	Warm    unit.Known[unit.Celsius]  `json:"motor_c" say:"Motor temperature at the end" range:"[-60,300]"`
	Note    string                    `json:"note" say:"What was seen"`
}

// LeastTrial is how little comes down: between the mass that did and the mass that did not stands the real limit.
type LeastTrial struct {
	Alone      unit.Known[unit.Mass] `json:"alone_kg" say:"Smallest mass that came down by itself, lamps off" range:"(0,1e6]"`
	AloneStays unit.Known[unit.Mass] `json:"alone_stays_kg" say:"Largest mass that stayed where it was" range:"[0,1e6]"`
	Push       unit.Known[unit.Mass] `json:"push_kg" say:"Smallest mass that went on coming down after a push, lamps off" range:"(0,1e6]"`
	PushStays  unit.Known[unit.Mass] `json:"push_stays_kg" say:"Largest mass that stopped again after a push" range:"[0,1e6]"`
	Date       string                `json:"date" say:"When"`
}

// WarmthTrial is one reading of the motor's temperature. Volts and amps are those since the reading before; a reading
// whose time is not later than the one before begins a new run.
type WarmthTrial struct {
	At      unit.Known[unit.Duration] `json:"at_s" say:"Time since the run began" range:"[0,1e6]"`
	Warm    unit.Known[unit.Celsius]  `json:"motor_c" say:"Motor temperature" range:"[-60,300]"`
	Air     unit.Known[unit.Celsius]  `json:"air_c" say:"Air round it" range:"[-60,80]"`
	Current unit.Known[unit.Current]  `json:"current_a" say:"Amps since the reading before; 0 while it was at rest" range:"[0,1e4]"`
	Voltage unit.Known[unit.Voltage]  `json:"voltage_v" say:"Volts since the reading before" range:"[0,2000]"`
}

// HeldTrial is a test with dead weight.
type HeldTrial struct {
	Date string                    `json:"date" say:"When"`
	What Tested                    `json:"what" say:"What was tested" enum:"|base|brake|ratchet|catch|prop"`
	Mass unit.Known[unit.Mass]     `json:"mass_kg" say:"Dead weight that hung on it" range:"(0,1e6]"`
	Time unit.Known[unit.Duration] `json:"time_s" say:"How long" range:"(0,1e8]"`
	Held unit.Answer               `json:"held" say:"Did it hold, with nothing moved?" enum:"|yes|no"`
	Note string                    `json:"note" say:"What was seen"`
}

// LoadSteps is the plan of loading by steps, each with dead weight.
type LoadSteps struct {
	S25  LoadStep `json:"at_25"`
	S50  LoadStep `json:"at_50"`
	S75  LoadStep `json:"at_75"`
	S100 LoadStep `json:"at_100"`
	S125 LoadStep `json:"at_125"`
}

// NamedStep is a load step with its key in the document and its name.
type NamedStep struct {
	Key, Name string
	Step      LoadStep
}

// Named lists the steps, the smallest first.
func (s LoadSteps) Named() []NamedStep {
	return []NamedStep{{"at_25", "25 %", s.S25}, {"at_50", "50 %", s.S50}, {"at_75", "75 %", s.S75}, {"at_100", "100 %", s.S100}, {"at_125", "125 %", s.S125}}
}

// LoadStep is one step. What hung is kept: a plan that grew heavier has not passed its steps.
type LoadStep struct {
	Done unit.Answer           `json:"done" say:"Did it pass: nothing moved, slipped or got hot?" enum:"|yes|no"`
	Mass unit.Known[unit.Mass] `json:"mass_kg" say:"Mass on the rope" range:"(0,1e6]"`
	Date string                `json:"date" say:"When"`
	Note string                `json:"note" say:"What was seen"`
}

// Failure is something that broke, fell, slipped or jerked. Where it fell or jerked, or nobody said that it did not,
// every part of the load path is not known until it was looked at.
type Failure struct {
	Date  string      `json:"date" say:"When"`
	What  string      `json:"what" say:"What broke or moved, and what was done then"`
	Shock unit.Answer `json:"shock" say:"Did the mass fall, jerk, or hit a stop? Empty counts as yes" enum:"|yes|no"`
	Look  Look        `json:"looked"`
}

// Look is what was found when the load path was looked at. Each part is sound, renewed, damaged,
// or not looked at yet.
type Look struct {
	Rope      Condition `json:"rope" say:"The whole rope, by hand" enum:"|sound|renewed|damaged"`
	Knots     Condition `json:"knots" say:"Knots and ends; a knot tied again is a new knot" enum:"|sound|renewed|damaged"`
	Pulleys   Condition `json:"pulleys" say:"Every pulley, its pin and what holds it" enum:"|sound|renewed|damaged"`
	Pins      Condition `json:"pins" say:"Pins, keys, drum and its turns, gears, brake, stops" enum:"|sound|renewed|damaged"`
	Container Condition `json:"container" say:"Container of the mass, and its eye" enum:"|sound|renewed|damaged"`
	Base      Condition `json:"base" say:"Base with its weights, posts and beam" enum:"|sound|renewed|damaged"`
	Note      string    `json:"note" say:"Who looked, and when"`
}

// Whole reports whether every part was looked at and found sound, or renewed.
func (l Look) Whole() bool {
	return !slices.ContainsFunc(l.parts(), func(c Condition) bool { return c != PartSound && c != PartRenewed })
}

// LookTrial is a regular look at the load path, with nothing that fell before.
type LookTrial struct {
	Date string `json:"date" say:"When"`
	Look Look   `json:"looked"`
}

// Seen are the failures, and after them the looks: each as a record in which nothing fell.
func (t Trials) Seen() []Failure {
	out := slices.Clone(t.Failures)
	for _, l := range t.Looks {
		out = append(out, Failure{Date: l.Date, Shock: unit.No, Look: l.Look})
	}
	return out
}

// Kept is what a copy of the hoist keeps of its records: what fell, and looks that found damage. The rest was tried with
// another machine.
func (t Trials) Kept() Trials {
	damaged := slices.DeleteFunc(slices.Clone(t.Looks), func(l LookTrial) bool { return !l.Look.Damaged() })
	return Trials{Failures: t.Failures, Looks: damaged}
}

// parts are what was found, part by part.
func (l Look) parts() []Condition {
	return []Condition{l.Rope, l.Knots, l.Pulleys, l.Pins, l.Container, l.Base}
}

// Damaged reports whether a part was found damaged.
func (l Look) Damaged() bool { return slices.Contains(l.parts(), PartDamaged) }

// Shaken reports whether the failure counts as a fall or a shock: what nobody answered counts as the worse answer.
func (f Failure) Shaken() bool { return f.Shock != unit.No }

// Tested is a part that was tested with a load.
type Tested string

// The words of Tested.
const (
	TestedBase    Tested = "base"
	TestedBrake   Tested = "brake"
	TestedRatchet Tested = "ratchet"
	TestedCatch   Tested = "catch"
	TestedProp    Tested = "prop"
)

// Condition is how a part was found after a shock.
type Condition string

// The words of Condition.
const (
	PartSound   Condition = "sound"
	PartRenewed Condition = "renewed"
	PartDamaged Condition = "damaged"
)

// WarmAt is where the warmth of the motor was measured.
type WarmAt string

// The words of WarmAt.
const (
	WarmCase    WarmAt = "case"
	WarmWinding WarmAt = "winding"
)
