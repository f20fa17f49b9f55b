package lift

import "duskweight/internal/model/unit"

// The design of a hoist: what the builder decides or has in the box. Plain numbers in SI; a value that is not known is
// not known, never a zero. The tags are read by the document (its keys, its JSON Schema) and by the check of ranges:
// `say` is the meaning in plain words, `range` the interval a known value must lie in, `enum` the closed list of words.
// Each closed list stands beside the design that it belongs to; its empty word means that the question is open.

// Hoist is one complete hoist, or several equal ones used one at a time.
type Hoist struct {
	Name   string                  `json:"name" say:"What you call it"`
	Units  unit.Known[unit.Count]  `json:"units" say:"Complete hoists of this kind, used one at a time; not known counts as 1" range:"[1,1000]"`
	Mass   []Piece                 `json:"mass" say:"Everything that hangs: the pieces, the container and the hook"`
	Travel unit.Known[unit.Length] `json:"travel_m" say:"Height of travel, lower stop to upper stop" range:"(0,1000]"`

	Rope      Rope      `json:"rope"`
	Reeving   Reeving   `json:"reeving"`
	Drum      Drum      `json:"drum"`
	Train     Train     `json:"train"`
	Machine   Machine   `json:"machine"`
	Raise     Raise     `json:"raise"`
	Lower     Lower     `json:"lower"`
	Structure Structure `json:"structure"`
	Base      Base      `json:"base"`
	Container Container `json:"container"`
	Holds     Holds     `json:"holds"`
	Site      Site      `json:"site"`
	Trials    Trials    `json:"trials"`
}

// Piece is one piece of the mass and how it was weighed.
type Piece struct {
	Name    string                `json:"name" say:"What it is"`
	Mass    unit.Known[unit.Mass] `json:"mass_kg" say:"Its mass" range:"(0,1e6]"`
	Weighed Weighing              `json:"weighed" say:"How it was weighed" enum:"|scale|label|volume|guess"`
}

// Weighing is how the mass of a piece was found.
type Weighing string

// The words of Weighing.
const (
	ByScale  Weighing = "scale"
	ByLabel  Weighing = "label"
	ByVolume Weighing = "volume"
	ByGuess  Weighing = "guess"
)
