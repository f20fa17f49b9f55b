package hoist

import (
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

func loweringRows(d lift.Drive, sys unit.System) []page.PairView {
	l := d.Lowering
	if l.RunsBack == "" {
		return []page.PairView{{Name: "Coming down", Value: "not known yet"}}
	}
	rows := []page.PairView{{Name: "Comes down by itself", Value: map[string]string{"yes": "yes", "nudge": "only with a push", "no": "no"}[string(l.RunsBack)]},
		{Name: "Pull of the rope at the drum", Value: page.ForceBoth(d.RopeDown, sys)}}
	if l.Current <= 0 { // it stays stuck
		return rows
	}
	rows = append(rows, page.PairView{Name: "Current, whatever the lamps do", Value: unit.Currents.Format(float64(l.Current), sys)})
	if !l.Known {
		return rows
	}
	if !l.Steady { // no speed, no time, no energy: nothing holds it
		return append(rows, page.PairView{Name: "Settles", Value: "no"}, page.PairView{Name: "A path that nothing can open", Value: yesNo(l.Shunt)})
	}
	if l.Short { // volts, time and energy are those of a longer way
		return append(rows, page.PairView{Name: "Settles", Value: "not within this travel"}, page.PairView{Name: "It arrives at", Value: "up to " + unit.Speeds.Format(float64(l.EndSpeed), sys)},
			page.PairView{Name: "Motor speed", Value: "up to " + unit.RotationSpeeds.Format(float64(l.EndRotor), sys)}, page.PairView{Name: "A path that nothing can open", Value: yesNo(l.Shunt)})
	}
	return append(rows, page.PairView{Name: "Voltage that the lamps set", Value: unit.Voltages.Format(float64(l.Voltage), sys)}, page.PairView{Name: "Settles", Value: yesNo(l.Steady)},
		page.PairView{Name: "Speed of the mass", Value: unit.SlowSpeeds.Format(float64(l.Speed), sys)}, page.PairView{Name: "Motor speed", Value: unit.RotationSpeeds.Format(float64(l.Rotor), sys)},
		page.PairView{Name: "Time for one way down", Value: form.Lasting(l.Time)}, page.PairView{Name: "Power at the lamps", Value: unit.Powers.Format(float64(l.Power), sys)},
		page.PairView{Name: "Energy at the lamps", Value: unit.Energies.Format(float64(l.EnergyOut), sys)}, page.PairView{Name: "A path that nothing can open", Value: yesNo(l.Shunt)})
}
