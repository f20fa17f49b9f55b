package weather

import (
	"math"
	"strconv"
	"strings"
	"time"
)

// stampColumns are the fields that hold date and time, −1 for none; ofYear holds the day of the year, from 1.
type stampColumns struct{ date, time, year, month, day, hour, minute, ofYear int }

// none reports whether a file has no stamps: then its rows follow each other from the first hour of January on.
func (w stampColumns) none() bool {
	return w.date < 0 && (w.hour < 0 || w.ofYear < 0 && (w.month < 0 || w.day < 0))
}

// moment is a stamp as written.
type moment struct {
	year       int // 0 where the stamp does not say
	month, day int
	minute     int // of the day, 0 … 1440
	zone       int // minutes ahead of UTC, where the stamp says so
	zoned      bool
}

var monthDays = [13]int{0, 31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}

var monthNames = []string{"", "jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"}

// at reads the stamp of a row; the fault names the field.
func (s *sheet) at(f []string) (moment, int, string) {
	w := s.when
	if w.date < 0 {
		return s.parts(f)
	}
	if w.date >= len(f) || w.time >= len(f) {
		return moment{}, -1, "This row ends before its date and time."
	}
	text, column := f[w.date], w.date
	if w.time >= 0 {
		text += " " + f[w.time]
	}
	if from, _, interval := strings.Cut(text, "/"); interval && strings.Contains(from, "T") { // ISO 8601: from/to
		text = from
	}
	m, ok := parseMoment(text, s.order)
	if !ok {
		return m, column, "is not a date with a time that can be read here."
	}
	return m, column, m.wrong()
}

// parts reads year, month, day, hour and minute from columns of their own.
func (s *sheet) parts(f []string) (m moment, column int, reason string) {
	w := s.when
	hour, minute, ofYear := 0, 0, 0
	for _, c := range []struct {
		i  int
		to *int
	}{{w.year, &m.year}, {w.month, &m.month}, {w.day, &m.day}, {w.ofYear, &ofYear}, {w.hour, &hour}, {w.minute, &minute}} {
		if c.i < 0 {
			continue
		}
		if c.i >= len(f) {
			return m, -1, "This row ends before its date and time."
		}
		text := f[c.i]
		if c.i == w.hour {
			text, _, _ = strings.Cut(text, ":")
		}
		v, ok := number(text, s.comma)
		if !ok || v != float64(int(v)) || v < -1 || v > 9999 {
			return m, c.i, "is not a whole number."
		}
		*c.to = int(v)
		if c.i == w.hour && w.minute < 0 && (v >= 100 || len(text) == 4 && v >= 0 && !strings.Contains(text, ".")) { // 0100 … 2400
			hour, minute = int(v)/100, int(v)%100
		}
	}
	if w.ofYear >= 0 {
		m.onDay(ofYear)
	}
	if hour < 0 || hour > 24 || minute < 0 || minute > 60 {
		return m, w.hour, "is not an hour of the day."
	}
	m.minute = hour*60 + minute
	if s.layout == EnergyPlus {
		m.minute = hour * 60 // the hour that ends
		if s.perHour > 1 {
			m.minute = (hour-1)*60 + minute // minute 60 ends the hour
		}
	}
	return m, w.month, m.wrong()
}

func (m moment) wrong() string {
	switch {
	case m.month < 1 || m.month > 12:
		return "is not a month of the year."
	case m.day < 1 || m.day > monthDays[m.month]:
		return "is not a day of its month."
	case m.minute < 0 || m.minute > 1440:
		return "is not a time of the day."
	}
	return ""
}

// onDay sets month and day by the day of the year, from 1; a year that is not said has no leap day.
func (m *moment) onDay(day int) {
	leap := m.year%4 == 0 && (m.year%100 != 0 || m.year%400 == 0) && m.year > 0
	m.month = 12
	for m.month > 1 && before(m.month, leap) >= day {
		m.month--
	}
	m.day = day - before(m.month, leap)
}

// count reads a stamp that is a count: seconds or thousandths of them since 1970 in universal time, as programs write it, or
// days since 30 December 1899, as spreadsheets do. A count is told from a date in digits by the year that it would begin with.
func (m *moment) count(text string) bool {
	digits := strings.Trim(text, "0123456789") == ""
	v, ok := number(text, false)
	var at time.Time
	switch {
	case !ok:
		return false
	case digits && (len(text) == 10 || len(text) == 9) && v < 1.9e9:
		at, m.zoned = time.Unix(int64(v), 0).UTC(), true
	case digits && len(text) == 13 && v < 1.9e12:
		at, m.zoned = time.UnixMilli(int64(v)).UTC(), true
	case v >= 10000 && v < 80000 && (len(text) == 5 || strings.IndexByte(text, '.') == 5):
		minutes := math.Round(v * dayMinutes)
		at = time.Date(1899, 12, 30, 0, 0, 0, 0, time.UTC).Add(time.Duration(minutes) * time.Minute)
	default:
		return false
	}
	m.year, m.month, m.day, m.minute = at.Year(), int(at.Month()), at.Day(), at.Hour()*60+at.Minute()
	return true
}

// parseMoment reads "2021-01-31 14:30", "31.01.2021 14:30", "20210131:1430", "2021-01-31T14:30:00Z", "202101311430".
func parseMoment(text, order string) (m moment, ok bool) {
	text = strings.TrimSpace(text)
	if m.count(text) {
		return m, true
	}
	date, clock := text, ""
	if i := strings.IndexAny(text, " T"); i > 0 {
		date, clock = text[:i], strings.TrimSpace(text[i+1:])
	} else if d, c, cut := strings.Cut(text, ":"); cut && len(d) == 8 {
		date, clock = d, c
	} else if len(text) >= 10 && strings.Trim(text, "0123456789") == "" {
		date, clock = text[:8], text[8:]
	}
	if !m.readDate(date, order) {
		return m, false
	}
	return m, clock == "" || m.readClock(clock)
}

func (m *moment) readDate(date, order string) bool {
	if len(date) == 8 && strings.Trim(date, "0123456789") == "" {
		m.year, _ = strconv.Atoi(date[:4])
		m.month, _ = strconv.Atoi(date[4:6])
		m.day, _ = strconv.Atoi(date[6:8])
		return true
	}
	p := strings.FieldsFunc(date, func(r rune) bool { return r == '-' || r == '/' || r == '.' || r == ' ' })
	if len(p) != 3 && !(len(p) == 2 && order != "ymd") {
		return false
	}
	if len(p) == 3 && len(p[0]) == 4 {
		order = "ymd"
	}
	if len(p) == 3 && order == "ymd" {
		m.year = fourDigits(p[0])
	} else if len(p) == 3 {
		m.year = fourDigits(p[2])
	}
	switch {
	case order == "ymd":
		p = []string{p[1], p[2]}
	case order == "dmy":
		p = []string{p[1], p[0]}
	}
	var okDay bool
	m.month = monthOf(p[0])
	m.day, okDay = whole(p[1])
	if m.month == 0 && monthOf(p[1]) > 0 && len(p[1]) == 3 { // 31-Jan-2021
		m.month = monthOf(p[1])
		m.day, okDay = whole(p[0])
	}
	return okDay
}

// fourDigits is a year of four digits; others may be of any century.
func fourDigits(s string) int {
	n, ok := whole(s)
	if !ok || len(s) != 4 {
		return 0
	}
	return n
}

func monthOf(s string) int {
	if n, ok := whole(s); ok {
		return n
	}
	for i, name := range monthNames {
		if i > 0 && strings.HasPrefix(strings.ToLower(s), name) {
			return i
		}
	}
	return 0
}

var halfDay = strings.NewReplacer("A.M.", "AM", "P.M.", "PM")

// readClock reads "14:30", "14:30:00", "1430", "24:00", "2:30 PM", with "Z" or "+05:30" behind it.
func (m *moment) readClock(clock string) bool {
	c := strings.ToUpper(clock)
	if z, ok := strings.CutSuffix(c, "Z"); ok {
		c, m.zoned = z, true
	} else if z, ok := strings.CutSuffix(c, "UTC"); ok {
		c, m.zoned = strings.TrimSpace(z), true
	} else if i := strings.LastIndexAny(c, "+-"); i > 1 {
		sign := 1
		if c[i] == '-' {
			sign = -1
		}
		h, min, ok := hoursMinutes(c[i+1:])
		if !ok {
			return false
		}
		c, m.zone, m.zoned = strings.TrimSpace(c[:i]), sign*(h*60+min), true
	}
	half := 0
	c = halfDay.Replace(c)
	if t, ok := strings.CutSuffix(c, "PM"); ok {
		c, half = strings.TrimSpace(t), 12
	} else if t, ok := strings.CutSuffix(c, "AM"); ok {
		c, half = strings.TrimSpace(t), 24
	}
	c, _, _ = strings.Cut(c, ".")
	h, min, ok := hoursMinutes(c)
	if half > 0 {
		h = h%12 + half%24
	}
	m.minute = h*60 + min
	return ok && min < 60
}

// hoursMinutes reads "14:30", "14:30:00", "1430", "14".
func hoursMinutes(s string) (h, m int, ok bool) {
	p := strings.Split(s, ":")
	if len(p) == 1 && len(s) == 4 {
		p = []string{s[:2], s[2:]}
	}
	if len(p) > 3 {
		return 0, 0, false
	}
	h, ok = whole(p[0])
	if ok && len(p) > 1 {
		m, ok = whole(p[1])
	}
	return h, m, ok && h <= 24
}

func whole(s string) (int, bool) {
	if s == "" || len(s) > 4 || strings.Trim(s, "0123456789") != "" {
		return 0, false
	}
	n, err := strconv.Atoi(s)
	return n, err == nil
}

// orderOf tells whether day or month stands first in dates of digits: a year has days over 12.
func (s *sheet) orderOf() string {
	if s.when.date < 0 {
		return "ymd"
	}
	for _, l := range s.lines[s.first:] {
		f := fields(l, s.delimiter)
		if s.when.date >= len(f) {
			continue
		}
		date, _, _ := strings.Cut(f[s.when.date], " ")
		p := strings.FieldsFunc(date, func(r rune) bool { return r == '-' || r == '/' || r == '.' })
		if len(p) < 2 || len(p[0]) == 4 {
			return "ymd"
		}
		a, okA := whole(p[0])
		b, okB := whole(p[1])
		if okA && a > 12 {
			return "dmy"
		}
		if okB && b > 12 {
			return "mdy"
		}
	}
	return "dmy"
}
