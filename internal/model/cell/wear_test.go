package cell

import (
	"math"
	"testing"

	"duskweight/internal/model/unit"
)

// monthly is a year of hours in which each month keeps its mean.
func monthly(means [12]float64) (hours []float64) {
	for m, days := range [12]int{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31} {
		for range 24 * days {
			hours = append(hours, means[m])
		}
	}
	return hours
}

// The mean air of two climates, by month, and a room.
var (
	jyvaskyla = monthly([12]float64{-6.2, -5.7, -3.1, 2.7, 9.4, 14.1, 16.8, 15.1, 10.6, 4.5, 1.3, -2.9})
	newDelhi  = monthly([12]float64{12.1, 18.0, 23.0, 28.6, 32.1, 32.6, 31.0, 30.5, 29.0, 25.8, 19.8, 15.0})
	room      = monthly([12]float64{20, 20, 20, 20, 20, 20, 20, 20, 20, 20, 20, 20})
)

// Cells that stand at 0.8 of their label all year and go 365 times a year through 0.3 of it, without crystals: rates, shares
// and years of a calculation of its own from the published laws, in double precision.
func TestLifeOfTwelve(t *testing.T) {
	for _, c := range []struct {
		kind             Chemistry
		air              []float64
		shelf, wear      float64
		low, usual, high float64
	}{
		{FloodedLead, jyvaskyla, 0.133333333, 0.1752, 1.94468453, 3.24114088, 5.70776256},
		{FloodedLead, room, 0.133333333, 0.1752, 1.94468453, 3.24114088, 5.70776256},
		{FloodedLead, newDelhi, 0.195311031, 0.1752, 1.61938498, 2.69897497, 5.12003851},
		{SealedLead, jyvaskyla, 0.114285714, 0.291068435, 1.48018714, 2.46697857, 3.43561816},
		{SealedLead, room, 0.114285714, 0.291068435, 1.48018714, 2.46697857, 3.43561816},
		{SealedLead, newDelhi, 0.178499544, 0.291068435, 1.27777026, 2.12961711, 3.43561816},
		{LFP, jyvaskyla, 0.0332551562, 0.0281235665, 9.7753745, 15, 15},
		{LFP, room, 0.0492993759, 0.0281235665, 7.74964089, 12.9160682, 15},
		{LFP, newDelhi, 0.064405176, 0.0281235665, 6.48447157, 10.8074526, 15},
		{NMC, jyvaskyla, 0.0477271539, 0.0558789848, 5.79116264, 9.65193774, 12},
		{NMC, room, 0.056067205, 0.0558789848, 5.35971793, 8.93286321, 12},
		{NMC, newDelhi, 0.117951605, 0.0558789848, 3.45163644, 5.7527274, 8.47805332},
	} {
		r := typicalBank(string(c.kind)).Resolve()
		charge, still := make([]float64, 8760), make([]float64, 8760)
		for h := range charge {
			charge[h] = 0.8
		}
		l := Life{Wear: 365 / r.CyclesTo(0.3), Shelf: r.shelf(charge, c.air)}
		near(t, "shelf", l.Shelf, c.shelf, 1e-6*c.shelf, hand)
		near(t, "wear", l.Wear, c.wear, 1e-6*c.wear, hand)
		l.last(r, charge, still)
		near(t, "soonest", float64(l.YearsLow.Val), c.low, 1e-6*c.low, hand)
		near(t, "usual", float64(l.Years.Val), c.usual, 1e-6*c.usual, hand)
		near(t, "latest", float64(l.YearsHigh.Val), c.high, 1e-6*c.high, hand)
		if l.Capped != (c.usual == 15) {
			t.Errorf("%s: as long as any warranty: %v", c.kind, l.Capped)
		}
	}
}

// 24 hours full, 240 hours at a half with the same draw in each, again and again: the mean hour since full is 120.5, so the
// factor is 1 + (6.614e-5 + 3.307e-3/2)·120.5. With a quarter of the ten-hour current the crystals are √4
// times worse.
func TestSulphationFactor(t *testing.T) {
	var charge, drawn []float64
	for h := range 264 * 4 {
		if h%264 < 24 {
			charge, drawn = append(charge, 1), append(drawn, 0)
		} else {
			charge, drawn = append(charge, 0.5), append(drawn, 1)
		}
	}
	usual, worst := sulphation(charge, drawn, 4)
	near(t, "usual", usual, 1.20721662, 1e-8, hand)
	near(t, "with small currents", worst, 1+(6.614e-5+3.307e-3/2*2)*120.5, 1e-9, hand)
	_, worst = sulphation(charge, drawn, 1e9)
	near(t, "with currents that are as good as nothing", worst, 1+(6.614e-5+3.307e-3/2*3)*120.5, 1e-9, hand)
	for h := range charge {
		charge[h] = 0.1 // never full
	}
	if usual, worst = sulphation(charge, drawn, 10); usual <= 1 || worst < usual || worst > crystalsMost {
		t.Errorf("never full: %v, %v", usual, worst)
	}
	if usual, _ = sulphation(charge, make([]float64, len(charge)), 10); usual != 1 {
		t.Errorf("nothing drawn: %v", usual)
	}
}

// Half-way through its life to four fifths lead has lost 0.1, iron phosphate 0.2/√2, nickel–manganese–cobalt 0.2/2^0.75. One
// that is used down to 0.6 lasts 2, 4 and 2^(4/3) times as long.
func TestFade(t *testing.T) {
	for kind, c := range map[Chemistry]struct{ halfway, longer float64 }{FloodedLead: {0.1, 2}, LFP: {0.141421356, 4}, NMC: {0.118920712, math.Pow(2, 4.0/3)}} {
		b := typicalBank(string(kind))
		charge, still := []float64{0.5}, []float64{0}
		life := func(end unit.Known[unit.Ratio]) (Resolved, float64) {
			b.EndShare = end
			r, l := b.Resolve(), Life{Wear: 1, Shelf: 1}
			l.last(r, charge, still)
			return r, float64(l.Years.Val)
		}
		usual, years := life(unit.Known[unit.Ratio]{})
		longer, more := life(unit.Of(unit.Ratio(0.6)))
		near(t, "left half-way", usual.Left(0.5), 1-c.halfway, 1e-8, hand)
		near(t, "left at the end", usual.Left(1), 0.8, 1e-15, hand)
		near(t, "left at 0.6", longer.Left(1), 0.6, 1e-15, hand)
		near(t, "longer", more/years, c.longer, 1e-9, hand)
	}
}

// Warmer is never longer; fuller lithium never lasts longer; crystals never make it last longer.
func TestAgeingProperties(t *testing.T) {
	for _, k := range kinds {
		for s := 0.0; s < 1; s += 0.05 {
			for c := -30.0; c < 60; c += 5 {
				if k.Ages.rate(c+5, s) < k.Ages.rate(c, s) {
					t.Errorf("%s lasts longer at %v °C than at %v", k.Key, c+5, c)
				}
				if k.Ages.rate(c, s+0.05) < k.Ages.rate(c, s) {
					t.Errorf("%s lasts longer at %v than at %v", k.Key, s+0.05, s)
				}
			}
		}
	}
}

// The published laws by themselves lose a fifth, at 25 °C, in 22 years (iron phosphate, half full), 8.7 (full) and 17
// (nickel–manganese–cobalt at 3.698 V): only their shape is used, and it is theirs.
func TestCalendarPapers(t *testing.T) {
	const year = 365 * 86400.0
	iron := func(s float64) float64 {
		x := s - 0.5
		k := 1.2571e-5 * (2.8575*x*x*x + 0.60225) / 1 // s^−½
		return math.Pow(0.2/k, 2) / year
	}
	near(t, "half full, years", iron(0.5), 22.1289147, 1e-3, hand)
	near(t, "full, years", iron(1), 8.71927456, 1e-3, hand)
	near(t, "shape of iron phosphate", byCube.of(1)/byCube.of(0.5), iron(0.5)/iron(1), 1e-9, hand)
	cobalt := func(v float64) float64 {
		return math.Pow(0.2/((7.543*v-23.75)*1e6*math.Exp(-6976/298.15)), 1/0.75) * 86400 / year
	}
	near(t, "years at 3.698 V", cobalt(3.698), 17.0265923, 1e-3, hand)
	near(t, "shape of nickel–manganese–cobalt", byVoltage.of(1)/byVoltage.of(0.5), cobalt(3.698)/cobalt(4.162), 1e-9, hand)
	near(t, "warmth of nickel–manganese–cobalt", kinds[3].Ages.rate(45, 0.9), math.Pow(math.Exp(6976/298.15-6976/318.15), 1/0.75), 1e-9, hand)
	near(t, "warmth of iron phosphate", kinds[2].Ages.rate(45, 0.9), math.Pow(math.Exp(17126/8.314462618*(1/298.15-1/318.15)), 2), 1e-9, hand)
}
