package load

import (
	"math"
	"testing"

	"duskweight/internal/model/unit"
)

// pumpDay lifts 1.5 m³ a day over 28 m through 60 m of 32 mm pipe at .25 l/s. By hand: Q^1.852 = 2.1338e-7, 150^1.852 = 10719,
// d^4.8704 = 5.2424e-8, so 10.67·60·2.1338e-7/(10719·5.2424e-8) = .24305 m, h = 28.24305 m,
// E = 998.2·9.80665·1.5·28.24305/.35 = 1,184,876 J and P = 998.2·9.80665·.00025·28.24305/.35 = 197.479 W.
func pumpDay() Appliance {
	return Appliance{Name: "Pump", Count: unit.Of[unit.Count](1), Waits: unit.Yes, From: unit.Of(9 * unit.Hour), To: unit.Of(16 * unit.Hour), Supply: SupplyDc, Priority: PriorityEssential, Purpose: ForPump,
		Water: Pump{Daily: unit.Of[unit.Volume](1.5), Lift: unit.Of[unit.Length](28), PipeLength: unit.Of[unit.Length](60), PipeInner: unit.Of[unit.Length](0.032), Flow: unit.Of[unit.Flow](0.00025), Efficiency: unit.Of[unit.Ratio](0.35)}}
}

func TestPumpDay(t *testing.T) {
	p := pumpDay().Water
	for what, v := range map[string][2]float64{"head": {float64(p.Head()), 28.2430508}, "energy": {float64(p.Energy().Val), 1184876.44}, "power": {float64(p.Power().Val), 197.479406}} {
		if math.Abs(v[0]-v[1]) > 1e-6*v[1] {
			t.Errorf("%s: %.9g, want %.9g", what, v[0], v[1])
		}
	}
	p.Lift = unit.Known[unit.Length]{}
	if p.Energy().Is || p.Power().Is {
		t.Error("without its lift the energy of a pump is known")
	}
}

// yearOf is the load of some appliances at a place with nights from 18 to 6 and noon at 12.
func yearOf(list ...Appliance) Year {
	down, noon := make([]bool, HoursInYear), make([]unit.Duration, DaysInYear)
	for h := range down {
		down[h] = h%24 < 6 || h%24 >= 18
	}
	for d := range noon {
		noon[d] = 12 * unit.Hour
	}
	return Hours(Load{Appliances: list, Inverter: Inverter{Efficiency: unit.Of[unit.Ratio](0.8)}}, down, noon)
}

// What waits is in no hour, asks its energy of each day of its months, and counts in the year: 1,184,876.44 J through an inverter
// of .8 are 1,481,095.55 J at the line, in 59 days of January and February 87.3846 MJ.
func TestWaits(t *testing.T) {
	a := pumpDay()
	a.Supply, a.Months = SupplyInverter, []unit.Count{1, 2}
	y := yearOf(a)
	if len(y.Waiting) != 1 || total(y.Essential)+total(y.Nice) != 0 {
		t.Fatalf("%d wait, %g W in the hours", len(y.Waiting), total(y.Essential))
	}
	w := y.Waiting[0]
	near := func(what string, got, want float64) {
		if math.Abs(got-want) > 1e-6*want {
			t.Errorf("%s: %g, want %g", what, got, want)
		}
	}
	near("power", w.Power, 197.479406/0.8)
	near("a day", w.Energy[58], 1481095.55)
	near("the year", float64(y.ApplianceYear), 59*1481095.55)
	near("its own year", float64(y.Each[0].Year), 59*1481095.55)
	if w.Energy[59] != 0 || w.From != 9 || w.To != 16 || w.RunAbove != 0.5 || !w.Essential {
		t.Errorf("%+v", w)
	}
	if a.Water.Lift = (unit.Known[unit.Length]{}); len(yearOf(a).Waiting) != 0 || a.uncounted().IsZero() {
		t.Error("a pump of which too little is known counts")
	}
	if twice := y.Scaled(2, 1); twice.Waiting[0].Power != 2*w.Power || twice.Waiting[0].Energy[0] != 2*w.Energy[0] || y.Waiting[0].Power != w.Power {
		t.Error("twice the load is not twice what waits")
	}
}

// What goes off below a level is a part of the load, gathered by level: 7 W and 5 W essential at .4, 3 W nice at .2.
func TestLevels(t *testing.T) {
	lamp := func(w, below float64, p Priority) Appliance {
		return Appliance{Name: "Lamp", Power: unit.Of(unit.Power(w)), Count: unit.Of[unit.Count](1), From: unit.Of(20 * unit.Hour), To: unit.Of(22 * unit.Hour), Supply: SupplyDc, Priority: p, ShedBelow: unit.Of(unit.Ratio(below))}
	}
	always := lamp(11, 0, PriorityEssential)
	always.ShedBelow = unit.Known[unit.Ratio]{}
	y := yearOf(lamp(7, 0.4, PriorityEssential), lamp(3, 0.2, PriorityNice), lamp(5, 0.4, PriorityEssential), always)
	if len(y.Levels) != 2 || y.Levels[0].Below != 0.4 || y.Levels[0].Back != 0.5 || y.Levels[0].Essential[20] != 12 || y.Levels[0].Nice[20] != 0 || y.Levels[1].Nice[21] != 3 || y.Levels[1].Essential[21] != 0 {
		t.Errorf("levels %+v", len(y.Levels))
	}
	if y.Essential[20] != 23 || y.Nice[20] != 3 || y.Essential[22] != 0 {
		t.Errorf("essential %g, nice %g at 20 o'clock", y.Essential[20], y.Nice[20])
	}
}

func total(v []float64) float64 {
	sum := 0.0
	for _, x := range v {
		sum += x
	}
	return sum
}
