package model

import "duskweight/internal/model/cost"

// checkPrices returns the prices of a part that do not stand in the order low, price, high.
func checkPrices(p cost.Part) Problems {
	var ps Problems
	switch low, price, high := p.Low, p.Price, p.High; {
	case low.Is && price.Is && low.Val > price.Val:
		ps.Add("price_low", "the lowest price cannot be more than the price")
	case low.Is && high.Is && low.Val > high.Val:
		ps.Add("price_low", "the lowest price cannot be more than the highest")
	case high.Is && price.Is && high.Val < price.Val:
		ps.Add("price_high", "the highest price cannot be less than the price")
	}
	return ps
}
