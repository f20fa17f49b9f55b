package draw

import (
	"fmt"
	"math/rand/v2"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/parts"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/unit"
)

// touched reads the boxes of the parts and the letters in them from a picture, in units of the paper.
var (
	hitBox   = regexp.MustCompile(`<rect x="([-\d.]+)" y="([-\d.]+)" width="([-\d.]+)" height="([-\d.]+)" class="hit"/>`)
	viewSize = regexp.MustCompile(`viewBox="0 0 ([\d.]+) ([\d.]+)"`)
)

func numbers(t *testing.T, texts []string) []float64 {
	t.Helper()
	out := make([]float64, len(texts))
	for i, text := range texts {
		v, err := strconv.ParseFloat(text, 64)
		if err != nil {
			t.Fatal(err)
		}
		out[i] = v
	}
	return out
}

// randomHoist is a hoist by chance: any reeving, any place of the drive, any size from a shed to a tower.
func randomHoist(r *rand.Rand) lift.Hoist {
	size := func(lo, hi float64) unit.Known[unit.Length] { return unit.Of(unit.Length(lo + (hi-lo)*r.Float64())) }
	h := lift.Hoist{Mass: []lift.Piece{{Mass: unit.Of(unit.Mass(5 + 2000*r.Float64()))}}}
	if r.IntN(8) > 0 {
		h.Travel = size(0.3, 30)
	}
	h.Reeving.RopeParts, h.Reeving.LeadSheaves = unit.Of(unit.Count(1+r.IntN(4))), unit.Of(unit.Count(r.IntN(5)))
	for range r.IntN(7) {
		h.Reeving.Sheaves = append(h.Reeving.Sheaves, lift.Sheave{Name: strings.Repeat("long name ", r.IntN(6)), Diameter: size(0.03, 0.4), OnBase: []unit.Answer{"", "yes", "no"}[r.IntN(3)]})
	}
	h.Rope.Diameter, h.Drum.Diameter, h.Site.LoadWidth = size(0.004, 0.03), size(0.03, 0.6), size(0.1, 3)
	h.Base.Where = []lift.BaseWhere{"", lift.BaseOnGround, lift.BaseOnBeam, lift.BaseOnWall}[r.IntN(4)]
	if r.IntN(2) == 0 {
		h.Structure.HeadHeight = size(1, 30)
	}
	h.Structure.LeadAngle = unit.Of(unit.Angle(1.2 * r.Float64()))
	for range r.IntN(5) {
		h.Holds.Holds = append(h.Holds.Holds, lift.Hold{Kind: lift.HoldOverspeedCatch})
		h.Train.Stages = append(h.Train.Stages, lift.Stage{Kind: lift.StagePlanetary})
	}
	return h
}

// Whatever the hoist, no part lies on another, none leaves the paper, each target is 36 high or more, and no letters leave
// their part: 300 hoists by chance, in both systems of units.
func TestTouchPartsNeverMeet(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 11))
	words := []path.Word{path.Holds, path.Tight, path.GivesWay, path.NotKnown}
	for n := range 300 {
		h := randomHoist(r)
		scene := Make(Plan{Hoist: h, Units: []unit.System{unit.Metric, unit.Imperial}[n%2]})
		places := map[parts.Place][]Spot{}
		for _, p := range parts.All(h) {
			places[p.Place] = append(places[p.Place], Spot{ID: p.ID, Name: p.Name, Subs: []string{strings.Repeat("wide words ", r.IntN(5)), "a word"}, Href: "#", Around: p.Place == parts.Around, Word: words[r.IntN(4)]})
		}
		var side, drive, circuit strings.Builder
		for _, err := range []error{
			Touch(scene, append(places[parts.Side], places[parts.Around]...), &side),
			DriveSketch{Stages: len(h.Train.Stages), Spots: places[parts.Drive]}.Draw(&drive),
			CircuitSketch{Spots: places[parts.Circuit]}.Draw(&circuit),
		} {
			if err != nil {
				t.Fatal(err)
			}
		}
		for of, svg := range map[string]string{"side": side.String(), "drive": drive.String(), "circuit": circuit.String()} {
			apart(t, fmt.Sprintf("hoist %d, %s", n, of), svg)
		}
	}
}

// apart finds parts that lie on another or leave the paper.
func apart(t *testing.T, name, svg string) {
	t.Helper()
	size := numbers(t, viewSize.FindStringSubmatch(svg)[1:])
	var boxes []box
	for _, m := range hitBox.FindAllStringSubmatch(svg, -1) {
		v := numbers(t, m[1:])
		b := box{v[0], v[1], v[0] + v[2], v[1] + v[3]}
		if b.x0 < 0 || b.y0 < 0 || b.x1 > size[0] || b.y1 > size[1] || v[3] < 36 {
			t.Fatalf("%s: part at %+v on a paper of %v", name, b, size)
		}
		for _, o := range boxes {
			if b.meets(o) {
				t.Fatalf("%s: a part at %+v lies on one at %+v", name, b, o)
			}
		}
		boxes = append(boxes, b)
	}
	for _, link := range strings.Split(svg, "<a class=")[1:] {
		m := hitBox.FindStringSubmatch(link)
		v := numbers(t, m[1:])
		for _, text := range regexp.MustCompile(`<text class="(nm|s)" x="([\d.]+)" y="[\d.]+">([^<]*)</text>`).FindAllStringSubmatch(strings.SplitN(link, "</a>", 2)[0], -1) {
			at := numbers(t, text[2:3])[0]
			if end := at + TextWidth(text[3], 12.5); text[1] == "nm" && end > v[0]+v[2]+12 {
				t.Fatalf("%s: %q ends at %.0f, its part at %.0f", name, text[3], end, v[0]+v[2])
			}
		}
	}
}
