package sun

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/witness"
)

// printedSnow is a winter of 10 inches a month, worked out by a public library of panel models and printed to eight digits:
// 20° of tilt, 0 °C, 0.8 of humidity, 350 kWh/m² in each month, panels 2.54 m along the slope, their edge 0.254 m over the ground.
func printedSnow() Snow {
	return Snow{Fall: [12]unit.Length{0.254, 0.254, 0.127, 0.0254, 0, 0, 0, 0, 0, 0, 0.127, 0.254},
		Events: &[12]unit.Count{2, 2, 1, 0, 0, 0, 0, 0, 0, 0, 2, 3}, Slant: unit.Of[unit.Length](2.54), Edge: unit.Of[unit.Length](0.254)}
}

// The printed losses of that winter, each digit of them.
func TestSnowOfTownsend(t *testing.T) {
	s := printedSnow()
	all := witness.Table(t, "sun", "loss by snow, month by month", " %", source.TownsendPowers.Whole().String())
	for m, want := range [12]float64{0.07696253, 0.07992262, 0.06216201, 0.01715392, 0, 0, 0, 0, 0, 0, 0.02643821, 0.06068194} {
		near(t, fmt.Sprintf("month %d", m+1), s.loss(m, 20*math.Pi/180, 0, 350), want, 1e-8)
		all.See(100*want, 100*s.loss(m, 20*math.Pi/180, 0, 350))
	}
}

// More snow, warmer air, brighter months, steeper panels and somebody with a broom: what each of them does to the loss. Upright
// panels hold no snow, and no month loses more than all.
func TestSnowTurnsTheRightWay(t *testing.T) {
	const tilt = 0.35
	s := printedSnow()
	base := s.loss(0, tilt, 0, 60)
	if s.loss(0, tilt+0.3, 0, 60) >= base || s.loss(0, tilt, 3, 60) >= base || s.loss(0, tilt, 0, 90) >= base {
		t.Error("steeper, warmer or brighter loses no less")
	}
	near(t, "upright", s.loss(0, math.Pi/2, 0, 60), 0, 1e-12)
	more := s
	more.Fall[0] *= 2
	if more.loss(0, tilt, 0, 60) <= base || more.loss(1, tilt, 0, 60) <= s.loss(1, tilt, 0, 60) {
		t.Error("twice the snow takes no more, in its month and in the next")
	}
	one := s
	one.Events = nil
	if one.loss(0, tilt, 0, 60) <= base {
		t.Error("in one fall it takes no more than in two")
	}
	open := s
	open.Edge = unit.Known[unit.Length]{}
	if open.loss(0, tilt, 0, 60) <= base {
		t.Error("without room below it takes no more")
	}
	swept := s
	swept.Cleared = true
	near(t, "cleared", swept.loss(0, tilt, 0, 60), base/4, 1e-12)
	more.Fall[0] = 10
	near(t, "all", more.loss(0, 0, -20, 3), 1, 0)
	near(t, "in the dark", s.loss(0, tilt, -20, 0), 1, 0)
	near(t, "in summer", s.loss(6, tilt, 20, 0), 0, 0)
}

// The loss of a whole year on a plane is that of its own light and air, month by month; the light on it stays as it was.
func TestSnowOnAPlane(t *testing.T) {
	p := Place{Latitude: unit.Of(deg(60)), Sky: SkyDescribed, Described: DescribedMixed}
	year, ps := Year(p, 3, nil)
	if len(ps) > 0 {
		t.Fatal(ps)
	}
	s := printedSnow()
	f := Face{Tilt: 0.6, Azimuth: 3}
	free := PlaneOf(year.Geometry, p, f).Light(year)
	f.Snow = &s
	l := PlaneOf(year.Geometry, p, f).Light(year)
	if free.Snow != nil || l.Snow == nil || !slices.Equal(free.Plane, l.Plane) {
		t.Fatal("snow changes the light, or is not there")
	}
	sums, air := monthSums(l.Plane), monthSums(year.TAir)
	for m, days := range monthLength {
		near(t, fmt.Sprintf("month %d", m+1), l.Snow[m], s.loss(m, 0.6, air[m]/float64(24*days), sums[m]/1000), 1e-12)
	}
	if l.Snow[0] <= l.Snow[2] || l.Snow[6] != 0 {
		t.Errorf("%v", l.Snow)
	}
}
