package catalog

import (
	"fmt"
	"strconv"

	"duskweight/internal/model/lift"
)

// Kind is one sort of rows that may be taken into a hoist.
type Kind struct {
	Word  string // in an address: "rope"
	Title string
	Into  string // the part that it goes into, as its section of the form is called
	Asks  []string
	Rows  []Row

	places func(*lift.Hoist) []Place
}

// What a kind may ask for beside the row.
const (
	AskRatio  = "ratio"
	AskRated  = "rated"
	AskVolume = "volume"
	AskSeries = "series"
	AskRows   = "rows"
)

// Place is one of several parts that a row may go into.
type Place struct{ At, Say string }

// Places lists where a row of the kind may go; none where there is only one place.
func (k Kind) Places(h *lift.Hoist) []Place {
	if k.places == nil {
		return nil
	}
	return k.places(h)
}

// Row finds a row by its ID.
func (k Kind) Row(id string) (Row, bool) {
	for _, r := range k.Rows {
		if r.ID == id {
			return r, true
		}
	}
	return Row{}, false
}

// KindOf finds a kind by its word.
func KindOf(word string) (Kind, bool) {
	for _, k := range Kinds() {
		if k.Word == word {
			return k, true
		}
	}
	return Kind{}, false
}

// Kinds returns everything that may be taken into a hoist, in the order of its form.
func Kinds() []Kind {
	return []Kind{
		{Word: "material", Title: "Materials of the mass", Into: "Weight and travel", Asks: []string{AskVolume}, Rows: materialRows(), places: fixed("mass", "A new piece of the mass", "base", "Added to the weight that keeps the drive down")},
		{Word: "rope", Title: "Ropes", Into: "Rope and pulleys", Rows: ropeRows()},
		{Word: "ending", Title: "Knots and other endings", Into: "Rope and pulleys", Rows: endingRows()},
		{Word: "wear", Title: "Strength of a rope after sun, wet and wear", Into: "Rope and pulleys", Rows: wearRows()},
		{Word: "pulley", Title: "Pulleys", Into: "Rope and pulleys", Rows: pulleyRows(), places: pulleyPlaces},
		{Word: "stage", Title: "Gear stages, printed and metal", Into: "Gears", Asks: []string{AskRatio, AskRated}, Rows: stageRows(), places: stagePlaces(true)},
		{Word: "teeth", Title: "Materials of gear teeth", Into: "Gears", Rows: toothRows(), places: stagePlaces(false)},
		{Word: "motor", Title: "Motors by size", Into: "Motor", Rows: motorRows()},
		{Word: "lamp", Title: "Lamps and other loads", Into: "Lamps and loads at night", Asks: []string{AskSeries, AskRows}, Rows: lampRows(), places: lampPlaces},
		{Word: "eyebolt", Title: "Eye bolts", Into: "Beam, posts and hook", Rows: eyeboltRows(), places: eyes()},
		{Word: "shackle", Title: "Shackles", Into: "Beam, posts and hook", Rows: shackleRows(), places: eyes()},
		{Word: "timber", Title: "Classes of timber", Into: "Beam, posts and hook", Rows: timberRows(), places: members},
		{Word: "steel", Title: "Grades of steel", Into: "Beam, posts and hook", Rows: steelRows(), places: func(h *lift.Hoist) []Place { return append(members(h), Place{"shaft", "Shaft of the drum"}) }},
		{Word: "bag", Title: "Bags", Into: "Container of the mass", Rows: bagRows()},
	}
}

// fixed are places that every hoist has, in pairs.
func fixed(pairs ...string) func(*lift.Hoist) []Place {
	return func(*lift.Hoist) []Place {
		var out []Place
		for i := 0; i+1 < len(pairs); i += 2 {
			out = append(out, Place{pairs[i], pairs[i+1]})
		}
		return out
	}
}

func eyes() func(*lift.Hoist) []Place {
	return fixed("hanger", "Hook of the top pulley", "eye", "The eye on the mass")
}

func members(h *lift.Hoist) []Place {
	out := []Place{{"beam", "The beam"}}
	for i := range h.Structure.Posts {
		out = append(out, Place{strconv.Itoa(i), fmt.Sprintf("Post %d", i+1)})
	}
	return out
}

func pulleyPlaces(h *lift.Hoist) []Place {
	out := []Place{{"all", "Every pulley that has no figure of its own"}}
	for i, s := range h.Reeving.Sheaves {
		out = append(out, Place{strconv.Itoa(i), named("Pulley", i, s.Name)})
	}
	return append(out, Place{"new", "One more pulley of the list"})
}

func stagePlaces(more bool) func(*lift.Hoist) []Place {
	return func(h *lift.Hoist) []Place {
		var out []Place
		for i, s := range h.Train.Stages {
			out = append(out, Place{strconv.Itoa(i), named("Stage", i, string(s.Kind))})
		}
		if more {
			out = append(out, Place{"new", "One more stage, the last before the drum"})
		}
		return out
	}
}

func lampPlaces(h *lift.Hoist) []Place {
	var out []Place
	for i, l := range h.Lower.Loads {
		out = append(out, Place{strconv.Itoa(i), "In the place of " + named("load", i, l.Name)})
	}
	return append(out, Place{"new", "One more load"})
}

func named(what string, i int, name string) string {
	if name == "" {
		return fmt.Sprintf("%s %d", what, i+1)
	}
	return fmt.Sprintf("%s %d: %s", what, i+1, name)
}

// errNoPlace is what a place that is not there comes to.
var errNoPlace = fmt.Errorf("choose where it goes")

// index reads a place of a list, and makes room for a new row.
func index[R any](list *[]R, at string) (int, error) {
	if at == "new" {
		*list = append((*list)[:len(*list):len(*list)], *new(R))
		return len(*list) - 1, nil
	}
	i, err := strconv.Atoi(at)
	if err != nil || i < 0 || i >= len(*list) {
		return 0, errNoPlace
	}
	return i, nil
}
