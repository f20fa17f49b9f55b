package weather

import (
	"fmt"
	"math"
	"sort"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// A year here is a circle of minutes. Where a file holds 29 February it is the circle of 366 days, and the minutes of
// that day are dropped; else it is the circle of 365.
const (
	dayMinutes  = 1440
	leapStart   = 59 * dayMinutes // midnight before 29 February
	yearMinutes = 365 * dayMinutes
)

// before is the number of days before a month, in a year of 365 or 366 days.
func before(month int, leap bool) int {
	n := 0
	for m := 1; m < month; m++ {
		n += monthDays[m]
	}
	if month > 2 && !leap {
		n--
	}
	return n
}

// minute is the stamp's minute of the year.
func (m moment) ofYear(leap bool) int {
	return (before(m.month, leap)+m.day-1)*dayMinutes + m.minute
}

// label names a minute of the 365-day year: "3 February 14:00".
func label(minute int) string {
	minute = ((minute % yearMinutes) + yearMinutes) % yearMinutes
	day := minute / dayMinutes
	month := 12
	for before(month, false) > day {
		month--
	}
	return fmt.Sprintf("%d %s %02d:%02d", day-before(month, false)+1, monthLong[month-1], minute%dayMinutes/60, minute%60)
}

// grid is where rows stand in the year: the minute at which each begins, and the step between them.
type grid struct {
	begin []int // minute of the circle at which the row's interval begins, on the stamps' clock
	step  int   // minutes
	leap  bool
}

// circle is the length of the year of the grid.
func (g grid) circle() int {
	if g.leap {
		return yearMinutes + dayMinutes
	}
	return yearMinutes
}

// gridOf finds the step and the beginning of each row.
func (s *sheet) gridOf(rows []row) (grid, error) {
	if s.when.none() {
		return s.gridByOrder(len(rows))
	}
	g := grid{begin: make([]int, len(rows))}
	hour24, hour0, half := false, false, true
	for _, x := range rows {
		g.leap = g.leap || x.at.month == 2 && x.at.day == 29
		hour24 = hour24 || x.at.minute == dayMinutes
		hour0 = hour0 || x.at.minute < 60
		half = half && x.at.minute%60 == 30
	}
	for i, x := range rows {
		g.begin[i] = x.at.ofYear(g.leap)
		if x.at.zoned {
			g.begin[i] = (g.begin[i] - x.at.zone + g.circle()) % g.circle()
			s.zone, s.zoned = unit.Of(unit.Duration(0)), true
		}
	}
	var err error
	if g.step, err = stepOf(g.begin, g.circle()); err != nil {
		return g, err
	}
	if s.layout == EnergyPlus && s.perHour == 1 && hour0 && !hour24 && !s.told && !s.guessed {
		s.stamp, s.guessed = "start", true
		s.odd = "The hours of this file count from 0 to 23, where the layout has 1 to 24."
	}
	if s.stamp == "" {
		switch {
		case half && g.step == 60:
			s.stamp, s.guessed = "middle", true
		case hour24 && !hour0:
			s.stamp = "end"
		default:
			s.stamp, s.guessed = "start", true
		}
	}
	if s.summer != [2]int{} {
		g.inSummer(s.summer)
		s.saving = "The rows from " + DayOfYear(s.summer[0]) + " to " + DayOfYear(s.summer[1]) + " are read as daylight saving time, an hour ahead of the place's clock."
	} else if from, to, ok := clockJump(g.begin, g.step, g.circle()); ok {
		s.saving = "The times of this file jump by an hour and back: its rows keep daylight saving time from " + label(from) + " to " + label(to) + " and are read in standard time."
	}
	before := int(back(s.stamp, float64(g.step)))
	for i := range g.begin {
		g.begin[i] = ((g.begin[i]-before)%g.circle() + g.circle()) % g.circle()
	}
	return g, nil
}

// gridByOrder is for files without stamps: rows follow each other from the first hour of January on.
func (s *sheet) gridByOrder(n int) (grid, error) {
	for _, days := range []int{365, 366} {
		if n >= days*24 && n%(days*24) == 0 && days*dayMinutes%n == 0 {
			g := grid{step: days * dayMinutes / n, leap: days == 366, begin: make([]int, n)}
			for i := range g.begin {
				g.begin[i] = i * g.step
			}
			s.stamp = "start"
			return g, nil
		}
	}
	return grid{}, refuse("Without dates a file must have 8\u00a0760 or 8\u00a0784 rows (hours), or 17\u00a0520 or 17\u00a0568 (half-hours). This one has %s.", n)
}

// stepOf is the commonest difference between neighbours in time.
func stepOf(begin []int, circle int) (int, error) {
	sorted := append([]int(nil), begin...)
	sort.Ints(sorted)
	count := map[int]int{}
	best := 0
	for i := 1; i < len(sorted); i++ {
		if d := sorted[i] - sorted[i-1]; d > 0 {
			if count[d]++; count[d] > count[best] || count[d] == count[best] && d < best {
				best = d
			}
		}
	}
	if best == 0 || best > 60 || 60%best != 0 || circle%best != 0 {
		return 0, refuse("The rows are %s minutes apart. A weather file here has a row for every hour, half-hour or other even part of an hour.", best)
	}
	return best, nil
}

// year holds the columns of a year by step, NaN where nothing stands.
type year struct {
	step  int // minutes
	shift int // minutes by which the place's clock is ahead of the first slot's beginning
	v     [columns][]float64
	line  []int // where each step stands in the file, 0 for a gap
}

// inYear puts the rows where they belong, drops 29 February, and fills what little is missing.
func (s *sheet) inYear(rows []row, rep *Report) (*year, error) {
	g, err := s.gridOf(rows)
	if err != nil {
		return nil, err
	}
	y := &year{step: g.step}
	rep.Step, rep.LeapDay = minutes(g.step), g.leap
	if s.odd != "" {
		rep.note(true, "%s", s.odd)
	}
	if s.saving != "" {
		rep.note(true, "%s", s.saving)
	}
	rep.Mapping.Stamp, rep.Mapping.Order = s.stamp, s.order
	phase := phaseOf(g)
	n := yearMinutes / g.step
	for c := range columns {
		y.v[c] = make([]float64, n)
		for i := range y.v[c] {
			y.v[c][i] = math.NaN()
		}
	}
	taken := make([]int, n)
	var r Refused
	for i, x := range rows {
		b := g.begin[i]
		if g.leap && b >= leapStart && b < leapStart+dayMinutes {
			continue
		}
		if g.leap && b >= leapStart {
			b -= dayMinutes
		}
		if (b-phase)%g.step != 0 {
			r.add(Fault{Line: x.line, Reason: say.That("This row stands off the beat of the others, which come every %s minutes.", g.step)})
			continue
		}
		slot := ((b - phase + yearMinutes) % yearMinutes) / g.step
		if taken[slot] != 0 && s.summer != [2]int{} {
			continue // the hour that is there twice where clocks are put back
		}
		if taken[slot] != 0 {
			r.add(Fault{Line: x.line, Reason: say.That("This row is for the same time as line %s (%s). Is it summer time, or more than one year?", taken[slot], label(b))})
			continue
		}
		taken[slot] = x.line
		for c := range columns {
			y.v[c][slot] = x.v[c]
		}
	}
	if err := r.orNil(); err != nil {
		return nil, err
	}
	y.shift, y.line = phase, taken
	return y, y.fill(s, rep)
}

// phaseOf is how many minutes after the full step the rows begin.
func phaseOf(g grid) int {
	count := make([]int, g.step)
	for _, b := range g.begin {
		count[b%g.step]++
	}
	best := 0
	for p, n := range count {
		if n > count[best] {
			best = p
		}
	}
	return best
}

// fill interpolates up to MissingHours hours of each column that is used; more is a refusal that names every gap.
func (y *year) fill(s *sheet, rep *Report) error {
	var r Refused
	for c := range columns {
		missing := 0
		for _, v := range y.v[c] {
			if math.IsNaN(v) {
				missing++
			}
		}
		if missing == len(y.v[c]) {
			y.v[c] = nil // no such column
			continue
		}
		if missing == 0 || c == dni && y.v[ghi] != nil && y.v[dhi] != nil {
			continue
		}
		gaps := y.gaps(c)
		if missing*y.step > MissingHours*60 {
			for _, gap := range gaps {
				r.add(Fault{Reason: say.That("%s is missing for %s from %s on.", columnNames[c], hours(gap.Hours), gap.From)})
			}
			r.add(Fault{Reason: say.That("Up to %s missing hours of %s are filled from their neighbours; here %s are missing.", MissingHours, columnNames[c], hours(float64(missing*y.step)/60))})
			continue
		}
		for _, gap := range gaps {
			rep.note(true, "%s was missing for %s from %s on and was filled in a straight line.", columnNames[c], hours(gap.Hours), gap.From)
		}
		rep.Gaps = append(rep.Gaps, gaps...)
		bridge(y.v[c])
	}
	if err := r.orNil(); err != nil {
		return err
	}
	return y.enough()
}

// enough refuses a year in which a column that was named holds nothing at all.
func (y *year) enough() error {
	if y.v[temp] == nil {
		return refuse("The column of temperature holds no values, only codes for missing.")
	}
	if y.v[ghi] == nil && (y.v[dni] == nil || y.v[dhi] == nil) {
		return refuse("The column of global radiation holds no values, only codes for missing.")
	}
	return nil
}

// hours says a number of hours, "1 hour" or "49.5 hours", with every digit that steps of minutes make.
func hours(h float64) string {
	if h == 1 {
		return "1 hour"
	}
	return unit.Rounded(h, 6) + " hours"
}

// gaps lists the runs of missing steps of a column.
func (y *year) gaps(c int) (out []Gap) {
	v := y.v[c]
	for i := 0; i < len(v); i++ {
		if !math.IsNaN(v[i]) {
			continue
		}
		from := i
		for i < len(v) && math.IsNaN(v[i]) {
			i++
		}
		out = append(out, Gap{columnNames[c], label(from*y.step + y.shift), float64((i-from)*y.step) / 60})
	}
	return out
}

// bridge fills NaN in a circle in a straight line between the neighbours that are there.
func bridge(v []float64) {
	n := len(v)
	start := 0
	for start < n && math.IsNaN(v[start]) {
		start++
	}
	for k := 1; k <= n; k++ {
		i := (start + k) % n
		if !math.IsNaN(v[i]) {
			continue
		}
		end := k
		for math.IsNaN(v[(start+end)%n]) {
			end++
		}
		a, b := v[(start+k-1)%n], v[(start+end)%n]
		for j := k; j < end; j++ {
			v[(start+j)%n] = a + (b-a)*float64(j-k+1)/float64(end-k+1)
		}
		k = end
	}
}
