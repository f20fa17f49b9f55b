// Package draw makes the pictures that need no script: the dimensioned side view of a hoist, the bars of use, mass
// against height, the year of nights and a typical day, all as SVG that a strict Content-Security-Policy lets through
// (presentation attributes and classes only).
//
// The side view is first a Scene in millimetres, made from the design and what it came to, and then drawn. Tests
// compare the numbers of the scene. What the design does not say is drawn at a guessed size and marked with a question
// mark; the guess is for the eye only and no dimension shows it.
package draw

import (
	"math"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
)

// Plan is what the side view is made from, with the units that it is labelled in.
type Plan struct {
	Hoist   lift.Hoist
	Drive   lift.Drive
	Checks  []path.Check            // parts that give way are marked
	Because []reason.Reason         // the judge's reasons; those with a place in the drawing are marked there
	KeepOut unit.Known[unit.Length] // from the middle of the mass
	Units   unit.System
	Tape    bool // lengths in feet and inches as an inch tape shows them
}

// Point is a place in the scene: mm, x to the right, y up from the ground.
type Point struct{ X, Y float64 }

// Rect is an upright rectangle, mm.
type Rect struct{ X0, Y0, X1, Y1 float64 }

// Wheel is the drum or a pulley, as the rope's centre line sees it.
type Wheel struct {
	Name    string // "drum", "top pulley", "foot pulley", "extra pulley", "pulley"
	Place   string // "base", "beam", "mass"
	C       Point
	R       float64 // pitch radius: half of (bare diameter + rope diameter), mm
	Bare    float64 // bare diameter, mm
	Turn    float64 // +1 where the rope, followed from the drum, goes round against the clock; −1 with it
	Known   bool    // the diameter is the user's
	AtLower bool    // this wheel goes down with the mass
}

// Leg is a straight part of the rope.
type Leg struct{ From, To Point }

// Dim is a dimension between two points, measured along x or along y.
type Dim struct {
	From, To Point
	Upright  bool
	Column   int    // 0 nearest to the view
	Text     string // "travel 4.50 m", or with "?"
	Short    string // without the name, where there is no room
	Known    bool
	Off      bool // the number does not match the drawing; it is underlined, as drafting has it
}

// Station is one point of the chain drum – hole – foot pulley.
type Station struct {
	Name string
	X    float64
}

// Label is a text at a point of the scene.
type Label struct {
	At   Point
	Text string
	Fail bool
}

// Scene is the side view in millimetres.
type Scene struct {
	Title, Desc string
	Wheels      []Wheel // drum first, then in the order of the rope
	Head        int     // index of the wheel above the mass
	Legs        []Leg   // Legs[i] runs from Wheels[i] to Wheels[i+1]; the last one to the dead end
	DeadEnd     Point
	Rope        float64 // diameter
	RopeKnown   bool
	Mass        Rect // at the upper stop
	Travel      float64
	TravelKnown bool
	MassKnown   bool
	Rig         Rect // hook or block between rope and mass, at the upper stop
	Beam        Rect
	Posts       []Rect
	PostsKnown  bool
	Stubs       []Rect // hatched: what the beam rests on where it has no posts
	Hangers     []Leg
	Board       Rect
	HasBase     bool
	Hole        Point // where the rope goes through the board; at the board's middle height
	HasHole     bool
	Weights     []Rect
	Stand       []Leg // bearings of the drum
	Flange      float64
	KeepOut     float64 // 0: not known
	Dims        []Dim
	Chain       []Station
	ChainDims   []Dim
	Labels      []Label
	Notes       []string        // where the drawing does not match the numbers
	Marks       []Mark          // what the judge refuses, at its place
	Fails       map[string]bool // "rope", "head", "beam", "post", "base", "drum", "mass"
	Out         Dim             // from the drum to the rope over the mass, where the drive is set out; Known or not there
	units       unit.System
	tape        bool
}

// Make builds the scene. It draws every design, however little is known of it.
func Make(p Plan) Scene {
	b := &builder{p: p, h: p.Hoist}
	b.s.units, b.s.tape = p.Units, p.Tape
	b.s.Fails = failing(p.Checks)
	b.sizes()
	b.reeve()
	b.structure()
	b.base()
	b.dimension()
	b.label()
	b.marks()
	b.describe()
	return b.s
}

// builder carries a scene while it is made, with the sizes in millimetres.
type builder struct {
	p Plan
	h lift.Hoist
	s Scene

	rope         float64 // diameter
	travel       float64
	massW, massH float64
	widthKnown   bool
	room         float64
	roomKnown    bool
	head         float64 // height of the head axis
	headKnown    bool
	headOff      bool
	parts, lead  int
	partsKnown   bool
	rig          float64 // from the pitch point of the rope's end to the top of the mass
	foot         bool    // a pulley on the base
	line         float64 // x where the rope goes up from the base
	aside        bool
	angled       bool // the rope leaves the drum at the user's own angle
	clear        float64
}

// mm returns the length in mm, or the guess, and whether it is the user's.
func mm(l unit.Known[unit.Length], guess float64) (float64, bool) {
	v, ok := l.Value()
	if x := float64(v) * 1000; ok && x > 0 && !math.IsInf(x, 0) {
		return x, true
	}
	return guess, false
}

// guessDensity turns a mass into a block for the eye, kg/mm³: about that of wet sand.
const guessDensity = 1600e-9

func (b *builder) sizes() {
	h := b.h
	b.rope, b.s.RopeKnown = mm(h.Rope.Diameter, 8)
	b.s.Rope = b.rope
	b.travel, b.s.TravelKnown = mm(h.Travel, 2000)
	b.parts, b.partsKnown = int(h.Reeving.RopeParts.Or(1)), h.Reeving.RopeParts.Is
	b.parts = min(max(b.parts, 1), 12)
	b.lead = min(max(int(h.Reeving.LeadSheaves.Or(1)), 0), 12)
	m, known := b.mass()
	side := 450.0
	if known {
		side = math.Cbrt(m / guessDensity)
	}
	b.s.MassKnown = known
	b.massW, b.widthKnown = mm(h.Site.LoadWidth, side)
	guess := side
	if b.widthKnown {
		guess = min(max(side*side*side/(b.massW*b.massW), 0.3*b.massW), 3*b.massW)
	}
	b.massH, _ = mm(h.Site.LoadHeight, guess)
	b.room, b.roomKnown = mm(h.Holds.RoomAbove, min(max(0.08*b.travel, 150), 500))
	b.clear = max(80, 0.12*b.massW)
}

// mass returns the mass that hangs, kg: the drive's, or the sum of the pieces where each is known.
func (b *builder) mass() (float64, bool) {
	if m, ok := b.p.Drive.Mass.Value(); ok {
		return float64(m), m > 0
	}
	sum := 0.0
	for _, piece := range b.h.Mass {
		m, ok := piece.Mass.Value()
		if !ok {
			return 0, false
		}
		sum += float64(m)
	}
	return sum, sum > 0
}

// failing turns the checks that give way into the parts of the drawing.
func failing(checks []path.Check) map[string]bool {
	part := map[string]string{
		"rope": "rope", "knot": "rope", "bend_ratio": "rope", "dead_wraps": "drum", "head_sheave": "head", "hanger": "head",
		"beam": "beam", "post": "post", "container": "mass", "redirect_sheave": "redirect", "base_uplift": "base", "base_sliding": "base",
		"base_overturning": "base", "base_board": "base", "ground": "base", "shaft": "drum", "cross_pin": "drum", "set_screw": "drum",
		"coupling": "drum", "drum_hub": "drum", "drum_capacity": "drum", "fleet_angle": "drum", "gear_tooth": "drum", "case_fasteners": "drum",
	}
	out := map[string]bool{}
	for _, c := range checks {
		if c.Word == path.GivesWay && part[c.ID] != "" {
			out[part[c.ID]] = true
		}
	}
	return out
}
