package weather

import (
	"math"
	"regexp"
	"strings"

	"duskweight/internal/model/unit"
)

// readPlace reads what the lines above the table say about the place: "Latitude (decimal degrees): 45.000", "lat,45",
// or a row of names over a row of values. A time zone in such a row is the clock of the stamps; a local one beside it
// is the place's.
func (s *sheet) readPlace() {
	top := s.lines[:s.first]
	for i, l := range top {
		f := fields(l, s.delimiter)
		if len(f) == 1 || strings.Contains(f[0], ":") {
			l = strings.TrimLeft(l, "# ")
			if i := strings.IndexAny(l, ":="); i > 0 {
				s.placeFact(l[:i], strings.Trim(l[i+1:], string(s.delimiter)+" "))
			}
			continue
		}
		if len(f) >= 2 && !letters(f[1:2]) {
			s.placeFact(strings.TrimLeft(f[0], "# "), f[1])
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
	s.placeColumns()
	s.placeWords(top)
	if s.zone.Is && s.zone.Val == 0 && s.offset.Is && s.offset.Val == 0 && s.longitude.Is && math.Abs(float64(s.longitude.Val)) > float64(30*unit.Degree) {
		s.offset = unit.Known[unit.Duration]{} // UTC is the clock of the rows; no place so far from Greenwich keeps it
	}
}

// inWords finds a thing that is said of the place in the middle of a line: "site 7 lat=48.2 lon=16.4, 200 m".
var inWords = regexp.MustCompile(`(?i)\b(lat|latitude|lon|long|longitude)\b[^0-9+\-\x{2212}\n]{0,12}([+\-\x{2212}]?[0-9]+(?:[.,][0-9]+)?\s*°?\s*[NSEW]?)\b`)

// placeWords looks for latitude and longitude anywhere in the lines above the table, where they are not found in a field of
// their own.
func (s *sheet) placeWords(top []string) {
	if s.latitude.Is && s.longitude.Is {
		return
	}
	for _, l := range top {
		for _, m := range inWords.FindAllStringSubmatch(l, -1) {
			s.placeFact(m[1], strings.ReplaceAll(m[2], ",", "."))
		}
	}
}

// placeColumns takes the place from columns of their own, where every row says the same.
func (s *sheet) placeColumns() {
	if s.latitude.Is || s.longitude.Is || s.first >= len(s.lines) {
		return
	}
	top, end := fields(s.lines[s.first], s.delimiter), fields(s.lines[len(s.lines)-1], s.delimiter)
	for i, h := range s.heads {
		if key := bare(h); i < len(top) && i < len(end) && top[i] == end[i] && (latitudes[key] || longitudes[key]) {
			s.placeFact(h, top[i])
		}
	}
}

var (
	latitudes  = map[string]bool{"latitude": true, "lat": true, "latitudedecimaldegrees": true, "latitud": true, "breitengrad": true}
	longitudes = map[string]bool{"longitude": true, "lon": true, "long": true, "lng": true, "longitudedecimaldegrees": true, "longitud": true, "längengrad": true}
	zones      = map[string]bool{"timezone": true, "tz": true, "utcoffset": true, "timezonehours": true, "utc": true}
)

// degrees reads a latitude or longitude: "39.83", "39.83 N", "104.65W", "39°49'48\"S". west is the letter that turns the
// sign.
func (s *sheet) degrees(text string, west byte) (v float64, ok bool) {
	t := strings.ToUpper(strings.TrimSpace(text))
	sign := 1.0
	if n := len(t) - 1; n > 0 && strings.IndexByte("NSEWO", t[n]) >= 0 {
		if t[n] == west || t[n] == 'O' && west == 'W' {
			sign = -1
		} else if t[n] != map[byte]byte{'S': 'N', 'W': 'E'}[west] {
			return 0, false // a letter of the other direction
		}
		t = strings.TrimSpace(t[:n])
	}
	part := 1.0
	for i, f := range strings.FieldsFunc(t, func(r rune) bool { return strings.ContainsRune("°'\"′″ ", r) }) {
		x, isNumber := number(f, s.comma)
		if !isNumber {
			x, isNumber = number(f, false)
		}
		if !isNumber || x < 0 && (i > 0 || sign < 0) || i == 3 { // degrees, minutes and seconds
			return 0, false
		}
		if x < 0 {
			sign, x = -1, -x
		}
		v += x * part
		part /= 60
		ok = true
	}
	return sign * v, ok
}

// hoursAhead reads a clock ahead of UTC: "-7", "UTC-7", "GMT+05:30", "UTC".
func (s *sheet) hoursAhead(text string) (v float64, ok bool) {
	t := strings.ToUpper(strings.ReplaceAll(text, "\u2212", "-"))
	bare := strings.TrimSpace(strings.TrimPrefix(strings.TrimPrefix(t, "UTC"), "GMT"))
	if bare == "" && t != "" {
		return 0, true
	}
	h, min, parted := strings.Cut(bare, ":")
	v, ok = number(h, s.comma)
	if !ok {
		v, ok = number(h, false)
	}
	if parted {
		m, isNumber := whole(min)
		ok = ok && isNumber && m < 60
		if strings.HasPrefix(h, "-") {
			m = -m
		}
		v += float64(m) / 60
	}
	return v, ok
}

// placeFact takes one thing that is said about the place; the first word on each counts.
func (s *sheet) placeFact(name, value string) {
	key := bare(strings.TrimSuffix(name, ":"))
	switch {
	case latitudes[key] && !s.latitude.Is:
		if v, ok := s.degrees(value, 'S'); ok {
			s.latitude = unit.Of(unit.OfDegrees(v))
		}
	case longitudes[key] && !s.longitude.Is:
		if v, ok := s.degrees(value, 'W'); ok {
			s.longitude = unit.Of(unit.OfDegrees(v))
		}
	case (key == "elevation" || key == "altitude" || key == "elev" || key == "height" || key == "elevationm" || key == "altitudem") && !s.elevation.Is:
		value, _, _ = strings.Cut(value, " ")
		v, ok := number(value, s.comma)
		if !ok {
			v, ok = number(value, false)
		}
		if ok {
			s.elevation = unit.Of(unit.Length(v))
		}
	case zones[key]:
		if v, ok := s.hoursAhead(value); ok {
			ahead := unit.Of(unit.Duration(v) * unit.Hour)
			if !s.zone.Is {
				s.zone = ahead
			}
			if !s.offset.Is {
				s.offset = ahead
			}
		}
	case strings.HasPrefix(key, "irradiancetimeoffset"):
		s.readOffset(key, value)
	case key == "slope" || key == "tilt":
		value, _, _ = strings.Cut(strings.TrimSpace(value), " ")
		if v, ok := number(strings.TrimRight(value, "°"), s.comma); ok {
			s.slope = v
		}
	case key == "utcoffsetseconds":
		if v, ok := number(value, false); ok && !s.offset.Is {
			s.offset = unit.Of(unit.Duration(v))
		}
	case key == "localtimezone":
		if v, ok := s.hoursAhead(value); ok {
			s.offset = unit.Of(unit.Duration(v) * unit.Hour)
		}
	case key == "timereference" && strings.HasPrefix(strings.ToLower(value), "universal"):
		s.zone = unit.Of(unit.Duration(0))
	case s.name == "" && (key == "locationname" || key == "station" || key == "city" || key == "name" || key == "stationname") && len(value) > 1:
		if _, isNumber := number(value, false); !isNumber {
			s.name = value
		}
	}
}

// readOffset reads how much later than its stamp the light of a row is, in hours, or in minutes where the name says so: files
// from satellites give the light of the moment at which the picture was taken. Such a value stands for the hour round that
// moment.
func (s *sheet) readOffset(key, value string) {
	value, _, _ = strings.Cut(strings.TrimSpace(value), " ")
	v, ok := number(value, false)
	if !ok || math.Abs(v) > 60 {
		return
	}
	by := unit.Duration(v) * unit.Hour
	if strings.Contains(key, "min") {
		by = unit.Duration(v) * unit.Minute
	}
	if s.move = unit.Of(by); s.stamp == "" {
		s.stamp = "middle"
	}
}
