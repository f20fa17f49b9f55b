package draw

import (
	"encoding/xml"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// A value as planned stands on the middle line at 50; 20 % more at 90 of 100, 10 % less at 30, by the scale of 40 for 20 %. What
// lies further off is an arrow at the edge, and its picture is the same however far it is.
func TestBeside(t *testing.T) {
	bar := regexp.MustCompile(`<rect x="([\d.]+)" y="3" width="3.4"`)
	for ratio, want := range map[float64]float64{1: 50, 1.2: 90, 0.9: 30, 1.05: 60} {
		m := bar.FindStringSubmatch(Beside(ratio))
		if m == nil {
			t.Errorf("%g: no bar in %s", ratio, Beside(ratio))
			continue
		}
		if x, err := strconv.ParseFloat(m[1], 64); err != nil || x+1.7 < want-0.01 || x+1.7 > want+0.01 {
			t.Errorf("%g stands at %g, want %g", ratio, x+1.7, want)
		}
	}
	if bar.MatchString(Beside(1.3)) || Beside(1.3) != Beside(4) || Beside(0.5) != Beside(0) || Beside(1.3) == Beside(0.5) {
		t.Error("what lies beyond the scale is no arrow")
	}
}

// What hangs in a load step is drawn by its volume: 8 times the share is twice as high. What is still to come is dashed.
func TestHung(t *testing.T) {
	high := func(share float64) float64 {
		m := regexp.MustCompile(`<rect x="[\d.]+" y="[\d.]+" width="[\d.]+" height="([\d.]+)"`).FindStringSubmatch(Hung(share, true))
		if m == nil {
			t.Fatalf("no mass in %s", Hung(share, true))
		}
		v, err := strconv.ParseFloat(m[1], 64)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	if r := high(1) / high(0.125); r < 1.99 || r > 2.01 {
		t.Errorf("an eighth is drawn 1 : %g high", r)
	}
	if strings.Contains(Hung(1, true), "dasharray") || !strings.Contains(Hung(1, false), "dasharray") {
		t.Error("dashes tell what is still to come")
	}
	for _, s := range []string{Hung(1.25, false), Beside(2)} {
		if err := xml.Unmarshal([]byte(s), new(struct{})); err != nil {
			t.Errorf("%v: %s", err, s)
		}
	}
}
