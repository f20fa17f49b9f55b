package weather

import (
	"fmt"
	"math"
	"strings"

	"duskweight/internal/say"
)

// row is one row of values: NaN for what is missing.
type row struct {
	line int
	at   moment
	v    [columns]float64
}

// missingWords stand where there is no value.
var missingWords = map[string]bool{"": true, "na": true, "n/a": true, "nan": true, "null": true, "none": true, "-": true, "--": true, "missing": true, "?": true}

// rows reads all rows of values. Every field that cannot be read is a fault, told by line, column and value.
func (s *sheet) rows() ([]row, error) {
	if s.order == "" {
		s.order = s.orderOf()
	}
	var r, hot Refused
	out := make([]row, 0, len(s.lines)-s.first)
	done := int64(0)
	for i := s.first; i < len(s.lines); i++ {
		if done += int64(len(s.lines[i])) + 1; s.progress != nil && i%4096 == 0 {
			s.progress(done)
		}
		if strings.TrimSpace(s.lines[i]) == "" {
			continue
		}
		f := fields(s.lines[i], s.delimiter)
		if s.layout == Table && s.trailer(f) {
			break
		}
		x := row{line: i + 1}
		if !s.when.none() {
			m, column, reason := s.at(f)
			if reason != "" {
				r.add(s.fault(i, column, f, say.Words(reason)))
				continue
			}
			x.at = m
		}
		s.compareDew(f)
		ok := true
		for c := range columns {
			v, reason := s.value(c, f)
			if reason == noAir {
				hot.add(s.fault(i, s.col[c], f, say.Words(reason)))
				ok = false
			} else if reason != "" {
				r.add(s.fault(i, s.col[c], f, say.Words(reason)))
				ok = false
			}
			x.v[c] = v
		}
		if ok {
			out = append(out, x)
		}
	}
	s.hot(&r, &hot)
	if len(r.Faults) == 0 && len(out) == 0 {
		return nil, refuse("There are no rows of values.")
	}
	return out, r.orNil()
}

// trailer reports whether a table has ended and words about it follow: a row that begins with a letter and ends before
// the last column that is read.
func (s *sheet) trailer(f []string) bool {
	for _, c := range s.col {
		if c >= len(f) {
			return letters(f[:1])
		}
	}
	return false
}

func (s *sheet) fault(line, column int, f []string, reason say.Sentence) Fault {
	out := Fault{Line: line + 1, Reason: reason}
	if column >= 0 {
		out.Column = column + 1
		if column < len(f) {
			out.Value = f[column]
		}
		if column < len(s.heads) {
			out.Head = s.heads[column]
		}
	}
	return out
}

// blank is a field that should hold a number and holds nothing.
const blank = "Nothing stands here, and a number is wanted."

// value reads one value in W/m² (energies stay per step) or °C; NaN is missing.
func (s *sheet) value(c int, f []string) (float64, string) {
	i := s.col[c]
	if i < 0 {
		return math.NaN(), ""
	}
	if i >= len(f) {
		return 0, fmt.Sprintf("This row ends before its %s (column %d).", columnNames[c], i+1)
	}
	if missingWords[strings.ToLower(f[i])] {
		return math.NaN(), ""
	}
	v, ok := number(f[i], s.comma)
	if !ok {
		return 0, "is not a number."
	}
	if s.missing(c, v) {
		return math.NaN(), ""
	}
	if c == temp {
		return s.celsius(v)
	}
	return v * s.factor(), ""
}

// compareDew counts whether the dew point of a row is above its air, where the file has both.
func (s *sheet) compareDew(f []string) {
	air := s.col[temp]
	if s.dew < 0 || s.dew == air || s.dew >= len(f) || air < 0 || air >= len(f) {
		return
	}
	d, ok := number(f[s.dew], s.comma)
	a, okA := number(f[air], s.comma)
	switch {
	case !ok || !okA || s.missing(temp, d) || s.missing(temp, a):
	case d > a+0.1: // rounding
		s.damp++
	case d < a-0.1:
		s.dry++
	}
}

// missing reports whether the value is a code: 9999 and 99.9 in the EnergyPlus format, −9900 in the TMY3 layout, and
// what loggers write.
func (s *sheet) missing(c int, v float64) bool {
	if v <= -999 {
		return true
	}
	if c == temp {
		return v == 99.9 && s.thermo != "F" || v == -99.9 || v == -99 || v >= 999
	}
	return v == 9999 || v == 99999 || v == 999999 || v == 9999999 || v == -99 || v == -99.9
}

func (s *sheet) celsius(v float64) (float64, string) {
	switch s.thermo {
	case "F":
		v = (v - 32) * 5 / 9
	case "K":
		v -= 273.15
	}
	if v < -90 || v > 62 { // the coldest and hottest air ever read: −89.2 and 56.7 °C (WMO archive), with some room
		return 0, noAir
	}
	return v, ""
}

const noAir = "is no air temperature. Is it in another unit, or a code for missing?"

// hot tells the rows in which no air is as warm or cold: one by one where they are few; where they are more than the hours of
// a day, the unit or the column is wrong, and that is asked once.
func (s *sheet) hot(r, hot *Refused) {
	n := len(hot.Faults) + hot.More
	if n <= 24 {
		for _, f := range hot.Faults {
			r.add(f)
		}
		return
	}
	first := hot.Faults[0]
	r.add(Fault{Reason: say.That("In %s no air is as warm or as cold as their temperature, first in line %s: “%s” in %s. Choose its unit or its column; °F looks like 20 to 100, K like 250 to 310.", say.Plural(n, "row", "rows"), first.Line, first.Value, shownDegrees(s.thermo))})
	if s.thermo == "C" {
		r.Best.TemperatureUnit = "F"
		if v, ok := number(first.Value, s.comma); ok && v > 150 {
			r.Best.TemperatureUnit = "K"
		}
	}
}

func shownDegrees(u string) string {
	if u == "K" {
		return u
	}
	return "°" + u
}

// factor turns the unit of radiation into W/m²; energies are of one step and are divided by it later.
func (s *sheet) factor() float64 { return radiationUnits[s.radiation] }

// energy reports whether the values are energies of a step and not powers.
func (s *sheet) energy() bool {
	return energyUnit(s.radiation)
}

func energyUnit(u string) bool { return u != "W/m2" && u != "kW/m2" }
