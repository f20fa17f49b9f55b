package draw

import (
	"encoding/xml"
	"fmt"
	"strings"
	"testing"
)

// The picture begins at 8, so 18 o'clock is its eleventh hour, at 100 of 240. With 2 W always and 8 W more in that hour, the scale
// ends at 10 W: the band of what is always on is 2/10 of 60 = 12 high and ends at the floor, the rest 48 stands on it. By hand.
func TestSumIsToScale(t *testing.T) {
	var s Sum
	for h := range 24 {
		s.Always[h] = 2
	}
	s.Rest[18], s.Dark[18] = 8, true
	if top, past := s.Scale(); top != 2.5 || past != 18 {
		t.Errorf("10 W beside 2 W: scale to %v W, past it %d; want 1.25 × 2 W and 18", top, past)
	}
	s.Rest[19] = 3
	if top, past := s.Scale(); top != 10 || past != -1 {
		t.Errorf("10 W beside 5 W: scale to %v W, past it %d", top, past)
	}
	var svg struct {
		Rects []struct {
			X      float64 `xml:"x,attr"`
			Y      float64 `xml:"y,attr"`
			Height float64 `xml:"height,attr"`
			Class  string  `xml:"class,attr"`
		} `xml:"rect"`
	}
	if err := xml.Unmarshal([]byte(s.Draw()), &svg); err != nil {
		t.Fatal(err)
	}
	var at []string
	for _, r := range svg.Rects {
		if r.X == 100 {
			at = append(at, fmt.Sprintf("%s %g+%g", r.Class, r.Y, r.Height))
		}
	}
	if got, want := strings.Join(at, "; "), "dark 0+60;  0+48; always 48+12"; got != want {
		t.Errorf("18 o'clock is drawn as %q, want %q", got, want)
	}
}
