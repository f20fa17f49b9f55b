package panel

import (
	"math"
	"testing"

	"duskweight/internal/model/unit"
)

func plainSheet() *Sheet {
	return &Sheet{Isc: unit.Of[unit.Current](6), Voc: unit.Of[unit.Voltage](22), Imp: unit.Of[unit.Current](5.5), Vmp: unit.Of[unit.Voltage](18)}
}

// Four panels in two strings of two: by hand, strings side by side, their current in bright sun, what the line gets, and the cable.
func TestPanelsOnTheirCable(t *testing.T) {
	count := func(n float64) unit.Known[unit.Count] { return unit.Of(unit.Count(n)) }
	two := plainSheet()
	two.Series = count(2)
	for name, c := range map[string]struct {
		a           Array
		least, most int
	}{
		"told":             {Array{Count: count(6), Strings: count(3)}, 3, 3},
		"four, no sheet":   {Array{Count: count(4)}, 1, 4},
		"four in twos":     {Array{Count: count(4), Sheet: two}, 1, 2},
		"five in twos":     {Array{Count: count(5), Sheet: two}, 1, 3},
		"four alone":       {Array{Count: count(4), Sheet: plainSheet()}, 1, 4},
		"none":             {Array{Count: count(0)}, 0, 0},
		"nobody counted":   {Array{}, 1, 1},
		"none in a string": {Array{Count: count(4), Sheet: &Sheet{Series: count(0)}}, 1, 4},
	} {
		if least, most := c.a.SideBySide(); least != c.least || most != c.most {
			t.Errorf("%s: %d to %d, want %d to %d", name, least, most, c.least, c.most)
		}
	}
	a := Array{Count: count(4), Power: unit.Of[unit.Power](100), Sheet: two, CableLen: unit.Of[unit.Length](10), CableArea: unit.Of(unit.Area(4e-6))}
	if i, ok := a.Short(2); !ok || i != 15 { // 1.25·2·6 A
		t.Errorf("%v A in bright sun", i)
	}
	if _, ok := (Array{Sheet: &Sheet{}}).Short(2); ok {
		t.Error("a current without a sheet")
	}
	// 2·10 m of 4 mm² at 40 °C are 20·0.017241·1.0786/4 = 0.092981 Ω; with 11 A they lose 1.0228 V of 36 V.
	v, share, ok := a.CableDrop()
	if !ok || math.Abs(float64(v)-1.02279) > 1e-4 || math.Abs(share-1.02279/36) > 1e-5 {
		t.Errorf("%v V, %v, %v", v, share, ok)
	}
	for name, change := range map[string]func(*Array){
		"no length": func(a *Array) { a.CableLen.Is = false }, "no area": func(a *Array) { a.CableArea.Is = false }, "no panels": func(a *Array) { a.Count = count(0) },
		"no count": func(a *Array) { a.Count.Is = false }, "no sheet": func(a *Array) { a.Sheet = nil },
	} {
		b := a
		if change(&b); true {
			if _, _, ok := b.CableDrop(); ok {
				t.Errorf("%s: a drop is known", name)
			}
		}
	}
	// On 12.5 V 400 W are 32 A; with pulse width the strings' short current, 12 A; no more than the limits that are named.
	b := Array{Count: count(1), Power: unit.Of[unit.Power](50), Sheet: plainSheet()}
	for name, c := range map[string]struct {
		arrays  []Array
		c       Controller
		amps    float64
		limited bool
	}{
		"tracking":            {[]Array{a}, Controller{Kind: ControllerTracking}, 32, false},
		"tracking, two":       {[]Array{a, b}, Controller{Kind: ControllerTracking}, 36, false},
		"pulse width":         {[]Array{a}, Controller{Kind: ControllerPulseWidth}, 12, false},
		"pulse width, two":    {[]Array{a, b}, Controller{Kind: ControllerPulseWidth}, 18, false},
		"without a sheet":     {[]Array{a, {Count: count(1), Power: unit.Of[unit.Power](100)}}, Controller{Kind: ControllerPulseWidth}, 40, false},
		"by its power":        {[]Array{a}, Controller{Kind: ControllerTracking, Power: unit.Of[unit.Power](250)}, 20, true},
		"by its current":      {[]Array{a}, Controller{Kind: ControllerTracking, MaxCharge: unit.Of[unit.Current](30)}, 30, true},
		"by limits not met":   {[]Array{a}, Controller{Kind: ControllerTracking, MaxCharge: unit.Of[unit.Current](40)}, 32, true},
		"nobody knows panels": {[]Array{{}}, Controller{Kind: ControllerTracking}, 0, false},
	} {
		if i, limited := Charge(c.arrays, c.c, 12.5); math.Abs(float64(i)-c.amps) > 1e-9 || limited != c.limited {
			t.Errorf("%s: %v A, limited %v, want %v, %v", name, i, limited, c.amps, c.limited)
		}
	}
	// 450 W of labels on a controller of 20 A at 12.8 V, 256 W: 194 W too much; one of 40 A cuts nothing.
	for most, want := range map[unit.Current]float64{20: 194, 40: 0} {
		if w, ok := Clipped([]Array{a, b}, Controller{MaxCharge: unit.Of(most)}).Value(); !ok || math.Abs(float64(w)-want) > 1e-9 {
			t.Errorf("%v A cut %v W, want %v", most, w, want)
		}
	}
	if Clipped([]Array{a}, Controller{}).Is {
		t.Error("a controller of no known current cuts")
	}
	// Hot cells of 70 °C: 2·18 V·(1 − 0.0042·45) = 29.196 V, or by the sheet's coefficient.
	if v, ok := a.BestHot(2); !ok || math.Abs(float64(v)-29.196) > 1e-9 {
		t.Errorf("%v V on a hot day", v)
	}
	two.Beta = unit.Of[unit.PerKelvin](-0.003)
	if v, _ := a.BestHot(2); math.Abs(float64(v)-36*(1-0.003*45)) > 1e-9 {
		t.Errorf("%v V on a hot day by the sheet", v)
	}
	if a.SeriesFuse() != 15 || (Array{}).SeriesFuse() != 15 || (Array{Sheet: &Sheet{Fuse: unit.Of[unit.Current](20)}}).SeriesFuse() != 20 || (Array{}).Lead() != 4e-6 {
		t.Error("usual fuse or lead")
	}
}

// What a controller takes all the time, on 12.8 V: 15 mA are 0.192 W, 7 mA 0.0896 W; what is told counts.
func TestStandingOfControllers(t *testing.T) {
	for _, c := range []struct {
		c    Controller
		want float64
	}{{Controller{Kind: ControllerTracking}, 0.192}, {Controller{Kind: ControllerPulseWidth}, 0.0896}, {Controller{Kind: ControllerDirect}, 0}, {Controller{Kind: ControllerTracking, BusVolts: unit.Of[unit.Voltage](24)}, 0.36},
		{Controller{Kind: ControllerPulseWidth, Night: unit.Of[unit.Power](1)}, 1}} {
		if got := c.c.Standing(); math.Abs(float64(got)-c.want) > 1e-12 {
			t.Errorf("%+v: %v W, want %v", c.c, got, c.want)
		}
	}
}

// Efficiency in a straight line between its points: of the typical curve 0.80 at a twentieth of full and below, 0.88 at a tenth,
// 0.905 at 0.15, 0.96 at full and above; never more out than the rating, and points in any order.
func TestTrackerBetweenItsPoints(t *testing.T) {
	tr := newTracker(nil, 200)
	for p, want := range map[float64]float64{0: 0.80, 10: 0.80, 20: 0.88, 30: 0.905, 40: 0.93, 70: 0.9475, 100: 0.965, 150: 0.9625, 200: 0.96, 300: 0.96} {
		if got := tr.efficiency(p); math.Abs(got-want) > 1e-12 {
			t.Errorf("%g W of 200: %g, want %g", p, got, want)
		}
	}
	if tr.out(100) != 96.5 || tr.out(208) != 208*0.96 || tr.out(400) != 200 {
		t.Errorf("out: %g, %g, %g", tr.out(100), tr.out(208), tr.out(400))
	}
	mixed := newTracker([]Efficiency{{1, 0.9}, {0, 0.5}, {0.5, 0.8}}, 100)
	for p, want := range map[float64]float64{0: 0.5, 25: 0.65, 50: 0.8, 75: 0.85, 100: 0.9, 120: 0.9} {
		if got := mixed.efficiency(p); math.Abs(got-want) > 1e-12 {
			t.Errorf("%g W of 100: %g, want %g", p, got, want)
		}
	}
}
