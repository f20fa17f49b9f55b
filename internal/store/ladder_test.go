package store

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"
)

// climb makes copies at the given times, one after another, each followed by a thinning out, and returns what is left.
func climb(times []time.Time) (left []Backup) {
	for i, at := range times {
		left = slices.Insert(left, 0, Backup{Number: i + 1, At: at})
		old := outgrown(left)
		left = slices.DeleteFunc(left, func(b Backup) bool { return slices.Contains(old, b) })
	}
	return left
}

// TestLadder copies every half hour for two years. By the numbers of the plan 10 + 7 + 8 + 12 copies are the most that
// can be left; each of the last 7 days, 8 weeks and 12 months is there with its last copy.
func TestLadder(t *testing.T) {
	var times []time.Time
	for at := noon; at.Before(noon.AddDate(2, 0, 0)); at = at.Add(30 * time.Minute) {
		times = append(times, at)
	}
	left := climb(times)
	if len(left) > 10+7+8+12 || len(left) < 10+6+4+9 {
		t.Errorf("%d copies are left", len(left))
	}
	last := times[len(times)-1]
	has := func(what string, end time.Time) {
		t.Helper()
		// the last half hour before the end of the period, in the time before now
		want := end.Add(-30 * time.Minute)
		if end.After(last) {
			want = last
		}
		if !slices.ContainsFunc(left, func(b Backup) bool { return b.At.Equal(want) }) {
			t.Errorf("no copy of %s: %v", what, want)
		}
	}
	for i := range 10 {
		if got := left[i]; got.Number != len(times)-i {
			t.Errorf("recent copy %d is number %d", i, got.Number)
		}
	}
	day := last.Truncate(24 * time.Hour)
	for i := range 7 {
		has(fmt.Sprint("day ", i), day.AddDate(0, 0, 1-i))
	}
	monday := day.AddDate(0, 0, -(int(day.Weekday())+6)%7)
	for i := range 8 {
		has(fmt.Sprint("week ", i), monday.AddDate(0, 0, 7-7*i))
	}
	first := time.Date(last.Year(), last.Month(), 1, 0, 0, 0, 0, time.UTC)
	for i := range 12 {
		has(fmt.Sprint("month ", i), first.AddDate(0, 1-i, 0))
	}
}

// TestLadderAndClocks: a clock that jumps far ahead, or back to its first day, never costs one of the newest copies, and
// what the true months hold comes back once the clock is right again.
func TestLadderAndClocks(t *testing.T) {
	for name, jump := range map[string]time.Time{"ahead": noon.AddDate(80, 0, 0), "back": time.Unix(0, 0).UTC()} {
		var times []time.Time
		for i := range 200 {
			times = append(times, noon.AddDate(0, 0, i))
		}
		for i := range 30 {
			times = append(times, jump.AddDate(0, 0, i))
		}
		n := len(times)
		if left := climb(times); left[0].Number != n || left[9].Number != n-9 || !slices.ContainsFunc(left, func(b Backup) bool { return b.Number <= 200 }) {
			t.Errorf("%s: %+v", name, left)
		}
		for i := range 300 {
			times = append(times, noon.AddDate(0, 0, 230+i))
		}
		if left := climb(times); left[0].Number != n+300 || left[9].Number != n+291 {
			t.Errorf("%s and right again: %+v", name, left)
		}
	}
}

// TestThinnedOut removes the files that the ladder does not keep, and no other.
func TestThinnedOut(t *testing.T) {
	s := fresh(t)
	sampled(t, s)
	folder := copyFolder(s.Path())
	if err := os.MkdirAll(folder, 0o700); err != nil {
		t.Fatal(err)
	}
	for i := range 40 { // all of one day
		name := fmt.Sprintf("duskweight-%06d-%s.db", i+1, noon.Add(time.Duration(i)*time.Minute).Format(copyStamp))
		if err := os.WriteFile(filepath.Join(folder, name), nil, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	mine := filepath.Join(folder, "my own.db")
	if err := os.WriteFile(mine, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	must[Backup](t)(s.Backup(t.Context(), later(20)))
	bs := must[[]Backup](t)(s.Backups())
	if len(bs) != 10 || bs[0].Number != 41 || !bs[0].At.Equal(later(20)) || bs[9].Number != 32 {
		t.Errorf("%+v", bs)
	}
	if _, err := os.Stat(mine); err != nil {
		t.Error(err)
	}
}
