package load

import (
	"testing"

	"duskweight/internal/model/unit"
)

// The efficiency of an inverter over its load from the usual curve: (1 + a)·x + b·x² + p0 at the line for x of the rating,
// a = 2/45, b = 1/9, p0 = 0.01. At 5 %: 0.05/(0.052222 + 0.000278 + 0.01) = 0.80; at 30 %: 0.3/(0.313333 + 0.01 + 0.01) = 0.90.
func TestUsualInverter(t *testing.T) {
	i := Inverter{Rated: unit.Of[unit.Power](1000), Idle: unit.Of[unit.Power](10)}
	l, err := i.Losses()
	if err != nil {
		t.Fatal(err)
	}
	for x, want := range map[float64]float64{0.02: 0.646551724, 0.05: 0.8, 0.1: 0.865384615, 0.3: 0.9, 0.5: 0.892857143, 1: 0.857959962} {
		near(t, "efficiency", 1000*x/(10+float64(l.Line(unit.Power(1000*x), 0))), want, 1e-6*want)
	}
}

// A sheet with 0.90 at a tenth, 0.87 at full load and an idle share of 0.005: A = 1/0.9 − 1 − 0.05 = 0.0611111,
// B = 1/0.87 − 1 − 0.005 = 0.1444253, b = (B − A)/0.9 = 0.0925713, a = B − b = 0.0518540.
func TestInverterFromSheet(t *testing.T) {
	i := Inverter{Rated: unit.Of[unit.Power](1000), Idle: unit.Of[unit.Power](5), Tenth: unit.Of[unit.Ratio](0.9), Full: unit.Of[unit.Ratio](0.87)}
	l, err := i.Losses()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "a", l.Share, 0.0518539804, 1e-9)
	near(t, "b", l.Square, 0.0925713069, 1e-9)
	i.Full = unit.Of[unit.Ratio](0.99) // B = 0.0051 under A: b is negative
	if _, err := i.Losses(); err == nil {
		t.Error("efficiencies that do not fit together are taken")
	}
}

// A kettle of 2 kW for three minutes of an hour on an inverter of 3 kW: the mean is 100 W, E[P²] = 0.05·2000² = 200 000 W²,
// so that the line gives 1.044444·100 + 0.111111·200 000/3000 = 111.852 W, not the 104.815 W of a steady 100 W.
func TestKettleOnTheInverter(t *testing.T) {
	down, noon := equinox()
	kettle := Appliance{Power: unit.Of[unit.Power](2000), Count: unit.Of[unit.Count](1), From: unit.Of[unit.Duration](18 * 3600), To: unit.Of[unit.Duration](18*3600 + 180), Supply: "inverter", Priority: "essential"}
	y := Hours(Load{Appliances: []Appliance{kettle}, Inverter: Inverter{Rated: unit.Of[unit.Power](3000)}}, down, noon)
	near(t, "the hour", y.Essential[18], 111.8518519, 1e-6)
	near(t, "the next", y.Essential[19], 0, 0)
	near(t, "the appliance", y.Each[0].Winter[18], 111.8518519, 1e-6)
	l, err := Inverter{Rated: unit.Of[unit.Power](3000)}.Losses()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "mean and variance", float64(l.Line(100, 190000)), 111.851852, 1e-6*111.851852) // 0.05·0.95·2000² = 190 000 W²
	near(t, "the mean alone", float64(l.Line(100, 0)), 104.814815, 1e-6*104.814815)
}
