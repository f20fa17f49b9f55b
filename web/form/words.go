package form

import (
	"strings"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// enumWords are the words on the screen for the words of the document, where they are not simply the same with spaces.
var enumWords = map[string]string{
	"head_sheave": "top pulley", "redirect_sheave": "further pulley",
	"none_one_block": "none: the mass is one block",
	"":               "not known",
	"hmpe":           "high-modulus (HMPE)",
	"lfp":            "lithium iron phosphate (LFP)",
	"nmc":            "lithium nickel manganese cobalt (NMC)",
	"pom":            "acetal (POM)",
	"dc":             "straight from the line",

	"hanger":      "hook, eye or shackle",
	"hold":        "one of the holds",
	"upper_stop":  "stop at the top",
	"shunt":       "resistor or clamp on the motor",
	"changeover":  "changeover switch",
	"landing":     "soft landing",
	"base_weight": "weights on the base",
	"panel_fuse":  "fuse at the panels",

	"faiman":  "by sun and wind",
	"nominal": "by the nominal cell temperature on its sheet",

	"not_seen":  "not seen yet",
	"in_plane":  "along the layers",
	"string":    "lamps in a row",
	"cell":      "battery",
	"governed":  "kept at one speed",
	"clamp":     "clamp (voltage limit)",
	"monthly":   "twelve monthly means",
	"described": "a sky described in words",
	"file":      "one weather file",
	"files":     "several weather files, each one year",
	"own":       "my own",
	"sun":       "by the sun",
	"nice":      "nice to have",
	"petrol":    "petrol generator",
	"diesel":    "diesel generator",
	"grid":      "the grid",
	"car":       "a car with its engine on",
}

// WordFor gives the word on the screen.
func WordFor(value string) string {
	if w, ok := enumWords[value]; ok {
		return w
	}
	return strings.ReplaceAll(value, "_", " ")
}

// Lasting is how long something lasts, in the unit a person would use.
func Lasting(d unit.Duration) string { return say.Time(d).To(2).String() }
