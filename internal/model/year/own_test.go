package year

import (
	"testing"

	"duskweight/internal/model/reservoir"
)

// A day by hand. The store holds 36 000 J and starts full, 2 W are wanted all the time and cost 2.5 own watts: by the end
// of hour 9 it is empty (36 000/2.5 = 14 400 s). From hour 10 to 12 its own source gives 10 W, of which 6 W stay:
//
//	hour 10: 21 600 J in, 36 000 J taken;   hour 11: 14 400 J in 2400 s, 24 000 J taken, 12 000 J not used;
//	hour 12: full, 36 000 J not used
//
// In these three hours it gives nothing, though it is asked. Then it is drawn again.
func TestOwnSourceByHand(t *testing.T) {
	in := Input{Bus: make([]float64, 24), Essential: make([]float64, 24), Keep: true}
	own := &reservoir.Source{Power: make([]float64, 24), Fill: make([]float64, 24)}
	for h := range in.Essential {
		in.Essential[h] = 2
		if h >= 10 && h < 13 {
			own.Power[h], own.Fill[h] = 10, 6
		}
	}
	in.Stores = []reservoir.Reservoir{{Capacity: 36000, DrawMax: 5, DrawGain: 1.25, AcceptFrom: 1, Own: own}}
	out := run(in)
	near(t, "brought", float64(out.Bus), 3*36000)
	near(t, "beside the line", float64(out.Own), 3*36000)
	near(t, "taken", float64(out.Taken), 60000)
	near(t, "not used", float64(out.Spilled), 48000)
	near(t, "given", float64(out.Delivered), 28800) // all of it, at 1.25 own joules each
	near(t, "lost on the way in", float64(out.Stores[0].FillLoss), 24000)
	for h, want := range map[int]float64{10: 21600, 11: 36000, 12: 36000, 13: 27000} {
		near(t, "state", out.Hourly.State[0][h], want)
	}
	for h := 10; h < 13; h++ {
		near(t, "missing while the sun has the motor", out.Hourly.Unmet[h], 7200)
	}
	near(t, "typical hour 11, January of one day", float64(out.Typical[0][11].Own), 10.0/31)
	near(t, "typical hour 11, not used", float64(out.Typical[0][11].Spilled), 12000.0/3600/31)
	if err := balances(in, out); err != nil {
		t.Error(err)
	}
}

// A day's cap, and hours in which nothing may be filled, hold for a source of its own too.
func TestOwnSourceIsCapped(t *testing.T) {
	in := Input{Bus: make([]float64, 48), Essential: make([]float64, 48), Keep: true}
	own := &reservoir.Source{Power: make([]float64, 48), Fill: make([]float64, 48)}
	no := make([]bool, 48)
	for h := range in.Essential {
		if h%24 >= 20 {
			in.Essential[h] = 5
		}
		if h%24 >= 8 && h%24 < 16 {
			own.Power[h], own.Fill[h] = 10, 5
		}
		no[h] = h == 8
	}
	in.Stores = []reservoir.Reservoir{{Capacity: 1e6, DrawMax: 50, DrawGain: 1, AcceptFrom: 1, Own: own, FillCap: 40000, NoFill: no}}
	out := run(in)
	// The first hour of the first day is shut: 18 000 J, 18 000 J, 4000 J; the source gives nothing in that hour.
	near(t, "filled", float64(out.Stores[0].Filled), 80000)
	near(t, "taken", float64(out.Taken), 160000)
	near(t, "brought", float64(out.Bus), 15*36000)
	near(t, "first hour", out.Hourly.Taken[0][8], 0)
	if err := balances(in, out); err != nil {
		t.Error(err)
	}
}
