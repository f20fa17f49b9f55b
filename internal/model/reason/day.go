package reason

import "time"

// Day is a day of the calendar as people write it to a program, "2026-11-28". The empty Day is not known.
type Day string

const layout = "2006-01-02"

// DayOf returns the day of a text, and false where the text is no day.
func DayOf(text string) (Day, bool) {
	if _, err := time.Parse(layout, text); err != nil {
		return "", false
	}
	return Day(text), true
}

// Today is the day of an instant, in the instant's own zone.
func Today(now time.Time) Day { return Day(now.Format(layout)) }

// After reports whether d is later than e. Nothing is later than a day that is not known.
func (d Day) After(e Day) bool { return d != "" && e != "" && d > e }

// Months is the day n months later: the same day of the month, or what the calendar makes of it where that month is
// shorter. A day that is not known stays so.
func (d Day) Months(n int) Day {
	t, err := time.Parse(layout, string(d))
	if err != nil {
		return ""
	}
	return Today(t.AddDate(0, n, 0))
}
