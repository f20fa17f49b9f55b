package hoist

import (
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

func raisingRows(d lift.Drive, direct *model.Direct, sys unit.System) []page.PairView {
	r := d.Raising
	if !r.Known {
		return []page.PairView{{Name: "Lifting", Value: "not known yet"}}
	}
	var rows []page.PairView
	if direct != nil && direct.Known {
		rows = []page.PairView{{Name: "Figures are those of", Value: "full sun, " + unit.Irradiances.Format(1000, sys)}}
	}
	rows = append(rows, []page.PairView{{Name: "Lifts", Value: yesNo(!r.Stalls && r.Starts)}, {Name: "Pull of the rope at the drum", Value: page.ForceBoth(d.RopeUp, sys)}, {Name: "Torque at the drum", Value: page.Known(d.DrumTorqueUp, unit.Torques, sys)},
		{Name: "Gear ratio in all", Value: page.Known(d.Ratio, unit.GearRatios, sys)}, {Name: "Current", Value: unit.Currents.Format(float64(r.Current), sys)}}...)
	if r.Speed > 0 {
		rows = append(rows, page.PairView{Name: "Speed of the mass", Value: unit.SlowSpeeds.Format(float64(r.Speed), sys)}, page.PairView{Name: "Time for one lift", Value: form.Lasting(r.Time)},
			page.PairView{Name: "Energy for one lift", Value: unit.Energies.Format(float64(r.EnergyIn), sys)}, page.PairView{Name: "Start: torque it has over torque it needs", Value: unit.Rounded(float64(r.Margin), 3) + " (1.3 wanted)"})
	}
	return rows
}
