package place

import (
	"fmt"
	"io"
	"math"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"duskweight/internal/draw"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
	"duskweight/internal/weather"
	"duskweight/web/form"
	"duskweight/web/page"
)

// fill sets what is not known.
func fill[T unit.Number](to *unit.Known[T], v T) {
	if !to.Is {
		*to = unit.Of(v)
	}
}

// weatherView is the page Weather file, ready to print.
type weatherView struct {
	URL, Back, Revision string
	Now                 string // the file that the project has
	File, Token         string
	Faults              []string
	More                string
	Asks                bool // only columns, units or place are to be named; nothing is wrong with the file
	Rows                [][]string
	Mapping             *mapView
	Year                *weatherYear
	Slip                *slipView
	Reading             *readingView
	Many                *manyView
}

// weatherYear is a year that was read in full.
type weatherYear struct {
	Headline string
	From     string
	Notes    []page.FlagView
	Facts    []page.FactView
	Picture  page.PictureView
	Days     [][]string
	Typical  unit.Answer // whether it is a typical year, as the file says; empty where it does not
}

// mapView is the form on which the columns of a table are named.
type mapView struct {
	Cells  [][]string // the first rows as they stand in the file
	Heads  []string
	Groups []mapGroup
	Units  string // the system that its fields are printed in
}

type mapGroup struct {
	Title, Hint string
	Fields      []mapField
}

// mapField is one select, or a text where it has no options.
type mapField struct {
	Name, Label, Value, Hint string
	Options                  []form.Option
}

// faultLines tells every fault in a line.
func faultLines(r *weather.Refused, sys unit.System) (lines []string, more string) {
	for _, f := range r.Faults {
		lines = append(lines, form.Sentence(plainText(f.In(sys), 400)))
	}
	if r.More > 0 {
		more = fmt.Sprintf("And %d more.", r.More)
	}
	return lines, more
}

func previewRows(p weather.Preview, sys unit.System) (rows [][]string) {
	light := func(k unit.Known[unit.Irradiance]) string {
		if !k.Is {
			return "–"
		}
		return unit.Irradiances.Number(float64(k.Val), sys)
	}
	for _, x := range p.Rows {
		air := "–"
		if x.TAir.Is {
			air = unit.Temperatures.Format(float64(x.TAir.Val), sys)
		}
		when := x.When
		if when == "" {
			when = "in order"
		}
		rows = append(rows, []string{unit.Thousands(x.Line), when, light(x.GHI), light(x.DHI), light(x.DNI), air})
	}
	return rows
}

// weatherYearOf says in words what was read and what was done to it.
func weatherYearOf(y sun.Series, r weather.Report, place sun.Place, sys unit.System) *weatherYear {
	v := &weatherYear{
		Headline: "A year of this file brings " + unit.YearIrradiations.Format(float64(r.GHI), sys) + " on the flat.",
		From: fmt.Sprintf("%s: latitude %s, longitude %s, %s, clock UTC%s.", y.Name, unit.Latitudes.Format(float64(y.Latitude), sys), unit.Longitudes.Format(float64(y.Longitude), sys),
			knownOr(r.Mapping.Elevation, func(h unit.Length) string { return unit.Elevations.Format(float64(h), sys) + " above the sea" }, "height not known"), unit.UTCOffsets.Format(float64(y.UTCOffset), sys)),
	}
	switch typical, known := y.IsTypical(); {
	case typical:
		v.Typical = unit.Yes
	case known:
		v.Typical = unit.No
	}
	for _, warn := range []bool{true, false} {
		for _, n := range r.Notes {
			if n.Warning == warn {
				v.Notes = append(v.Notes, page.FlagView{Say: form.Sentence(plainText(n.Say.In(sys), 400))})
			}
		}
	}
	if say, far := farSay(y, place, sys); far {
		v.Notes = slices.Insert(v.Notes, 0, page.FlagView{Say: say})
	}
	fact := func(id, label, value string) {
		v.Facts = append(v.Facts, page.FactView{ID: id, Label: label, Value: value})
	}
	fact("rows", "Rows, one every "+strconv.Itoa(int(math.Round(float64(r.Step)/60)))+" minutes", unit.Thousands(r.Rows))
	fact("filled", "Hours filled from their neighbours", filled(r.Gaps))
	fact("leap", "29 February", map[bool]string{true: "left out", false: "not in the file"}[r.LeapDay])
	fact("zone", "Clock against the longitude", unit.Rounded(float64(r.ZoneOff)/3600, 2)+" h")
	fact("closure", "Global less direct and diffuse (root mean square)", knownOr(r.Closure, func(x unit.Irradiance) string { return unit.Irradiances.Format(float64(x), sys) }, "no direct light to compare"))
	fact("above", "Hours above the light outside the air", unit.Thousands(r.AboveSky))
	fact("below", "Values below zero, set to zero", unit.Thousands(r.Negative))
	fact("slip", "Sun of the file late by", knownOr(r.Slip, func(x unit.Duration) string { return say.Time(x).To(2).In(sys) }, "too few clear days to tell"))
	fact("diffuse", "Diffuse light", map[string]string{"file": "from the file", "direct": "global less direct", "estimated": "estimated"}[r.Diffuse]+", "+unit.YearIrradiations.Format(float64(r.DHI), sys))
	fact("air", "Mean air temperature", unit.Temperatures.Format(float64(r.TMean), sys))
	const week = 7 * 24
	v.Picture = page.PictureView{Title: "The first week", Say: "Light on the flat, its diffuse part, and the air, hour by hour in the place's standard time. Is noon in the middle of the light?",
		SVG: page.SvgOf(func(w io.Writer) error {
			return draw.Week{Global: y.GHI[:week], Diffuse: y.DHI[:week], Air: y.TAir[:week], Units: sys}.Draw(w)
		})}
	for d := range 7 {
		from, to := d*24, d*24+24
		air := y.TAir[from:to]
		v.Days = append(v.Days, []string{fmt.Sprintf("%d January", d+1), unit.Irradiations.Number(page.Sum(y.GHI[from:to])*3600, sys), unit.Irradiations.Number(page.Sum(y.DHI[from:to])*3600, sys),
			unit.Temperatures.Number(slices.Min(air), sys), unit.Temperatures.Number(slices.Max(air), sys)})
	}
	return v
}

func filled(gaps []weather.Gap) string {
	h := 0.0
	for _, g := range gaps {
		h += g.Hours
	}
	if h == 0 {
		return "none"
	}
	return unit.Rounded(h, 3)
}

func knownOr[T unit.Number](k unit.Known[T], say func(T) string, not string) string {
	if v, ok := k.Value(); ok {
		return say(v)
	}
	return not
}

// farSay says how far a file's place is from the project's, where that is far.
func farSay(y sun.Series, place sun.Place, sys unit.System) (text string, far bool) {
	km, far := apart(y, place)
	return fmt.Sprintf("This file is of a place %s away from your project's. The sun of the file's own place is used; yours stays as it is typed.", unit.Distances.Format(km*1000, sys)), far
}

// apart is the way over ground from the project's place to the file's in km, where it is more than 100: half a degree of
// sun's height.
func apart(y sun.Series, p sun.Place) (km float64, far bool) {
	lat, ok := p.Latitude.Value()
	lon, okLon := p.Longitude.Value()
	if !ok || !okLon {
		return 0, false
	}
	km = float64(sun.Apart(lat, lon, y.Latitude, y.Longitude)) / 1000
	return km, km > 100
}

// columnNames are the columns that a table may have, with the mapping's place for each.
var columnNames = []struct {
	name, label string
	at          func(*weather.Mapping) *int
}{
	{"ghi", "Light on the flat (global)", func(m *weather.Mapping) *int { return &m.GHI }},
	{"dhi", "Diffuse light", func(m *weather.Mapping) *int { return &m.DHI }},
	{"dni", "Direct light, facing the sun", func(m *weather.Mapping) *int { return &m.DNI }},
	{"temperature", "Air temperature", func(m *weather.Mapping) *int { return &m.Temperature }},
	{"date", "Date, or date and time", func(m *weather.Mapping) *int { return &m.Date }},
	{"time", "Time of day", func(m *weather.Mapping) *int { return &m.Time }},
	{"year", "Year", func(m *weather.Mapping) *int { return &m.Year }},
	{"month", "Month", func(m *weather.Mapping) *int { return &m.Month }},
	{"day", "Day of the month", func(m *weather.Mapping) *int { return &m.Day }},
	{"hour", "Hour", func(m *weather.Mapping) *int { return &m.Hour }},
	{"minute", "Minute", func(m *weather.Mapping) *int { return &m.Minute }},
}

const columnsOfLight = 4 // the first of columnNames; the rest are of time

// wordNames are the choices with a closed list.
var wordNames = []struct {
	name, label string
	at          func(*weather.Mapping) *string
	options     []form.Option
}{
	{"radiation", "Unit of light", func(m *weather.Mapping) *string { return &m.RadiationUnit }, radiationOptions()},
	{"thermo", "Unit of temperature", func(m *weather.Mapping) *string { return &m.TemperatureUnit }, []form.Option{{Value: "C", Word: "°C"}, {Value: "F", Word: "°F"}, {Value: "K", Word: "K"}}},
	{"stamp", "The time is", func(m *weather.Mapping) *string { return &m.Stamp }, []form.Option{{Value: "", Word: "tell by the rows"}, {Value: "start", Word: "the start of its hour"}, {Value: "middle", Word: "the middle of its hour"}, {Value: "end", Word: "the end of its hour"}}},
	{"order", "Order of the date", func(m *weather.Mapping) *string { return &m.Order }, []form.Option{{Value: "", Word: "tell by the rows"}, {Value: "ymd", Word: "year, month, day"}, {Value: "dmy", Word: "day, month, year"}, {Value: "mdy", Word: "month, day, year"}}},
	{"delimiter", "Fields parted by", func(m *weather.Mapping) *string { return &m.Delimiter }, []form.Option{{Value: ",", Word: "comma"}, {Value: ";", Word: "semicolon"}, {Value: "\t", Word: "tab"}, {Value: "|", Word: "bar"}, {Value: " ", Word: "blanks"}}},
	{"comma", "Decimal sign", func(m *weather.Mapping) *string { return &m.DecimalComma }, []form.Option{{Value: "no", Word: "point"}, {Value: "yes", Word: "comma"}}},
}

// radiationOptions are the units of light; energies are of one row.
func radiationOptions() (out []form.Option) {
	for _, u := range weather.RadiationUnits() {
		out = append(out, form.Option{Value: u[0], Word: strings.Replace(u[1], " of each row", " in each row", 1)})
	}
	return out
}

const wordsOfLight = 2 // the first of wordNames; two of time follow, then two of the text

// placeNames are what a table may not say about its place.
var placeNames = []struct {
	name, label, hint string
	q                 unit.Quantity
	show              func(weather.Mapping) (float64, bool)
	set               func(*weather.Mapping, float64)
}{
	{"latitude", "Latitude", "north positive", unit.Latitudes, func(m weather.Mapping) (float64, bool) { return float64(m.Latitude.Val), m.Latitude.Is }, func(m *weather.Mapping, v float64) { m.Latitude = unit.Of(unit.Angle(v)) }},
	{"longitude", "Longitude", "east positive", unit.Longitudes, func(m weather.Mapping) (float64, bool) { return float64(m.Longitude.Val), m.Longitude.Is }, func(m *weather.Mapping, v float64) { m.Longitude = unit.Of(unit.Angle(v)) }},
	{"elevation", "Height above the sea", "", unit.Elevations, func(m weather.Mapping) (float64, bool) { return float64(m.Elevation.Val), m.Elevation.Is }, func(m *weather.Mapping, v float64) { m.Elevation = unit.Of(unit.Length(v)) }},
	{"offset", "The place's standard time ahead of UTC", "if empty: from the longitude", unit.UTCOffsets, func(m weather.Mapping) (float64, bool) { return float64(m.UTCOffset.Val), m.UTCOffset.Is }, func(m *weather.Mapping, v float64) { m.UTCOffset = unit.Of(unit.Duration(v)) }},
	{"zone", "The clock of the rows ahead of UTC", "if empty: the place's own; 0 for UTC", unit.UTCOffsets, func(m weather.Mapping) (float64, bool) { return float64(m.StampZone.Val), m.StampZone.Is }, func(m *weather.Mapping, v float64) { m.StampZone = unit.Of(unit.Duration(v)) }},
}

// mappingView is the form with what was guessed chosen.
func mappingView(m weather.Mapping, p weather.Preview, sys unit.System) *mapView {
	columns := []form.Option{{Value: "-1", Word: "not in this file"}}
	for i, h := range p.Heads {
		word := plainText(h, 30)
		if word == "" {
			word = "without a name"
		}
		columns = append(columns, form.Option{Value: strconv.Itoa(i + 1), Word: fmt.Sprintf("%d: %s", i+1, word)})
	}
	light := mapGroup{Title: "Light and air"}
	clock := mapGroup{Title: "Date and time", Hint: "Without a date the rows count from the first hour of January."}
	for i, c := range columnNames {
		f := mapField{Name: c.name, Label: c.label, Value: strconv.Itoa(*c.at(&m)), Options: columns}
		if i < columnsOfLight {
			light.Fields = append(light.Fields, f)
		} else {
			clock.Fields = append(clock.Fields, f)
		}
	}
	text := mapGroup{Title: "The text", Hint: "Where the sign that parts the fields changes, the columns are found anew.",
		Fields: []mapField{{Name: "first", Label: "First line with values", Value: strconv.Itoa(m.FirstLine)}}}
	for i, c := range wordNames {
		f := mapField{Name: c.name, Label: c.label, Value: *c.at(&m), Options: c.options}
		switch {
		case i < wordsOfLight:
			light.Fields = append(light.Fields, f)
		case i < wordsOfLight+2:
			clock.Fields = append(clock.Fields, f)
		default:
			text.Fields = append(text.Fields, f)
		}
	}
	place := mapGroup{Title: "Place"}
	for _, c := range placeNames {
		f := mapField{Name: c.name, Label: c.label, Hint: c.hint}
		if v, ok := c.show(m); ok {
			f.Value = c.q.FormatFull(v, sys)
		}
		if c.q.Symbol(unit.Metric) != c.q.Symbol(unit.Imperial) {
			f.Label += ", " + c.q.Symbol(sys)
		}
		place.Fields = append(place.Fields, f)
	}
	v := &mapView{Groups: []mapGroup{place, light, clock, text}, Units: form.UnitsWords[sys]}
	for _, h := range p.Heads {
		v.Heads = append(v.Heads, plainText(h, 30))
	}
	for _, row := range p.Cells[:min(len(p.Cells), 5)] {
		cells := make([]string, 0, len(row))
		for _, c := range row[:min(len(row), len(p.Heads))] {
			cells = append(cells, plainText(c, 30))
		}
		v.Cells = append(v.Cells, cells)
	}
	return v
}

// keep leaves what was typed in its fields.
func (v *mapView) keep(typed url.Values) {
	for g := range v.Groups {
		for i := range v.Groups[g].Fields {
			f := &v.Groups[g].Fields[i]
			if sent, ok := typed[f.Name]; ok {
				f.Value = sent[0]
			}
		}
	}
}

// mappingOf reads the form. Where the fields are parted otherwise than they were shown, or the values begin elsewhere,
// the columns that it names are not those meant, and are found anew.
func mappingOf(typed url.Values, shown weather.Mapping, sys unit.System) (m weather.Mapping, faults []string) {
	m.Layout, m.Move, m.Summer = shown.Layout, shown.Move, shown.Summer
	for _, c := range wordNames {
		sent := typed.Get(c.name)
		if slices.ContainsFunc(c.options, func(o form.Option) bool { return o.Value == sent }) {
			*c.at(&m) = sent
		}
	}
	if n, err := strconv.Atoi(typed.Get("first")); err == nil && n > 0 && n < 10_000 {
		m.FirstLine = n
	} else {
		faults = append(faults, "First line with values: give the number of a line.")
	}
	if m.Delimiter == shown.Delimiter {
		for _, c := range columnNames {
			if n, err := strconv.Atoi(typed.Get(c.name)); err == nil && n >= -1 && n < 10_000 {
				*c.at(&m) = n
			}
		}
	} else {
		m.DecimalComma, m.FirstLine = "", 0
	}
	for _, c := range placeNames {
		v, known, err := c.q.Parse(typed.Get(c.name), sys)
		switch {
		case err != nil:
			faults = append(faults, c.label+": "+form.Sentence(err.Error()))
		case known:
			c.set(&m, v)
		}
	}
	return m, faults
}
