package weather

import (
	"fmt"
	"strings"
	"testing"
	"time"
)

// tableOf is a table of hours from one moment to another, on a clock ahead of UTC, each value telling its year and hour.
func tableOf(from, to time.Time) string {
	var b strings.Builder
	b.WriteString("timestamp,ghi,dhi,air temperature\n")
	for at := from; at.Before(to); at = at.Add(time.Hour) {
		up := 0
		if h := at.Hour(); h >= 8 && h < 16 {
			up = 100 + at.Year()%100
		}
		fmt.Fprintf(&b, "%s,%d,%d,%.1f\n", at.Format("2006-01-02 15:04"), up, up/2, float64(at.Month()))
	}
	return b.String()
}

func day(year, month, day int) time.Time {
	return time.Date(year, time.Month(month), day, 0, 0, 0, 0, time.UTC)
}

// A table of several years gives each whole one, the leap day dropped; the part years are named. By hand: eight hours a day of
// 100 W/m² and the two digits of the year, 365 days: 2014 has 365·8·114 Wh/m².
func TestYearsOfATable(t *testing.T) {
	text := tableOf(day(2013, 11, 20), day(2017, 3, 1))
	years, left, _, err := ReadYears(strings.NewReader(text), here, nil)
	if err != nil || len(years) != 3 {
		t.Fatalf("%d years, %v", len(years), err)
	}
	for i, y := range years {
		want := 2014 + i
		sum := 0.0
		for _, g := range y.Series.GHI {
			sum += g
		}
		if got := int(y.Series.Year.Val); got != want || sum != float64(365*8*(100+want%100)) || y.Report.LeapDay != (want == 2016) {
			t.Errorf("year %d, want %d: %v Wh/m², leap day %v", got, want, sum, y.Report.LeapDay)
		}
	}
	if len(left) != 2 || !strings.Contains(left[0].String(), "2013 is left out") || !strings.Contains(left[1].String(), "2017 is left out") {
		t.Errorf("left out: %v", left)
	}
	// one of the three years alone gives the same hours
	alone, _, err := Read(strings.NewReader(tableOf(day(2015, 1, 1), day(2016, 1, 1))), here, nil)
	if err != nil {
		t.Fatal(err)
	}
	for h, g := range alone.GHI {
		if g != years[1].Series.GHI[h] || alone.TAir[h] != years[1].Series.TAir[h] {
			t.Fatalf("hour %d differs from the year alone", h)
		}
	}
}

// Hours that are stamped with their end belong to the year in which they lie, also the last one, whose stamp is the next
// year's midnight.
func TestYearsStampedAtTheEnd(t *testing.T) {
	hint := here
	hint.Stamp = "end"
	text := tableOf(day(2014, 1, 1).Add(time.Hour), day(2016, 1, 1).Add(time.Hour))
	years, left, _, err := ReadYears(strings.NewReader(text), hint, nil)
	if err != nil || len(years) != 2 || len(left) != 0 {
		t.Fatalf("%d years, %v left out, %v", len(years), left, err)
	}
	for i, y := range years {
		if got := int(y.Series.Year.Val); got != 2014+i || len(y.Report.Gaps) > 1 {
			t.Errorf("year %d with gaps %v", got, y.Report.Gaps)
		}
	}
}

// A typical year, whose months come from different years, is one year without a number; a file of part years alone is
// refused.
func TestYearsThatAreNone(t *testing.T) {
	m := makeYear(40, 12, 1)
	for name, text := range map[string]string{"energyplus": m.energyPlus(), "tmy3": m.tmy3()} {
		years, left, _, err := ReadYears(strings.NewReader(text), Mapping{}, nil)
		if err != nil || len(years) != 1 || len(left) != 0 || years[0].Series.Year.Is {
			t.Errorf("%s: %d years, %v, %v", name, len(years), left, err)
		}
	}
	if years, _, _, err := ReadYears(strings.NewReader(tableOf(day(2014, 3, 1), day(2015, 2, 1))), here, nil); err == nil {
		t.Errorf("eleven months were read as %d years", len(years))
	}
}
