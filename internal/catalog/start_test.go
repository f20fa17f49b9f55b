package catalog_test

import (
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// TestStartFeedsTheLamps sees that the first plan is a drive that a maker could try: it lifts in ten minutes, comes down by
// itself and stays cool, and gives the lamps at most a fifth more than they use. A motor of 250 W gave 30 W to two lamps of 5 W.
func TestStartFeedsTheLamps(t *testing.T) {
	at, ok := catalog.Climate("Luxembourg")
	if !ok {
		t.Fatal("the climate is gone")
	}
	var g *model.Ground
	fed := 0
	for _, mass := range []unit.Mass{5, 40, 80, 200, 1000} {
		for _, height := range []unit.Length{1, 4, 10} {
			for _, watts := range []unit.Power{1, 5, 10, 15} {
				for _, lamps := range []unit.Count{1, 2, 20} {
					doc := catalog.Start(catalog.Answers{Name: "Cabin", Place: at, HeavyName: "Sand", Mass: mass, Height: height, Lamps: lamps, LampPower: watts, Hours: 4 * unit.Hour})
					if g == nil {
						g = new(model.Prepare(doc.Project)) // the lamps are no part of the drive
					}
					d := g.Hoist(doc.Variants[0], 0).Drive
					up, down := d.Raising, d.Lowering
					if up.Stalls || !up.Starts || up.Time > 10*60 || down.RunsBack != lift.DownYes || !down.Steady || (d.HeatUp.TooHot || d.HeatDown.TooHot) {
						t.Errorf("%v kg, %v m, %v of %v W: lifts %v %v in %v s, comes down %v %v, too hot %v", mass, height, lamps, watts, !up.Stalls, up.Starts, up.Time, down.RunsBack, down.Steady, (d.HeatUp.TooHot || d.HeatDown.TooHot))
					}
					all := float64(watts) * float64(lamps)
					share := float64(down.SteadyPower) / all
					fits := all >= 4.25 && float64(mass)*unit.G*float64(height) < 7000 // W and J for the smallest motor: 12.5 V · 0.34 A, and 12 W on the way up for ten minutes
					if fits && share > 1.2 {
						t.Errorf("%v kg, %v m, %v of %v W: comes down with %.2f times what the lamps use", mass, height, lamps, watts, share)
					}
					if share > 0.9 && share < 1.1 {
						fed++
					}
				}
			}
		}
	}
	if fed < 40 {
		t.Errorf("only %d plans feed their lamps", fed)
	}
}
