package page

import (
	"duskweight/internal/draw"
	"duskweight/internal/model/unit"
)

// Reading is what a maker finds on a part, or measures on it. The printed lines are examples of our own of what stands on such
// labels (common practice).
type Reading struct {
	Thing   string // key of its drawing
	Title   string // "What to read on the reel"
	Lines   []Printed
	Without string // what to do where there is no label
}

// Printed is a line of a label, as it is printed on a part that is sold in kilograms or in pounds, and what it means.
type Printed struct{ Metric, Imperial, Means string }

// Read is a reading with its lines.
func Read(thing, title, without string, lines ...Printed) Reading {
	return Reading{Thing: thing, Title: title, Without: without, Lines: lines}
}

// Line is a line that is printed in kilograms or in pounds.
func Line(metric, imperial, means string) Printed { return Printed{metric, imperial, means} }

// Alike is a line that is printed the same everywhere.
func Alike(text, means string) Printed { return Printed{text, text, means} }

// ReadView is a reading as a card shows it.
type ReadView struct {
	Title, Picture, Without string
	Open                    bool
}

// View prints a reading. It stands open on a card that somebody opened while something of the part is not known.
func (r Reading) View(sys unit.System, open bool) *ReadView {
	stamp := draw.Stamp{Thing: r.Thing}
	for _, l := range r.Lines {
		text := l.Metric
		if sys == unit.Imperial {
			text = l.Imperial
		}
		stamp.Lines = append(stamp.Lines, draw.StampLine{Print: text, Means: l.Means})
	}
	stamp.Title = r.Title + ", an example. " + stamp.Words() + "."
	return &ReadView{Title: r.Title, Picture: SvgOf(stamp.Draw), Without: r.Without, Open: open}
}
