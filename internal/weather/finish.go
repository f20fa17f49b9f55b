package weather

import (
	"math"

	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

func minutes(n int) unit.Duration { return unit.Duration(n) * unit.Minute }

// finish turns the year of steps into hours of the place's clock, works out what the file lacks, and judges it.
func (y *year) finish(t *sheet, rep *Report) (sun.Series, error) {
	offset := t.clock(rep)
	rep.clock = offset
	zone := offset
	if t.zone.Is {
		zone = float64(t.zone.Val)
	}
	shift := y.shift + int(math.Round((offset-zone)/60))
	rep.Shifted = shift%60 != 0 && (y.step == 60 || shift%y.step != 0)
	if rep.Shifted {
		rep.note(true, "The rows begin %s minutes past the hours of the place's clock. Each hour gets its share of the two rows that it meets.", (shift%60+60)%60)
	}
	moved := float64(shift)
	if by := float64(t.move.Val) / 60; by != 0 {
		moved += by
		rep.note(false, "The light of each row is taken %s minutes %s than its time says.", unit.Rounded(math.Abs(by), 3), map[bool]string{true: "later", false: "earlier"}[by > 0])
	}
	if t.energy() {
		for c := ghi; c <= dni; c++ {
			for i := range y.v[c] {
				y.v[c][i] *= 60 / float64(y.step)
			}
		}
	}
	var h [columns][]float64
	cut := partsOf(y.step, moved, t.latitude.Val, t.longitude.Val, offset)
	for c := range columns {
		if y.v[c] != nil {
			switch c {
			case temp:
				h[c] = hourly(y.v[c], y.step, float64(shift), nil)
			case dni:
				h[c] = hourly(y.v[c], y.step, moved, nil) // it does not fall with the sun's height
			default:
				h[c] = hourly(y.v[c], y.step, moved, cut)
			}
		}
	}
	g := sun.NewGeometry(t.latitude.Val, t.longitude.Val, unit.Duration(offset))
	if err := y.beyond(t, &h, g, rep); err != nil {
		return sun.Series{}, err
	}
	y.light(&h, g, rep)
	judge(&h, g, rep)
	t.slip(&h, g, rep)
	t.doubtLight(&h, g, rep)
	t.doubtAir(h[temp], g, rep)
	if err := refuseSky(h, g, rep); err != nil {
		return sun.Series{}, err
	}
	return sun.Series{
		Name: t.name, Source: t.source, Latitude: t.latitude.Val, Longitude: t.longitude.Val, Elevation: t.elevation.Or(0),
		UTCOffset: unit.Duration(offset), Hours: sun.YearHours, GHI: h[ghi], DHI: h[dhi], TAir: h[temp],
	}, nil
}

// clock is the place's standard clock ahead of UTC in seconds: of the file, else of the longitude in whole hours.
func (s *sheet) clock(rep *Report) float64 {
	byLongitude := float64(s.longitude.Val) / (2 * math.Pi) * 86400
	if !s.offset.Is {
		o := math.Round(byLongitude/3600) * 3600
		rep.ask("clock", "The file does not say which clock the place keeps. The longitude gives UTC%s.", say.Of(unit.UTCOffsets, o))
		return o
	}
	o := float64(s.offset.Val)
	off := math.Mod(o-byLongitude+1.5*86400, 86400) - 43200 // −12 … 12 h
	rep.ZoneOff = unit.Duration(off)
	if math.Abs(off) > 2.5*3600 {
		rep.ask("clock", "The clock of the file, UTC%s, is %s away from what its longitude gives. Is the time zone or the sign of the longitude wrong?", say.Of(unit.UTCOffsets, o), say.Time(unit.Duration(math.Abs(off))))
	}
	return o
}

// light sets what is below zero to zero and works out global or diffuse light that the file lacks.
func (y *year) light(h *[columns][]float64, g *sun.Geometry, rep *Report) {
	clip(h, rep)
	rep.Global, rep.Diffuse = "file", "file"
	switch {
	case h[ghi] == nil:
		rep.Global = "direct"
		h[ghi] = make([]float64, sun.YearHours)
		for i := range h[ghi] {
			h[ghi][i] = h[dhi][i] + h[dni][i]*g.Up[i]*g.Lit[i]
		}
		rep.note(false, "The file has no global light on the flat; it was added up from direct and diffuse light.")
	case h[dhi] == nil && h[dni] != nil:
		rep.Diffuse = "direct"
		h[dhi] = make([]float64, sun.YearHours)
		for i := range h[dhi] {
			h[dhi][i] = max(0, h[ghi][i]-h[dni][i]*g.Up[i]*g.Lit[i])
		}
		rep.note(false, "The file has no diffuse light; it is the global less the direct light.")
	case h[dhi] == nil:
		rep.Diffuse = "estimated"
		h[dhi] = make([]float64, sun.YearHours)
		for i := range h[dhi] {
			if g.Extra[i] > 0 {
				h[dhi][i] = h[ghi][i] * sun.DiffuseOfHour(h[ghi][i]/g.Extra[i])
			} else {
				h[dhi][i] = h[ghi][i]
			}
		}
		rep.note(true, "The file has no diffuse light; it was estimated from the clearness of each hour.")
	}
	for i := range h[dhi] {
		if h[dhi][i] > h[ghi][i] {
			if h[dhi][i] > h[ghi][i]+1 { // rounding apart
				rep.DiffuseOver++
			}
			h[dhi][i] = h[ghi][i]
		}
	}
	if rep.DiffuseOver > 0 {
		rep.note(rep.DiffuseOver > 100, "%s hours had more diffuse than global light; they were cut to the global light.", rep.DiffuseOver)
	}
	if rep.DiffuseOver > 1000 {
		rep.ask("columns", "Global and diffuse light look as if their columns were changed over.")
	}
}

// beyond refuses values that no sky gives, by line and column.
func (y *year) beyond(t *sheet, h *[columns][]float64, g *sun.Geometry, rep *Report) error {
	var r Refused
	for c := ghi; c <= dni; c++ {
		for i, v := range y.v[c] {
			if !(v < -50 || v > 1800) || y.line[i] == 0 { // 1361 W/m² stand outside the air; clouds throw a little more for minutes
				continue
			}
			f := fields(t.lines[y.line[i]-1], t.delimiter)
			r.add(t.fault(y.line[i]-1, t.col[c], f, say.That("is %s of %s, more than any sky gives, or a code for missing. Is the unit right?", say.Of(unit.Irradiances, v).To(5), columnNames[c])))
		}
	}
	if n := len(r.Faults) + r.More; n > 100 && h[ghi] != nil { // more than the odd spike: the unit is wrong
		share, _ := clearest(h[ghi], g)
		r = Refused{}
		fits := t.unitsThatFit(share, rep)
		r.add(Fault{Reason: say.That("In %s the light is more than any sky gives. Is its unit right? It is taken as %s.%s", say.Plural(n, "row", "rows"), shownUnit(t.radiation), fitting(fits))})
		if len(fits) > 0 {
			r.Best.RadiationUnit = fits[0]
		}
	}
	return r.orNil()
}

// clip sets light below zero to zero and counts it.
func clip(h *[columns][]float64, rep *Report) {
	for c := ghi; c <= dni; c++ {
		for i, v := range h[c] {
			if v < 0 {
				rep.Negative++
				h[c][i] = 0
			}
		}
	}
	if rep.Negative > 0 {
		rep.note(rep.Negative > 100, "%s values of light were below zero; they were set to zero.", rep.Negative)
	}
}
