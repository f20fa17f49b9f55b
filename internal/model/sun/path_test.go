package sun

import (
	"math"
	"testing"

	"duskweight/internal/model/unit"
)

// By hand for 52° N on 21 June, declination 23.44°: noon stands at 90° − 52° + 23.44° = 61.44° in the south, the sun rises where
// cos A = sin 23.44°/cos 52°, A = 49.75° from north (source.DuffieBeckman.At("eq. 1.6.6") with the altitude 0), and sets as far on
// the other side. South of the equator noon stands in the north: 34° S on 21 December at 90° − 34° + 23.44°. In the polar night
// there is no path, in the polar day it goes all the way round and stays up.
func TestPathOfADay(t *testing.T) {
	path := NewGeometry(deg(52), 0, 0).Path(171, 40)
	near(t, "noon's height", path[20].Altitude.Degrees(), 61.44, 0.02)
	near(t, "noon's direction", path[20].Azimuth.Degrees(), 180, 1e-6)
	near(t, "rise", path[0].Azimuth.Degrees(), 49.75, 0.05)
	near(t, "set", path[40].Azimuth.Degrees(), 360-49.75, 0.05)
	near(t, "height at the rise", path[0].Altitude.Degrees(), 0, 1e-6)
	south := NewGeometry(deg(-34), 0, 0).Path(354, 40)
	near(t, "noon's height in the south", south[20].Altitude.Degrees(), 90-34+23.44, 0.02)
	near(t, "noon in the north", math.Mod(south[20].Azimuth.Degrees()+180, 360), 180, 1e-6)
	if path := NewGeometry(deg(78), 0, 0).Path(354, 40); path != nil {
		t.Errorf("polar night: %v", path)
	}
	day := NewGeometry(deg(78), 0, 0).Path(171, 40)
	near(t, "midnight sun", day[0].Altitude.Degrees(), 23.44-(90-78), 0.02)
}

// Between 90° and 180° in a straight line, and on over north: from 20° at 180° back to 10° at 90° half of the other three quarters
// lies at 315°. A place without points is free.
func TestOutline(t *testing.T) {
	at := Place{Horizon: []Horizon{{deg(180), deg(20)}, {deg(90), deg(10)}}}.Outline()
	near(t, "at a point", at(deg(90)).Degrees(), 10, 1e-9)
	near(t, "between", at(deg(135)).Degrees(), 15, 1e-9)
	near(t, "over north", at(deg(315)).Degrees(), 15, 1e-9)
	near(t, "free", float64(Place{}.Outline()(unit.Angle(1))), 0, 0)
}
