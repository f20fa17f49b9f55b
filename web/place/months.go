package place

import (
	"fmt"
	"math"
	"strings"

	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/search"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// yearView is the first view of the page: the poorest month in a sentence, and twelve months on one scale.
type yearView struct {
	Headline, Under string
	Where, Tilt     string // addresses of their cards
	Months          []monthView
	Key             []string
	Outline         bool // it is known
	Lead            bool // its sentence is the title of the page
	Spread          string
}

// monthView is one month: its picture and its figures in words.
type monthView struct {
	Name, Picture, Night, Say string
	Poorest                   bool
	Down                      bool // the sun does not rise in the middle of the month
}

// pathSteps is how many pieces the way of the sun over a day is drawn in.
const pathSteps = 28

// middleDays are the middles of the months, as days of the year, 0 for 1 January.
var middleDays = func() (out [12]int) {
	day := 0
	for m, days := range page.MonthDays {
		out[m] = day + days/2
		day += days
	}
	return out
}()

// yearViewOf prints the months of a place. light is what falls on its panel, W/m² in each hour.
func yearViewOf(g model.Ground, light sun.Light, sys unit.System, at placeAt) yearView {
	v := yearView{Where: at.card(partWhere), Lead: at.known}
	if g.Sky == nil {
		v.Headline = "Where is your home, and how is the sky there?"
		for m := range 12 {
			v.Months = append(v.Months, monthView{Name: form.MonthNames[m][:3], Picture: draw.MonthSky{}.Draw()})
		}
		return v
	}
	place, means := g.Project.Place, dayMeans(light.Plane)
	low, high, of := daySpread(g)
	if of != "" {
		v.Spread = "kWh/m² a day on the panel; 8 of 10 days " + of + " lie within the line"
	}
	top := 0.0
	for m := range 12 {
		top = max(top, means[m], high[m])
	}
	outline := outlineOf(place, g.Sky.Geometry.Latitude)
	v.Outline = len(outline) > 0
	poorest := 0
	for m := range 12 {
		if means[m] < means[poorest] {
			poorest = m
		}
	}
	nights := nightHours(g)
	var paths [12][]draw.SkyPoint
	for m := range 12 {
		paths[m] = pathOf(g.Sky.Geometry, middleDays[m])
	}
	scale := scaleOf(paths)
	for m, path := range paths {
		one := monthView{Name: form.MonthNames[m][:3], Night: unit.Fixed(nights[m], 1) + unit.Space + "h", Poorest: m == poorest}
		one.Picture = draw.MonthSky{Path: path, Outline: outline, Sky: scale, Mean: means[m], Low: low[m], High: high[m], Top: top, Value: kilowattHours(means[m]), Night: nights[m], Known: true}.Draw()
		one.Say = unit.Irradiations.Format(means[m]*3.6e6, sys) + " a day on the panel"
		if high[m] > 0 {
			one.Say += fmt.Sprintf(", 8 of 10 days %s to %s", unit.Irradiations.Number(low[m]*3.6e6, sys), unit.Irradiations.Number(high[m]*3.6e6, sys))
		}
		if len(path) == 0 {
			one.Down = true
		}
		v.Months = append(v.Months, one)
	}
	v.Headline = poorestSay(form.MonthNames[poorest], means[poorest], nights[poorest])
	tilt, _ := sun.FacingEquator(g.Sky.Geometry.Latitude)
	v.Under = strings.Join(append(whereSay(place, g.Sky.Geometry, sys), "on a panel at "+unit.Angles.Format(float64(tilt), sys)+" facing "+noonWay(g.Sky.Geometry.Latitude)), ", ")
	return v
}

// poorestSay is the sentence of the page, from kWh/m² a day and hours.
func poorestSay(month string, mean, night float64) string {
	if mean < 0.005 {
		return fmt.Sprintf("In %s the sun stays down: panels bring nothing, and the night lasts %s hours.", month, unit.Rounded(night, 2))
	}
	return fmt.Sprintf("%s is your poorest month: %s kWh/m² a day, a night of %s hours.", month, kilowattHours(mean), unit.Rounded(night, 2))
}

// kilowattHours prints the light of a day to a tenth, and to a hundredth where it is less than one.
func kilowattHours(x float64) string {
	if x < 0.995 {
		return unit.Fixed(x, 2)
	}
	return unit.Fixed(x, 1)
}

// whereSay are name and place, as far as they are known.
func whereSay(place sun.Place, g *sun.Geometry, sys unit.System) (out []string) {
	if place.Name != "" {
		out = append(out, form.Clip(place.Name, page.PaperName))
	}
	if g.Latitude < 0 {
		out = append(out, unit.Angles.Format(-float64(g.Latitude), sys)+" south")
	} else {
		out = append(out, unit.Angles.Format(float64(g.Latitude), sys)+" north")
	}
	if h, ok := place.Elevation.Value(); ok {
		out = append(out, unit.Elevations.Format(float64(h), sys)+" above the sea")
	}
	return out
}

// scaleOf is the piece of the sky in which the sun moves in these months, with a little room at the sides.
func scaleOf(paths [12][]draw.SkyPoint) (s draw.SkyScale) {
	for _, path := range paths {
		for _, at := range path {
			s.Half, s.Up = max(s.Half, 1.06*math.Abs(at.East)), max(s.Up, at.Up)
		}
	}
	s.Half = min(s.Half, math.Pi)
	return s
}

// noonWay is where the sun stands at noon, for most of the year.
func noonWay(latitude unit.Angle) string {
	if latitude < 0 {
		return "north"
	}
	return "south"
}

// eastOf is a direction as it is drawn: south of the equator north stands in the middle.
func eastOf(azimuth unit.Angle, latitude unit.Angle) float64 {
	middle := math.Pi
	if latitude < 0 {
		middle = 0
	}
	return math.Remainder(float64(azimuth)-middle, 2*math.Pi)
}

// pathOf is the way of the sun on a day as it is drawn.
func pathOf(g *sun.Geometry, day int) (out []draw.SkyPoint) {
	for _, d := range g.Path(day, pathSteps) {
		out = append(out, draw.SkyPoint{East: eastOf(d.Azimuth, g.Latitude), Up: float64(d.Altitude)})
	}
	return out
}

// outlineOf is the shading outline as it is drawn, from one edge of the sky to the other; nothing where it is not known.
func outlineOf(place sun.Place, latitude unit.Angle) []draw.SkyPoint {
	if len(place.Horizon) == 0 {
		return nil
	}
	behind := unit.Angle(0) // the direction of both edges
	if latitude < 0 {
		behind = math.Pi
	}
	edge := float64(place.Outline()(behind))
	out := append([]draw.SkyPoint{{East: -math.Pi, Up: edge}}, pointsOf(place, latitude)...)
	return append(out, draw.SkyPoint{East: math.Pi, Up: edge})
}

// pointsOf are the points of the outline as they are drawn, from left to right.
func pointsOf(place sun.Place, latitude unit.Angle) []draw.SkyPoint {
	var out []draw.SkyPoint
	for _, h := range place.Horizon {
		one := draw.SkyPoint{East: eastOf(h.Azimuth, latitude), Up: float64(h.Altitude)}
		i := len(out)
		for i > 0 && out[i-1].East > one.East {
			i--
		}
		out = append(out[:i], append([]draw.SkyPoint{one}, out[i:]...)...)
	}
	return out
}

// daySpread is between which values, kWh/m², eight of ten days of each month lie on the panel, and of what they are the days;
// nothing where the sky is only described in words. Of several files it takes the days of all.
func daySpread(g model.Ground) (low, high [12]float64, of string) {
	place := g.Project.Place
	if g.Sky.Rough {
		return low, high, ""
	}
	tilt, azimuth := sun.FacingEquator(g.Sky.Geometry.Latitude)
	plane := sun.PlaneOf(g.Sky.Geometry, place, sun.Face{Tilt: tilt, Azimuth: azimuth})
	skies, of := []*sun.Sky{g.Sky}, "of an average year"
	switch files := g.Project.Files(); {
	case place.Sky == sun.SkyFiles && len(files) > 1:
		skies, of = nil, fmt.Sprintf("of the %d files", len(files))
		for _, w := range files {
			skies = append(skies, &sun.Sky{GHI: w.GHI, DHI: w.DHI}) // within 0.1° and of one clock: one way of the sun
		}
	case place.Sky == sun.SkyFile:
		of = "of the file"
	}
	var days [12][]float64
	light := sun.Light{Plane: make([]float64, sun.Hours), Cells: make([]float64, sun.Hours)}
	for _, sky := range skies {
		plane.Fill(sky, light)
		hour := 0
		for m, n := range page.MonthDays {
			for range n {
				days[m] = append(days[m], page.Sum(light.Plane[hour:hour+24])/1000)
				hour += 24
			}
		}
	}
	for m := range days {
		s := search.SpreadOf(days[m])
		low[m], high[m] = s.Bad, s.Good
	}
	return low, high, of
}

// nightHours is how long the sun is down on a mean day of each month.
func nightHours(g model.Ground) (out [12]float64) {
	hour := 0
	for m, days := range page.MonthDays {
		for range 24 * days {
			if g.Sky.Geometry.Down[hour] {
				out[m] += 1 / float64(days)
			}
			hour++
		}
	}
	return out
}
