package model

import (
	"strconv"
	"strings"
	"testing"
	"time"
)

func TestLongestRun(t *testing.T) {
	for want, hours := range map[[2]int]string{{0, 0}: "", {9, 12}: "2 9 10 11", {22, 24}: "22 23", {0, 3}: "0 1 2 5"} {
		in := " " + hours + " "
		if from, to := longestRun(func(h int) bool { return strings.Contains(in, " "+strconv.Itoa(h)+" ") }); from != want[0] || to != want[1] {
			t.Errorf("%q: %d to %d", hours, from, to)
		}
	}
}

// The first of March is the 60th day of a year without a leap day, the last of December its 365th.
func TestDaysOf(t *testing.T) {
	if first, next := daysOf(time.February); first != 31 || next != 59 {
		t.Errorf("February: %d to %d", first, next)
	}
	if first, next := daysOf(time.December); first != 334 || next != 365 {
		t.Errorf("December: %d to %d", first, next)
	}
}
