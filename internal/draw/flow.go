package draw

import (
	"fmt"
	"io"
	"math"
	"strings"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// What becomes of a part of the energy.
const (
	ToLight  int8 = iota // it does what it was wanted for
	ToHeat               // it warms wires, gears and boxes
	ToNobody             // it was there and nothing took it
)

// FlowPart is one part of where energy went.
type FlowPart struct {
	Name    string
	Energy  unit.Energy
	Becomes int8
}

// Flow is energy that came and the parts it went to, which add up to it.
type Flow struct {
	Name  string
	Whole FlowPart
	Parts []FlowPart
}

// Draw draws the whole as one bar and under it each part as a bar that begins where the part before it ends, with its
// share. The way of filling says what it becomes.
func (f Flow) Draw(out io.Writer) error {
	const w, left, right, top, row = 344.0, 8.0, 58.0, 6.0, 31.0
	floor := top + row*float64(len(f.Parts)+1)
	p := open(out, "flow", w, floor+4, f.Name, f.reading())
	whole := math.Max(0, finite(float64(f.Whole.Energy)))
	x := axis{lo: 0, hi: math.Max(whole, math.SmallestNonzeroFloat32), a: left, b: w - right}
	p.text(left, top+9, fitted(f.Whole.Name, x.b-x.a, small), small, "start", 0)
	p.rect(x.a, top+13, x.b-x.a, 11, attrs{"fill", sunColour, "fill-opacity", ".5"}, stroke(ink, 0.8, ""))
	p.text(w-2, top+22, "100 %", small, "end", 0)
	p.text(w-2, top+9, energyText(f.Whole.Energy), small, "end", 0)
	sum := 0.0
	for i, part := range f.Parts {
		y := top + row*float64(i+1)
		from := x.at(math.Min(sum, whole))
		sum += math.Max(0, finite(float64(part.Energy)))
		to := math.Max(from+1, x.at(math.Min(sum, whole)))
		p.line(from, y-7, from, y+24, stroke(ink, 0.6, "2 2"))
		if TextWidth(part.Name, small) < x.b-from { // beside the line that leads from the part before
			p.text(from+4, y+9, part.Name, small, "start", 0)
		} else {
			p.text(from-4, y+9, fitted(part.Name, from-x.a, small), small, "end", 0)
		}
		p.rect(from, y+13, to-from, 11, becomes(part.Becomes), stroke(ink, 0.8, ""))
		p.text(w-2, y+22, share(part.Energy, f.Whole.Energy), small, "end", 0)
		p.text(w-2, y+9, energyText(part.Energy), small, "end", 0)
	}
	return p.close()
}

// becomes is the filling of a part.
func becomes(what int8) attrs {
	switch what {
	case ToLight:
		return attrs{"fill", loadColour}
	case ToHeat:
		return attrs{"fill", failColour}
	}
	return attrs{"fill", sunColour, "fill-opacity", ".5"}
}

// energyText is an energy of a year.
func energyText(e unit.Energy) string {
	return unit.BigEnergies.Format(finite(float64(e)), unit.Metric)
}

// share is a part of a whole in hundredths, with two digits.
func share(part, whole unit.Energy) string {
	if !(whole > 0) || !(part >= 0) {
		return "–"
	}
	percent := 100 * float64(part/whole)
	if percent > 0 && percent < 0.1 {
		return "under 0.1 %"
	}
	return say.Share(unit.Ratio(part / whole)).String()
}

// reading is the text equivalent.
func (f Flow) reading() string {
	var s []string
	for _, part := range f.Parts {
		s = append(s, fmt.Sprintf("%s: %s", part.Name, share(part.Energy, f.Whole.Energy)))
	}
	return f.Whole.Name + ", of it: " + strings.Join(s, "; ") + "."
}
