package web

import "strings"

// enumWords are the words on the screen for the words of the document, where they are not simply the same with spaces.
var enumWords = map[string]string{
	"":     "not known",
	"hmpe": "high-modulus (HMPE)",
	"lfp":  "lithium iron phosphate (LFP)",
	"nmc":  "lithium nickel manganese cobalt (NMC)",
	"pom":  "acetal (POM)",
	"dc":   "straight from the line",

	"not_seen": "not seen yet",
	"in_plane": "along the layers",
	"string":   "lamps in a row",
	"cell":     "battery",
	"governed": "kept at one speed",
	"clamp":    "clamp (voltage limit)",
	"monthly":  "twelve monthly means",
	"file":     "a weather file",
	"own":      "my own",
	"sun":      "by the sun",
	"nice":     "nice to have",
}

// wordFor gives the word on the screen.
func wordFor(value string) string {
	if w, ok := enumWords[value]; ok {
		return w
	}
	return strings.ReplaceAll(value, "_", " ")
}

// optionWords gives words of a choice that only this choice uses, as value, word, value, word.
func optionWords[T any](pairs ...string) func(*input[T]) {
	return func(in *input[T]) {
		for i := 0; i+1 < len(pairs); i += 2 {
			for j := range in.options {
				if in.options[j].value == pairs[i] {
					in.options[j].word = pairs[i+1]
				}
			}
		}
	}
}
