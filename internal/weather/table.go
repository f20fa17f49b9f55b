package weather

import (
	"strings"

	"duskweight/internal/model/unit"
)

// table finds its way through any plain table: a row of names somewhere near the top, rows of values below it, and what
// stands above it about the place, as "Latitude: 45.0" lines or as a row of names over a row of values.
func (s *sheet) table(hint Mapping) error {
	s.col = [columns]int{-1, -1, -1, -1}
	s.when = stampColumns{-1, -1, -1, -1, -1, -1, -1}
	s.first = s.firstValues()
	if hint.FirstLine > 0 {
		s.first = min(hint.FirstLine-1, len(s.lines))
	}
	s.comma = s.delimiter != ',' && s.commas()
	for i := s.first - 1; i >= 0; i-- {
		if f := fields(s.lines[i], s.delimiter); len(f) >= 2 && letters(f) {
			s.heads = f
			break
		}
	}
	s.radiation, s.thermo = "W/m2", "C"
	s.readHeads()
	s.readPlace()
	return nil
}

// firstValues is the index of the first row of values: from the end upwards as long as rows look like values. Words
// that follow the table do not count, and a row that is too short or too long still belongs to it.
func (s *sheet) firstValues() int {
	last := len(s.lines) - 1
	n := s.usualFields()
	for last > 0 && len(fields(s.lines[last], s.delimiter)) != n {
		last--
	}
	first := last
	for i := last; i >= 0; i-- {
		f := fields(s.lines[i], s.delimiter)
		switch {
		case len(f) == 1 && f[0] == "" && n > 1:
		case letters(f) || !values(f):
			return first
		default:
			first = i
		}
	}
	return first
}

// usualFields is the commonest number of fields among the last rows.
func (s *sheet) usualFields() int {
	count := map[int]int{}
	best := 0
	for _, l := range s.lines[max(0, len(s.lines)-200):] {
		n := len(fields(l, s.delimiter))
		if count[n]++; count[n] > count[best] {
			best = n
		}
	}
	return best
}

// values reports whether at least half of the fields begin like numbers.
func values(f []string) bool {
	n := 0
	for _, v := range f {
		if v != "" && strings.ContainsRune("0123456789+-.\u2212", []rune(v)[0]) {
			n++
		}
	}
	return 2*n >= len(f)
}

// letters reports whether at least half of the fields begin with a letter.
func letters(f []string) bool {
	n := 0
	for _, v := range f {
		if v != "" && (v[0] >= 'A' && v[0] <= 'Z' || v[0] >= 'a' && v[0] <= 'z' || v[0] > 127) {
			n++
		}
	}
	return n > 0 && 2*n >= len(f)
}

// commas reports whether the values use a decimal comma: some do, and none has a point between digits outside a date.
func (s *sheet) commas() bool {
	commas, points := 0, 0
	for _, l := range s.lines[s.first:min(len(s.lines), s.first+200)] {
		for _, f := range fields(l, s.delimiter) {
			if _, ok := number(f, false); ok && strings.Contains(f, ".") {
				points++
			} else if _, ok := number(f, true); ok && strings.Contains(f, ",") {
				commas++
			}
		}
	}
	return commas > points
}

// known are the names under which columns go about, in small letters without spaces and marks; the first that fits wins.
var known = [columns][]string{
	ghi:  {"ghi", "gh", "g", "globalhorizontal", "globalhorizontalirradiance", "globalhorizontalradiation", "glohorzrad", "globalradiation", "shortwaveradiation", "globalirradiance", "global", "solarradiation", "globalstrahlung", "glob", "irradiance", "rayonnementglobal", "rsds", "swdown", "radiation"},
	dhi:  {"dhi", "gdh", "gd", "diffusehorizontal", "diffusehorizontalirradiance", "diffusehorizontalradiation", "difhorzrad", "diffuseradiation", "diffuse", "diffusstrahlung", "dif", "diffuseirradiance"},
	dni:  {"dni", "gbn", "directnormal", "directnormalirradiance", "directnormalradiation", "dirnormrad", "beamnormal", "beam", "bni"},
	temp: {"temperature", "temp", "tair", "t2m", "airtemperature", "drybulb", "drybulbtemperature", "temperature2m", "ta", "tamb", "ambienttemperature", "airtemp", "t", "lufttemperatur", "temperatur", "tempair", "tdry", "tas"},
}

// readHeads finds the columns by their names, and the units that stand in them.
func (s *sheet) readHeads() {
	plain := make([]string, len(s.heads))
	for i, h := range s.heads {
		plain[i] = bare(h)
	}
	find := func(names []string) int {
		for _, n := range names {
			for i, p := range plain {
				if p == n {
					return i
				}
			}
		}
		return -1
	}
	for c, names := range known {
		s.col[c] = find(names)
	}
	w := &s.when
	w.year, w.month, w.day = find([]string{"year", "yr", "yyyy", "jahr"}), find([]string{"month", "mo", "mm", "monat"}), find([]string{"day", "dd", "tag", "dayofmonth"})
	w.hour, w.minute = find([]string{"hour", "hr", "hh", "stunde"}), find([]string{"minute", "min", "mi"})
	w.date = find([]string{"datetime", "timestamp", "date", "dateandtime", "time", "datum", "localtime", "zeit", "dt", "utctime", "timeutc", "periodend", "periodstart"})
	w.time = find([]string{"time", "timeofday", "uhrzeit", "heure", "clock"})
	if w.time == w.date {
		w.time = -1
	}
	if w.month >= 0 && w.day >= 0 && w.hour >= 0 {
		w.date, w.time = -1, -1
	}
	s.unitsOf()
}

// bare is a name in small letters, without what stands in brackets or after a unit, spaces and marks. An inner bracket
// without a slash or a degree belongs to the name: G(h).
func bare(h string) string {
	h = strings.ToLower(h)
	if i := strings.IndexAny(h, "[{"); i > 0 {
		h = h[:i]
	}
	if i := strings.LastIndexByte(h, '('); i > 0 {
		if in := h[i:]; strings.ContainsAny(in, "/°%:") || in == "(c)" || in == "(f)" || in == "(k)" || in == "(utc)" || in == "(lst)" {
			h = h[:i]
		}
	}
	for _, u := range []string{"w/m2", "w/m²", "w/m^2", "wh/m2", "wh/m²", "°c", "degc", "utc"} {
		h = strings.TrimSuffix(strings.TrimSpace(h), u)
	}
	return strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= '0' && r <= '9' || r > 127 && r != '°' && r != '²' {
			return r
		}
		return -1
	}, h)
}

// unitsOf reads units, the stamps' clock and where the stamp stands from the names of the columns.
func (s *sheet) unitsOf() {
	said := func(i int) string {
		if i < 0 || i >= len(s.heads) {
			return ""
		}
		return strings.NewReplacer("²", "2", "^", "", " ", "", "*", "", "**", "").Replace(strings.ToLower(s.heads[i]))
	}
	for _, u := range [][2]string{{"kwh/m2", "kWh/m2"}, {"wh/m2", "Wh/m2"}, {"kw/m2", "kW/m2"}, {"w/m2", "W/m2"}, {"mj/m2", "MJ/m2"}, {"kj/m2", "kJ/m2"}, {"j/cm2", "J/cm2"}} {
		if strings.Contains(said(s.col[ghi]), u[0]) {
			s.radiation = u[1]
			break
		}
	}
	switch t := said(s.col[temp]); {
	case strings.Contains(t, "°f"), strings.Contains(t, "(f)"), strings.Contains(t, "[f]"), strings.Contains(t, "degf"):
		s.thermo = "F"
	case strings.Contains(t, "(k)"), strings.Contains(t, "[k]"):
		s.thermo = "K"
	}
	clock := said(s.when.date) + said(s.when.time) + said(s.when.hour)
	if strings.Contains(clock, "utc") || strings.Contains(clock, "gmt") {
		s.zone = unit.Of(unit.Duration(0))
	}
	switch {
	case strings.Contains(clock, "periodend"):
		s.stamp = "end"
	case strings.Contains(clock, "periodstart"):
		s.stamp = "start"
	}
}

// readPlace reads what the lines above the table say about the place: "Latitude (decimal degrees): 45.000", "lat,45",
// or a row of names over a row of values. A time zone in such a row is the clock of the stamps; a local one beside it
// is the place's.
func (s *sheet) readPlace() {
	top := s.lines[:s.first]
	for i, l := range top {
		f := fields(l, s.delimiter)
		if len(f) == 1 || strings.Contains(f[0], ":") {
			if name, value, ok := strings.Cut(strings.TrimLeft(l, "# "), ":"); ok {
				s.placeFact(name, strings.Trim(value, string(s.delimiter)+" "))
			}
			continue
		}
		if len(f) >= 2 && !letters(f[1:2]) {
			s.placeFact(f[0], f[1])
		}
		if i+1 < len(top) && letters(f) {
			below := fields(top[i+1], s.delimiter)
			for j, name := range f {
				if j < len(below) {
					s.placeFact(name, below[j])
				}
			}
		}
	}
}

func (s *sheet) placeFact(name, value string) {
	value, _, _ = strings.Cut(value, " ")
	v, ok := number(value, s.comma)
	if !ok {
		v, ok = number(value, false)
	}
	key := bare(strings.TrimSuffix(name, ":"))
	switch {
	case !ok:
		if s.name == "" && (key == "locationname" || key == "station" || key == "city" || key == "name" || key == "stationname") && len(value) > 1 {
			s.name = value
		}
	case (key == "latitude" || key == "lat" || key == "latitudedecimaldegrees") && !s.latitude.Is:
		s.latitude = unit.Of(unit.Angle(v) * unit.Degree)
	case (key == "longitude" || key == "lon" || key == "long" || key == "lng" || key == "longitudedecimaldegrees") && !s.longitude.Is:
		s.longitude = unit.Of(unit.Angle(v) * unit.Degree)
	case (key == "elevation" || key == "altitude" || key == "elev" || key == "height" || key == "elevationm") && !s.elevation.Is:
		s.elevation = unit.Of(unit.Length(v))
	case key == "timezone" || key == "tz" || key == "utcoffset" || key == "timezonehours":
		if !s.zone.Is {
			s.zone = unit.Of(unit.Duration(v) * unit.Hour)
		}
		if !s.offset.Is {
			s.offset = unit.Of(unit.Duration(v) * unit.Hour)
		}
	case key == "localtimezone":
		s.offset = unit.Of(unit.Duration(v) * unit.Hour)
	}
}
