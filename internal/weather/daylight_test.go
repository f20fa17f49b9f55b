package weather

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// civil writes a year of hours on the clock on the wall, an hour ahead from one minute of standard time to another. twice says
// that the hour that comes twice stands there twice; else its second row is left out.
func (m made) civil(step, from, to int, twice bool) string {
	var b strings.Builder
	b.WriteString("time,GHI (W/m2),DHI (W/m2),temperature (°C)\n")
	write := func(i, at int) { fmt.Fprintf(&b, "%s,%v,%v,%v\n", iso(0)(at), m.g[i], m.d[i], m.t[i]) }
	for i := range m.g {
		at := i * step
		summer := at >= from && at < to
		if from > to {
			summer = at >= from || at < to
		}
		switch {
		case summer:
			write(i, at+60)
		case !twice && at >= to && at < to+60:
		default:
			write(i, at)
		}
	}
	return b.String()
}

// A year on the clock on the wall is read in standard time where its own times jump, on either half of the Earth and in
// half-hours, within 0.3 % of the truth on planes to the west; where they do not, it is asked about, with the days between
// which the sun runs late, and the answer leads there. By hand: clocks that are put forward at two on 28 March (day 87) and
// back at three on 31 October (day 304) are an hour ahead from minute 86·1440 + 120 to 303·1440 + 120 of standard time.
func TestDaylightSaving(t *testing.T) {
	const march, october = 86*1440 + 120, 303*1440 + 120
	for _, c := range []struct {
		at       place3
		step     int
		from, to int
		twice    bool
	}{{place3{48, 16, 1}, 60, march, october, true}, {place3{48, 16, 1}, 30, march, october, true}, {place3{-34, 151, 10}, 60, 276*1440 + 120, 93*1440 + 120, true}, {place3{48, 16, 1}, 60, march, october, false}, {place3{-34, 151, 10}, 60, 276*1440 + 120, 93*1440 + 120, false}} {
		t.Run(fmt.Sprintf("%v°, every %d minutes, twice %v", c.at.lat, c.step, c.twice), func(t *testing.T) {
			where := fmt.Sprintf("Latitude: %v\nLongitude: %v\nTime zone: %v\n", c.at.lat, c.at.lon, c.at.zone)
			text := where + c.at.rows(c.step, 0).civil(c.step, c.from, c.to, c.twice)
			s, rep := read(t, text, Mapping{})
			if rep.Asks("daylight") == c.twice || says(rep, "jump by an hour and back") != c.twice || s.Slip.Is == c.twice {
				t.Fatalf("asked %v: %v", rep.Asks("daylight"), rep.Notes)
			}
			if !c.twice {
				hint := rep.Mapping
				hint.Summer = rep.Summer
				for i, day := range [2]int{c.from/1440 + 1, c.to/1440 + 1} {
					if math.Abs(float64(rep.Summer[i]-day)) > 4 {
						t.Errorf("from or to day %d, want %d", rep.Summer[i], day)
					}
				}
				if s, rep = read(t, text, hint); rep.Asks("daylight") || rep.Asks("slip") || s.Slip.Is {
					t.Errorf("asked again: %v", rep.Notes)
				}
			}
			right := c.at.rows(60, 0)
			want := sun.Series{GHI: right.g, DHI: right.d, Latitude: s.Latitude, Longitude: s.Longitude, UTCOffset: unit.Duration(c.at.zone) * unit.Hour}
			x, y := west(want)
			a, b := west(s)
			if t.Logf("%+.2f %% %+.2f %%", 100*(a/x-1), 100*(b/y-1)); math.Abs(a/x-1) > 0.003 || math.Abs(b/y-1) > 0.003 {
				t.Errorf("%+.2f %% and %+.2f %%", 100*(a/x-1), 100*(b/y-1))
			}
		})
	}
}

// A missing hour alone, two that are there twice, and rows in no order are no daylight saving time.
func TestClockJumpAlone(t *testing.T) {
	hours := func(change func(i int) []int) (begin []int) {
		for i := range 8760 {
			begin = append(begin, change(i)...)
		}
		return begin
	}
	gap := 87*24 + 2
	for name, begin := range map[string][]int{
		"an hour missing":     hours(func(i int) []int { return []int{i * 60}[:map[bool]int{true: 0, false: 1}[i == gap]] }),
		"an hour twice":       hours(func(i int) []int { return []int{i * 60, i * 60}[:map[bool]int{true: 2, false: 1}[i == 7000]] }),
		"missing by day":      hours(func(i int) []int { return []int{i * 60, i * 60}[:map[int]int{gap + 10: -1, 7000: 1}[i]+1] }),
		"two hours twice":     hours(func(i int) []int { return []int{i * 60, i * 60}[:map[int]int{gap: -1, 7000: 1, 7001: 1}[i]+1] }),
		"in the order of day": {0, 1440, 2880, 60, 1500},
	} {
		if _, _, ok := clockJump(begin, 60, yearMinutes); ok {
			t.Errorf("%s is taken for daylight saving time", name)
		}
	}
}
