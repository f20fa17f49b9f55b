// Package weather reads files of hourly weather: the open EnergyPlus weather format, the TMY3 layout, the fixed-width
// layout of typical years before it (TM2), and plain tables of separated values through a Mapping. It is the one place that parses them. What it returns is a typical year of
// 8760 hours in the place's standard clock time; a file that cannot be one is refused with every reason at once, each
// by line, column and value, and nothing of it is kept.
//
// Left out: wind, humidity and pressure; files with more than one place; months that are missing altogether.
package weather

import (
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"io"
)

const (
	// Largest is the most bytes of a file that are read: a year of hours is about 2 MB, a year of five minutes 20 MB.
	Largest = 32 << 20
	// MissingHours is how many missing hours of a column are filled in a straight line between their neighbours. A file
	// that lacks more is refused.
	MissingHours = 3
)

// Layouts that Read knows.
const (
	EnergyPlus = "energyplus"
	TMY3       = "tmy3"
	TMY2       = "tmy2"
	Table      = "table"
)

// Mapping says how a file is to be read. The zero Mapping lets the file speak for itself; what is set here wins over
// what the file says. Columns count from 1: 0 finds the column by its head, −1 means that there is none.
type Mapping struct {
	Layout       string // EnergyPlus, TMY3, TMY2, Table, or "" to tell by the first lines
	Delimiter    string // "," ";" "\t" "|", or "" to tell
	DecimalComma string // "yes", "no", or "" to tell
	FirstLine    int    // line of the first row of values, from 1; 0 finds it

	GHI, DHI, DNI, Temperature     int
	Date, Time                     int // or date and time together in Date
	Year, Month, Day, Hour, Minute int
	Order                          string                    // of a date in digits: "ymd", "dmy", "mdy", or "" to tell
	Stamp                          string                    // where in its interval the stamp stands: "start", "middle", "end", or ""
	StampZone                      unit.Known[unit.Duration] // clock of the stamps ahead of UTC; not known is the place's own
	Move                           unit.Known[unit.Duration] // the light is moved so much later; 0 leaves it as it is and ends the question
	RadiationUnit                  string                    // "W/m2" "kW/m2" "Wh/m2" "kWh/m2" "kJ/m2" "MJ/m2" "J/cm2", or "" to tell by the head
	TemperatureUnit                string                    // "C" "F" "K", or ""
	Summer                         [2]int                    // days of the year, from 1, from and to which the rows keep daylight saving time, an hour ahead; 0, 0 for none

	Name      string
	Latitude  unit.Known[unit.Angle]
	Longitude unit.Known[unit.Angle]
	Elevation unit.Known[unit.Length]
	UTCOffset unit.Known[unit.Duration] // the place's standard clock ahead of UTC
}

// Year is one year of a file, and what was found in it.
type Year struct {
	Series sun.Series
	Report Report
}

// Read reads a weather file of one year. progress, where it is not nil, is told the bytes of the rows worked through so far. The series is in standard
// clock time, hour 0 ends at 01:00 on 1 January. A file that cannot be used gives a Refused error, an empty series and
// the report as far as it came; any other error comes from r.
func Read(r io.Reader, hint Mapping, progress func(done int64)) (sun.Series, Report, error) {
	text, err := slurp(r)
	if err != nil {
		return sun.Series{}, Report{}, err
	}
	t, err := layOut(text, hint)
	if err != nil {
		return sun.Series{}, Report{}, err
	}
	t.progress = progress
	rep := Report{Layout: t.layout, Mapping: t.mapping()}
	rows, err := t.rows()
	rep.Rows = len(rows)
	if err != nil {
		return sun.Series{}, rep, err
	}
	s, err := t.year(rows, &rep)
	return s, rep, err
}

// year makes the hours of one year of its rows. Where the file does not say at which end of their intervals its stamps
// stand, it is read once more in the way that leaves the smallest slip of the sun.
func (s *sheet) year(rows []row, rep *Report) (sun.Series, error) {
	first := *rep
	out, err := s.once(rows, rep)
	if !s.guessed {
		return out, err
	}
	if best := s.bestStamp(rep); best != s.stamp {
		s.stamp, *rep = best, first
		out, err = s.once(rows, rep)
	}
	if len(rep.Fits) > 0 {
		rep.note(false, "The file does not say whether its times stand at the start, the middle or the end of each %s. The sun fits best where they stand at the %s.", interval(rep.Step), s.stamp)
	}
	return out, err
}

// once makes the hours of one year of its rows, with the stamps as they are taken now.
func (s *sheet) once(rows []row, rep *Report) (sun.Series, error) {
	y, err := s.inYear(rows, rep)
	if err != nil {
		return sun.Series{}, err
	}
	out, err := y.finish(s, rep)
	if err != nil {
		return sun.Series{}, err
	}
	if n := onlyYear(rows); n > 0 {
		out.Year = unit.Of(unit.Count(n))
	}
	if rep.Asks("slip") {
		out.Slip = rep.Slip
	} else if rep.Asks("daylight") {
		out.Slip = unit.Of(unit.Hour)
	}
	return out, nil
}
