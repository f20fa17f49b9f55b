package weather

import (
	"math"
	"strings"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// The four columns that are read.
const (
	ghi = iota
	dhi
	dni
	temp
	columns
)

var columnNames = [columns]string{"global radiation", "diffuse radiation", "direct radiation", "temperature"}

// sheet is a file laid out: where its values stand and what they mean.
type sheet struct {
	layout    string
	lines     []string
	first     int // index of the first line of values
	delimiter byte
	comma     bool
	heads     []string

	col    [columns]int // index of the field, −1 for none
	when   stampColumns
	order  string
	stamp  string // start, middle, end, "" to be told by the stamps
	zone   unit.Known[unit.Duration]
	move   unit.Known[unit.Duration] // by how much the light is moved later
	summer [2]int                    // days of the year from and to which the rows keep daylight saving time, as the hint says
	saving string                    // what was done about daylight saving time
	slope  float64                   // degrees from the flat of the plane whose light the file holds, as its head has it

	progress func(done int64) // is told the bytes of the rows worked through; nil for nobody

	dew       int // index of the field of the dew point, which is only compared; −1 for none
	damp, dry int // rows whose dew point is above and below their air

	told    bool // the hint says where in its interval a stamp stands
	guessed bool // neither the file nor the hint says where in its interval a stamp stands
	zoned   bool // every stamp says its clock

	radiation             string // unit
	unlike                string // the units, where columns of light have different ones
	thermo                string // unit
	unitHead, degreesHead string // the units as the names of the columns have them, "" where they say nothing

	name, source        string
	latitude, longitude unit.Known[unit.Angle]
	elevation           unit.Known[unit.Length]
	offset              unit.Known[unit.Duration]
	odd                 string // what is odd about the stamps and was taken so
	perHour             int    // rows an hour as the file's head has it; 0 if it does not say
}

// layOut tells the layout, reads the head, and lets the hint overrule it.
func layOut(text string, hint Mapping) (*sheet, error) {
	all := lines(text)
	if len(all) == 0 {
		return nil, refuse("This file is empty.")
	}
	if len(all) > 600_000 {
		return nil, refuse("This file has more lines than a year of minutes.")
	}
	layout := hint.Layout
	if layout == "" {
		layout = tell(all)
	}
	s := &sheet{layout: layout, lines: all, dew: -1}
	s.delimiter = delimiterOf(all)
	if hint.Delimiter != "" {
		s.delimiter = hint.Delimiter[0]
	}
	var err error
	switch layout {
	case EnergyPlus:
		err = s.energyPlus(hint)
	case TMY3:
		err = s.tmy3()
	case TMY2:
		err = s.tmy2()
	case Table:
		err = s.table(hint)
	default:
		err = refuse("“%s” is not a layout of weather files.", layout)
	}
	if err != nil {
		return nil, err
	}
	s.overrule(hint)
	return s, s.complete() // the sheet stands even where it is not complete: a preview shows it
}

// tell tells the layout by the first lines.
func tell(all []string) string {
	first := strings.ToUpper(strings.TrimLeft(all[0], "\" \t"))
	if strings.HasPrefix(first, "LOCATION") && len(all) > 1 && strings.HasPrefix(strings.ToUpper(strings.TrimLeft(all[1], "\" \t")), "DESIGN CONDITIONS") ||
		strings.HasPrefix(first, "LOCATION,") || strings.HasPrefix(first, "LOCATION;") {
		return EnergyPlus
	}
	if len(all) > 1 && strings.Contains(all[1], "Date (MM/DD/YYYY)") && strings.Contains(all[1], "Time (HH:MM)") {
		return TMY3
	}
	if isTMY2(all) {
		return TMY2
	}
	return Table
}

// overrule sets what the hint says over what the file says.
func (s *sheet) overrule(h Mapping) {
	for i, c := range [columns]int{h.GHI, h.DHI, h.DNI, h.Temperature} {
		set(&s.col[i], c)
	}
	w := &s.when
	for _, c := range []struct {
		to *int
		n  int
	}{{&w.date, h.Date}, {&w.time, h.Time}, {&w.year, h.Year}, {&w.month, h.Month}, {&w.day, h.Day}, {&w.hour, h.Hour}, {&w.minute, h.Minute}} {
		set(c.to, c.n)
	}
	if h.FirstLine > 0 {
		s.first = h.FirstLine - 1
	}
	for _, c := range []struct {
		to   *string
		with string
	}{{&s.order, h.Order}, {&s.stamp, h.Stamp}, {&s.radiation, h.RadiationUnit}, {&s.thermo, h.TemperatureUnit}, {&s.name, h.Name}} {
		if c.with != "" {
			*c.to = c.with
		}
	}
	s.told = h.Stamp != ""
	if h.RadiationUnit != "" {
		s.unlike = "" // who names the unit answers for it
	}
	if h.DecimalComma != "" {
		s.comma = h.DecimalComma == "yes"
	}
	over(&s.latitude, h.Latitude)
	over(&s.longitude, h.Longitude)
	over(&s.elevation, h.Elevation)
	over(&s.offset, h.UTCOffset)
	over(&s.zone, h.StampZone)
	over(&s.move, h.Move)
	s.summer = h.Summer
}

func set(to *int, n int) {
	switch {
	case n > 0:
		*to = n - 1
	case n < 0:
		*to = -1
	}
}

func over[T unit.Number](to *unit.Known[T], with unit.Known[T]) {
	if with.Is {
		*to = with
	}
}

// complete refuses a sheet that lacks what no year can do without, all at once.
func (s *sheet) complete() error {
	var r Refused
	if s.first >= len(s.lines) || s.first < 0 {
		r.add(Fault{Line: s.first + 1, Reason: say.Words("There are no rows of values.")})
	}
	if s.col[temp] < 0 {
		r.add(Fault{Reason: say.Words("No column of air temperature was found. Say which column it is.")})
	}
	if s.col[ghi] < 0 && (s.col[dni] < 0 || s.col[dhi] < 0) {
		r.add(Fault{Reason: say.Words("No column of global radiation was found, nor direct and diffuse together. Say which columns they are.")})
	}
	if n := s.usualFields(); s.layout == Table && len(s.heads) > 1 && n > len(s.heads)+1 {
		r.add(Fault{Line: s.first + 1, Reason: say.That("The rows have %s fields and there are %s names of columns. Does a decimal comma stand where commas part the fields?", n, len(s.heads))})
	}
	if s.unlike != "" {
		r.add(Fault{Value: s.unlike, Reason: say.Words("are the units of the columns of light by their names. Give all of them in one unit.")})
	}
	if s.slope != 0 {
		r.add(Fault{Reason: say.That("The file holds the light on a plane that slopes %s, as its head says. The light on the flat is needed: get the file again for a slope of 0°.", say.Angle(unit.Angle(s.slope)*unit.Degree))})
	}
	if s.col[ghi] < 0 && s.layout == Table {
		for i, h := range s.heads {
			if clearSky(h) {
				r.add(Fault{Column: i + 1, Head: h, Reason: say.Words("is the light of a sky without clouds. It is not used for the light of this place.")})
				break
			}
		}
	}
	if radiationUnits[s.radiation] == 0 {
		r.add(Fault{Value: s.radiation, Reason: say.Words("is not a unit of radiation that is known here.")})
	}
	s.completePlace(&r)
	return r.orNil()
}

func (s *sheet) completePlace(r *Refused) {
	if !s.latitude.Is || !s.longitude.Is {
		r.add(Fault{Reason: say.Words("The file does not say where it is from. Give latitude and longitude.")})
		return
	}
	if math.Abs(float64(s.latitude.Val)) > math.Pi/2 {
		r.add(Fault{Value: unit.Rounded(s.latitude.Val.Degrees(), 5) + "°", Reason: say.Words("is not a latitude: it goes from −90 to 90.")})
	}
	if math.Abs(float64(s.longitude.Val)) > 2*math.Pi {
		r.add(Fault{Value: unit.Rounded(s.longitude.Val.Degrees(), 5) + "°", Reason: say.Words("is not a longitude: it goes from −180 to 180.")})
	}
	if s.longitude.Val > math.Pi { // some count from 0 to 360 east
		s.longitude.Val -= 2 * math.Pi
	}
	if s.longitude.Val < -math.Pi {
		s.longitude.Val += 2 * math.Pi
	}
	if s.offset.Is && math.Abs(float64(s.offset.Val)) > 14*3600 {
		r.add(Fault{Value: unit.Rounded(float64(s.offset.Val)/3600, 5), Reason: say.Words("is not a time zone: it goes from −12 to 14 hours.")})
	}
	if s.elevation.Is && (s.elevation.Val < -500 || s.elevation.Val > 9000) {
		s.elevation = unit.Known[unit.Length]{} // a code for missing
	}
}

// mapping is how the sheet was read, for the page to show and change.
func (s *sheet) mapping() Mapping {
	comma := "no"
	if s.comma {
		comma = "yes"
	}
	w := s.when
	return Mapping{
		Layout: s.layout, Delimiter: string(s.delimiter), DecimalComma: comma, FirstLine: s.first + 1,
		GHI: from1(s.col[ghi]), DHI: from1(s.col[dhi]), DNI: from1(s.col[dni]), Temperature: from1(s.col[temp]),
		Date: from1(w.date), Time: from1(w.time), Year: from1(w.year), Month: from1(w.month), Day: from1(w.day),
		Hour: from1(w.hour), Minute: from1(w.minute), Order: s.order, Stamp: s.stamp, StampZone: s.zone, Move: s.move, Summer: s.summer,
		RadiationUnit: s.radiation, TemperatureUnit: s.thermo, Name: s.name, Latitude: s.latitude, Longitude: s.longitude,
		Elevation: s.elevation, UTCOffset: s.offset,
	}
}

func from1(i int) int {
	if i < 0 {
		return -1
	}
	return i + 1
}
