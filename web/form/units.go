package form

import (
	"net/url"

	"duskweight/internal/model/unit"
)

// NameUnits is the field with the system of units that the page was printed in: what is typed there is meant in it,
// though the settings were changed in another window meanwhile.
const NameUnits = "units"

var UnitsWords = map[unit.System]string{unit.Metric: "metric", unit.Imperial: "imperial"}

// UnitsOf is the system in which a posted form was typed.
func UnitsOf(typed url.Values, now unit.System) unit.System {
	for sys, word := range UnitsWords {
		if typed.Get(NameUnits) == word {
			return sys
		}
	}
	return now
}
