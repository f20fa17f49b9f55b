package model

import (
	"fmt"
	"math"

	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// moreFiles is how many weather files a project may have beside its first.
const moreFiles = 19

// nearby is how far a weather file's place may lie from that of the first, in latitude and longitude.
const nearby = 0.1 * unit.Degree

// checkFiles says which of the further weather files are not of the place and clock of the first, and which two hold one
// year.
func checkFiles(p Project) Problems {
	var ps Problems
	if len(p.Weathers) > moreFiles {
		ps.Tell("weathers", say.That("at most %s weather files beside the first; there are %s", moreFiles, len(p.Weathers)))
		return ps
	}
	if len(p.Weathers) > 0 && p.Weather == nil {
		ps.Add("weather", "the first weather file is missing: weathers holds further ones of the same place")
		return ps
	}
	held := map[unit.Count]string{}
	note := func(w *sun.Series, path string) {
		if !w.Year.Is {
			return
		}
		if _, twice := held[w.Year.Val]; twice {
			ps.Tell(path, say.That("two files hold %s", unit.CalendarYear(int(w.Year.Val))))
		}
		held[w.Year.Val] = path
	}
	if p.Weather != nil {
		note(p.Weather, "weather")
	}
	for i, w := range p.Weathers {
		path := fmt.Sprintf("weathers[%d]", i)
		if w == nil {
			ps.Add(path, "there is no weather file here")
			continue
		}
		switch first := p.Weather; {
		case math.Abs(float64(w.Latitude-first.Latitude)) > float64(nearby):
			ps.Tell(path, say.That("this file is for %s, the first for %s", latitudeText(w.Latitude), latitudeText(first.Latitude)))
		case math.Abs(float64(w.Longitude-first.Longitude)) > float64(nearby):
			ps.Tell(path, say.That("this file is for %s, the first for %s", longitudeText(w.Longitude), longitudeText(first.Longitude)))
		case w.UTCOffset != first.UTCOffset:
			ps.Tell(path, say.That("this file's clock is %s h ahead of UTC, that of the first %s h", hoursText(w.UTCOffset), hoursText(first.UTCOffset)))
		}
		note(w, path)
	}
	return ps
}

func latitudeText(a unit.Angle) string  { return compass(a, "N", "S") }
func longitudeText(a unit.Angle) string { return compass(a, "E", "W") }

func compass(a unit.Angle, positive, negative string) string {
	if a < 0 {
		positive = negative
	}
	return unit.Fixed(math.Abs(a.Degrees()), 1) + "°" + unit.Space + positive
}

func hoursText(d unit.Duration) string { return unit.Rounded(float64(d/unit.Hour), 4) }
