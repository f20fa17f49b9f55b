package model

import (
	"strings"

	"duskweight/internal/model/cost"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/reservoir"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Kind is one kind of store: its row in the table of kinds. Whatever differs from kind to kind is a value of the row or a
// method of its Design and its Part; the rest of the program asks the row and never which kind it is.
type Kind struct {
	Key    string // of its pointer in Store, in documents, answers and addresses: "hoist"
	Noun   string // in a list of what a store may be: "a hoist"
	Title  string // over its page: "Lifted mass"
	Stop   string // what a plan says that it makes unsafe: "DO NOT HANG"; of stores that say so, the first that has one speaks
	Go     string // what a plan says that is ready and has one: "READY for the load steps"
	GoWhy  string // and why
	Hold   string // what is not done while not even a first step is allowed: "Hang nothing"
	Holds  Holding
	Idle   string // what a sentence says of hours in which it can be neither filled nor drawn as it should: "the battery is too cold or too hot to charge"
	Stands string // the path in its design of what mends that; empty where nothing does
	Look   string // its colour and stroke in pictures, by the name in the style sheet: "mass"
	Levers []Lever
	Doubts []Doubt

	Counted *Counted                               // how it is bought in equal blocks; nil where only its size changes, by the first lever
	Lines   []cost.As                              // the parts of which as many more are bought, or as much stronger ones, as it grows
	Lasts   func(p Part) unit.Known[unit.Duration] // longest life of what the bill replaces, whatever the year does; nil where nothing is

	of func(Store) Design // the store's design; nil where the store is of another kind
}

// Holding is what the pages say over the energy that stores of a kind give from full, where nothing of the variant is lifted by
// a hoist, and what stands behind it.
type Holding struct{ Say, Own, Formula, Source string }

// kinds is the table: one row for each pointer of Store, in the order of its fields.
var kinds = [...]*Kind{cellsKind, hoistKind, waterKind}

// Kinds lists the kinds of store.
func Kinds() []*Kind { return kinds[:] }

// Design is what somebody typed of one store.
type Design interface {
	Name() string
	ForNight() bool       // it is there for the night's lamps, and not for the electronics alone
	Check() Problems      // what contradicts itself; paths inside the design
	Reduce(env *Env) Part // what the store is without a year
	Copy() Store          // the same in a store of its own, as deep as a lever or a doubt changes it
}

// Env is what a store may ask of its variant while it is reduced.
type Env struct {
	Variant Variant
	At      int  // its place among the stores
	Fed     bool // the panels feed the motor of a store before it straight; whoever is fed so sets it
}

// Part is what one store comes to: made by Reduce, started under the sky, run through the year, then finished and asked.
type Part interface {
	Tank
	Judged
	Joined
	Finish(y YearView)          // what follows from the year: life, cautions, a sun that is too weak
	Facts(f *Facts, y YearView) // adds to the plain answers
	Needs(at string) []Need     // the parts to buy or make; at is the path of its design in the variant
	Shared() []Need             // what one of serves all stores that need it
	Left(part float64) float64  // share of its capacity that is left after a part of its life, 0 new to 1 when it is replaced
	Lives() []cost.Lifetime     // how long each thing lasts that the bill replaces
	Answer(a *StoreAnswer)      // its own key of the answer
}

// Tank is a part as the year sees it.
type Tank interface {
	Begin(g Ground, lights []panel.Light)      // before the year, where the sky is known: lights are those on each array
	Reservoir() (*reservoir.Reservoir, string) // as it is known now; nil with the reason, or without one before Begin
	Again(draw unit.Power) bool                // takes the mean draw of the year that was run; true where the reservoir changes by it
	Reference() unit.Power                     // the draw at which capacity and round trip are told, at most what the reservoir gives
	Beside() Beside                            // its own source beside the line in another year; nil for none
}

// Beside is a source of a store's own in the light on each array, W/m², and the air, °C, of a year.
type Beside func(lights []panel.Light, air []float64) *reservoir.Source

// Judged is a part as the verdict and the readiness see it.
type Judged interface {
	Take(j StoreReadiness)           // keeps how the store was judged
	Rules(j judgement, i int) []rule // the rules of the store alone, at place i, with the paths of their reasons inside its design
	Missing(at string) []Missing     // what is not known; paths inside the variant
	Open(need unit.Energy) bool      // too little is known to say whether it gives a part of that night, J
	First() (c path.Check, ok bool)  // what breaks first; false where no check was made
	Uncharged() int                  // hours of the year in which it is for the night and too cold or too hot to fill
}

// Joined is a part as the line sees it.
type Joined interface {
	Wires() Wires
	Peak(g Ground, b PeakBank) []LineCheck // its checks where it carries the peak of the line
}

// YearView is what a part may read of the variant's year when it is finished.
type YearView struct {
	Ground  Ground
	Variant Variant
	Result  *VariantResult
	Store   *StoreResult
	At      int // its place among the stores of the year, where Store.InYear
}

// Counted is a kind of store that is bought in equal blocks.
type Counted struct {
	One, Many string // of a block: "battery", "batteries"
	// Blocks are those of a store, and how many are added at once: those in series.
	Blocks func(s Store) (n, step int)
	With   func(s Store, n int) Store // the store with n blocks, a multiple of step
}

// Lever is one size of a kind that can grow by itself.
type Lever struct {
	What     string        // "mass", "height", "battery"
	Name     string        // "mass, with its gears"
	More     string        // "A heavier mass"
	Quarter  string        // "A quarter more mass, with its gears"
	Quantity unit.Quantity // of its size
	Late     bool          // it is listed after panels and load
	Grow     func(s Store, f float64) Store
	// Tell says what a part comes to that was grown f times; 1 is as it is.
	Tell func(p Part, f float64) Grown
	// Stops says what keeps any size from giving asked, or what has to be known first; both say nothing where neither is so.
	Stops func(s StoreResult, asked unit.Power) (why, open say.Sentence)
	Never string // why the largest size tried is not enough, where Stops has no answer
}

// Grown is what a store comes to with one of its sizes grown.
type Grown struct {
	Size   unit.Known[unit.Ratio] // in SI
	Grows  []say.Sentence         // what must grow along, in words
	Breaks string                 // the part that would give way first with it; empty when none does
}

// Doubt is how far the truth of one input of a kind may lie from what was typed: a factor between Low and High, most
// likely 1. Change multiplies it in place in a store that is a Copy, and reports whether it is there.
type Doubt struct {
	Name      string // the stream of its draws
	Say       string // "The mass that hangs"
	Low, High float64
	Range     string // instead of Low and High in words: "by how it was weighed"
	Change    func(s Store, f float64) (there bool)
}

// Kind is the row of the store, nil where not exactly one of its pointers is set.
func (s Store) Kind() *Kind {
	var one *Kind
	for _, k := range kinds {
		if k.of(s) != nil {
			if one != nil {
				return nil
			}
			one = k
		}
	}
	return one
}

// Is reports whether the store is of the kind.
func (k *Kind) Is(s Store) bool { return k.of(s) != nil }

// Design is the design of the store, nil where no pointer is set.
func (s Store) Design() Design {
	for _, k := range kinds {
		if d := k.of(s); d != nil {
			return d
		}
	}
	return nil
}

// Empty reports whether no pointer of the store is set.
func (s Store) Empty() bool { return s.Design() == nil }

// StoreKinds names what a store may be: "cells or a hoist".
func StoreKinds() string {
	var all []string
	for _, k := range kinds {
		all = append(all, k.Noun)
	}
	last := len(all) - 1
	return strings.Join(all[:last], ", ") + " or " + all[last]
}

// Path is the path of the design at place i of a variant that is of the kind.
func (k *Kind) Path(i int) string { return StorePath(i, k.Key) }
