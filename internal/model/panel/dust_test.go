package panel

import (
	"math"
	"testing"

	"duskweight/internal/model/unit"
)

func dustOf(soiling, rate, every float64, months ...unit.Count) Array {
	a := Array{Soiling: unit.Of(unit.Ratio(soiling)), Dust: unit.Of(unit.Ratio(rate)), DustIn: months}
	if every > 0 {
		a.DustClean = unit.Of(unit.Count(every))
	}
	return a
}

// Cleaned every 30 days, with a hundredth left by the cleaning and 0.0015 more each day: the mean over the 30 days is
// 0.01 + 0.0015·29/2 = 0.03175. 360 days are twelve such turns.
func TestDustBetweenCleanings(t *testing.T) {
	loss := 0.0
	for _, clean := range dustOf(0.01, 0.0015, 30).cleanByDay()[:360] {
		loss += (1 - clean) / 360
	}
	near(t, "mean loss", loss, 0.03175, 1e-12)
}

// A dry season over the turn of the year, November to February: the first of November is as clean as rain leaves it, the last of
// February lies 119 days later. Other months keep the first loss. Nobody cleans.
func TestDustOverTheTurnOfTheYear(t *testing.T) {
	clean := dustOf(0.02, 0.002, 0, 11, 12, 1, 2).cleanByDay()
	for day, want := range map[int]float64{304: 0.02, 305: 0.022, 364: 0.02 + 60*0.002, 0: 0.02 + 61*0.002, 58: 0.02 + 119*0.002, 59: 0.02, 303: 0.02} {
		near(t, "loss", 1-clean[day], want, 1e-12)
	}
}

// No more than three tenths settle, and panels that neither rain nor anybody cleans stay there. Without a word of dust the loss
// is the same all year, as before.
func TestDustHasAnEnd(t *testing.T) {
	for _, a := range []Array{dustOf(0.03, 0.02, 0), dustOf(0.03, 0.02, 0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12)} {
		for _, clean := range a.cleanByDay() {
			near(t, "loss", 1-clean, 0.3, 1e-12)
		}
	}
	if (Array{Soiling: unit.Of(unit.Ratio(0.05))}).cleanByDay() != nil {
		t.Error("without a word of dust its days differ")
	}
}

// Where dust goes, what is lost and what comes out are the light again, by each controller; a panel that is dusty in January
// alone gives in January the less by exactly the dust.
func TestDustInTheBalance(t *testing.T) {
	hours := 8760
	l, air := Light{Plane: make([]float64, hours), Cells: make([]float64, hours)}, make([]float64, hours)
	for h := range air {
		air[h], l.Plane[h] = 20, 800*max(0, math.Sin(2*math.Pi*float64(h%24-6)/24))
		l.Cells[h] = 0.97 * l.Plane[h]
	}
	for _, kind := range []ControllerKind{ControllerTracking, ControllerPulseWidth} {
		clean, dusty := dustOf(0.02, 0, 0, 1), dustOf(0.02, 0.004, 0, 1)
		var out [2]*Bus
		for i, a := range []Array{clean, dusty} {
			a.Count, a.Power = unit.Of(unit.Count(1)), unit.Of(unit.Power(100))
			a.Tilt, a.Azimuth = unit.Of(unit.Angle(0.5)), unit.Of(unit.Angle(3))
			bus, ps := BusPower([]Array{a}, Controller{Kind: kind, Curve: []Efficiency{{0, 1}, {1, 1}}}, []Light{l}, air)
			if len(ps) > 0 {
				t.Fatal(ps)
			}
			y := bus.Arrays[0]
			sum := y.Output
			for _, loss := range y.Losses {
				sum += loss.Energy
			}
			near(t, "light", float64(sum), float64(y.Light), 1e-6*float64(y.Light))
			out[i] = bus
		}
		for day := range 365 {
			h, want := 24*day+12, 1.0
			if day < 31 {
				want = 1 - 0.004*float64(day)/0.98
			}
			if kind == ControllerTracking {
				near(t, "share that is left", out[1].Panel[h]/out[0].Panel[h], want, 1e-12)
			} else if out[1].Panel[h] > out[0].Panel[h] {
				t.Errorf("day %d gives more with dust", day)
			}
		}
	}
}
