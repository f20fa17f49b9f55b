package web

import (
	"fmt"
	"slices"

	"duskweight/internal/model"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// placeForm is where the panels stand and how its sky is known. The twelve means appear once there are any.
func placeForm(p *model.Project) []part[model.Project] {
	type m = model.Project
	form := []part[m]{
		heading("Where", "",
			text("place.name", "Place", func(p *m) *string { return &p.Place.Name }),
			number("place.latitude_rad", "Latitude", unit.Latitudes, func(p *m) *unit.Known[unit.Angle] { return &p.Place.Latitude }, hint[m]("north positive, such as 49.6; south −33.9")),
			number("place.longitude_rad", "Longitude", unit.Longitudes, func(p *m) *unit.Known[unit.Angle] { return &p.Place.Longitude }, hint[m]("east positive")),
			number("place.elevation_m", "Height above the sea", unit.Elevations, func(p *m) *unit.Known[unit.Length] { return &p.Place.Elevation }),
			number("place.utc_offset_s", "Standard time ahead of UTC", unit.UTCOffsets, func(p *m) *unit.Known[unit.Duration] { return &p.Place.UTCOffset })),
		heading("Sky", "",
			word("place.sky", "Known by", func(p *m) *string { return &p.Place.Sky }),
			word("place.described", "How is your sky", func(p *m) *string { return &p.Place.Described }, hint[m]("in words: rough, and marked so")),
			number("place.albedo", "Light the ground throws back", unit.Percents, func(p *m) *unit.Known[unit.Ratio] { return &p.Place.Albedo }, hint[m]("empty counts as 20 %"))),
	}
	if p.Place.Monthly != nil {
		form = append(form,
			part[m]{group: &group[m]{title: "Mean of each month", shape: shapeMonths, fold: true, brief: sunOfTheYear, parts: []part[m]{
				{group: months("Sun on the flat, a day", "ghi_j_m2_day", unit.Irradiations, func(p *model.Project, i int) *unit.Irradiation { return &p.Place.Monthly.GHI[i] })},
				{group: months("Air", "t_mean_c", unit.Temperatures, func(p *model.Project, i int) *unit.Celsius { return &p.Place.Monthly.TMean[i] })},
				{group: months("Warmest", "t_day_max_c", unit.Temperatures, func(p *model.Project, i int) *unit.Celsius { return &p.Place.Monthly.TMax[i] })},
				{group: months("Coldest", "t_day_min_c", unit.Temperatures, func(p *model.Project, i int) *unit.Celsius { return &p.Place.Monthly.TMin[i] })}}}})
	}
	return append(form,
		rows("place.horizon", "Skyline", "point", 72, func(p *m) *[]sun.Horizon { return &p.Place.Horizon }, sun.Horizon{},
			plain("azimuth_rad", "Direction", unit.Angles, func(h *sun.Horizon) *unit.Angle { return &h.Azimuth }),
			plain("altitude_rad", "Height", unit.Angles, func(h *sun.Horizon) *unit.Angle { return &h.Altitude })),
		indoorInputs(),
		heading("Project", "",
			text("name", "Name of the project", func(p *m) *string { return &p.Name }),
			text("currency", "Money", func(p *m) *string { return &p.Currency })))
}

// months is one value for each month.
func months[X unit.Number](title, key string, q unit.Quantity, at func(p *model.Project, i int) *X) *group[model.Project] {
	g := &group[model.Project]{title: title}
	for i, name := range monthNames {
		g.parts = append(g.parts, plain(fmt.Sprintf("place.monthly.%s[%d]", key, i), name, q, func(p *model.Project) *X { return at(p, i) }, hint[model.Project]("")))
	}
	return g
}

// sunOfTheYear tells the poorest and the richest month.
func sunOfTheYear(p *model.Project, sys unit.System) string {
	ghi := p.Place.Monthly.GHI[:]
	return unit.Irradiations.Number(float64(slices.Min(ghi)), sys) + " to " + unit.Irradiations.Format(float64(slices.Max(ghi)), sys) + " a day"
}

var monthNames = [12]string{"January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"}
