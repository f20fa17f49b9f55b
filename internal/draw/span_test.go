package draw

import (
	"encoding/xml"
	"regexp"
	"strconv"
	"testing"
)

// On an axis to 400 a bar from 100 to 300 with 200 as usual is solid to 50, pale to 150 and has its line at 100 of 200. What is
// not known has no bar; past the axis it ends there, with a break.
func TestSpan(t *testing.T) {
	bars := regexp.MustCompile(`<rect x="([\d.]+)" y="3" width="([\d.]+)"`)
	got := bars.FindAllStringSubmatch(Span{Low: 100, Usual: 200, High: 300, Top: 400, Known: true}.Draw(), -1)
	want := [][2]float64{{50, 100}, {0, 50}}
	if len(got) != len(want) {
		t.Fatalf("bars: %v", got)
	}
	for i, w := range want {
		x, _ := strconv.ParseFloat(got[i][1], 64)
		wide, _ := strconv.ParseFloat(got[i][2], 64)
		if x != w[0] || wide != w[1] {
			t.Errorf("bar %d at %g, %g wide, want %v", i, x, wide, w)
		}
	}
	if s := (Span{Top: 400}).Draw(); bars.MatchString(s) || !regexp.MustCompile("dasharray").MatchString(s) {
		t.Error("what is not known has a bar")
	}
	past := Span{Low: 900, Usual: 900, High: 900, Top: 400, Known: true}.Draw()
	if m := bars.FindStringSubmatch(past); m == nil || m[2] != "200" || !regexp.MustCompile(`class="gap"`).MatchString(past) {
		t.Errorf("past the axis: %s", past)
	}
	if err := xml.Unmarshal([]byte(past), new(struct{})); err != nil {
		t.Error(err)
	}
}
