package place

import (
	"fmt"
	"testing"
	"time"
)

// TestDeskHasRoom keeps the last files that wait for an answer, within sixteen megabytes, and the last one always.
func TestDeskHasRoom(t *testing.T) {
	now := time.Date(2026, 3, 20, 12, 0, 0, 0, time.UTC)
	for _, c := range []struct {
		sizes []int // MiB, in the order in which they come
		kept  []int
	}{
		{[]int{1, 1, 1, 1, 1}, []int{1, 2, 3, 4}},
		{[]int{9, 9}, []int{1}},
		{[]int{7, 9}, []int{0, 1}},
		{[]int{1, 30}, []int{1}},
		{[]int{30, 1}, []int{1}},
		{[]int{8, 7, 1, 1}, []int{1, 2, 3}},
	} {
		d := &desk{}
		for i, mib := range c.sizes {
			d.put(sheetOnDesk{token: fmt.Sprint(i), project: 1, at: now, data: make([]byte, mib<<20)})
		}
		var kept []int
		for i := range c.sizes {
			if _, ok := d.find(fmt.Sprint(i), 1, now); ok {
				kept = append(kept, i)
			}
		}
		if fmt.Sprint(kept) != fmt.Sprint(c.kept) {
			t.Errorf("%v MiB: %v are kept, want %v", c.sizes, kept, c.kept)
		}
	}
}
