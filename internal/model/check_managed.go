package model

import (
	"fmt"
	"math"

	"duskweight/internal/model/load"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// mostLevels is how many charges may switch something off.
const mostLevels = 4

// checkManaged returns what contradicts itself in what goes off below a level and in what waits; paths are inside the load.
func checkManaged(l load.Load) Problems {
	var ps Problems
	backs := map[unit.Ratio]unit.Ratio{} // of each level
	for i, a := range l.Appliances {
		at := func(field string) string { return fmt.Sprintf("appliances[%d].%s", i, field) }
		if a.MayWait() {
			checkWaiting(&ps, a, at)
			continue
		}
		below, ok := a.ShedBelow.Value()
		if !ok {
			continue
		}
		if a.Back() <= below {
			field := "shed_below"
			if a.BackAbove.Is {
				field = "back_above"
			}
			ps.Add(at(field), "it must go on again at a higher charge than that at which it goes off")
		}
		back, is := backs[below]
		switch {
		case is && back != a.Back():
			ps.Tell(at("back_above"), say.That("what goes off below %s goes on again together: give all of it the same charge", say.Share(below)))
		case !is && len(backs) == mostLevels:
			ps.Tell(at("shed_below"), say.That("at most %s different charges at which something goes off: give it one of the others", mostLevels))
		default:
			backs[below] = a.Back()
		}
	}
	return ps
}

// checkWaiting returns what contradicts itself in an appliance that waits.
func checkWaiting(ps *Problems, a load.Appliance, at func(string) string) {
	wholeHours(ps, at("from_s"), a.From)
	wholeHours(ps, at("to_s"), a.To)
	e, ok := a.Daily().Value()
	p, powered := a.Running().Value()
	hours := a.Window()
	if !ok || !powered || hours == 0 {
		return
	}
	if most := float64(p) * float64(hours) * 3600; float64(e) > most*(1+1e-9) {
		field := "energy_j_day"
		if !a.DayEnergy.Is {
			field = "water.m3_day"
		}
		ps.Tell(at(field), say.That("it needs %s a day, but %s over its %s give only %s: give it more hours or less to do", say.Energy(e), say.Power(p), say.Plural(int(hours), "hour", "hours"), say.Energy(unit.Energy(most))))
	}
}

// wholeHours refuses a time of the clock that is not a whole hour.
func wholeHours(ps *Problems, path string, t unit.Known[unit.Duration]) {
	if h := float64(t.Val) / 3600; t.Is && math.Abs(h-math.Round(h)) > 1e-6 {
		ps.Add(path, "use whole hours here: what waits and what helps out is worked out hour by hour")
	}
}

// backupWants says what a backup that is not wholly known keeps from being computed.
var backupWants = say.Words("whether the backup runs, and what it burns")

// checkBackup returns what contradicts itself in a backup; paths are inside it.
func checkBackup(b Backup) Problems {
	var ps Problems
	if b.Kind == "" {
		return nil
	}
	if b.Start.Is && b.Start.Val <= 0 {
		ps.Add("start_below", "it would never start: the stores are never less than empty")
	}
	if b.Start.Is && b.Stop.Is && b.Stop.Val <= b.Start.Val {
		ps.Add("stop_above", "it must stop at a higher charge than that at which it starts")
	}
	if b.Charge.Is && b.Rated.Is && b.Charge.Val > b.Rated.Val {
		ps.Add("charge_w", "it cannot charge with more power than it gives")
	}
	wholeHours(&ps, "from_s", b.From)
	wholeHours(&ps, "to_s", b.To)
	return ps
}
