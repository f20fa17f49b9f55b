package load

import (
	"math"
	"testing"

	"duskweight/internal/model/unit"
)

// By hand: a night from 18:00 to 06:00 on every day. A lamp from 12:00 to 22:30 that burns while it is dark burns 4.5 h, a
// radio from 18:00 to 21:00 3 h, a lamp for 5 h from dusk 5 h. Two hours later they are 6.5 h, 5 h and 7 h. What is on all
// day stays as it is.
func TestLater(t *testing.T) {
	at := func(h float64) unit.Known[unit.Duration] { return unit.Of(unit.Duration(h) * unit.Hour) }
	one := func(a Appliance) Appliance {
		a.Power, a.Count, a.Supply, a.Priority = unit.Of[unit.Power](5), unit.Of[unit.Count](1), SupplyDc, PriorityEssential
		return a
	}
	down, noon := make([]bool, HoursInYear), make([]unit.Duration, DaysInYear)
	for h := range down {
		down[h] = h%24 < 6 || h%24 >= 18
	}
	for d := range noon {
		noon[d] = 12 * unit.Hour
	}
	lamp := Appliance{From: at(12), To: at(22.5), AfterDusk: unit.Yes}
	radio, path := Appliance{From: at(18), To: at(21)}, Appliance{From: at(12), To: at(12), AfterDusk: unit.Yes}
	dusk := Appliance{FromDusk: at(5)}
	hours := func(l Load) float64 { return float64(Hours(l, down, noon).LitHours(l).Val) / 3600 }
	for _, c := range []struct {
		a            Appliance
		before, late float64
	}{{lamp, 4.5, 6.5}, {radio, 3, 5}, {dusk, 5, 7}} {
		l := Load{Appliances: []Appliance{one(path), one(c.a)}}
		if got := hours(l); math.Abs(got-c.before) > 1e-9 {
			t.Errorf("%+v: %v h", c.a, got)
		}
		later := l.Later(2 * unit.Hour)
		if got := hours(later); math.Abs(got-c.late) > 1e-9 {
			t.Errorf("%+v, 2 h later: %v h", c.a, got)
		}
		if later.Appliances[0].To.Val != 12*unit.Hour || l.Appliances[1].To != c.a.To {
			t.Error("what is on all day is moved, or the load before is changed too")
		}
	}
	l := Load{Appliances: []Appliance{one(path)}}
	if Hours(l, down, noon).LitHours(l).Is {
		t.Error("what burns all night has an hour of its own")
	}
	if short := (Load{Appliances: []Appliance{one(radio)}}).Later(-20 * unit.Hour).Appliances[0]; short.To.Val != 18*unit.Hour+leastOn {
		t.Errorf("20 h earlier it goes off at %v", short.To.Val)
	}
}
