package page

import (
	"time"

	"duskweight/internal/model/reason"
)

// MonthDays are the lengths of the months of the typical year.
var MonthDays = [12]int{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}

// FirstDay is the first day of a month of the typical year; both count from 0.
func FirstDay(month int) (day int) {
	for _, days := range MonthDays[:month] {
		day += days
	}
	return day
}

// When writes a time as its reader thinks of it.
func (s *Site) When(t time.Time) string {
	now := s.Now()
	t = t.In(now.Location())
	midnight := func(t time.Time) time.Time { return time.Date(t.Year(), t.Month(), t.Day(), 12, 0, 0, 0, time.UTC) }
	switch days := int(midnight(now).Sub(midnight(t)).Hours() / 24); {
	case days == 0:
		return "today, " + t.Format("15:04")
	case days == 1:
		return "yesterday, " + t.Format("15:04")
	}
	return t.Format("2 January 2006, 15:04")
}

// DayText writes a day of a test as its reader thinks of it, "12 November 2027"; a day that is not known is said to be so.
func DayText(d reason.Day) string {
	t, err := time.Parse(time.DateOnly, string(d))
	if err != nil {
		return "a day that is not known"
	}
	return t.Format("2 January 2006")
}
