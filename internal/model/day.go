package model

import "duskweight/internal/model/load"

// Day is day d of the year, counted from 0, for showing and painting the hours of an appliance; without dusk and dark hours
// where the place is not known.
func (g Ground) Day(d int) load.Day {
	if g.Sky == nil {
		return load.Day{}
	}
	return load.DayOf(d, g.Sky.Geometry.Down, noons(g.Sky.Geometry))
}
