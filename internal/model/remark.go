package model

import (
	"duskweight/internal/model/load"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Remarks are what is to be known of the sun of a project although its year is known, each with its path inside the project:
// what was changed in its means, a sun that stays down, a shading outline that is not known.
func (g Ground) Remarks() (out Problems) {
	if g.Sky == nil {
		return nil
	}
	for _, r := range g.Sky.Remarks {
		out.Tell("place", r)
	}
	if days, from, to := g.Sky.Geometry.SunDown(); days > 0 {
		out.Tell("place.latitude_rad", say.That("The sun stays down on %s days of the year, from %s to %s. Panels bring nothing then: only what is stored, a backup or the grid carries these days.", days, dayName(from), dayName(to)))
	}
	if len(g.Project.Place.Horizon) == 0 {
		out.Tell("place.horizon", say.Words("The shading outline is not known and counts as free: hills, trees and houses that hide the sun are left out. If nothing hides it, give one point of 0°."))
	}
	return out
}

// dayName is a day of the year, 0 for 1 January, in words.
func dayName(day int) string {
	month := sun.MonthOf(day)
	for m := 1; m < month; m++ {
		day -= sun.MonthDays(m)
	}
	return unit.Rounded(float64(day+1), 2) + " " + monthNames[month-1]
}

var monthNames = [12]string{"January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"}

// Nights returns what a project's appliances need by hours and nights. It needs the place and not its light: it is there also
// where the light of the place is not known. ok is false where the latitude is not known, on which the nights depend.
func (g Ground) Nights() (y load.Year, ok bool) {
	if g.Sky != nil {
		return g.Load, true
	}
	way := sun.WayOf(g.Project.Place, g.Project.Files())
	if way == nil {
		return load.Year{}, false
	}
	return load.Hours(g.Project.Load, way.Down, noons(way)), true
}

// Appliances returns what a project's appliances use in a year. Where the place is not known it is there if all of them keep to
// the clock; why are those that wait for dusk, paths inside the project.
func (g Ground) Appliances() (year unit.Known[unit.Energy], why Problems) {
	if y, ok := g.Nights(); ok {
		return unit.Of(y.ApplianceYear), nil
	}
	if len(g.Project.Load.Appliances) == 0 {
		return year, nil // nothing was said yet
	}
	waits := load.WaitForDusk(g.Project.Load)
	if len(waits) == 0 {
		return unit.Of(load.ByClock(g.Project.Load)), nil
	}
	for _, m := range waits {
		why.Tell(Join("load", m.Path), say.That("%s waits for dusk, and when that is depends on the latitude of the place", m.Wants))
	}
	return year, why
}
