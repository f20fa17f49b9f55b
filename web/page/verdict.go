package page

import (
	"duskweight/internal/model"
	"duskweight/web/form"
)

var verdictSigns = map[string]string{model.CarriesNight: "✓", model.CarriesEssentials: "◕", model.CarriesMost: "◕", model.CarriesPart: "◐", model.LearningPiece: "○", "": "?"}

// VerdictSigned is the sign of a verdict and its word as lists and cards have it.
func VerdictSigned(verdict string) (sign, word string) {
	if verdict == "" {
		return verdictSigns[""], "Not known yet"
	}
	return verdictSigns[verdict], form.SentenceCase(verdict)
}
