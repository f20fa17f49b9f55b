package say

import (
	"fmt"
	"strconv"
	"strings"

	"duskweight/internal/model/unit"
)

// marks are the units that a figure of a constant text may have, with the quantity that it then is.
var marks = map[string]unit.Quantity{
	"kg": unit.Masses, "mm": unit.SmallLengths, "m": unit.Heights, "N": unit.Forces, "N·m": unit.Torques, "MPa": unit.Stresses, "kPa": unit.SmallStresses,
	"°C": unit.Temperatures, "K": unit.TempSteps, "m/s": unit.Speeds, "km/h": unit.RoadSpeeds, "kg/m³": unit.Densities,
}

// Marked makes a sentence of a constant text, such as a hint or the tag of a value, whose figures with a unit stand in braces:
// "holds at {25 °C}". A figure has three significant digits, or as many as stand behind a colon, "{100 mm:1}". One whose unit
// is the same for every reader needs no braces. Braces that hold no figure with a unit of the table are a mistake of the
// text: Marked panics.
func Marked(text string) Sentence {
	var words strings.Builder
	var values []any
	for {
		before, rest, found := strings.Cut(text, "{")
		words.WriteString(before)
		if !found {
			break
		}
		figure, after, closed := strings.Cut(rest, "}")
		figure, kept, counted := strings.Cut(figure, ":")
		_, name, spaced := strings.Cut(figure, " ")
		q, known := marks[name]
		if !closed || !spaced || !known {
			panic(fmt.Sprintf("say: no figure with a unit in braces in %q", text))
		}
		si, _ := q.Constant(figure)
		a := Of(q, si)
		if counted {
			n, err := strconv.Atoi(kept)
			if err != nil {
				panic(fmt.Sprintf("say: no number of digits in %q", text))
			}
			a = a.To(n)
		}
		words.WriteString("%s")
		values = append(values, a)
		text = after
	}
	return That(words.String(), values...)
}
