package water

import (
	"math"
	"testing"

	"duskweight/internal/model/pipe"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
)

// near fails where got is further than tol from want, as a share of want.
func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol*math.Abs(want)) {
		t.Errorf("%s = %.10g, want %.10g", what, got, want)
	}
}

// farm is 10 m³ at 12 m with a pump of 200 W, 40 m of pipe of 50 mm, and 72 litres a minute through the turbine.
func farm() Water {
	return Water{
		Volume: unit.Of[unit.Volume](10), Head: unit.Of[unit.Length](12),
		Pump:    Pump{Rated: unit.Of[unit.Power](200), Efficiency: unit.Of[unit.Ratio](0.4)},
		Turbine: Turbine{Flow: unit.Of[unit.Flow](0.0012), Efficiency: unit.Of[unit.Ratio](0.4)},
		Pipe:    Pipe{Length: unit.Of[unit.Length](40), Inner: unit.Of[unit.Length](0.05)},
		Covered: unit.Yes, Lower: LowerTank, Stands: OnGround,
	}
}

// The farm worked in another language from the equations alone (double precision, the flow by bisection). By hand:
// X = 998.2·9.80665·10·12 = 1 174 680 J; friction at 1.2 l/s = 10.67·40·0.0012^1.852/(150^1.852·0.05^4.8704)
// = 426.8·3.871e-6/(10 715·4.587e-7) = 0.336 m, so 11.66 m are left and 998.2·9.80665·0.0012·11.66·0.4 = 54.8 W come.
func TestFarm(t *testing.T) {
	r := farm().Resolve()
	s := r.Reduce(nil)
	const tol = 1e-6 // of the reference, given to nine digits
	near(t, "stored", float64(r.Stored), 1174679.76, tol)
	near(t, "flow of the pump", float64(r.PumpFlow), 0.000674524002, tol)
	near(t, "friction while it fills", float64(r.PumpLost), 0.115862552, tol)
	near(t, "gain of filling", s.FillGain, 0.396174848, tol)
	near(t, "height at the turbine", float64(r.Net), 11.6632686, tol)
	near(t, "power", float64(s.DrawMax), 54.8024226, tol)
	near(t, "gain of drawing", s.DrawGain, 2.57217774, tol)
	near(t, "given", float64(s.Drawn(s.DrawMax)), 456686.855, tol)
	near(t, "round trip", s.RoundTrip(s.DrawMax), 0.154023123, tol)
	near(t, "least of a fixed turbine", float64(s.DrawMin), 54.8024226, tol)
	near(t, "time to empty: 10 m³ at 1.2 l/s", float64(r.EmptyTime), 10/0.0012, 1e-12)
	w := farm()
	w.Turbine.Kind = Valve
	near(t, "least with a valve: three tenths", float64(w.Resolve().Reduce(nil).DrawMin), 0.3*54.8024226, tol)
}

// The flow of the pump spends its power: ρ·g·Q·(h + h_f(Q)) is η·P, in thin and in thick pipes.
func TestPumpFlowSpendsItsPower(t *testing.T) {
	for _, inner := range []unit.Length{0.006, 0.02, 0.1} {
		for _, power := range []unit.Power{10, 1000, 50000} {
			q := PumpFlow(power, 0.5, 8, 60, inner)
			spent := float64(pipe.Density) * unit.G * float64(q) * float64(8+pipe.Friction(q, 60, inner))
			near(t, "spent", spent, 0.5*float64(power), 1e-12)
		}
	}
}

// 20 m of water, 1.5 m/s and a wave of 350 m/s in a pipe for 10 bar: 998.2·9.80665·20 = 195 780 Pa stand in it, and
// 998.2·350·1.5 = 524 055 Pa strike it; 0.7198 of what it withstands.
func TestSurge(t *testing.T) {
	static, shock := Surge(20, 1.5, 350)
	near(t, "static", float64(static), 195779.961, 1e-6)
	near(t, "shock", float64(shock), 524055.0, 1e-6)

	w := farm()
	w.Head, w.Pipe.Wave, w.Pipe.Rated = unit.Of[unit.Length](20), unit.Of[unit.Speed](350), unit.Of[unit.Stress](1e6)
	w.Pump.Rated = unit.Of[unit.Power](1)                                                               // the turbine is the faster
	w.Turbine.Flow = unit.Of(unit.Flow(1.5 * math.Pi / 4 * float64(w.Pipe.Inner.Val*w.Pipe.Inner.Val))) // 1.5 m/s
	near(t, "use", float64(check(w, "pipe_pressure").Use.Val), 0.719834961, 1e-6)
}

func check(w Water, id string) Check {
	for _, c := range w.Resolve().Checks() {
		if c.ID == id {
			return c
		}
	}
	return Check{}
}

// The words of the checks on either side of what decides them.
func TestWordsOfChecks(t *testing.T) {
	for _, c := range []struct {
		id     string
		change func(w *Water)
		want   reason.Word
	}{
		{"drowning", func(w *Water) {}, reason.Yes},
		{"drowning", func(w *Water) { w.Covered = unit.No }, reason.No},
		{"drowning", func(w *Water) { w.Covered = "" }, reason.NotKnown},
		{"tank_base", func(w *Water) {}, reason.Yes},
		{"tank_base", func(w *Water) { w.Stands = OnTower }, reason.NotKnown},
		{"tank_base", func(w *Water) { w.Stands = OnBuilding }, reason.NotKnown},
		{"tank_base", func(w *Water) { w.Stands = "" }, reason.NotKnown},
		{"tank_base", func(w *Water) { w.Stands, w.Signed = OnTower, unit.Of[unit.Volume](10) }, reason.Yes},
		{"tank_base", func(w *Water) { w.Stands, w.Signed = OnTower, unit.Of[unit.Volume](9.99) }, reason.No},
		{"tank_base", func(w *Water) { w.Stands, w.Signed = "", unit.Of[unit.Volume](10) }, reason.NotKnown},
		{"pipe_pressure", func(w *Water) {}, reason.NotKnown}, // what it withstands is never guessed
		// 1.2 l/s in 50 mm are 0.6112 m/s: 117 468 Pa and 998.2·450·0.6112 = 274 526, or 732 068 at 1200 m/s
		{"pipe_pressure", func(w *Water) { w.Pipe.Rated = unit.Of[unit.Stress](391e3) }, reason.No},
		{"pipe_pressure", func(w *Water) { w.Pipe.Rated = unit.Of[unit.Stress](393e3) }, reason.NotKnown},
		{"pipe_pressure", func(w *Water) { w.Pipe.Rated = unit.Of[unit.Stress](849e3) }, reason.NotKnown},
		{"pipe_pressure", func(w *Water) { w.Pipe.Rated = unit.Of[unit.Stress](850e3) }, reason.Yes},
	} {
		w := farm()
		c.change(&w)
		if got := check(w, c.id); got.Word != c.want || got.Say.IsZero() {
			t.Errorf("%s of %+v is %q, want %q: %s", c.id, w, got.Word, c.want, got.Say)
		}
	}
}

// Without water below, without height left, and without a number that decides, there is no store, and it says why.
func TestGivesNothing(t *testing.T) {
	for what, change := range map[string]func(w *Water){
		"no lower water":    func(w *Water) { w.Lower = LowerNone },
		"a pipe of 10 mm":   func(w *Water) { w.Pipe.Inner = unit.Of[unit.Length](0.01) },
		"no volume":         func(w *Water) { w.Volume.Is = false },
		"no height":         func(w *Water) { w.Head.Is = false },
		"no flow":           func(w *Water) { w.Turbine.Flow.Is = false },
		"no pump":           func(w *Water) { w.Pump.Rated.Is = false },
		"no length of pipe": func(w *Water) { w.Pipe.Length.Is = false },
		"no diameter of it": func(w *Water) { w.Pipe.Inner.Is = false },
	} {
		w := farm()
		change(&w)
		r := w.Resolve()
		if r.WhyNot.IsZero() || r.Reduce(nil) != nil {
			t.Errorf("%s is a store", what)
		}
		for _, c := range r.Checks() {
			if c.Word != reason.Yes && c.Mend.IsZero() {
				t.Errorf("%s: %s says not what to do", what, c.ID)
			}
		}
	}
}

// 4 mm a day off 5 m² are 20 litres: 0.002 of 10 m³ a day. A lid keeps them; an open tank of an unknown surface is not known.
func TestOpenWaterDries(t *testing.T) {
	w := farm()
	w.Covered, w.Surface = unit.No, unit.Of[unit.Area](5)
	near(t, "leak", w.Resolve().Reduce(nil).Leak*86400, 0.002, 1e-12)
	w.Covered = unit.Yes
	if got := w.Resolve().Reduce(nil).Leak; got != 0 {
		t.Errorf("a covered tank dries: %g", got)
	}
	w.Covered, w.Surface.Is = "", false
	if r := w.Resolve(); r.LeakADay.Is || len(r.Missing) != 1 {
		t.Errorf("the leak is %+v, missing %v", r.LeakADay, r.Missing)
	}
}

// In an hour whose mean of 24 hours lies below 0 °C nothing is filled and all is locked; at 0 °C it is not.
func TestFrostLocks(t *testing.T) {
	s := farm().Resolve().Reduce([]float64{-0.01, 0, 5})
	for h, want := range []bool{true, false, false} {
		if s.NoFill[h] != want || (s.Locked[h] == 1) != want || !want && s.Locked[h] != 0 {
			t.Errorf("hour %d: filled not %v, locked %g", h, s.NoFill[h], s.Locked[h])
		}
	}
}

// The usual efficiencies of the two manuals on either side of their borders, each inside its own range.
func TestUsualEfficiencies(t *testing.T) {
	for rated, want := range map[unit.Power]unit.Ratio{1: 0.30, 99: 0.30, 100: 0.40, 499: 0.40, 500: 0.50, 1999: 0.50, 2000: 0.60, 9999: 0.60, 30000: 0.60} {
		if got := PumpSize(rated).Usual; got != want {
			t.Errorf("a pump of %g W: %g, want %g", rated, got, want)
		}
	}
	// 333 W of water make 99.9 W at 0.30; 334 W would make 100.2 W, so they count as the next class
	for hydraulic, want := range map[unit.Power]unit.Ratio{333: 0.30, 334: 0.40, 1249: 0.40, 1251: 0.50, 3999: 0.50, 4001: 0.60, 1e6: 0.60} {
		if got := TurbineSize(hydraulic).Usual; got != want {
			t.Errorf("a turbine under %g W of water: %g, want %g", hydraulic, got, want)
		}
	}
	for _, s := range Sizes() {
		if !(0 < s.Least && s.Least < s.Usual && s.Usual < s.Most && s.Most <= 0.75) {
			t.Errorf("%+v", s)
		}
	}
	w := farm()
	w.Pump.Efficiency.Is, w.Turbine.Efficiency.Is = false, false
	if r := w.Resolve(); r.PumpSize == nil || r.PumpEff != 0.40 || r.TurbineSize == nil || r.TurbineEff != 0.30 {
		t.Errorf("a pump of 200 W counts %g, a turbine under 137 W of water %g", r.PumpEff, r.TurbineEff)
	}
}
