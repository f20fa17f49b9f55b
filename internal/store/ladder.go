package store

import (
	"fmt"
	"time"
)

// The ladder of copies: the newest ones, and then the newest of each of the last days, weeks and months that have one.
const (
	recentCopies  = 10
	dailyCopies   = 7
	weeklyCopies  = 8
	monthlyCopies = 12
)

// rung is one part of the ladder: of so many periods, the newest copy is kept.
type rung struct {
	periods int
	of      func(time.Time) string
}

var rungs = [...]rung{
	{dailyCopies, func(t time.Time) string { return t.Format("2006-01-02") }},
	{weeklyCopies, func(t time.Time) string { y, w := t.ISOWeek(); return fmt.Sprint(y, w) }},
	{monthlyCopies, func(t time.Time) string { return t.Format("2006-01") }},
}

// outgrown returns the copies that no part of the ladder keeps. The copies come the newest first, by number: the clock
// only says which of them were made in one day, week or month (of UTC), never which is the newer one.
func outgrown(newestFirst []Backup) (old []Backup) {
	var seen [len(rungs)]map[string]bool
	for i := range seen {
		seen[i] = map[string]bool{}
	}
	for i, b := range newestFirst {
		kept := i < recentCopies
		for k, r := range rungs {
			if period := r.of(b.At); !seen[k][period] && len(seen[k]) < r.periods {
				seen[k][period] = true
				kept = true
			}
		}
		if !kept {
			old = append(old, b)
		}
	}
	return old
}
