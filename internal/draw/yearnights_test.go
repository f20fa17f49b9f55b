package draw

import (
	"regexp"
	"strconv"
	"strings"
	"testing"
)

var madeDots = regexp.MustCompile(`<path d="([^"]*)" class="made"`)

// By hand: 300 years are 300 dots, 301 are stacks of up to two years a dot, 1,000 of up to four; and a stack of so many years on
// one night keeps below the figures, which stand more than 58 over its ground.
func TestDotsOfYears(t *testing.T) {
	for _, tc := range []struct{ years, dots, per int }{{201, 201, 1}, {300, 300, 1}, {301, 151, 2}, {1000, 251, 4}} {
		one := NightsOfYears{Name: "A", Drawn: true, Bad: 300, Usual: 300, Good: 300}
		for range tc.years - 1 {
			one.Made = append(one.Made, 300)
		}
		one.Made = append(one.Made, 340)
		m := madeDots.FindStringSubmatch(YearNights{Low: 300, High: 340, Each: []NightsOfYears{one}}.Draw(false))
		if m == nil {
			t.Fatalf("%d years: no dots", tc.years)
		}
		if n := strings.Count(m[1], "h0"); n != tc.dots || YearsADot(tc.years) != tc.per {
			t.Errorf("%d years: %d dots of %d years, want %d of %d", tc.years, n, YearsADot(tc.years), tc.dots, tc.per)
		}
		up := 0.0
		for _, step := range regexp.MustCompile(`m0-([\d.]+)h0`).FindAllStringSubmatch(m[1], -1) {
			v, err := strconv.ParseFloat(step[1], 64)
			if err != nil {
				t.Fatal(err)
			}
			up += v
		}
		if up > 58 {
			t.Errorf("%d years: the stack is %.1f high", tc.years, up)
		}
	}
}

// Files are strokes, and the own year of a typical file a ring, on the axis of the made years: of 300 to 340 nights on 1000 less
// 84 at each end a night is 20.8, so 310 is at 292, 320 at 500 and 330 at 708. The worst and the best have their names.
func TestFilesOnTheAxis(t *testing.T) {
	one := NightsOfYears{Name: "A", Drawn: true, Made: []float64{300, 340}, Real: []float64{320, 310}, RealNames: []string{"2012", "2011"}, Ring: 330, Bad: 310, Usual: 315, Good: 320}
	got := YearNights{Low: 300, High: 340, Each: []NightsOfYears{one}}.Draw(false)
	for _, want := range []string{`d="M500 `, `M292 `, `<circle cx="708"`, `<text x="292"`, ">2011<", ">2012<", ">bad 310<", ">315 usual<", ">320 good<"} {
		if !strings.Contains(got, want) {
			t.Errorf("not drawn: %s\n%s", want, got)
		}
	}
}

// A variant whose years are all alike has its words and no strip, no axis and no dot, and stands under those with one.
func TestYearsAlike(t *testing.T) {
	alike := NightsOfYears{Name: "A", Say: "No night is full in any year."}
	alone := YearNights{Low: 0, High: 20, Each: []NightsOfYears{alike}}.Draw(true)
	if !strings.Contains(alone, ">No night is full in any year.<") || strings.Contains(alone, "<path") || strings.Contains(alone, "<line") {
		t.Error(alone)
	}
	both := YearNights{Low: 300, High: 340, Each: []NightsOfYears{alike, {Name: "B", Drawn: true, Made: []float64{300, 340}, Bad: 300, Usual: 320, Good: 340}}}.Draw(true)
	if strings.Index(both, ">A<") < strings.Index(both, ">B<") {
		t.Error("what has no strip stands above what has one")
	}
}

// Seven nights of a row of eight are seven filled squares and an open one; forty are as many as fit, with a break.
func TestSpell(t *testing.T) {
	for _, tc := range []struct{ nights, of, out, lit, gap int }{{7, 8, 7, 1, 0}, {0, 3, 0, 3, 0}, {40, 41, 14, 0, 1}} {
		s := Spell(tc.nights, tc.of)
		if out, lit, gap := strings.Count(s, `"out"`), strings.Count(s, `"lit"`), strings.Count(s, `"gap"`); out != tc.out || lit != tc.lit || gap != tc.gap {
			t.Errorf("%d of %d: %d filled, %d open, %d breaks", tc.nights, tc.of, out, lit, gap)
		}
	}
}
