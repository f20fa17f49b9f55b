package search

import (
	"math"
	"slices"
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// Numbers that are tried: up to twelve of them, evenly spread up to the most, the own one in the place of the nearest.
func TestCountsThatAreTried(t *testing.T) {
	for _, x := range []struct {
		now, most int
		want      []int
	}{
		{1, 3, []int{1, 2, 3}}, {4, 12, []int{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12}}, {8, 24, []int{2, 4, 6, 8, 10, 12, 14, 16, 18, 20, 22, 24}}, {7, 24, []int{2, 4, 7, 8, 10, 12, 14, 16, 18, 20, 22, 24}}, {1, 1, []int{1}},
	} {
		if got := counts(x.now, x.most); !slices.Equal(got, x.want) {
			t.Errorf("%d of %d: %v, want %v", x.now, x.most, got, x.want)
		}
	}
	for _, x := range [][3]int{{12, 18, 6}, {7, 0, 7}, {0, 5, 5}, {13, 5, 1}} {
		if got := divisor(x[0], x[1]); got != x[2] {
			t.Errorf("%d and %d have %d in common", x[0], x[1], got)
		}
	}
}

// Whole strings are added: six panels in threes are two strings; where nobody says how they are joined each may be one; a number that makes no
// whole strings counts panel by panel; as many strings side by side as are told stay in proportion.
func TestStringsOfAnArray(t *testing.T) {
	series := func(n float64) *panel.Sheet { return &panel.Sheet{Series: unit.Of(unit.Count(n))} }
	for _, x := range []struct {
		a    panel.Array
		n    int
		want int
	}{
		{panel.Array{Count: unit.Of[unit.Count](6), Sheet: series(3)}, 6, 2}, {panel.Array{Count: unit.Of[unit.Count](6)}, 6, 6}, {panel.Array{Count: unit.Of[unit.Count](7), Sheet: series(3)}, 7, 7},
		{panel.Array{Count: unit.Of[unit.Count](6), Sheet: series(1)}, 6, 6}, {panel.Array{Count: unit.Of[unit.Count](6), Sheet: series(0)}, 6, 6},
		{panel.Array{Count: unit.Of[unit.Count](6), Sheet: series(1), Strings: unit.Of[unit.Count](2)}, 6, 2}, {panel.Array{Count: unit.Of[unit.Count](6), Strings: unit.Of[unit.Count](2)}, 6, 2},
	} {
		if got := stringsOf(x.a, x.n); got != x.want {
			t.Errorf("%d panels, %v in series, %v strings: %d", x.n, x.a.Sheet, x.a.Strings, got)
		}
	}
}

// The tilts that are tried: the own one, the latitude, 15° to each side of it and upright, none twice where all panels stand alike, and none
// under the flat or past upright.
func TestTiltsThatAreTried(t *testing.T) {
	deg := func(x float64) unit.Angle { return unit.Angle(x * math.Pi / 180) }
	for _, x := range []struct {
		lat  float64
		own  []float64
		want []float64
	}{
		{50, []float64{30}, []float64{30, 35, 50, 65, 90}}, {-50, []float64{30}, []float64{30, 35, 50, 65, 90}}, {50, []float64{50}, []float64{50, 35, 65, 90}}, {50, []float64{50, 20}, []float64{50, 35, 50, 65, 90}},
		{10, []float64{0}, []float64{0, 10, 25, 90}}, {80, []float64{40}, []float64{40, 65, 80, 90}}, {50, []float64{90}, []float64{90, 35, 50, 65}},
	} {
		g := &grid{ground: model.Ground{Sky: &sun.Sky{Geometry: sun.NewGeometry(deg(x.lat), 0, 0)}}}
		for _, own := range x.own {
			g.v.Panels = append(g.v.Panels, panel.Array{Tilt: unit.Of(deg(own))})
		}
		g.turns()
		var got []float64
		for i, tilt := range g.tilts {
			got = append(got, math.Round(tilt.angle.Degrees()))
			if tilt.turned != (i > 0) {
				t.Errorf("%g°, tilt %d: turned %v", x.lat, i, tilt.turned)
			}
		}
		if !slices.Equal(got, x.want) {
			t.Errorf("at %g° with %v: %v, want %v", x.lat, x.own, got, x.want)
		}
	}
}

// Panels that are wider by half have half as much more power and current, and the same voltage; the controller with them. The variant itself
// stays as it is.
func TestWiderPanels(t *testing.T) {
	v := model.Variant{Panels: []panel.Array{{Power: unit.Of[unit.Power](100), Count: unit.Of[unit.Count](2), Sheet: &panel.Sheet{Isc: unit.Of[unit.Current](6), Imp: unit.Of[unit.Current](5), Voc: unit.Of[unit.Voltage](22), Vmp: unit.Of[unit.Voltage](18)}}, {Power: unit.Of[unit.Power](50)}},
		Controller: panel.Controller{Power: unit.Of[unit.Power](300)}}
	if got := labelPower(v); got != 200 {
		t.Errorf("labels of %g W, of the second nobody knows how many", float64(got))
	}
	w := wider(v, 1.5)
	s := w.Panels[0].Sheet
	if w.Panels[0].Power.Val != 150 || s.Isc.Val != 9 || s.Imp.Val != 7.5 || s.Voc.Val != 22 || s.Vmp.Val != 18 || w.Panels[1].Power.Val != 75 || w.Controller.Power.Val != 450 {
		t.Errorf("%+v, %+v, controller %v", w.Panels, s, w.Controller.Power)
	}
	if v.Panels[0].Power.Val != 100 || v.Panels[0].Sheet.Isc.Val != 6 || v.Controller.Power.Val != 300 {
		t.Errorf("the variant itself: %+v", v.Panels[0])
	}
}
