package form

import (
	"regexp"
	"strconv"
	"strings"

	"duskweight/internal/model/unit"
)

// The sentences of the model name their figures in metric units. On pages in imperial units they are told again in those.

// figure is a number with a metric unit in a sentence.
var figure = regexp.MustCompile(`([−-]?\d[\d\x{00a0}]*(?:\.\d+)?)[ \x{00a0}](kg|kN|N·m|N|mm|cm²|m²|m³|m/s|m|MPa|kPa|°C)([^\pL\pN²³·/]|$)`)

// retoldUnits are the quantities of those units, with the size of one in SI.
var retoldUnits = map[string]struct {
	in  unit.Quantity
	one float64
}{
	"kg": {unit.Masses, 1}, "kN": {unit.Forces, 1000}, "N": {unit.Forces, 1}, "N·m": {unit.Torques, 1}, "mm": {unit.SmallLengths, 1e-3}, "m": {unit.Lengths, 1},
	"cm²": {unit.Openings, 1e-4}, "m²": {unit.Areas, 1}, "m³": {unit.Volumes, 1}, "m/s": {unit.Speeds, 1}, "MPa": {unit.Stresses, 1e6}, "kPa": {unit.Stresses, 1e3},
	"°C": {unit.Temperatures, 1},
}

// Retell tells a sentence in the units of the page.
func Retell(say string, sys unit.System) string {
	if sys == unit.Metric || !strings.ContainsAny(say, "0123456789") {
		return say
	}
	return figure.ReplaceAllStringFunc(say, func(f string) string {
		m := figure.FindStringSubmatch(f)
		v, err := strconv.ParseFloat(strings.NewReplacer(unit.Space, "", unit.Minus, "-").Replace(m[1]), 64)
		q, ok := retoldUnits[m[2]]
		if err != nil || !ok {
			return f
		}
		return q.in.Format(v*q.one, sys) + m[3]
	})
}
