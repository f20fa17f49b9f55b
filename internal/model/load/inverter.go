package load

import (
	"duskweight/internal/model/unit"
)

// The loss form of an inverter of which only the rated power is known: with an idle share of 0.01 it runs through 0.80 at
// 5 % and 0.90 at 30 % of its rating, the usual small inverter (source.SmallInverter).
const (
	usualShare  = 2.0 / 45
	usualSquare = 1.0 / 9
)

// Losses is what an inverter takes from the line beyond its idle power: (1 + Share)·P + Square·P²/Rated, all in W. With
// Rated 0 it is P/Efficiency. Source: loss form of Schmid & Schmidt 1991, from memory.
type Losses struct {
	Efficiency    float64
	Share, Square float64
	Rated         float64
}

// Losses returns the losses of an inverter from what is known of it: one efficiency for all loads; else two of its sheet,
// or the usual curve, where its rated power is known; else the typical efficiency. An error says that the two of the sheet
// do not fit together.
func (i Inverter) Losses() (Losses, error) {
	rated, known := i.Rated.Value()
	switch {
	case i.Efficiency.Is || !known:
		return Losses{Efficiency: float64(i.Efficiency.Or(InverterEfficiency))}, nil
	case !i.Tenth.Is || !i.Full.Is:
		return Losses{Share: usualShare, Square: usualSquare, Rated: float64(rated)}, nil
	}
	share, square := fromSheet(float64(i.Tenth.Val), float64(i.Full.Val), float64(i.Idle.Or(0))/float64(rated))
	if share < 0 || square < 0 {
		return Losses{}, unit.Refusal("These efficiencies do not fit together.")
	}
	return Losses{Share: share, Square: square, Rated: float64(rated)}, nil
}

// fromSheet returns share and square of the loss form from the efficiencies at a tenth and at the whole of the rated power,
// and the idle power over the rated power.
func fromSheet(tenth, full, idle float64) (share, square float64) {
	a := 1/tenth - 1 - 10*idle
	b := 1/full - 1 - idle
	square = (b - a) / 0.9
	return b - square, square
}

// Curved reports whether the efficiency depends on the load.
func (l Losses) Curved() bool { return l.Rated > 0 }

// Line returns the power at the line, without the idle power, for power p of the devices: steady, or of a mean p whose
// variance within the time is given. E[P²] = p² + variance for devices that go on and off without heed of each other.
func (l Losses) Line(p, variance unit.Power) unit.Power {
	if !l.Curved() {
		return p / unit.Power(l.Efficiency)
	}
	w := float64(p)
	return unit.Power((1+l.Share)*w + l.Square*(w*w+float64(variance))/l.Rated)
}
