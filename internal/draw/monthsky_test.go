package draw

import (
	"math"
	"strings"
	"testing"
)

// The way of the sun is strong only where it stands over the outline: with a wall of 30° over the whole east and nothing in the
// west, of a way from east to west that rises to 60° the first half hour angle under 30° is only dashed. And a way that goes out
// at one side and comes in at the other is no line across the picture.
func TestSunOverTheOutline(t *testing.T) {
	rad := math.Pi / 180
	outline := []SkyPoint{{-math.Pi, 30 * rad}, {0, 30 * rad}, {0.001, 0}, {math.Pi, 0}}
	path := []SkyPoint{{-90 * rad, 0}, {-60 * rad, 20 * rad}, {-40 * rad, 40 * rad}, {0, 60 * rad}, {60 * rad, 20 * rad}, {90 * rad, 0}}
	if seen := runs(path, outline); len(seen) != 1 || len(seen[0]) != 4 || seen[0][0] != path[2] {
		t.Errorf("seen: %v", seen)
	}
	round := []SkyPoint{{170 * rad, 0.1}, {179 * rad, 0.1}, {-179 * rad, 0.1}, {-170 * rad, 0.1}}
	if all := runs(round, nil); len(all) != 2 {
		t.Errorf("over the edge of the picture: %v", all)
	}
}

// On one scale of 6, a mean of 3 is a bar of half of 54 units, and its spread from 1 to 5 a line from 124 − 9 to 124 − 45; a night
// of 12 hours is half of the 96 units of a day.
func TestMonthToScale(t *testing.T) {
	s := MonthSky{Known: true, Mean: 3, Low: 1, High: 5, Top: 6, Value: "3", Night: 12}.Draw()
	for _, want := range []string{`y="97" width="40" height="27"`, "M50 115V79", `x="26" y="145" width="48"`} {
		if !strings.Contains(s, want) {
			t.Errorf("not drawn: %s\n%s", want, s)
		}
	}
	if dark := (MonthSky{Known: true, Top: 6, Value: "0", Night: 24}).Draw(); strings.Contains(dark, `class="seen"`) || strings.Contains(dark, `class="sun"`) || strings.Contains(dark, `class="spread"`) {
		t.Errorf("a month without sun: %s", dark)
	}
	if frames := (MonthSky{}).Draw(); strings.Count(frames, `class="unknown"`) != 3 || strings.Contains(frames, "<text") {
		t.Errorf("not known: %s", frames)
	}
}

// South of the equator north is in the middle, and east at the right hand.
func TestSkylineTurns(t *testing.T) {
	if s := (Skyline{North: true}).Draw(); !strings.Contains(s, `<text x="330" y="165" font-size="11" fill="currentColor" text-anchor="middle" class="soft">east`) {
		t.Error(s)
	}
	if s := (Skyline{}).Draw(); !strings.Contains(s, `<text x="110" y="165" font-size="11" fill="currentColor" text-anchor="middle" class="soft">east`) {
		t.Error(s)
	}
}
