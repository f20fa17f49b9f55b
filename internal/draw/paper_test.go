package draw

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"testing"

	"duskweight/internal/model/unit"
)

// The scale is the first round one in which the view fits: 1 : 47 becomes 1 : 50, 1 : 51 becomes 1 : 60.
func TestRoundScale(t *testing.T) {
	for n, want := range map[float64]float64{1: 1, 1.2: 1.5, 9: 10, 10: 10, 21: 25, 47: 50, 50: 50, 51: 60, 81: 100, 101: 150, 760: 800} {
		if got := roundScale(n); got != want {
			t.Errorf("1 : %v becomes 1 : %v, want 1 : %v", n, got, want)
		}
	}
}

// On paper a travel of 3.8 m is 3800/n mm long, on A4 and on Letter, and all of the view lies in its place.
func TestPaperIsToScale(t *testing.T) {
	for _, size := range [][2]float64{{188, 133}, {194, 124}} {
		p := Paper{Scene: Make(Plan{Hoist: hoist()}), Wide: size[0], High: size[1]}
		f, n := p.frame()
		if _, cut := scaleOf(p); cut {
			t.Fatal("a height of 5.2 m is cut")
		}
		m := p.Scene.Mass
		near(t, "travel on paper, mm", (f.y(m.Y1-p.Scene.Travel)-f.y(m.Y1))/perMM, 3800/n, 1e-9)
		b, v := p.Scene.bounds(), p.view()
		if f.x(b.X0) < v.x0-1e-9 || f.x(b.X1) > v.x1+1e-9 || f.y(b.Y1) < v.y0-1e-9 || f.y(0) > v.y1+1e-9 {
			t.Errorf("%v mm: the view reaches over its place", size)
		}
		if next := roundScale(n * 0.75); next < n { // one size larger would not fit
			if s := perMM / next; (b.Y1-b.Y0)*s <= v.y1-v.y0 && (b.X1-b.X0)*s <= v.x1-v.x0-2*dimRoom {
				t.Errorf("%v mm: 1 : %v would fit, and it is drawn 1 : %v", size, next, n)
			}
		}
	}
}

// A travel of 60 m with a mass that would be drawn too small has a piece cut out, and what is left keeps the scale.
func TestPaperCutsALongTravel(t *testing.T) {
	h := hoist()
	h.Travel, h.Structure.HeadHeight = of(60000), of(62000)
	p := Paper{Scene: Make(Plan{Hoist: h}), Wide: 188, High: 133}
	n, cut := scaleOf(p)
	f, _ := p.frame()
	if !cut || n > 200 {
		t.Fatalf("60 m are drawn 1 : %v, cut %v", n, cut)
	}
	near(t, "width of the mass on paper, mm", (f.x(p.Scene.Mass.X1)-f.x(p.Scene.Mass.X0))/perMM, (p.Scene.Mass.X1-p.Scene.Mass.X0)/n, 1e-9)
	if over := p.view().y0 - f.y(p.Scene.bounds().Y1); over > 1e-6 {
		t.Errorf("the view reaches %v units over its place", over)
	}
}

// No note stands on another or under the view; those without room are numbered, in the drawing and in the key, and no letter
// becomes smaller for it.
func TestNotesHaveRoom(t *testing.T) {
	for _, pulleys := range []int{1, 4, 12} {
		h := hoist()
		h.Reeving.LeadSheaves = unit.Of(unit.Count(pulleys))
		var notes []Note
		for i := range pulleys {
			notes = append(notes, Note{Part: fmt.Sprintf("pulley-%d", i+1), Head: fmt.Sprintf("Pulley %d, 120 mm", i+1), Text: "rated 500 kg"})
		}
		for _, part := range []string{"rope", "eye", "pulley", "beam", "weights", "board", "slack", "mass", "stop-1", "posts"} {
			notes = append(notes, Note{Part: part, Head: "The " + part + " of 100 mm", Text: "what its label says", Bad: part == "rope"})
		}
		p := Paper{Scene: Make(Plan{Hoist: h}), Wide: 194, High: 124, Notes: notes}
		f, _ := p.frame()
		left, right, keyed := p.lay(f)
		if len(left)+len(right)+len(keyed) != len(notes) || (pulleys == 12) != (len(keyed) > 0) || len(p.Key()) != len(keyed) {
			t.Errorf("%d pulleys: %d, %d and %d of %d notes", pulleys, len(left), len(right), len(keyed), len(notes))
		}
		for _, column := range [][]noted{left, right} {
			y := 0.0
			for _, n := range column {
				if n.top < y-1e-9 || n.top+n.h > p.view().y1 {
					t.Errorf("%d pulleys: %q stands at %v, the one before ends at %v", pulleys, n.Head, n.top, y)
				}
				y = n.top + n.h
			}
		}
		var out bytes.Buffer
		if err := p.Draw(&out); err != nil {
			t.Fatal(err)
		}
		for _, size := range sizesIn(out.String()) {
			if size/perMM < 2.82 {
				t.Errorf("letters of %.2f mm", size/perMM)
			}
		}
		for _, n := range keyed {
			if !strings.Contains(out.String(), ">"+n.number+"</text>") {
				t.Errorf("the number %s of %q is not in the drawing", n.number, n.Head)
			}
		}
	}
}

// sizesIn are the sizes of the letters in a drawing, units of its viewBox.
func sizesIn(svg string) (out []float64) {
	for _, part := range strings.Split(svg, `font-size="`)[1:] {
		size := math.NaN()
		if _, err := fmt.Sscan(strings.SplitN(part, `"`, 2)[0], &size); err == nil {
			out = append(out, size)
		}
	}
	return out
}

// scaleOf is the n of the scale 1 : n of the side view, and whether a piece of the height is cut out.
func scaleOf(p Paper) (n float64, cut bool) {
	f, n := p.frame()
	return n, f.cutTo > f.cutFrom
}
