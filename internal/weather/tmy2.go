package weather

import (
	"strconv"
	"strings"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// tmy2Length is the least length of a row of the fixed-width typical-year layout, up to its dew point.
const tmy2Length = 77

// isTMY2 reports whether the first lines are the fixed-width layout of typical years (TM2): a head with a time zone, N or S
// and E or W, and rows of 142 letters that begin with two digits each of year, month, day and hour.
func isTMY2(all []string) bool {
	if len(all) < 2 || len(all[0]) < 55 || len(all[1]) < tmy2Length {
		return false
	}
	_, _, ok := tmy2Place(all[0])
	_, reason := tmy2Row(all[1])
	return ok && reason == ""
}

// cutOut is the text from one place to another of a line, both counted from 1 as in the layout's description (User's Manual for
// TMY2s, NREL 1995, tables 3-1 and 3-2); short lines give what they have.
func cutOut(line string, from, to int) string {
	if from > len(line) {
		return ""
	}
	return strings.TrimSpace(line[from-1 : min(to, len(line))])
}

// tmy2Place reads latitude and longitude in degrees from the head: "N 46 52 W  68  1".
func tmy2Place(head string) (latitude, longitude float64, ok bool) {
	read := func(letter, degrees, minutes string, negative, positive string) (float64, bool) {
		d, ok := number(degrees, false)
		m, okM := number(minutes, false)
		v := d + m/60
		if letter == negative {
			v = -v
		}
		return v, ok && okM && d >= 0 && m >= 0 && m < 60 && (letter == negative || letter == positive)
	}
	latitude, ok = read(cutOut(head, 38, 38), cutOut(head, 40, 41), cutOut(head, 43, 44), "S", "N")
	longitude, okLon := read(cutOut(head, 46, 46), cutOut(head, 48, 50), cutOut(head, 52, 53), "W", "E")
	return latitude, longitude, ok && okLon
}

// tmy2Columns are the fields that are read of a row: year, month, day, hour, global, direct and diffuse light, air and dew
// point, from and to where in the line.
var tmy2Columns = [...][2]int{{2, 3}, {4, 5}, {6, 7}, {8, 9}, {18, 21}, {24, 27}, {30, 33}, {68, 71}, {74, 77}}

// tmy2Row is a row as separated values: the light in Wh/m², air and dew point in °C, which the layout gives in tenths.
func tmy2Row(line string) (row, reason string) {
	if len(line) < tmy2Length {
		return "", "This row is shorter than the layout has it."
	}
	var f []string
	for i, c := range tmy2Columns {
		text := cutOut(line, c[0], c[1])
		v, ok := number(text, false)
		if !ok || v != float64(int(v)) {
			return "", "is not a whole number."
		}
		if i >= 7 {
			if text = "9999"; v < 9999 {
				text = strconv.FormatFloat(v/10, 'f', 1, 64)
			}
		}
		f = append(f, text)
	}
	return strings.Join(f, ","), ""
}

// tmy2 reads the head and turns the rows into separated values, line for line. The hour is the one that ends, 1 … 24, in
// local standard time.
func (s *sheet) tmy2() error {
	head := s.lines[0]
	latitude, longitude, ok := tmy2Place(head)
	if !ok {
		return &Refused{Faults: []Fault{{Line: 1, Value: short(head), Reason: say.Words("The first line must say latitude and longitude as N 46 52 W 68 1.")}}}
	}
	s.latitude, s.longitude = unit.Of(unit.OfDegrees(latitude)), unit.Of(unit.OfDegrees(longitude))
	if zone, ok := number(cutOut(head, 34, 36), false); ok {
		s.offset = unit.Of(unit.Duration(zone) * unit.Hour)
	}
	if height, ok := number(cutOut(head, 55, 59), false); ok {
		s.elevation = unit.Of(unit.Length(height))
	}
	s.name = cutOut(head, 8, 29)
	s.source = place1([]string{s.name, cutOut(head, 31, 32), cutOut(head, 2, 6), "typical year (TM2)"})
	var r Refused
	lines := []string{head}
	for i, l := range s.lines[1:] {
		row, reason := tmy2Row(l)
		if reason != "" && strings.TrimSpace(l) != "" {
			r.add(Fault{Line: i + 2, Value: short(l), Reason: say.Words(reason)})
		}
		lines = append(lines, row)
	}
	s.lines, s.first, s.delimiter, s.comma, s.perHour = lines, 1, ',', false, 1
	s.when = stampColumns{date: -1, time: -1, year: 0, month: 1, day: 2, hour: 3, minute: -1, ofYear: -1}
	s.col, s.dew = [columns]int{ghi: 4, dni: 5, dhi: 6, temp: 7}, 8
	s.heads = strings.Split("year,month,day,hour,global horizontal,direct normal,diffuse horizontal,dry bulb,dew point", ",")
	s.stamp, s.radiation, s.thermo = "end", "Wh/m2", "C"
	return r.orNil()
}
