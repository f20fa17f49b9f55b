package place

import (
	"fmt"
	"math"
	"slices"

	"duskweight/internal/model"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// PlaceForm is where the panels stand and how its sky is known. The twelve means appear once there are any.
func PlaceForm(p *model.Project) []form.Part[model.Project] {
	table := []form.Part[model.Project]{
		form.Heading("Where", "", whereInputs()...),
		form.Heading("Sky", "", skyInput(), describedInput(), albedoInput()),
	}
	table = append(table, monthInputs(p)...)
	return append(table, outlineRows(), form.Heading("Snow", "", snowInputs()...), indoorInputs(), form.Heading("Project", "", projectInputs()...))
}

func whereInputs() []form.Part[model.Project] {
	type m = model.Project
	return []form.Part[m]{
		form.Text("place.name", "Place", func(p *m) *string { return &p.Place.Name }),
		latitudeInput(),
		form.Number("place.longitude_rad", "Longitude", unit.Longitudes, func(p *m) *unit.Known[unit.Angle] { return &p.Place.Longitude }, form.Hint[m]("east positive")),
		form.Number("place.elevation_m", "Height above the sea", unit.Elevations, func(p *m) *unit.Known[unit.Length] { return &p.Place.Elevation }),
		form.Number("place.record_low_c", "Lowest temperature ever measured", unit.Temperatures, func(p *m) *unit.Known[unit.Celsius] { return &p.Place.RecordLow }),
		form.Number("place.utc_offset_s", "Standard time ahead of UTC", unit.UTCOffsets, func(p *m) *unit.Known[unit.Duration] { return &p.Place.UTCOffset })}
}

func latitudeInput() form.Part[model.Project] {
	return form.Number("place.latitude_rad", "Latitude", unit.Latitudes, func(p *model.Project) *unit.Known[unit.Angle] { return &p.Place.Latitude }, form.Hint[model.Project]("north positive, such as 49.6; south −33.9"))
}

func skyInput() form.Part[model.Project] {
	return form.Word("place.sky", "Source of the sunlight", func(p *model.Project) *sun.SkyKind { return &p.Place.Sky })
}

func describedInput() form.Part[model.Project] {
	return form.Word("place.described", "Your sky in words", func(p *model.Project) *sun.DescribedSky { return &p.Place.Described }, form.Hint[model.Project]("a description in words is rough, and is marked as rough"))
}

func albedoInput() form.Part[model.Project] {
	return form.Number("place.albedo", "Sunlight that the ground reflects", unit.Percents, func(p *model.Project) *unit.Known[unit.Ratio] { return &p.Place.Albedo }, form.Hint[model.Project]("if empty: 20 %"))
}

// monthInputs are the twelve means as a table, and how single days differ; nothing where there are none.
func monthInputs(p *model.Project) []form.Part[model.Project] {
	if p.Place.Monthly == nil {
		return nil
	}
	return []form.Part[model.Project]{
		{Group: &form.Group[model.Project]{Title: "Mean of each month", Shape: form.ShapeMonths, Fold: true, Brief: sunOfTheYear, Parts: []form.Part[model.Project]{
			{Group: months("Sun on the flat, a day", "ghi_j_m2_day", unit.Irradiations, func(p *model.Project, i int) *unit.Irradiation { return &p.Place.Monthly.GHI[i] })},
			{Group: months("Air", "t_mean_c", unit.Temperatures, func(p *model.Project, i int) *unit.Celsius { return &p.Place.Monthly.TMean[i] })},
			{Group: months("Warmest", "t_day_max_c", unit.Temperatures, func(p *model.Project, i int) *unit.Celsius { return &p.Place.Monthly.TMax[i] })},
			{Group: months("Coldest", "t_day_min_c", unit.Temperatures, func(p *model.Project, i int) *unit.Celsius { return &p.Place.Monthly.TMin[i] })},
			{Group: spreads()}}}},
		singleDays(p)}
}

// snowInputs are how much snow falls in each month, and how often.
func snowInputs() []form.Part[model.Project] {
	return []form.Part[model.Project]{
		form.Twelve("place.snow_m", "Fresh snow of each month", unit.Lengths, func(p *model.Project) **[12]unit.Length { return &p.Place.SnowFall }, form.Hint[model.Project]("12 numbers, January first, 0 for none")),
		form.Twelve("place.snow_events", "Snowfalls of each month", unit.Counts, func(p *model.Project) **[12]unit.Count { return &p.Place.SnowTimes }, form.Hint[model.Project]("12 numbers; if empty: one snowfall a month, the careful count")),
	}
}

func outlineRows() form.Part[model.Project] {
	return form.Rows("place.horizon", "Shading outline", "point", 72, func(p *model.Project) *[]sun.Horizon { return &p.Place.Horizon }, sun.Horizon{},
		form.Plain("azimuth_rad", "Direction", unit.Angles, func(h *sun.Horizon) *unit.Angle { return &h.Azimuth }),
		form.Plain("altitude_rad", "Height", unit.Angles, func(h *sun.Horizon) *unit.Angle { return &h.Altitude }))
}

func projectInputs() []form.Part[model.Project] {
	return []form.Part[model.Project]{
		form.Text("name", "Name of the project", func(p *model.Project) *string { return &p.Name }),
		form.Text("currency", "Money", func(p *model.Project) *string { return &p.Currency })}
}

// months is one value for each month.
func months[X unit.Number](title, key string, q unit.Quantity, at func(p *model.Project, i int) *X) *form.Group[model.Project] {
	g := &form.Group[model.Project]{Title: title}
	for i, name := range form.MonthNames {
		g.Parts = append(g.Parts, form.Plain(fmt.Sprintf("place.monthly.%s[%d]", key, i), name, q, func(p *model.Project) *X { return at(p, i) }, form.Hint[model.Project]("")))
	}
	return g
}

// spreads is how much the clearness of single days spreads in each month.
func spreads() *form.Group[model.Project] {
	g := &form.Group[model.Project]{Title: "Spread of the days"}
	for i, name := range form.MonthNames {
		g.Parts = append(g.Parts, form.Number(fmt.Sprintf("place.monthly.kt_sd[%d]", i), name, unit.Ratios, func(p *model.Project) *unit.Known[unit.Ratio] { return &p.Place.Monthly.KTSd[i] }, form.Hint[model.Project]("")))
	}
	return g
}

// singleDays is how the days differ: how one spreads round the mean of its month, and how much it is like the day before.
func singleDays(p *model.Project) form.Part[model.Project] {
	spread, lag := whereEmpty(p)
	return form.Heading("Single days", "The spread of the days shows how much one day differs from the next. It is the standard deviation of the share of light that the air lets through."+spread,
		form.Number("place.monthly.kt_lag1", "Likeness of a day to the day before", unit.Ratios, func(p *model.Project) *unit.Known[unit.Ratio] { return &p.Place.Monthly.KTLag1 },
			form.Hint[model.Project]("0: not at all, 1: always the same weather"+lag)))
}

// whereEmpty says what stands for an empty spread and an empty likeness; nothing where all are known: it needs the way of
// the sun over the year.
func whereEmpty(p *model.Project) (spread, lag string) {
	m := p.Place.Monthly
	if m.KTLag1.Is && !slices.ContainsFunc(m.KTSd[:], func(k unit.Known[unit.Ratio]) bool { return !k.Is }) {
		return "", ""
	}
	usual, like := sun.Usual(p.Place)
	low, high := math.Inf(1), 0.0
	for _, u := range usual {
		if u.Is {
			low, high = min(low, float64(u.Val)), max(high, float64(u.Val))
		}
	}
	if high > 0 {
		spread = fmt.Sprintf(" If empty, it is what is usual for this latitude, light and air: %s to %s. Single places lie 17 %% beside it.", unit.Fixed(low, 2), unit.Fixed(high, 2))
	}
	if like.Is {
		lag = "; if empty: " + unit.Fixed(float64(like.Val), 2) + ", usual for this light"
	}
	return spread, lag
}

// sunOfTheYear tells the poorest and the richest month.
func sunOfTheYear(p *model.Project, sys unit.System) string {
	return page.Extent(unit.Irradiations, p.Place.Monthly.GHI[:], sys) + " a day"
}
