package page

import (
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
)

// WantText is the one number to look for, and whether it is the whole answer.
func WantText(n model.Need, sys unit.System) (text string, known bool) {
	if len(n.Want) == 0 {
		return "", true
	}
	w := n.Want[0]
	where := w.Where.In(sys)
	switch {
	case w.None:
		return "none would do: " + where, false
	case w.Known():
		return leastText(float64(w.Least.Val), w.Unit, sys) + " " + where, true
	case w.Least.Is && w.Least.Val > 0:
		return "not known yet; more than " + leastText(float64(w.Least.Val), w.Unit, sys) + " " + where, false
	}
	return "not known yet: " + where, false
}

// ShortText prints what stands on the plan's own part, which is too little: rounded down, never up.
func ShortText(w model.Want, sys unit.System) string {
	return labelText(float64(w.Stated.Val), w.Unit, sys, unit.Down)
}

// leastText prints what a label must say at least: rounded up, never down.
func leastText(v float64, u unit.Measure, sys unit.System) string {
	return labelText(v, u, sys, unit.Up)
}

// TestMass prints what must hang in a test: rounded up, for a lighter mass would not pass it.
func TestMass(m unit.Mass, sys unit.System) string {
	return unit.Masses.FormatTo(float64(m), sys, 3, unit.Up)
}

// labelText prints a value of a label, of an SI unit u, rounded to three digits in a direction in the reader's unit. Forces are
// told as the weight of a mass.
func labelText(v float64, u unit.Measure, sys unit.System, dir unit.Round) string {
	q, ok := ByUnit[u]
	switch u {
	case unit.Coulombs:
		q, ok = unit.Charges, true
	case unit.SquareMetres:
		q = unit.WireAreas // of a cable: the one area on a label
	case unit.CubicMetres:
		q = unit.BigVolumes // of a tank; what a beam needs stands on no label
	case unit.Metres:
		q, ok = tapedUnit(unit.Length(v)), true // a fence, a landing: no label has another length
	}
	if !ok {
		return strings.TrimSpace(unit.RoundedTo(v, 3, dir) + unit.Space + strings.TrimPrefix(string(u), string(unit.Pieces)))
	}
	return q.FormatTo(v, sys, 3, dir)
}

// SizeText prints one size; empty where it is not known.
func SizeText(s model.Size, sys unit.System) string {
	if s.Text != "" {
		return form.WordFor(s.Text)
	}
	v, ok := s.Value.Value()
	if !ok {
		return ""
	}
	if s.Tape {
		return tapedUnit(unit.Length(v)).Format(float64(v), sys)
	}
	return Amount(float64(v), s.Unit, sys)
}

// SizesText are the sizes of a part as it is designed: "thickness 12 mm, material polyester".
func SizesText(n model.Need, sys unit.System) string {
	var out []string
	for _, s := range n.Sizes {
		if text := SizeText(s, sys); text != "" {
			out = append(out, s.Name+" "+text)
		}
	}
	return strings.Join(out, ", ")
}
