package weather

import (
	"math"
	"slices"

	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Fit is one way to take the stamps of a file, and by how much the sun of the file would then run late.
type Fit struct {
	Stamp string                    // start, middle, end
	Zone  unit.Known[unit.Duration] // clock of the stamps; not known is the place's own
	Late  unit.Duration
}

// late is the slip of the sun from which on it is asked about, in minutes. No measured year that was looked at runs further
// off without a slip (see lateOf), and ten minutes move a panel that faces west by more than one part in a hundred.
const late = 5.0

// slip tells how late the sun of the file runs, and asks where that is more than chance. A slip of half an hour hides on a
// plane to the south and shows on one to the east or west.
func (s *sheet) slip(h *[columns][]float64, g *sun.Geometry, rep *Report) {
	l, ok := lateOf(h[ghi], g)
	if !ok {
		return
	}
	rep.Slip = unit.Of(unit.Duration(l.year * 60))
	rep.Fits = s.fits(rep)
	if s.move.Is && s.move.Val == 0 { // left as it is, by the reader's own word
		return
	}
	if l.seasonal() {
		rep.Summer = summerOf(h[ghi], g, l)
		rep.ask("daylight", "From about %s to %s the sun of this file runs about an hour later than in the other months. Do the rows keep daylight saving time?", DayOfYear(rep.Summer[0]), DayOfYear(rep.Summer[1]))
	}
	if math.Abs(l.year) < late {
		return
	}
	word, side := "later", "west"
	if l.year < 0 {
		word, side = "earlier", "east"
	}
	rep.ask("slip", "On clear days the sun of this file runs about %s %s than the sun of the sky. Are the stamps at the start, the middle or the end of the hour, and is the time zone right? As it is, a panel that faces %s is judged %s.",
		say.Time(unit.Duration(math.Abs(l.year)*60)).To(2), word, side, tooWell(h, g, l.year))
}

// tooWell says by how much a slip flatters a panel that slopes 30° to the west, or to the east for a sun that is early;
// no share where the slip is so large that it means nothing.
func tooWell(h *[columns][]float64, g *sun.Geometry, minutes float64) say.Sentence {
	plain := say.Words("too well")
	if math.Abs(minutes) > 90 {
		return plain
	}
	face := sun.Face{Tilt: 30 * unit.Degree, Azimuth: 270 * unit.Degree}
	if minutes < 0 {
		face.Azimuth = 90 * unit.Degree
	}
	sky := &sun.Sky{GHI: h[ghi], DHI: h[dhi]}
	on := func(g *sun.Geometry) (sum float64) {
		for _, x := range sun.PlaneOf(g, sun.Place{}, face).Light(sky).Plane {
			sum += x
		}
		return sum
	}
	right := on(sun.NewGeometry(g.Latitude, g.Longitude, g.UTCOffset+unit.Duration(minutes*60))) // the file's own clock
	if right <= 0 {
		return plain
	}
	return say.That("about %s too well", say.Share(unit.Ratio(max(0, on(g)/right-1))))
}

// fits are the ways to take the stamps, the one with the smallest slip first. Each moves the light by whole parts of the
// interval, or by the hours between two clocks, so none needs the file again.
func (s *sheet) fits(rep *Report) []Fit {
	if s.when.none() {
		return nil
	}
	now := float64(rep.Slip.Val)
	if s.move.Is {
		now -= float64(s.move.Val) // as without it
	}
	step := float64(rep.Step)
	zones := []unit.Known[unit.Duration]{s.zone}
	switch own := rep.clock; {
	case s.zoned: // every stamp says its clock
	case !s.zone.Is && own != 0:
		zones = append(zones, unit.Of(unit.Duration(0)))
	case s.zone.Is && float64(s.zone.Val) != own:
		zones = append(zones, unit.Of(unit.Duration(own)))
	}
	var out []Fit
	for _, z := range zones {
		by := 0.0
		if z != s.zone {
			by = float64(s.zone.Or(unit.Duration(rep.clock)) - z.Or(unit.Duration(rep.clock)))
		}
		for _, stamp := range stamps {
			out = append(out, Fit{stamp, z, unit.Duration(now + by - (back(stamp, step) - back(s.stamp, step)))})
		}
	}
	slices.SortStableFunc(out, func(a, b Fit) int { return compare(math.Abs(float64(a.Late)), math.Abs(float64(b.Late))) })
	return out
}

// stamps are the places in its interval at which a stamp may stand.
var stamps = [3]string{"start", "middle", "end"}

// back is how far before its stamp an interval begins.
func back(stamp string, step float64) float64 {
	return map[string]float64{"start": 0, "middle": step / 2, "end": step}[stamp]
}

// bestStamp is the place of the stamps in their interval that leaves the smallest slip, with the clock as it is.
func (s *sheet) bestStamp(rep *Report) string {
	for _, f := range rep.Fits {
		if f.Zone == s.zone {
			return f.Stamp
		}
	}
	return s.stamp
}

// Way says the fit in words: "the time stands at the end of its hour and the rows are in UTC".
func (f Fit) Way(own unit.Known[unit.Duration], step unit.Duration) string {
	text := "the time stands at the " + f.Stamp + " of its " + interval(step)
	switch {
	case f.Zone == own:
	case !f.Zone.Is:
		text += " and the rows keep the place's clock"
	default:
		text += " and the rows keep the clock UTC" + unit.UTCOffsets.Format(float64(f.Zone.Val), unit.Metric)
	}
	return text
}

func interval(step unit.Duration) string {
	switch step {
	case unit.Hour:
		return "hour"
	case unit.Hour / 2:
		return "half-hour"
	}
	return "interval"
}
