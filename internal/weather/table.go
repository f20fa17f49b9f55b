package weather

import (
	"strings"

	"duskweight/internal/model/unit"
)

// table finds its way through any plain table: a row of names somewhere near the top, rows of values below it, and what
// stands above it about the place, as "Latitude: 45.0" lines or as a row of names over a row of values.
func (s *sheet) table(hint Mapping) error {
	s.col = [columns]int{-1, -1, -1, -1}
	s.when = stampColumns{-1, -1, -1, -1, -1, -1, -1, -1}
	s.first = s.firstValues()
	if hint.FirstLine > 0 {
		s.first = min(hint.FirstLine-1, len(s.lines))
	}
	s.comma = s.commas()
	if s.heads = s.names(); s.heads == nil && s.first < len(s.lines) {
		s.heads = make([]string, s.usualFields())
	}
	s.radiation, s.thermo = "W/m2", "C"
	s.readHeads()
	s.readPlace()
	s.guessDate()
	return nil
}

// names are the names of the columns: the last line of words above the values. A line of units below it is put behind
// the names: "GHI" over "W/m2" is "GHI [W/m2]".
func (s *sheet) names() []string {
	var units []string
	for i := s.first - 1; i >= 0; i-- {
		f := fields(s.lines[i], s.delimiter)
		switch {
		case len(f) < 2:
			continue
		case units == nil && onlyUnits(f):
			units = f
			continue
		case !letters(f):
			continue
		}
		for j, u := range units {
			if j < len(f) && u != "" && strings.Trim(u, "-") != "" {
				f[j] += " [" + strings.Trim(u, "[]()") + "]"
			}
		}
		return f
	}
	return nil
}

// onlyUnits reports whether a line holds units of light or temperature and nothing else but blanks and words of time.
func onlyUnits(f []string) bool {
	n := 0
	for _, u := range f {
		u = strings.NewReplacer("²", "2", "^", "", "**", "", " ", "", "[", "", "]", "", "(", "", ")", "").Replace(strings.ToLower(u))
		switch {
		case strings.HasSuffix(u, "/m2"), strings.HasSuffix(u, "/cm2"), strings.HasSuffix(u, "m-2"), u == "°c", u == "degc", u == "c", u == "°f", u == "degf", u == "f", u == "k":
			n++
		case u == "", u == "-", u == "--", u == "%", u == "m/s", u == "hpa", u == "mbar", u == "deg", u == "°", u == "mm", u == "utc", u == "h", u == "hh:mm", u == "lst":
		case strings.HasPrefix(u, "yyyy"), strings.HasPrefix(u, "dd"), strings.HasPrefix(u, "mm/"):
		default:
			return false
		}
	}
	return n > 0
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
		case letters(f) || !values(f) || onlyUnits(f):
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

// commas reports whether the values use a decimal comma: more do than have a point. Where the comma parts the fields, a
// comma is only met in quotes, and before three digits it may part thousands: that proves nothing.
func (s *sheet) commas() bool {
	commas, points := 0, 0
	for _, l := range s.lines[s.first:min(len(s.lines), s.first+200)] {
		for _, f := range fields(l, s.delimiter) {
			if _, ok := number(f, false); ok && strings.Contains(f, ".") {
				points++
			} else if _, ok := number(f, true); ok {
				if i := strings.IndexByte(f, ','); i >= 0 && (s.delimiter != ',' || len(f)-i-1 != 3) {
					commas++
				}
			}
		}
	}
	return commas > points
}

// readHeads finds the columns by their names, and the units that stand in them.
func (s *sheet) readHeads() {
	plain := make([]string, len(s.heads))
	for i, h := range s.heads {
		plain[i] = bare(h)
	}
	for c := range known {
		s.col[c] = seek(plain, c)
	}
	for i, p := range plain {
		if s.dew < 0 && strings.Contains(p, "dew") && !has(p, []string{"source", "uncert", "flag", "depression"}) {
			s.dew = i
		}
	}
	at := func(names []string) int { return find(plain, names) }
	w := &s.when
	w.year, w.month, w.day = at([]string{"year", "yr", "yyyy", "y", "jahr", "año", "ano", "année"}), at([]string{"month", "mo", "mm", "monat", "mes", "mês", "mois", "mon", "m"}), at([]string{"day", "dd", "tag", "dayofmonth", "dom", "dm", "dia", "día", "jour", "dy"})
	w.hour, w.minute = at([]string{"hour", "hr", "hh", "stunde", "hora", "heure", "hourofday", "h"}), at([]string{"minute", "min", "mi"})
	w.date = at([]string{"datetime", "timestamp", "date", "utcdate", "dateutc", "observationperiod", "dateandtime", "time", "datum", "localtime", "zeit", "dt", "utctime", "timeutc", "periodend", "periodstart", "validtime", "localdatetime", "datetimeutc", "utcdatetime", "datetimelocal", "localtimestamp", "timestamputc", "timestamplocal", "utctimestamp", "ts", "datestamp", "datehour", "fecha", "fechahora", "data", "horodate", "begin", "intervalstart", "intervalend", "start", "end", "hourbeginning", "hourending"})
	w.time = at([]string{"time", "timeofday", "uhrzeit", "heure", "zeit", "clock", "utctime", "timeutc", "hourending", "hourbeginning", "hh:mm", "hhmm", "hora", "localtime", "lst"})
	if w.month < 0 {
		w.ofYear = at([]string{"doy", "dayofyear", "julianday", "julian", "jday", "yday"})
	}
	if w.time == w.date {
		w.time = -1
	}
	if w.time < 0 && w.date >= 0 && w.month < 0 { // a date, and the hour in a column of its own
		w.time = w.hour
	}
	if w.hour >= 0 && (w.month >= 0 && w.day >= 0 || w.ofYear >= 0) {
		w.date, w.time = -1, -1
	}
	s.unitsOf()
}

// guessDate takes the first column that holds a date, where none has the name of one.
func (s *sheet) guessDate() {
	if !s.when.none() || s.first >= len(s.lines) {
		return
	}
	for i, f := range fields(s.lines[s.first], s.delimiter) {
		if m := (moment{}); m.count(f) && m.wrong() == "" && i == 0 {
			s.when.date = i
			return
		}
		if strings.Count(f, "-")+strings.Count(f, "/")+strings.Count(f, ".")+strings.Count(f, ":") < 2 || i >= len(s.heads) {
			continue
		}
		if m, ok := parseMoment(f, "dmy"); ok && (m.wrong() == "" || m.month > 12) {
			s.when.date = i
			return
		}
	}
}

// bare is a name in small letters, without what stands in brackets or after a unit, spaces and marks. An inner bracket
// without a slash or a degree belongs to the name: G(h).
func bare(h string) string {
	h = strings.ToLower(h)
	if i := strings.IndexAny(h, "[{"); i > 0 {
		h = strings.TrimSpace(h[:i])
	}
	if i := strings.LastIndexByte(h, '('); i > 0 {
		if in := h[i:]; strings.ContainsAny(in, "/°%:, ") || in == "(c)" || in == "(f)" || in == "(k)" || in == "(utc)" || in == "(lst)" {
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
		return s.heads[i]
	}
	for c := ghi; c <= dni; c++ {
		u := unitIn(said(s.col[c]))
		switch {
		case u == "":
		case s.unitHead == "":
			s.radiation, s.unitHead = u, u
		case u != s.radiation:
			s.unlike = s.radiation + " and " + u
		}
	}
	if d := degreesIn(said(s.col[temp])); d != "" {
		s.thermo, s.degreesHead = d, d
	}
	clock := letterOnly(said(s.when.date) + said(s.when.time) + said(s.when.hour))
	if strings.Contains(clock, "utc") || strings.Contains(clock, "gmt") {
		s.zone = unit.Of(unit.Duration(0))
	}
	switch {
	case has(clock, []string{"periodend", "hourending", "intervalend", "hourend"}):
		s.stamp = "end"
	case has(clock, []string{"periodstart", "hourbegin", "observationperiod", "intervalstart", "intervalbegin", "hourstart"}):
		s.stamp = "start"
	}
}
