package sun

import (
	"fmt"
	"math"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Year makes the plan year of a place: an average one from its twelve means and the seed or from a sky in words and the
// seed, or the hours of a weather file; of several files, those of the year with the middle light. Same input, same year to
// the last digit, in whatever order the files come. On any problem there is no sky.
func Year(place Place, seed uint64, files []*Series) (*Sky, Problems) {
	if f := filesOf(place, files); f != nil {
		s, ps := fromSeries(Middle(f))
		if s != nil && len(f) > 1 {
			s.Made = fmt.Sprintf("hours of %s, the one of %d weather files with the middle light", Middle(f).called(), len(f))
		}
		return s, ps
	}
	return yearOf(place, seed, files, func(c *Climate) *Sky { return c.Sky(seed) })
}

// MadeYear makes year j of the many years of a place, which differ as real years do: made ones, or of several files each in
// turn. One real year is the same each time.
func MadeYear(place Place, seed uint64, j int, files []*Series) (*Sky, Problems) {
	if f := filesOf(place, files); place.Sky == SkyFiles && f != nil {
		return fromSeries(InOrder(f)[j%len(f)])
	} else if f != nil && !isTypical(f[0]) {
		return fromSeries(f[0])
	}
	return yearOf(place, seed, files, func(c *Climate) *Sky { return c.Made(seed, j) })
}

func isTypical(w *Series) bool {
	typical, _ := w.IsTypical()
	return typical
}

// filesOf returns the weather files that a place's sky is known by; none where it is known otherwise.
func filesOf(place Place, files []*Series) []*Series {
	switch {
	case place.Sky == SkyFile && len(files) > 0:
		return files[:1]
	case place.Sky == SkyFiles && len(files) > 0:
		return files
	}
	return nil
}

func yearOf(place Place, seed uint64, files []*Series, draw func(*Climate) *Sky) (*Sky, Problems) {
	_, c, ps := ClimateOf(place, files)
	if len(ps) > 0 {
		return nil, ps
	}
	s := draw(c)
	switch place.Sky {
	case SkyDescribed:
		s.Rough = true
		s.Made = fmt.Sprintf("rough: hours made from a sky described in words, seed %d", seed)
	case SkyFile:
		s.Made = fmt.Sprintf("hours made from the means of the weather file %s, seed %d", files[0].Name, seed)
	}
	return s, nil
}

// ClimateOf prepares the way of the sun and the climate of a place, for drawing many years: from its twelve means, its sky in
// words, or the means of its weather files.
func ClimateOf(place Place, files []*Series) (*Geometry, *Climate, Problems) {
	if f := filesOf(place, files); f != nil {
		if _, ps := fromSeries(f[0]); ps != nil {
			return nil, nil, ps
		}
		g := NewGeometry(f[0].Latitude, f[0].Longitude, f[0].UTCOffset)
		c, ps := NewClimate(g, Means(f), f[0].Elevation)
		return g, c, ps
	}
	latitude, known := place.Latitude.Value()
	if !known {
		return nil, nil, Problems{{"latitude_rad", say.Words("the latitude is not known; the sun's way depends on it")}}
	}
	longitude, offset := clock(place)
	height := place.Elevation.Or(0)
	switch place.Sky {
	case SkyMonthly:
		if place.Monthly == nil {
			return nil, nil, Problems{{"monthly", say.Words("give the twelve monthly means, or choose another way to know the sky")}}
		}
		g := NewGeometry(latitude, longitude, offset)
		c, ps := NewClimate(g, *place.Monthly, height)
		return g, c, ps
	case SkyDescribed:
		words, ok := skies[place.Described]
		if !ok {
			return nil, nil, Problems{{"described", say.Words("say how your sky is, or choose another way to know it")}}
		}
		g := NewGeometry(latitude, longitude, offset)
		c, ps := newClimate(g, describe(g, words, height), height, doubtOfDescribed)
		return g, c, ps
	case SkyFile, SkyFiles:
		return nil, nil, Problems{{"sky", say.Words("there is no weather file in this project yet")}}
	}
	return nil, nil, Problems{{"sky", say.Words("say how the sky is known: by monthly means, in words, or by weather files")}}
}

// WayOf returns the way of the sun over a place, which its light has no part in: that of the first weather file where the sky is
// a file's. It is nil where the latitude is not known.
func WayOf(place Place, files []*Series) *Geometry {
	if f := filesOf(place, files); f != nil {
		return NewGeometry(f[0].Latitude, f[0].Longitude, f[0].UTCOffset)
	}
	latitude, known := place.Latitude.Value()
	if !known {
		return nil
	}
	longitude, offset := clock(place)
	return NewGeometry(latitude, longitude, offset)
}

// clock returns longitude and clock offset of a place. Not known: the offset is that of the longitude's whole-hour zone,
// the longitude is the middle of the offset's zone; with neither, the clock shows local mean time.
func clock(place Place) (unit.Angle, unit.Duration) {
	longitude, there := place.Longitude.Value()
	offset, set := place.UTCOffset.Value()
	const zone = 15 * unit.Degree
	switch {
	case there && !set:
		offset = unit.Duration(math.Round(float64(longitude/zone))) * unit.Hour
	case set && !there:
		longitude = unit.Angle(offset/unit.Hour) * zone
	}
	return longitude, offset
}

// fromSeries takes a weather file's hours as they are. The sun's way is that of the file's own place and clock, which
// its rows follow.
func fromSeries(w *Series) (*Sky, Problems) {
	if len(w.GHI) != Hours || len(w.DHI) != Hours || len(w.TAir) != Hours {
		return nil, Problems{{"sky", say.That("the weather file must have %s hours of global and diffuse light and of air temperature; it has %s, %s and %s",
			Hours, len(w.GHI), len(w.DHI), len(w.TAir))}}
	}
	for h := range Hours {
		for _, column := range [3]struct {
			name      string
			q         unit.Quantity
			val       float64
			low, high float64
		}{{"a global light of", unit.Irradiances, w.GHI[h], 0, 2000}, {"a diffuse light of", unit.Irradiances, w.DHI[h], 0, 2000}, {"an air temperature of", unit.Temperatures, w.TAir[h], -100, 80}} {
			if !(column.val >= column.low && column.val <= column.high) {
				return nil, Problems{{"sky", say.That("the weather file's hour %s has %s %s, outside %s to %s", h, column.name, say.Of(column.q, column.val), say.Limit(column.q, column.low).Up(), say.Limit(column.q, column.high).Down())}}
			}
		}
	}
	s := &Sky{
		GHI: w.GHI, DHI: w.DHI, TAir: w.TAir,
		Geometry: NewGeometry(w.Latitude, w.Longitude, w.UTCOffset),
		Made:     "hours of the weather file " + w.Name,
	}
	if slip, open := w.Slip.Value(); open {
		s.Remarks = append(s.Remarks, slipSay(w.Name, slip))
	}
	return s, nil
}

// slipSay says that the sun of a weather file runs early or late, where its reader did not say why.
func slipSay(name string, late unit.Duration) say.Sentence {
	word, side := "late", "west"
	if late < 0 {
		word, side = "early", "east"
	}
	return say.That("the sun of the weather file %s runs about %s %s, and the reason is not known: panels that face %s are judged too well. Read the file again and answer the question about its times",
		name, say.Time(unit.Duration(math.Abs(float64(late)))).To(2), word, side)
}
