package hoist

import (
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

func loweringRows(d lift.Drive, ends *model.BrushEnds, sys unit.System) []page.PairView {
	l, s := d.Lowering, spans{ends, sys}
	if l.RunsBack == "" {
		return []page.PairView{{Name: "Coming down", Value: "not known yet"}}
	}
	rows := []page.PairView{{Name: "Comes down by itself", Value: map[string]string{"yes": "yes", "nudge": "only with a push", "no": "no"}[string(l.RunsBack)]},
		{Name: "Pull of the rope at the drum", Value: page.ForceBoth(d.RopeDown, sys)}}
	if l.Current <= 0 { // it stays stuck
		return rows
	}
	rows = append(rows, page.PairView{Name: "Current, set by the weight alone", Value: s.of(unit.Currents, d, func(d lift.Drive) float64 { return float64(d.Lowering.Current) })})
	if !l.Known {
		return rows
	}
	if !l.Steady { // no speed, no time, no energy: nothing holds it
		return append(rows, page.PairView{Name: "Steady speed", Value: "none"}, page.PairView{Name: "A resistor or clamp is wired straight to the motor", Value: yesNo(l.Shunt)})
	}
	if l.Short { // volts and speed are those of a longer way
		rows = append(rows, page.PairView{Name: "Steady speed", Value: "not within this travel"}, page.PairView{Name: "The mass arrives at", Value: unit.Speeds.Format(float64(l.EndSpeed), sys)},
			page.PairView{Name: "Motor speed", Value: "up to " + unit.RotationSpeeds.Format(float64(l.TopRotor), sys)})
	} else {
		rows = append(rows, page.PairView{Name: "Voltage that the lamps set", Value: unit.Voltages.Format(float64(l.Voltage), sys)}, page.PairView{Name: "Steady speed", Value: yesNo(l.Steady)},
			page.PairView{Name: "Speed of the mass", Value: unit.SlowSpeeds.Format(float64(l.Speed), sys)}, page.PairView{Name: "Motor speed", Value: unit.RotationSpeeds.Format(float64(l.Rotor), sys)})
	}
	if ends != nil && (!ends.Low.Lowering.Steady || !ends.High.Lowering.Steady) {
		s.ends = nil
	}
	power := meanPower(l, sys)
	if s.ends != nil {
		power = s.of(unit.Powers, d, func(d lift.Drive) float64 { return float64(d.Lowering.Power) }) + " in the mean"
	}
	rows = append(rows, page.PairView{Name: "Time for one way down", Value: form.Lasting(l.Time)}, page.PairView{Name: "Power at the lamps", Value: power},
		page.PairView{Name: "Energy at the lamps", Value: s.of(unit.Energies, d, func(d lift.Drive) float64 { return float64(d.Lowering.EnergyOut) })})
	if lost := float64(l.Left); lost > seenLeft*float64(d.RaiseEnergyMech.Or(0)) {
		rows = append(rows, page.PairView{Name: "Energy of motion at the lower stop", Value: unit.Energies.Format(lost, sys)})
	}
	return append(rows, page.PairView{Name: "A resistor or clamp is wired straight to the motor", Value: yesNo(l.Shunt)})
}

// seenLeft is the share of the mass's energy from which what is carried into the lower stop has a line of its own.
const seenLeft = 0.005

// meanPower is the power at the lamps: at the steady speed, and in the mean over the whole way down where the start takes a
// part of it that shows.
func meanPower(l lift.Lowering, sys unit.System) string {
	mean, steady := unit.Powers.Format(float64(l.Power), sys), unit.Powers.Format(float64(l.SteadyPower), sys)
	switch {
	case l.Short:
		return mean + " in the mean"
	case mean == steady || float64(l.SteadyPower-l.Power) < 0.01*float64(l.SteadyPower):
		return steady
	}
	return steady + ", " + mean + " in the mean over the whole way"
}
