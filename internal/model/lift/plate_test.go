package lift

import (
	"math"
	"strings"
	"testing"

	"duskweight/internal/model/unit"
)

// A scooter motor's plate, by hand: 24 V, 250 W, 2650 turns a minute, 13.7 A. ω = 277.507 rad/s, T = 0.900876 N·m,
// I_0 = 1.89692 A, K = 0.900876/11.80308 = 0.0763255, R = (24 − 21.1809)/13.7 = 0.205775 Ω. The list of typical motors
// has 0.068 and 0.17 for its like: within its ± 30 %.
func TestFromPlate(t *testing.T) {
	p := Plate{24, 250, 2650 * math.Pi / 30, 13.7}
	k, r, free, err := FromPlate(p)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		what      string
		got, want float64
	}{{"K", float64(k), 0.0763255}, {"R", float64(r), 0.205775}, {"I_0", float64(free), 1.89692}} {
		if math.Abs(c.got/c.want-1) > 1e-4 {
			t.Errorf("%s: %.6g, want %.6g", c.what, c.got, c.want)
		}
	}
	// at full load the three give back what the plate says: the same torque and the same volts
	if torque := float64(k) * (13.7 - float64(free)); math.Abs(torque*float64(p.Speed)-250) > 1e-9 {
		t.Errorf("%g W at the shaft", torque*float64(p.Speed))
	}
	if volts := float64(k)*float64(p.Speed) + 13.7*float64(r); math.Abs(volts-24) > 1e-12 {
		t.Errorf("%g V", volts)
	}
	for _, bad := range []Plate{{}, {24, 400, 277, 13.7}, {24, 325, 277, 13.7}, {24, -1, 277, 13.7}, {unit.Voltage(math.NaN()), 250, 277, 13.7}} {
		if _, _, _, err := FromPlate(bad); err == nil {
			t.Errorf("%+v gives numbers", bad)
		}
	}
	// 24 V·250 A are 6000 W
	_, _, _, err = FromPlate(Plate{24, 7000, 277, 250})
	if got := strings.ReplaceAll(err.Error(), unit.Space, " "); got != "these numbers do not belong together: the shaft would give 7 000 W, and only 6 000 W go in" {
		t.Errorf("%q", got)
	}
}
