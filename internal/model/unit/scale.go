package unit

import "fmt"

// Scale turns a value in SI into the number that a quantity is shown as: number = Zero + Per·SI.
type Scale struct{ Zero, Per float64 }

// Of returns the number that is shown for a value in SI.
func (s Scale) Of(si float64) float64 { return s.Zero + s.Per*si }

// Scale returns how q's unit under sys grows with SI, for the axis of a picture. A unit that is upside down, such as rpm/V, has
// none and is no quantity's own unit: Scale panics.
func (q Quantity) Scale(sys System) Scale {
	m := q.shown[sys&1]
	if m.inverse {
		panic(fmt.Sprintf("unit: %s does not grow with SI", m.symbol))
	}
	zero := m.fromSI(0)
	per, _ := m.factor.Float64()
	return Scale{zero, 1 / per}
}

// Constant reads a value of our own tables, in metric units, as SI; known is false for empty text. Text that cannot be read is a
// mistake of the table: Constant panics.
func (q Quantity) Constant(text string) (si float64, known bool) {
	si, known, err := q.Parse(text, Metric)
	if err != nil {
		panic(fmt.Sprintf("unit: %q as %s: %v", text, q.Noun(), err))
	}
	return si, known
}
