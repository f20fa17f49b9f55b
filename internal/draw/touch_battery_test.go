package draw

import (
	"fmt"
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"

	"duskweight/internal/model/lift/path"
)

var freeText = regexp.MustCompile(`<text class="[sd]" x="([\d.]+)" y="([\d.]+)"(?: text-anchor="(\w+)")?>([^<]*)</text>`)

// Whatever the battery, no part lies on another, none leaves the paper, each target is 36 high or more, no letters of a part
// leave it, and no other letters lie on a part or on each other: 300 batteries by chance.
func TestBatteryPartsNeverMeet(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 23))
	words := []path.Word{path.Holds, path.Tight, path.GivesWay, path.NotKnown, Missing}
	names := map[string]string{"panels": "Panels", "panel_cable": "Panel cable", "controller": "Controller", "fuse": "Fuse", "cable": "Battery cable", "battery": "Battery", "board": "Board", "place": "Place and air", "inverter": "Inverter", "loads": "Lamps, devices"}
	text := func(long ...string) string { return strings.Repeat(long[r.IntN(len(long))]+" ", 1+r.IntN(4)) }
	for n := range 300 {
		s := BatterySketch{Titled: "x", Blocks: r.IntN(20), Panels: r.IntN(4), Board: r.IntN(2) == 0, Inverter: r.IntN(2) == 0, Lamps: r.IntN(2) == 0, Over60: r.IntN(2) == 0,
			Volts: text("12.8 V", "1 000 V"), Line: text("the line"), Flow: text("sun 7.8 A", "night 1 234 A"), Row: text("2 in a row"), Near: text("?", "200 mm")}
		for id := range batterySpots {
			if r.IntN(5) > 0 {
				s.Spots = append(s.Spots, Spot{ID: id, Name: names[id], Subs: []string{text("wide words"), "a word"}, Href: "#", Word: words[r.IntN(len(words))]})
			}
		}
		var out strings.Builder
		if err := s.Draw(&out); err != nil {
			t.Fatal(err)
		}
		svg, name := out.String(), fmt.Sprintf("battery %d", n)
		apart(t, name, svg)
		if strings.Count(svg, `class="hit"`) != len(s.Spots) {
			t.Fatalf("%s: %d parts of %d", name, strings.Count(svg, `class="hit"`), len(s.Spots))
		}
		lettersApart(t, name, svg)
	}
}

// lettersApart finds letters outside the parts that lie on a part or on other letters.
func lettersApart(t *testing.T, name, svg string) {
	t.Helper()
	var taken []box
	for _, m := range hitBox.FindAllStringSubmatch(svg, -1) {
		v := numbers(t, m[1:])
		taken = append(taken, box{v[0], v[1], v[0] + v[2], v[1] + v[3]})
	}
	for _, m := range freeText.FindAllStringSubmatch(svg[:max(strings.Index(svg, "<a class="), 0)], -1) {
		v, wide := numbers(t, m[1:3]), TextWidth(m[4], 12)
		b := box{v[0], v[1] - 9, v[0] + wide, v[1] + 2}
		switch m[3] {
		case "middle":
			b.x0, b.x1 = b.x0-wide/2, b.x1-wide/2
		case "end":
			b.x0, b.x1 = b.x0-wide, b.x1-wide
		}
		for _, o := range taken {
			if b.meets(o) {
				t.Fatalf("%s: %q at %+v lies on %+v", name, m[4], b, o)
			}
		}
		taken = append(taken, b)
	}
}

// On a phone only the signs are shown, 68 units wide at 360 px so that they come to 26 px: the signs stand so far apart.
func TestBatterySignsStandApart(t *testing.T) {
	for a, p := range batterySpots {
		for b, q := range batterySpots {
			dx, dy := p.b.x0-q.b.x0, p.b.y0-q.b.y0
			if a < b && dx*dx+dy*dy < 74*74 {
				t.Errorf("the signs of %s and %s stand (%.0f, %.0f) apart", a, b, dx, dy)
			}
		}
	}
}

// Values of a scale stand at their place on its axis, and no letters leave the paper.
func TestScaleInPlace(t *testing.T) {
	s := Scale{Unit: "A", Title: "x", Flows: []ScaleMark{{Say: "7.8 A from the sun", Value: 7.8, Look: "sun"}, {Say: "39 A at night, all at once", Value: 39, Look: "night"}},
		Ends: []ScaleMark{{Say: "fuse 15 A", Value: 15}, {Say: "cable 40 A", Value: 40}}}
	var out strings.Builder
	if err := s.Draw(&out); err != nil {
		t.Fatal(err)
	}
	// The axis ends at 60, the next round step past 40.8: 350 units for 60 A, from 10 on: 7.8 A are 45.5 wide, 15 A stand at 97.5.
	for _, want := range []string{`width="45.5"`, `x1="97.5"`} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("%s is not in %s", want, out.String())
		}
	}
	for _, m := range regexp.MustCompile(`<text class="halo[^"]*" x="([\d.]+)" y="[\d.]+" text-anchor="(\w+)">([^<]*)`).FindAllStringSubmatch(out.String(), -1) {
		x := numbers(t, m[1:2])[0]
		if wide := TextWidth(m[3], 12); m[2] == "start" && x+wide > scaleW || m[2] == "end" && x-wide < 0 {
			t.Errorf("%q leaves the paper at %g", m[3], x)
		}
	}
}
