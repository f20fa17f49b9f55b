package unit

import (
	"strings"
	"testing"
)

// By hand: 4.5 m are 4.5·16/0.0254 = 2834.6 sixteenths of an inch, so 2835 = 14·192 + 9·16 + 3. 5.9 m: 3716.5 → 3717 =
// 19·192 + 4·16 + 5. 0.6 m: 377.95 → 378 = 192 + 11·16 + 10. 0.1 m: 62.99 → 63 = 3·16 + 15. 6.31 m are 248.43″, up to 249″ =
// 20′ 9″; 16 m are 52.49 ft; 4.5 m cut off are 2834 sixteenths.
func TestTape(t *testing.T) {
	for _, tc := range []struct {
		l    Length
		step int
		dir  Round
		want string
	}{
		{4.5, TapeSixteenth, Nearest, "14′ 9-3/16″"},
		{5.9, TapeSixteenth, Nearest, "19′ 4-5/16″"},
		{0.6, TapeSixteenth, Nearest, "1′ 11-5/8″"},
		{0.1, TapeSixteenth, Nearest, "3-15/16″"},
		{4.5, TapeSixteenth, Down, "14′ 9-1/8″"},
		{6.31, TapeInch, Up, "20′ 9″"},
		{16, TapeFoot, Up, "53′"},
		{12 * 0.3048, TapeFoot, Up, "12′"},
		{0.0254 * 249, TapeInch, Up, "20′ 9″"},
		{0.3048, TapeSixteenth, Nearest, "1′"},
		{0.3048 + 0.0127, TapeSixteenth, Nearest, "1′ 0-1/2″"},
		{0.0127, TapeSixteenth, Nearest, "1/2″"},
		{0, TapeSixteenth, Nearest, "0″"},
	} {
		if got := strings.ReplaceAll(Tape(tc.l, tc.step, tc.dir), Space, " "); got != tc.want {
			t.Errorf("%v m in steps of %d/16″: %q, want %q", float64(tc.l), tc.step, got, tc.want)
		}
	}
}

// A size is written as it is sold: 12 mm rope, 1/2″ rope (12.7 mm), M6, a shaft of 1-1/4″ (31.75 mm); 127 mm are 5″.
func TestBought(t *testing.T) {
	for _, tc := range []struct {
		l    Length
		sys  System
		want string
	}{
		{0.012, Imperial, "12 mm"},
		{0.0127, Imperial, "1/2″"},
		{0.0127, Metric, "1/2″"},
		{0.006, Imperial, "6 mm"},
		{0.03175, Imperial, "1-1/4″"},
		{0.00396875, Metric, "5/32″"},
		{0.127, Imperial, "5″"},
		{0.127, Metric, "127 mm"},
		{0.0123, Metric, "12.3 mm"},
	} {
		if got := strings.ReplaceAll(Bought(tc.l, tc.sys), Space, " "); got != tc.want {
			t.Errorf("%v m for system %v: %q, want %q", float64(tc.l), tc.sys, got, tc.want)
		}
	}
}

// What a tape is held to is told as its marks show it, by hand as above: 4.5 m are 14′ 9-3/16″, a drum of 100 mm is 3-15/16″. Two digits
// are whole inches (177.2 are 177 = 14′ 9″), one is whole feet. Less than half an inch and more than 100 ft are no lengths of a tape.
// A rope or a cable is told in whole inches from a foot up. Metres stay metres, and what was told can be typed.
func TestTapedQuantities(t *testing.T) {
	for _, tc := range []struct{ got, want string }{
		{Heights.Format(4.5, Imperial), "14′ 9-3/16″"}, {Heights.Format(4.5, Metric), "4.5 m"}, {Widths.Format(0.1, Imperial), "3-15/16″"}, {Widths.Format(0.1, Metric), "100 mm"},
		{Heights.FormatTo(4.5, Imperial, 2, Nearest), "14′ 9″"}, {Heights.FormatTo(4.5, Imperial, 1, Nearest), "15′"}, {Heights.FormatTo(6.31, Imperial, 3, Up), "20′ 8-7/16″"},
		{Widths.FormatTo(0.1, Imperial, 3, Down), "3-7/8″"}, {Widths.FormatTo(0.1, Imperial, 1, Nearest), "4″"}, {Heights.Format(-4.5, Imperial), Minus + "14′ 9-3/16″"}, {Heights.Format(403, Imperial), "1 320 ft"},
		{Widths.Format(0.001, Imperial), "0.0394 in"}, {Heights.Fine().Format(4.5, Imperial), "14.8 ft"}, {Lengths.Fine().Format(4.5, Imperial), "14.8 ft"}, {Heights.Number(4.5, Imperial), "14.8"},
		{Lengths.Format(4.5, Imperial), "14′ 9″"}, {Lengths.FormatTo(4.5, Imperial, 3, Up), "14′ 10″"}, {Lengths.FormatTo(4.5, Imperial, 6, Nearest), "14′ 9-3/16″"}, {Lengths.Format(0.1, Imperial), "3-15/16″"}, {Lengths.Format(403, Imperial), "1 320 ft"},
	} {
		if got := strings.ReplaceAll(tc.got, Space, " "); got != tc.want {
			t.Errorf("%q, want %q", got, tc.want)
		}
	}
	for _, text := range []string{"14′ 9-3/16″", "14' 9 3/16\"", "14 ft 9 3/16 in"} {
		if got, known, err := Heights.Parse(text, Imperial); err != nil || !known || got != 2835*0.0254/16 {
			t.Errorf("%q is read as %v (%v, %v)", text, got, known, err)
		}
	}
}
