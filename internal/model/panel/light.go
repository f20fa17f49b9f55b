package panel

import "duskweight/internal/model/unit"

// MeanLight returns what a year of light, W/m² in each hour, brings to a square metre of the panels, J/m², as a mean over
// their power by the label; not known where no power is.
func MeanLight(arrays []Array, lights []Light) unit.Known[unit.Irradiation] {
	var weighted, power float64
	for i, a := range arrays {
		w, sum := float64(a.Nominal().Or(0)), 0.0
		for _, x := range lights[i].Plane {
			sum += x
		}
		weighted += w * sum
		power += w
	}
	if power == 0 {
		return unit.Known[unit.Irradiation]{}
	}
	return unit.Of(unit.Irradiation(weighted / power * 3600))
}
