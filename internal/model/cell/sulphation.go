package cell

import "math"

// Constants of the crystals that grow in lead–acid cells while they are not full, 1/h (source.Schiffer), and the greatest
// factor by which they speed up the wear (our own judgement).
const (
	crystalsAlways = 6.614e-5
	crystalsLow    = 3.307e-3
	crystalsMost   = 5
)

// sulphation returns by how much faster cycles wear lead–acid cells that are seldom full: the mean over what is drawn of
// w = 1 + (c₀ + c₁(1 − s_min)·f)·Δt, with Δt hours since the cells were full and s_min the lowest state since. usual has f = 1;
// worst has f = √(I₁₀/I), 1 to 3: small currents grow fewer and larger crystals. charge is the state of charge at the end of
// each hour, drawn what is drawn in it, and tenth what an hour of the ten-hour current draws, both J. The year is read as
// repeating.
func sulphation(charge, drawn []float64, tenth float64) (usual, worst float64) {
	since, lowest := 0.0, 1.0
	var sum, withUsual, withWorst float64
	for turn := range 2 { // the second begins as the first ends
		for h, s := range charge {
			if s >= FullFrom {
				since, lowest = 0, 1
			} else {
				since, lowest = since+1, min(lowest, s)
			}
			q := drawn[h]
			if turn == 0 || q <= 0 {
				continue
			}
			f := min(3, max(1, math.Sqrt(tenth/q)))
			sum += q
			withUsual += q * (1 + (crystalsAlways+crystalsLow*(1-lowest))*since)
			withWorst += q * (1 + (crystalsAlways+crystalsLow*(1-lowest)*f)*since)
		}
	}
	if sum == 0 {
		return 1, 1
	}
	return min(crystalsMost, withUsual/sum), min(crystalsMost, withWorst/sum)
}
