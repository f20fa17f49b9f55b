package hoist

import (
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// spans prints figures of a drive that the drop at the brushes makes a range.
type spans struct {
	ends *model.BrushEnds // nil: one number
	sys  unit.System
}

// of is one figure, by the drive that it is read from.
func (s spans) of(q unit.Quantity, d lift.Drive, read func(lift.Drive) float64) string {
	if s.ends == nil {
		return q.Format(read(d), s.sys)
	}
	return page.Span(q, read(s.ends.Low), read(s.ends.High), s.sys)
}

func raisingRows(d lift.Drive, ends *model.BrushEnds, direct *model.Direct, sys unit.System) []page.PairView {
	r, s := d.Raising, spans{ends, sys}
	if r.Gearless {
		return []page.PairView{{Name: "Lifting", Value: "not known: the gearbox of the motor's label is not in the train"}}
	}
	if !r.Known {
		return []page.PairView{{Name: "Lifting", Value: "not known yet"}}
	}
	var rows []page.PairView
	if direct != nil && direct.Known {
		rows = []page.PairView{{Name: "Figures are those of", Value: "full sun, " + unit.Irradiances.Format(1000, sys)}}
	}
	rows = append(rows, []page.PairView{{Name: "Lifts", Value: yesNo(!r.Stalls && r.Starts)}, {Name: "Pull of the rope at the drum", Value: page.ForceBoth(d.RopeUp, sys)}, {Name: "Torque at the drum", Value: page.Known(d.DrumTorqueUp, unit.Torques, sys)},
		{Name: "Gear ratio in all", Value: page.Known(d.Ratio, unit.GearRatios, sys)}, {Name: "Current", Value: s.of(unit.Currents, d, func(d lift.Drive) float64 { return float64(d.Raising.Current) })}}...)
	if h := ends; h != nil && (h.Low.Raising.Stalls != h.High.Raising.Stalls || h.Low.Raising.Starts != h.High.Raising.Starts) {
		rows = append(rows, page.PairView{Name: "With the greatest drop at the brushes", Value: "it does not lift"})
		s.ends = nil
	}
	if r.Speed > 0 {
		rows = append(rows, page.PairView{Name: "Speed of the mass", Value: s.of(unit.SlowSpeeds, d, func(d lift.Drive) float64 { return float64(d.Raising.Speed) })}, page.PairView{Name: "Time for one lift", Value: form.Lasting(r.Time)},
			page.PairView{Name: "Energy for one lift", Value: s.of(unit.Energies, d, func(d lift.Drive) float64 { return float64(d.Raising.EnergyIn) })}, page.PairView{Name: "Torque at the start, times what is needed", Value: unit.Rounded(float64(r.Margin), 3) + " (1.3 needed)"})
	}
	return rows
}
