// Package model is the front door of the computation: what a project and a variant are, what is wrong with them
// (Check), and what they come to (Evaluate). Everything below it is pure: same input, same output; no clock, no files,
// no network, no variable written after start.
package model

import (
	"duskweight/internal/model/cell"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/load"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/internal/model/water"
)

// Project is a place, a night and what stands behind all its variants.
type Project struct {
	Name     string                 `json:"name" say:"Name of the project"`
	Example  unit.Answer            `json:"example" say:"Is this a worked example with invented numbers?" enum:"|yes"`
	Currency string                 `json:"currency" say:"Label for money, such as EUR; never converted"`
	Seed     uint64                 `json:"seed" say:"Seed of the weather made from monthly means; the same seed gives the same year" range:"[0,9007199254740991]"`
	Place    sun.Place              `json:"place"`
	Load     load.Load              `json:"load"`
	Money    cost.Terms             `json:"money"`
	Shelf    Shelf                  `json:"shelf"`
	Weather  *sun.Series            `json:"weather"`
	Weathers []*sun.Series          `json:"weathers" say:"Further weather files of the same place, each one year"`
	Years    unit.Known[unit.Count] `json:"years" say:"How many weather years are made; not known counts as 200" range:"[20,1000]"`
	Target   unit.Known[unit.Ratio] `json:"target_share" say:"Share of the nights that the cheapest plan has full; not known counts as 0.95" range:"(0,1]"`
	Origins  Origins                `json:"origins"`
}

// Files are the weather files of the project, the first one first.
func (p Project) Files() []*sun.Series {
	if p.Weather == nil {
		return nil
	}
	return append([]*sun.Series{p.Weather}, p.Weathers...)
}

// TakeFiles gives the project these weather files in the place of those it has.
func (p *Project) TakeFiles(files []*sun.Series) {
	p.Weather, p.Weathers = nil, nil
	if len(files) > 0 {
		p.Weather = files[0]
	}
	if len(files) > 1 {
		p.Weathers = files[1:]
	}
}

// usualYears is how many weather years are made where the project does not say: enough for the year in ten, which 20 of
// them then lie below (our own judgement).
const usualYears = 200

// MadeYears is how many weather years are made.
func (p Project) MadeYears() int { return int(p.Years.Or(usualYears)) }

// Variant is one way to store: panels, controller, stores in serving order.
type Variant struct {
	Name       string           `json:"name" say:"Name of the variant"`
	Panels     []panel.Array    `json:"panels" say:"The panels of this variant: one group for each roof or frame"`
	Controller panel.Controller `json:"controller"`
	Stores     []Store          `json:"stores" say:"Stores, in the order in which they are filled and drawn"`
	Standing   []load.Standing  `json:"standing" say:"What this variant alone uses all the time"`
	Backup     Backup           `json:"backup"`
	Parts      []cost.Part      `json:"parts" say:"The buy-and-make list"`
	Origins    Origins          `json:"origins"`
}

// Store is cells, a hoist or water: exactly one of the three is set.
type Store struct {
	Cells *cell.Bank   `json:"cells,omitempty"`
	Hoist *lift.Hoist  `json:"hoist,omitempty"`
	Water *water.Water `json:"water,omitempty"`
}

// Document is a project with all its variants: what is exported, imported and evaluated.
type Document struct {
	Edition  int       `json:"duskweight"`
	Project  Project   `json:"project"`
	Variants []Variant `json:"variants"`
}

// Origins says where a value comes from, by its path in the document ("stores[0].hoist.drum.diameter_m"). A value
// without an entry is the user's own.
type Origins map[string]Origin

// Origin is the state of one value.
type Origin struct {
	Kind   OriginKind `json:"kind" say:"Typical until confirmed, taken from the catalog, or measured in a test" enum:"typical|catalog|measured"`
	Source string     `json:"source" say:"Where it comes from"`
}
