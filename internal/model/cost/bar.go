package cost

import (
	"slices"

	"duskweight/internal/model/unit"
)

// Lifetime is how long a thing lasts, and between what that lies. What is not known is not known.
type Lifetime struct{ Low, Usual, High unit.Known[unit.Duration] }

// Bar is one end of what a bill may come to.
type Bar struct {
	Capital   unit.Known[unit.Money]
	NPV       unit.Known[unit.Money]
	Whole     unit.Known[unit.Money]
	Levelised unit.Known[unit.Money]
}

// bar is what a bill comes to, as an end.
func (out Result) bar() Bar { return Bar{out.Capital, out.NPV, out.Whole, out.Levelised} }

// low is the bill at the low prices, with batteries that last long. A part without a low price has its price.
func (in Input) low() Input {
	return in.at(func(p Part) unit.Known[unit.Money] { return orPrice(p.Low, p) }, func(l Lifetime) unit.Known[unit.Duration] { return orUsual(l.High, l) })
}

// high is the reverse.
func (in Input) high() Input {
	return in.at(func(p Part) unit.Known[unit.Money] { return orPrice(p.High, p) }, func(l Lifetime) unit.Known[unit.Duration] { return orUsual(l.Low, l) })
}

// at is the bill with other prices and lives.
func (in Input) at(price func(Part) unit.Known[unit.Money], life func(Lifetime) unit.Known[unit.Duration]) Input {
	in.Parts, in.Batteries = slices.Clone(in.Parts), slices.Clone(in.Batteries)
	for i, p := range in.Parts {
		in.Parts[i].Price = price(p)
	}
	for i, l := range in.Batteries {
		in.Batteries[i].Usual = life(l)
	}
	return in
}

// orPrice is an end of a part's price. A part without a price has no end either.
func orPrice(end unit.Known[unit.Money], p Part) unit.Known[unit.Money] {
	if !end.Is || !p.Price.Is {
		return p.Price
	}
	return end
}

// orUsual is an end of a life, or the usual one where it is not known.
func orUsual(end unit.Known[unit.Duration], l Lifetime) unit.Known[unit.Duration] {
	if !end.Is {
		return l.Usual
	}
	return end
}

// Present returns what all parts of a bill are worth today, over the years and with what is replaced; not known while one has
// no price. It is Whole of Reckon.
func Present(in Input) unit.Known[unit.Money] { return reckon(in).Whole }
