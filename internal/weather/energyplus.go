package weather

import (
	"strings"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// energyPlus reads the head of the open EnergyPlus weather format: LOCATION with place, zone and height, DATA PERIODS
// with the rows an hour, then rows of year, month, day, hour 1 … 24, minute, flags, and from the seventh on the values.
// The hour is the one that ends; the minute column holds 0, 30 or 60 by the maker's taste and says nothing, but with
// more than one row an hour.
func (s *sheet) energyPlus(hint Mapping) error {
	if hint.Delimiter == "" {
		for _, d := range []byte{',', ';', '\t'} {
			if i := strings.IndexByte(s.lines[0], d); i >= 0 && i < 12 {
				s.delimiter = d
				break
			}
		}
	}
	s.comma = s.delimiter != ','
	head := fields(s.lines[0], s.delimiter)
	if len(head) < 10 {
		return &Refused{Faults: []Fault{{Line: 1, Value: short(s.lines[0]), Reason: say.Words("The LOCATION line must have ten fields.")}}}
	}
	var r Refused
	s.name, s.source = head[1], place1(head[1:6])
	s.latitude = unit.Of(unit.OfDegrees(s.headNumber(&r, head, 6, "latitude")))
	s.longitude = unit.Of(unit.OfDegrees(s.headNumber(&r, head, 7, "longitude")))
	s.offset = unit.Of(unit.Duration(s.headNumber(&r, head, 8, "time zone")) * unit.Hour)
	if v, ok := number(head[9], s.comma); ok {
		s.elevation = unit.Of(unit.Length(v))
	}
	s.perHour, s.first = 1, len(s.lines)
	for i, l := range s.lines[:min(len(s.lines), 60)] {
		f := fields(l, s.delimiter)
		if strings.EqualFold(f[0], "DATA PERIODS") {
			s.first = i + 1
			if len(f) > 2 {
				if n, ok := number(f[2], s.comma); ok && n >= 1 && n <= 60 {
					s.perHour = int(n)
				}
			}
			break
		}
	}
	if s.first == len(s.lines) {
		r.add(Fault{Reason: say.Words("The line DATA PERIODS, after which the hours begin, was not found.")})
	}
	s.when = stampColumns{year: 0, month: 1, day: 2, hour: 3, minute: -1, date: -1, time: -1, ofYear: -1}
	if s.perHour > 1 {
		s.when.minute = 4
	}
	s.col, s.dew = [columns]int{ghi: 13, dni: 14, dhi: 15, temp: 6}, 7
	s.heads = strings.Split("year,month,day,hour,minute,flags,dry bulb,dew point,humidity,pressure,extraterrestrial,extraterrestrial direct,infrared,global horizontal,direct normal,diffuse horizontal", ",")
	s.stamp, s.radiation, s.thermo = "end", "W/m2", "C"
	return r.orNil()
}

// place1 joins what the head says about the place.
func place1(parts []string) string {
	var said []string
	for _, p := range parts {
		if p != "" && p != "-" && p != "unknown" {
			said = append(said, p)
		}
	}
	return strings.Join(said, ", ")
}

func (s *sheet) headNumber(r *Refused, head []string, i int, name string) float64 {
	v, ok := number(head[i], s.comma)
	if head[i] == "" {
		r.add(Fault{Line: 1, Column: i + 1, Head: name, Reason: say.Words(blank)})
		return 0
	}
	if !ok {
		r.add(Fault{Line: 1, Column: i + 1, Head: name, Value: head[i], Reason: say.Words("is not a number.")})
	}
	return v
}

// tmy3 reads the head of the TMY3 layout: station, name, state, zone, latitude, longitude, height; then the names of
// the columns. Stamps are MM/DD/YYYY and 01:00 … 24:00, the hour that ends, in local standard time.
func (s *sheet) tmy3() error {
	for _, d := range []byte{',', ';', '\t'} {
		if i := strings.IndexByte(s.lines[1], d); i >= 0 && strings.HasPrefix(strings.TrimSpace(s.lines[1][i+1:]), "Time") {
			s.delimiter = d
			break
		}
	}
	s.comma = s.delimiter != ','
	head := fields(s.lines[0], s.delimiter)
	s.heads = fields(s.lines[1], s.delimiter)
	if len(head) < 7 {
		return &Refused{Faults: []Fault{{Line: 1, Value: short(s.lines[0]), Reason: say.Words("The first line must have seven fields: station, name, state, zone, latitude, longitude, height.")}}}
	}
	var r Refused
	s.name, s.source = head[1], place1([]string{head[1], head[2], head[0]})
	s.offset = unit.Of(unit.Duration(s.headNumber(&r, head, 3, "time zone")) * unit.Hour)
	s.latitude = unit.Of(unit.OfDegrees(s.headNumber(&r, head, 4, "latitude")))
	s.longitude = unit.Of(unit.OfDegrees(s.headNumber(&r, head, 5, "longitude")))
	if v, ok := number(head[6], s.comma); ok {
		s.elevation = unit.Of(unit.Length(v))
	}
	s.first, s.perHour = 2, 1
	s.when = stampColumns{date: 0, time: 1, year: -1, month: -1, day: -1, hour: -1, minute: -1, ofYear: -1}
	s.order, s.stamp, s.radiation, s.thermo = "mdy", "end", "W/m2", "C"
	s.col = [columns]int{s.head("GHI ("), s.head("DHI ("), s.head("DNI ("), s.head("Dry-bulb (")}
	s.dew = s.head("Dew-point (")
	return r.orNil()
}

// head finds a column whose name begins so; −1 for none.
func (s *sheet) head(begins string) int {
	for i, h := range s.heads {
		if strings.HasPrefix(strings.ToLower(h), strings.ToLower(begins)) {
			return i
		}
	}
	return -1
}
