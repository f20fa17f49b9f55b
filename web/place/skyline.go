package place

import (
	"fmt"

	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// outlineView is the shading outline: what it hides, as a drawing and as a table, and beside it the tilts of the year.
type outlineView struct {
	Brief, Picture string
	Known          bool
	Rows           [][]string
	URL            string // of its points
	CSV            string
	Season         seasonView
}

// shown are the days whose way of the sun stands over the outline.
var shown = []struct {
	name  string
	month int
}{{"June", 5}, {"March", 2}, {"December", 11}}

func outlineViewOf(g model.Ground, light sun.Light, sys unit.System, at placeAt) outlineView {
	v := outlineView{URL: at.card(partOutline), Brief: "not known, counted as free"}
	place := g.Project.Place
	v.Known = len(place.Horizon) > 0
	for _, h := range place.Horizon {
		v.Rows = append(v.Rows, []string{unit.Angles.Format(float64(h.Azimuth), sys), unit.Angles.Format(float64(h.Altitude), sys)})
	}
	if g.Sky == nil {
		return v
	}
	way := g.Sky.Geometry
	s := draw.Skyline{Outline: outlineOf(place, way.Latitude), Points: pointsOf(place, way.Latitude), North: way.Latitude < 0}
	for _, one := range shown {
		s.Days = append(s.Days, draw.SkyDay{Name: one.name, Path: pathOf(way, middleDays[one.month])})
	}
	v.Picture, v.CSV = s.Draw(), at.url+"/outline.csv"
	tilt, azimuth := sun.FacingEquator(way.Latitude)
	if v.Known {
		free := place
		free.Horizon = nil
		without := sun.PlaneOf(way, free, sun.Face{Tilt: tilt, Azimuth: azimuth}).Light(g.Sky)
		v.Brief = hiddenSay(light.Plane, without.Plane)
	}
	v.Season = seasonViewOf(g, sys, at)
	return v
}

// outlineNumbers are the points of the outline, and the way of the sun over it.
func outlineNumbers(g model.Ground) page.SheetOfNumbers {
	t := page.SheetOfNumbers{Name: "shading-outline", Head: []string{"of", "direction clockwise from north, °", "height, °"}}
	add := func(of string, azimuth, altitude unit.Angle) {
		t.Rows = append(t.Rows, []any{of, azimuth.Degrees(), altitude.Degrees()})
	}
	for _, h := range g.Project.Place.Horizon {
		add("outline", h.Azimuth, h.Altitude)
	}
	for _, one := range shown {
		for _, d := range g.Sky.Geometry.Path(middleDays[one.month], pathSteps) {
			add("sun in "+one.name, d.Azimuth, d.Altitude)
		}
	}
	return t
}

// hiddenSay tells how much of the light on the panel the outline hides, of the month that loses most and of the year.
func hiddenSay(with, without []float64) string {
	a, b := dayMeans(with), dayMeans(without)
	most, share := 0, 0.0
	for m := range a {
		if b[m] > 0 && 1-a[m]/b[m] > share {
			most, share = m, 1-a[m]/b[m]
		}
	}
	year := 1 - page.Sum(with)/max(page.Sum(without), 1e-9)
	if share < 0.005 {
		return "hides less than 1 % of the light"
	}
	return fmt.Sprintf("hides %s of the light of %s, %s of the year’s", unit.WholePercent(share), form.MonthNames[most], unit.WholePercent(year))
}
