package unit

import (
	"math/big"
	"testing"
)

// Hours of a half day as clocks have them: 12 am is midnight, 12 pm noon, 13 pm and 0 am are none; of a whole day 24 ends it.
func TestHoursOfAHalfDay(t *testing.T) {
	for _, c := range []struct {
		h    int64
		half string
		want int64 // −1: none
	}{{12, "am", 0}, {1, "am", 1}, {11, "am", 11}, {12, "pm", 12}, {1, "pm", 13}, {11, "pm", 23}, {0, "am", -1}, {13, "pm", -1}, {13, "am", -1}, {0, "", 0}, {24, "", 24}, {25, "", -1}} {
		got, ok := hourOf(big.NewRat(c.h, 1), c.half)
		if ok != (c.want >= 0) || ok && got.Cmp(big.NewRat(c.want, 1)) != 0 {
			t.Errorf("%d %s: %v, %v", c.h, c.half, got, ok)
		}
	}
	for si, want := range map[float64]string{0: "00:00", 9*3600 + 540: "09:09", 10*3600 + 600: "10:10", 86400: "24:00", 3661: "01:01:01", 3670: "01:01:10", 3659.5: "01:00:59.5"} {
		if got := writeClock(si); got != want {
			t.Errorf("%g s: %q, want %q", si, got, want)
		}
	}
	for text, want := range map[string]int64{"27:1": 27, "1:27": 27, "1 : 5": 5, "100:1": 100} {
		if v, is, err := readGear(text); err != nil || !is || v.Cmp(big.NewRat(want, 1)) != 0 {
			t.Errorf("%q: %v, %v, %v", text, v, is, err)
		}
	}
	for _, text := range []string{"27:2", "x:1", "27x:1", ":1"} {
		if v, is, err := readGear(text); err == nil || !is {
			t.Errorf("%q: %v, %v", text, v, is)
		}
	}
	if _, is, _ := readGear("27"); is {
		t.Error("a plain number is a pair")
	}
}

// An inch tape down and up: 3-15/16″ are 100.0125 mm. A length on a mark stays there in any direction, one beside it goes to the
// mark before or after.
func TestTapeDirections(t *testing.T) {
	for _, c := range []struct {
		mm   float64
		dir  Round
		want string
	}{{100.0125, Down, "3-15/16″"}, {100.0125, Up, "3-15/16″"}, {100, Down, "3-7/8″"}, {100, Up, "3-15/16″"}, {100, Nearest, "3-15/16″"}, {101, Down, "3-15/16″"}, {101, Up, "4″"}, {0, Up, "0″"}} {
		if got := Tape(Length(c.mm/1000), TapeSixteenth, c.dir); got != c.want {
			t.Errorf("%g mm: %q, want %q", c.mm, got, c.want)
		}
	}
	if got := Tape(2e6, TapeFoot, Up); got != "not known" {
		t.Errorf("2,000 km: %q", got)
	}
}
