package guide

import (
	"strings"
	"testing"
)

// What people type, and the place that must come first: in everyday words, in the plural, with a letter wrong, or with the word of
// the trade. Which place answers it is our own judgement.
func TestSearchFindsTheTopic(t *testing.T) {
	g, _, err := readGuide()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ typed, first string }{
		{"fridge", "night#fridge-and-freezer"},
		{"Fridges", "night#fridge-and-freezer"},
		{"refrigerator", "night#fridge-and-freezer"},
		{"freezer", "night#fridge-and-freezer"},
		{"how long does a fridge run", "night#fridge-and-freezer"},
		{"barrel", "breaks#bag-cage-and-barrel"},
		{"barrels of water", "breaks#bag-cage-and-barrel"},
		{"bucket", "breaks#bag-cage-and-barrel"},
		{"bag", "breaks#bag-cage-and-barrel"},
		{"sand bag", "breaks#bag-cage-and-barrel"},
		{"big bags", "breaks#bag-cage-and-barrel"},
		{"ladder", "safety#work-at-height"},
		{"scaffold", "safety#work-at-height"},
		{"inverter", "night#inverter"},
		{"do I need an inverter?", "night#inverter"},
		{"why not water", "water"},
		{"Why not water?", "water"},
		{"hydropower", "water"},
		{"cost", "money"},
		{"price", "money"},
		{"how much does it cost", "money"},
		{"cheapest", "money#the-cheapest-plan"},
		{"snow", "sun#snow-on-panels"},
		{"shade", "sun#onto-the-panel"},
		{"trees", "sun#onto-the-panel"},
		{"tilt", "sun#tilt-through-the-year"},
		{"best angle for panels", "sun#tilt-through-the-year"},
		{"weather file", "sun#your-sky-or-a-weather-file"},
		{"backup", "night#backup-generator-and-when-the-stores-run-low"},
		{"generator", "night#backup-generator-and-when-the-stores-run-low"},
		{"rope", "breaks#rope-and-knot"},
		{"children", "safety#mechanical"},
		{"kids", "safety#mechanical"},
		{"fuse", "cells#cable-and-fuse"},
		{"fuses", "cells#cable-and-fuse"},
		{"battery", "cells"},
		{"batteries", "cells"},
		{"accumulator", "cells"},
		{"batery", "cells"},
		{"how long does a battery last", "cells#life"},
		{"battery life", "cells#life"},
		{"cold battery", "cells#cold"},
		{"frost battery", "cells#cold"},
		{"battery in the bedroom", "safety#batteries-and-fire"},
		{"hydrogen", "cells#air"},
		{"worm gear", "words#w-worm"},
		{"stays stuck", "words#w-stays-stuck"},
		{"comes down by itself", "hoist#coming-down-by-itself"},
		{"motor too hot", "hoist#heat"},
		{"overheating", "hoist#heat"},
		{"motor without data sheet", "hoist#know-your-motor"},
		{"measure my motor", "hoist#know-your-motor"},
		{"panel without battery", "hoist#the-panel-straight-on-the-motor"},
		{"eye bolt", "breaks#eye-bolts"},
		{"what breaks first", "breaks"},
		{"top pulley", "breaks#top-pulley"},
		{"knot", "breaks#rope-and-knot"},
		{"fall", "trials#after-a-fall-or-a-shock"},
		{"load test", "trials#load-it-step-by-step"},
		{"first lift", "trials#load-it-step-by-step"},
		{"bad year", "sure#a-bad-a-usual-and-a-good-year"},
		{"print", "start"},
		{"JSON", "program"},
		{"export", "program"},
		{"formula battery", "formulas#battery"},
		{"typical values", "typical"},
		{"medical", "night#refused-devices"},
		{"splice", "words#w-splice"},
		{"thimbles", "words#w-thimble"},
		{"MPPT", "words#w-tracking-controller"},
		{"PWM", "words#w-pulse-width"},
		{"sheave", "words#w-pulley"},
		{"Péukert", "words#w-law-of-peukert"},
		{"upper stop", "words#w-upper-stop"},
		{"which parts fit", "shelf"},
		{"catalog", "rows"},
		{"how do you know", "known"},
		{"is it accurate", "known"},
		{"evidence", "known"},
		{"never checked", "known#what-was-never-checked"},
	} {
		found := g.search(c.typed)
		var at []string
		for _, f := range found {
			at = append(at, strings.TrimPrefix(f.URL, "/help/"))
		}
		if len(at) == 0 || at[0] != c.first {
			t.Errorf("%q: %v, want %s first", c.typed, at[:min(len(at), 4)], c.first)
		}
	}
	for _, nothing := range []string{"", "the", "why not", "xyzzy", "....", "zz"} {
		if found := g.search(nothing); len(found) != 0 {
			t.Errorf("%q: %d found", nothing, len(found))
		}
	}
}
